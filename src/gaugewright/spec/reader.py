"""Reads a spec file: YAML, then the models, then what refers to what; all problems at once."""

from collections.abc import Mapping
from pathlib import Path as FilePath
from typing import NamedTuple

from pydantic import ValidationError

from gaugewright.errors import Problem, ProblemsFound
from gaugewright.spec.check_empty import check_empty
from gaugewright.spec.check_formulas import check_cycles, check_formula_names, formulas_in
from gaugewright.spec.check_names import check_clashes, check_likeness, check_pieces, check_references
from gaugewright.spec.check_sizes import check_dimensions, check_ease_lists, check_sizes
from gaugewright.spec.messages import problems_from
from gaugewright.spec.model import Spec
from gaugewright.spec.names import names_of
from gaugewright.spec.pattern_shelf import patterns_used, shelved
from gaugewright.spec.walk import Path, references_in
from gaugewright.stitch_patterns.pattern import StitchPattern
from gaugewright.yaml_reader import Source, read_yaml, read_yaml_text


class LoadedSpec(NamedTuple):
    """A spec that reads without a problem, and where its parts stand."""

    spec: Spec
    source: Source
    patterns: Mapping[str, StitchPattern]


def load_spec(
    path: str | FilePath, size_labels: Mapping[str, tuple[str, ...]], measures: frozenset[str], templates: FilePath | None = None
) -> LoadedSpec:
    """Reads a spec file, or raises `ProblemsFound` with every problem in it.

    `size_labels` are the labels of each table of sizes and `measures` the body measures they may
    hold; both are passed in, since the tables themselves belong to a later stage. `templates` is the
    user's folder, where stitch patterns may stand.
    """
    return _checked(read_yaml(path), size_labels, measures, templates)


def load_spec_text(
    text: str, file: str, size_labels: Mapping[str, tuple[str, ...]], measures: frozenset[str]
) -> LoadedSpec:
    """The same for text, as if it stood in `file`."""
    return _checked(read_yaml_text(text, file), size_labels, measures)


def _checked(
    source: Source, size_labels: Mapping[str, tuple[str, ...]], measures: frozenset[str], templates: FilePath | None = None
) -> LoadedSpec:
    problems: list[Problem] = []
    faulty: frozenset[str] = frozenset()
    unknown: frozenset[Path] = frozenset()
    spec = None
    try:
        spec = Spec.model_validate(source.data)
    except ValidationError as fault:
        problems.extend(problems_from(fault, Spec, source))
        faults = [(error["loc"], error["type"]) for error in fault.errors(include_url=False)]
        faulty = frozenset(str(loc[1]) for loc, _ in faults if loc[0] == "pieces" and len(loc) > 1)
        unknown = frozenset(loc for loc, kind in faults if kind == "extra_forbidden")
    problems.extend(check_empty(source, unknown))
    problems.extend(_cross_checked(source, size_labels, measures, faulty, templates))
    if problems or spec is None:
        raise ProblemsFound(sorted(dict.fromkeys(problems), key=_place))
    used = tuple(dict.fromkeys(fabric.pattern for fabric in spec.fabrics.values() if fabric.pattern))
    return LoadedSpec(spec, source, patterns_used(spec.stitch_patterns, used, templates) if used else {})


def _cross_checked(
    source: Source, size_labels: Mapping[str, tuple[str, ...]], measures: frozenset[str], faulty: frozenset[str], templates: FilePath | None
) -> list[Problem]:
    """What the models can't see: names. Checked on the plain data, so that faults elsewhere hide nothing.

    Only the edges of pieces that are `faulty` themselves are left alone: one misspelt section would
    otherwise be told again at every seam.
    """
    names = names_of(source.data, size_labels, measures, faulty, shelved(templates))
    references = references_in(Spec, source.data)
    formulas = formulas_in(references)
    return [
        *check_references(references, names, source),
        *check_clashes(names, source),
        *check_likeness(source),
        *check_pieces(names, source),
        *check_sizes(references, names, source),
        *check_ease_lists(names, source),
        *check_dimensions(names, source),
        *check_formula_names(formulas, names, source),
        *check_cycles(formulas, references, names, source),
    ]


def _place(problem: Problem) -> tuple[int, int]:
    assert problem.origin is not None
    return problem.origin.location.line, problem.origin.location.column
