"""Hours add up over the pieces, grow with the stitches and go with the pace."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugewright.advice.finish_by import at_the_table, at_work
from gaugewright.design.timing import Timing
from gaugewright.hours.duration import Duration, total
from gaugewright.hours.paces import Maker, beginner, stitch_time
from gaugewright.hours.printed import hour_range, halves_text
from gaugewright.hours.sizes import SizeTime, size_time
from tiny_specs import HEAD, designed, graded

numbers = st.floats(0, 1e6)
durations = st.tuples(numbers, numbers, numbers).map(lambda three: Duration(*sorted(three)))
timings = st.lists(st.builds(Timing, st.integers(1, 500), st.floats(1, 5000)), min_size=1, max_size=6)
CM = st.integers(6, 60)


def spec(width: int, length: int, make: int = 1) -> str:
    return HEAD + f"""\
pieces:
  piece: {{fabric: plain, make: {make}, colours: oat, start: {{chain: {width} cm}}, sections: [even: {{length: {length} cm}}]}}
  other: {{fabric: rib, colours: kelp, start: {{chain: 18 cm}}, sections: [even: {{length: {length} cm}}]}}
"""


def hours(text: str, maker: Maker = Maker({})) -> SizeTime:
    return size_time(designed(text), {key: sized.values[0] for key, sized in graded(text).pieces.items()}, maker)


@given(st.lists(durations, max_size=8))
def test_a_total_lies_in_its_range(found: list[Duration]) -> None:
    whole = total(found)
    assert whole.low <= whole.mean <= whole.high
    assert whole.mean == pytest.approx(sum(one.mean for one in found))


@given(timings)
def test_a_mean_of_timings_lies_between_them(found: list[Timing]) -> None:
    each = sorted(one.seconds / one.stitches for one in found)
    time = stitch_time(found)
    assert 0 < time.low < time.mean < time.high
    assert each[0] - 1e-9 <= time.mean <= each[-1] + 1e-9
    assert time.low <= each[0] + 1e-9 and each[-1] - 1e-9 <= time.high


@settings(deadline=None, max_examples=25)
@given(CM, CM, st.integers(1, 4))
def test_hours_add_up_over_pieces_and_makes(width: int, length: int, make: int) -> None:
    one, several = hours(spec(width, length)), hours(spec(width, length, make))
    assert several.whole.mean == pytest.approx(sum(piece.time.mean for piece in several.pieces) + sum(chore.time.mean for chore in several.finishing))
    assert several.pieces[0].time.mean == pytest.approx(make * one.pieces[0].time.mean)
    assert several.pieces[1] == one.pieces[1]


@settings(deadline=None, max_examples=25)
@given(CM, CM, st.integers(1, 9), st.integers(1, 9))
def test_more_stitches_or_rows_take_longer(width: int, length: int, wider: int, longer: int) -> None:
    least = hours(spec(width, length)).pieces[0].time
    for more in (spec(width + wider, length), spec(width, length + longer)):
        found = hours(more).pieces[0].time
        assert found.low > least.low and found.mean > least.mean and found.high > least.high


@settings(deadline=None, max_examples=25)
@given(CM, CM, st.floats(1, 80))
def test_stitches_go_with_the_pace(width: int, length: int, rate: float) -> None:
    """Twice as fast: half the time but for the ends of rows; a beginner takes a third longer in all."""
    text = spec(width, length)
    once, twice = (hours(text, Maker({"plain": times * rate})).pieces[0] for times in (1, 2))
    ends = 2 * twice.time.mean - once.time.mean
    assert once.time.mean - ends == pytest.approx(once.stitches * 60 / rate)
    assert hours(text, beginner({})).whole.mean == pytest.approx(hours(text).whole.mean * 1.3333)


@given(durations.filter(lambda one: one.high > 1))
def test_a_printed_range_holds_the_true_one(found: Duration) -> None:
    low, high = hour_range(found)
    read = [float(text.replace("½", ".5")) for text in (low, high)]
    assert read[1] >= found.high / 3600 - 1e-6
    assert read[0] <= max(found.low / 3600, 0.5) + 1e-6
    assert [halves_text(value) for value in read] == [low, high]


@given(st.floats(0.01, 20))
def test_hours_at_the_table_hold_the_work_and_its_pauses(work: float) -> None:
    found = at_the_table(work)
    if found is None:
        assert at_work(24.0) < work + 0.5
        return
    assert at_work(found) >= work - 1e-9
    assert at_work(found - 0.5) < work or found == 0.5


@given(st.floats(0, 24), st.floats(0, 24))
def test_more_hours_are_never_less_work(one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert at_work(less) <= at_work(more) + 1e-12 and at_work(more) <= more + 1e-12
