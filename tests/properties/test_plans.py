"""Any stack of sections at any gauge in any sizes is graded so that it can be worked, or told at its place."""

from dataclasses import dataclass
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import designed

from gaugewright.checks.rows import row_faults
from gaugewright.design.model import Rest, ToLevel
from gaugewright.errors import ProblemsFound
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.plan import PiecePlan, SpreadPlan, TaperPlan
from gaugewright.problem_names import PROBLEM_NAMES
from gaugewright.sizing.bodies import bodies, environments


@dataclass(frozen=True)
class Drawn:
    """A spec as drawn: its text, and what decides how exactly its lengths can be met."""

    text: str

    def __repr__(self) -> str:
        return self.text


mm = st.integers(min_value=20, max_value=900)
wide = st.builds(lambda share, more: f"body.bust * {share / 100} + {more} mm", st.integers(20, 50), st.integers(10, 100))
stretch = st.one_of(
    st.integers(2, 30).map(lambda rows: f"rows: {rows}"),
    mm.map(lambda length: f"length: {length} mm"),
    st.integers(1, 40).map(lambda share: f"length: body.bust * {share / 100}"),
)
each = st.sampled_from([1, 2, 2, 3, 4, 4, 6, 8]).map(lambda count: f"each: {count}")
signed = st.sampled_from([1, 2, 3, 4, 6, -1, -2, -2, -4]).map(lambda count: f"each: {count}")
goal = st.one_of(wide.map(lambda width: f"target: {width}"), st.integers(1, 80).map(lambda count: f"stitches: {count}"))
at = st.sampled_from(["", ", at: both", ", at: starting", ", at: far"])
rounding = st.sampled_from(["", ", round: up", ", round: down"])
fabric = st.sampled_from(["", ", fabric: other"])


def joined(*parts: str) -> str:
    return ", ".join(part for part in parts if part)


taper = st.one_of(
    st.builds(joined, stretch, goal), st.builds(joined, stretch, signed), st.builds(joined, goal, each)
)
section = st.one_of(
    st.builds(lambda length, cloth: f"even: {{{length}{cloth}}}", stretch, fabric),
    st.builds(lambda figures, where, way, cloth: f"taper: {{{figures}{where}{way}{cloth}}}", taper, at, rounding, fabric),
)
gauge = st.builds(lambda stitches, rows: f'"{stitches} sts, {rows} rows / 10 cm"', st.integers(3, 30), st.integers(3, 30))
rule = st.sampled_from([*[""] * 8, ", multiple: {of: 2}", ", multiple: {of: 4, plus: 1}", ", parity: odd", ", minimum: 6"])


@st.composite
def specs(draw: st.DrawFn) -> Drawn:
    start = draw(st.sampled_from(["chain", "chain", "ring"]))
    worked = draw(st.sampled_from(["joined rounds", "turned rounds", "spiral rounds"])) if start == "ring" else "rows"
    stitches = st.sampled_from(["sl st", "sc", "hdc", "dc", "tr"])
    sections = draw(st.lists(section, min_size=1, max_size=4))
    levels, total = "", ""
    match draw(st.sampled_from(["own", "rest", "levels"])):
        case "rest":
            sections.insert(draw(st.integers(0, len(sections))), "even: {length: rest}")
            total = f"    total: body.bust + {draw(mm)} mm\n"
        case "levels":
            sections.insert(draw(st.integers(0, len(sections))), "even: {to: low}")
            sections.append("even: {to: high}")
            levels = f"levels:\n  low: high - {draw(st.integers(5, 300))} mm\n  high: body.bust + {draw(mm)} mm\n"
    busts = sorted(draw(st.lists(st.integers(500, 1500), min_size=1, max_size=9, unique=True)))
    own = ", ".join(f"n{bust}: {{bust: {bust} mm}}" for bust in busts)
    lines = "".join(f"      - {one}\n" for one in sections)
    return Drawn(
        "gaugewright: 1\npattern: {title: Drawn, workshop: Ferry Lane Workshop}\nyarns:\n  oat: {colour: \"#d9c9a8\"}\nfabrics:\n"
        f"  main: {{stitch: {draw(stitches)}, worked: {worked}, gauge: {draw(gauge)}{draw(rule)}}}\n"
        f"  other: {{stitch: {draw(stitches)}, worked: {worked}, gauge: {draw(gauge)}{draw(rule)}}}\n"
        f"sizes: {{own: {{{own}}}}}\n{levels}pieces:\n  piece:\n    fabric: main\n    start: {{{start}: {draw(wide)}}}\n"
        f"    sections:\n{lines}{total}"
    )


def graded_or_told(drawn: Drawn) -> Grading | None:
    """The grading, or None once every problem is seen to have a name and a place in the spec."""
    design = designed(drawn.text)
    try:
        return grade(design, environments(design, bodies(design)))
    except ProblemsFound as found:
        assert found.problems
        for problem in found.problems:
            assert problem.name in PROBLEM_NAMES and problem.origin is not None and problem.hint, problem
        return None


