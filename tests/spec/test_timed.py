"""Timed rows as written: what they may be, and slips told at their place."""

import pytest

from gaugewright.errors import ProblemsFound
from tiny_specs import designed

SPEC = """\
gaugewright: 1
pattern: {title: Tiny}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics:
  body:
    stitch: hdc
    swatch: {stitches: 10, rows: 10, width: 10 cm, height: 10 cm, timed: @timed@}
pieces: {piece: {fabric: body, start: {chain: 20 cm}, sections: [even: {length: 10 cm}]}}
"""


def timed(text: str) -> list[tuple[int, float]]:
    return [(one.stitches, one.seconds) for one in designed(SPEC.replace("@timed@", text)).fabrics[0].timed]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("{stitches: 72, minutes: 9}", [(72, 540.0)]),
        ("{stitches: 72, minutes: 9.5}", [(72, 570.0)]),
        ("{stitches: 72, minutes: 9:30}", [(72, 570.0)]),
        ("{stitches: 18, rows: 4, minutes: 9}", [(72, 540.0)]),
        ("[{stitches: 72, minutes: 9}, {stitches: 18, minutes: 0:55}]", [(72, 540.0), (18, 55.0)]),
    ],
)
def test_timings_are_read(text: str, found: list[tuple[int, float]]) -> None:
    assert timed(text) == found


@pytest.mark.parametrize(
    ("text", "name", "at"),
    [
        ("{stitches: 72, minutes: 0}", "not-positive", "0}"),
        ("{stitches: 72, minutes: 0:00}", "not-positive", "0:00"),
        ("{stitches: 72, minutes: -9}", "not-positive", "-9"),
        ("{stitches: 72, minutes: .nan}", "wrong-kind", ".nan"),
        ("{stitches: 72, minutes: .inf}", "wrong-kind", ".inf"),
        ("{stitches: 72, minutes: 1e999}", "wrong-kind", "1e999"),
        ("{stitches: 72, minutes: 6001}", "out-of-range", "6001"),
        ("{stitches: 72, minutes: 9 min}", "wrong-kind", "9 min"),
        ("{stitches: 72, minutes: 9:75}", "wrong-kind", "9:75"),
        ("{stitches: 72, minutes: yes}", "wrong-kind", "yes"),
        ("{stitches: 72, minutes: true}", "wrong-kind", "true"),
        ("{stitches: 72}", "missing-key", "timed"),
        ("{stitches: 72, minutes: }", "empty-value", "minutes"),
        ("{minutes: 9}", "missing-key", "timed"),
        ("{stitches: 0, minutes: 9}", "not-positive", "0, min"),
        ("{stitches: 18, rows: 4.5, minutes: 9}", "wrong-kind", "4.5"),
        ("{stitches: 172, minutes: 1}", "pace-beyond-record", "1}"),
        ("{stitches: 72, rows: 24, minutes: 9:00}", "pace-beyond-record", "9:00"),
        ("[{stitches: 72, minutes: 9}, {stitches: 9, minutes: 72}]", "pace-too-slow", "72}]"),
        ("{stitches: 72, seconds: 9, minutes: 9}", "unknown-key", "seconds"),
        ("[]", "out-of-range", "[]"),
        ("9", "wrong-kind", "9}"),
    ],
)
def test_slips_are_told_at_their_place(text: str, name: str, at: str) -> None:
    with pytest.raises(ProblemsFound) as caught:
        timed(text)
    (one,) = caught.value.problems
    assert one.origin is not None
    assert (one.name, one.origin.line_text[one.origin.location.column - 1 :][: len(at)]) == (name, at)
    assert one.hint


def test_hours_are_printed_in_one_of_three_ways() -> None:
    with pytest.raises(ProblemsFound) as caught:
        designed(SPEC.replace("timed: @timed@", "mass: 9 g").replace("title: Tiny", "title: Tiny, hours: always"))
    assert [(one.name, "never" in one.message) for one in caught.value.problems] == [("unknown-word", True)]
    assert designed(SPEC.replace("timed: @timed@", "mass: 9 g").replace("title: Tiny", "title: Tiny, hours: at a glance")).about.hours == "at a glance"
