"""The width table against the fonts it was read from."""

import pytest
from drawings.inspection import face

from gaugewright.drawings.advance_widths import FIRST_LATIN, LATIN_REGULAR, LATIN_SEMIBOLD, OTHER_CHARACTERS
from gaugewright.drawings.scene import label_corners
from gaugewright.drawings.primitives import Label
from gaugewright.drawings.text_width import ASCENT, DESCENT, text_width


@pytest.mark.parametrize("strong", [False, True])
def test_every_width_is_the_fonts_own(strong: bool) -> None:
    font = face(strong).face
    covered = [chr(FIRST_LATIN + index) for index in range(len(LATIN_REGULAR))] + list(OTHER_CHARACTERS)
    in_font = [c for c in covered if ord(c) in font.charToGlyph and font.charWidths[ord(c)]]
    assert len(in_font) > 330
    assert [c for c in in_font if text_width(c, 1000, strong) != pytest.approx(font.charWidths[ord(c)])] == []


def test_what_the_font_lacks_counts_as_a_full_em() -> None:
    assert len(LATIN_REGULAR) == len(LATIN_SEMIBOLD) == 0x180 - FIRST_LATIN
    assert text_width("\u0e01", 3) == 3
    assert text_width("\u0080", 3) == 3


@pytest.mark.parametrize("strong", [False, True])
def test_a_line_is_as_wide_as_the_font_sets_it(strong: bool) -> None:
    for text in ("A 42.5 cm", "A 16½ in", "worked in rounds", "Rückenlänge", "picked-up edge"):
        assert text_width(text, 2.8, strong) == pytest.approx(face(strong).stringWidth(text, 2.8))


def test_letters_stay_within_ascent_and_descent() -> None:
    """By the font's own outlines for the tallest and deepest letters of ordinary text."""
    bounds = face(False).face
    assert bounds.capHeight / 1000 < ASCENT
    assert 0.2 <= DESCENT <= 0.25


def test_a_label_reaches_left_or_right_of_its_anchor() -> None:
    for anchor, share in (("start", 0.0), ("middle", 0.5), ("end", 1.0)):
        label = Label(50, 20, "hem", 3, anchor)
        left = min(x for x, _ in label_corners(label))
        assert left == pytest.approx(50 - share * text_width("hem", 3))


def test_a_turned_label_reads_upwards() -> None:
    xs, ys = zip(*label_corners(Label(50, 20, "side", 3, "start", 90)), strict=True)
    assert min(ys) == pytest.approx(20 - text_width("side", 3))
    assert max(ys) == pytest.approx(20)
    assert min(xs) == pytest.approx(50 - ASCENT * 3)
