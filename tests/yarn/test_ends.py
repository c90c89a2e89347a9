"""Ends to weave in: two of each strand, and none where one piece goes on from another without a cut."""

from pathlib import Path

import pytest

from gaugewright import pipeline
from gaugewright.yarn.amounts import amounts
from gaugewright.yarn.ends import any_goes_on, ends_of_pieces

TESTS = Path(__file__).parents[1]
DUNLIN = (TESTS.parent / "samples" / "dunlin-yoke" / "spec.yaml").read_text(encoding="utf-8")


def of_size(text: str, folder: Path, size: str) -> tuple[pipeline.Graded, dict[str, dict[str, int]]]:
    file = folder / "spec.yaml"
    file.write_text(text, encoding="utf-8")
    graded = pipeline.grade(pipeline.load(file))
    return graded, ends_of_pieces(graded.design, {key: sized[size] for key, sized in graded.grading.pieces.items()})


def test_a_body_goes_on_with_its_yokes_yarn_and_the_sleeves_begin_anew(tmp_path: Path) -> None:
    """The yoke's slate begins in the yoke and ends in the body: one end in each; each of the two sleeves has two."""
    _, ends = of_size(DUNLIN, tmp_path, "M")
    assert ends == {"yoke": {"shell": 2, "slate": 1}, "lower_body": {"slate": 1}, "sleeve": {"slate": 4}}


def test_a_body_in_another_yarn_is_joined_anew(tmp_path: Path) -> None:
    body = "  lower_body:\n    title: Body\n    fabric: body\n    colours: "
    assert body + "slate\n" in DUNLIN
    _, ends = of_size(DUNLIN.replace(body + "slate\n", body + "shell\n"), tmp_path, "M")
    assert ends["yoke"] == {"shell": 2, "slate": 2}
    assert ends["lower_body"] == {"shell": 2}


def test_rows_over_a_tubes_last_round_go_on_with_its_yarn(tmp_path: Path) -> None:
    """Two slippers: the yarn begins at the toe and ends at the heel; the border is joined anew."""
    _, ends = of_size((TESTS / "cases" / "slipper" / "spec.yaml").read_text(encoding="utf-8"), tmp_path, "M")
    assert ends == {"foot": {"oat": 2}, "heel": {"oat": 2}, "border": {"oat": 4}}


def test_pieces_of_their_own_have_both_ends() -> None:
    graded = pipeline.grade(pipeline.load(TESTS.parent / "samples" / "shingle-bag" / "spec.yaml"))
    pieces = {key: sized["Small"] for key, sized in graded.grading.pieces.items()}
    assert not any_goes_on(pieces)
    assert all(number % 2 == 0 for ends in ends_of_pieces(graded.design, pieces).values() for number in ends.values())


def test_yarn_is_reckoned_for_the_ends_that_there_are(tmp_path: Path) -> None:
    """Dunlin's six ends of slate, 15.24 cm each as cut."""
    graded, ends = of_size(DUNLIN, tmp_path, "M")
    yarn = graded.design.yarn("slate")
    found = amounts(graded.design, {key: sized["M"] for key, sized in graded.grading.pieces.items()})
    assert found is not None and yarn.ball_mass and yarn.ball_length
    number = sum(one.get("slate", 0) for one in ends.values())
    assert number == 6 and found["slate"].counted.tails == pytest.approx(number * 152.4 * yarn.ball_mass / yarn.ball_length, rel=1e-6)
