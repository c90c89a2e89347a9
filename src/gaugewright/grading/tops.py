"""Armholes, raglan edges, necks, slopes and caps of one piece in one size: what goes at each edge, on which rows.

In: rows and end stitches of every section, as if necks and slopes had no rows. Out: the same with the
rows a top takes from the section below it, and every shaped edge's profile. An armhole or raglan that isn't
over where the neck begins goes on at the outer edges of both sides.
"""

from dataclasses import dataclass
from typing import NamedTuple

from gaugewright.design.model import Armhole, Cap, Conventions, Design, Fabric, Formula, Neck, NeckEdge, Piece, RaglanEdge, Section, Shoulders
from gaugewright.gauge.counts import CountRule, allows
from gaugewright.gauge.model import Gauge
from gaugewright.grading.allowed import Asked, allowed_count, of_parity
from gaugewright.grading.armhole_fit import armhole_of
from gaugewright.grading.cap_fit import cap_of
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.fault import fault
from gaugewright.grading.flat_raglan import necks_between, raglan_of
from gaugewright.grading.necks import neck
from gaugewright.grading.profile import EdgeStep, Profile
from gaugewright.grading.shape_plans import EdgePart, EdgeParts, cut, gone, later
from gaugewright.grading.rising import Rise, extra_height, rise_of, rising
from gaugewright.grading.shape_rows import narrowest_fault
from gaugewright.grading.slopes import slope_profile
from gaugewright.rounding import half_up, up_to_step
from gaugewright.sizing.environment import Environment


class Shape(NamedTuple):
    """What is shaped at each edge of a section; with a divided neck also at the neck, and its centre; and how
    the shoulders' stitches rise on the last row, from the armhole edge to the neck edge."""

    starting: EdgeParts
    far: EdgeParts
    inner: EdgeParts = ()
    centre: int = 0
    rising: tuple[Rise, ...] = ()


@dataclass(slots=True)
class Stacked:
    """Rows, end stitches, neck stitches and shapes of each section, filled in from the bottom up."""

    start: int
    rows: list[int]
    ends: list[int]
    necks: list[int]
    shapes: list[Shape | None]

    def before(self, index: int) -> int:
        """Stitches with which a section begins."""
        return self.ends[index - 1] if index else self.start


def has_top_rows(section: Section) -> bool:
    """Whether a section takes rows from the one below it."""
    return isinstance(section, (Neck, NeckEdge)) or (isinstance(section, Shoulders) and section.slope is not None)


def shape_all(piece: Piece, design: Design, env: Environment, stacked: Stacked) -> None:
    """Fills in the shapes; raises located problems where something doesn't fit."""
    top = piece.sections[-1]
    top_gauge = design.fabric(top.fabric).gauge
    sloped = _slope_rows(top, top_gauge, env) if has_top_rows(top) else 0
    for index, section in enumerate(piece.sections):
        gauge = design.fabric(section.fabric).gauge
        if isinstance(section, Armhole):
            below_top = index == len(piece.sections) - 2
            rows = stacked.rows[index] - (sloped if below_top else 0)
            profile = armhole_of(section, piece, gauge, env, (stacked.before(index), stacked.ends[index]), rows, stacked.rows[index] - rows)
            stacked.shapes[index] = _at(section.at, EdgePart("armhole", Profile(stacked.rows[index], profile.steps)))
        elif isinstance(section, RaglanEdge):
            counts = stacked.before(index), stacked.ends[index]
            profile = raglan_of(section, piece, design, env, counts, stacked.rows[index])
            stacked.shapes[index] = _at(section.at, EdgePart("raglan", profile))
        elif isinstance(section, Cap):
            made = cap_of(section, piece, gauge, env, stacked.before(index))
            part = (EdgePart("cap", made.profile),)
            stacked.shapes[index] = Shape(part, part)
    if has_top_rows(top):
        _shape_top(piece, design, env, stacked, sloped)


def _at(at: str, part: EdgePart) -> Shape:
    """What is shaped at both edges alike, or at one."""
    return Shape((part,) if at != "far" else (), (part,) if at != "starting" else ())


def _slope_rows(top: Section, gauge: Gauge, env: Environment) -> int:
    slope: Formula | None = getattr(top, "slope", None)
    if getattr(top, "rising", False):
        return 1
    return 0 if slope is None else max(1, half_up(gauge.rows_in(env.length(slope))))


