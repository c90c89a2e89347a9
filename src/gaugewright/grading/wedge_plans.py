"""Wedges as plans: how many short rows a depth makes, how their turns share the stitches, and what doesn't fit."""

from collections.abc import Iterator

from gaugewright.design.model import UNSTACKED, Design, Even, Formula, Piece, Wedge
from gaugewright.errors import Problem
from gaugewright.gauge.model import Gauge
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.fault import fault
from gaugewright.grading.measure import Measured
from gaugewright.grading.short_rows import turns
from gaugewright.grading.wedge_rows import WedgePlan
from gaugewright.rounding import half_up, nearest_of_series
from gaugewright.sizing.environment import Environment

SHORTEST_SHARE = 1 / 3
"""The shortest row keeps the middle third (common practice, no source)."""

ROWS_ABOVE = 2
"""The row that closes a wedge and the one that takes up the stitches on its other side are both plain."""


def wedge_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """What is wrong with a piece's wedges in every size."""
    wedges = [(index, section) for index, section in enumerate(piece.sections) if isinstance(section, Wedge)]
    for index, section in wedges:
        above = piece.sections[index + 1] if index + 1 < len(piece.sections) else None
        if piece.start.in_rounds:
            message = f"{piece.key} is worked in rounds, and a wedge is worked back and forth between side edges"
            yield Problem("edges-in-rounds", message, section.origin, "start the piece with a chain, or take the wedge out")
        elif index == 0 or not isinstance(above, Even) or isinstance(piece.sections[index - 1], UNSTACKED):
            message = f"the wedge of {piece.key} doesn't lie between rows: it needs rows below it and an `even` section above it"
            yield Problem("wedge-out-of-place", message, section.origin, "put an `even` section before it and another after it")
        elif above.fabric != section.fabric or above.colour != getattr(piece.sections[index - 1], "colour", ""):
            message = f"the wedge of {piece.key} lies where the fabric or the colour of its sections changes"
            yield Problem("wedge-out-of-place", message, section.origin, "let the section above it begin in the fabric and colour of the one below")
        if section.at not in ("middle", "starting", "far") and not piece.start.in_rounds:
            message = f"{section.at} is not one edge of row ends of {piece.key}"
            yield Problem("no-such-side", message, section.origin, "write `at: middle`, starting or far, or the name of one side's edge")
    if len(wedges) > 1:
        message = f"{piece.key} has {len(wedges)} wedges, and one is worked"
        yield Problem("wedge-out-of-place", message, wedges[1][1].origin, "put their depths together in one")


def wedge_plan(section: Wedge, cloth: Cloth, gauge: Gauge, index: int, measured: Measured, env: Environment) -> WedgePlan:
    """One size's wedge: an even number of short rows, so that the work goes on at the edge it left."""
    stitches, before = measured.before(index), sum(measured.rows[:index])
    rows = _rows(section, gauge, env)
    lead = int(section.at != "middle" and (before % 2 == 0) != (section.at == "starting"))
    if not rows:
        return WedgePlan(cloth, "", stitches, section.at, lead, ())
    above = measured.rows[index + 1]
    if above < lead + ROWS_ABOVE:
        message = f"the wedge is followed by {above} {'row' if above == 1 else 'rows'} of its even section, and needs {lead + ROWS_ABOVE}"
        raise fault("wedge-out-of-place", message, section.origin, "let it begin lower, or that section end higher", env)
    first, room = _room(section, gauge, stitches, env)
    number = rows // 2
    if number - 1 > room:
        most = gauge.height_of(2 * (room + 1)) / 10
        message = f"a wedge of {rows} rows turns {number} times on a side, a stitch apart or more, and {room} stitches are there beyond its point"
        hint = f"make `depth` at most {most:.1f} cm, `point` smaller, or `shortest` narrower"
        raise fault("wedge-too-deep", message, section.depth.origin, hint, env)
    return WedgePlan(cloth, "", stitches, section.at, lead, turns(number, first, room))


def _rows(section: Wedge, gauge: Gauge, env: Environment) -> int:
    """The even number of rows nearest to the depth."""
    depth = env.length(section.depth)
    if depth < 0:
        message = f"the wedge is {depth / 10:.1f} cm deep"
        raise fault("wedge-negative", message, section.depth.origin, f"write max(0 cm, {section.depth.text})", env)
    return nearest_of_series(gauge.rows_in(depth), 0, 2)


def _room(section: Wedge, gauge: Gauge, stitches: int, env: Environment) -> tuple[int, int]:
    """Stitches beside the wedge at a side edge, and those that its turns on a side may share."""
    sides = 2 if section.at == "middle" else 1
    first = _stitches(section.point, gauge, env)
    inner = half_up(stitches * SHORTEST_SHARE) if section.shortest is None else _stitches(section.shortest, gauge, env)
    if first < 1:
        message = f"the wedge begins {first} stitches from the side edge, which would gain its rows"
        raise fault("wedge-at-edge", message, section.point.origin, f"make `point` at least {gauge.stitch_width / 10:.1f} cm", env)
    room = (stitches - max(1, inner)) // sides - first
    if room < 0:
        most = gauge.width_of((stitches - max(1, inner)) // sides) / 10
        message = f"the wedge's point is {first} stitches from the side edge, and beside its shortest row of {max(1, inner)} there are {first + room} of {stitches}"
        hint = f"make `point` at most {most:.1f} cm, or `shortest` narrower" if most > 0 else "make `shortest` narrower"
        raise fault("wedge-point-beyond", message, section.point.origin, hint, env)
    return first, room


def _stitches(formula: Formula, gauge: Gauge, env: Environment) -> int:
    return half_up(gauge.stitches_in(env.length(formula)))
