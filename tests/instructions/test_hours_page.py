"""Hours in the pattern: only where a swatch is timed or the spec asks, and as the rows say."""

import re
from dataclasses import replace

import pytest

from gaugewright import pipeline
from gaugewright.instructions.nodes import Table
from instructions.specs import document, graded, told


def texts(name: str, sizes: tuple[str, ...] = ()) -> list[str]:
    return [one.text for one in told(document(name, sizes))]


def lines(name: str, sizes: tuple[str, ...] = ()) -> list[str]:
    return [text for text in texts(name, sizes) if "hours of work" in text]


def table(name: str) -> Table:
    (found,) = [block for block in document(name).blocks if isinstance(block, Table) and block.caption == "Hours and minutes by piece and size"]
    return found


def test_a_pattern_without_a_timed_swatch_says_nothing_of_hours() -> None:
    for name in ("vest", "shawl", "bodies in nine"):
        assert lines(name) == [] and not any("hours" in text for text in texts(name))


def test_a_timed_swatch_gives_a_line_at_a_glance_and_no_more_unless_asked() -> None:
    (line,) = lines("bodies timed in one")
    assert re.fullmatch(r"About [0-9½]+ to [0-9½]+ hours of work at the designer’s pace, finishing included\.", line)
    assert "Time" not in texts("bodies timed in one")


def test_the_line_names_the_smallest_and_the_largest_size() -> None:
    (line,) = lines("sample")
    assert line == "About 11 to 18 hours of work in size XS and 16 to 25 in 5X, at the designer’s pace, finishing included."
    assert lines("sample", ("M",)) == ["About 12 to 20 hours of work at the designer’s pace, finishing included."]


def test_an_estimate_from_published_paces_is_marked() -> None:
    (line,) = lines("hours as published")
    assert "at published paces, a rough estimate" in line
    assert any("no swatch of this pattern was timed" in text for text in texts("hours as published"))


def test_never_is_never() -> None:
    design = graded("bodies timed").design
    silent = pipeline.Graded(replace(design, about=replace(design.about, hours="never")), graded("bodies timed").bodies, graded("bodies timed").grading)
    assert not any("hours" in one.text for one in told(pipeline.document(silent, pipeline.Edition())))


@pytest.mark.parametrize("name", ["sample", "bodies timed", "hours as published"])
def test_the_table_adds_up_and_its_range_holds_the_sum(name: str) -> None:
    *parts, whole, ranges = table(name).rows
    for column in range(1, len(table(name).header)):
        minutes = [int(hours) * 60 + int(rest) for hours, rest in (row[column].split(":") for row in (*parts, whole))]
        assert sum(minutes[:-1]) == minutes[-1]
        least, most = (float(text.replace("½", ".5")) * 60 for text in ranges[column].split("–"))
        assert least <= minutes[-1] <= most


def test_every_piece_has_its_row() -> None:
    assert [row[0].replace("\u00a0", " ") for row in table("bodies timed").rows[:-3]] == ["Back", "Front", "Other Front", "Sleeve (make 2)", "Band", "Pocket"]


def test_the_paces_are_told_of_what_was_timed() -> None:
    (found,) = [text for text in texts("sample") if "By the clock" in text]
    assert "in sts a minute: Body 11.9." in found and "What wasn’t timed" in found
