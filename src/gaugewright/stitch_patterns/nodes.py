"""What a row of a stitch pattern says: stitches, chains, stitches skipped, groups in one place.

    3 dc            a stitch in each of the next three stitches
    3 dc blo        the same in the back loops (flo: the front loops)
    2 fpdc          round the posts of the next two, from the front (bpdc: from the back)
    dc3tog          three worked together, over the next three stitches
    ch 2            two chains, which are stitches of this row
    sk 2            two stitches passed over
    5 dc in 1       five in the same stitch;  (2 dc, ch 1, 2 dc) in 1 likewise
    dc4tog in 1     four worked together in one stitch: a cluster
    3 sc in ch 5    in the space under the five chains of the row before
"""

from dataclasses import dataclass

from gaugewright.vocabulary import Hold as Hold


@dataclass(frozen=True, slots=True)
class Stitches:
    """So many of one stitch, each in a stitch of its own; `together` of them pulled through as one."""

    name: str
    times: int = 1
    hold: Hold = "both"
    together: int = 1
    column: int = 0


@dataclass(frozen=True, slots=True)
class Chains:
    """So many chains."""

    times: int
    column: int = 0


@dataclass(frozen=True, slots=True)
class Skips:
    """So many stitches of the row before passed over."""

    times: int
    column: int = 0


@dataclass(frozen=True, slots=True)
class Group:
    """Several worked in one place: in one stitch, or in the space under `space` chains."""

    parts: tuple[Stitches | Chains, ...]
    space: int = 0
    column: int = 0


Element = Stitches | Chains | Skips | Group


@dataclass(frozen=True, slots=True)
class RowText:
    """One row: what stands before its repeat, the repeat (worked as often as fits), what stands after it."""

    text: str
    before: tuple[Element, ...]
    repeat: tuple[Element, ...]
    after: tuple[Element, ...]

    def worked(self, repeats: int) -> tuple[Element, ...]:
        """All elements, the repeat so often."""
        return (*self.before, *(self.repeat * repeats), *self.after)


def uses(element: Element) -> int:
    """Stitches of the row before that an element works into or passes over.

    >>> uses(Stitches("dc", 3)), uses(Stitches("dc", 1, together=3)), uses(Group((Chains(1),), space=5)), uses(Chains(3))
    (3, 3, 5, 0)
    """
    match element:
        case Stitches(times=times, together=together):
            return times * together
        case Skips(times=times):
            return times
        case Group(space=space):
            return space or 1
        case Chains():
            return 0


def makes(element: Element) -> int:
    """Stitches of this row that an element makes; chains are stitches.

    >>> makes(Stitches("dc", 1, together=3)), makes(Group((Stitches("dc", 2), Chains(1), Stitches("dc", 2)))), makes(Skips(2))
    (1, 5, 0)
    """
    match element:
        case Stitches(times=times) | Chains(times=times):
            return times
        case Group(parts=parts):
            return sum(part.times for part in parts)
        case Skips():
            return 0


def used(elements: tuple[Element, ...]) -> int:
    """What all of them use."""
    return sum(uses(element) for element in elements)


def made(elements: tuple[Element, ...]) -> int:
    """What all of them make."""
    return sum(makes(element) for element in elements)


def stitches_of(element: Element) -> tuple[Stitches, ...]:
    """The stitches of an element, one of a group each by itself; none of chains and skips."""
    match element:
        case Stitches():
            return (element,)
        case Group(parts=parts):
            return tuple(part for part in parts if isinstance(part, Stitches))
        case Chains() | Skips():
            return ()
