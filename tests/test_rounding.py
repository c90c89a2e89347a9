"""Rounding rules: halves go up, and the last bits of a product never move a count."""

import pytest

from gaugewright.rounding import (
    down,
    down_to_series,
    half_up,
    nearest_of_series,
    to_step,
    up,
    up_to_series,
    up_to_step,
)


@pytest.mark.parametrize(("value", "expected"), [(0.5, 1), (1.5, 2), (2.5, 3), (-0.5, 0), (-1.5, -1)])
def test_halves_go_up_not_to_even(value: float, expected: int) -> None:
    assert half_up(value) == expected


def test_last_bits_of_a_product_do_not_lose_a_half() -> None:
    assert 0.145 * 100 < 14.5  # the product is a little short
    assert half_up(0.145 * 100) == 15


def test_a_length_made_of_whole_stitches_comes_back_to_them() -> None:
    for stitches in range(1, 400):
        width = stitches * (205.0 / 18)
        exact = width * 18 / 205.0
        assert up(exact) == down(exact) == half_up(exact) == stitches


def test_up_and_down_enclose_the_value() -> None:
    assert (down(7.3), up(7.3)) == (7, 8)
    assert (down(-7.3), up(-7.3)) == (-8, -7)


@pytest.mark.parametrize(("value", "step", "expected"), [(41.25, 0.5, 41.5), (41.24, 0.5, 41.0), (16.125, 0.25, 16.25)])
def test_steps_of_a_shown_length(value: float, step: float, expected: float) -> None:
    assert to_step(value, step) == expected


def test_up_to_step_keeps_what_is_on_the_step() -> None:
    assert (up_to_step(41.5, 0.5), up_to_step(41.51, 0.5)) == (41.5, 42.0)


@pytest.mark.parametrize(
    ("value", "nearest", "upwards", "downwards"),
    [(17.0, 17, 17, 17), (20.0, 23, 23, 17), (19.9, 17, 23, 17), (20.1, 23, 23, 17), (3.0, 5, 5, 5)],
)
def test_series_of_six_from_five(value: float, nearest: int, upwards: int, downwards: int) -> None:
    assert nearest_of_series(value, 5, 6) == nearest
    assert up_to_series(value, 5, 6) == upwards
    assert down_to_series(value, 5, 6) == downwards
