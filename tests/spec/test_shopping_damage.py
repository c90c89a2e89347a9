"""However a shopping file is damaged, what comes out is a file or problems with places and hints, never a crash."""

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from cli.running import ROOT, invoke
from gaugewright.errors import ProblemsFound
from gaugewright.problem_names import PROBLEM_NAMES
from gaugewright.problem_text import problem_text
from gaugewright.spec.check_shopping import Known, problems_beside
from gaugewright.spec.shopping import shopping_from
from gaugewright.yaml_reader import read_yaml_text

SAMPLE = ROOT / "samples/saltmarsh-jacket"
README = next(block for block in re.findall(r"```yaml\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL) if "shops:" in block)
TOKENS = re.findall(r"\w+|\s+|[^\w\s]", README)
SCRAPS = ("", "{}", "[]", "[1]", "{a: 1}", "~", "true", "-1", "0", "1.5", "7.40 EUR", "50 %", "900 JPY", "all", "oat", ": ", "- ", "\n", '"', "é", "*", "[[a]]", "2026-01-01", "9 mm", "1e9")


@st.composite
def damaged(draw: st.DrawFn) -> str:
    """The read-me's file with a few of its words taken out, exchanged or replaced."""
    tokens = list(TOKENS)
    for _ in range(draw(st.integers(1, 3))):
        at = draw(st.integers(0, len(tokens) - 1))
        choice = draw(st.integers(0, 2))
        if choice == 2:
            del tokens[at : at + draw(st.integers(1, 12))]
        else:
            tokens[at] = draw(st.sampled_from(SCRAPS if choice else TOKENS))
    return "".join(tokens) or "{}"


@given(damaged())
@settings(max_examples=150, deadline=None)
def test_a_damaged_file_is_read_or_refused_in_plain_words(text: str) -> None:
    try:
        file = shopping_from(read_yaml_text(text, "shops.yaml"))
        problems = tuple(problems_beside(file, Known(("oat", "kelp", "slate"), ("M", "L"), ())))
    except ProblemsFound as found:
        problems = found.problems
        assert problems
    for one in problems:
        assert one.name in PROBLEM_NAMES and one.origin and one.hint and one.message, problem_text(one)
        assert problem_text(one).startswith(f"shops.yaml:{one.origin.location.line}:")


def test_the_read_me_s_file_is_good(tmp_path_factory: object) -> None:
    path = tmp_path_factory.mktemp("shops") / "shops.yaml"  # type: ignore[attr-defined]
    path.write_text(README, encoding="utf-8")
    done = invoke("shop", SAMPLE / "spec.yaml", path)
    assert (done.exit_code, done.stderr) == (0, "") and "budget of 185.00" in done.stdout.replace("\u00a0", " ")
