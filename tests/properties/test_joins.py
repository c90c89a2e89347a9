"""Rows and places of sideways bands, over all counts."""

from hypothesis import given
from hypothesis import strategies as st

from gaugewright.grading.join_model import JoinRun
from gaugewright.grading.joins import _pairs
from gaugewright.tolerances import PLAIN_JOIN_SHARE

COUNTS = st.integers(1, 600)


@given(COUNTS, COUNTS)
def test_the_joins_of_a_band_are_the_places_of_its_edge(places: int, pairs: int) -> None:
    takes = JoinRun((("back", "hem"),), places, False, pairs).takes()
    assert len(takes) == pairs and sum(takes) == places
    assert max(takes) - min(takes) <= 1
    counts = JoinRun((("back", "hem"),), places, False, pairs).counts()
    assert sum(take * times for take, times in counts.items()) == places and sum(counts.values()) == pairs


@given(COUNTS, COUNTS, st.integers(1, 600))
def test_the_joins_are_spread_evenly(places: int, pairs: int, upto: int) -> None:
    """After any number of joins the band is within one place of the edge's even share."""
    takes = JoinRun((("back", "hem"),), places, False, pairs).takes()
    part = min(upto, pairs)
    assert 0 <= sum(takes[:part]) - part * places / pairs < 1


@given(st.floats(0.6, 400), COUNTS)
def test_the_band_is_as_long_as_its_edge(exact: float, places: int) -> None:
    pairs = _pairs(exact, places)
    assert pairs >= 1
    assert abs(pairs - exact) <= max(0.5, PLAIN_JOIN_SHARE * exact) + 1e-9
