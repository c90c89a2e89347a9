"""A stitch pattern whole: its rows and rounds, and what has to be true of them at any number of repeats."""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugewright.stitch_patterns.nodes import Chains, Element, Group, RowText, Skips, Stitches, made, stitches_of
from gaugewright.stitch_patterns.parser import PatternError
from gaugewright.stitch_patterns.working import plain_ground, repeats_over, work_row
from gaugewright.trade.stitches import stitch

TRIED = (2, 3, 4)
"""Repeats at which a pattern is worked through: counts are linear in them, so what holds for two holds for all."""


@dataclass(frozen=True, slots=True)
class StitchPattern:
    """A pattern over a multiple of `of` stitches plus `plus`: `begun` is worked once, `rows` again and again.

    `rounds` is the same without edges, for work in rounds (a multiple of `of`). `plain` is the stitch of
    plain rows and of edge stitches.
    """

    key: str
    title: str
    of: int
    plus: int
    plain: str
    begun: tuple[RowText, ...]
    rows: tuple[RowText, ...]
    rounds: tuple[RowText, ...] = ()
    note: str = ""

    def cycle(self, in_rounds: bool) -> tuple[RowText, ...]:
        """All rows in order of working: those worked once, then those repeated."""
        return self.rounds if in_rounds else (*self.begun, *self.rows)

    def after(self, phase: int, in_rounds: bool) -> int:
        """The row, counted from 0, that follows row `phase`."""
        return (phase + 1) if phase + 1 < len(self.cycle(in_rounds)) else (0 if in_rounds else len(self.begun))

    def count(self, repeats: int, in_rounds: bool) -> int:
        """Stitches that so many repeats are worked over."""
        return self.of * repeats + (0 if in_rounds else self.plus)

    @property
    def sided(self) -> bool:
        """Whether its two faces differ, as loops and posts make them: its first row is then a right-side one."""
        rows = (*self.begun, *self.rows)
        return any(one.hold != "both" for row in rows for element in (*row.before, *row.repeat, *row.after) for one in stitches_of(element))

    def counts(self, repeats: int, in_rounds: bool) -> tuple[int, ...]:
        """Stitches after each row of the cycle.

        >>> from gaugewright.stitch_patterns.parser import parse_row
        >>> rows = tuple(parse_row(text) for text in ("1 sc, *ch 5, sk 3, 1 sc*", "1 sc, *3 sc in ch 5, 1 sc*"))
        >>> StitchPattern("arches", "Arches", 4, 1, "sc", (), rows).counts(3, False)
        (19, 13)
        """
        found, before = [], self.count(repeats, in_rounds)
        for row in self.cycle(in_rounds):
            before = made(row.worked(repeats_over(row, before)))
            found.append(before)
        return tuple(found)

    def level(self, in_rounds: bool) -> tuple[bool, ...]:
        """For each row of the cycle whether it leaves as many stitches as the pattern is worked over: there it may end."""
        found = [self.counts(repeats, in_rounds) for repeats in TRIED]
        return tuple(all(counts[row] == self.count(repeats, in_rounds) for counts, repeats in zip(found, TRIED, strict=True)) for row in range(len(found[0])))


@dataclass(frozen=True, slots=True)
class PatternFault:
    """What is wrong, at which row of `set_up`, `rows` or `rounds` (group, number from 0), at which column."""

    group: str
    number: int
    message: str
    column: int
    hint: str


def pattern_faults(pattern: StitchPattern) -> Iterator[PatternFault]:
    """Everything that keeps the pattern's rows from following one another; the first fault of each way of working."""
    for in_rounds in (False, True):
        if pattern.cycle(in_rounds):
            fault = _fault(pattern, in_rounds)
            if fault is not None:
                yield fault


def _fault(pattern: StitchPattern, in_rounds: bool) -> PatternFault | None:
    cycle = pattern.cycle(in_rounds)
    for number, row in enumerate(cycle):
        head = next(iter((*row.before, *row.repeat, *row.after)), None)
        if not _opens(head):
            return _placed(pattern, in_rounds, number, PatternError("a row begins with a stitch, so that its turning chain is known", 0, "begin it with a stitch, such as `1 sc`"))
    for repeats in TRIED:
        ground, number = plain_ground(pattern.count(repeats, in_rounds), pattern.plain), 0
        for _ in range(2 * len(cycle)):  # twice through, so that each row follows the one before it in the repeat too
            try:
                ground = work_row(cycle[number], ground, not in_rounds)
            except PatternError as error:
                return _placed(pattern, in_rounds, number, error)
            number = pattern.after(number, in_rounds)
    if not any(pattern.level(in_rounds)[0 if in_rounds else len(pattern.begun) :]):
        of = pattern.count(1, in_rounds) - pattern.of
        message = f"no row of the repeat leaves the pattern's own count, a multiple of {pattern.of}{f' plus {of}' if of else ''}, so it can't be ended"
        return _placed(pattern, in_rounds, len(cycle) - 1, PatternError(message, 0, "let one row of the repeat come back to that count"))
    return None


def _opens(element: Element | None) -> bool:
    match element:
        case Stitches() | Group(parts=(Stitches(), *_)):
            return True
        case Chains() | Skips() | Group() | None:
            return False


def _placed(pattern: StitchPattern, in_rounds: bool, number: int, error: PatternError) -> PatternFault:
    group = "rounds" if in_rounds else "set_up" if number < len(pattern.begun) else "rows"
    within = number if in_rounds or number < len(pattern.begun) else number - len(pattern.begun)
    return PatternFault(group, within, error.message, error.column, error.hint)


def opening_stitch(element: Element) -> tuple[str, bool]:
    """The stitch a row begins with, whose height is its turning chain's, and whether that chain counts as it.

    Round a post, in a space or drawn together with others a stitch can't be a chain.

    >>> from gaugewright.stitch_patterns.parser import parse_row
    >>> [opening_stitch(parse_row(text).before[0]) for text in ("3 dc in 1", "1 fpdc", "2 sc", "dc2tog")]
    [('dc', True), ('dc', False), ('sc', False), ('dc', False)]
    """
    first = element.parts[0] if isinstance(element, Group) else element
    assert isinstance(first, Stitches)  # a row that begins otherwise is a fault of its pattern
    chained = first.together == 1 and first.hold == "both" and not (isinstance(element, Group) and element.space)
    return first.name, chained and stitch(first.name).counts_unless_set
