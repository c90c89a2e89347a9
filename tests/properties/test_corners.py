"""Whatever the corners: each row uses what the row before makes, and counts change by the corners' changes exactly."""

from hypothesis import assume, given
from hypothesis import strategies as st

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.mitre import Corner, MitredPlan, Site, gaps, mitred_rows, runs_out
from gaugewright.grading.model import CORNERS, Row

SITE = Site("square", 0)
CHANGES = st.lists(st.sampled_from((-6, -4, -2, 0, 2, 4, 6)), min_size=5, max_size=5)


@st.composite
def plans(draw: st.DrawFn) -> MitredPlan:
    spaces = draw(st.lists(st.integers(1, 40), min_size=2, max_size=5))
    marked = [sum(spaces[: number + 1]) for number in range(len(spaces) - 1)]
    cloth = Cloth("band", "sc", "both", 1, draw(st.booleans()))
    corners = tuple(Corner(SITE, at, tuple(draw(CHANGES))) for at in marked)
    return MitredPlan(cloth, "", 6, sum(spaces), corners)


@given(plans(), st.booleans())
def test_rows_follow_and_fall_by_the_changes(plan: MitredPlan, turned: bool) -> None:
    assume(runs_out(plan.corners, plan.picked, plan.cloth.counts, turned) is None)
    before = plan.picked
    for number, runs in enumerate(mitred_rows(plan, turned, ["oat"] * plan.rows), start=1):
        kept = tuple(run for run in runs if run.times)
        row = Row(kept, "WS" if turned and number % 2 == 0 else "RS")
        assert all(run.times > 0 for run in kept)
        assert row.uses == before
        assert row.makes - before == (sum(corner.changes[number - 2] for corner in plan.corners) if number > 1 else 0) == row.at_corners
        assert row.makes == plan.after(number) == sum(gaps(plan.corners, plan.picked, number)) + len(plan.corners)
        assert row.edge_changes() == (0, 0)
        before = row.makes
    assert before == plan.end


@given(plans())
def test_a_marked_stitch_stays_the_middle_of_what_is_worked_there(plan: MitredPlan) -> None:
    """The same operations stand on either side of the one that is worked into the marked stitch."""
    assume(runs_out(plan.corners, plan.picked, plan.cloth.counts, False) is None)
    for runs in mitred_rows(plan, False, ["oat"] * plan.rows):
        kinds = [run.operation for run in runs for _ in range(run.times) if run.operation.kind in CORNERS]
        assert kinds == kinds[::-1] or len(plan.corners) > 1
