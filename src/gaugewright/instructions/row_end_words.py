"""How stitches are spread over row ends: how many of these take several, and how many are passed over."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from gaugewright.grading.model import PickUp
from gaugewright.instructions.nodes import Span
from gaugewright.instructions.steps import edge_word, only
from gaugewright.instructions.wording import Book, Spans, listed
from gaugewright.rounding import half_up
from gaugewright.sized import Sized

PARTS = 4
"""Parts that an edge is divided into."""


class Taken(NamedTuple):
    """Of so many row ends `some` take a stitch more than the others."""

    some: int
    rows: int


def row_end_sentences(book: Book, piece: str, ups: Sized[tuple[PickUp, ...]], stitch: str, titles: Mapping[str, str]) -> Iterator[Spans]:
    """Where to put markers, then how many row ends take how many stitches: edge by edge where there are
    several.
    """
    name, fact = book.abbr(stitch), f"{piece}.row-ends"
    alone = all(len(one) == 1 and not one[0].level and not one[0].corners for one in ups)
    if alone:
        yield book.sentence("pick-up-quarters-one", fact, n=ups.map(lambda one: half_up(one[0].stitches / PARTS)), stitch=name)
    else:
        yield book.sentence("pick-up-quarters")
    several = sum(1 for up in ups.values[0] if up.rows) > 1
    for edge, names, taken in _edges(ups, titles):
        along = {"edge": edge_word(book, edge), "piece": listed(book, names)} if several else {}
        yield from _taken(book, f"{fact}.{edge}", taken, stitch, along)


def _edges(ups: Sized[tuple[PickUp, ...]], titles: Mapping[str, str]) -> Iterator[tuple[str, list[str], Sized[dict[int, Taken]]]]:
    """Edges, those of one name and the same numbers together, with the pieces that have them."""
    found: dict[tuple[str, tuple[tuple[int, int], ...]], tuple[list[str], Sized[dict[int, Taken]]]] = {}
    for index, up in enumerate(ups.values[0]):
        own = ups.map(lambda one, i=index: one[i])  # type: ignore[misc]
        key = up.edge, tuple((one.rows, one.stitches - one.level) for one in own)
        found.setdefault(key, ([], own.map(lambda one: row_ends_taken((one,)))))[0].append(titles[up.piece])
    for (edge, _), (names, taken) in found.items():
        yield edge, list(dict.fromkeys(names)), taken


def _taken(book: Book, fact: str, taken: Sized[dict[int, Taken]], stitch: str, along: Mapping[str, str] = {}) -> Iterator[Spans]:
    """A sentence for each number of stitches that row ends take, with its sizes; `along` names the edge where it is one of several."""
    name = book.abbr(stitch)
    several, passed = ("pick-up-several-along", "pick-up-passed-along") if along else ("pick-up-several", "pick-up-passed")
    for others in sorted({least for one in taken for least in one}):
        sizes = tuple(label for label, one in taken.items() if others in one)
        here = Sized(sizes, tuple(taken[label][others] for label in sizes))
        some, rows = here.map(lambda one: one.some), here.map(lambda one: one.rows)
        prefix = (*only(book, sizes), Span(" ")) if len(sizes) < len(book.labels) else ()
        if others:
            yield (*prefix, *book.sentence(several, fact, some=some, rows=rows, more=others + 1, others=others, stitch=name, **along))
        else:
            yield (*prefix, *book.sentence(passed, fact, some=here.map(lambda one: one.rows - one.some), rows=rows, **along))


def row_ends_taken(ups: tuple[PickUp, ...]) -> dict[int, Taken]:
    """By how many stitches the others take (0: they are passed over), the row ends that take one more; edges whose
    row ends take one each say nothing.

    >>> row_ends_taken((PickUp("shawl", "long edge", 130, 66), PickUp("shawl", "side", 20, 20), PickUp("shawl", "top", 30, 40)))
    {1: Taken(some=64, rows=66), 0: Taken(some=30, rows=40)}
    """
    found: dict[int, Taken] = {}
    for up in ups:
        along = up.stitches - up.level
        if up.rows and along > 0 and along != up.rows:
            others = (along - 1) // up.rows
            before = found.get(others, Taken(0, 0))
            found[others] = Taken(before.some + along - others * up.rows, before.rows + up.rows)
    return found
