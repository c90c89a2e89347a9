"""Openings within a piece: lines on its schematic, and where they lie on a tube drawn flat."""

from collections.abc import Iterator, Sequence

from gaugewright.drawings.dimension_lines import INK, THIN
from gaugewright.drawings.geometry import Segment, box_around
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.placing import write_first_free, write_with_leader
from gaugewright.drawings.primitives import Point, Polyline
from gaugewright.drawings.scene import CLEAR, Scene, centred_label, level_label, text_room
from gaugewright.grading.model import GradedPiece
from gaugewright.grading.plan import PiecePlan
from gaugewright.grading.slits import SlitPlan, works_back
from gaugewright.sized import Sized

SLIT_WIDTH = 0.7
"""Twice an outline: an opening isn't to be taken for a dimension line."""

BESIDE = 2.5
"""Millimetres of paper between the outline and a name beside it."""

Slit = tuple[str, Point, Point]


def draw_slit(scene: Scene, outline: Sequence[Point], name: str, line: Segment) -> Scene:
    """A thick line where the opening lies, its name above or below it."""
    drawn = scene.draw(Polyline(line, SLIT_WIDTH, INK))
    (x0, y), (x1, _) = line
    middle = (x0 + x1) / 2
    width, height = text_room(name)
    within = (centred_label((middle, y + off), name) for off in (-height, height))
    left, _, right, _ = box_around(outline)
    for side, end in ((left - BESIDE, x0), (right + BESIDE, x1)):
        leader = (end, y), (side, y)
        label = level_label(side - CLEAR if side < left else side + CLEAR, y, name, "end" if side < left else "start")
        if width > right - left and not scene.crosses_text(leader) and drawn.has_room(label):
            return drawn.draw(Polyline(leader, THIN, INK)).write(label)
    return write_first_free(drawn, within, plate=True) or write_with_leader(drawn, (middle, y), name)


def listed_openings(figure: PieceFigure) -> str:
    """The openings of a figure in words."""
    return " and ".join(f"the {name}" for name, _, _ in figure.slits)


def slits_of(plan: PiecePlan, graded: GradedPiece) -> Iterator[Slit]:
    """Each opening's line. A tube shows the face that the opening lies on, its beginning at the right of it."""
    row = 0
    for section in plan.sections:
        row += section.rows
        if isinstance(section, SlitPlan):
            before = section.after if works_back(plan.worked, row) else section.before
            (left, y), (right, _) = graded.outline.starting[row - 1], graded.outline.far[row - 1]
            stitch = (right - left) / section.stitches * (1 if plan.worked == "rows" else 2)
            if plan.worked == "rows":
                ends = left + before * stitch, left + (before + section.each) * stitch
            elif 2 * before + section.each <= section.stitches:
                ends = max(left, right - (before + section.each) * stitch), right - before * stitch
            else:
                after = section.stitches - before - section.each
                ends = left + after * stitch, min(right, left + (after + section.each) * stitch)
            yield f"{section.edge} opening".replace("_", " "), (ends[0], y), (ends[1], y)


def heights_to_slits(plans: Sized[PiecePlan]) -> dict[str, Sized[int]]:
    """The last row below each opening, by what it is called."""
    found = {}
    for index, section in enumerate(plans.values[0].sections):
        if isinstance(section, SlitPlan):
            name = f"Height to the {section.edge} opening".replace("_", " ")
            found[name] = plans.map(lambda plan, index=index: sum(one.rows for one in plan.sections[:index]))  # type: ignore[misc]
    return found
