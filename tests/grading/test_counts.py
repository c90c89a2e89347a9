"""Counts: multiple, extra, parity, minimum and direction, together and in conflict."""

import pytest

from gaugewright.gauge.counts import CountImpossible, CountRule, allows, count_for, spacing


@pytest.mark.parametrize(
    ("exact", "rule", "expected"),
    [
        (38.2, CountRule(), 38),
        (38.5, CountRule(), 39),
        (39.0, CountRule(parity="even"), 40),
        (38.9, CountRule(parity="even"), 38),
        (38.0, CountRule(parity="odd"), 39),
        (40.0, CountRule(multiple=6, plus=1), 43),
        (39.9, CountRule(multiple=6, plus=1), 37),
        (40.0, CountRule(multiple=5, plus=1, parity="even"), 36),
        (41.5, CountRule(multiple=5, plus=1, parity="even"), 46),
        (2.0, CountRule(minimum=8), 8),
        (2.0, CountRule(multiple=6, plus=1, minimum=8), 13),
        (0.0, CountRule(), 1),
        (37.01, CountRule(multiple=6, plus=1, direction="up"), 43),
        (42.99, CountRule(multiple=6, plus=1, direction="down"), 37),
        (5.0, CountRule(multiple=6, plus=7, direction="down"), 7),
    ],
)
def test_count(exact: float, rule: CountRule, expected: int) -> None:
    assert count_for(exact, rule) == expected
    assert allows(rule, expected)


@pytest.mark.parametrize(
    ("rule", "gap"),
    [
        (CountRule(), 1),
        (CountRule(parity="odd"), 2),
        (CountRule(multiple=6, plus=1), 6),
        (CountRule(multiple=6, plus=1, parity="odd"), 6),
        (CountRule(multiple=5, plus=1, parity="even"), 10),
    ],
)
def test_spacing(rule: CountRule, gap: int) -> None:
    assert spacing(rule) == gap


@pytest.mark.parametrize("call", [spacing, lambda rule: count_for(40, rule), lambda rule: allows(rule, 41)])
def test_an_even_repeat_cannot_change_its_parity(call: object) -> None:
    rule = CountRule(multiple=4, plus=1, parity="even")
    with pytest.raises(CountImpossible, match="always odd, never even; a multiple of 4 plus 0 or 2 would fit"):
        call(rule)  # type: ignore[operator]


def test_what_the_message_offers_does_fit() -> None:
    for rule in (CountRule(4, 0, "even"), CountRule(4, 2, "even"), CountRule(3, 1, "even"), CountRule(4, 1, "odd")):
        assert spacing(rule) in (4, 6)


def test_a_repeat_without_stitches_is_refused() -> None:
    with pytest.raises(CountImpossible, match="the multiple is 1 or more"):
        count_for(40, CountRule(multiple=0))
    with pytest.raises(CountImpossible, match="the extra is 0 or more"):
        count_for(40, CountRule(multiple=4, plus=-1))


@pytest.mark.parametrize("exact", [float("nan"), float("inf")])
def test_no_count_for_what_is_no_length(exact: float) -> None:
    with pytest.raises(CountImpossible):
        count_for(exact, CountRule())
