"""Changes spread evenly round a round or along a row, and stretches shared over rounds.

In: a count and how many stitches it gains or loses. Out: a `Spread`, the plain stitches before
each change, that uses exactly the stitches there are. An increase works two stitches into one,
a decrease works two together, so one round at most doubles or halves its count.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import Literal

from gaugewright.rounding import half_up
from gaugewright.vocabulary import Spreading

Kind = Literal["increase", "decrease"]
Along = Literal["round", "row", "row with half gaps"]
Remainder = Literal["in one block", "by turns", "left at the end"]

_USED = {"increase": 1, "decrease": 2}


class SpreadImpossible(ValueError):
    """A count out of reach; `least` and `most` are what can be reached."""

    def __init__(self, stitches: int, wanted: int, rounds: int = 1) -> None:
        self.least, self.most = -(-stitches // 2**rounds), stitches * 2**rounds
        within = "one round" if rounds == 1 else f"{rounds} rounds"
        super().__init__(
            f"{stitches} sts cannot become {wanted} in {within}, only {self.least} to {self.most}"
        )


@dataclass(frozen=True, slots=True)
class Group:
    """`plain` stitches and `changes` changes, `times` times."""

    plain: int
    times: int
    changes: int = 1


@dataclass(frozen=True, slots=True)
class Spread:
    """`leading` plain stitches, the groups in order, `trailing` plain stitches.

    In a group the plain stitches come before the change, or after it if `change_first`.

    >>> s = Spread("increase", 0, (Group(1, 6),), 0)
    >>> s.stitches, s.made, s.changes, s.positions()
    (12, 18, 6, (2, 4, 6, 8, 10, 12))
    """

    kind: Kind
    leading: int
    groups: tuple[Group, ...]
    trailing: int
    change_first: bool = False

    @property
    def changes(self) -> int:
        """Stitches gained or lost."""
        return sum(group.times * group.changes for group in self.groups)

    @property
    def stitches(self) -> int:
        """Stitches used, of the round before."""
        return sum(expand(self)) + _USED[self.kind] * self.changes

    @property
    def made(self) -> int:
        """Stitches at the end."""
        return self.stitches + (self.changes if self.kind == "increase" else -self.changes)

    def positions(self) -> tuple[int, ...]:
        """For each change the last stitch of the round before that it uses, from 1."""
        used, found = 0, []
        for gap in expand(self)[:-1]:
            used += gap + _USED[self.kind]
            found.append(used)
        return tuple(found)


def expand(spread: Spread) -> tuple[int, ...]:
    """The plain stitches before each change and, last, those after the last one.

    >>> expand(Spread("decrease", 1, (Group(2, 2),), 3))
    (3, 2, 3)
    """
    gaps = [spread.leading]
    for group in spread.groups:
        for _ in range(group.times):
            if spread.change_first:
                gaps += [0] * (group.changes - 1) + [group.plain]
            else:
                gaps[-1] += group.plain
                gaps += [0] * group.changes
    gaps[-1] += spread.trailing
    return tuple(gaps)


def spread(
    stitches: int,
    changes: int,
    kind: Kind,
    shifted: bool = False,
    along: Along = "round",
    remainder: Remainder = "in one block",
) -> Spread:
    """Spreads changes so that the gaps between them differ by at most one stitch.

    `shifted` starts a round half a gap later: changes of one round then stand between those
    of the last, and a disc stays round instead of growing corners. A row has a gap at both
    edges too: a whole one, or half of one ("row with half gaps"), as sources differ.

    `remainder` says where the odd stitches go. In one block: the longer gaps first, which
    words shortest. By turns: longer and shorter ones mixed as evenly as they go. Left at the
    end: gaps are cut down to a whole or a half stitch and the rest follows the last change.

    >>> spread(51, 4, "increase").groups
    (Group(plain=12, times=3, changes=1), Group(plain=11, times=1, changes=1))
    >>> spread(18, 6, "increase", shifted=True)
    Spread(kind='increase', leading=0, groups=(Group(plain=1, times=1, changes=1), \
Group(plain=2, times=5, changes=1)), trailing=1, change_first=False)
    >>> spread(40, 4, "increase", along="row").positions()
    (8, 16, 24, 32)
    >>> spread(10, 6, "decrease")
    Traceback (most recent call last):
    ...
    gaugewright.grading.spread.SpreadImpossible: 10 sts cannot become 4 in one round, only 5 to 20
    """
    if stitches < 0 or changes < 0:
        raise ValueError(f"no spread of {changes} changes over {stitches} stitches")
    plain = stitches - _USED[kind] * changes
    if plain < 0:
        raise SpreadImpossible(stitches, stitches + changes * (1 if kind == "increase" else -1))
    if changes == 0:
        return Spread(kind, 0, (), stitches)
    if 0 < plain < changes and along == "round" and remainder == "in one block":
        return Spread(kind, 0, _crowded(plain, changes), 0, change_first=not shifted)
    if remainder == "left at the end":
        gaps = _cut_down(plain, changes, _USED[kind])
    else:
        half = shifted or along == "row with half gaps"
        sections = _half_at_edges if half else _row if along == "row" else _round
        gaps = sections(plain, changes, remainder == "by turns")
    if gaps[0] == 0 and gaps[-1] > 0:
        return Spread(kind, 0, _grouped(gaps[1:]), 0, change_first=True)
    return Spread(kind, 0, _grouped(gaps[:-1]), gaps[-1])


def _crowded(plain: int, changes: int) -> tuple[Group, ...]:
    """More changes than plain stitches: the plain ones stand singly, evenly among the changes.

    Why: blocks of gaps of one and gaps of none would heap the changes up on one side of the round.
    """
    few, more = divmod(changes, plain)
    parts = (Group(1, more, few + 1), Group(1, plain - more, few))
    return tuple(group for group in parts if group.times)


def _round(plain: int, changes: int, by_turns: bool) -> tuple[int, ...]:
    """A gap before each change, none after the last."""
    return (*_shared(plain, changes, by_turns), 0)


def _row(plain: int, changes: int, by_turns: bool) -> tuple[int, ...]:
    """A gap more than changes; odd stitches go to the two edges first, so that the row looks
    the same from both."""
    short, longer = divmod(plain, changes + 1)
    last, first = longer > 0, longer > 1
    inner = plain - 2 * short - last - first
    middle = _shared(inner, changes - 1, by_turns) if changes > 1 else ()
    return (short + first, *middle, short + last)


def _half_at_edges(plain: int, changes: int, by_turns: bool) -> tuple[int, ...]:
    """As many gaps as changes, one of the shorter ones cut in two for the beginning and end."""
    short = plain // changes
    middle = _shared(plain - short, changes - 1, by_turns) if changes > 1 else ()
    return (short // 2, *middle, short - short // 2)


def _cut_down(plain: int, changes: int, used: int) -> tuple[int, ...]:
    """Gaps of the same length, or two by turns where half a stitch is over (DROPS lesson)."""
    halves = 2 * plain // changes
    gaps = [(halves + i % 2) // 2 for i in range(changes)]
    return (*gaps, plain - sum(gaps))


def _shared(plain: int, gaps: int, by_turns: bool) -> tuple[int, ...]:
    """Plain stitches over gaps: longer ones first, or mixed so that each prefix is rounded up."""
    short, longer = divmod(plain, gaps)
    if by_turns:
        marks = [-(-plain * i // gaps) for i in range(gaps + 1)]
        return tuple(b - a for a, b in zip(marks, marks[1:], strict=False))
    return (short + 1,) * longer + (short,) * (gaps - longer)


def _grouped(gaps: tuple[int, ...]) -> tuple[Group, ...]:
    return tuple(Group(gap, len(list(same))) for gap, same in groupby(gaps))


def spreads_of(counts: tuple[int, ...], chain: int, habit: Spreading = "shared out") -> Iterator[Spread | None]:
    """Every second shaped round starts half a gap later, so that changes don't stack into corners.

    Where the remainder is left at the end of the round, every round starts alike, as published ones do.
    """
    remainder: Remainder = "left at the end" if habit == "left at the end" else "in one block"
    shifted = False
    for before, after in zip(counts, counts[1:], strict=False):
        if after == before:
            yield None
            continue
        yield spread(before - chain, abs(after - before), "increase" if after > before else "decrease", shifted, remainder=remainder)
        shifted = not shifted


def ramp(start: int, end: int, rounds: int) -> tuple[int, ...]:
    """Counts after each of some rounds that lead from one count to another.

    Each round takes the same share (a geometric ramp), not the same number: gathers then look
    alike from round to round, and no round is asked for more than it must be. Zimmermann's
    yoke does so with two thirds three times: 268, 179, 120, 80.

    >>> ramp(268, 80, 3), ramp(10, 80, 3), ramp(12, 12, 2)
    ((179, 120, 80), (20, 40, 80), (12, 12))
    """
    if start < 1 or end < 1 or rounds < 0:
        raise ValueError(f"no ramp from {start} to {end} stitches in {rounds} rounds")
    if not -(-start // 2**rounds) <= end <= start * 2**rounds:
        raise SpreadImpossible(start, end, rounds)
    return tuple(_ramp(start, end, rounds))


def _ramp(start: int, end: int, rounds: int) -> Iterator[int]:
    """Rounded shares, held within one doubling or halving of the count before and of what the
    rounds still to come can make of it."""
    count = start
    for done in range(1, rounds + 1):
        share = half_up(start * (end / start) ** (done / rounds))
        reach = 2 ** (rounds - done)
        least, most = -(-count // 2), 2 * count
        count = max(min(share, most, end * reach), least, -(-end // reach))
        yield count