def _shape_top(piece: Piece, design: Design, env: Environment, stacked: Stacked, sloped: int) -> None:
    """A neck, a neck edge or sloped shoulders, over the last rows of the section below."""
    top = piece.sections[-1]
    assert isinstance(top, (Shoulders, Neck, NeckEdge))
    gauge = design.fabric(top.fabric).gauge
    below = len(piece.sections) - 2
    wide = stacked.ends[below]
    raglan = piece.sections[below]
    if isinstance(raglan, RaglanEdge) and isinstance(top, (Neck, NeckEdge)):
        choices = necks_between(raglan, top, piece, wide, design.fabric(top.fabric), env.size)
        necks = choices[0]
    else:
        choices = ()
        necks = _neck_stitches(piece, top, gauge, env, wide)
    shoulder = wide - necks if isinstance(top, NeckEdge) else (wide - necks) // 2
    rows = sloped if isinstance(top, Shoulders) else _depth_rows(piece, top, design, env)
    _check_depth(piece, top, gauge, env, stacked.rows[below], max(rows, sloped))
    outer = _outer(piece, top, gauge, env, stacked, shoulder, 0 if top.rising else sloped, design.conventions)
    split = stacked.rows[below] - rows
    total = stacked.rows[below]
    low = {side: _cut(parts, 1, split) for side, parts in outer.items()}
    high = {side: _cut(parts, split + 1, total) for side, parts in outer.items()}
    stacked.shapes[below] = Shape(low["starting"], low["far"]) if any(low.values()) else None
    stacked.rows[below], stacked.rows[-1] = split, rows
    stacked.ends[below] = stacked.before(below) - gone(low["starting"]) - gone(low["far"])
    if choices:
        necks = _workable_neck(top, high, wide, choices, rows, design)
    shape = _top_shape(top, high, necks, rows, design.conventions)
    if top.rising:
        shape = shape._replace(rising=rising(shoulder, rise_of(piece, design, env), design.fabric(top.fabric).stitch))
    stacked.necks[-1], stacked.shapes[-1] = necks, shape
    inner = 2 * gone(shape.inner) + shape.centre
    stacked.ends[-1] = stacked.ends[below] - gone(shape.starting) - gone(shape.far) - inner


def _depth_rows(piece: Piece, top: Neck | NeckEdge, design: Design, env: Environment) -> int:
    """The rows of a neck's depth, of which the last may be higher or lower than its fabric's."""
    gauge, taller = design.fabric(top.fabric).gauge, extra_height(piece, design, env)
    rows = max(1, half_up(gauge.rows_in(env.length(top.depth) - taller)))
    if top.rising:
        _check_rise(piece, top, gauge, env, rows, taller)
    return rows


def _workable_neck(top: Section, high: dict[str, EdgeParts], wide: int, choices: tuple[int, ...], rows: int, design: Design) -> int:
    """The widest neck between raglan edges that leaves each row the stitches its shaping takes; else the widest of all."""
    fabric = design.fabric(top.fabric)
    cloth = Cloth(fabric.key, fabric.stitch, fabric.loop, fabric.chains, fabric.counts)
    for necks in choices:
        shape = _top_shape(top, high, necks, rows, design.conventions)
        edges = (shape.starting, shape.inner) if isinstance(top, Neck) else (shape.starting, shape.far)
        left = (wide - necks) // (2 if isinstance(top, Neck) else 1)
        if narrowest_fault(cloth, left + gone(edges[0]) + gone(edges[1]), *edges, rows) is None:
            return necks
    return choices[0]


