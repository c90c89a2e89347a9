"""A border round joined motifs as it lies: the whole with its border, the rim between them."""

from gaugewright.design.model import Piece
from gaugewright.drawings.model import Measure, PieceFigure
from gaugewright.drawings.primitives import Point
from gaugewright.grading.model import EdgeStart, GradedPiece, RimPick
from gaugewright.grading.rim import offset, rim_of
from gaugewright.sized import Sized

INSIDE = "drawn as it lies round the joined motifs; the thin line is their outer edge"


def rim_pick(graded: GradedPiece) -> RimPick | None:
    """What a border is picked up on; None of any other piece."""
    start = graded.main.start
    return start.pick_ups[0].rim if isinstance(start, EdgeStart) else None


def border_figure(piece: Piece, rim_picked: RimPick, graded: Sized[GradedPiece], drawn: str) -> PieceFigure:
    """The border in the size drawn, measured over all; its colours are told in words, since its rounds don't lie level."""
    depth = graded[drawn].outline.heights[-1]
    rim = rim_of(rim_picked.layout)
    outer = offset(rim, depth)
    left, low, right, top = min(x for x, _ in outer), min(y for _, y in outer), max(x for x, _ in outer), max(y for _, y in outer)

    def placed(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple((x - left, y - low) for x, y in points)

    middle, inner = (right - left) / 2, placed(rim.points)
    measures = (
        Measure("Across with the border", "across", (0.0, 0.0), (right - left, 0.0), tuple(one.finished["joined_width"] for one in graded)),
        Measure("From top to bottom with the border", "up", (middle, 0.0), (middle, top - low), tuple(one.finished["joined_length"] for one in graded)),
    )
    return PieceFigure(piece.key, piece.title, graded.labels, drawn, placed(outer), measures=measures, rows=((*inner, inner[0]),), note=INSIDE)
