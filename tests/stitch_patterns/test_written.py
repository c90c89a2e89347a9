"""Patterns as specs and files write them: problems at their line and column, the spec's own before the files'."""

from pathlib import Path

import pytest
from tiny_specs import MEASURES, TABLES, size_labels

from gaugewright.errors import ProblemsFound
from gaugewright.spec import load_spec_text
from gaugewright.spec.pattern_shelf import shelf_pattern

LABELS = {table: size_labels(table) for table in TABLES}
HEAD = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
yarns: {oat: {weight: 4}}
fabrics:
  lace: {pattern: PATTERN, gauge: "10 sts, 10 rows / 10 cm"MORE}
pieces: {piece: {start: {chain: 20 cm}, sections: [even: {length: 10 cm}]}}
"""


def told(text: str) -> list[tuple[str, int, int]]:
    with pytest.raises(ProblemsFound) as found:
        load_spec_text(text, "tiny.yaml", LABELS, MEASURES)
    return [(p.name, p.origin.location.line, p.origin.location.column) for p in found.value.problems if p.origin]


def fabric(pattern: str, more: str = "") -> str:
    return HEAD.replace("PATTERN", pattern).replace("MORE", more)


def test_an_unknown_pattern_is_told_with_those_that_are_there() -> None:
    with pytest.raises(ProblemsFound) as found:
        load_spec_text(fabric("mos"), "tiny.yaml", LABELS, MEASURES)
    (problem,) = found.value.problems
    assert (problem.name, problem.hint) == ("unknown-stitch-pattern", "did you mean moss?")


@pytest.mark.parametrize("more", [", stitch: sc", ", loop: back", ", turning_chain: {chains: 1}", ", multiple: {of: 2}"])
def test_what_a_pattern_states_is_not_stated_again(more: str) -> None:
    assert [name for name, _, _ in told(fabric("moss", more))] == ["stitch-pattern-states"]


def test_a_row_that_can_t_be_read_is_told_within_its_text() -> None:
    own = 'stitch_patterns:\n  net:\n    multiple: {of: 2, plus: 1}\n    plain: sc\n    rows:\n      - "1 sc, *ch 1, sk 1, 1 xc*"\n'
    assert told(fabric("net") + own) == [("stitch-pattern-text", 12, 10 + 21)]


def test_rows_that_don_t_follow_are_told_within_their_text() -> None:
    own = 'stitch_patterns:\n  net:\n    multiple: {of: 4, plus: 1}\n    plain: sc\n    rows:\n      - "1 sc, *ch 5, sk 3, 1 sc*"\n      - "1 sc, *3 sc in ch 4, 1 sc*"\n'
    assert told(fabric("net") + own) == [("stitch-pattern-broken", 13, 10 + 7)]


def test_the_spec_s_own_pattern_wins_over_a_file_s() -> None:
    own = 'stitch_patterns: {moss: {multiple: {of: 3}, plain: sc, rows: ["*3 sc*"]}}\n'
    assert load_spec_text(fabric("moss") + own, "tiny.yaml", LABELS, MEASURES).patterns["moss"].of == 3
    assert load_spec_text(fabric("moss"), "tiny.yaml", LABELS, MEASURES).patterns["moss"].of == 2


def test_a_file_of_one_s_own_is_found_and_its_faults_are_told_in_it(tmp_path: Path) -> None:
    (tmp_path / "stitches").mkdir()
    file = tmp_path / "stitches" / "net.yaml"
    file.write_text('multiple: {of: 2, plus: 1}\nplain: sc\nrows: ["1 sc, *ch 1, sk 1, 1 sc*"]\n', encoding="utf-8")
    assert shelf_pattern("net", tmp_path).counts(4, False) == (9,)
    file.write_text('multiple: {of: 2}\nplain: sc\nrows:\n  - "1 sc, *ch 1, sk 1, 1 sc*"\n', encoding="utf-8")
    with pytest.raises(ProblemsFound) as found:
        shelf_pattern("net", tmp_path)
    (problem,) = found.value.problems
    assert problem.origin is not None
    assert (problem.name, Path(problem.origin.location.file).name, problem.origin.location.line, problem.origin.location.column) == ("stitch-pattern-broken", "net.yaml", 4, 6 + 7)
