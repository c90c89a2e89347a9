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
