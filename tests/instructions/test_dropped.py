"""Dropped shoulders and modified drops, from their rows to their words."""

import pytest

from gaugewright import pipeline
from gaugewright.checks import run_checks
from gaugewright.instructions.nodes import Table
from instructions.specs import document, graded, pieces_told, told


def seams(name: str) -> dict[str, str]:
    """The seams by their letters."""
    return {one.label: one.text for one in told(document(name)) if one.chapter == "Making up" and one.label}


@pytest.mark.parametrize("name", ["drop-shoulder", "modified-drop"])
def test_everything_fits_in_every_size(name: str) -> None:
    made = graded(name)
    results = run_checks(made.design, made.bodies, made.grading)
    assert [problem for result in results for problem in result.problems if problem.severity != "note" and problem.name != "hips-tight"] == []
    assert not pipeline.errors_of(results)


def test_a_drop_shoulder_has_no_armhole_and_its_sleeve_goes_from_marker_to_marker() -> None:
    back = graded("drop-shoulder").grading.pieces["back"]
    assert [set(piece.main.counts()) for piece in back] == [{50}, {60}, {70}]
    text = " ".join(f"{one.label} {one.text}" for one in pieces_told("drop-shoulder")["back"])
    assert "there the side edge ends and the armhole edge begins" in text
    assert "leave" not in text.lower() and "2tog" not in text
    assert seams("drop-shoulder")["B."].startswith("Fold the Sleeve flat with the join of its rounds at the underarm marker")
    assert "36 (42, 48) sts to 36 (42, 48) row ends, a st to every row." in seams("drop-shoulder")["B."]


def test_a_modified_drop_leaves_all_at_once_and_says_so_without_a_table() -> None:
    made = graded("modified-drop").grading
    for piece in made.pieces["back"]:
        counts = list(piece.main.counts())
        assert len(set(counts)) == 2 and len({after - before for before, after in zip(counts, counts[1:], strict=False)}) == 2
    text = " ".join(one.text for one in pieces_told("modified-drop")["back"])
    first = made.plans["back"].map(lambda plan: plan.sections[0].rows + 1).values
    left = [(piece.main.start.stitches - piece.main.last_count) // 2 for piece in made.pieces["back"]]
    assert f"In Row {first[0]} ({first[1]}, {first[2]}) leave {left[0]} ({left[1]}, {left[2]}) sts at both edges: nothing else is shaped" in text
    assert [block.caption for block in document("modified-drop").blocks if isinstance(block, Table) and "armhole" in block.caption] == []


def test_the_sleeve_of_a_modified_drop_is_sewn_along_the_stitches_left() -> None:
    found = seams("modified-drop")
    edges = graded("modified-drop").grading.pieces["back"].map(lambda piece: piece.edges["left_sts"])
    assert [edge.corners for edge in edges] == [1, 1, 1]
    for letter, side in (("C.", "back"), ("D.", "front")):
        assert found[letter].startswith(f"Join the {side} inset edge of the Sleeve to the left sts edge of the {side.capitalize()}, along the sts left there")
    assert f"{edges.values[0].length / 10:g} ({edges.values[1].length / 10:g}, {edges.values[2].length / 10:g}) cm" in found["C."]
    assert "row ends, a st to every row." in found["B."]
