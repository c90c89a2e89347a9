"""Any pieces at all: either located problems, or words that agree with the rows."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gaugewright.errors import ProblemsFound
from instructions import test_numbers as numbers
from instructions import test_words as words
from instructions.specs import HEAD, NINE, ONE, SPECS, THREE, document, graded

IN_ROWS = ("plain", "rib", "front", "tall", "shells", "dotted", "threaded")
IN_ROUNDS = ("joined", "turned", "spiral", "tall_joined", "tall_turned", "ringed")
PATTERNED = """\
  shells: {pattern: fans, edge_stitches: as needed, tool: 8 mm, gauge: "12 sts, 10 rows / 10 cm"}
  dotted: {pattern: seed, edge_stitches: 1, tool: 8 mm, gauge: "11 sts, 12 rows / 10 cm"}
  threaded: {like: tall, turning_chain: {chains: 3, counts: as a stitch}, multiple: {of: 2, plus: 1}}
  ringed: {pattern: scallops, worked: joined rounds, edge_stitches: as needed, tool: 8 mm, gauge: "12 sts, 12 rows / 10 cm"}
"""

lengths = st.integers(2, 60).map(lambda cm: f"{cm} cm") | st.integers(2, 5).map(lambda part: f"body.bust / {part} + {part} cm")
extents = st.integers(1, 40).map(lambda cm: f"length: {cm} cm") | st.integers(1, 30).map(lambda rows: f"rows: {rows}")
each = st.sampled_from((-4, -3, -2, -1, 1, 2, 3, 4))
places = st.sampled_from(("", ", at: starting", ", at: far"))


def sections(in_rounds: bool) -> st.SearchStrategy[str]:
    at = st.sampled_from(("", ", at: sides", ", at: all round")) if in_rounds else places
    return st.one_of(
        openings.map(lambda text: text + (", fabric: joined}" if in_rounds else ", fabric: plain}")), *(() if in_rounds else (wedges,)),
        extents.map(lambda far: f"even: {{{far}}}"),
        st.builds(lambda far, to, where: f"taper: {{{far}, target: {to}{where}}}", extents, lengths, at),
        st.builds(lambda far, by, where: f"taper: {{{far}, each: {by}{where}}}", extents, each, at),
        st.builds(lambda to, by, where: f"taper: {{target: {to}, each: {abs(by)}{where}}}", lengths, each, at),
    ).map(lambda text: text.replace("rows:", "rounds:") if in_rounds else text)


openings = st.builds(lambda wide, where: f"opening: {{edge: slot, width: {wide} cm, at: {where}", st.integers(3, 12), st.sampled_from(("start", "middle", "end")))
wedges = st.builds(
    lambda deep, point, where: f"even: {{length: 12 cm}}, wedge: {{depth: {deep}, point: {point} cm, at: {where}}}, even: {{length: 12 cm}}",
    st.sampled_from(("3 cm", "6 cm", '"max(0 cm, (body.bust - 90 cm) * 0.2)"')), st.integers(2, 6), st.sampled_from(("middle", "starting", "far")),
)  # fmt: skip
slopes = st.sampled_from(("", ", slope: 2 cm", ", slope: 2 cm, as: rising stitches"))
tops = st.builds(
    lambda shape, wide, deep, slope: f"even: {{length: 30 cm}}, neck: {{shape: {shape}, width: {wide} cm, depth: {deep} cm{slope}}}",
    st.sampled_from(("round", "v", "boat", "square")), st.integers(8, 18), st.integers(3, 16), slopes,
)  # fmt: skip
ends = st.sampled_from(("crown: {close: true}", "open: {leave: 6 cm}", "taper: {rounds: 4, stitches: 8, at: sides, close: true}"))
bands = st.sampled_from(("oat", "{bands: {to: 20 cm, heights: [40 %, rest]}, order: [oat, kelp]}"))
conventions = st.sampled_from(("", "conventions: {schedules: longer gap first, spreading: left at the end, shoulder_steps: spread, taper_ends: even below}\n"))
onto = st.builds(
    lambda fabric, start: f"  more: {{fabric: {fabric}, colours: kelp, start: {{{start}}}{'' if 'join' in start else ', sections: [even: {length: 4 cm}]'}}}\n",
    st.sampled_from(("rib", "plain", "dotted", "tall")),
    st.sampled_from(("pick_up: piece.top", "pick_up: [piece.bottom, piece.far]", "pick_up: piece.neck", "pick_up: piece.slot", "chain: 4 cm, join: piece.bottom", "chain: 4 cm, join: piece.far, gather: 10 %", "go_on: piece.sole")),
)  # fmt: skip


def pieces(fabric: str) -> st.SearchStrategy[str]:
    in_rounds = fabric in IN_ROUNDS
    parts = st.lists(sections(in_rounds), min_size=1, max_size=4)
    return st.builds(
        lambda width, parts, top, colours: f"{{fabric: {fabric}, colours: {colours}, start: {{{'ring' if in_rounds else 'chain'}: {width}}}, sections: [{', '.join((*parts, top) if top else parts)}]}}",
        lengths, parts, st.none() | (ends if in_rounds else tops), bands,
    )  # fmt: skip


specs = st.builds(
    lambda sizes, habits, piece, more: f"{HEAD}{PATTERNED}{sizes}{habits}pieces:\n  piece: {piece}\n{more}",
    st.sampled_from((NINE, THREE, ONE)), conventions, st.sampled_from((*IN_ROWS, *IN_ROUNDS)).flatmap(pieces), st.just("") | onto,
)  # fmt: skip


@settings(max_examples=120, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
@given(specs)
def test_words_agree_with_rows_or_problems_are_told(text: str) -> None:
    graded.cache_clear()
    document.cache_clear()
    SPECS["any"] = text
    try:
        _hold(text)
    finally:
        del SPECS["any"]


def _hold(text: str) -> None:
    try:
        document("any")
    except ProblemsFound as found:
        for problem in found.problems:
            assert problem.origin is not None and problem.hint, problem
            assert problem.origin.line_text in text
        return
    numbers.test_stitch_counts_at_the_end_of_rows("any")
    numbers.test_the_rows_told_are_all_the_rows("any")
    numbers.test_the_foundation_gives_the_first_row("any")
    numbers.test_schedules_in_words_fall_on_the_shaped_rows("any")
    words.test_tables_have_a_cell_for_every_column("any")
    words.test_abbreviations_are_exactly_those_used("any", "us")
    for what in words.NEVER:
        words.test_never_said("any", what)
