"""Stitch facts, terms and starting chains."""

import pytest

from gaugewright.errors import UserError
from gaugewright.trade.foundation import foundation
from gaugewright.trade.stitches import decrease_of, increase_of, stitch, stitch_names
from gaugewright.trade.terms import abbreviation, abbreviation_keys, eats_and_makes


def test_stitches_stand_lowest_first() -> None:
    assert stitch_names() == ("sl st", "sc", "hdc", "dc", "tr")


def test_a_stitch_answers_in_both_terms() -> None:
    dc = stitch("dc")
    assert (dc.abbr("us"), dc.term("us"), dc.abbr("uk"), dc.term("uk")) == ("dc", "double crochet", "tr", "treble crochet")


@pytest.mark.parametrize("terms", ["us", "uk"])
def test_every_definition_is_spelled_out(terms: str) -> None:
    for key in abbreviation_keys():
        abbr, meaning, how = abbreviation(key, terms)  # type: ignore[arg-type]
        assert abbr and meaning and how
        assert "{" not in how
        assert ("yarn over" in how) <= (terms == "us")


@pytest.mark.parametrize("name", ["sc", "hdc", "dc", "tr"])
def test_every_increase_and_decrease_is_listed(name: str) -> None:
    assert eats_and_makes(increase_of(name)) == (1, 2)
    assert eats_and_makes(decrease_of(name)) == (2, 1)
    assert eats_and_makes(decrease_of(name, 3)) == (3, 1)


def test_terms_give_each_key_its_own_abbreviation() -> None:
    for terms in ("us", "uk"):
        printed = [abbreviation(key, terms).abbr for key in abbreviation_keys()]  # type: ignore[arg-type]
        assert len(printed) == len(set(printed))


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: stitch("bobbin"), "unknown-stitch"),
        (lambda: decrease_of("sl st"), "no-such-decrease"),
        (lambda: decrease_of("sc", 4), "no-such-decrease"),
        (lambda: abbreviation("zz"), "unknown-abbreviation"),
        (lambda: eats_and_makes("RS"), "not-an-operation"),
        (lambda: foundation("sc", 0), "no-foundation"),
        (lambda: foundation("sc", 5, chains=-1), "no-foundation"),
    ],
)
def test_what_there_is_not_is_named(call: object, name: str) -> None:
    with pytest.raises(UserError) as caught:
        call()  # type: ignore[operator]
    assert caught.value.name == name


def test_a_slip_stitch_row_still_skips_a_chain() -> None:
    made = foundation("sl st", 10)
    assert (made.chain, made.first_into) == (11, 2)


def test_a_turning_chain_of_the_patterns_own() -> None:
    made = foundation("hdc", 20, chains=1, counts=False)
    assert (made.chain, made.first_into, made.skipped_counts) == (21, 2, False)


@pytest.mark.parametrize("name", ["sl st", "sc", "hdc", "dc", "tr"])
@pytest.mark.parametrize("counts", [True, False])
def test_the_chain_gives_exactly_the_stitches(name: str, counts: bool) -> None:
    """Work the row: one stitch in every chain from the first used, and the skipped ones if they count."""
    for stitches in range(1, 30):
        made = foundation(name, stitches, counts=counts)
        worked = made.chain - (made.first_into - 1)
        assert worked + (1 if made.skipped_counts else 0) == stitches
