"""Plans of one piece for all sizes, of one structure.

In: counts and rows of every size, and where its tapers are shaped. Out: a `PiecePlan` for each size;
sections, their edges and the order of their rates are the same in all.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

from gaugewright.design.model import (
    UNSTACKED,
    YOKES,
    Armhole,
    Cap,
    Crown,
    Design,
    Even,
    Fabric,
    Motif,
    Neck,
    NeckEdge,
    Opened,
    Piece,
    Raglan,
    RaglanEdge,
    RoundYoke,
    Section,
    Shoulders,
    Slit,
    Taper,
    Triangle,
    Wedge,
)
from gaugewright.grading.blocks import block_plans
from gaugewright.grading.buttonholes import plan_holes
from gaugewright.grading.colour_rows import block_ranges, colour_rows
from gaugewright.design.rims import on_rim
from gaugewright.grading.corners import DEEPEST_BAND, Turn, band_depths, corners_of
from gaugewright.grading.crown_plans import crown_plans
from gaugewright.grading.crowns import each_of
from gaugewright.grading.expand import expand
from gaugewright.grading.gather import gather
from gaugewright.grading.layouts import layout_of
from gaugewright.grading.marks import marks_of
from gaugewright.grading.measure import Measured, Shaped, lead_rows
from gaugewright.grading.model import CentreStart, ChainStart, DivideStart, EdgeStart, GoOnStart, Join
from gaugewright.grading.motifs import motif_plan
from gaugewright.grading.opened import opened_plan
from gaugewright.grading.plan import Cloth, Corner, EvenPlan, MitredPlan, PiecePlan, SectionPlan, ShapedEdges, ShouldersPlan, StripePlan, TrianglePlan
from gaugewright.grading.profile_plans import divided_plan, profile_plan
from gaugewright.grading.raglan_plans import raglan_plans
from gaugewright.grading.round_yoke_plans import round_yoke_plans
from gaugewright.grading.slits import slit_plan, works_back
from gaugewright.grading.spread_plans import spread_plans
from gaugewright.grading.stripes import stripe_plan
from gaugewright.grading.taper_plans import taper_plans
from gaugewright.grading.triangles import triangle_cycle
from gaugewright.grading.wedge_plans import wedge_plan
from gaugewright.grading.yokes import TURNED
from gaugewright.sized import Sized, join
from gaugewright.sizing.environment import Environment
from gaugewright.trade.foundation import foundation
from gaugewright.vocabulary import Worked


def worked_in(piece: Piece, design: Design) -> Worked:
    """How the piece is worked: a ring goes round as its fabric says, a chain and what is picked up for rows back and forth."""
    fabric = design.fabric(piece.fabric)
    if not piece.start.in_rounds:
        return "rows"
    return fabric.worked if fabric.worked != "rows" else "joined rounds"


def cloth_of(design: Design, fabric_key: str, worked: Worked, crowned: bool = False) -> Cloth:
    """The part of a fabric that rows need; a spiral climbs on by itself, without a turning chain.

    In a piece with a crown, a flat tip, a triangle, or of a yoke, no turning chain counts: the first stitch of a round is increased like the others.
    """
    fabric = design.fabric(fabric_key)
    climbs = worked == "spiral rounds"
    return Cloth(fabric.key, fabric.stitch, fabric.loop, 0 if climbs else fabric.chains, fabric.counts and not (climbs or crowned), fabric.pattern, fabric.edge)


def plan_piece(
    piece: Piece,
    design: Design,
    shaped: Shaped,
    measured: Sized[Measured],
    envs: Sized[Environment],
    starts: Sized[EdgeStart] | Sized[DivideStart] | Sized[GoOnStart] | None,
    matched: Callable[[str], StripePlan | None],
    joins: Sized[Join] | None = None,
    turned: Sized[tuple[Turn, ...]] | None = None,
) -> Sized[PiecePlan]:
    """Plans of one piece for all sizes. `starts` are the edges picked up or the parts divided, None for chains, rings and
    centres; `matched` gives the stripes of the piece that this one's stripes meet, `joins` what a band worked sideways is
    joined to.
    """
    corners = _corners(piece, design, measured, starts, turned)
    worked, crowned = worked_in(piece, design), piece.start.kind == "divide" or any(_all_alike(section) for section in piece.sections)
    sections = [
        _plan_section(section, shaped[index], _Around(cloth_of(design, section.fabric, worked, crowned), index, measured, piece, design, envs), corners)
        for index, section in enumerate(piece.sections)
    ]
    gauges = tuple(design.fabric(section.fabric).gauge for section in piece.sections)
    first = cloth_of(design, next(s.fabric for s in piece.sections if not isinstance(s, UNSTACKED)), worked, crowned)

    def one(label: str) -> PiecePlan:
        m, env = measured[label], envs[label]
        start = starts[label] if starts else _chain_start(piece, first, m.start, joins[label] if joins else None)
        marks = marks_of(piece, m, gauges, env)
        stripes = stripe_plan(piece, design.fabric(piece.fabric).gauge, m.rows, gauges, marks, env, matched(label))
        bands = colour_rows(piece, m, gauges, env, stripes)
        plans = tuple(sized[label] for sized in sections)
        holes = plan_holes(piece, design, start, sum(m.rows), env, corners[label] if corners else ()) if piece.buttonholes and isinstance(start, EdgeStart) else None
        plan = PiecePlan(piece.key, start, worked, plans, bands, marks, bands[0].colour, first, holes, corners[label] if corners else (), stripes, layout=layout_of(piece, design, sum(m.rows), gauges[-1], env))
        if not piece.colours.blocks:
            return plan
        return replace(plan, blocks=block_plans(piece, block_ranges(piece, m, gauges, env), expand(plan).rows, design, env))

    return gather(measured.labels, one)


def _all_alike(section: Section) -> bool:
    """Whether the first stitch of a section's rounds is changed like the others."""
    return isinstance(section, (Crown, Motif, Triangle, *YOKES)) or (isinstance(section, Taper) and section.at == "sides")


