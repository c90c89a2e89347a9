"""The yarn that a page prints is what its own words come to: stitches at the printed weight, foundations, tails and seams."""

from functools import cache

import pytest

from cli.running import ROOT
from yarn.recount import Page, ball_grams, balls_for, printed, recounted

SAMPLES = ("saltmarsh-jacket", "quayside-throw", "tideline-cowl", "lamplighter-hat", "slipway-wrap")


@cache
def page(name: str) -> Page:
    return Page((ROOT / "samples" / name / f"{name}.txt").read_text(encoding="utf-8"))


CASES = [(name, size) for name in SAMPLES for size in page(name).sizes]


@pytest.mark.parametrize(("name", "size"), CASES)
def test_grams_and_balls_are_those_of_the_printed_words(name: str, size: str) -> None:
    """Within 1 %, and the gram to which the page rounds up."""
    own, told = recounted(page(name), size), printed(page(name), size)
    assert told.keys() == own.keys()
    for colour, (grams, balls) in told.items():
        assert own[colour] * 0.99 <= grams <= own[colour] * 1.01 + 1, colour
        assert balls == balls_for(own[colour], ball_grams(page(name))), colour


def test_the_reader_sees_every_row() -> None:
    """The jacket's XS by hand: a back of 43 rows of 43 stitches, a pocket of 11 rows of 13, a band of 4 rows of 121."""
    pieces = page("saltmarsh-jacket").pieces
    assert list(pieces) == ["Back", "Right Front", "Left Front", "Sleeve", "Pocket", "Front and Neck Band"]
    assert (pieces["Back"].last["XS"], pieces["Pocket"].last["XS"], pieces["Front and Neck Band"].last["XS"]) == (43, 11, 4)
    assert sum(pieces["Right Front"].changes["XS"].values()) == -4
    assert pieces["Sleeve"].make == dict.fromkeys(page("saltmarsh-jacket").sizes, 2)


def test_a_page_with_another_figure_is_found_out() -> None:
    """A row of the back taken away, or a heavier swatch, is more than 1 %."""
    text = (ROOT / "samples" / "saltmarsh-jacket" / "saltmarsh-jacket.txt").read_text(encoding="utf-8")
    heavier = Page(text.replace("weigh 41\u00a0g", "weigh 42\u00a0g").replace("weigh 41 g", "weigh 42 g"))
    assert recounted(heavier, "M")["Kelp"] > recounted(page("saltmarsh-jacket"), "M")["Kelp"] * 1.02
