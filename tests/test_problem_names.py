"""Every name given to a problem is listed with its meaning, and no meaning is listed for nothing."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from gaugewright.problem_names import PROBLEM_NAMES

SRC = Path(__file__).parents[1] / "src" / "gaugewright"
# What takes a problem's name first: the failures themselves, and what reading wraps round them.
NAMING = frozenset({"Problem", "UserError", "refuse", "GaugeError", "file_problem", "placed_problem", "problem"})


def trees() -> Iterator[tuple[Path, ast.Module]]:
    for path in sorted(SRC.rglob("*.py")):
        if path.name != "problem_names.py":
            yield path, ast.parse(path.read_text(encoding="utf-8"))


def called(node: ast.Call) -> str:
    return (
        node.func.id
        if isinstance(node.func, ast.Name)
        else node.func.attr
        if isinstance(node.func, ast.Attribute)
        else ""
    )


def texts(node: ast.AST) -> set[str]:
    return {part.value for part in ast.walk(node) if isinstance(part, ast.Constant) and isinstance(part.value, str)}


def chosen(node: ast.expr) -> set[str]:
    """The names an expression may come to, where it is a text or a choice of texts."""
    if isinstance(node, ast.IfExp):
        return chosen(node.body) | chosen(node.orelse)
    return {node.value} if isinstance(node, ast.Constant) and isinstance(node.value, str) else set()


def names_given() -> dict[str, Path]:
    given = {}
    for path, tree in trees():
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and called(node) in NAMING and node.args:
                given.update(dict.fromkeys(chosen(node.args[0]), path))
    return given


def test_the_scan_sees_names() -> None:
    given = names_given()
    assert {"yaml-too-deep", "rest-twice", "unknown-name", "out-of-range"} <= set(given)


def test_each_name_given_is_listed() -> None:
    assert {name: str(path) for name, path in names_given().items() if name not in PROBLEM_NAMES} == {}


def test_each_name_listed_is_given() -> None:
    written = set().union(*(texts(tree) for _, tree in trees()))
    assert sorted(set(PROBLEM_NAMES) - written) == []


def test_each_meaning_is_one_plain_line() -> None:
    for name, meaning in PROBLEM_NAMES.items():
        assert name == name.lower() and " " not in name, name
        assert meaning and "\n" not in meaning and not meaning.endswith("."), name


def test_no_name_is_listed_twice() -> None:
    listed = re.findall(r'^    "([a-z-]+)":', (SRC / "problem_names.py").read_text(encoding="utf-8"), re.MULTILINE)
    assert len(listed) > 200 and len(listed) == len(set(listed))
