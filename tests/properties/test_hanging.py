"""Growth over its whole range: none of it changes nothing, more of it never takes more rows, and what hangs has the length wanted."""

import re
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import designed

from gaugewright import pipeline
from gaugewright.instructions.nodes import Document
from gaugewright.render.text import render_text

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*/spec.yaml"))

PANEL = """\
gaugewright: 1
pattern: {title: Lock Panel, workshop: Ferry Lane Workshop}
yarns: {oat: {weight: 6, ball: {mass: 100 g, length: 60 m}}}
fabrics: {plain: {stitch: hdc, growth: GROWTH %, swatch: {stitches: 12, rows: 9, width: 20 cm, height: 19 cm, mass: 40 g}}}
pieces:
  panel: {start: {chain: 40 cm}, sections: [even: {length: LENGTH cm}], edges: {both: [side], bottom: hem}}
finished: {length: {measure: finished(panel.length)}}
"""


def written(text: str) -> Document:
    return pipeline.document(pipeline.grade(designed(text)), pipeline.Edition())


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.parent.name)
def test_no_growth_leaves_every_sample_as_it_is(path: Path) -> None:
    """Its pages as text with `growth: 0 %` in each fabric are those without, but that nobody asks any more whether it grows."""
    spec = path.read_text(encoding="utf-8")
    block = re.search(r"^fabrics:\n((?:[ #].*\n|\n)*)", spec, re.MULTILINE)
    assert block is not None
    flow = re.sub(r"^(  \w+:\s*\{)", r"\1growth: 0 %, ", block[1], flags=re.MULTILINE)
    nought = re.sub(r"^(  \w+:)[ \t]*(#.*)?$", r"\1\n    growth: 0 %", flow, flags=re.MULTILINE)
    assert nought.count("growth: 0 %") == len(re.findall(r"^  \w+:", block[1], re.MULTILINE)) > 0
    plain, judged = (written(text) for text in (spec, spec.replace(block[1], nought)))
    assert pipeline.drawings_of(plain) == pipeline.drawings_of(judged)
    asked = re.compile(r"So much cloth lengthens.*?\n\n", re.DOTALL)
    assert asked.sub("", render_text(plain)) == render_text(judged)
    assert asked.search(render_text(judged)) is None


@cache
def graded(growth: int, length: int) -> pipeline.Graded:
    """A panel so long when it hangs; growth in tenths of a percent."""
    return pipeline.grade(designed(PANEL.replace("GROWTH", f"{growth / 10:g}").replace("LENGTH", str(length))))


@settings(deadline=None, max_examples=60)
@given(st.integers(0, 500), st.integers(0, 500), st.integers(20, 120))
def test_what_grows_more_never_needs_more_rows_or_yarn(one: int, other: int, length: int) -> None:
    less, more = (graded(growth, length) for growth in sorted((one, other)))
    rows = [len(each.grading.pieces["panel"].values[0].main.rows) for each in (less, more)]
    assert rows[0] >= rows[1]
    grams = [(each.amounts.values[0] or {})["oat"].total for each in map(pipeline.side, (less, more))]
    assert grams[0] >= grams[1]


@settings(deadline=None, max_examples=60)
@given(st.integers(0, 500), st.integers(20, 120))
def test_what_hangs_is_as_long_as_wanted_to_half_a_row(growth: int, length: int) -> None:
    one = graded(growth, length)
    fabric = one.design.fabric("plain")
    found = pipeline.side(one).finished["length"].values[0]
    assert abs(found - length * 10) <= fabric.gauge.row_height / 2 + 1e-6
    rows = len(one.grading.pieces["panel"].values[0].main.rows)
    assert found == pytest.approx(rows * fabric.flat.row_height * (1 + fabric.growth))
    # What the page gives as flat is what so many rows of the flat swatch measure.
    assert fabric.growth == pytest.approx(growth / 1000, abs=0.1 / fabric.flat.height)
