"""Another gauge: everything is graded anew from it, the cloth that is worked tighter keeps its share."""

from pathlib import Path

import pytest
from tiny_specs import HEAD, designed

from cli.running import ROOT, invoke, spec_in
from gaugewright import pipeline
from gaugewright.cli.gauge_option import parse_gauge_options
from gaugewright.design.regauge import MAIN, regauged
from gaugewright.gauge.model import Gauge
from gaugewright.rounding import half_up
from gaugewright.yarn.weighing import mass_per_stitch

SLIPOVER = """\
gaugewright: 1
pattern: {title: Weir Slipover, workshop: Ferry Lane Workshop, date: 2026-03-04}
sizes: {own: {S: {bust: 84 cm}, M: {bust: 95 cm}, L: {bust: 107 cm}}, ease: {bust: 12 cm}}
yarns:
  oat: {colour: "#d9c9a8", weight: 4, ball: {mass: 50 g, length: 90 m}}
fabrics:
  body:
    stitch: hdc
    swatch: {stitches: 20, rows: 16, width: 20 cm, height: 20 cm, mass: 24 g}
  same:
    stitch: hdc
    loop: back
    swatch: {stitches: 20, rows: 16, width: 20 cm, height: 20 cm, mass: 26 g}
  rib:
    stitch: sc
    loop: back
    swatch: {stitches: 24, rows: 30, width: 20 cm, height: 20 cm, mass: 30 g}
levels:
  shoulder: 56 cm
  underarm: 34 cm
pieces:
  back:
    fabric: body
    start: {chain: (body.bust + ease.bust) / 2, fabric: body}
    sections:
      - even: {to: underarm}
      - taper: {length: 12 cm, target: 36 cm}
      - even: {to: shoulder}
    edges: {both: [side, underarm, armhole]}
  panel: {fabric: same, start: {chain: 30 cm}, sections: [even: {length: 40 cm}]}
  cuff: {fabric: rib, start: {chain: 24 cm}, sections: [even: {length: 8 cm}]}
"""

GAUGES = {
    "looser": "9 sts, 7 rows / 10 cm", "tighter": "12 sts, 10 rows / 10 cm", "wider and lower": "8.5 sts, 9.5 rows / 10 cm",
    "narrower and taller": "11 sts, 6.5 rows / 10 cm", "over inches": "10 sts, 8.5 rows / 4 in",
}  # fmt: skip


def gauge_of(text: str) -> Gauge:
    gauges = parse_gauge_options([text])
    assert gauges is not None
    return gauges[MAIN]


@pytest.fixture(params=GAUGES)
def asked(request: pytest.FixtureRequest) -> Gauge:
    return gauge_of(GAUGES[request.param])


def graded(tmp_path: Path, gauge: Gauge | None) -> pipeline.Graded:
    return pipeline.grade(pipeline.load(spec_in(tmp_path, SLIPOVER), gauge))


def test_the_main_fabric_takes_the_gauge_as_asked(asked: Gauge) -> None:
    design = regauged(designed(SLIPOVER), asked)
    assert design.fabric("body").gauge == design.fabric("same").gauge == asked


def test_other_fabrics_are_scaled_by_width_and_by_height(asked: Gauge) -> None:
    before = designed(SLIPOVER)
    after = regauged(before, asked)
    old, new = before.fabric("rib").gauge, after.fabric("rib").gauge
    main = before.fabric("body").gauge
    assert (new.stitches, new.rows) == (old.stitches, old.rows)
    assert new.stitch_width / old.stitch_width == pytest.approx(asked.stitch_width / main.stitch_width, rel=1e-3)
    assert new.row_height / old.row_height == pytest.approx(asked.row_height / main.row_height, rel=1e-3)


def test_what_is_printed_is_what_is_graded(asked: Gauge) -> None:
    """Scaled figures are whole tenths of a millimetre: the gauge page prints hundredths of a centimetre."""
    gauge = regauged(designed(SLIPOVER), asked).fabric("rib").gauge
    for mm in (gauge.width, gauge.height):
        assert mm * 10 == pytest.approx(half_up(mm * 10), abs=1e-6)


def test_a_stitch_takes_as_much_yarn_as_before(asked: Gauge) -> None:
    before = designed(SLIPOVER)
    after = regauged(before, asked)
    for fabric in before.fabrics:
        assert mass_per_stitch(after.fabric(fabric.key)) == pytest.approx(mass_per_stitch(fabric))


