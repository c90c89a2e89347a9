"""Strips cut out of outlines, against areas found by slicing."""

import math

import pytest
from drawings.figures import FIGURES
from hypothesis import given
from hypothesis import strategies as st

from gaugewright.drawings.geometry import area_of
from gaugewright.drawings.strips import clip_strip

NECK = ((0, 0), (100, 0), (100, 80), (70, 80), (50, 40), (30, 80), (0, 80))


def sliced_area(polygon: tuple[tuple[float, float], ...], bottom: float, top: float, slices: int = 4000) -> float:
    """Area by adding up the stretches inside along many level lines."""
    step = (top - bottom) / slices
    total = 0.0
    for index in range(slices):
        y = bottom + (index + 0.5) * step
        xs = sorted(
            ax + (y - ay) * (bx - ax) / (by - ay)
            for (ax, ay), (bx, by) in zip(polygon, polygon[1:] + polygon[:1], strict=True)
            if (ay > y) != (by > y)
        )
        total += step * sum(right - left for left, right in zip(xs[::2], xs[1::2], strict=True))
    return total


def test_a_strip_across_a_neck_falls_into_two_shoulders() -> None:
    parts = clip_strip(NECK, 60, 80)
    assert sorted(min(x for x, _ in part) for part in parts) == [0, pytest.approx(60)]
    assert [abs(area_of(part)) for part in parts] == pytest.approx([700, 700])


def test_a_strip_below_the_neck_is_whole() -> None:
    (part,) = clip_strip(NECK, 0, 40)
    assert abs(area_of(part)) == pytest.approx(4000)


def test_a_strip_whose_edge_lies_on_a_step_stops_there() -> None:
    stepped = ((0, 0), (60, 0), (60, 30), (40, 30), (40, 50), (20, 50), (20, 30), (0, 30))
    assert sum(abs(area_of(part)) for part in clip_strip(stepped, 10, 30)) == pytest.approx(1200)
    assert sum(abs(area_of(part)) for part in clip_strip(stepped, 30, 50)) == pytest.approx(400)


def test_a_strip_beside_the_outline_is_empty() -> None:
    assert clip_strip(NECK, 80, 90) == ()
    assert clip_strip(NECK, -20, 0) == ()


@pytest.mark.parametrize("figure", FIGURES, ids=lambda figure: figure.name)
def test_the_bands_of_a_piece_cover_it_once(figure) -> None:
    parts = [part for band in figure.bands for part in clip_strip(figure.outline, band.bottom, band.top)]
    assert sum(abs(area_of(part)) for part in parts) == pytest.approx(abs(area_of(figure.outline)))


@given(st.lists(st.sampled_from([3.0, 6.0, 10.0]), min_size=3, max_size=14), st.integers(-10, 9), st.integers(1, 12))
def test_star_shapes_are_cut_to_the_right_area(radii: list[float], bottom: int, height: int) -> None:
    turns = [2 * math.pi * index / len(radii) for index in range(len(radii))]
    star = tuple((r * math.cos(turn), r * math.sin(turn)) for r, turn in zip(radii, turns, strict=True))
    parts = clip_strip(star, bottom, bottom + height)
    assert all(bottom - 1e-9 <= y <= bottom + height + 1e-9 for part in parts for _, y in part)
    found = sum(abs(area_of(part)) for part in parts)
    assert found == pytest.approx(sliced_area(star, bottom, bottom + height, 1500), abs=0.05)
