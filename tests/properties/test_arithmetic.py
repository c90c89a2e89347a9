"""What holds for every count, schedule, spread, ramp and ratio, whatever the numbers."""

from collections.abc import Iterator

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gaugewright.gauge.counts import CountImpossible, CountRule, allows, count_for, spacing
from gaugewright.grading.ratio import best_ratio, parts
from gaugewright.grading.schedule import (
    Block,
    Schedule,
    row_taper,
    schedule,
    schedule_sizes,
    taper_steps,
    two_rates,
)
from gaugewright.grading.schedule_search import plain_candidates, turning_candidates
from gaugewright.grading.spread import expand, ramp, spread

# A busy machine is no fault of the arithmetic.
_any_time = settings(deadline=None)

exacts = st.floats(0, 500, allow_nan=False)


@st.composite
def rules(draw: st.DrawFn) -> CountRule:
    """Rules that allow some counts: an even multiple has the parity of its extra."""
    multiple, plus = draw(st.integers(1, 14)), draw(st.integers(0, 15))
    own = "odd" if plus % 2 else "even"
    fitting = ["any", own] if multiple % 2 == 0 else ["any", "even", "odd"]
    return CountRule(
        multiple,
        plus,
        draw(st.sampled_from(fitting)),  # type: ignore[arg-type]
        draw(st.integers(0, 40)),
        draw(st.sampled_from(["nearest", "up", "down"])),
    )


@st.composite
def stretches(draw: st.DrawFn, most: int = 40) -> tuple[int, int, int, str]:
    """Changes, rows, step and convention that fit."""
    step = draw(st.sampled_from([1, 2]))
    changes = draw(st.integers(0, most))
    rows = changes * step + draw(st.integers(0, 120))
    return changes, rows, step, draw(st.sampled_from(["after a gap", "on first row"] if rows else ["after a gap"]))


@_any_time
@given(rules(), exacts)
def test_a_count_obeys_its_rule(rule: CountRule, exact: float) -> None:
    count = count_for(exact, rule)
    assert allows(rule, count)
    assert count >= max(1, rule.minimum, rule.plus)
    assert (count - rule.plus) % rule.multiple == 0
    assert rule.parity == "any" or (count % 2 == 1) == (rule.parity == "odd")


@_any_time
@given(rules(), exacts, exacts)
def test_a_larger_number_never_gives_a_smaller_count(rule: CountRule, one: float, other: float) -> None:
    assert count_for(min(one, other), rule) <= count_for(max(one, other), rule)


@_any_time
@given(rules(), exacts)
def test_a_nearest_count_errs_by_half_the_spacing_at_most(rule: CountRule, more: float) -> None:
    exact = count_for(0.0, rule) + more
    error = count_for(exact, rule) - exact
    gap = spacing(rule)
    bounds = {"nearest": (-gap / 2, gap / 2), "up": (0, gap), "down": (-gap, 0)}[rule.direction]
    assert bounds[0] - 1e-6 <= error <= bounds[1] + 1e-6


@_any_time
@given(rules(), st.integers(0, 40))
def test_an_allowed_count_stays_as_it_is(rule: CountRule, more: int) -> None:
    count = count_for(0.0, rule) + more * spacing(rule)
    assert allows(rule, count)
    assert count_for(float(count), rule) == count
    assert not any(allows(rule, count + between) for between in range(1, spacing(rule)))


@_any_time
@given(st.integers(1, 7), st.integers(0, 15))
def test_an_even_repeat_refuses_the_other_parity(half: int, plus: int) -> None:
    with pytest.raises(CountImpossible):
        count_for(40.0, CountRule(2 * half, plus, "even" if plus % 2 else "odd"))


def _is_sound(made: Schedule, changes: int, rows: int, step: int, first: str) -> None:
    positions = made.positions()
    assert (made.changes, made.rows) == (changes, rows)
    assert len(positions) == changes
    assert all(a < b for a, b in zip(positions, positions[1:], strict=False))
    assert all(1 <= row <= rows for row in positions)
    assert all(block.times > 0 for block in made.blocks)
    start = 1 if first == "on first row" else 0
    assert not (positions and start) or positions[0] == 1
    assert all((row - start) % step == 0 for row in positions)


