"""Yarn in hand and pieces weighed, as text: `oat=5` (balls), `kelp=350 g`, `slate=200 yd`, `back=310 g`."""

import re
from collections.abc import Sequence
from typing import Literal, NamedTuple

from gaugewright.errors import Location, Origin, Problem, ProblemsFound
from gaugewright.units import UnitError, parse_quantity

_PARTS = re.compile(r"(\s*)([A-Za-z][A-Za-z0-9_]*)(\s*=\s*)(.*\S)\s*", re.DOTALL)

UNITS: dict[str, Literal["balls", "g", "mm"]] = {"number": "balls", "mass": "g", "length": "mm"}


class YarnText(NamedTuple):
    """A name and an amount: balls, grams or mm; `origin` is where the amount stands."""

    name: str
    amount: float
    unit: Literal["balls", "g", "mm"]
    origin: Origin


def parse_have(texts: Sequence[str]) -> tuple[YarnText, ...]:
    """Yarn in hand by its name in the spec, nothing being an amount too; raises `ProblemsFound` with all faults.

    >>> [(one.name, one.amount, one.unit) for one in parse_have(["oat=5", "kelp=350 g"])]
    [('oat', 5.0, 'balls'), ('kelp', 350.0, 'g')]
    """
    return _all(texts, "--have", tuple(UNITS), "oat=5, kelp=\"350 g\" or slate=\"200 yd\"")


def parse_used(texts: Sequence[str]) -> tuple[YarnText, ...]:
    """Finished pieces and what each weighs; a piece may be named as often as it is made."""
    return _all(texts, "--used", ("mass",), "back=\"310 g\"")


def _all(texts: Sequence[str], option: str, allowed: tuple[str, ...], example: str) -> tuple[YarnText, ...]:
    found, problems = list[YarnText](), list[Problem]()
    for text in texts:
        try:
            found.append(_parsed(text, option, allowed, example))
        except ProblemsFound as fault:
            problems += fault.problems
    if option == "--have":
        names = [one.name for one in found]
        problems += [
            Problem("yarn-text", f"{one.name} is given twice", one.origin, "add them up and write the yarn once") for place, one in enumerate(found) if one.name in names[:place]
        ]
    if problems:
        raise ProblemsFound(problems)
    return tuple(found)


def _parsed(text: str, option: str, allowed: tuple[str, ...], example: str) -> YarnText:
    def refused(name: str, message: str, column: int, hint: str) -> ProblemsFound:
        return ProblemsFound([Problem(name, message, Origin(Location(option, 1, column + 1), text), hint)])

    parts = _PARTS.fullmatch(text)
    if parts is None:
        raise refused("yarn-text", f"{text!r} is no name with an amount", 0, f"write {option} {example}")
    at = parts.start(4)
    try:
        amount, dimension = parse_quantity(parts[4])
    except UnitError as fault:
        raise refused("wrong-unit", fault.message, at + fault.column, fault.hint) from None
    if dimension not in allowed or "%" in parts[4]:
        raise refused("wrong-unit", f"{parts[4]} is not what is expected of {parts[2]}", at, f"write {option} {example}")
    if amount < 0 or (amount == 0 and option == "--used"):
        raise refused("not-positive", f"{parts[4]} of {parts[2]} is {'less than nothing' if amount < 0 else 'no weight of a piece'}", at, f"write {option} {example}")
    return YarnText(parts[2], amount, UNITS[dimension], Origin(Location(option, 1, at + 1), text))
