"""A row's text read: what it says, and what is wrong with it at which column."""

import pytest

from gaugewright.stitch_patterns.nodes import Chains, Group, Skips, Stitches, made, used
from gaugewright.stitch_patterns.parser import PatternError, parse_row


def test_a_row_has_its_repeat_between_stars() -> None:
    row = parse_row("1 sc, *ch 3, sk 2, (2 dc, ch 1, 2 dc) in 1*, 2 hdc blo, dc3tog in 1")
    assert row.before == (Stitches("sc", 1, column=0),)
    assert row.repeat == (
        Chains(3, 7), Skips(2, 13), Group((Stitches("dc", 2, column=20), Chains(1, 26), Stitches("dc", 2, column=32)), 0, 19),
    )
    assert row.after == (Stitches("hdc", 2, "back", column=45), Group((Stitches("dc", 1, together=3, column=56),), 0, 56))


@pytest.mark.parametrize(("text", "uses", "makes"), [
    ("3 fpdc, 2 bpsc", 5, 5),
    ("2 dc2tog", 4, 2),
    ("5 dc in ch 3", 3, 5),
    ("(1 tr, ch 2, 1 tr) in 1", 1, 4),
    ("sl st, sk 4, ch 4, 1 sc flo", 6, 6),
])
def test_what_a_row_uses_and_makes(text: str, uses: int, makes: int) -> None:
    elements = parse_row(text).before
    assert (used(elements), made(elements)) == (uses, makes)


@pytest.mark.parametrize(("text", "column", "words"), [
    ("1 xx", 2, "no stitch"),
    ("2 dc in", 7, "followed by 1"),
    ("2 dc in 3", 8, "followed by 1"),
    ("(2 dc, ch 1", 0, "not closed"),
    ("(2 dc, ch 1)", 0, "one place"),
    ("(ch 1, 2 dc) in 1", 1, "begins with a stitch"),
    ("(sk 1) in 1", 1, "all worked in one place"),
    ("1 sc, *ch 1, sk 1", 6, "between two stars"),
    ("1 sc, **, 1 sc", 6, "nothing stands between"),
    ("1 sc 2 dc", 5, "comma"),
    ("1 sc)", 4, "closes nothing"),
    ("ch", 2, "followed by a number"),
    ("sk 0", 3, "1 to 40"),
    ("99 sc", 0, "1 to 40"),
    ("dc9tog", 0, "worked together"),
    ("sl st2tog", 0, ""),
    ("1 fpdc blo", 7, "no loops"),
    ("1 sc; 1 dc", 4, "means nothing"),
    ("", 0, ""),
])
def test_a_fault_is_told_at_its_column(text: str, column: int, words: str) -> None:
    if not text:
        assert parse_row(text).worked(3) == ()
        return
    with pytest.raises(PatternError) as found:
        parse_row(text)
    assert (found.value.column, words in found.value.message, bool(found.value.hint)) == (column, True, True)
