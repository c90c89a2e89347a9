"""Where the stitches of a stitch pattern's chart stand: each with its feet on the row before and its top.

In: a pattern. Out: rows of placed stitches in units of a stitch, x to the right and y up. A right-handed maker
reads right-side rows from right to left and wrong-side rows from left to right; rounds all one way.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugewright.stitch_patterns.nodes import Chains, Element, Group, Hold, RowText, Skips, Stitches, used
from gaugewright.stitch_patterns.pattern import StitchPattern, opening_stitch
from gaugewright.stitch_patterns.working import repeats_over
from gaugewright.trade.stitches import stitch

Point = tuple[float, float]

HEIGHTS = {"ch": 0.6, "sl st": 0.4, "sc": 1.0, "hdc": 1.5, "dc": 2.0, "tr": 2.8}
"""Heights in a chart, in stitch widths: only so that taller stitches look taller."""

GAP, CHAIN_GAP = 0.8, 0.6
"""Least distance of two tops, and of a chain from its neighbour."""


@dataclass(frozen=True, slots=True)
class ChartStitch:
    """One symbol. `feet` are where it is worked, `bases` which stitches of the row before those are (counted in the
    order in which this row meets them); a turning chain (`turns`) is a column of chains, in a stitch's place or beside it."""

    name: str
    feet: tuple[Point, ...]
    top: Point
    bases: tuple[int, ...]
    hold: Hold = "both"
    in_one: bool = False
    turns: int = 0
    counts: bool = True


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One row: its number (0 for the plain row below the pattern), whether it is read from right to left, its stitches
    in order of working, and the y of its foot and its head."""

    number: int
    leftward: bool
    stitches: tuple[ChartStitch, ...]
    foot: float
    head: float


@dataclass(frozen=True, slots=True)
class Chart:
    """All rows from the bottom up; `repeat` are the x at which one repeat begins and ends, `again` the rows repeated."""

    rows: tuple[ChartRow, ...]
    repeat: tuple[float, float]
    again: tuple[int, int]
    in_rounds: bool


def chart_of(pattern: StitchPattern, in_rounds: bool) -> Chart:
    """The chart of a pattern over two repeats, four where they are narrow."""
    repeats = 2 if pattern.of > 3 else 4
    count = pattern.count(repeats, in_rounds)
    rows = [_plain_row(pattern.plain, count)]
    for number, text in enumerate(pattern.cycle(in_rounds), start=1):
        leftward = in_rounds or number % 2 == 1
        rows.append(_row(number, text, rows[-1], leftward, in_rounds))
    first = pattern.cycle(in_rounds)[0]
    before = used(first.before)
    right = count - before - 0.5
    return Chart(tuple(rows), (right - pattern.of, right), (1 if in_rounds else len(pattern.begun) + 1, len(rows) - 1), in_rounds)


def _plain_row(name: str, count: int) -> ChartRow:
    """The plain row that the pattern stands on, read from left to right so that row 1 is read from right to left."""
    height = HEIGHTS[name]
    stitches = tuple(ChartStitch(name, ((float(x), 0.0),), (float(x), height), (x,)) for x in range(count))
    return ChartRow(0, False, stitches, 0.0, height)


@dataclass(slots=True)
class _Made:
    """A stitch on its way to its place along the row: `u` in the direction of working."""

    stitch: ChartStitch
    u: float
    gap: float


def _row(number: int, text: RowText, below: ChartRow, leftward: bool, in_rounds: bool) -> ChartRow:
    sign = -1.0 if leftward else 1.0
    ground = [one for one in below.stitches if one.counts]
    if not in_rounds or below.number == 0:  # rounds meet stitches in the order in which they were made
        ground = ground[::-1]
    elements = text.worked(repeats_over(text, len(ground)))
    foot = below.head
    made = _placed(elements, [one.top for one in ground], foot, sign)
    if not in_rounds:
        made = _with_turn(made, elements[0], foot)
    us = _spread([one.u for one in made], [one.gap for one in made])
    stitches = tuple(_at(one.stitch, sign * u) for one, u in zip(made, us, strict=True))
    return ChartRow(number, leftward, _arched(stitches), foot, max(one.top[1] for one in stitches))


def _placed(elements: Sequence[Element], ground: Sequence[Point], foot: float, sign: float) -> list[_Made]:
    """Every stitch with its feet; chains wait for their neighbours."""
    found: list[_Made] = []
    waiting: list[tuple[int, int]] = []
    at = 0
    for element in elements:
        match element:
            case Skips(times=times):
                at += times
            case Chains(times=times):
                waiting.append((len(found), times))
                found += [_Made(ChartStitch("ch", (), (0.0, foot + HEIGHTS["ch"]), ()), 0.0, CHAIN_GAP) for _ in range(times)]
            case Stitches(times=times, together=together):
                for _ in range(times):
                    found.append(_stitch(element, range(at, at + together), ground, foot, sign))
                    at += together
            case Group(space=space):
                reach = range(at, at + (space or 1))
                found += _group(element, reach, ground, foot, sign)
                at += space or 1
    for first, times in waiting:
        _hang(found, first, times)
    return found


def _stitch(element: Stitches, bases: range, ground: Sequence[Point], foot: float, sign: float) -> _Made:
    feet = tuple(ground[base] for base in bases)
    u = sum(sign * x for x, _ in feet) / len(feet)
    return _Made(ChartStitch(element.name, feet, (0.0, foot + HEIGHTS[element.name]), tuple(bases), element.hold), u, GAP)


def _group(group: Group, bases: range, ground: Sequence[Point], foot: float, sign: float) -> list[_Made]:
    """All from one foot: a stitch's top, or the middle of a space."""
    xs, ys = zip(*(ground[base] for base in bases), strict=True)
    at = (sum(xs) / len(xs), max(ys) if group.space else ys[0])
    parts = [(part, number) for part in group.parts for number in range(part.times)]
    found = []
    for index, (part, _) in enumerate(parts):
        u = sign * at[0] + (index - (len(parts) - 1) / 2) * GAP
        if isinstance(part, Chains):
            one = ChartStitch("ch", (), (0.0, foot + HEIGHTS["ch"] + 1.0), ())
        else:
            one = ChartStitch(part.name, (at,) * part.together, (0.0, foot + HEIGHTS[part.name]), tuple(bases), part.hold, part.together > 1)
        found.append(_Made(one, u, GAP if one.name != "ch" else CHAIN_GAP))
    return found