@_any_time
@given(stretches())
def test_a_schedule_accounts_for_every_change_and_row(stretch: tuple[int, int, int, str]) -> None:
    changes, rows, step, first = stretch
    made = schedule(changes, rows, step, first)  # type: ignore[arg-type]
    _is_sound(made, changes, rows, step, first)
    if changes > (first == "on first row"):
        assert made.even < made.blocks[-1].gaps[-1]
        rates = [b.gaps[0] for b in made.blocks[first == "on first row":]]
        assert len(rates) <= 2 and max(rates) - min(rates) in (0, step)


@_any_time
@given(stretches())
def test_the_trade_sum_accounts_for_every_change_and_row(stretch: tuple[int, int, int, str]) -> None:
    changes, rows, step, _ = stretch
    made = two_rates(changes, rows, step)
    _is_sound(made, changes, rows, step, "after a gap")
    assert not changes or made.even < step


@_any_time
@given(stretches(24))
def test_the_searched_schedule_is_no_worse_than_the_trade_sum(stretch: tuple[int, int, int, str]) -> None:
    changes, rows, step, _ = stretch
    assert schedule(changes, rows, step).deviation() <= two_rates(changes, rows, step).deviation() + 1e-12


@_any_time
@given(stretches(16))
def test_the_deviation_searched_by_is_that_of_every_row(stretch: tuple[int, int, int, str]) -> None:
    changes, rows, step, _ = stretch
    for found in (*plain_candidates(changes, rows, step), *turning_candidates(changes, rows, step)):
        done, worst, positions = 0, 0.0, set(found.schedule.positions())
        for row in range(1, rows + 1):
            done += row in positions
            worst = max(worst, abs(done - changes * row / rows))
        assert found.deviation == pytest.approx(worst)
        assert found.schedule.deviation() == pytest.approx(worst)


def _all_two_block(changes: int, rows: int) -> Iterator[Schedule]:
    """Every pair of gaps one row apart or equal, in every share, with fewer even rows than a gap."""
    for gap in range(1, rows + 1):
        for other in (gap - 1, gap, gap + 1):
            for times in range(1, changes + 1):
                left = rows - gap * times - other * (changes - times)
                last = gap if times == changes else other
                if other > 0 and 0 <= left < last:
                    blocks = (Block((gap,), times), Block((other,), changes - times))
                    yield Schedule(blocks, left)


def test_no_two_block_schedule_is_straighter() -> None:
    """A full search of every small case."""
    tried = 0
    for rows in range(1, 25):
        for changes in range(1, min(8, rows) + 1):
            best = min(s.deviation() for s in _all_two_block(changes, rows))
            assert schedule(changes, rows).deviation() == pytest.approx(best)
            tried += 1
    assert tried == 164


@_any_time
@given(st.lists(st.tuples(st.integers(0, 25), st.integers(0, 40)), min_size=1, max_size=9), st.integers(1, 3))
def test_sizes_share_one_structure(shapes: list[tuple[int, int]], per_change: int) -> None:
    pairs = [(changes, changes + more) for changes, more in shapes]
    made = schedule_sizes(pairs, per_change=per_change)
    for one, (changes, rows) in zip(made, pairs, strict=True):
        _is_sound(one, changes, rows, 1, "after a gap")
    orders = {tuple(len(b.gaps) for b in s.blocks) for s in made if len(s.blocks) == 2}
    assert len(orders) <= 1 or orders <= {(1, 1)}
    plain = [s for s in made if [len(b.gaps) for b in s.blocks] == [1, 1]]
    assert len({s.blocks[0].gaps < s.blocks[1].gaps for s in plain}) <= 1


