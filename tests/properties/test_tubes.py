"""At any gauge and size an opening leaves its round's count, a tip's halves stay even, and an opened round is shared whole."""

from hypothesis import given, settings
from hypothesis import strategies as st
from properties.test_plans import Drawn, graded_or_told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.plan import OpenedPlan, SlitPlan, TaperPlan

WORKED = ("joined rounds", "turned rounds", "spiral rounds")


def _head(draw: st.DrawFn, worked: str, hands: list[int]) -> str:
    stitches, rows = draw(st.integers(4, 40)), draw(st.integers(4, 40))
    own = ", ".join(f"n{hand}: {{hand: {hand} mm, hand_length: {hand} mm}}" for hand in hands)
    return (
        "gaugewright: 1\npattern: {title: Drawn, workshop: Ferry Lane Workshop}\nyarns: {oat: {colour: \"#d9c9a8\"}}\nfabrics:\n"
        f"  main: {{stitch: {draw(st.sampled_from(['sc', 'hdc', 'dc']))}, worked: {worked}, gauge: \"{stitches} sts, {rows} rows / 10 cm\"}}\n"
        f"  flat: {{like: main, worked: rows}}\nsizes: {{own: {{{own}}}}}\n"
    )


def _hands(draw: st.DrawFn) -> list[int]:
    return sorted(draw(st.lists(st.integers(90, 260), min_size=1, max_size=3, unique=True)))


@st.composite
def mittens(draw: st.DrawFn) -> Drawn:
    """A mitten with its mirrored twin and their thumbs."""
    place, share = draw(st.sampled_from(["start", "middle", "end"])), draw(st.integers(5, 90)) / 100
    inset = draw(st.sampled_from(["", ", inset: 1 cm", ", inset: 3 cm"]))
    tip = draw(st.sampled_from(["length: 4 cm, target: body.hand * 0.3", "rounds: 6, each: -4", "length: 5 cm, stitches: 8"]))
    head = _head(draw, draw(st.sampled_from(WORKED)), _hands(draw))
    return Drawn(
        head + f"pieces:\n  hand:\n    fabric: main\n    start: {{ring: body.hand}}\n    sections: [even: {{rounds: {draw(st.integers(1, 6))}}}, "
        f"opening: {{edge: thumb, width: body.hand * {share}, at: {place}{inset}}}, even: {{rounds: 4}}, taper: {{{tip}, at: sides}}]\n"
        "  twin: {like: hand, mirrored: true}\n"
        "  thumb: {make: 2, fabric: main, start: {pick_up: hand.thumb}, sections: [even: {rounds: 3}]}\n"
    )


@st.composite
def slippers(draw: st.DrawFn) -> Drawn:
    """A foot from its toe, its heel in rows."""
    leave = draw(st.integers(5, 95)) / 100
    head = _head(draw, draw(st.sampled_from(["joined rounds", "spiral rounds"])), _hands(draw))
    return Drawn(
        head + f"pieces:\n  foot: {{fabric: main, start: {{centre: flat}}, sections: [crown: {{target: body.hand}}, even: {{rounds: 4}}, open: {{leave: body.hand * {leave}}}]}}\n"
        "  heel: {fabric: flat, start: {go_on: foot.sole}, sections: [even: {rows: 5}], edges: {both: [side]}}\nseams: [{join: heel.top, to: heel.top}]\n"
    )


@settings(max_examples=120, deadline=None)
@given(mittens())
def test_any_opening_keeps_the_count_and_any_tip_its_halves(drawn: Drawn) -> None:
    grading = graded_or_told(drawn)
    if grading is None:
        return
    for label, hand in grading.pieces["hand"].items():
        twin, thumb = grading.pieces["twin"][label], grading.pieces["thumb"][label]
        for piece in (hand, twin, thumb):
            assert row_faults(piece.main, piece.strips) == ()
        slit, tip = grading.plans["hand"][label].sections[1], grading.plans["hand"][label].sections[3]
        assert isinstance(slit, SlitPlan) and isinstance(tip, TaperPlan)
        row = hand.main.rows[grading.plans["hand"][label].sections[0].rows]
        passed = sum(run.times for run in row.runs if run.operation.kind == "chain")
        assert row.uses == row.makes == slit.stitches and passed == slit.each
        assert thumb.main.start.stitches > 0 and hand.edges["thumb"].stitches == 2 * passed + 2
        assert (slit.stitches - tip.end) % 4 == 0 and tip.half - (tip.stitches - tip.half) in (0, 1)
        mirrored = grading.plans["twin"][label].sections[1]
        assert isinstance(mirrored, SlitPlan) and mirrored.each == slit.each
        # In the middle of an odd rest an opening is a stitch off, and so is its twin.
        assert mirrored.before == slit.after or ("at: middle" in str(drawn) and abs(mirrored.before - slit.after) == 1)


@settings(max_examples=80, deadline=None)
@given(slippers())
def test_any_opened_round_is_shared_whole(drawn: Drawn) -> None:
    grading = graded_or_told(drawn)
    if grading is None:
        return
    for label, foot in grading.pieces["foot"].items():
        heel, plan = grading.pieces["heel"][label], grading.plans["foot"][label].sections[-1]
        assert isinstance(plan, OpenedPlan)
        assert row_faults(heel.main, heel.strips) == () == row_faults(foot.main, foot.strips)
        assert foot.edges["instep"].stitches + heel.main.rows[0].uses == foot.main.last_count == plan.stitches
