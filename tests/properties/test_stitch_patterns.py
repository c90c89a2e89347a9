"""Random repeats, whole and broken: whole ones are accepted, broken ones refused at the row that is wrong.

What a row makes is kept by this test itself as it builds the row, place by place over the row before.
"""

from dataclasses import dataclass

from hypothesis import given, settings
from hypothesis import strategies as st

from gaugewright.stitch_patterns.parser import parse_row
from gaugewright.stitch_patterns.pattern import StitchPattern, pattern_faults

NAMES = st.sampled_from(["sc", "hdc", "dc", "tr"])


@dataclass
class Built:
    """One row: its elements as text, and what it offers the next, "s" a stitch and "c" a chain."""

    parts: list[str]
    places: str


@st.composite
def row_over(draw: st.DrawFn, places: str) -> Built:
    """A repeat that works over these places; its first element is a stitch."""
    parts: list[str] = []
    made = ""
    at = 0
    while at < len(places):
        run = len(places[at:]) - len(places[at:].lstrip("c"))
        begun = at == 0 or places[at - 1] != "c"
        kind = draw(st.sampled_from(["one", "group", "skip", "chain", "together", "post"] + ["space"] * 3 * (run > 0 and begun)))
        name = draw(NAMES)
        if kind == "space" and run <= 30:
            times = draw(st.integers(1, 4))
            parts, made, at = [*parts, f"{times} {name} in ch {run}"], made + "s" * times, at + run
        elif kind == "group":
            times, chains = draw(st.integers(1, 3)), draw(st.integers(0, 2))
            inner = f"{times} {name}" + (f", ch {chains}, 1 {name}" if chains else "")
            parts, made, at = [*parts, f"({inner}) in 1"], made + "s" * times + ("c" * chains + "s" if chains else ""), at + 1
        elif kind == "skip" and parts:
            parts, at = [*parts, "sk 1"], at + 1
        elif kind == "chain" and parts and not made.endswith("c"):
            chains = draw(st.integers(1, 5))
            parts, made = [*parts, f"ch {chains}", f"1 {name}"], made + "c" * chains + "s"
            at += 1
        elif kind == "together" and at + 2 <= len(places):
            parts, made, at = [*parts, f"{name}2tog"], made + "s", at + 2
        elif kind == "post" and places[at] == "s":
            parts, made, at = [*parts, f"1 fp{name}"], made + "s", at + 1
        else:
            parts, made, at = [*parts, f"1 {name}"], made + "s", at + 1
    return Built(parts, made)


def level_row(places: str, of: int) -> Built:
    """A row that comes back to `of` stitches."""
    have = len(places)
    if have >= of:
        return Built([f"{of} sc"] + (["sk 1"] * (have - of)), "s" * of)
    return Built([f"{have - 1} sc"] * (have > 1) + [f"{of - have + 1} sc in 1"], "s" * of)


@st.composite
def repeats(draw: st.DrawFn) -> tuple[int, list[list[str]]]:
    """A multiple, and the rows of a repeat as lists of elements; worked in rounds, so that nothing is reversed."""
    of = draw(st.integers(2, 12))
    places, rows = "s" * of, []
    for _ in range(draw(st.integers(1, 4))):
        built = draw(row_over(places))
        if not 2 <= len(built.places) <= 30 or built.places[0] == "c" and built.places[-1] == "c":
            continue
        rows.append(built.parts)
        places = built.places
    rows.append(level_row(places, of).parts)
    return of, rows


def pattern(of: int, rows: list[list[str]]) -> StitchPattern:
    return StitchPattern("random", "Random", of, 0, "sc", (), (), tuple(parse_row(f"*{', '.join(parts)}*") for parts in rows))


@given(repeats())
@settings(max_examples=300, deadline=None)
def test_a_repeat_that_works_over_what_is_there_is_accepted(found: tuple[int, list[list[str]]]) -> None:
    of, rows = found
    one = pattern(of, rows)
    assert list(pattern_faults(one)) == [], rows
    assert one.counts(5, True)[-1] == 5 * of


@given(repeats(), st.data())
@settings(max_examples=300, deadline=None)
def test_a_repeat_with_a_stitch_too_many_is_refused_at_that_row(found: tuple[int, list[list[str]]], data: st.DataObject) -> None:
    """One stitch more used than the row before makes: the row is named, or, where it stands first, the multiple."""
    of, rows = found
    broken = data.draw(st.integers(0, len(rows) - 1))
    rows = [[*parts, "1 sc"] if number == broken else parts for number, parts in enumerate(rows)]
    faults = list(pattern_faults(pattern(of, rows)))
    assert [fault.number for fault in faults] == [broken], (rows, faults)