def check_plan(plan: PiecePlan, rows_at_ends: list[int]) -> None:
    """Every section begins where the one before ended, and every row of it is accounted for."""
    reached = plan.start.stitches
    for section, worked in zip(plan.sections, rows_at_ends, strict=True):
        assert section.stitches == reached and section.end == worked
        reached = section.end
        if isinstance(section, TaperPlan):
            assert section.schedule.rows + section.lead == section.rows and len(section.steps) == section.schedule.changes
        if isinstance(section, SpreadPlan):
            assert len(section.spreads) == len(section.counts) == section.rows


@settings(max_examples=200, deadline=None)
@given(specs())
def test_plans_expand_to_rows_that_follow(drawn: Drawn) -> None:
    grading = graded_or_told(drawn)
    if grading is None:
        return
    for label, piece in grading.pieces["piece"].items():
        plan, strip = grading.plans["piece"][label], piece.main
        assert row_faults(strip, (strip,)) == ()
        assert all(run.times > 0 for row in strip.rows for run in row.runs)
        assert len(strip.rows) == plan.rows == plan.bands[-1].last
        ends, last = [], 0
        for section in plan.sections:
            last += section.rows
            ends.append(strip.rows[last - 1].makes)
        check_plan(plan, ends)
        assert strip.rows[0].makes == strip.start.stitches, "row 1 is worked even"


@settings(max_examples=100, deadline=None)
@given(specs())
def test_sizes_share_one_structure(drawn: Drawn) -> None:
    grading = graded_or_told(drawn)
    if grading is None:
        return
    plans = grading.plans["piece"]
    assert len({tuple(type(section) for section in plan.sections) for plan in plans}) == 1
    for index in range(len(plans.values[0].sections)):
        shaped = [plan.sections[index] for plan in plans if isinstance(plan.sections[index], (TaperPlan, SpreadPlan))]
        signs = {1 if one.end > one.stitches else -1 for one in shaped if one.end != one.stitches}
        assert len(signs) <= 1 and signs <= {one.sign for one in shaped}  # type: ignore[union-attr]


@settings(max_examples=100, deadline=None)
@given(specs())
def test_the_whole_height_is_within_half_a_row_of_what_takes_the_rest(drawn: Drawn) -> None:
    grading = graded_or_told(drawn)
    if grading is None:
        return
    design = designed(drawn.text)
    sections = design.pieces[0].sections
    taker = next((s for s in sections if isinstance(getattr(s, "extent"), Rest)), None)
    taker = taker or next((s for s in sections if isinstance(getattr(s, "extent"), ToLevel)), None)
    if taker is None:
        return
    for label, piece in grading.pieces["piece"].items():
        wanted = grading.environments[label].length(design.pieces[0].total or dict(design.levels)["high"])
        assert abs(piece.worked["length"] - wanted) <= design.fabric(taker.fabric).gauge.row_height / 2 + 1e-6


def one_piece(start: str, sections: str, stitches: int, rows: int, more: str = "") -> Grading:
    design = designed(
        "gaugewright: 1\npattern: {title: Drawn, workshop: Ferry Lane Workshop}\nyarns:\n  oat: {colour: \"#d9c9a8\"}\nfabrics:\n"
        f'  main: {{stitch: hdc, gauge: "{stitches} sts, {rows} rows / 10 cm"{more}}}\n'
        f"pieces:\n  piece:\n    start: {{chain: {start}}}\n    sections:\n{sections}"
    )
    return grade(design, environments(design, bodies(design)))


def measure_of(name: str, grading: Grading) -> float:
    return grading.pieces["piece"].values[0].finished[name]


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.floats(200, 1500), min_size=2, max_size=5), st.floats(50, 900),
    st.integers(3, 30), st.integers(3, 30), st.sampled_from(["", ", multiple: {of: 3, plus: 1}", ", parity: even"]),
)
def test_a_larger_wanted_measure_never_gives_a_smaller_finished_one(
    lengths: list[float], other: float, stitches: int, rows: int, more: str
) -> None:
    lengths.sort()
    even = "      - even: {length: %.2f mm}\n"
    wide = [measure_of("width", one_piece(f"{mm:.2f} mm", even % other, stitches, rows, more)) for mm in lengths]
    long = [measure_of("length", one_piece("300 mm", even % mm, stitches, rows)) for mm in lengths]
    whole = [
        measure_of("length", one_piece("300 mm", "      - even: {rows: 2}\n      - even: {length: rest}\n    total: %.2f mm\n" % (mm + 500), stitches, rows))
        for mm in lengths
    ]
    shaped = [
        measure_of("top_width", one_piece("300 mm", "      - taper: {rows: 500, target: %.2f mm}\n" % mm, stitches, rows))
        for mm in lengths
    ]
    for measures in (wide, long, whole, shaped):
        assert all(below <= above for below, above in pairwise(measures))
