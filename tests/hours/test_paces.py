"""Whose pace counts, and for which fabric."""

import pytest

from gaugewright.design.model import Design
from gaugewright.grading.grade import grade
from gaugewright.hours.duration import Duration
from gaugewright.hours.paces import Maker, beginner, paces
from gaugewright.hours.sizes import size_time
from gaugewright.sizing.bodies import bodies, environments
from tiny_specs import designed

FABRICS = """\
gaugewright: 1
pattern: {title: Tiny}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics:
  body: {stitch: hdc, swatch: {stitches: 10, rows: 10, width: 10 cm, height: 10 cm@body@}}
  round: {like: body, worked: joined rounds, swatch: {stitches: 10, rows: 10, width: 10 cm, height: 10 cm}}
  rib: {stitch: sc, loop: back, swatch: {stitches: 10, rows: 10, width: 10 cm, height: 10 cm@rib@}}
  tall: {stitch: tr, gauge: "10 sts, 4 rows / 10 cm"}
pieces: {piece: {fabric: body, start: {chain: 20 cm}, sections: [even: {length: 10 cm}]}}
"""


def design(body: str = "", rib: str = "") -> Design:
    return designed(FABRICS.replace("@body@", body and f", timed: {body}").replace("@rib@", rib and f", timed: {rib}"))


def seconds(found: Design, maker: Maker = Maker({})) -> dict[str, float]:
    return {key: pace.stitch.mean for key, pace in paces(found, maker).items()}


def test_timed_rows_are_rows_of_so_many_stitches() -> None:
    timed = design("{stitches: 24, rows: 4, minutes: 8}")
    assert seconds(timed)["body"] == pytest.approx(5.0)
    assert seconds(design("{stitches: 96, minutes: '8:00'}")) == seconds(timed)
    assert seconds(design("[{stitches: 48, minutes: 4}, {stitches: 48, minutes: 4.0}]")) == seconds(timed)


def test_other_fabrics_follow_by_the_movements_of_the_hook() -> None:
    """hdc 3, sc 2, tr 6 movements."""
    found = seconds(design("{stitches: 60, minutes: 5}"))
    assert found == pytest.approx({"body": 5.0, "round": 5.0, "rib": 10 / 3, "tall": 10.0})
    assert {key: pace.of for key, pace in paces(design("{stitches: 60, minutes: 5}")).items()} == {"body": "", "round": "body", "rib": "body", "tall": "body"}


def test_of_several_timed_fabrics_the_nearest_is_followed() -> None:
    found = paces(design("{stitches: 60, minutes: 5}", "{stitches: 60, minutes: 4}"))
    assert {key: pace.of for key, pace in found.items()} == {"body": "", "round": "body", "rib": "", "tall": "body"}


def test_the_range_is_from_the_fastest_timing_to_the_slowest_and_never_none() -> None:
    two = paces(design("[{stitches: 60, minutes: 4}, {stitches: 60, minutes: 6}]"))["body"].stitch
    assert two == Duration(4.0, 5.0, 6.0)
    alike = paces(design("[{stitches: 60, minutes: 5}, {stitches: 30, minutes: 2.5}]"))["body"].stitch
    assert (alike.low, alike.mean, alike.high) == pytest.approx((4.5, 5.0, 5.5))
    once = paces(design("{stitches: 60, minutes: 5}"))["body"].stitch
    assert (once.low, once.mean, once.high) == pytest.approx((4.0, 5.0, 6.0))


def test_a_pace_taken_from_another_stitch_has_the_wider_range() -> None:
    found = paces(design("{stitches: 60, minutes: 5}"))
    shares = {key: (pace.stitch.high - pace.stitch.low) / pace.stitch.mean for key, pace in found.items()}
    assert shares == pytest.approx({"body": 0.4, "round": 0.4, "rib": 0.6, "tall": 0.6})


def test_without_a_timed_swatch_the_published_range_is_taken() -> None:
    found = paces(design())
    assert {pace.basis for pace in found.values()} == {"published"}
    assert found["rib"].stitch.high == pytest.approx(2 * found["rib"].stitch.low)


def test_timed_rows_hold_their_turns() -> None:
    """A row ends in turning and counting; within timed rows the turns were timed."""
    assert paces(design("{stitches: 60, minutes: 5}"))["body"].row.mean < paces(design())["body"].row.mean


def test_a_pace_of_ones_own_goes_before_the_designers() -> None:
    timed = design("{stitches: 60, minutes: 5}")
    own = paces(timed, Maker({"rib": 20.0}))
    assert (own["rib"].stitch.mean, own["body"].stitch.mean, own["body"].of, own["body"].basis) == (pytest.approx(3.0), pytest.approx(4.5), "rib", "stated")


def test_a_pace_of_ones_own_in_a_stitch_pattern_is_told_by_its_width() -> None:
    """As timed rows are: 21 stitches across, whatever the arches make of them."""
    text = FABRICS.replace("stitch: hdc", "pattern: arches").replace("@body@", "@timed@").replace("@rib@", "").replace("chain: 20 cm", "chain: 21 cm")
    timed, untimed = (designed(text.replace("@timed@", more)) for more in (", timed: {stitches: 21, rows: 2, minutes: 3}", ""))
    pieces = {"piece": grade(timed, environments(timed, bodies(timed))).pieces["piece"].values[0]}
    by_the_clock, stated = size_time(timed, pieces).pieces[0], size_time(untimed, pieces, Maker({"body": 14.0})).pieces[0]
    assert stated.stitches == by_the_clock.stitches != size_time(untimed, pieces).pieces[0].stitches


def test_a_beginner_takes_a_third_longer_but_for_a_pace_of_her_own() -> None:
    timed = design("{stitches: 60, minutes: 5}")
    assert seconds(timed, beginner({}))["body"] == pytest.approx(5 * 4 / 3, rel=1e-4)
    assert seconds(timed, beginner({"body": 10.0}))["body"] == pytest.approx(6.0)
    assert seconds(design(), beginner({}))["body"] == pytest.approx(seconds(design())["body"] * 4 / 3, rel=1e-4)
