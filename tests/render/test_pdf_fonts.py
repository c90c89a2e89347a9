"""Every sign is a real glyph of an embedded face that says which letter it is."""

import shutil
import subprocess
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from gaugewright.errors import UserError
from gaugewright.instructions.nodes import Document, Paragraph, plain
from gaugewright.render.pdf import Style, render_pdf
from render.pdf_reading import TaggedPdf, to_unicode


def fonts_of(pdf: TaggedPdf) -> dict[str, Any]:
    return {
        name: font.get_object() for page in pdf.reader.pages for name, font in page["/Resources"]["/Font"].items()
    }


def test_all_fonts_are_embedded_subsets_with_a_map_to_letters(pdf: TaggedPdf) -> None:
    fonts = fonts_of(pdf)
    assert len(fonts) >= 3
    for font in fonts.values():
        assert font["/Subtype"] == "/TrueType"
        assert font["/BaseFont"][1:].split("+")[1].startswith("SourceSans3-")
        assert len(font["/FontDescriptor"]["/FontFile2"].get_data()) > 1000
        assert "/Encoding" not in font, "a symbolic font has none (ISO 14289-1, 7.21.6)"
        letters = to_unicode(font).values()
        assert letters and not {"\0", "\x7f"} & set(letters)


def test_poppler_agrees_about_the_fonts(pdf_bytes: bytes, tmp_path: Path) -> None:
    tool = shutil.which("pdffonts")
    if tool is None:
        pytest.skip("pdffonts is not installed; the test above looks at the same fonts with pypdf")
    file = tmp_path / "coat.pdf"
    file.write_bytes(pdf_bytes)
    run = subprocess.run([tool, str(file)], capture_output=True, check=True, text=True)
    rows = run.stdout.splitlines()[2:]
    assert len(rows) >= 3
    for row in rows:
        embedded, subset, unicode_map = row.split()[-5:-2]
        assert (embedded, subset, unicode_map) == ("yes", "yes", "yes"), row


def test_no_glyph_that_a_page_shows_is_unknown(pdf: TaggedPdf) -> None:
    for contents in pdf.contents:
        assert all(piece.text for piece in contents.pieces)
        assert not any("\ufffd" in piece.text for piece in contents.pieces)


def test_a_sign_the_face_lacks_is_a_plain_problem(coat: Document, style: Style) -> None:
    odd = replace(coat, blocks=(*coat.blocks, Paragraph(plain("Sew on the \u2603 and the \u4e2d."))))
    with pytest.raises(UserError) as found:
        render_pdf(odd, "a4", style)
    assert found.value.name == "missing-glyph"
    assert "U+2603" in found.value.message and "U+4E2D" in found.value.message


def test_signs_of_the_trade_are_there(coat: Document, style: Style) -> None:
    signs = "½ ⅓ ⅔ ¼ ¾ ⅛ ⅜ ⅝ ⅞ × ÷ ± ° ′ ″ – — … • ☐ ✓ → ← ↑ ↓ ≈ ≤ ≥ € £ é ß ø Å ñ"
    data = render_pdf(replace(coat, blocks=(Paragraph(plain(signs)),)), "a4", style)
    pieces = [piece.text for contents in TaggedPdf(data).contents for piece in contents.pieces]
    assert signs in pieces
