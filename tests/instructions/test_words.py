"""What no pattern may say, in any spec, size and set of terms."""

import re

import pytest

from gaugewright.instructions.nodes import Table
from gaugewright.trade.terms import abbreviation, abbreviation_keys
from instructions.specs import LIST, SPECS, document, graded, told

EVERY = tuple(SPECS)
BRACKET = re.compile(r"\(([0-9 ,.½¼¾⅛⅜⅝⅞–-]+)\)")

NEVER = {
    "nothing, so often": r"\b0 times\b|\bonce times\b",
    "once, in figures": r"(?<![\d(,.]\s)(?<![\d.])\b1 times\b",
    "every row": r"\bevery (1|2nd 1|one) (rows?|rnds?)\b",
    "no rows at all": r"(?<![\d.,(-])\b0 (even |plain )?(rows?|rnds?|sts?)\b",
    "one of many": r"(?<![\d.,(/⅛¼⅜½⅝¾⅞-] )(?<![\d.,(/-])\b1 (?:plain )?(rows|rnds|sts|chs|sizes|pieces|seams|hooks)\b",
    "a slot left open": r"[{}]",
    "something missing": r"\bNone\b|\bnan\b|\binf\b|\bTrue\b|\bFalse\b",
    "a space too many": r"  |\s$|^\s| [,.;:](?!\d)",
    "a stop too many": r"\.\.(?!\.)|,,|;;|,\.|:\.",
    "a name of the file": r"\b[a-z]+_[a-z_]+\b",
    "the size of a pattern without sizes": r"\bsizes? One size\b",
    "an empty bracket": r"\(\s*\)",
    "an article before itself": r"\b(the|a|an|and|of|in|to) \1\b",
    "not a number of stitches": r"\b\d+\.\d+ (sts|rows|rnds)\b(?! (and|to|/|over|measure))",
}


@pytest.fixture(params=EVERY)
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.mark.parametrize("what", NEVER)
def test_never_said(name: str, what: str) -> None:
    found = [
        (one.chapter, one.label, one.text)
        for terms in ("us", "uk")
        for one in told(document(name, terms=terms))
        if re.search(NEVER[what], one.text) or re.search(NEVER[what], one.label)
    ]
    assert found == []


def test_a_bracket_of_numbers_has_a_place_for_each_further_size(name: str) -> None:
    sizes = len(graded(name).bodies)
    seen = 0
    for one in told(document(name)):
        for bracket in BRACKET.findall(f"{one.label} {one.text}"):
            seen += 1
            assert len(bracket.split(", ")) == sizes - 1, one
    assert seen or sizes == 1 or name in ("several-stitches-a-row",) or not _differs(name)


def _differs(name: str) -> bool:
    return any(len({tuple(piece.main.counts()) for piece in sized}) > 1 for sized in graded(name).grading.pieces.values())


def test_a_list_starts_with_the_smallest_size_and_is_not_all_alike(name: str) -> None:
    for one in told(document(name)):
        for first, others in LIST.findall(f"{one.label} {one.text}"):
            assert len({first, *others.split(", ")} - {"–"}) > 1, one


def test_tables_have_a_cell_for_every_column(name: str) -> None:
    for block in document(name).blocks:
        if isinstance(block, Table):
            assert len(block.align) == len(block.header), block.caption
            assert all(len(row) == len(block.header) for row in block.rows), block.caption
            assert block.rows, block.caption


def _instructing(name: str, terms: str) -> str:
    """All that uses abbreviations: not the front matter on sizes and yarn, nor the list itself."""
    passed = ("Sizes and finished measurements", "Materials", "Abbreviations", "Care", "Cautions", "About this pattern", "")
    return " ".join(f"{one.label} {one.text}" for one in told(document(name, terms=terms)) if one.chapter not in passed)


def _listed(name: str, terms: str) -> list[str]:
    [table] = [b for b in document(name, terms=terms).blocks if isinstance(b, Table) and b.header[0] == "Abbreviation"]
    return [row[0] for row in table.rows]


@pytest.mark.parametrize("terms", ["us", "uk"])
def test_abbreviations_are_exactly_those_used(name: str, terms: str) -> None:
    text, listed = _instructing(name, terms), _listed(name, terms)
    assert len(listed) == len(set(listed))
    for abbr in listed:
        assert re.search(rf"(?<![\w-]){re.escape(abbr)}(?![\w-])", text, re.IGNORECASE), f"{abbr} is listed and never used"
    known = {abbreviation(key, terms).abbr for key in abbreviation_keys() if " in next " not in key} - {"m", "join", "turn", "sp"}  # type: ignore[arg-type]
    forms = {abbr: rf"(?<![\w-])(?:{re.escape(abbr)}|{re.escape(abbr[0].upper() + abbr[1:])})(?![\w-])" for abbr in known}  # a label begins with a capital
    used = {abbr for abbr, form in forms.items() if re.search(form, text)}
    assert used == set(listed)


def test_stitches_worked_together_are_explained(name: str) -> None:
    text = _instructing(name, "us")
    for abbr in set(re.findall(r"\b[a-z]+2tog\b", text)):
        assert abbr in _listed(name, "us"), abbr


def test_us_and_uk_terms_never_meet(name: str) -> None:
    us, uk = (" ".join(f"{one.label} {one.text}" for one in told(document(name, terms=terms))) for terms in ("us", "uk"))
    assert not re.search(r"\b(htr|dtr|htr2tog|tension|half treble)\b", us, re.IGNORECASE)
    assert not re.search(r"\b(sc|hdc|sc2tog|hdc2tog|gauge|single crochet|half double)\b", uk, re.IGNORECASE)


def test_terms_change_nothing_but_words(name: str) -> None:
    """The same numbers in the same order: a UK edition is the US one, renamed."""
    passed = ("Abbreviations", "Materials")
    us, uk = ([re.findall(r"\d+", one.text.replace("2tog", "")) for one in told(document(name, terms=terms)) if one.chapter not in passed] for terms in ("us", "uk"))
    assert us == uk
