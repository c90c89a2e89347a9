"""Any pieces at all: either located problems, or words that agree with the rows."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gaugewright.errors import ProblemsFound
from instructions import test_numbers as numbers
from instructions import test_words as words
from instructions.specs import HEAD, NINE, ONE, SPECS, THREE, document, graded

IN_ROWS = ("plain", "rib", "front", "tall")
IN_ROUNDS = ("joined", "turned", "spiral", "tall_joined", "tall_turned")

lengths = st.integers(2, 60).map(lambda cm: f"{cm} cm") | st.integers(2, 5).map(lambda part: f"body.bust / {part} + {part} cm")
extents = st.integers(1, 40).map(lambda cm: f"length: {cm} cm") | st.integers(1, 30).map(lambda rows: f"rows: {rows}")
each = st.sampled_from((-4, -3, -2, -1, 1, 2, 3, 4))
places = st.sampled_from(("", ", at: starting", ", at: far"))


def sections(in_rounds: bool) -> st.SearchStrategy[str]:
    at = st.just("") if in_rounds else places
    return st.one_of(
        extents.map(lambda far: f"even: {{{far}}}"),
        st.builds(lambda far, to, where: f"taper: {{{far}, target: {to}{where}}}", extents, lengths, at),
        st.builds(lambda far, by, where: f"taper: {{{far}, each: {by}{where}}}", extents, each, at),
        st.builds(lambda to, by, where: f"taper: {{target: {to}, each: {abs(by)}{where}}}", lengths, each, at),
    ).map(lambda text: text.replace("rows:", "rounds:") if in_rounds else text)


def pieces(fabric: str) -> st.SearchStrategy[str]:
    in_rounds = fabric in IN_ROUNDS
    return st.builds(
        lambda width, parts: f"{{fabric: {fabric}, colours: oat, start: {{{'ring' if in_rounds else 'chain'}: {width}}}, sections: [{', '.join(parts)}]}}",
        lengths, st.lists(sections(in_rounds), min_size=1, max_size=4),
    )  # fmt: skip


specs = st.builds(
    lambda sizes, piece: f"{HEAD}{sizes}pieces:\n  piece: {piece}\n", st.sampled_from((NINE, THREE, ONE)), st.sampled_from((*IN_ROWS, *IN_ROUNDS)).flatmap(pieces)
)


@settings(max_examples=70, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much])
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