def _corners(
    piece: Piece, design: Design, measured: Sized[Measured],
    starts: Sized[EdgeStart] | Sized[DivideStart] | Sized[GoOnStart] | None, turned: Sized[tuple[Turn, ...]] | None
) -> Sized[tuple[Corner, ...]] | None:
    """What each size's corners take; None where there are none, or nobody asked for them and the band is too deep for one."""
    if turned is None or not any(turned):
        return None
    depths = measured.map(lambda m: band_depths(piece, m.rows, design))
    if piece.start.corners is None and not on_rim(piece, design) and any(each and each[-1] > DEEPEST_BAND for each in depths):
        return None
    found = gather(measured.labels, lambda label: corners_of(piece, turned[label], starts[label], depths[label], design, label))  # type: ignore[index,arg-type]
    return found if any(any(corner.changes) for own in found for corner in own) else None


def _chain_start(piece: Piece, first: Cloth, stitches: int, join: Join | None) -> ChainStart | CentreStart:
    """The foundation; chains skipped at its end stand for the turning chain of row 1, in row 1's stitch."""
    if piece.start.kind in ("centre", "middle"):
        return CentreStart(stitches)
    if piece.start.kind == "ring":
        return ChainStart(stitches, stitches, ring=True)
    return ChainStart(stitches, foundation(first.stitch, stitches, first.chains, first.counts).chain, join=join)


@dataclass(frozen=True, slots=True)
class _Around:
    """What a section is planned from: its cloth and place, the counts of all sizes, and the piece around it."""

    cloth: Cloth
    index: int
    measured: Sized[Measured]
    piece: Piece
    design: Design
    envs: Sized[Environment]

    @property
    def fabric(self) -> Fabric:
        """The section's."""
        return self.design.fabric(self.piece.sections[self.index].fabric)

    @property
    def rows(self) -> Sized[int]:
        """The section's rows by size."""
        return self.measured.map(lambda m: m.rows[self.index])

    @property
    def before(self) -> Sized[int]:
        """The stitches it begins with, by size."""
        return self.measured.map(lambda m: m.before(self.index))


