"""Caps: as long as their armhole and its ease, to a row, and never shorter."""

import pytest
from shapely import Polygon

from gaugewright.gauge.model import Gauge
from gaugewright.grading.armhole import armhole
from gaugewright.grading.cap import GIVE, Cap, CapImpossible, cap
from gaugewright.grading.curves import profile_length, profile_points
from gaugewright.grading.profile import EdgeStep
from gaugewright.rounding import half_up, nearest_of_series

MEDIUM, THICK = Gauge(14, 100.0, 10, 100.0), Gauge(9, 100.0, 7, 100.0)

SIZES = {
    # stitches that go at a side as mm, depth of the armhole, upper sleeve: XS to 5X
    "XS": (40, 185, 320), "S": (50, 190, 335), "M": (60, 197, 350), "L": (72, 203, 375), "XL": (80, 212, 400),
    "2X": (88, 220, 425), "3X": (96, 230, 455), "4X": (102, 238, 480), "5X": (108, 246, 505),
}
EASE = 10.0


def fitted(gauge: Gauge, size: str, ease: float = EASE) -> tuple[Cap, float]:
    """The cap of one size for its own armhole, and the armhole's edge."""
    across, depth, upper = SIZES[size]
    opening = armhole(half_up(gauge.stitches_in(across)), half_up(gauge.rows_in(depth)), None, None, gauge)
    edge = 2 * profile_length(opening, gauge)
    stitches = nearest_of_series(gauge.stitches_in(upper), 2, 2)
    return cap(stitches, edge, gauge, opening.steps[0].stitches, ease, gauge.height_of(opening.rows)), edge


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("gauge", [MEDIUM, THICK])
def test_a_cap_fills_its_armhole_to_a_row(gauge: Gauge, size: str) -> None:
    made, edge = fitted(gauge, size)
    assert made.edge_length >= edge - 0.05
    assert abs(made.residual) <= gauge.row_height
    assert made.residual == pytest.approx(made.edge_length - edge - EASE)
    assert made.edge_length == pytest.approx(2 * profile_length(made.profile, gauge) + gauge.width_of(made.top))


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("gauge", [MEDIUM, THICK])
def test_a_cap_accounts_for_every_stitch_and_row(gauge: Gauge, size: str) -> None:
    made, _ = fitted(gauge, size)
    upper = nearest_of_series(gauge.stitches_in(SIZES[size][2]), 2, 2)
    assert upper - 2 * made.profile.stitches == made.top > 0
    assert made.rows == made.profile.rows
    assert made.profile.steps[0].row == 1 and made.profile.steps[0].way == "leave"
    assert all(step.stitches <= 3 for step in made.profile.steps[1:])


@pytest.mark.parametrize("size", SIZES)
def test_first_step_and_top_give_at_most_two_stitches(size: str) -> None:
    made, _ = fitted(MEDIUM, size)
    across = half_up(MEDIUM.stitches_in(SIZES[size][0]))
    assert abs(made.profile.steps[0].stitches - half_up(across / 2)) <= GIVE
    assert abs(made.top - MEDIUM.stitches_in(62.5)) <= GIVE + 1


def test_without_ease_a_cap_is_still_not_shorter() -> None:
    for size in SIZES:
        made, edge = fitted(MEDIUM, size, ease=0.0)
        assert -0.05 <= made.edge_length - edge <= MEDIUM.row_height


def test_a_longer_armhole_gets_a_higher_cap() -> None:
    rows = [cap(50, edge, MEDIUM, 5, 10.0, 210.0).rows for edge in (440.0, 480.0, 520.0, 560.0)]
    assert rows == sorted(rows) and rows[0] < rows[-1]


def test_a_wider_sleeve_gets_a_lower_cap() -> None:
    rows = [cap(stitches, 500.0, MEDIUM, 5, 10.0, 210.0).rows for stitches in (42, 46, 50, 54)]
    assert rows == sorted(rows, reverse=True) and rows[0] > rows[-1]


def test_a_usual_height_is_told_from_an_unusual_one() -> None:
    assert cap(48, 480.0, MEDIUM, 5, 10.0, 210.0).usual
    assert not cap(40, 500.0, MEDIUM, 3, 10.0, 210.0).usual


def test_the_same_cap_is_found_each_time() -> None:
    assert len({fitted(THICK, "L") for _ in range(3)}) == 1


@pytest.mark.parametrize(("upper", "edge"), [(76, 500.0), (66, 500.0), (28, 600.0)])
def test_what_cannot_fill_its_armhole_says_what_would(upper: int, edge: float) -> None:
    with pytest.raises(CapImpossible, match=f"no cap of {upper} stitches has an edge of {edge / 10:.1f} cm") as refused:
        cap(upper, edge, MEDIUM, 5, 10.0, 210.0)
    fits = refused.value.fits
    assert fits is not None and (fits < upper) == (upper > 50)
    assert edge <= cap(fits, edge, MEDIUM, 5, 10.0, 210.0).edge_length <= edge + 20.0
    for nearer in range(upper, fits, 1 if fits > upper else -1):
        with pytest.raises(CapImpossible):
            cap(nearer, edge, MEDIUM, 5, 10.0, 210.0)


def test_an_armhole_that_no_sleeve_fills_is_said_to_be_so() -> None:
    with pytest.raises(CapImpossible) as refused:
        cap(20, 2000.0, MEDIUM, 5, 10.0, 210.0)
    assert refused.value.fits is None


@pytest.mark.parametrize("gauge", [MEDIUM, THICK])
def test_the_outline_of_a_cap_encloses_the_cloth_of_its_rows(gauge: Gauge) -> None:
    made, _ = fitted(gauge, "M")
    across = gauge.width_of(2 * made.profile.stitches + made.top)
    side = profile_points(made.profile, gauge)
    shape = Polygon([*side, *((across - x, y) for x, y in reversed(side))])
    widths = [across - 2 * x for x, _ in side]
    cloth = sum((low + high) / 2 * gauge.row_height for low, high in zip(widths, widths[1:], strict=False))
    assert shape.is_valid
    assert shape.area == pytest.approx(cloth)


def test_the_first_step_lies_on_the_armholes_own() -> None:
    opening = armhole(8, 20, 4, None, MEDIUM)
    made = cap(46, 2 * profile_length(opening, MEDIUM), MEDIUM, 4, 10.0, 200.0)
    assert abs(made.profile.steps[0].stitches - opening.steps[0].stitches) <= GIVE
    assert made.profile.steps[0]._replace(stitches=4) == opening.steps[0] == EdgeStep(1, 4, "leave")
