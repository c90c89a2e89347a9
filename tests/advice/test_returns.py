"""Test makers' returns beside the predictions, worked by hand on a tabard of plain pieces."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cli.running import spec_in
from gaugewright.gauge.readings import Reading, estimate
from gaugewright import pipeline
from gaugewright.advice.returns import Returned, returned, worked_stitches
from gaugewright.advice.standing_out import Overview, overview
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.spec.returns import read_return, returns_in

TABARD = """\
gaugewright: 1
pattern: {title: Lock Tabard, workshop: Ferry Lane Workshop, version: "2"}
sizes: {own: {S: {bust: 80 cm}, M: {bust: 90 cm}, L: {bust: 100 cm}}, ease: {bust: 10 cm}}
yarns:
  oat: {colour: "#d9c9a8"}
  kelp: {colour: "#3f5d4e"}
fabrics: {plain: {stitch: hdc, swatch: {stitches: 20, rows: 20, width: 20 cm, height: 20 cm, mass: 40 g}}}
pieces:
  back: {start: {chain: (body.bust + ease.bust) / 2}, sections: [even: {length: 50 cm}], edges: {both: [side]}, colours: oat}
  front: {like: back, colours: kelp}
seams: [{join: back.side, to: front.side, take_up: edge to edge}]
finished:
  length: {measure: finished(back.length)}
  bust: {measure: finished(back.width) + finished(front.width), of: bust}
