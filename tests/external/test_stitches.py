"""Stitches, terms and starting chains against lessons, patterns and naming rules in print."""

import pytest
from external.sources import source

from gaugewright.trade.foundation import foundation
from gaugewright.trade.stitch_heights import times_as_high
from gaugewright.trade.stitches import stitch, stitch_names
from gaugewright.trade.terms import abbreviation, abbreviation_keys, eats_and_makes, word

CGOA = "Crochet Guild of America, lesson on turning chains, 1997; Crochet For Dummies"
NAMING = "School of SweetGeorgia, Spotlight and King Cole on US and UK names: the UK name counts the loop pulled up"


@source("published", CGOA)
@pytest.mark.parametrize(("name", "chains"), [("sl st", 0), ("sc", 1), ("hdc", 2), ("dc", 3), ("tr", 4)])
def test_turning_chains_reach_the_height_of_the_stitch(name: str, chains: int) -> None:
    assert stitch(name).chains == chains


@source("published", CGOA)
@pytest.mark.parametrize(("name", "counts"), [("sc", False), ("dc", True), ("tr", True)])
def test_which_turning_chains_count_as_a_stitch(name: str, counts: bool) -> None:
    assert stitch(name).counts is counts


@source("published", "The Lindsey Life, 2013, and Lion Brand 70644AD (not counted) against the CGOA lesson, 1997 (counted)")
def test_half_double_crochet_is_left_to_the_pattern() -> None:
    assert stitch("hdc").counts is None


@source("published", "Hooked Stitched and Glued, 'Crochet foundation chain length made simple'")
@pytest.mark.parametrize(("name", "chain", "into"), [("sc", 11, 2), ("hdc", 11, 3), ("dc", 12, 4)])
def test_chains_for_ten_stitches(name: str, chain: int, into: int) -> None:
    counted = None if name == "sc" else True
    made = foundation(name, 10, counts=counted)
    assert (made.chain, made.first_into) == (chain, into)


@source("published", "Cherry Heart, 'Starting chains', 2014: stitches less one, plus the turning chain")
@pytest.mark.parametrize(("name", "chain"), [("hdc", 11), ("dc", 12), ("tr", 13)])
def test_a_counted_chain_replaces_one_stitch(name: str, chain: int) -> None:
    assert foundation(name, 10, counts=True).chain == chain


@source("published", "Cherry Heart, 'Starting chains', 2014")
def test_single_crochet_needs_one_more_chain() -> None:
    made = foundation("sc", 10)
    assert (made.chain, made.first_into, made.skipped_counts) == (11, 2, False)


@source("published", "Lion Brand Yarn, 'Homespun Cozy Classic Pullover', 70644AD, five sizes")
@pytest.mark.parametrize(("stitches", "chain"), [(42, 44), (46, 48), (50, 52), (54, 56), (58, 60)])
def test_half_double_crochet_not_counted(stitches: int, chain: int) -> None:
    made = foundation("hdc", stitches)
    assert (made.chain, made.first_into, made.skipped_counts) == (chain, 3, False)


@source("published", "Lion Brand Yarn, 'Wool-Ease Statement Sleeve Sweater', seven sizes")
@pytest.mark.parametrize(("stitches", "chain"), [(70, 71), (77, 78)])
def test_single_crochet_in_a_graded_pattern(stitches: int, chain: int) -> None:
    assert foundation("sc", stitches).chain == chain


@source("published", "The Happy Unraveler, 'Turtleneck sweater', 2021, three sizes")
@pytest.mark.parametrize(("dc", "chain"), [(50, 62), (54, 66), (58, 70)])
def test_a_row_that_begins_with_ten_half_doubles(dc: int, chain: int) -> None:
    made = foundation("hdc", 10 + dc, counts=False)
    assert (made.chain, made.first_into) == (chain, 3)


@source("published", "Hooks and Needles 68, blog, 2018")
def test_a_square_of_36_double_crochet() -> None:
    made = foundation("dc", 36)
    assert (made.chain, made.first_into, made.skipped_counts) == (36 + 2, 4, True)


@source("published", "Edie Eckman, 'How many foundation chains do I need?', 2020: multiple x repeats + extra + turning chain")
@pytest.mark.parametrize("name", ["sc", "hdc", "dc", "tr"])
def test_a_repeat_takes_its_stitches_and_the_turning_chain(name: str) -> None:
    stitches = 12 * 9 + 2
    assert foundation(name, stitches, counts=False).chain == stitches + stitch(name).chains


