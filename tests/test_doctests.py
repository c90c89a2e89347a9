"""Every example in a docstring of the package is run and holds."""

import doctest
import importlib
import pkgutil

import pytest

import gaugewright


def _modules() -> list[str]:
    found = pkgutil.walk_packages(gaugewright.__path__, "gaugewright.")
    return sorted(m.name for m in found if not m.name.endswith("__main__"))


@pytest.mark.parametrize("name", _modules())
def test_the_examples_in_docstrings_hold(name: str) -> None:
    result = doctest.testmod(importlib.import_module(name))
    assert result.failed == 0


def test_arithmetic_modules_have_examples() -> None:
    for name in ("rounding", "tolerances", "gauge.counts", "grading.schedule",
                 "grading.schedule_model", "grading.spread", "grading.ratio"):
        module = importlib.import_module(f"gaugewright.{name}")
        examples = sum(len(t.examples) for t in doctest.DocTestFinder().find(module))
        assert examples >= 3, f"{name} has {examples} examples"