def _plan_section(section: Section, shaped: ShapedEdges | None, around: _Around, corners: Sized[tuple[Corner, ...]] | None) -> Sized[SectionPlan]:
    cloth, index, measured, design = around.cloth, around.index, around.measured, around.design
    match section:
        case Even() if any(m.shapes[index] for m in measured):
            return gather(measured.labels, lambda label: profile_plan(section, cloth, index, measured[label], label))
        case Even(colour=colour) if corners:
            return join(lambda m, own: MitredPlan(cloth, colour, m.rows[index], m.start, own, sum(m.rows[:index])), measured, corners)
        case Even(colour=colour):
            return measured.map(lambda m: EvenPlan(cloth, colour, m.rows[index], m.before(index)))
        case Shoulders():
            return measured.map(lambda m: _shoulders(cloth, m, index))
        case Armhole() | RaglanEdge() | NeckEdge() | Cap():
            return gather(measured.labels, lambda label: profile_plan(section, cloth, index, measured[label], label))
        case Neck():
            return gather(measured.labels, lambda label: divided_plan(section, around.piece, cloth, index, measured[label], label))
        case Crown() | Motif() | Triangle() | Raglan() | RoundYoke():
            return _plan_spreading(section, around)
        case Wedge() | Opened() | Slit():
            return gather(measured.labels, lambda label: _plan_place(section, around, label))
        case Taper() if shaped is None:
            return spread_plans(section, cloth, index, measured, design.conventions.spreading).map(lambda plan: plan)
        case Taper():
            return taper_plans(section, cloth, shaped, index, measured, design.conventions.schedules).map(lambda plan: plan)


def _plan_spreading(section: Crown | Motif | Triangle | Raglan | RoundYoke, around: _Around) -> Sized[SectionPlan]:
    """What widens from its middle or its neck outward; rounds that are turned begin in the middle of the back."""
    cloth, index, habits = around.cloth, around.index, around.design.conventions
    fabric, turned = around.fabric, worked_in(around.piece, around.design) == TURNED
    match section:
        case Crown():
            return crown_plans(section, cloth, each_of(section, around.piece.start, fabric.gauge), index, around.measured).map(lambda plan: plan)
        case Motif():
            return around.rows.map(lambda rows: motif_plan(section, fabric, cloth, rows, turned))
        case Triangle():
            cycle = triangle_cycle(fabric.gauge)
            return around.rows.map(lambda rows: TrianglePlan(cloth, section.colour, rows, cycle))
        case Raglan():
            return raglan_plans(section, cloth, fabric.gauge, around.before, around.rows, around.envs, lead_rows(index), habits.schedules, turned).map(lambda plan: plan)
        case RoundYoke():
            return round_yoke_plans(section, cloth, fabric, around.before, around.rows, around.envs, lead_rows(index), habits.spreading, turned).map(lambda plan: plan)


def _plan_place(section: Wedge | Opened | Slit, around: _Around, label: str) -> SectionPlan:
    """What is done at one place of one size's rows: short rows, an opening, stitches left."""
    cloth, gauge, env, measured = around.cloth, around.fabric.gauge, around.envs[label], around.measured[label]
    match section:
        case Wedge():
            return wedge_plan(section, cloth, gauge, around.index, measured, env)
        case Opened():
            return opened_plan(section, cloth, gauge, env, measured.before(around.index))
        case Slit():
            back = works_back(worked_in(around.piece, around.design), sum(measured.rows[: around.index]) + 1)
            return slit_plan(section, cloth, gauge, env, measured.before(around.index), back)


def _shoulders(cloth: Cloth, measured: Measured, index: int) -> ShouldersPlan:
    """Shoulders whose slope, if any, may have begun below them."""
    stitches, neck, shape = measured.before(index), measured.necks[index], measured.shapes[index]
    slope = () if shape is None else shape.starting
    return ShouldersPlan(cloth, "", stitches, (stitches - neck) // 2, neck, measured.rows[index], slope, () if shape is None else shape.rising)
