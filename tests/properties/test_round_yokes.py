"""Whatever the neck and the girths: totals meet, no round asks for more than one increase in two stitches, spreads add up."""

from hypothesis import assume, given
from hypothesis import strategies as st

from gaugewright.gauge.counts import CountRule, allows
from gaugewright.grading.cloth import Cloth
from gaugewright.grading.divide_start import Division, DivideStart, halves_of_back
from gaugewright.grading.dividing import dividing_round
from gaugewright.grading.model import Row
from gaugewright.grading.raglan import raglan_counts
from gaugewright.grading.raglan_plans import increase_rounds
from gaugewright.grading.raglan_rows import RaglanPlan, raglan_rounds
from gaugewright.grading.round_yoke import even_rows, fewest_rounds, is_gentle, stage_counts
from gaugewright.grading.spread import spreads_of
from gaugewright.vocabulary import Side

CLOTH = Cloth("yoke", "hdc", "both", 2, False)
SIDES: tuple[Side, Side] = ("RS", "WS")


@given(st.integers(8, 400), st.integers(2, 300), st.integers(2, 120), st.integers(0, 5))
def test_a_yoke_meets_its_parts_gently(neck: int, back: int, sleeve: int, more: int) -> None:
    end = 2 * (back + sleeve)
    fewest = fewest_rounds(neck, end)
    assert (fewest is None) == (end <= neck)
    assume(fewest is not None)
    assert fewest is not None
    assert all(not is_gentle(neck, stage_counts(neck, end, rounds)) for rounds in range(2, fewest) if 2**rounds * neck >= end)
    rounds = fewest + more if end - neck > 4 * (fewest + more) else fewest
    counts = stage_counts(neck, end, rounds)
    assert counts[-1] == end
    for before, after, spread in zip((neck, *counts), counts, spreads_of((neck, *counts), 0), strict=False):
        if after == before:
            assert spread is None
            continue
        assert spread is not None and (spread.stitches, spread.made, spread.kind) == (before, after, "increase")
        places = spread.positions()
        gaps = [b - a for a, b in zip(places, (*places[1:], places[0] + before), strict=True)]
        assert max(gaps) - min(gaps) <= 1 and after - before <= before // 2 + (rounds > fewest)


@given(st.integers(2, 40), st.integers(4, 200), st.integers(4, 80), st.sampled_from((2, 4, 6, 12)))
def test_each_count_of_a_stitch_with_a_multiple_fits_it(times: int, back: int, sleeve: int, multiple: int) -> None:
    rule, neck = CountRule(multiple=multiple), multiple * times
    end = multiple * (2 * (back + sleeve) // multiple)
    fewest = fewest_rounds(neck, end, rule)
    assume(fewest is not None)
    assert fewest is not None
    counts = stage_counts(neck, end, fewest, rule)
    assert all(allows(rule, count) for count in counts) and is_gentle(neck, counts)


@given(st.integers(1, 120), st.integers(0, 1), st.integers(1, 12))
def test_increase_rounds_go_down_from_the_neck(rows: int, lead: int, rounds: int) -> None:
    found = even_rows(rows, lead, rounds, 2 / 3)
    assert len(set(found)) == rounds and list(found) == sorted(found) and found[0] > lead
    if 2 * rows // 3 > 2 * rounds:
        gaps = [b - a for a, b in zip(found, found[1:], strict=False)]
        assert not gaps or (abs(3 * found[-1] - 2 * rows) <= 2 and max(gaps) - min(gaps) <= 1)


@given(st.integers(2, 300), st.integers(2, 120), st.integers(2, 40), st.booleans(), st.sampled_from(SIDES))
def test_a_yoke_is_divided_whole(back: int, sleeve: int, underarm: int, centred: bool, side: Side) -> None:
    division = Division(back, sleeve, underarm)
    assert division.total == division.body_girth + 2 * division.sleeve_girth - 4 * underarm
    for part in ("body", "sleeve"):
        start = DivideStart("yoke", part, back, sleeve, underarm, centred, side)  # type: ignore[arg-type]
        row = Row(tuple(run for run in dividing_round(start, CLOTH, "oat") if run.times), side)
        assert (row.uses, row.makes) == (start.takes, start.stitches)
        if part == "body" and centred and back > 2:
            first, last = start.back_parts
            assert first + last == back and 0 <= first - last <= 2


@given(st.integers(12, 120), st.floats(60, 600), st.floats(20, 250), st.floats(2, 30), st.integers(0, 12), st.integers(1, 2))
def test_a_turned_raglan_keeps_its_lines(half: int, body: float, sleeve: float, underarm: float, spare: int, begin: int) -> None:
    """Seen from the right side every line stays between the same parts, whichever way the round is worked."""
    counts = raglan_counts(2 * half, body, sleeve, underarm, half / 3)
    assume(counts.neck.body >= 3 and min(counts.body_increases, counts.sleeve_increases) >= 0 and max(counts.body_increases, counts.sleeve_increases) > 0)
    rounds = max(counts.body_increases, counts.sleeve_increases) + spare
    (bodies,), (sleeves,) = increase_rounds([(counts.body_increases, counts.sleeve_increases, rounds)])
    plan = RaglanPlan(CLOTH, "", rounds, counts, bodies, sleeves, centred=True)
    sides = [SIDES[(row + begin) % 2] for row in range(rounds)]
    parts = (counts.neck, *plan.parts_after())
    for before, after, runs, side in zip(parts, parts[1:], raglan_rounds(plan, ["oat"] * rounds, sides), sides, strict=False):
        row = Row(tuple(run for run in runs if run.times), side)
        assert (row.uses, row.makes) == (before.total, after.total) and all(run.times > 0 for run in row.runs)
        found, used = [], 0
        for run in row.runs:
            for _ in range(run.times):
                used += run.operation.uses
                found += [used] if run.operation.kind == "increase" else []
        first, _ = halves_of_back(before.body, True, side)
        lines = [first, first + before.sleeve, first + before.sleeve + before.body, first + 2 * before.sleeve + before.body]
        beside = {line + step for line in lines for step in (0, 1)}
        assert set(found) <= beside
        # The right side's first half of the back is the wrong side's last, but for the first stitch, which both begin with.
        right = halves_of_back(after.body, True, "RS")[0], halves_of_back(after.body, True, "WS")[1] + 1
        assert right[0] == right[1]
