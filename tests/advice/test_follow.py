"""Whose numbers to follow at another gauge; figures worked by hand on a plain body of one width a size."""

from pathlib import Path

import pytest

from cli.running import ROOT, spec_in
from gaugewright import pipeline
from gaugewright.advice.follow import follow
from gaugewright.gauge.model import Gauge

TABARD = """\
gaugewright: 1
pattern: {title: Lock Tabard, workshop: Ferry Lane Workshop}
sizes: {own: {S: {bust: 80 cm}, M: {bust: 90 cm}, L: {bust: 100 cm}, XL: {bust: 110 cm}}, ease: {bust: 10 cm}}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics: {plain: {stitch: hdc, gauge: "10 sts, 8 rows / 10 cm"}}
pieces:
  back: {start: {chain: (body.bust + ease.bust) / 2}, sections: [even: {length: 50 cm}], edges: {both: [side]}}
  front: {like: back}
seams: [{join: back.side, to: front.side, take_up: edge to edge}]
finished:
  length: {measure: finished(back.length)}
  bust: {measure: finished(back.width) + finished(front.width), of: bust}
"""


def tabard(folder: Path) -> pipeline.Graded:
    return pipeline.grade(pipeline.load(spec_in(folder, TABARD)))


def test_at_its_own_gauge_each_size_is_its_own(tmp_path: Path) -> None:
    graded = tabard(tmp_path)
    found = follow(graded, graded.design.fabric("plain").gauge)
    assert [(one.wanted, one.numbers, one.lead.off) for one in found] == [(size, size, 0) for size in "S M L XL".split()]
    assert all(other.fits for one in found for other in one.others)


def test_a_tenth_wider_is_a_size_smaller(tmp_path: Path) -> None:
    """45, 50, 55, 60 sts a piece; at 9 sts to 10 cm S's 90 sts are 100 cm, M's bust. 40 rows at 8 to 10 cm stay 50 cm."""
    found = {one.wanted: one for one in follow(tabard(tmp_path), Gauge(9, 100, 8, 100))}
    assert found["M"].numbers == "S" and found["M"].lead.got == pytest.approx(1000) and found["M"].lead.off == pytest.approx(0)
    assert found["L"].numbers == "M" and found["L"].lead.got == pytest.approx(1000 / 0.9)
    assert found["L"].lead.off == pytest.approx(1000 / 0.9 - 1100) and found["L"].lead.fits
    # The smallest has nothing below it: its own numbers, 10 cm too wide.
    assert found["S"].numbers == "S" and found["S"].lead.off == pytest.approx(100) and not found["S"].lead.fits


def test_lengths_follow_the_rows_and_say_how_many_mend_them(tmp_path: Path) -> None:
    """40 rows of 10 / 7 cm are 57.1 cm: 7.1 cm too long, five rows of 1.43 cm."""
    (length,) = follow(tabard(tmp_path), Gauge(10, 100, 7, 100))[0].others
    assert length.key == "length" and length.got == pytest.approx(40 / 7 * 100) and length.rows == -5 and not length.fits


def test_a_pattern_that_states_no_measurements_is_judged_by_its_pieces(tmp_path: Path) -> None:
    graded = pipeline.grade(pipeline.load(spec_in(tmp_path, TABARD[: TABARD.index("finished:")])))
    found = {one.wanted: one for one in follow(graded, Gauge(9, 100, 8, 100))}
    assert (found["M"].numbers, found["M"].lead.key) == ("S", "back.width")


def test_what_a_seam_takes_is_taken_at_the_gauge_worked() -> None:
    """The jacket's half stitches at the side seams grow with the stitches: 10 % wider stitches, 10 % wider all over."""
    graded = pipeline.grade(pipeline.load(ROOT / "samples/saltmarsh-jacket/spec.yaml"))
    main = graded.design.fabric("body").gauge
    wider = pipeline.worked_at(graded, Gauge(main.stitches, main.width * 1.1, main.rows, main.height * 1.1))
    for size, pieces in graded.grading.pieces["back"].items():
        assert wider.grading.pieces["back"][size].finished["width"] == pytest.approx(pieces.finished["width"] * 1.1)
        assert wider.grading.pieces["back"][size].main == pieces.main, "no row is another"
