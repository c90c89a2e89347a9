"""The typefaces of a style, loaded, measured, and asked whether they have a glyph.

In: the font files of a `Style`. Out: `Faces`, whose names are known to reportlab. Files are parsed
once per path: parsing costs more than setting a page.
"""

from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import NamedTuple

from reportlab.pdfbase.pdfmetrics import registerFont
from reportlab.pdfbase.ttfonts import TTFError

from gaugewright.errors import UserError
from gaugewright.render.pdf.hooks import ReadableFont, load_font
from gaugewright.render.pdf.style import Face, Style

NO_BREAK = "\u00a0"


@cache
def _load(path: Path, modified: int) -> ReadableFont:
    """A font by its path; `modified` makes an edited file a new one."""
    try:
        font = load_font(f"{path}#{modified}", path)
    except (TTFError, OSError) as fault:
        raise UserError(
            "bad-style",
            f"{path} can't be used as a typeface: {fault}",
            "faces must be TrueType files (.ttf with TrueType outlines)",
        ) from None
    registerFont(font)
    return font


class Faces(NamedTuple):
    """Fonts by the face they serve as, and their characters' advance widths in thousandths of an em."""

    fonts: dict[Face, ReadableFont]
    widths: dict[Face, dict[str, float]]

    def name(self, face: Face) -> str:
        """The name reportlab knows the face by."""
        return str(self.fonts[face].fontName)

    def width(self, face: Face, size: float, text: str) -> float:
        """Width of a text in points."""
        return sum(map(self.widths[face].__getitem__, text)) * size / 1000


def load_faces(style: Style) -> Faces:
    """The faces that a style's texts are set in, ready for a canvas; one that none uses isn't even read."""
    fonts = {face: _load(path, path.stat().st_mtime_ns) for face, path in style.faces if face in style.used}
    return Faces(fonts, {face: _widths(font) for face, font in fonts.items()})


def _widths(font: ReadableFont) -> dict[str, float]:
    """Advance widths by character; U+00A0 is as wide as the space it is drawn as."""
    widths = {chr(code): width for code, width in font.face.charWidths.items()}
    return {**widths, NO_BREAK: widths[" "]}


def check_glyphs(faces: Faces, texts: Iterable[str]) -> None:
    """Every character must have a glyph in every face used: a box on paper is no instruction."""
    wanted = {c for text in texts for c in text} - {NO_BREAK, "\n"}
    missing = sorted(c for c in wanted if any(c not in widths for widths in faces.widths.values()))
    if missing:
        shown = ", ".join(f"{c!r} (U+{ord(c):04X})" for c in missing[:8])
        raise UserError(
            "missing-glyph",
            f"the typeface has no sign for {shown}" + (" and more" if len(missing) > 8 else ""),
            "write it in other words, or name a typeface that has it in your own style",
        )