"""
"""M is 50 sts by 50 rows a piece: 100 cm round and 50 cm long at 10 sts and 10 rows to 10 cm. A stitch weighs 0.1 g."""


def graded(folder: Path, text: str = TABARD) -> pipeline.Graded:
    return pipeline.grade(pipeline.load(spec_in(folder, text)))


def advice(folder: Path, *texts: str) -> tuple[tuple[Returned, ...], Overview, tuple[Problem, ...]]:
    pattern = graded(folder)
    reads = [read_return(spec_in(folder, text, f"return-{number}.yaml")) for number, text in enumerate(texts)]
    found, warnings = returned(pattern, reads)
    return found, overview(pattern, reads, found), warnings


def verdicts(one: Returned) -> dict[str, str]:
    return {measure.key: measure.verdict for measure in one.measures}


def test_what_a_looser_gauge_explains(tmp_path: Path) -> None:
    """9 sts and 10 rows to 10 cm: 100 sts are 111.1 cm, 50 rows still 50 cm."""
    ((one,), _, _) = advice(tmp_path, 'size: M\ngauge: "9 sts, 10 rows / 10 cm"\nfinished: {bust: 111 cm, length: 20 in}')
    length, bust = one.measures
    assert (bust.pattern, bust.own, bust.made) == (pytest.approx(1000), pytest.approx(1000 / 0.9), pytest.approx(1110))
    assert (length.pattern, length.own, length.made) == (pytest.approx(500), pytest.approx(500), pytest.approx(508))
    assert verdicts(one) == {"bust": "their gauge", "length": "as predicted"}
    assert bust.off == pytest.approx(1110 / (1000 / 0.9) - 1)
    across, along = estimate([Reading(9, 100.0)]), estimate([Reading(10, 100.0)])
    assert bust.open == pytest.approx(1000 / 0.9 * across.share) and length.open == pytest.approx(500 * along.share)
    assert 0.5 / 9 < across.share < 0.08, "half a stitch of nine misread, and stitches that differ"


def test_what_no_gauge_explains_and_what_a_coarse_one_leaves_open(tmp_path: Path) -> None:
    """Read over 10 cm a gauge may be off by a twentieth; over a metre by a two-hundredth."""
    coarse, fine = ('size: M\ngauge: "%s"\nfinished: {bust: 104 cm, length: 57 cm}' % text for text in ("10 sts, 10 rows / 10 cm", "100 sts, 100 rows / 100 cm"))
    (one, other), _, _ = advice(tmp_path, coarse, fine)
    assert verdicts(one) == {"bust": "unclear", "length": "not their gauge"}
    assert verdicts(other) == {"bust": "not their gauge", "length": "not their gauge"}


def test_without_a_gauge_nothing_is_put_down_to_it(tmp_path: Path) -> None:
    (one,), seen, _ = advice(tmp_path, "size: M\nfinished: {bust: 108 cm, length: 50.5 cm}")
    assert verdicts(one) == {"bust": "gauge not told", "length": "as predicted"} and one.measures[0].own is None
    assert seen.measures == ()


def test_the_washed_gauge_is_the_one_compared(tmp_path: Path) -> None:
    text = 'size: M\ngauge: {plain: {hook: 9 mm, fresh: "11 sts, 11 rows / 10 cm", washed: {stitches: [{count: 18, over: 20 cm}, {count: 9, over: 10 cm}], rows: [{count: 10, over: 10 cm}]}}}\nfinished: {bust: 111 cm}'
    (one,), _, _ = advice(tmp_path, text)
    assert one.measures[0].own == pytest.approx(1000 / 0.9) and one.gauges["plain"].state == "washed" and one.hooks == {"plain": "9 mm"}


def test_yarn_is_held_to_what_is_counted_without_the_margin(tmp_path: Path) -> None:
    """A back of M: 2500 sts of 0.1 g and a chain of 51, half a stitch each, are 252.5 g or so."""
    (one,), _, _ = advice(tmp_path, "size: M\nyarn: {oat: 265 g, kelp: 10 oz}")
    oat, kelp = one.yarns
    assert oat.counted == pytest.approx(252.5, abs=0.5) and oat.printed == pytest.approx(oat.counted * 1.1)
    assert kelp.used == pytest.approx(283.495) and kelp.used > kelp.printed
    assert oat.off == pytest.approx(265 / oat.counted - 1)


def test_hours_by_piece_come_to_all_only_if_each_is_told(tmp_path: Path) -> None:
    found, seen, _ = advice(tmp_path, "size: M\nhours: {back: 9.5, front: 10:30}", "size: M\nhours: {back: 8 1/2}", "size: M\nhours: 22", "size: L\nhours: 25")
    assert [one.hours for one in found] == [20.0, None, 22.0, 25.0]
    assert found[0].pace == pytest.approx(5000 / 20, abs=5)
    assert [(one.size, one.piece, one.mean, one.low, one.high, one.makers) for one in seen.hours] == [
        ("M", "", 21, 20, 22, 2), ("M", "Back", 9, 8.5, 9.5, 2), ("M", "Front", 10.5, 10.5, 10.5, 1), ("L", "", 25, 25, 25, 1),
    ]  # fmt: skip


def test_stitches_are_counted_as_often_as_a_piece_is_made(tmp_path: Path) -> None:
    two = graded(tmp_path, TABARD.replace("back: {start", "back: {make: 2, start"))
    assert worked_stitches(two, "M")["back"] == pytest.approx(2 * worked_stitches(graded(tmp_path), "M")["back"])


LONG = 'size: %s\ngauge: "100 sts, 100 rows / 100 cm"\nfinished: {bust: %g cm, length: %g cm}\nmaker: %s'


def test_the_design_is_named_where_all_makers_are_off_alike(tmp_path: Path) -> None:
    """53 cm, 53 and 52.5 where 50 are predicted; the bust is right within the tape."""
    _, seen, _ = advice(tmp_path, LONG % ("S", 90, 53, "Ada"), LONG % ("M", 100.5, 53, "Bea"), LONG % ("L", 109.5, 52.5, "Cora"))
    length, bust = seen.measures
    assert (length.judged, bust.judged) == ("the design", "nothing")
    assert length.agreement.mean == pytest.approx((0.06 + 0.06 + 0.05) / 3) and length.agreement.makers == 3
    assert seen.unmade == ()
    assert (seen.untimed, seen.unweighed, seen.unmeasured) == (("Back", "Front"), ("Oat", "Kelp"), ())


def test_two_makers_and_one_maker_twice_are_too_few(tmp_path: Path) -> None:
    _, seen, _ = advice(tmp_path, LONG % ("S", 90, 53, "Ada"), LONG % ("M", 100, 53, "Bea"), LONG % ("L", 110, 53, "Bea"))
    assert [one.judged for one in seen.measures] == ["too few", "too few"] and seen.measures[0].agreement.makers == 2


def test_makers_off_in_both_directions_are_makers(tmp_path: Path) -> None:
    _, seen, _ = advice(tmp_path, LONG % ("S", 90, 54, "Ada"), LONG % ("S", 90, 47, "Bea"), LONG % ("L", 110, 53, "Cora"))
    assert [one.judged for one in seen.measures] == ["nothing", "nothing"] and seen.unmade == ("M",)


def test_remarks_are_told_piece_by_piece_and_smallest_size_first(tmp_path: Path) -> None:
    _, seen, _ = advice(tmp_path, 'size: L\nremarks: {front: late, back: [one, two]}\nmaker: Ada', 'size: S\nremarks: {back: early}\nhard_to_follow: ["page 2"]\nmore: fine\nmaker: Bea')
    assert [(one.about, one.size, one.maker, one.said) for one in seen.remarks] == [
        ("Back", "S", "Bea", "early"), ("Back", "L", "Ada", "one"), ("Back", "L", "Ada", "two"), ("Front", "L", "Ada", "late"), ("Hard to follow", "S", "Bea", "page 2"), ("More", "S", "Bea", "fine"),
    ]  # fmt: skip


def test_another_version_is_a_warning_and_another_pattern_none_of_ours(tmp_path: Path) -> None:
    (_, _, (warning,)) = advice(tmp_path, 'pattern: lock tabard\nversion: "1"\nsize: M')
    assert (warning.name, warning.severity) == ("other-version", "warning") and warning.origin is not None and warning.origin.location.line == 2
    with pytest.raises(ProblemsFound) as found:
        advice(tmp_path, "pattern: Weir Tabard\nsize: M")
    assert [one.name for one in found.value.problems] == ["other-pattern"]


def test_all_faults_of_all_files_are_told_together(tmp_path: Path) -> None:
    with pytest.raises(ProblemsFound) as found:
        advice(tmp_path, "size: XL\nremarks: {bakc: x}", "size: M\nfinished: {bust: 10 cm}\nyarn: {oat: 2 kg}")
    told = [(one.name, one.origin.location.line if one.origin else 0, one.hint) for one in found.value.problems]
    assert [one[:2] for one in told] == [("unknown-size", 1), ("unknown-piece", 2), ("out-of-range", 2), ("out-of-range", 3)]
    assert told[1][2] == "did you mean back?" and "100 cm?" in found.value.problems[2].message


def test_files_and_folders_are_read_once_each(tmp_path: Path) -> None:
    folder = tmp_path / "back from makers"
    folder.mkdir()
    paths = [spec_in(folder, "size: M", name) for name in ("b.yaml", "a.yml")]
    (folder / "notes.txt").write_text("not a return")
    assert returns_in((folder, paths[0])) == (paths[1], paths[0])


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(sts=st.integers(60, 180), rows=st.integers(60, 180), size=st.sampled_from(["S", "M", "L"]))
def test_who_makes_just_what_their_gauge_predicts_is_never_remarked_on(tmp_path: Path, sts: int, rows: int, size: str) -> None:
    """And the gauge is taken out again: stitches twice as wide make a measure twice as wide."""
    gauge = f"{sts} sts, {rows} rows / 100 cm"
    widths = {"S": 900, "M": 1000, "L": 1100}
    bust, length = widths[size] * 100 / sts, 500 * 100 / rows
    one = f'size: {size}\ngauge: "{gauge}"\nfinished: {{bust: {bust:.6f} mm, length: {length:.6f} mm}}'
    found, seen, _ = advice(tmp_path, *(f"{one}\nmaker: {name}" for name in ("Ada", "Bea", "Cora")))
    assert set(verdicts(found[0]).values()) <= {"as predicted", "their gauge"}
    assert {one.judged for one in seen.measures} == {"nothing"}
    assert [measure.off for measure in found[0].measures] == pytest.approx([0, 0], abs=1e-6)