def test_fabrics_that_were_not_weighed_stay_so(asked: Gauge) -> None:
    design = regauged(designed(HEAD + "pieces: {a: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 9 cm}]}}"), asked)
    assert all(fabric.swatch_mass is None for fabric in design.fabrics)


def test_its_own_gauge_changes_nothing() -> None:
    design = designed(SLIPOVER)
    assert regauged(design, design.fabric("body").gauge) == design


def test_nothing_but_the_fabrics_changes(asked: Gauge) -> None:
    before = designed(SLIPOVER)
    after = regauged(before, asked)
    assert (after.pieces, after.sizes, after.lengths, after.levels, after.yarns) == (before.pieces, before.sizes, before.lengths, before.levels, before.yarns)


def test_every_count_is_worked_out_anew(tmp_path: Path, asked: Gauge) -> None:
    """Against lengths written out here: (bust + 12) / 2, 56 cm with 34 to the underarm, 30 by 40, 24 by 8."""
    result = graded(tmp_path, asked)
    rib = result.design.fabric("rib").gauge
    for size, bust in (("S", 84), ("M", 95), ("L", 107)):
        back, panel, cuff = (result.grading.pieces[key][size] for key in ("back", "panel", "cuff"))
        assert back.main.rows[0].makes == half_up((bust + 12) * 5 / asked.stitch_width)
        assert abs(back.main.rows[-1].makes - 360 / asked.stitch_width) <= 1
        assert len(back.main.rows) == half_up(560 / asked.row_height)
        assert back.edges["side"].rows + back.edges["armhole"].rows == len(back.main.rows)
        assert abs(back.edges["armhole"].rows - 220 / asked.row_height) <= 0.5
        assert (panel.main.rows[0].makes, len(panel.main.rows)) == (half_up(300 / asked.stitch_width), half_up(400 / asked.row_height))
        assert (cuff.main.rows[0].makes, len(cuff.main.rows)) == (half_up(240 / rib.stitch_width), half_up(80 / rib.row_height))


def test_wider_stitches_and_lower_rows_change_each_their_own(tmp_path: Path) -> None:
    """Stitches change with the width only, rows with the height only."""
    own, wide, low = (graded(tmp_path, gauge) for gauge in (None, gauge_of("8 sts, 8 rows / 10 cm"), gauge_of("10 sts, 9.5 rows / 10 cm")))

    def shape(result: pipeline.Graded) -> tuple[int, int]:
        piece = result.grading.pieces["panel"]["M"]
        return piece.main.rows[0].makes, len(piece.main.rows)

    assert (shape(own), shape(wide), shape(low)) == ((30, 32), (24, 32), (30, 38))


def test_checks_hold_at_every_gauge(tmp_path: Path, asked: Gauge) -> None:
    assert pipeline.errors_of(pipeline.check(graded(tmp_path, asked))) == ()


@pytest.mark.parametrize("name", GAUGES)
def test_the_printed_gauge_is_the_one_asked_for(tmp_path: Path, name: str) -> None:
    spec = spec_in(tmp_path, SLIPOVER)
    text = " ".join(invoke("show", spec, "text", "--gauge", GAUGES[name]).stdout.split())
    gauge = gauge_of(GAUGES[name])
    width, height = (f"{half_up(mm * 10) / 100:g} cm" for mm in (gauge.width, gauge.height))
    assert f"Body: {gauge.stitches} sts measure {width} / " in text
    assert f"and {gauge.rows} rows measure {height} / " in text
    assert f"This edition is worked out for another gauge than the pattern’s own: {GAUGES[name]}." in text


@pytest.mark.parametrize("gauge", ["8.5 sts, 6.5 rows / 10 cm", "9.5 sts, 8 rows / 10 cm"])
def test_the_sample_at_another_gauge(gauge: str) -> None:
    spec = ROOT / "samples/saltmarsh-jacket/spec.yaml"
    own, other = (pipeline.grade(pipeline.load(spec, each)) for each in (None, gauge_of(gauge)))
    assert pipeline.errors_of(pipeline.check(other)) == ()
    for key, sized in own.grading.pieces.items():
        for size, piece in sized.items():
            new = other.grading.pieces[key][size]
            assert [row.makes for row in new.main.rows] != [row.makes for row in piece.main.rows]
            for measure in ("width", "length"):
                # Another gauge, the same garment: each end errs by a stitch or a row, a picked-up band by its ratio.
                assert new.finished[measure] == pytest.approx(piece.finished[measure], abs=26, rel=0.03)
