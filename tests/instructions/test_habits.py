"""A habit of placing remainders is stated once, and only where something is worked by it."""

from tiny_specs import ONE_SIZE, designed

from gaugewright import pipeline
from gaugewright.instructions.nodes import Document, Paragraph, spans_text

TAPER = ONE_SIZE + "pieces: {piece: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {rows: 1}, taper: {rows: 23, target: 30 cm}]}}\n"
EVERYTHING = "conventions: {schedules: longer gap first, spreading: left at the end, taper_ends: even below}\n"


def stated(text: str) -> list[str]:
    """The beginnings of the notes that state a habit."""
    found: Document = pipeline.document(pipeline.grade(designed(text)), pipeline.Edition())
    notes = [spans_text(block.spans) for block in found.blocks if isinstance(block, Paragraph)]
    return [note.partition(",")[0] for note in notes if "share out evenly" in note or "an even number of sts" in note]


def test_habits_are_stated_where_something_is_worked_by_them() -> None:
    text = TAPER.replace("pieces:", EVERYTHING + "pieces:", 1)
    assert stated(text) == ["Where rows don’t share out evenly among the shaping rows", "A shaping at two edges begins and ends with an even number of sts: the next one below the width."]
    assert stated(text.replace("taper: {rows: 23, target: 30 cm}", "even: {rows: 23}")) == []


def test_the_engines_own_ways_need_no_words() -> None:
    assert stated(TAPER) == []
