"""Whatever the gauge and the girths: the parts grow in twos, the girths come out, the rounds meet."""

from hypothesis import assume, given
from hypothesis import strategies as st

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.divide_start import DivideStart
from gaugewright.grading.model import Row
from gaugewright.grading.raglan import raglan_counts
from gaugewright.grading.raglan_plans import increase_rounds
from gaugewright.grading.dividing import dividing_round
from gaugewright.grading.raglan_rows import RaglanPlan, raglan_rounds

CLOTH = Cloth("yoke", "hdc", "both", 2, False)


@given(st.integers(8, 200), st.floats(10, 900), st.floats(8, 400), st.floats(1, 40), st.floats(0, 60), st.integers(0, 20))
def test_parts_grow_in_twos_to_their_girths(half: int, body: float, sleeve: float, underarm: float, share: float, spare: int) -> None:
    neck = 2 * half
    counts = raglan_counts(neck, body, sleeve, underarm, share)
    assert counts.neck.total == neck
    assert (counts.end.body - counts.neck.body) % 2 == 0 == (counts.end.sleeve - counts.neck.sleeve) % 2
    assert abs(counts.division.body_girth - body) <= 2 and abs(counts.division.sleeve_girth - sleeve) <= 1
    assume(counts.neck.body >= 2 and min(counts.body_increases, counts.sleeve_increases) >= 0)
    rounds = max(counts.body_increases, counts.sleeve_increases) + spare
    (bodies,), (sleeves,) = increase_rounds([(counts.body_increases, counts.sleeve_increases, rounds)])
    plan = RaglanPlan(CLOTH, "", rounds, counts, bodies, sleeves)
    before = neck
    for runs in raglan_rounds(plan, ["oat"] * rounds, ["RS"] * rounds):
        row = Row(tuple(run for run in runs if run.times), "RS")
        assert row.uses == before and all(run.times > 0 for run in row.runs)
        before = row.makes
    assert before == counts.end.total
    for part in ("body", "sleeve"):
        start = DivideStart("yoke", part, counts.end.body, counts.end.sleeve, counts.underarm)  # type: ignore[arg-type]
        row = Row(tuple(dividing_round(start, CLOTH, "oat")), "RS")
        assert (row.uses, row.makes) == (start.takes, start.stitches)
