"""Checks of the size list: each size once, each known, one ease for each."""

from collections.abc import Iterator

from gaugewright.errors import Problem
from gaugewright.spec.messages import did_you_mean, listed
from gaugewright.spec.names import Names, items, table
from gaugewright.spec.walk import Reference
from gaugewright.yaml_reader import Source


def check_sizes(references: tuple[Reference, ...], names: Names, source: Source) -> Iterator[Problem]:
    """Labels of sizes that the table or `own` doesn't hold, and labels given twice."""
    seen: set[str] = set()
    for reference in references:
        if reference.kind != "size":
            continue
        origin = source.origin_at(reference.path, key=reference.is_key)
        in_make = reference.path[:2] == ("sizes", "make")
        if in_make and reference.text in seen:
            yield Problem(
                "duplicate-size", f"size {reference.text} is given twice", origin, f"keep one {reference.text}"
            )
        elif in_make and reference.text not in names.sizes:
            yield _unknown_size(reference, names, source)
        elif not in_make and reference.text not in names.made:
            message = f"size {reference.text} is not made; {listed(names.made)} is expected"
            hint = f"add {reference.text} to `make`, or take it out here"
            hint = hint if reference.text in names.sizes else did_you_mean(reference.text, names.made, hint)
            yield Problem("unknown-size", message, origin, hint)
        seen.update([reference.text] if in_make else ())


def check_dimensions(names: Names, source: Source) -> Iterator[Problem]:
    """Each size made has every dimension that another has, as formulas use it in all of them."""
    dimensions = table(table(source.data, "sizes"), "dimensions")
    if not dimensions:
        return
    for label in names.made:
        missing = [name for name in names.dimensions if name not in table(dimensions, label)]
        if missing:
            path = ("sizes", "dimensions", label) if label in dimensions else ("sizes", "dimensions")
            message = f"size {label} has no {listed(missing, 'and')}, which other sizes have"
            yield Problem("dimension-missing", message, source.origin_at(path, key=True), f"add `{missing[0]}: 20 cm` to {label}")


def _unknown_size(reference: Reference, names: Names, source: Source) -> Problem:
    chosen = table(source.data, "sizes").get("table")
    origin = source.origin_at(reference.path)
    if chosen is None:
        message = f"nothing says what size {reference.text} measures"
        hint = f"add `table: women` to sizes, or its measures under own: `own: {{{reference.text}: {{bust: 90 cm}}}}`"
        return Problem("unknown-size", message, origin, hint)
    message = (
        f"size {reference.text} is not in the table {chosen}; it has {listed(names.sizes, 'and')}"
    )
    return Problem(
        "unknown-size",
        message,
        origin,
        did_you_mean(reference.text, names.sizes, "use one of those, or give its measures under `own`"),
    )


def check_ease_lists(names: Names, source: Source) -> Iterator[Problem]:
    """A list of ease has one length for each size made."""
    for measure, ease in table(table(source.data, "sizes"), "ease").items():
        if isinstance(ease, list) and names.made and len(ease) != len(names.made):
            message = f"{len(items(ease))} lengths are given for {len(names.made)} sizes"
            hint = f"give {len(names.made)} lengths, for {', '.join(names.made)}; or one length for all"
            yield Problem("ease-list", message, source.origin_at(("sizes", "ease", measure)), hint)