@source("published", NAMING)
@pytest.mark.parametrize(("name", "taller"), [("sc", "dc"), ("dc", "tr")])
def test_a_uk_name_is_the_us_name_of_the_next_taller_stitch(name: str, taller: str) -> None:
    assert stitch(name).uk_term == stitch(taller).us_term
    assert stitch(name).uk_abbr == stitch(taller).us_abbr
    assert stitch("hdc").uk_term == f"half {stitch('dc').uk_term}"


@source("published", NAMING)
@pytest.mark.parametrize("name", ["sc", "dc", "tr"])
def test_names_count_the_loops_on_the_hook(name: str) -> None:
    """US: loops as the hook goes in; UK: loops once the first is pulled up."""
    loops = {"single": 1, "double": 2, "treble": 3, "double treble": 4}
    facts = stitch(name)
    before = 1 + facts.yarn_overs
    assert loops[facts.us_term.removesuffix(" crochet")] == before
    assert loops[facts.uk_term.removesuffix(" crochet")] == before + 1


@source("published", "Simply Crochet, 22 Oct 2020: UK double crochet is US single crochet")
def test_uk_double_crochet_is_us_single_crochet() -> None:
    assert abbreviation("sc", "uk")[:2] == ("dc", "double crochet")


@source("published", "Craft Yarn Council, term differences: an 'sc' in the abbreviations shows a pattern in US terms")
def test_single_crochet_never_appears_in_uk_terms() -> None:
    for key in abbreviation_keys():
        abbr, meaning, how = abbreviation(key, "uk")
        assert "single crochet" not in f"{meaning} {how}"
        assert "sc" not in abbr.replace("2tog", "").replace("3tog", "").split()
        assert not abbr.startswith(("sc", "hdc", "FPsc", "BPsc", "FPhdc", "BPhdc"))


@source("published", "Craft Yarn Council, Spotlight and King Cole, lists of US and UK terms")
def test_words_that_differ() -> None:
    pairs = {"gauge": "tension", "skip": "miss", "bulky": "chunky", "super bulky": "super chunky"}
    assert {us: word(us, "uk") for us in pairs} == pairs
    assert {us: word(us, "us") for us in pairs} == {us: us for us in pairs}


@source("published", "Craft Yarn Council, crochet master list")
@pytest.mark.parametrize(("key", "uk"), [("sc2tog", "dc2tog"), ("hdc2tog", "htr2tog"), ("dc2tog", "tr2tog"), ("sk", "miss"), ("RS", "RS"), ("BLO", "BLO")])
def test_abbreviations_in_both_terms(key: str, uk: str) -> None:
    assert abbreviation(key).abbr == key
    assert abbreviation(key, "uk").abbr == uk


@source("published", "Craft Yarn Council, crochet master list: 'n together' leaves one stitch, an increase two of one")
def test_shaping_changes_the_count_by_what_its_name_says() -> None:
    for key in abbreviation_keys():
        if key.endswith("tog") and key != "tog":
            assert eats_and_makes(key) == (int(key[-4]), 1)
        if key.startswith("2 "):
            assert eats_and_makes(key) == (1, 2)


@source("published", "Craft Yarn Council, crochet master list: wraps before the hook goes in")
def test_taller_stitches_take_more_yarn_overs() -> None:
    wraps = [stitch(name).yarn_overs for name in stitch_names()]
    assert wraps == [0, 0, 1, 1, 2]


@source("published", "Interweave experiment (one yarn, 6 mm hook, 20 by 20): a hdc row is 1.61 times a sc row; heights differ by a fifth between makers")
def test_half_doubles_beside_singles() -> None:
    assert times_as_high("hdc", "sc") == pytest.approx((9.25 / 20) / (5.75 / 20), rel=0.2)


@source("published", "Carol's Crochet Page, 2009 (sc 1, dc 2, tr 3); turning chains 1 : 2 : 3 : 4: two scales that disagree, ours between or near them")
@pytest.mark.parametrize(("stitch", "low", "high"), [("hdc", 1.5, 2.0), ("dc", 2.0, 3.0), ("tr", 3.0, 4.0)])
def test_heights_lie_between_the_published_scales(stitch: str, low: float, high: float) -> None:
    assert low <= times_as_high(stitch, "sc") <= high
