"""Imports go down only, in the order of the pipeline, and each library has its one door.

A stage may use what stands before it in `ORDER`; what stands in one group may use one another.
"""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

SRC = Path(__file__).parents[1] / "src" / "gaugewright"

ORDER: tuple[tuple[str, ...], ...] = (
    ("errors",),
    ("rounding",),
    ("tolerances",),
    ("unit_names",),
    ("units",),
    ("sized",),
    ("vocabulary",),
    ("problem_names", "problem_text"),
    ("datafiles", "resources"),
    ("trade",),
    ("stitch_patterns",),
    ("gauge",),
    ("measurements",),
    ("yaml_tree", "yaml_reader", "yaml_edit"),
    ("formulas",),
    ("spec",),
    ("design",),
    ("sizing",),
    ("grading",),
    ("yarn",),
    ("shopping",),
    ("hours",),
    ("changes",),
    ("checks",),
    ("drawings",),
    ("instructions",),
    ("render",),
    ("output",),
    ("pipeline",),
    ("advice",),
    ("reread",),
    ("gaugewright",),  # the package itself: the public calls
    ("cli", "__main__"),
)

DOORS: dict[str, tuple[str, ...]] = {
    "pydantic": ("spec/",),
    "pydantic_core": ("spec/",),
    "pint": ("unit_names.py",),
    "reportlab": ("render/pdf/",),
    "svgwrite": ("render/svg.py",),
    "pypdf": ("reread/",),
    "typer": ("cli/",),
    "rich": ("cli/",),
    "ruamel": ("yaml_tree.py", "yaml_reader.py", "yaml_edit.py"),
}


KNOWN = frozenset(package for group in ORDER for package in group)


def rank_of(package: str) -> int:
    return next(rank for rank, group in enumerate(ORDER) if package in group)


def package_of(path: Path) -> str:
    first = path.relative_to(SRC).parts[0].removesuffix(".py")
    return "gaugewright" if first == "__init__" else first


def imports_of(tree: ast.Module) -> Iterator[tuple[str, int]]:
    """Every module imported, those inside functions too."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((alias.name, node.lineno) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports are written in full"
            if node.module == "gaugewright":
                yield from ((f"gaugewright.{alias.name}", node.lineno) for alias in node.names)
            else:
                yield str(node.module), node.lineno


def found_imports() -> list[tuple[Path, str, int]]:
    return [
        (path, name, line)
        for path in sorted(SRC.rglob("*.py"))
        for name, line in imports_of(ast.parse(path.read_text(encoding="utf-8")))
    ]


def test_every_module_has_its_place_in_the_order() -> None:
    assert {package_of(path) for path in SRC.rglob("*.py")} <= KNOWN


def test_imports_go_down_only() -> None:
    upward = []
    for path, name, line in found_imports():
        parts = name.split(".")
        if parts[0] != "gaugewright":
            continue
        own = package_of(path)
        used = parts[1] if len(parts) > 1 and parts[1] in KNOWN else "gaugewright"
        if used != own and rank_of(used) > rank_of(own):
            upward.append(f"{path.relative_to(SRC)}:{line} imports {name}")
    assert upward == []


@pytest.mark.parametrize("library", DOORS)
def test_each_library_has_one_door(library: str) -> None:
    doors = DOORS[library]
    elsewhere = [
        f"{path.relative_to(SRC)}:{line}"
        for path, name, line in found_imports()
        if name.split(".")[0] == library and not path.relative_to(SRC).as_posix().startswith(doors)
    ]
    assert elsewhere == []


def test_renderers_never_see_spec_or_design() -> None:
    seen = [
        f"{path.relative_to(SRC)}:{line} imports {name}"
        for path, name, line in found_imports()
        if package_of(path) == "render" and name.startswith(("gaugewright.spec", "gaugewright.design", "gaugewright.grading"))
    ]
    assert seen == []


def test_only_errors_is_shared_with_the_rereader() -> None:
    shared = [
        f"{path.relative_to(SRC)}:{line} imports {name}"
        for path, name, line in found_imports()
        if package_of(path) == "reread" and name.startswith("gaugewright") and not name.startswith(("gaugewright.errors", "gaugewright.reread"))
    ]
    assert shared == []


def test_an_upward_import_would_be_seen() -> None:
    assert rank_of("grading") > rank_of("design") > rank_of("gauge")
    assert ("gaugewright.grading.plan", 1) in list(imports_of(ast.parse("from gaugewright.grading.plan import Cloth")))
