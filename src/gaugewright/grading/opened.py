"""Tubes opened at their end: how the last round is shared, and how a piece in rows begins on it.

A slipper's foot goes round as far as the instep; then sole and sides are worked on in rows, and the instep's
stitches stay. Its rounds begin at one end of the instep, so that the rows go on without cutting the yarn.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.design.model import Design, Piece
from gaugewright.design.opened import Opened
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.go_on_start import GoOnStart
from gaugewright.grading.model import EdgeLength
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment

FEWEST = 2
"""A stitch alone is no edge, and rows need two (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class OpenedPlan:
    """The last round of a tube: the last `gap` of its `stitches` are the edge `left`, the others the part `rest`."""

    cloth: Cloth
    colour: str
    stitches: int
    gap: int
    left: str
    rest: str
    rows: int = 0

    @property
    def end(self) -> int:
        """All stitches: none is worked anew."""
        return self.stitches


def opened_plan(section: Opened, cloth: Cloth, gauge: Gauge, env: Environment, stitches: int) -> OpenedPlan:
    """The opening of one size; raises `opening-does-not-fit`."""
    gap = half_up(gauge.stitches_in(env.length(section.leave)))
    if not FEWEST <= gap <= stitches - FEWEST:
        message = f"the {section.left} takes {gap} of the last round's {stitches} stitches; {FEWEST} to {stitches - FEWEST} are expected"
        room = gauge.width_of(stitches - FEWEST) / 10
        hint = f"make it at most {room:.1f} cm" if gap > FEWEST else f"make it at least {gauge.width_of(FEWEST) / 10:.1f} cm"
        raise ProblemsFound([Problem("opening-does-not-fit", message, section.leave.origin, hint, env.size)])
    return OpenedPlan(cloth, "", stitches, gap, section.left, section.rest)


def go_on_start(piece: Piece, plan: OpenedPlan) -> GoOnStart:
    """How the piece begins on the tube's last round in the same size."""
    return GoOnStart(piece.start.edges[0][0], plan.left, plan.stitches - plan.gap, plan.gap)


def opened_lengths(section: object, gauge: Gauge) -> dict[str, EdgeLength]:
    """The two edges of an opened tube: what is left, and what goes on."""
    if not isinstance(section, OpenedPlan):
        return {}
    shares = {section.left: section.gap, section.rest: section.stitches - section.gap}
    return {name: EdgeLength(gauge.width_of(count), 0, count) for name, count in shares.items()}


def opened_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Openings out of place, and pieces that go on from something that isn't opened."""
    for index, section in enumerate(piece.sections):
        if not isinstance(section, Opened):
            continue
        if not piece.start.in_rounds or design.fabric(piece.fabric).worked == "turned rounds":
            message = f"{piece.key} isn't worked in rounds that are not turned, and only those are opened"
            yield Problem("opened-in-rows", message, section.origin, "start it with a centre or a ring, in joined or spiral rounds")
        if index < len(piece.sections) - 1:
            message = f"{piece.key} has sections after it is opened, where another piece goes on"
            yield Problem("opened-not-last", message, section.origin, "put `open` last")
        elif index == 0:
            message = f"{piece.key} has no round to be opened"
            yield Problem("opened-not-last", message, section.origin, "put a section such as `even: {length: 10 cm}` before it")
        if section.left == section.rest or {section.left, section.rest} & {piece.bottom, piece.top, "bottom", "top"}:
            message = f"one name stands for two different edges of {piece.key}"
            yield Problem("edge-twice", message, section.origin, "give `left` and `rest` names of their own")
    yield from _start_faults(piece, design)


def _start_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    if piece.start.kind != "go on":
        return
    (key, name), origin = piece.start.edges[0], piece.start.origin
    last = design.piece(key).sections[-1]
    if not isinstance(last, Opened) or name != last.rest:
        hint = f"write `go_on: {key}.{last.rest}`" if isinstance(last, Opened) else f"end {key} with `open: {{leave: 8 cm}}`"
        yield Problem("nothing-to-go-on", f"{key}.{name} is no part of an opened tube", origin, hint)
