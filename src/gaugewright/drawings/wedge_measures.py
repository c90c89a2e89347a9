"""What a drawing tells of a wedge: its place, and how high the piece is with it. The outline stays that of the side edges."""

from collections.abc import Iterator

from gaugewright.drawings.model import Measure
from gaugewright.grading.model import GradedPiece, Outline, Point
from gaugewright.grading.plan import PiecePlan
from gaugewright.sized import Sized


def wedge_measures(plans: Sized[PiecePlan], graded: Sized[GradedPiece], drawn: str) -> Iterator[Measure]:
    """The whole height with the wedge, if some size has one; it is the whole height where a size has none."""
    if any(any(plan.wedges()) for plan in plans):
        far = graded[drawn].outline.far
        yield Measure("Whole height with the wedge", "up", far[0], far[-1], tuple(piece.worked["longest"] for piece in graded))


def wedge_marks(plan: PiecePlan, outline: Outline) -> tuple[tuple[str, Point], ...]:
    """Where the wedge lies: at its deepest edge, or at the far edge beside its middle."""
    return tuple(("wedge", (outline.starting if wedge.at == "starting" else outline.far)[after]) for after, wedge in plan.wedges())
