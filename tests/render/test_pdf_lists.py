"""The last item of a list, or the last of some cautions, never stands alone at the head of a page."""

import pytest

from gaugewright.instructions.nodes import Paragraph, plain
from gaugewright.render.pdf.boxes import TextBox
from gaugewright.render.pdf.compose import Frame, compose
from gaugewright.render.pdf.faces import load_faces
from gaugewright.render.pdf.pages import paginate
from gaugewright.render.pdf.style import Style
from gaugewright.render.pdf.tags import Structure
from gaugewright.render.reading_order import Bullets, Part


def runs(role: str) -> tuple[Part, ...]:
    items = tuple(Paragraph(plain(f"Item {number} of the run."), role) for number in range(1, 9))  # type: ignore[arg-type]
    after = Paragraph(plain("What stands below."), "body")
    return (Bullets(items), after) if role == "bullet" else (*items, after)


@pytest.mark.parametrize("role", ["bullet", "caution"])
@pytest.mark.parametrize("height", range(60, 260, 4))
def test_no_last_item_begins_a_page(role: str, height: int, style: Style) -> None:
    boxes = compose(runs(role), load_faces(style), style, Frame(0, 0, 400, float(height)), Structure())
    pages = paginate(boxes, float(height))
    heads = [page.boxes[0][0] for page in pages]
    texts = ["".join(text for line in box.lines for _, text in line.runs) for box in heads if isinstance(box, TextBox)]
    assert texts and not any("Item 8" in text for text in texts)