def _hang(found: list[_Made], first: int, times: int) -> None:
    """Chains evenly between the stitches on both sides of them; at a row's end, on from the last one."""
    low = found[first - 1].u if first else found[first + times].u - times * CHAIN_GAP
    after = next((one.u for one in found[first + times :] if one.stitch.name != "ch" or one.u), None)
    high = low + (times + 1) * CHAIN_GAP if after is None else after
    for index in range(times):
        found[first + index].u = low + (high - low) * (index + 1) / (times + 1)


def _with_turn(made: list[_Made], first: Element, foot: float) -> list[_Made]:
    """The turning chain in front: instead of the first stitch where it counts, beside it where it doesn't."""
    name, counts = opening_stitch(first)
    chains = stitch(name).chains
    if not chains:
        return made
    head, *others = made
    top = (0.0, foot + HEIGHTS[name])
    turn = ChartStitch(name, head.stitch.feet[:1] if counts else (), top, head.stitch.bases if counts else (), turns=chains, counts=counts)
    if counts:
        return [_Made(turn, head.u, GAP), *others]
    return [_Made(turn, head.u - GAP, GAP), *made]


def _spread(wanted: Sequence[float], gaps: Sequence[float]) -> list[float]:
    """Positions nearest to the wanted ones with at least the gaps between neighbours (pooled neighbours share their mean).

    >>> _spread([0.0, 0.0, 3.0], [1.0, 1.0, 1.0])
    [-0.5, 0.5, 3.0]
    """
    offsets, total = [], 0.0
    for index, gap in enumerate(gaps):
        total += (gap + gaps[index - 1]) / 2 if index else 0.0
        offsets.append(total)
    pools: list[list[float]] = []
    for value, offset in zip(wanted, offsets, strict=True):
        pools.append([value - offset])
        while len(pools) > 1 and _mean(pools[-2]) > _mean(pools[-1]):
            last = pools.pop()
            pools[-1] += last
    flat = [_mean(pool) for pool in pools for _ in pool]
    return [value + offset for value, offset in zip(flat, offsets, strict=True)]


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values)


def _at(one: ChartStitch, x: float) -> ChartStitch:
    return ChartStitch(one.name, one.feet, (x, one.top[1]), one.bases, one.hold, one.in_one, one.turns, one.counts)


def _arched(stitches: tuple[ChartStitch, ...]) -> tuple[ChartStitch, ...]:
    """Runs of three chains or more hang in an arch."""
    found = list(stitches)
    first = 0
    while first < len(found):
        last = first
        while last < len(found) and found[last].name == "ch":
            last += 1
        length = last - first
        if length > 2:
            for index in range(first, last):
                part = (index - first + 1) / (length + 1)
                x, y = found[index].top
                lifted = ChartStitch("ch", (), (x, y + 2.4 * part * (1 - part)), ())
                found[index] = lifted
        first = max(last, first + 1)
    return tuple(found)

