"""An empty return for one pattern: every key that there is, in the order of the sheet, for a maker to fill in."""

from collections.abc import Iterator

from gaugewright.changes import fabrics_of, measures_of
from gaugewright.design.model import Fabric
from gaugewright.pipeline import Graded, side
from gaugewright.rounding import to_step
from gaugewright.units import cm_text, inches_text

PIECES = ("hours", "remarks")


def blank_return(graded: Graded, size: str = "") -> str:
    """The file's text; with a `size`, or where there is but one, it is filled in, and only its predictions are told."""
    if len(graded.bodies.labels) == 1:
        size = graded.bodies.labels[0]
    return "\n".join(_lines(graded, size)) + "\n"


def _lines(graded: Graded, size: str) -> Iterator[str]:
    design, predicted = graded.design, side(graded)
    about, labels = design.about, (size,) if size else graded.bodies.labels
    yield "# What a test maker sends back. Fill in what you noted, after the colons; leave blank what you didn't."
    yield f"pattern: {_quoted(about.title)}"
    yield f"version: {_quoted(about.version)}" if about.version else "version:"
    yield f"size: {_quoted(size)}" if size else f"size:  # one of {', '.join(labels)}"
    yield from ("", 'gauge:  # yours, before and after washing, such as washed: 9 sts, 7 rows / 10 cm')
    for fabric in fabrics_of(predicted):
        yield from (f"  {fabric.key}:  # {_gauge_text(fabric)}", "    hook:", "    fresh:", "    washed:")
    text = cm_text if about.units == "cm" else inches_text
    yield from ("", "finished:  # washed and dried, lying flat; with a unit, cm or in")
    for key, label, values in measures_of(predicted):
        yield f"  {_quoted(key)}:  # {label}: {_by_size({one: text(values[one]) for one in labels})} {about.units}"
    yield from ("", "yarn:  # what you used of each colour, such as 402 g; or all of it, as yarn: 1250 g")
    for yarn in design.yarns:
        yield f"  {yarn.key}:  # {yarn.label}"
    for field, said in zip(PIECES, ("such as 4.5 or 4:30; or all of it, as hours: 31", "in your words, in quotes"), strict=True):
        yield from ("", f"{field}:  # {said}")
        yield from (f"  {piece.key}:  # {piece.title}" for piece in design.pieces)
    yield from ("", "hard_to_follow:  # page and row, and what, in quotes", "more:", "maker:  # your name or a sign; it is never printed")


def _by_size(texts: "dict[str, str]") -> str:
    return next(iter(texts.values())) if len(texts) == 1 else "; ".join(f"{size} {text}" for size, text in texts.items())


def _gauge_text(fabric: Fabric) -> str:
    """The pattern's own gauge, to ten centimetres."""
    sts, rows = (f"{to_step(count, 0.1):.1f}".removesuffix(".0") for count in (fabric.gauge.stitches_in(100), fabric.gauge.rows_in(100)))
    return f"the pattern's: {sts} sts, {rows} {'rows' if fabric.worked == 'rows' else 'rounds'} / 10 cm"


def _quoted(text: str) -> str:
    """Text that YAML would take for something else, or that holds a sign of its own, goes in quotes."""
    return text if text.replace("_", "").isalpha() and text.lower() not in ("null", "true", "false") else '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
