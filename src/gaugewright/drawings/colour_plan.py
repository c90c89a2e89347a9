"""The colours of a piece as its drawing shows them: bands, stripes, and blocks with their numbers."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import accumulate, groupby

from gaugewright.drawings.model import ColourBand, PieceFigure
from gaugewright.grading.model import GradedPiece, Point
from gaugewright.grading.plan import BlockPlan, PiecePlan

Yarns = Mapping[str, tuple[str, str]]
"""Name and colour of each yarn."""


def colour_plan(plan: PiecePlan, graded: GradedPiece, yarns: Yarns) -> tuple[ColourBand, ...]:
    """All bands from the bottom edge up; blocks in order from the starting edge, numbered as in the words."""
    heights = graded.outline.heights
    found = [ColourBand(*yarns[colour], heights[first - 1], heights[last]) for colour, first, last in _whole_rows(plan)]
    number = 0
    for blocks in plan.blocks:
        if blocks.several:
            for band in _blocks(blocks, graded, yarns, number):
                number = band.number
                found.append(band)
    return tuple(found)


def _whole_rows(plan: PiecePlan) -> Iterator[tuple[str, int, int]]:
    """Rows of one colour together, without those in blocks."""
    in_blocks = {row for blocks in plan.blocks if blocks.several for row in range(blocks.first, blocks.last + 1)}
    first = 1
    for colour, group in groupby("" if row in in_blocks else plan.colour_of(row) for row in range(1, plan.rows + 1)):
        last = first + len(list(group)) - 1
        if colour:
            yield colour, first, last
        first = last + 1


def _blocks(blocks: BlockPlan, graded: GradedPiece, yarns: Yarns, before: int) -> Iterator[ColourBand]:
    outline = graded.outline
    (left, _), (right, _) = outline.starting[blocks.first], outline.far[blocks.first]
    makes = graded.main.rows[blocks.first - 1].makes
    lines = [left + (right - left) * line / makes for line in accumulate(stitches for _, stitches in blocks.blocks)]
    ends = [None, *lines[:-1], None]
    for index, (colour, _) in enumerate(blocks.blocks):
        bottom, top = outline.heights[blocks.first - 1], outline.heights[blocks.last]
        yield ColourBand(*yarns[colour], bottom, top, ends[index], ends[index + 1], before + index + 1)


def opened(figure: PieceFigure) -> PieceFigure:
    """A round laid flat in half its width, drawn cut open where its rounds begin, so that all its blocks show."""
    return replace(
        figure, in_rounds=False, opened=True,
        outline=tuple(_doubled(point) for point in figure.outline),
        bands=tuple(replace(band, left=_twice(band.left), right=_twice(band.right)) for band in figure.bands),
        measures=tuple(replace(one, start=_doubled(one.start), end=_doubled(one.end)) for one in figure.measures),
        marks=tuple((name, _doubled(point)) for name, point in figure.marks),
    )


def _doubled(point: Point) -> Point:
    return 2 * point[0], point[1]


def _twice(x: float | None) -> float | None:
    return None if x is None else 2 * x
