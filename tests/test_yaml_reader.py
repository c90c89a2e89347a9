"""YAML with places: what comes out, and what is refused before it can do harm."""

import random
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugewright.errors import Problem, ProblemsFound
from gaugewright.yaml_reader import read_yaml, read_yaml_text

LISTS = [
    f"{name}: &{name} [{', '.join(['*' + before] * 10)}]" for before, name in zip("abcdefgh", "bcdefghi", strict=True)
]
BOMB = "\n".join(["a: &a [x, x, x, x, x, x, x, x, x, x]", *LISTS])


def refused(text: str) -> list[tuple[str, int, int]]:
    with pytest.raises(ProblemsFound) as caught:
        read_yaml_text(text, "f.yaml")
    return [places(problem) for problem in caught.value.problems]


def places(problem: Problem) -> tuple[str, int, int]:
    assert problem.origin is not None and problem.hint
    return problem.name, problem.origin.location.line, problem.origin.location.column


def test_scalars_are_kept_as_their_maker_meant_them() -> None:
    text = 'a: no\nb: 1:2\nc: 2026-11-25\nd: "1.0"\ne: 18\nf: 0.42\ng: true\nh: ~\ni: 1X\nj: 010\nk: 1_000\n2: two\nno: yes\n'
    data = read_yaml_text(text, "f.yaml").data
    assert data == {
        "a": "no", "b": "1:2", "c": "2026-11-25", "d": "1.0", "e": 18, "f": 0.42, "g": True, "h": None, "i": "1X", "j": 10,
        "k": "1_000", "2": "two", "no": "yes",
    }  # fmt: skip
    assert (data["j"].written, read_yaml_text("v: 1.10", "f").data["v"].written) == ("010", "1.10")


def test_numbers_too_long_to_be_meant_stay_text() -> None:
    assert read_yaml_text(f"a: {'9' * 5000}", "f.yaml").data["a"] == "9" * 5000


def test_places_of_keys_values_and_columns_within() -> None:
    source = read_yaml_text('top:\n  list: [{x: 1}, {y: "a + b"}]\n  empty:\n  folded: >-\n    a\n    b\n', "f.yaml")
    assert str(source.origin_at(("top", "list", 1, "y")).location) == "f.yaml:2:22"
    assert str(source.origin_at(("top", "list", 1, "y"), key=True).location) == "f.yaml:2:19"
    assert str(source.origin_in(("top", "list", 1, "y"), 4).location) == "f.yaml:2:27"
    assert source.origin_at(("top", "list", 1, "y")).line_text == '  list: [{x: 1}, {y: "a + b"}]'
    assert str(source.origin_at(("top", "empty")).location) == "f.yaml:3:3"
    assert str(source.origin_in(("top", "folded"), 3).location) == "f.yaml:4:11"


def test_steps_that_are_not_in_the_file_are_passed_over() -> None:
    source = read_yaml_text("top:\n  list: [{x: 1}]\n", "f.yaml")
    assert source.origin_at(("top", "<choice>", "list", 0, "x")) == source.origin_at(("top", "list", 0, "x"))
    assert str(source.origin_at(("top", "missing"), key=True).location) == "f.yaml:1:1"


def test_aliases_repeat_what_they_name_at_its_place() -> None:
    source = read_yaml_text("a: &x {k: 1}\nb: *x\n", "f.yaml")
    assert source.data == {"a": {"k": 1}, "b": {"k": 1}}
    assert str(source.origin_at(("b", "k")).location) == "f.yaml:1:11"
    assert str(source.origin_at(("b",), key=True).location) == "f.yaml:2:1"


@pytest.mark.parametrize(
    ("text", "name", "line", "column"),
    [
        ("", "file-empty", 1, 1),
        ("# nothing but a remark\n", "file-empty", 1, 1),
        ("- a\n", "yaml-not-keys", 1, 1),
        ("just words\n", "yaml-not-keys", 1, 1),
        ("a: 1\n---\nb: 2\n", "yaml-documents", 2, 1),
        ("a: !thing 1\n", "yaml-tag", 1, 4),
        ("a: !!python/object/apply:os.system [x]\n", "yaml-tag", 1, 4),
        ("? [a]\n: 1\n", "yaml-key", 1, 3),
        ("a: *nowhere\n", "yaml-alias", 1, 4),
        ("a: &x [*x]\n", "yaml-alias", 1, 8),
        (BOMB, "yaml-alias", 4, 20),
        ("[" * 200_000, "yaml-too-deep", 1, 61),
        ("a: " + "{a: " * 100, "yaml-too-deep", 1, 240),
        ("\n".join(" " * i + "a:" for i in range(100)), "yaml-too-deep", 61, 61),
        ("a:\n\tb: 1\n", "yaml-syntax", 2, 1),
        ("a: {b: 1\n", "yaml-syntax", 1, 4),
        ("a: [1, 2\n", "yaml-syntax", 1, 4),
        ("a: 'x\n", "yaml-syntax", 1, 4),
        ("a: b: c\n", "yaml-syntax", 1, 5),
        ("a: 1\n   b: 2\n", "yaml-syntax", 2, 5),
        ("a: @x\n", "yaml-syntax", 1, 4),
        ('b: 1\na: "\\U99999999"\n', "yaml-syntax", 2, 1),
        ("b: 1\na: \x07\n", "yaml-syntax", 2, 1),
    ],
)
def test_refused_at_its_place(text: str, name: str, line: int, column: int) -> None:
    assert refused(text) == [(name, line, column)]


