"""Openings worked into a piece: where they lie, their row, the edge that goes round them.

A thumb's or a pocket's opening is one row or round: stitches are passed over and as many chains made over
them, so that the count stays. Stitches below, chains above and a stitch in each corner are what is picked up.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from gaugewright.design.model import TOPS, Design, Piece
from gaugewright.design.slits import Slit, slit_edges
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.model import EdgeLength, Run, bridge, turning_chain, work
from gaugewright.rounding import half_up, up
from gaugewright.sizing.environment import Environment
from gaugewright.vocabulary import Worked

FEWEST = 2
"""Over one stitch a chain leaves a buttonhole, round which nothing can be picked up."""

CORNERS = 2
"""One stitch picked up in each corner closes the gap beside the chain (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class SlitPlan:
    """One row of `stitches`: in the order of working `before` of them, then `each` passed over, then the others."""

    cloth: Cloth
    colour: str
    stitches: int
    edge: str
    before: int
    each: int
    rows: int = 1

    @property
    def end(self) -> int:
        """As many as before: each chain takes a stitch's place."""
        return self.stitches

    @property
    def after(self) -> int:
        """Stitches worked after the opening.

        >>> SlitPlan(Cloth("body", "hdc", "both", 1, False), "", 30, "thumb", 1, 6).after
        23
        """
        return self.stitches - self.before - self.each


def slit_plan(section: Slit, cloth: Cloth, gauge: Gauge, env: Environment, stitches: int, reversed_: bool) -> SlitPlan:
    """The opening of one size; `reversed_` where its row is worked from the far edge. Raises `opening-does-not-fit`."""
    exact = gauge.stitches_in(env.length(section.width))
    each = half_up(exact)
    inset = 1 if section.inset is None else max(1, half_up(gauge.stitches_in(env.length(section.inset))))
    if each < FEWEST:
        hint = f"make it at least {up(gauge.width_of(FEWEST)) / 10:.1f} cm wide"
        raise _misfit(section, env, f"the {section.edge} opening is {each} of {FEWEST} stitches wide that it takes", hint)
    room = stitches - 2 * inset if section.at == "middle" else stitches - inset - 1
    if each > room:
        message = f"the {section.edge} opening takes {each} of {stitches} stitches, and {max(room, 0)} is the most here"
        hint = f"make it at most {gauge.width_of(room) / 10:.1f} cm wide" if room >= FEWEST else "give it a smaller `inset`, or a wider piece"
        raise _misfit(section, env, message, hint)
    before = {"start": inset, "middle": (stitches - each) // 2, "end": stitches - inset - each}[section.at]
    return SlitPlan(cloth, section.colour, stitches, section.edge, stitches - each - before if reversed_ else before, each)


def _misfit(section: Slit, env: Environment, message: str, hint: str) -> ProblemsFound:
    return ProblemsFound([Problem("opening-does-not-fit", message, section.width.origin, hint, env.size)])


def works_back(worked: Worked, row: int) -> bool:
    """Whether a row begins at the far edge: every second one where the work is turned.

    >>> works_back("rows", 2), works_back("turned rounds", 3), works_back("spiral rounds", 2)
    (True, False, False)
    """
    return worked in ("rows", "turned rounds") and row % 2 == 0


def slit_row(plan: SlitPlan, colour: str) -> Iterator[Run]:
    """The runs of its row."""
    cloth, plain = plan.cloth, work(plan.cloth.stitch, plan.cloth.loop)
    if cloth.chains:
        yield Run(turning_chain(cloth.stitch, cloth.counts), 1, colour, cloth.fabric)
    yield Run(plain, plan.before - int(cloth.counts), colour, cloth.fabric)
    yield Run(bridge(), plan.each, colour, cloth.fabric)
    yield Run(plain, plan.after, colour, cloth.fabric)


def slit_lengths(plans: Iterable[object], gauges: Mapping[str, Gauge]) -> dict[str, EdgeLength]:
    """The edge round each opening: along the stitches, up the row at one corner, along the chains, down at the other.

    Picked up it is the stitches, the chains and one stitch in each corner.
    """
    found = {}
    for plan in plans:
        if isinstance(plan, SlitPlan):
            gauge = gauges[plan.cloth.fabric]
            length = 2 * gauge.width_of(plan.each) + CORNERS * gauge.row_height
            found[plan.edge] = EdgeLength(length, 0, 2 * plan.each + CORNERS, chains=plan.each)
    return found


def slit_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Openings with no row below or above them, and names that stand for two edges."""
    names = slit_edges(piece.sections)
    others = {piece.bottom, piece.top, "top", "bottom", "starting", "far", *(edge.name for edge in piece.edges)}
    for index, section in enumerate(piece.sections):
        if not isinstance(section, Slit):
            continue
        if index == 0:
            message = f"the {section.edge} opening of {piece.key} has no row below it"
            yield Problem("opening-misplaced", message, section.origin, "put a section such as `even: {length: 5 cm}` before it")
        if all(isinstance(above, TOPS) for above in piece.sections[index + 1 :]):
            message = f"the {section.edge} opening of {piece.key} has no row above it, whose stitches go into its chain"
            yield Problem("opening-misplaced", message, section.origin, "put a section such as `even: {length: 5 cm}` after it")
        elif isinstance(piece.sections[index + 1], Slit):
            message = f"the {section.edge} opening of {piece.key} is followed by another at once, which would pass over its chain"
            yield Problem("opening-misplaced", message, section.origin, "put a section such as `even: {rows: 2}` between them")
        if names.count(section.edge) > 1 or section.edge in others:
            message = f"{section.edge} names two different edges of {piece.key}"
            yield Problem("edge-twice", message, section.origin, "give the opening's edge a name of its own")
