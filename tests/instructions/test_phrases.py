"""Every phrase of the book is said somewhere, and none is asked for that isn't there."""

import ast
import re
import tomllib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from gaugewright import pipeline
from gaugewright.instructions import phrase_book
from gaugewright.instructions.wording import Book
from instructions.specs import ROOT, SPECS, graded

PHRASES = tomllib.loads((ROOT / "templates/phrases/en.toml").read_text(encoding="utf-8"))
TABLES = ("words", "parts", "sentences", "front")
SOURCES = ROOT / "src/gaugewright/instructions"


class Noted(dict[str, str]):
    """Phrases that remember which of them were taken."""

    def __init__(self, phrases: dict[str, str]) -> None:
        super().__init__(phrases)
        self.taken: set[str] = set()

    def __getitem__(self, key: str) -> str:
        self.taken.add(key)
        return super().__getitem__(key)


@pytest.fixture(scope="module")
def taken() -> dict[str, set[str]]:
    """The ids taken from each table while all patterns of the set are written, in both terms and one size."""
    noted = {table: Noted(PHRASES[table]) for table in TABLES}
    real = phrase_book.load_book

    def load(*arguments: object, **named: object) -> Book:
        return replace(real(*arguments, **named), **noted)  # type: ignore[arg-type]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(phrase_book, "load_book", load)
        for name in SPECS:
            labels = graded(name).bodies.labels
            for edition in (pipeline.Edition(), pipeline.Edition(labels[-1:], "uk"), pipeline.Edition(labels[:2], own_gauge="8 sts, 6 rows / 10 cm")):
                pipeline.document(graded(name), edition, graded(name) if edition.own_gauge else None)
                pipeline.sheet(graded(name), edition)
    return {table: phrases.taken for table, phrases in noted.items()}


@pytest.mark.parametrize("table", TABLES)
def test_every_phrase_is_said(taken: dict[str, set[str]], table: str) -> None:
    assert sorted(PHRASES[table].keys() - taken[table]) == []


def asked_for() -> Iterator[tuple[str, str, str]]:
    """Every id that the code names outright: the file and line, the table, the id."""
    methods = {"sentence": "sentences", "part": "parts", "front_text": "front"}
    for path in sorted(SOURCES.glob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            where = f"{path.name}:{getattr(node, 'lineno', 0)}"
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in methods and node.args:
                yield from ((where, methods[node.func.attr], key) for key in _keys(node.args[0]))
            if isinstance(node, ast.Subscript) and isinstance(node.value, ast.Attribute) and node.value.attr in (*TABLES, "words", "front"):
                yield from ((where, node.value.attr, key) for key in _keys(node.slice))


def _keys(node: ast.expr) -> Iterator[str]:
    match node:
        case ast.Constant(value=str(key)):
            yield key
        case ast.IfExp(body=body, orelse=orelse):
            yield from _keys(body)
            yield from _keys(orelse)


def test_every_phrase_that_is_asked_for_is_there() -> None:
    asked = list(asked_for())
    assert len(asked) > 60
    assert [(where, key) for where, table, key in asked if key not in PHRASES[table]] == []


def test_phrases_hold_no_numbers_of_their_own() -> None:
    """A number in a phrase is nobody's: the few that stand there belong to the craft's own words."""
    allowed = re.compile(r"[23]\s\{stitch\}|[23]tog|(first|last|the) 2 sts|2nd|3rd|row 1|10 cm|2\.54|5 in\b|5 rows|\bMake 1\b|\{\w+\}|1 in is")
    found = {key: allowed.sub("", text) for table in ("parts", "sentences", "front") for key, text in PHRASES[table].items()}
    assert {key: text for key, text in found.items() if re.search(r"\d", text)} == {}


def test_the_path_of_the_book_is_the_shipped_one() -> None:
    assert Path(phrase_book.SHIPPED) == Path("phrases/en.toml")