def test_all_keys_given_twice_are_told() -> None:
    assert refused("a: 1\nb: {c: 1, c: 2}\na: 3\n") == [("duplicate-key", 2, 11), ("duplicate-key", 3, 1)]


def file_refused(path: Path) -> tuple[str, str]:
    with pytest.raises(ProblemsFound) as caught:
        read_yaml(path)
    (problem,) = caught.value.problems
    assert problem.origin is not None and problem.hint
    return problem.name, problem.hint


def test_files_that_are_no_spec(tmp_path: Path) -> None:
    (tmp_path / "spec.yaml").write_text("a: 1\n", encoding="utf-8")
    assert file_refused(tmp_path) == ("file-is-folder", f"name the file in it, such as {tmp_path / 'spec.yaml'}")
    assert file_refused(tmp_path / "spec.yml") == ("file-missing", f"did you mean {tmp_path / 'spec.yaml'}?")
    assert file_refused(tmp_path / "spec.yaml" / "x")[0] == "file-missing"
    assert file_refused(Path("a\0b"))[0] == "file-unreadable"
    empty, binary, latin = tmp_path / "empty", tmp_path / "binary", tmp_path / "latin"
    empty.write_bytes(b"")
    binary.write_bytes(random.Random(7).randbytes(5000) + b"\0")
    latin.write_bytes("a: 1\nb: caf\u00e9\n".encode("latin-1"))
    assert file_refused(empty)[0] == "file-empty"
    assert file_refused(binary)[0] == "file-not-text"
    assert file_refused(latin)[0] == "file-not-text"
    with pytest.raises(ProblemsFound) as caught:
        read_yaml(latin)
    assert [places(p) for p in caught.value.problems] == [("file-not-text", 2, 7)]


def test_a_huge_file_is_refused_unread(tmp_path: Path) -> None:
    huge = tmp_path / "huge.yaml"
    with huge.open("wb") as file:
        file.truncate(50_000_000)
    begun = time.process_time()
    assert file_refused(huge)[0] == "file-too-large"
    assert time.process_time() - begun < 1, "it was read before it was refused"


def test_a_file_of_too_many_values_is_refused() -> None:
    assert refused("a: [" + "1," * 60_000 + "]") == [("file-too-large", 1, 100_003)]


def test_a_byte_order_mark_and_windows_line_ends_are_read(tmp_path: Path) -> None:
    file = tmp_path / "spec.yaml"
    file.write_bytes(b"\xef\xbb\xbfa: 1\r\nb: x\r\n")
    source = read_yaml(file)
    assert source.data == {"a": 1, "b": "x"}
    assert (source.origin_at(("b",)).location[1:], source.origin_at(("b",)).line_text) == ((2, 4), "b: x")


@settings(deadline=None)
@given(st.text(max_size=80))
def test_no_text_breaks_the_reader(text: str) -> None:
    survives(text)


@settings(deadline=None)
@given(
    st.lists(
        st.sampled_from(
            [
                "a",
                "b",
                ": ",
                "- ",
                "\n",
                "  ",
                "{",
                "}",
                "[",
                "]",
                ",",
                "&x ",
                "*x",
                '"',
                "'",
                "|",
                ">",
                "!",
                "#",
                "?",
                "\t",
                "---",
                "...",
                "%",
                "1.0",
                "<<",
            ]
        ),
        max_size=30,
    )
)
def test_no_likely_text_breaks_the_reader(words: list[str]) -> None:
    survives("".join(words))


def survives(text: str) -> None:
    try:
        source = read_yaml_text(text, "f.yaml")
    except ProblemsFound as found:
        for problem in found.problems:
            assert problem.origin is not None and problem.hint
    else:
        assert isinstance(source.data, dict)
