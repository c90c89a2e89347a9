"""What may come to lie in a bed is kept out of cots by itself, whatever table its sizes are from."""

import pytest
from tiny_specs import HEAD, designed

from gaugewright import pipeline
from gaugewright.instructions.nodes import Paragraph, spans_text
from gaugewright.pipeline import Edition, Graded
from gaugewright.grading.grade import grade
from gaugewright.sizing.bodies import bodies, environments


@pytest.mark.parametrize(("grid", "told"), [(", grid: {across: 60 cm, down: 60 cm}", True), ("", False)])
def test_a_throw_is_no_bedding_for_a_cot(grid: str, told: bool) -> None:
    design = designed(HEAD + f"pieces:\n  tile: {{fabric: round, colours: oat, start: {{centre: flat}}, sections: [motif: {{sides: 4, rounds: 6}}]{grid}}}\n")
    of_bodies = bodies(design)
    doc = pipeline.document(Graded(design, of_bodies, grade(design, environments(design, of_bodies))), Edition())
    cautions = [spans_text(one.spans) for one in doc.blocks if isinstance(one, Paragraph) and one.role == "caution"]
    assert any("a sleeping baby" in text for text in cautions) == told