@_any_time
@given(st.integers(0, 60), st.integers(1, 40))
def test_a_taper_uses_every_stitch(stitches: int, rows: int) -> None:
    steps = row_taper(stitches, rows).steps()
    assert (len(steps), sum(steps)) == (rows, stitches)
    assert max(steps) - min(steps) <= 1
    assert len(taper_steps(stitches, rows)) == min(stitches, rows)
    assert sum(taper_steps(stitches, rows)) == stitches


@st.composite
def spreads(draw: st.DrawFn) -> tuple[int, int, str]:
    kind = draw(st.sampled_from(["increase", "decrease"]))
    changes = draw(st.integers(0, 60))
    used = 1 if kind == "increase" else 2
    return used * changes + draw(st.integers(0, 150)), changes, kind


@_any_time
@given(
    spreads(),
    st.booleans(),
    st.sampled_from(["round", "row", "row with half gaps"]),
    st.sampled_from(["in one block", "by turns", "left at the end"]),
)
def test_a_spread_uses_and_makes_exactly(
    what: tuple[int, int, str], shifted: bool, along: str, remainder: str
) -> None:
    stitches, changes, kind = what
    made = spread(stitches, changes, kind, shifted, along, remainder)  # type: ignore[arg-type]
    sign = 1 if kind == "increase" else -1
    assert (made.stitches, made.changes, made.made) == (stitches, changes, stitches + sign * changes)
    assert all(gap >= 0 for gap in expand(made))
    positions = made.positions()
    assert all(a < b for a, b in zip(positions, positions[1:], strict=False))
    assert not positions or positions[-1] <= stitches


@_any_time
@given(spreads(), st.booleans(), st.sampled_from(["in one block", "by turns"]))
def test_gaps_round_a_round_differ_by_one_at_most(
    what: tuple[int, int, str], shifted: bool, remainder: str
) -> None:
    stitches, changes, kind = what
    assume(changes)
    made = spread(stitches, changes, kind, shifted, "round", remainder)  # type: ignore[arg-type]
    first, *inner, last = expand(made)
    around = [first + last, *inner]
    assert max(around) - min(around) <= 1
    if remainder == "in one block":
        sizes = {group.plain for group in made.groups[1 if shifted and not made.change_first else 0:]}
        assert len(sizes) <= 2


@_any_time
@given(spreads(), st.sampled_from(["in one block", "by turns"]))
def test_gaps_along_a_row_differ_by_one_at_most(what: tuple[int, int, str], remainder: str) -> None:
    stitches, changes, kind = what
    gaps = expand(spread(stitches, changes, kind, along="row", remainder=remainder))  # type: ignore[arg-type]
    assert len(gaps) == changes + 1
    assert max(gaps) - min(gaps) <= 1


@_any_time
@given(st.integers(1, 200), st.integers(0, 6), st.data())
def test_a_ramp_is_worked_and_ends_where_it_should(start: int, rounds: int, data: st.DataObject) -> None:
    end = data.draw(st.integers(-(-start // 2**rounds), start * 2**rounds))
    counts = (start, *ramp(start, end, rounds))
    assert (len(counts), counts[-1]) == (rounds + 1, end)
    for before, after in zip(counts, counts[1:], strict=False):
        assert -(-before // 2) <= after <= 2 * before
        assert (after >= before) if end >= start else (after <= before)


@_any_time
@given(st.integers(1, 400), st.integers(1, 400), st.integers(1, 9))
def test_parts_add_up_exactly(first: int, second: int, largest: int) -> None:
    found = parts(first, second, largest)
    assert len(found) <= 2
    assert sum(p.first * p.times for p in found) == first
    assert sum(p.second * p.times for p in found) == second
    if 1 / largest <= first / second <= largest:
        assert all(max(p.first, p.second) <= largest for p in found)


@_any_time
@given(st.floats(0.13, 7.9))
def test_no_smaller_ratio_would_do(exact: float) -> None:
    found = best_ratio(exact)
    error = abs(found.value / exact - 1)
    for first in range(1, 9):
        for second in range(1, 9):
            other = abs(first / second / exact - 1)
            if error > 0.03 + 1e-9:
                assert other >= error - 1e-12
            elif first + second < found.first + found.second:
                assert other > 0.03
