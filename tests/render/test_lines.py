"""Lines are broken at ordinary spaces, and nowhere else while that is possible."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugewright.render.pdf import load_style
from gaugewright.render.pdf.faces import Faces, load_faces
from gaugewright.render.pdf.lines import Run, break_lines, natural_width

FACES = load_faces(load_style())
WORDS = st.lists(st.sampled_from(["ch", "1,", "40\u00a0(43,\u00a046)", "half", "turn.", "–"]), min_size=1, max_size=40)


def broken(text: str, width: float, rest: float | None = None) -> list[str]:
    lines = break_lines((("regular", text),), FACES, 10, width, width if rest is None else rest)
    return [line.text for line in lines]


@given(WORDS, st.floats(min_value=90, max_value=400))
def test_lines_fit_and_give_the_text_back(words: list[str], width: float) -> None:
    text = " ".join(words)
    lines = break_lines((("regular", text),), FACES, 10, width, width)
    assert "".join(line.text + line.glue for line in lines) == text
    for line in lines:
        assert line.width <= width + 1e-6
        assert line.width == pytest.approx(natural_width(line.runs, FACES, 10))
        assert not line.text.startswith(" ") and line.text.count("(") == line.text.count(")")


@given(WORDS, st.floats(min_value=90, max_value=400))
def test_no_line_has_room_for_the_next_word(words: list[str], width: float) -> None:
    lines = broken(" ".join(words), width)
    for line, after in zip(lines, lines[1:], strict=False):
        longer = f"{line} {after.split(' ')[0]}"
        assert natural_width((("regular", longer),), FACES, 10) > width


def test_faces_change_inside_a_word_without_a_break() -> None:
    runs: tuple[Run, ...] = (("regular", "turn – "), ("semibold", "40\u00a0sts"), ("regular", "."))
    [line] = break_lines(runs, FACES, 10, 500, 500)
    assert line.runs == (("regular", "turn – "), ("semibold", "40\u00a0sts"), ("regular", "."))
    first, second = break_lines(runs, FACES, 10, 45, 45)
    assert (first.text, first.glue, second.text, second.glue) == ("turn –", " ", "40\u00a0sts.", "")


def test_later_lines_may_be_shorter() -> None:
    first, second, *_ = broken("one two three four five six seven eight nine ten eleven", 120, 60)
    assert len(first) > 20 > 12 > len(second)


def test_a_list_wider_than_the_line_breaks_at_its_own_spaces_before_it_leaves_the_page() -> None:
    text = "ch\u00a0(" + ",\u00a0".join(str(n) for n in range(100, 140)) + ")"
    lines = broken(text, 150)
    assert len(lines) > 3 and all(line.endswith(",") for line in lines[:-1])
    assert " ".join(lines).replace("\u00a0", " ") == text.replace("\u00a0", " ")


def test_a_word_wider_than_the_line_is_taken_apart() -> None:
    lines = broken("a" * 100 + " end", 100)
    assert "".join(lines).replace(" ", "") == "a" * 100 + "end" and len(lines) > 3


def test_no_text_is_no_line() -> None:
    faces: Faces = FACES
    assert break_lines((("regular", "  "),), faces, 10, 100, 100) == ()
