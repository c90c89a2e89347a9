"""A style: faces, sizes, leading, margins and colours, read from a TOML template.

In: `styles/<name>.toml`, the user's own or ours. Out: `Style`, all lengths in points. A style is
checked here once (nothing missing, nothing unknown, text dark enough to read), so that the
typesetting may rely on it.
"""

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal, NamedTuple

from gaugewright.errors import UserError
from gaugewright.resources import find_template, read_template

POINTS_PER_MM = 72 / 25.4
CONTRAST = 4.5  # WCAG 2, 1.4.3 AA, for text against white
SMALLEST_TEXT = 5.0

Face = Literal["regular", "italic", "semibold", "bold"]
Rule = Literal["", "above", "left"]
FACES: tuple[Face, ...] = ("regular", "italic", "semibold", "bold")
ALWAYS_USED: frozenset[Face] = frozenset({"regular", "semibold", "bold"})
"""Tables and drawings, counts, and labels of steps are set in these, whatever a style says."""
RULES: tuple[Rule, ...] = ("", "above", "left")
TEXTS = (
    "title author chapter part lead body step bullet note caution small caption table_note running"
).split()


@dataclass(frozen=True, slots=True)
class TextStyle:
    """How one kind of text is set. `hang` indents all lines but the first, `indent` all."""

    face: Face
    size: float
    leading: float
    colour: str
    before: float = 0.0
    after: float = 0.0
    indent: float = 0.0
    hang: float = 0.0
    rule: Rule = ""


class TableStyle(NamedTuple):
    """How tables are set: the usual size, the size kept if at all possible, and the least."""

    size: float
    floor: float
    least: float
    leading: float
    padding: float
    gap: float


class PageStyle(NamedTuple):
    """Margins to the running head and foot, and the longest line of running text."""

    side: float
    top: float
    bottom: float
    measure: float


class Colours(NamedTuple):
    """The colours a style may use, as #rrggbb."""

    ink: str
    muted: str
    accent: str
    rule: str


class Style(NamedTuple):
    """A whole style; `faces` are font files."""

    name: str
    faces: tuple[tuple[Face, Path], ...]
    page: PageStyle
    colours: Colours
    table: TableStyle
    texts: tuple[tuple[str, TextStyle], ...]

    def text(self, kind: str) -> TextStyle:
        """The style of one kind of text."""
        return dict(self.texts)[kind]

    @property
    def used(self) -> frozenset[Face]:
        """The faces that something is set in."""
        return ALWAYS_USED | {text.face for _, text in self.texts}


def load_style(name: str = "quiet", own: Path | None = None) -> Style:
    """Read and check a style; `own` is the user's templates folder."""
    file = f"styles/{name}.toml"
    try:
        data = tomllib.loads(read_template(file, own))
    except tomllib.TOMLDecodeError as fault:
        raise _bad(file, f"it is not TOML: {fault}") from None
    _check_keys(file, "", data, {"faces", "page", "colours", "table", "text"})
    faces = _section(file, data, "faces", set(FACES))
    page = {k: v * POINTS_PER_MM for k, v in _numbers(file, data, "page", PageStyle).items()}
    colours = _colours(file, data)
    texts = _section(file, data, "text", set(TEXTS))
    return Style(
        name,
        tuple((face, _font_file(file, face, faces[face], own)) for face in FACES),
        PageStyle(**page),
        colours,
        TableStyle(**_numbers(file, data, "table", TableStyle)),
        tuple((kind, _text_style(file, kind, texts[kind], colours)) for kind in TEXTS),
    )


def contrast_to_white(colour: str) -> float:
    """Contrast of a colour against white as WCAG 2 defines it.

    >>> round(contrast_to_white("#000000"), 1), round(contrast_to_white("#777777"), 2)
    (21.0, 4.48)
    """
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    r, g, b = (c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 1.05 / (0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05)


def is_colour(text: object) -> bool:
    """True for #rrggbb."""
    if not (isinstance(text, str) and len(text) == 7 and text[0] == "#"):
        return False
    return all(c in "0123456789abcdefABCDEF" for c in text[1:])


def _bad(file: str, found: str) -> UserError:
    return UserError("bad-style", f"{file}: {found}", "compare with the style that is shipped, styles/quiet.toml")


def _check_keys(file: str, where: str, found: Any, wanted: set[str], optional: frozenset[str] = frozenset()) -> None:
    place = f"[{where}]" if where else "the file"
    if not isinstance(found, dict):
        raise _bad(file, f"{where} must be a section")
    if unknown := sorted(set(found) - wanted - optional):
        raise _bad(file, f"{place} has an unknown key {unknown[0]!r}")
    if missing := sorted(wanted - set(found)):
        raise _bad(file, f"{place} lacks {missing[0]!r}")


def _section(file: str, data: dict[str, Any], name: str, wanted: set[str]) -> dict[str, Any]:
    _check_keys(file, name, data[name], wanted)
    return dict(data[name])


def _number(file: str, where: str, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 <= value < 1000:
        raise _bad(file, f"{where} must be a number from 0 to 1000, not {value!r}")
    return float(value)


def _numbers(file: str, data: dict[str, Any], name: str, model: Any) -> dict[str, float]:
    section = _section(file, data, name, set(model._fields))
    return {key: _number(file, f"{name}.{key}", value) for key, value in section.items()}


def _colours(file: str, data: dict[str, Any]) -> Colours:
    section = _section(file, data, "colours", set(Colours._fields))
    for key, value in section.items():
        if not is_colour(value):
            raise _bad(file, f"colours.{key} must look like #1c1c1c, not {value!r}")
        if key != "rule" and contrast_to_white(value) < CONTRAST:
            raise _bad(file, f"colours.{key} is too pale to read: {value} has less than {CONTRAST} to 1 against white")
    return Colours(**section)


def _font_file(file: str, face: str, name: Any, own: Path | None) -> Path:
    if not isinstance(name, str):
        raise _bad(file, f"faces.{face} must name a font file")
    return find_template(name, own)


def _text_style(file: str, kind: str, found: Any, colours: Colours) -> TextStyle:
    where = f"text.{kind}"
    optional = frozenset({"before", "after", "indent", "hang", "colour", "rule"})
    _check_keys(file, where, found, {"face", "size", "leading"}, optional)
    face, rule, colour = found["face"], found.get("rule", ""), found.get("colour", "ink")
    if face not in FACES:
        raise _bad(file, f"{where}.face must be one of {', '.join(FACES)}, not {face!r}")
    if rule not in RULES:
        raise _bad(file, f"{where}.rule must be above or left, not {rule!r}")
    if colour not in ("ink", "muted", "accent"):
        raise _bad(file, f"{where}.colour must be ink, muted or accent, not {colour!r}")
    words = {"face", "rule", "colour"}
    numbers = {k: _number(file, f"{where}.{k}", v) for k, v in found.items() if k not in words}
    if numbers["size"] < SMALLEST_TEXT or numbers["leading"] < numbers["size"]:
        raise _bad(file, f"{where} needs a size of at least {SMALLEST_TEXT} and a leading no less than the size")
    return TextStyle(face=face, rule=rule, colour=getattr(colours, colour), **numbers)
