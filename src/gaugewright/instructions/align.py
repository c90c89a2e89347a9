"""Plans of like structure merged over sizes.

A stretch of even rows ends where its section or its colour ends. Where sizes cannot share a stretch
(in one the colour changes below a section's end, in another above it) the text splits.
"""

from dataclasses import dataclass

from gaugewright.grading.plan import PiecePlan
from gaugewright.instructions.view import PieceView
from gaugewright.sized import Sized


@dataclass(frozen=True, slots=True)
class Stretch:
    """Rows `first` to `last` of one section in one colour, for the sizes that have them."""

    colour: str
    first: Sized[int]
    last: Sized[int]


@dataclass(frozen=True, slots=True)
class ColourChange:
    """A colour that begins after row `after`, for the sizes that have the change there."""

    colour: str
    after: Sized[int]


def stretches(view: PieceView, index: int) -> tuple[Stretch, ...]:
    """The even stretches of a section, in order of working; one, of no colour, where colours are told beforehand."""
    if view.planned:
        return (Stretch("", view.section_first_rows(index), view.section_last_rows(index)),)
    found: dict[tuple[int, str], dict[str, tuple[int, int]]] = {}
    for label, plan in view.plans.items():
        for number, (colour, first, last) in enumerate(_pieces_of_section(plan, index)):
            found.setdefault((number, colour), {})[label] = (first, last)
    return tuple(
        Stretch(
            colour,
            Sized(tuple(rows), tuple(first for first, _ in rows.values())),
            Sized(tuple(rows), tuple(last for _, last in rows.values())),
        )
        for (_, colour), rows in sorted(found.items(), key=lambda item: item[0][0])
    )


def _pieces_of_section(plan: PiecePlan, index: int) -> list[tuple[str, int, int]]:
    first = 1 + sum(section.rows for section in plan.sections[:index])
    last = first + plan.sections[index].rows - 1
    return [
        (band.colour, max(band.first, first), min(band.last, last))
        for band in plan.bands
        if band.first <= last and band.last >= first
    ]


def change_after(view: PieceView, last: Sized[int]) -> tuple[ColourChange, ...]:
    """Colour changes that fall at the end of these rows, where they aren't told beforehand."""
    if view.planned:
        return ()
    found: dict[str, dict[str, int]] = {}
    for label, row in last.items():
        plan = view.plans[label]
        if row < plan.rows and plan.colour_of(row) != plan.colour_of(row + 1):
            found.setdefault(plan.colour_of(row + 1), {})[label] = row
    return _changes(found)


def changes_within(view: PieceView, index: int) -> tuple[ColourChange, ...]:
    """Colour changes inside a section, after its first row, where they aren't told beforehand."""
    if view.planned:
        return ()
    found: dict[tuple[int, str], dict[str, int]] = {}
    for label, plan in view.plans.items():
        for number, (colour, first, _) in enumerate(_pieces_of_section(plan, index)):
            if number:
                found.setdefault((number, colour), {})[label] = first - 1
    return tuple(change for key, rows in sorted(found.items()) for change in _changes({key[1]: rows}))


def _changes(found: dict[str, dict[str, int]]) -> tuple[ColourChange, ...]:
    return tuple(ColourChange(colour, Sized(tuple(rows), tuple(rows.values()))) for colour, rows in found.items())


def grouped(values: "Sized[tuple[object, ...]]") -> tuple[tuple[object, tuple[str, ...]], ...]:
    """Sizes grouped by equal values, in order of the first size of each group."""
    found: dict[object, list[str]] = {}
    for label, value in values.items():
        found.setdefault(value, []).append(label)
    return tuple((value, tuple(labels)) for value, labels in found.items())
