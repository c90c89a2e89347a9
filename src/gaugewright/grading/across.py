"""Stitches across a piece row by row, as a tape measures it: over the neck opening and the shoulders' slopes.

A slope leaves stitches on the last rows, but the shoulders stay as wide as they are; both sides of a
divided top stand as far apart as the neck is wide.
"""

from gaugewright.grading.model import Strip
from gaugewright.grading.plan import DividedPlan, PiecePlan, ProfilePlan, ShouldersPlan
from gaugewright.grading.shape_plans import EdgeParts


def stitches_across(plan: PiecePlan, strips: tuple[Strip, ...]) -> tuple[int, ...]:
    """Stitches of each row of the piece, with what its slopes have left and its neck has taken so far."""
    main, *sides = strips
    above = (sum(row.across for row in rows) for rows in zip(*(side.rows for side in sides), strict=True))
    worked = [*(row.across for row in main.rows), *above]
    row = over = 0
    found: list[int] = []
    for section in plan.sections:
        edges, centre = _edges(section)
        neck = _after(edges, section.rows, "neck") if isinstance(section, DividedPlan) else [0] * section.rows
        sloped = _after(edges, section.rows, "shoulder")
        found += [worked[row + i] + over + sloped[i] + centre + neck[i] for i in range(section.rows)]
        over += sloped[-1] if sloped else 0
        row += section.rows
    return tuple(found)


def _edges(section: object) -> tuple[tuple[EdgeParts, ...], int]:
    """What is shaped at each edge of a section, and the stitches left at a neck's centre."""
    match section:
        case ProfilePlan(starting=starting, far=far):
            return (starting, far), 0
        case DividedPlan(outer=outer, inner=inner, centre=centre):
            return (outer, outer, inner, inner), centre
        case ShouldersPlan(slope=slope):
            return (slope, slope), 0
    return (), 0


def _after(edges: tuple[EdgeParts, ...], rows: int, name: str) -> list[int]:
    """Stitches that the parts of that name have taken after each row, at all edges together."""
    parts = [part.profile.after() for parts in edges for part in parts if part.name == name]
    return [sum(gone[row] for gone in parts) for row in range(rows)]
