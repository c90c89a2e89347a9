"""Rows of stitch patterns in words: `1 sc, *ch 1, sk 1, 1 sc*` as it is printed, in US or UK terms."""

from gaugewright.instructions.nodes import Span
from gaugewright.instructions.wording import Book, Spans
from gaugewright.stitch_patterns.nodes import Chains, Element, Group, Hold, RowText, Skips, Stitches, used

COMMON_TOGETHER = 3
"""Up to so many worked together have an abbreviation of their own; more are told out."""

_POSTS = {"front post": "FP", "back post": "BP"}


def row_words(book: Book, row: RowText) -> Spans:
    """The whole row; its repeat between a star and "rep from *"."""
    parts = [_listed(book, row.before)] if row.before else []
    if row.repeat:
        after = used(row.after)
        kind = "pattern-repeat" if not row.after else "pattern-repeat-to-one" if after == 1 else "pattern-repeat-to"
        parts.append(book.part(kind, repeat=_listed(book, row.repeat), last=after))
    if row.after:
        parts.append(_listed(book, row.after))
    return _joined(parts)


def _listed(book: Book, elements: tuple[Element, ...]) -> Spans:
    return _joined([element_words(book, element) for element in elements])


def _joined(parts: list[Spans]) -> Spans:
    found: list[Span] = []
    for part in parts:
        found += [Span(", ")] if found else []
        found += part
    return tuple(found)


def element_words(book: Book, element: Element) -> Spans:
    """One element: "dc in next 3 sts", "sk next 2 sts", "(2 dc, ch 1, 2 dc) in next st"."""
    match element:
        case Chains(times=times):
            return book.part("pattern-chains", n=times)
        case Skips(times=1):
            return book.part("pattern-skip-one", sk=book.abbr("sk"))
        case Skips(times=times):
            return book.part("pattern-skip", n=times, sk=book.abbr("sk"))
        case Stitches(together=1):
            return _stitches(book, element)
        case Stitches(times=times):
            return book.part("pattern-over", stitch=_together(book, element), n=times * element.together)
        case Group(parts=(one,)) if one.times == 1:
            place = _place(book, element)
            return book.part("pattern-in", stitch=_in_place(book, one), place=place)
        case Group(parts=(one,)):
            return book.part("pattern-in", stitch=_in_place(book, one), place=_place(book, element))
        case Group(parts=parts):
            inner = _joined([_in_place(book, part) for part in parts])
            return book.part("pattern-group", parts=inner, place=_place(book, element))


def _stitches(book: Book, element: Stitches) -> Spans:
    name = _named(book, element.name, element.hold)
    where = f"pattern-{'post' if 'post' in element.hold else element.hold}"
    if element.times == 1:
        return book.part(f"{where}-one", stitch=name)
    return book.part(where, stitch=name, n=element.times)


def _in_place(book: Book, part: Stitches | Chains) -> Spans:
    """What is worked in one place, without the place."""
    if isinstance(part, Chains):
        return book.part("pattern-chains", n=part.times)
    if part.together > 1:
        return _together(book, part)
    name = _named(book, part.name, part.hold)
    return (Span(name),) if part.times == 1 else book.part("pattern-so-many", n=part.times, stitch=name)


def _together(book: Book, part: Stitches) -> Spans:
    if part.together <= COMMON_TOGETHER and part.hold == "both":
        return (Span(book.abbr(f"{part.name}{part.together}tog")),)
    return book.part("pattern-together", n=part.together, stitch=_named(book, part.name, part.hold))


def _named(book: Book, name: str, hold: Hold) -> str:
    return book.abbr(f"{_POSTS[hold]}{name}") if hold in _POSTS else book.abbr(name)


def _place(book: Book, group: Group) -> Spans:
    return book.part("pattern-space", n=group.space) if group.space else book.part("pattern-same")
