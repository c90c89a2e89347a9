"""A row worked over the row before, stitch by stitch: does it find what it is worked into?"""

from dataclasses import dataclass
from typing import Literal

from gaugewright.stitch_patterns.nodes import Chains, Element, Group, RowText, Skips, Stitches, made, used
from gaugewright.stitch_patterns.parser import PatternError

Place = Literal["stitch", "low", "chain"]
"""What a row offers the next one: a stitch with a post, a stitch too low for one, a chain."""

POSTLESS = ("sl st",)
"""Stitches without a post to work round."""


@dataclass(frozen=True, slots=True)
class Ground:
    """Stitches of the row before, in the order in which this row meets them."""

    places: tuple[Place, ...]
    what: str


def plain_ground(stitches: int, name: str) -> Ground:
    """A row of plain stitches."""
    return Ground(("low" if name in POSTLESS else "stitch",) * stitches, f"a row of {name}")


def repeats_over(row: RowText, stitches: int) -> int:
    """How often the repeat goes into a row of so many stitches; raises `PatternError` where it doesn't.

    >>> from gaugewright.stitch_patterns.parser import parse_row
    >>> repeats_over(parse_row("1 sc, *sk 2, 5 dc in 1, sk 2, 1 sc*"), 19)
    3
    """
    fixed, each = used((*row.before, *row.after)), used(row.repeat)
    if not row.repeat:
        if fixed != stitches:
            raise PatternError(f"this row works over {fixed} stitches, and the row before has {stitches}", 0, "put stars round what is repeated")
        return 0
    first = row.repeat[0].column
    if not each:
        raise PatternError("this repeat works into nothing, so it would never end", first, "let it use at least one stitch of the row before")
    times, over = divmod(stitches - fixed, each)
    if times < 0 or over:
        beside = f"{fixed} beside them" if fixed else "none beside them"
        message = f"repeats of {each} stitches, with {beside}, do not work over the {stitches} of the row before"
        raise PatternError(message, first, "let what the row uses be what the row before makes")
    return times


def work_row(row: RowText, ground: Ground, turned: bool) -> Ground:
    """What the row makes; `turned` where the next row meets it from its other end. Raises `PatternError`."""
    elements = row.worked(repeats_over(row, len(ground.places)))
    if not made(elements):
        raise PatternError("this row makes no stitch", 0, "work at least one")
    at, found = 0, []
    for element in elements:
        taken = _taken(element, ground, at)
        found += _made(element)
        at += taken
    return Ground(tuple(reversed(found)) if turned else tuple(found), "the row before")


def _taken(element: Element, ground: Ground, at: int) -> int:
    """Stitches an element uses from `at` on; raises where it isn't the place for it."""
    match element:
        case Chains():
            return 0
        case Skips(times=times):
            return times
        case Stitches(times=times, together=together, hold=hold):
            _check_posts(hold, ground, at, times * together, element.column)
            return times * together
        case Group(space=0, parts=parts):
            for part in parts:
                if isinstance(part, Stitches):
                    _check_posts(part.hold, ground, at, 1, element.column)
            return 1
        case Group(space=space):
            _check_space(ground, at, space, element.column)
            return space


def _check_posts(hold: str, ground: Ground, at: int, count: int, column: int) -> None:
    if "post" in hold and any(place != "stitch" for place in ground.places[at : at + count]):
        found = "a chain" if "chain" in ground.places[at : at + count] else f"{ground.what}, which has no posts"
        raise PatternError(f"a post stitch is worked round a stitch, and here it meets {found}", column, "let a plain row come before it, or skip the chains")


def _check_space(ground: Ground, at: int, space: int, column: int) -> None:
    under = ground.places[at : at + space]
    after = ground.places[at + space : at + space + 1]
    before = ground.places[at - 1 : at] if at else ()
    if under != ("chain",) * space:
        raise PatternError(f"a space under {space} chain{'s' if space > 1 else ''} is not what {ground.what} has here", column, "work it where the row before has its chains")
    if "chain" in (*before, *after):
        length = _run(ground, at)
        raise PatternError(f"the space here is under {length} chains, not {space}", column, f"write `in ch {length}`")


def _run(ground: Ground, at: int) -> int:
    low = high = at
    while low and ground.places[low - 1] == "chain":
        low -= 1
    while high < len(ground.places) and ground.places[high] == "chain":
        high += 1
    return high - low


def _made(element: Element) -> list[Place]:
    match element:
        case Chains(times=times):
            return ["chain"] * times
        case Stitches(name=name, times=times):
            return ["low" if name in POSTLESS else "stitch"] * times
        case Group(parts=parts):
            return [place for part in parts for place in _made(part)]
        case Skips():
            return []
