"""However a spec is damaged, what comes out is a spec or problems with places and hints, never a crash."""

import re

from hypothesis import given, settings
from hypothesis import strategies as st
from spec.vest import VEST, read

from gaugewright.errors import ProblemsFound
from gaugewright.problem_names import PROBLEM_NAMES
from gaugewright.problem_text import problem_text

TOKENS = re.findall(r"\w+|\s+|[^\w\s]", VEST)
SCRAPS = [
    "",
    "{}",
    "[]",
    "[1]",
    "{a: 1}",
    "~",
    "true",
    "-1",
    "0",
    "1.5",
    "20 cm",
    "rest",
    "back",
    "body.bust",
    "edge(",
    ")",
    ": ",
    "- ",
    "\n",
    '"',
    "é",
    "like: front",
    "*",
    "[[a]]",
    "2026-01-01",
    "oat",
]


@st.composite
def damaged(draw: st.DrawFn) -> str:
    """The vest with a few of its words taken out, exchanged or replaced."""
    tokens = list(TOKENS)
    for _ in range(draw(st.integers(1, 3))):
        at = draw(st.integers(0, len(tokens) - 1))
        choice = draw(st.integers(0, 2))
        if choice == 0:
            tokens[at] = draw(st.sampled_from(SCRAPS))
        elif choice == 1:
            tokens[at] = draw(st.sampled_from(TOKENS))
        else:
            del tokens[at : at + draw(st.integers(1, 12))]
    return "".join(tokens)


@st.composite
def reshaped(draw: st.DrawFn) -> str:
    """The vest with the value of one key replaced by something of another shape."""
    lines = VEST.split("\n")
    at = draw(st.integers(0, len(lines) - 1))
    pairs = list(re.finditer(r"(\w+|-)(:?) ?(\[[^\[\]]*\]|\{[^{}]*\}|[^,{}\[\]]*)", lines[at]))
    if pairs:
        pair = draw(st.sampled_from(pairs))
        scrap = draw(st.sampled_from([scrap for scrap in SCRAPS if "\n" not in scrap]))
        lines[at] = f"{lines[at][: pair.start(3)]} {scrap}{lines[at][pair.end(3) :]}"
    return "\n".join(lines)


@settings(max_examples=150, deadline=None)
@given(st.one_of(damaged(), reshaped()))
def test_any_damage_is_told(text: str) -> None:
    try:
        read(text)
    except ProblemsFound as found:
        lines = text.split("\n")
        assert found.problems
        for problem in found.problems:
            assert problem.name in PROBLEM_NAMES, problem
            assert problem.origin is not None and problem.hint and problem.message, problem
            assert 1 <= problem.origin.location.line <= len(lines), problem
            assert 1 <= problem.origin.location.column <= len(problem.origin.line_text) + 1, problem
            assert problem_text(problem).startswith("vest.yaml:"), problem
