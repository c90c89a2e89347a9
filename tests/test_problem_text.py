"""A problem in words: the place, the line with its caret, the hint."""

from gaugewright.errors import Location, Origin, Problem
from gaugewright.problem_text import problem_text


def shown(text: str, column: int, **more: str) -> list[str]:
    return problem_text(Problem("name", "message", Origin(Location("f.yaml", 12, column), text), **more)).split("\n")  # type: ignore[arg-type]


def test_place_line_caret_and_hint() -> None:
    assert shown("  a: b", 6, hint="do this", size="M") == [
        "f.yaml:12:6: name, size M: message",
        "    12 |   a: b",
        "       |      ^",
        "    hint: do this",
    ]


def test_tabs_and_control_signs_keep_the_caret_in_its_column() -> None:
    lines = shown("a:\t\x1b[31mb", 9)
    assert lines[1:] == ["    12 | a:  [31mb", "       |         ^"]
    assert lines[1][lines[2].index("^")] == "b"


def test_a_very_long_line_is_cut_round_the_place() -> None:
    lines = shown("x" * 5000 + "Y" + "x" * 5000, 5001)
    assert len(lines[1]) < 140
    assert lines[1][lines[2].index("^")] == "Y"


def test_without_a_place_and_with_a_lesser_severity() -> None:
    assert problem_text(Problem("no-place", "message")) == "no-place: message"
    assert shown("", 1, severity="note") == ["f.yaml:12:1: note name: message"]


def test_the_only_size_is_not_named() -> None:
    from gaugewright.design.size_list import ONE_SIZE

    assert shown("a: b", 1, size=ONE_SIZE)[0] == "f.yaml:12:1: name: message"
