"""Paper sizes against the standard's own rules and a general library."""

import math

import pytest
from external.sources import source
from reportlab.lib import pagesizes

from gaugewright.trade.paper import paper, shared_area


@source("library", "reportlab.lib.pagesizes")
@pytest.mark.parametrize("name", ["A4", "A3", "Letter", "Legal"])
def test_sheets_are_the_librarys_sheets(name: str) -> None:
    width, height = getattr(pagesizes, name.upper())
    sheet = paper(name)
    assert (sheet.width_mm, sheet.height_mm) == pytest.approx((width / 72 * 25.4, height / 72 * 25.4), abs=0.05)


@source("published", "ISO 216: sheets of one shape (1 to the root of 2), A0 one square metre, each size half the next")
def test_a_sheets_follow_the_standards_rule() -> None:
    a4, a3 = paper("A4"), paper("A3")
    assert a3.width_mm == a4.height_mm
    assert a4.width_mm * 2 == a3.height_mm
    assert a4.height_mm / a4.width_mm == pytest.approx(math.sqrt(2), abs=0.001)
    assert a4.width_mm * a4.height_mm * 16 == pytest.approx(1_000_000, rel=0.003)


@source("published", "ANSI/ASME Y14.1 size A: 8.5 by 11 in")
def test_letter_is_the_american_size_a() -> None:
    assert (paper("Letter").width_mm / 25.4, paper("Letter").height_mm / 25.4) == pytest.approx((8.5, 11))


@source("published", "RFC 2346, 'Making Postscript and PDF International', 1998: A4 is the narrower, Letter the shorter sheet")
def test_what_prints_on_both_sheets() -> None:
    assert shared_area("Letter", "A4") == (210.0, pytest.approx(11 * 25.4))