def _top_shape(top: Section, outer: dict[str, EdgeParts], stitches: int, rows: int, habits: Conventions) -> Shape:
    """Rows that rise are plain at the neck, so a neck is over below them."""
    match top:
        case Neck(shape=shape):
            plan = neck(shape, stitches, rows - top.rising, habits.schedules)
            return Shape(outer["starting"], outer["far"], (EdgePart("neck", Profile(rows, plan.side.steps)),), plan.centre)
        case NeckEdge(shape=shape, at=at):
            plan = neck(shape, 2 * stitches, rows - top.rising, habits.schedules)
            part = (EdgePart("neck", Profile(rows, half_neck(plan.centre // 2, plan.side).steps)),)
            return Shape(part, outer["far"]) if at == "starting" else Shape(outer["starting"], part)
    return Shape(outer["starting"], outer["far"])


def half_neck(centre: int, side: Profile) -> Profile:
    """A half front's neck edge: its half of the centre is left on row 1.

    >>> half_neck(4, Profile(5, (EdgeStep(2, 1, "decrease"),))).steps
    (EdgeStep(row=1, stitches=4, way='leave'), EdgeStep(row=2, stitches=1, way='decrease'))
    """
    first = sum(step.stitches for step in side.steps if step.row == 1)
    if not centre:
        return side
    return Profile(side.rows, (EdgeStep(1, centre + first, "leave"), *(step for step in side.steps if step.row > 1)))


def _cut(parts: EdgeParts, first: int, last: int) -> EdgeParts:
    """What of an edge's parts falls on these rows."""
    found = (EdgePart(part.name, cut(part.profile, first, last)) for part in parts)
    return tuple(part for part in found if part.profile.steps)


def _outer(
    piece: Piece, top: Section, gauge: Gauge, env: Environment, stacked: Stacked, shoulder: int, sloped: int, habits: Conventions
) -> dict[str, EdgeParts]:
    """Each outer edge over all rows of the section below: its armhole, then the shoulder's slope."""
    below = len(piece.sections) - 2
    total, shape = stacked.rows[below], stacked.shapes[below]
    slope: EdgeParts = ()
    if sloped:
        if shoulder < sloped + 1:
            message = f"the shoulder of {piece.key} has {shoulder} stitch{'' if shoulder == 1 else 'es'}, too few for {sloped} rows of slope"
            most = gauge.height_of(shoulder - 1) / 10
            narrower = gauge.width_of((1 if isinstance(top, NeckEdge) else 2) * (sloped + 1 - shoulder)) / 10
            first = f"make `slope` at most {most:.1f} cm" if shoulder > 1 else "take `slope` out"
            hint = f"{first}, or make the neck at least {narrower:.1f} cm narrower"
            raise fault("slope-too-steep", message, getattr(top, "slope").origin, hint, env)
        slope = (EdgePart("shoulder", later(slope_profile(shoulder, sloped, habits.shoulder_steps), total - sloped, total)),)
    found = {}
    for side in ("starting", "far"):
        own: EdgeParts = () if shape is None else getattr(shape, side)
        at_neck = isinstance(top, NeckEdge) and top.at == side
        found[side] = own if at_neck else (*own, *slope)
    return found


def _check_rise(piece: Piece, top: Neck | NeckEdge, gauge: Gauge, env: Environment, rows: int, taller: float) -> None:
    """A neck is shaped below the row that rises, and is no deeper for it than half a row."""
    depth = env.length(top.depth)
    if rows < 2 or gauge.height_of(rows) + taller > depth + gauge.row_height:
        least = gauge.height_of(2) + taller
        message = f"the neck of {piece.key} is {depth / 10:.1f} cm deep, and its last row, of rising stitches, is {(gauge.row_height + taller) / 10:.1f} cm high"
        hint = f"make `depth` at least {up_to_step(least / 10, 0.1):.1f} cm, or take out `as`: the slope is then worked in steps"
        raise fault("rising-too-high", message, top.depth.origin, hint, env)


def _check_depth(piece: Piece, top: Section, gauge: Gauge, env: Environment, room: int, needed: int) -> None:
    if needed < room:
        return
    what = "slope" if isinstance(top, Shoulders) else "neck"
    message = f"the {what} of {piece.key} takes {needed} rows, and the section below it has {room}: one must stay"
    if room > 1:
        hint = f"make it at most {gauge.height_of(room - 1) / 10:.1f} cm deep, or let the section below begin lower"
    else:
        hint = "let the section below begin lower"
    raise fault("neck-too-deep", message, top.origin, hint, env)


FEWEST_OF_NECK = 2
"""Stitches of a neck that divides a piece: one for each of its sides."""


def _neck_stitches(piece: Piece, top: Shoulders | Neck | NeckEdge, gauge: Gauge, env: Environment, wide: int) -> int:
    """The neck's stitches: of the piece's parity where both shoulders are to be alike."""
    width = top.neck if isinstance(top, Shoulders) else top.width
    assert width is not None  # one is lacking only above raglan edges
    rule = CountRule() if isinstance(top, NeckEdge) else of_parity(CountRule(), wide)
    least = 1 if isinstance(top, NeckEdge) else 2
    if wide < least + 1:
        message = f"{wide} stitch{'' if wide == 1 else 'es'} of {piece.key} can't be divided into shoulder and neck"
        hint = f"make the piece at least {gauge.width_of(least + 1) / 10:.1f} cm wide there"
        raise fault("neck-too-wide", message, top.origin, hint, env)
    found = allowed_count(gauge.stitches_in(env.length(width)), rule, Asked("the neck has", width.origin, env.size))
    if isinstance(top, Neck) and found < FEWEST_OF_NECK:
        message = f"the neck of {piece.key} comes to {found} stitch, and one has two edges to shape"
        fewest = FEWEST_OF_NECK if allows(rule, FEWEST_OF_NECK) else FEWEST_OF_NECK + 1
        hint = f"make the neck at least {gauge.width_of(fewest) / 10:.1f} cm wide"
        raise fault("neck-too-narrow", message, width.origin, hint, env)
    if found > wide - least:
        message = f"the neck takes {found} of {wide} stitches and leaves no shoulder"
        hint = f"make the neck at most {gauge.width_of(wide - least) / 10:.1f} cm wide"
        raise fault("neck-too-wide", message, width.origin, hint, env)
    return found
