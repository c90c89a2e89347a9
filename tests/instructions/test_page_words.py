"""Sentences that readers of whole pages stumbled over, on the samples that had them."""

from functools import cache
from pathlib import Path

import pytest

from gaugewright import pipeline
from gaugewright.render.text import render_text

SAMPLES = Path(__file__).parents[2] / "samples"


@cache
def page(name: str) -> str:
    """A sample's whole text, each chapter's lines run together."""
    graded = pipeline.grade(pipeline.load(SAMPLES / name / "spec.yaml"))
    return " ".join(render_text(pipeline.document(graded, pipeline.Edition())).split()).replace("\u00a0", " ")


def chapter(name: str, title: str, after: str) -> str:
    """What stands between two headings."""
    return page(name).split(f" {title} {'-' * len(title)} ")[1].split(f" {after} {'-' * len(after)} ")[0]


@pytest.mark.parametrize(("name", "title", "after", "checked"), [("shingle-bag", "Back", "Strap", True), ("shingle-bag", "Strap", "Finishing", False), ("turnstone-vest", "Pocket", "Hood", False)])
def test_no_width_is_checked_that_a_tape_cant_tell(name: str, title: str, after: str, checked: bool) -> None:
    """Two in a hundred of a strap of 4.5 cm are a millimetre."""
    assert ("Check: After Row 4 the piece should be" in chapter(name, title, after)) == checked


def test_measures_that_the_chart_lacks_are_listed_as_words() -> None:
    assert "The chart has no head or wrist:" in page("dunlin-yoke")


def test_a_sloped_shoulder_says_which_stitches_its_seam_takes() -> None:
    """Ten in XS: 3 left on each of Rows 45 and 46, and the 4 of Row 46."""
    told = "Its 10 (11, 12, 13, 13, 13, 13, 13, 13) sts are those of its last row and those left at the edge of the armhole for the slope."
    assert page("breakwater-pullover").count(told) == 2
    assert "10 (11, 12, 13, 13, 13, 13, 13, 13) sts on each side" in page("breakwater-pullover")


def test_a_cap_is_pinned_to_the_underarm_before_the_side_is_sewn() -> None:
    assert "the two ends of the cap to the ends of the armhole, at the underarm" in page("breakwater-pullover")


def test_row_ends_that_take_three_are_told() -> None:
    """Ten stitches along the four row ends of the back neck."""
    assert "and 10 along its 4 row ends" in page("breakwater-pullover")
    assert "Along the neck edge of the Back, in 2 of the 4 row ends work 3 sc, in the others 2." in page("breakwater-pullover")
    assert "Along the front edge of the Right Front and Left Front, in " in page("groyne-vest")


def test_a_pocket_says_on_which_front_it_is_sewn() -> None:
    found = page("turnstone-vest")
    assert "Sew the Pocket on the Right Front (seam A)." in found and "Sew the Pocket on the Left Front (seam B)." in found


def test_a_strap_is_told_as_worked_and_as_worn() -> None:
    """8 cm of 100 lie over the sides."""
    assert "finished: strap, from side to side 92 96 100" in page("shingle-bag")
    assert "The piece now measures 100 (104, 108) cm" in page("shingle-bag")
