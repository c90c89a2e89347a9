"""Every test under `external/` names the source it is held to."""

import ast
from pathlib import Path

import pytest
from external.sources import KINDS, source

FILES = sorted((Path(__file__).parent / "external").glob("**/test_*.py"))


def sourceless(code: str) -> list[str]:
    """The test functions in some code that lack a decorator `source(kind, text)`."""
    functions = (node for node in ast.walk(ast.parse(code)) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef))
    tests = (node for node in functions if node.name.startswith("test"))
    return [node.name for node in tests if not any(_is_source(d) for d in node.decorator_list)]


def _is_source(decorator: ast.expr) -> bool:
    return (
        isinstance(decorator, ast.Call)
        and isinstance(decorator.func, ast.Name)
        and decorator.func.id == "source"
        and len(decorator.args) == 2
        and isinstance(decorator.args[0], ast.Constant)
        and decorator.args[0].value in KINDS
    )


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_each_external_test_names_its_source(path: Path) -> None:
    assert sourceless(path.read_text(encoding="utf-8")) == []


def test_there_are_external_tests_to_look_at() -> None:
    assert len(FILES) >= 5


def test_a_test_without_a_source_is_found() -> None:
    code = "@source('hearsay', 'x')\ndef test_a(): ...\n@source('memory', 'x')\ndef test_b(): ...\ndef test_c(): ...\n"
    assert sourceless(code) == ["test_a", "test_c"]


def test_a_source_has_a_known_kind_and_a_name() -> None:
    with pytest.raises(ValueError, match="hearsay"):
        source("hearsay", "somebody")  # type: ignore[arg-type]
    with pytest.raises(ValueError, match="name"):
        source("published", " ")
