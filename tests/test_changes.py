"""What another gauge changes, held to what the edition for that gauge prints."""

import re
from decimal import Decimal
from pathlib import Path
from typing import get_args

import pytest

from cli.running import ROOT
from gaugewright import pipeline
from gaugewright.changes import KINDS, Changes, changes, places
from gaugewright.cli.gauge_option import parse_gauge_options
from gaugewright.design.model import Section
from gaugewright.instructions.nodes import Document, Heading, Paragraph, Table
from gaugewright.units import cm_text

SAMPLES = {"saltmarsh-jacket": "8 sts, 6.5 rows / 10 cm", "breakwater-pullover": "12 sts, 9 rows / 10 cm", "lamplighter-hat": "15 sts, 12 rows / 10 cm"}


def sample(name: str) -> Path:
    return ROOT / "samples" / name / "spec.yaml"


def both(name: str) -> tuple[pipeline.Graded, pipeline.Graded]:
    gauges = parse_gauge_options([SAMPLES[name]])
    return pipeline.grade(pipeline.load(sample(name))), pipeline.grade(pipeline.load(sample(name), gauges))


def found(name: str) -> Changes:
    return changes(*map(pipeline.side, both(name)))


def table_rows(document: Document, caption: str) -> dict[str, tuple[str, ...]]:
    table = next(block for block in document.blocks if isinstance(block, Table) and block.caption == caption)
    return {row[0]: row[1:] for row in table.rows}


@pytest.mark.parametrize("name", SAMPLES)
def test_balls_and_measurements_are_those_that_publish_prints(name: str) -> None:
    """Each side against the tables of its own edition."""
    change = found(name)
    for graded, which in zip(both(name), ("old", "new"), strict=True):
        printed = pipeline.document(graded, pipeline.Edition())
        balls = table_rows(printed, "Balls by colour and size")
        assert {one.label: tuple(map(str, getattr(one, which))) for one in change.balls} == balls
        finished = table_rows(printed, "Measurements in cm")
        assert change.measures
        for one in change.measures:
            assert finished[f"finished: {one.label.lower()}"] == tuple(map(cm_text, getattr(one, which)))


def test_counts_are_those_of_the_rows() -> None:
    """The last rows of a piece that isn't divided, counted in its rows."""
    change = found("saltmarsh-jacket")
    for graded, which in zip(both("saltmarsh-jacket"), ("old", "new"), strict=True):
        for key, pieces in graded.grading.pieces.items():
            rows = [one for one in change.counts if one.piece == key and one.unit != "sts"][-1]
            stitches = [one for one in change.counts if one.piece == key and one.unit == "sts"][-1]
            assert getattr(rows, which).values == tuple(len(piece.main.rows) for piece in pieces)
            assert getattr(stitches, which).values == tuple(piece.main.last_count for piece in pieces)


def test_the_cost_is_the_balls_at_their_price() -> None:
    """All three yarns of the jacket cost 7.40 a ball."""
    change = found("saltmarsh-jacket")
    (cost,) = change.costs
    assert cost.currency == "EUR"
    for which in ("old", "new"):
        balls = [sum(getattr(one, which)[size] for one in change.balls) for size in cost.old.labels]
        assert getattr(cost, which).values == tuple(Decimal("7.40") * count for count in balls)
    assert cost.new["5X"] < cost.old["5X"], "larger stitches take fewer balls"


def test_at_its_own_gauge_nothing_changes() -> None:
    graded, _ = both("breakwater-pullover")
    side = pipeline.side(graded)
    change = changes(side, side)
    assert all(one.old == one.new for group in (change.counts, change.measures, change.balls, change.costs) for one in group)  # type: ignore[attr-defined]


def test_places_leave_out_what_has_neither_rows_nor_stitches() -> None:
    graded, _ = both("saltmarsh-jacket")
    back = graded.design.piece("back")
    assert [(place.part, place.kind) for place in places(back, graded.grading.plans["back"])] == [(0, "foundation"), (1, "even")]


def test_every_kind_of_section_has_its_word() -> None:
    assert {kind.__name__ for kind in get_args(Section)} == set(KINDS)


UNEQUAL = {"smaller stitches": "9.5 sts, 7 rows / 10 cm", "higher rows": "9 sts, 6 rows / 10 cm", "larger stitches, lower rows": "8 sts, 8 rows / 10 cm"}


def chapters(document: Document) -> dict[str, list[str]]:
    """The words and tables under each heading of the second level."""
    found: dict[str, list[str]] = {}
    heading = ""
    for block in document.blocks:
        if isinstance(block, Heading) and block.level == 2:
            heading = block.text
        elif isinstance(block, Paragraph):
            found.setdefault(heading, []).append(plain(block))
        elif isinstance(block, Table):
            found.setdefault(heading, []).extend(" | ".join(row) for row in block.rows)
    return found


def plain(block: Paragraph) -> str:
    return "".join(span.text for span in block.spans)


@pytest.mark.parametrize("gauge", UNEQUAL.values(), ids=UNEQUAL)
@pytest.mark.parametrize("name", ["saltmarsh-jacket", "breakwater-pullover"])
def test_what_is_listed_is_what_differs_on_the_pages_no_more_and_no_fewer(name: str, gauge: str) -> None:
    """Stitches and rows changed by different shares: pieces, measurements and balls that differ in print are those listed as changed."""
    old = pipeline.grade(pipeline.load(sample(name)))
    new = pipeline.grade(pipeline.load(sample(name), parse_gauge_options([gauge])))
    change = changes(pipeline.side(old), pipeline.side(new))
    was, now = (pipeline.document(one, pipeline.Edition()) for one in (old, new))
    # Counts: a piece is told otherwise exactly where one of its counts has changed.
    told = {title for title in chapters(was) if chapters(was)[title] != chapters(now).get(title)}
    for piece in old.design.pieces:
        listed = any(one.old != one.new for one in change.counts if one.piece == piece.key)
        numbers = [re.findall(r"— ([^—]*?) sts|^To the end of R\w+.([0-9 (,)–]*):", "\n".join(chapters(which)[piece.title]).replace("\u00a0", " "), re.M) for which in (was, now)]
        assert listed == (numbers[0] != numbers[1]), piece.key
        assert not listed or piece.title in told
    # Measurements and balls, line by line.
    for caption, group, prefix in (("Measurements in cm", change.measures, "finished: "), ("Balls by colour and size", change.balls, "")):
        before, after = table_rows(was, caption), table_rows(now, caption)
        differ = {key for key in before if key.startswith(prefix) and before[key] != after[key]}
        text = (lambda values: tuple(map(cm_text, values))) if prefix else (lambda values: tuple(map(str, values)))
        assert differ == {prefix + (one.label.lower() if prefix else one.label) for one in group if text(one.old) != text(one.new)}
