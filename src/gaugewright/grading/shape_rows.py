"""Rows of shaped edges: steps left at a row's end and slip-stitched over at a row's start, or worked together.

A row that begins at an edge takes the edge's step at its start, one that ends there at its end. So both
edges are shaped on the same row, and a mirrored side needs no row more than its twin.
"""

from collections.abc import Callable, Iterator, Sequence

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.model import Row, Run, SpanStart, Strip, decrease, leave, slip_over, turning_chain, work
from gaugewright.grading.profile import EdgeStep
from gaugewright.grading.shape_plans import DividedPlan, EdgeParts, steps_of
from gaugewright.grading.rising import Rise
from gaugewright.grading.rising_rows import rising_row
from gaugewright.vocabulary import Side

Runs = Iterator[Run]
Colours = Sequence[str]


def shaped_rows(
    cloth: Cloth, stitches: int, starting: EdgeParts, far: EdgeParts, colours: Colours, first: int, rising: tuple[Rise, ...] = ()
) -> Iterator[Runs]:
    """The runs of each row between two shaped edges; `first` is the first row's number within the piece.

    Where the stitches are `rising` to the neck, the last row is of those.
    """
    edges = steps_of(starting), steps_of(far)
    for within, colour in enumerate(colours, start=1):
        steps = tuple(edge.get(within) for edge in edges)
        forward = (first + within) % 2 == 0
        begins, ends = steps if forward else reversed(steps)
        if rising and within == len(colours):
            yield rising_row(cloth, rising, any(part.name == "neck" for part in (starting if forward else far)), colour)
        else:
            yield edge_row(cloth, stitches, begins, ends, colour)
        stitches -= sum(step.stitches for step in steps if step is not None)


def edge_row(cloth: Cloth, stitches: int, begins: EdgeStep | None, ends: EdgeStep | None, colour: str) -> Runs:
    """One row over `stitches`. Where the turning chain counts, a decrease stands one stitch in."""
    taken, together = int(cloth.counts), decrease(cloth.stitch, loop=cloth.loop)
    over, first = _split(begins)
    left, last = _split(ends)
    inset = taken if last else 0
    plain = stitches - over - left - together.uses * (first + last) - taken - inset
    yield Run(slip_over(), over, colour, cloth.fabric)
    if cloth.chains:
        yield Run(turning_chain(cloth.stitch, cloth.counts), 1, colour, cloth.fabric)
    yield Run(together, first, colour, cloth.fabric)
    yield Run(work(cloth.stitch, cloth.loop), plain, colour, cloth.fabric)
    yield Run(together, last, colour, cloth.fabric)
    yield Run(work(cloth.stitch, cloth.loop), inset, colour, cloth.fabric)
    yield Run(leave(), left, colour, cloth.fabric)


def _split(step: EdgeStep | None) -> tuple[int, int]:
    """Stitches not worked at all, and decreases."""
    if step is None:
        return 0, 0
    return (step.stitches, 0) if step.way == "leave" else (0, step.stitches)


def least_row(cloth: Cloth, begins: EdgeStep | None, ends: EdgeStep | None) -> int:
    """The stitches that such a row needs: what it leaves, two for each decrease, and one worked plain.

    Each decrease lies in the half of the row nearest its edge: in the very middle it would be at neither.

    >>> body = Cloth("body", "hdc", "both", 2, False)
    >>> least_row(body, EdgeStep(1, 3, "leave"), EdgeStep(1, 1, "decrease"))
    5
    >>> least_row(body, None, EdgeStep(1, 1, "decrease")), least_row(body, None, EdgeStep(1, 2, "decrease"))
    (3, 7)
    """
    (over, first), (left, last) = _split(begins), _split(ends)
    taken = int(cloth.counts)
    worked = over + left + max(1, 2 * (first + last) + taken * (1 + bool(last)))
    return max(worked, *(4 * decreases - 1 + 2 * taken for decreases in (first, last) if decreases), 1)


def sides_of(
    name: str, section: DividedPlan, first: int, colours: Colours, joined: Callable[[Runs], tuple[Run, ...]]
) -> tuple[Strip, Strip]:
    """Both sides of a divided top, the one that the work goes straight on with first.

    The row before the division ends at the far edge if it is odd: the side there comes first.
    """
    ends_far = first % 2 == 0
    order = ("far", "starting") if ends_far else ("starting", "far")
    found = []
    for label, edge in zip(("first side", "second side"), order, strict=True):
        outer, inner = section.outer, section.inner
        starting, far = (outer, inner) if edge == "starting" else (inner, outer)
        runs = shaped_rows(section.cloth, section.side, starting, far, colours, first, section.rising)
        rows = tuple(Row(joined(each), _face(first + index)) for index, each in enumerate(runs))
        start = SpanStart(name, 0 if edge == "starting" else section.side + section.centre, section.side)
        found.append(Strip(f"{name} {label}", start, "rows", rows))
    return found[0], found[1]


def _face(number: int) -> Side:
    return "RS" if number % 2 else "WS"


def narrowest_fault(cloth: Cloth, stitches: int, starting: EdgeParts, far: EdgeParts, rows: int) -> tuple[int, int, int] | None:
    """The first row with too few stitches for its steps: its number, what it needs, what it has."""
    edges = steps_of(starting), steps_of(far)
    for row in range(1, rows + 1):
        steps = [edge.get(row) for edge in edges]
        for begins, ends in (steps, steps[::-1]):
            if any(steps) and stitches < least_row(cloth, begins, ends):
                return row, least_row(cloth, begins, ends), stitches
        stitches -= sum(step.stitches for step in steps if step is not None)
    return None if stitches > 0 else (rows, 1, stitches)


