"""The sheet for test makers: what stands on it, in which order, and that it is one page."""

from functools import cache
from io import BytesIO

import pytest
from pypdf import PdfReader

from cli.running import ROOT
from gaugewright import pipeline
from gaugewright.changes import fabrics_of, measures_of
from gaugewright.instructions.nodes import Document, Paragraph, Table, is_blank, spans_text
from gaugewright.render.pdf import Paper, load_style, one_page, render_pdf
from gaugewright.render.text import render_text
from gaugewright.rounding import up_to_step
from gaugewright.units import cm_text, inches_text

SAMPLES = sorted(path.name for path in (ROOT / "samples").iterdir())


@cache
def graded(name: str) -> pipeline.Graded:
    return pipeline.grade(pipeline.load(ROOT / "samples" / name / "spec.yaml"))


def sheet(name: str, *sizes: str) -> Document:
    return pipeline.sheet(graded(name), pipeline.Edition(sizes))


def tables(document: Document) -> list[Table]:
    return [block for block in document.blocks if isinstance(block, Table)]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", SAMPLES)
def test_every_sample_has_a_sheet_of_one_page(name: str, paper: Paper) -> None:
    document = sheet(name)
    data = render_pdf(document, paper, one_page(document, paper, load_style("sheet")))
    (page,) = PdfReader(BytesIO(data)).pages
    words = " ".join(page.extract_text().replace("\u00a0", " ").split())
    for piece in graded(name).design.pieces:
        assert piece.title in words
    assert graded(name).design.about.title in words and "1 / 1" in words


def test_rows_have_as_much_room_as_the_page_leaves() -> None:
    """A hat has few rows and room for each; a jacket in nine sizes has less, on Letter least."""
    style = load_style("sheet")
    hat, jacket, letter = (one_page(sheet(name), paper, style).table.padding for name, paper in (("lamplighter-hat", "a4"), ("saltmarsh-jacket", "a4"), ("saltmarsh-jacket", "letter")))  # type: ignore[arg-type]
    assert hat == style.table.padding > jacket > letter >= 1.6


@pytest.mark.parametrize("name", SAMPLES)
def test_every_row_has_its_predictions_and_a_blank(name: str) -> None:
    pattern = pipeline.side(graded(name))
    gauges, measures, yarns, pieces, hard = tables(sheet(name))
    assert len(gauges.rows) == len(fabrics_of(pattern)) and len(pieces.rows) == len(pattern.design.pieces)
    text = cm_text if pattern.design.about.units == "cm" else inches_text
    assert [row[:-1] for row in measures.rows] == [(label, *map(text, values)) for _, label, values in measures_of(pattern)]
    for amounts, column in zip(pattern.amounts, range(1, len(pattern.amounts) + 1), strict=True):
        if amounts is not None:
            assert {row[column] for row in yarns.rows} - {"–"} == {f"{up_to_step(one.total, 5):.0f}" for one in amounts.values()}
    assert all(is_blank(row[-1]) for table in (gauges, measures, yarns, pieces, hard) for row in table.rows)


def test_a_size_of_its_own_has_its_own_figures_alone() -> None:
    _, measures, yarns, *_ = tables(sheet("saltmarsh-jacket", "M"))
    assert measures.header == ("Measure", "M", "Yours") and yarns.header == ("Colour", "M", "Used")
    boxes = [spans_text(block.spans) for block in sheet("saltmarsh-jacket", "M").blocks if isinstance(block, Paragraph) and block.label == "Size made:"]
    assert boxes == ["☐\u00a0M"]


def test_another_gauge_is_told_on_its_sheet() -> None:
    from gaugewright.gauge.model import Gauge

    path = ROOT / "samples/lamplighter-hat/spec.yaml"
    other = pipeline.grade(pipeline.load(path, Gauge(9, 100, 8, 100)))
    document = pipeline.sheet(other, pipeline.Edition(own_gauge="9 sts, 8 rows / 10 cm"))
    assert "worked at" in document.footer and tables(document)[0].rows[0][1].replace("\u00a0", " ").startswith("9 sts, 8 rnds")


def test_blanks_are_lines_in_the_text() -> None:
    text = render_text(sheet("lamplighter-hat"))
    (around,) = (line for line in text.splitlines() if line.startswith("Around"))
    assert around.endswith("  ________________") and "☐ Child" in text and "Name or sign, if you like; it is never printed: ____" in text


def test_an_unweighed_pattern_leaves_yarn_blank() -> None:
    from advice.test_returns import TABARD
    from tiny_specs import designed

    document = pipeline.sheet(pipeline.grade(designed(TABARD.replace(", mass: 40 g", ""))), pipeline.Edition())
    assert tables(document)[2].header == ("Colour", "Used") and [row[0] for row in tables(document)[2].rows] == ["Oat", "Kelp"]
