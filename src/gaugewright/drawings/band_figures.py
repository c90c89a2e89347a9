"""A picked-up band in rows as it is drawn: laid out straight, gaping at the corners where it loses stitches.

In: its figure as an even strip, plans and rows of all sizes. Out: the same with its corners cut out, its
buttonholes, and what is measured at both.
"""

from collections.abc import Iterator
from dataclasses import replace

from gaugewright.drawings.model import Measure, PieceFigure
from gaugewright.grading.buttonholes import HolePlan
from gaugewright.grading.model import GradedPiece, Point
from gaugewright.grading.plan import PiecePlan
from gaugewright.sized import Sized
from gaugewright.tolerances import SAME_LENGTH


LAID_STRAIGHT = "laid out straight; it gapes at the corners where it loses stitches, and its outer edge is measured without the gaps"


def with_corners_and_holes(figure: PieceFigure, plans: Sized[PiecePlan], graded: Sized[GradedPiece]) -> PieceFigure:
    """The band in the size drawn; a figure without corners and buttonholes as it is."""
    plan, piece = plans[figure.drawn_size], graded[figure.drawn_size]
    outline = _cut(plan, piece) if plan.corners else figure.outline
    measures = (*(_outer(figure, graded) if plan.corners else ()), *_between_holes(figure, plans, graded))
    first, *others = figure.measures
    note = LAID_STRAIGHT if len(outline) > len(figure.outline) else ""
    return replace(figure, outline=outline, note=note, along=plan.holes.along * _stitch(piece) if plan.holes else 0.0, measures=(first, *measures, *others), holes=tuple(_holes(plan, piece)))


def _stitch(piece: GradedPiece) -> float:
    left, right = piece.outline.starting[0][0], piece.outline.far[0][0]
    return (right - left) / piece.main.start.stitches


def _cut(plan: PiecePlan, piece: GradedPiece) -> tuple[Point, ...]:
    """The strip with a gap over each corner that loses stitches, as wide at the outer edge as what is lost."""
    width, heights = piece.outline.far[0][0], piece.outline.heights
    points: list[Point] = [(width, 0.0), (width, heights[-1])]
    for corner in reversed(plan.corners):
        lost = -sum(corner.changes) * _stitch(piece)
        middle = (corner.at - 0.5) * _stitch(piece)
        if lost > 0:
            points += [(middle + lost / 2, heights[-1]), (middle, heights[1]), (middle - lost / 2, heights[-1])]
    return (*points, (0.0, heights[-1]), (0.0, 0.0))


def _outer(figure: PieceFigure, graded: Sized[GradedPiece]) -> Iterator[Measure]:
    """The outer edge, where corners make it another length than the inner one."""
    values = tuple(piece.edges["top"].length for piece in graded)
    if any(abs(piece.edges["bottom"].length - value) > SAME_LENGTH for piece, value in zip(graded, values, strict=True)):
        outline = graded[figure.drawn_size].outline
        yield Measure("Length along the outer edge", "across", outline.starting[-1], outline.far[-1], values)


def _middles(plan: HolePlan, stitches: int) -> list[float]:
    """Each buttonhole's middle in stitches from the end where the pick-up row begins."""
    along = [first - 1 + plan.each / 2 for first in plan.firsts]
    return along if plan.from_start else [stitches - place for place in along]


def _between_holes(figure: PieceFigure, plans: Sized[PiecePlan], graded: Sized[GradedPiece]) -> Iterator[Measure]:
    drawn = plans[figure.drawn_size].holes
    if drawn is None or len(drawn.firsts) < 2:
        return
    values = []
    for plan, piece in zip(plans, graded, strict=True):
        assert plan.holes is not None  # buttonholes are in every size or in none
        values.append((plan.holes.firsts[-1] - plan.holes.firsts[0]) / (len(plan.holes.firsts) - 1) * _stitch(piece))
    piece = graded[figure.drawn_size]
    ends = [(middle * _stitch(piece), _height(drawn, piece)) for middle in sorted(_middles(drawn, piece.main.start.stitches))[:2]]
    yield Measure("From buttonhole to buttonhole", "across", ends[0], ends[1], tuple(values))


def _height(plan: HolePlan, piece: GradedPiece) -> float:
    heights = piece.outline.heights
    return (heights[plan.row - 1] + heights[plan.row]) / 2


def _holes(plan: PiecePlan, piece: GradedPiece) -> Iterator[tuple[Point, Point]]:
    if plan.holes is not None:
        half = plan.holes.each / 2
        for middle in _middles(plan.holes, piece.main.start.stitches):
            y = _height(plan.holes, piece)
            yield ((middle - half) * _stitch(piece), y), ((middle + half) * _stitch(piece), y)
