"""Strands of yarn in a piece: where each begins and ends, read from the rows alone.

A strand goes on while its colour does. At a change it may rest at the edge and be carried up, if its colour comes
again within a few rows and begins at the edge where it rests; otherwise it is cut. Each block of a row is worked
from a strand of its own. Every strand has two ends to weave in.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugewright.grading.model import Row, Strip

ONE_PLACE = "join"
"""Where every round begins and ends."""


@dataclass(frozen=True, slots=True)
class Strand:
    """A length of one colour, in use from row `first` to row `last` of its piece; `rows` are those worked with it."""

    colour: str
    rows: tuple[int, ...]

    @property
    def first(self) -> int:
        """The row with which it begins."""
        return self.rows[0]

    @property
    def last(self) -> int:
        """The row after which it is cut."""
        return self.rows[-1]


@dataclass(slots=True)
class _Live:
    """A strand that may go on: where it lies, and which of a row's blocks it is in (-1: it has rows to itself)."""

    colour: str
    rows: list[int]
    place: str
    block: int = -1
    lines: tuple[int, ...] = ()


def strands_of(strips: Sequence[Strip], carry: int) -> tuple[Strand, ...]:
    """All strands of a piece in the order they begin; the side worked first goes straight on from the strip it divides."""
    done: list[_Live] = []
    main, *others = strips
    number, live = _work(main, 1, [], done, carry)
    for index, strip in enumerate(others):
        begins, _ = _places(strip.worked == "rows", number)
        waiting = [one for one in live if one.rows[-1] == number - 1 or one.place == begins] if index == 0 else []
        _work(strip, number, waiting, done, carry)
    return tuple(Strand(one.colour, tuple(one.rows)) for one in done)


def ends_by_colour(strips: Sequence[Strip], carry: int) -> dict[str, int]:
    """Ends to weave in of each colour of one piece: two of every strand."""
    found: dict[str, int] = {}
    for strand in strands_of(strips, carry):
        found[strand.colour] = found.get(strand.colour, 0) + 2
    return found


def _work(strip: Strip, number: int, live: list[_Live], done: list[_Live], carry: int) -> tuple[int, list[_Live]]:
    """Works a strip's rows, from row `number` of the piece: the row after its last, and the strands that may go on."""
    turned, shifted = strip.worked == "rows", 0
    for row in strip.rows:
        begins, ends = _places(turned, number)
        if turned:
            live = [one for one in live if one.rows[-1] == number - 1 or not _steps_past(one, row, begins)]
        shifted += row.edge_changes()[0 if number % 2 else 1]
        colours, lines = segments(row, number)
        if len(colours) == 1:
            live = _one_colour(colours[0], number, begins, ends, live, done, carry)
        else:
            live = _blocks(colours, tuple(line - shifted for line in lines), number, live, done)
        number += 1
    return number, live


def _places(turned: bool, number: int) -> tuple[str, str]:
    if not turned:
        return ONE_PLACE, ONE_PLACE
    return ("starting", "far") if number % 2 else ("far", "starting")


def _steps_past(one: _Live, row: Row, begins: str) -> bool:
    """Whether a row leaves stitches, or slips over them, at the edge where a yarn rests: it can't climb there.

    A yarn that is taken up again may slip over them itself.
    """
    if one.place == begins and one.colour == row.runs[0].colour:
        return False
    kind = "slip over" if one.place == begins else "leave"
    return any(run.operation.kind == kind and run.times for run in row.runs)


def segments(row: Row, number: int) -> tuple[tuple[str, ...], tuple[int, ...]]:
    """A row's colours from the starting edge, and the stitches up to each line between them."""
    colours: list[str] = []
    made: list[int] = []
    for run in row.runs:
        size = run.operation.makes * run.times
        if colours and colours[-1] == run.colour:
            made[-1] += size
        elif size or not colours:
            colours.append(run.colour)
            made.append(size)
    if number % 2 == 0:
        colours, made = colours[::-1], made[::-1]
    return tuple(colours), tuple(sum(made[: index + 1]) for index in range(len(made) - 1))


def _one_colour(colour: str, number: int, begins: str, ends: str, live: list[_Live], done: list[_Live], carry: int) -> list[_Live]:
    going = next((one for one in live if one.colour == colour and one.block < 0 and _reaches(one, number, begins, carry)), None)
    if going is None:
        going = _Live(colour, [], ends)
        done.append(going)
    going.rows.append(number)
    going.place = ends
    return [going, *(one for one in live if one is not going and one.block < 0 and number - one.rows[-1] <= carry)]


def _reaches(one: _Live, number: int, begins: str, carry: int) -> bool:
    rested = number - 1 - one.rows[-1]
    return rested == 0 or (rested <= carry and one.place == begins)


def _blocks(colours: tuple[str, ...], lines: tuple[int, ...], number: int, live: list[_Live], done: list[_Live]) -> list[_Live]:
    """Blocks go on where the row before has the same ones between the same lines; else each begins anew."""
    before = [one for one in live if one.block >= 0 and one.rows[-1] == number - 1]
    if [one.colour for one in before] != list(colours) or any(one.lines != lines for one in before):
        before = [_Live(colour, [], "", index, lines) for index, colour in enumerate(colours)]
        done += before
    for one in before:
        one.rows.append(number)
    return before
