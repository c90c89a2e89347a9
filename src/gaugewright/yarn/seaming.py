"""The strands that seams are sewn with, for a yarn bought for them alone."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Design
from gaugewright.design.sides import is_folded, on_both_sides
from gaugewright.grading.model import GradedPiece
from gaugewright.trade.tails import tail


def strands(design: Design, pieces: Mapping[str, GradedPiece]) -> Iterator[tuple[str, float]]:
    """Colour and mm of each seam's strand, some times its length, in the first colour of the joined piece's last row; on both
    sides of the garment two. An edge folded and sewn to itself is half as long as a seam.
    """
    for seam in design.seams:
        piece = pieces[seam.join.piece]
        length = piece.edges[seam.join.edge].length / (2 if is_folded(design, seam) else 1)
        times = 2 if on_both_sides(design, seam) else 1
        yield piece.main.rows[-1].colours[0], tail("seam factor") * length * times
