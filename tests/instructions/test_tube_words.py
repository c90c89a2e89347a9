"""Mittens and slippers in words: told in the order of working, with counts that add up, and with their cautions."""

import re

import pytest

from instructions.specs import document, pieces_told, told


def text_of(name: str, piece: str, sizes: tuple[str, ...] = ()) -> str:
    return " ".join(f"{one.label} {one.text}" for one in pieces_told(name, sizes)[piece])


@pytest.mark.parametrize("size", ["S", "M", "L"])
@pytest.mark.parametrize("piece", ["hand", "twin"])
def test_the_three_parts_of_an_opening_round_make_its_count(piece: str, size: str) -> None:
    text = text_of("mitten", piece, (size,))
    found = re.search(r"after the (?:first (\d+) sts|first st) ch (\d+) and skip the next (\d+) sts; then go on with the last (\d+) sts", text)
    total = re.search(r"work into each ch as into a st\. — (\d+) sts\.", text)
    assert found and total
    assert found[2] == found[3]
    assert int(found[1]) + int(found[2]) + int(found[4]) == int(total[1])


def test_the_twin_says_how_it_differs() -> None:
    assert "It is the Hand mirrored: its opening lies at the other end of the rnd" in text_of("mitten", "twin")
    assert "mirrored" not in text_of("mitten", "hand")
    assert "each fits either hand" in text_of("mitten-turned", "hand")


def test_thumbs_come_after_the_hands_they_are_worked_onto() -> None:
    lines = [one.text for one in told(document("mitten")) if one.chapter == "Order of work"]
    assert lines[:3] == ["Order of work", "Hand and Twin: work them in any order.", "Work the Thumb (make 2) on the Hand and Twin."]


def test_a_folded_seam_counts_its_halves() -> None:
    text = " ".join(one.text for one in told(document("slipper")) if one.chapter == "Making up")
    assert "Fold the heel edge of the Heel in half" in text and "Do each Heel alike." in text


def test_a_slipper_goes_from_rounds_to_rows() -> None:
    foot, heel = text_of("slipper", "foot"), text_of("slipper", "heel")
    assert "Do not fasten off. The last 8 sts of Rnd" in foot and "Fasten off," not in foot
    assert "go on from the last rnd of the Foot" in heel and "Leave the 8 sts of the instep unworked." in heel


@pytest.mark.parametrize(("name", "warned"), [("slipper", True), ("mitten", False)])
def test_soles_that_slide_are_cautioned(name: str, warned: bool) -> None:
    found = [one.text for one in told(document(name)) if one.chapter == "Cautions"]
    assert any("slides on smooth floors" in one for one in found) == warned


def test_a_tall_spiral_ends_in_ever_lower_stitches() -> None:
    assert "Hdc, sc and sl st in the next 3 sts, one in each, to level the end of the spiral." in text_of("tubes in three", "hood")
    assert "Sl st in the next st, to level the end of the spiral." in text_of("rounds in three", "hat")
