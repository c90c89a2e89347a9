"""Bands worked sideways in words: joined to their edges row by row, or sewn on afterwards."""

from collections.abc import Iterator, Mapping

from gaugewright.grading.join_model import Join, JoinRun
from gaugewright.grading.model import ChainStart
from gaugewright.grading.ratio import best_ratio, sewing_ratio
from gaugewright.instructions.cloth_words import each, opening
from gaugewright.instructions.nodes import Align, Block, Paragraph, Table
from gaugewright.instructions.steps import count_end, edge_word, first_yarn, step, tail_length, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans, listed, ordinal
from gaugewright.sized import Sized
from gaugewright.trade.foundation import foundation

INTO_ROW_ENDS = {"whole stitch": "pick-up-edge-whole", "half stitch": "pick-up-edge-half", "edge to edge": "pick-up-edge-none"}
LARGEST = 16
"""Small numbers come first; up to these a ratio is found within a seam's share of every edge."""

Titles = Mapping[str, str]


def joins_of(view: PieceView) -> Sized[Join] | None:
    """What the piece is joined or sewn to along its rows; None for all other pieces."""
    return view.plans.map(lambda plan: plan.start.join) if view.piece.start.joined else None  # type: ignore[union-attr,return-value,arg-type]


def is_joined(view: PieceView) -> bool:
    """Whether each second row ends in slip stitches into an edge."""
    return view.piece.start.joined and not view.piece.start.sewn


def joined_start(book: Book, view: PieceView, names: Titles, titles: Titles) -> list[Paragraph]:
    """The chain that hangs from the edge, and the row back to it."""
    plan, cloth, first = view.first, view.first.start_cloth, _first_join(view)
    chains: Sized[int] = view.plans.map(lambda one: one.start.chains if isinstance(one.start, ChainStart) else 0)
    kind = "join-begin" if not first.ring else "join-begin-seam" if len(view.piece.start.edges) > 1 else "join-begin-round"
    edges = tuple(view.piece.start.edges)
    sentences = [book.sentence(kind, view.piece.key, colour=first_yarn(book, view, names), slst=book.abbr("sl st"), chains=chains, edges=_edges(book, edges, titles))]
    sentences += [book.sentence("join-order")] if len(edges) > 1 else []
    begin = foundation(cloth.stitch, plan.start.stitches, cloth.chains, cloth.counts)
    row = book.sentence("join-first-row", f"{view.piece.key}.row1", stitch=book.abbr(cloth.stitch), ordinal=ordinal(begin.first_into))
    one = view.plans.map(lambda _plan: 1)
    label = f"{book.row_word(False)}\u00a01 (RS):"
    return [step("Foundation:", *sentences), step(label, row, count=count_end(book, f"{view.piece.key}.row1", view.stitches(one)))]


def joined_blocks(book: Book, view: PieceView, titles: Titles) -> Iterator[Block]:
    """The rows that go out and those that come back, how they are joined, and how far."""
    joins, cloth = joins_of(view), view.first.start_cloth
    assert joins is not None
    across = each(book, cloth, "rows")
    yield step(book.words["even-rows"], book.sentence("join-row-out", each=across))
    last = joins.map(lambda join: join.rows)
    if max(last.values) > 2:
        open_row = opening(book, cloth, "rows")
        kind = "join-row-back" if open_row else "join-row-back-no-chain"
        yield step(book.words["odd-rows"], book.sentence(kind, open=open_row, each=across))
    for index, run in enumerate(_first_join(view).runs):
        yield from _run_blocks(book, view, joins.map(lambda join, i=index: join.runs[i]), run, titles, len(_first_join(view).runs) > 1)  # type: ignore[misc]
    length = book.sentence("join-length", view.piece.key, length=view.height(last))
    yield step(to_row(book, view, last), length, count=count_end(book, f"{view.piece.key}.0.0", view.stitches(last)))


def _run_blocks(book: Book, view: PieceView, runs: Sized[JoinRun], first: JoinRun, titles: Titles, several: bool) -> Iterator[Block]:
    """How the joins of one run take its places: all alike, or so many of each kind by a table."""
    fact = f"{view.piece.key}.join.{first.edges[0][0]}"
    where = [book.sentence("join-along", edges=_edges(book, first.edges, titles))] if several else []
    counts = runs.map(lambda run: run.counts())
    kinds = sorted({take for one in counts for take in one})
    words = _place_words(book, first)
    ways = [_way(book, kind, words) for kind in kinds]
    told = book.sentence("join-each" if len(kinds) == 1 else "join-by-table", fact, slst=book.abbr("sl st"), ways=_any_of(book, ways))
    into = [book.sentence(INTO_ROW_ENDS[view.piece.start.take_up])] if first.along_rows else []
    yield step(book.words["to-join"], *where, told, *into, _ratio(book, runs, fact, words))
    if len(kinds) > 1:
        yield _table(book, view, runs, dict(zip(kinds, ways, strict=True)))


def _way(book: Book, kind: int, words: Mapping[str, str]) -> str:
    """Where a join over so many places goes."""
    key = "join-way" if kind > 1 else "join-way-one" if kind else "join-way-again"
    return book.words[key].format(n=kind, **words)


def _any_of(book: Book, ways: list[str]) -> str:
    return ways[0] if len(ways) == 1 else f"{', '.join(ways[:-1])} {book.words['or']} {ways[-1]}"


def _ratio(book: Book, runs: Sized[JoinRun], fact: str, words: Mapping[str, str]) -> Spans:
    """So many rows to so many places, in small numbers."""
    alike = len({take for run in runs for take in run.counts()}) == 1
    ratio = sewing_ratio(2, runs.values[0].takes()[0]) if alike else best_ratio(runs.values[0].ratio, LARGEST)
    kind = "join-ratio" if alike else "join-ratio-about"
    rows = book.words["row-one" if ratio.first == 1 else "row-many"].format(n=ratio.first)
    places = book.words["place-one" if ratio.second == 1 else "place-many"].format(n=ratio.second, **words)
    return book.sentence(kind, fact, a=rows, b=places, all=runs.map(lambda run: run.places), **words)


def _table(book: Book, view: PieceView, runs: Sized[JoinRun], ways: Mapping[int, str]) -> Table:
    lines = []
    for label, run in runs.items():
        counts = run.counts()
        lines.append((label, str(2 * run.pairs), str(run.pairs), *(str(counts[kind]) if kind in counts else book.words["no-value"] for kind in ways)))
    right: Align = "right"
    header = (book.words["size"], book.words["rows"], book.words["joins"], *(f"{book.words['in']} {way}" for way in ways.values()))
    return Table(book.words["join-table"].format(title=view.piece.title), header, tuple(lines), ("left", *(right for _ in range(len(ways) + 2))))


def joined_end(book: Book, view: PieceView) -> Iterator[Block]:
    """The end of a band worked sideways: its ends sewn together where it goes round."""
    joins = joins_of(view)
    assert joins is not None
    last = joins.map(lambda join: join.rows)
    fastened = [book.sentence("fasten-off-weave", tail=tail_length(book, "weave in"))]
    if _first_join(view).ring:
        sts = view.stitches(last)
        fastened = [book.sentence("join-ends", view.piece.key, tail=tail_length(book, "sewing"), stitches=sts)]
    gather = view.piece.start.gather
    pulled = [book.sentence("join-gather", percent=f"{100 * gather:g}")] if gather else []
    yield step("End:", *fastened, book.sentence("final-check-join", view.piece.key, width=view.width(last), length=view.height(last)), *pulled)


def sewn_on(book: Book, view: PieceView, titles: Titles) -> Iterator[Block]:
    """How a band not joined as it grows is sewn to its edges."""
    joins = joins_of(view)
    if joins is None or not view.piece.start.sewn:
        return
    for index, first in enumerate(_first_join(view).runs):
        runs: Sized[JoinRun] = joins.map(lambda join, i=index: join.runs[i])  # type: ignore[misc]
        words, fact = _place_words(book, first), f"{view.piece.key}.sewn.{first.edges[0][0]}"
        rows = runs.map(lambda run: 2 * run.pairs)
        yield step(
            book.words["sewing-on"],
            book.sentence("sewn-on", fact, edges=_edges(book, first.edges, titles), rows=rows, all=runs.map(lambda run: run.places), **words),
            _ratio(book, runs, fact, words),
        )


def _first_join(view: PieceView) -> Join:
    join = view.first.start.join if isinstance(view.first.start, ChainStart) else None
    assert join is not None  # asked of bands worked sideways only
    return join


def _place_words(book: Book, run: JoinRun) -> dict[str, str]:
    kind = "row-end" if run.along_rows else "st"
    return {"place": book.words[f"join-{kind}"], "places": book.words[f"join-{kind}s"]}


def _edges(book: Book, edges: tuple[tuple[str, str], ...], titles: Titles) -> str:
    """ "hem edges of the Back and the Front", or each by itself where their names differ."""
    names = list(dict.fromkeys(edge_word(book, name) for _, name in edges))
    if len(names) == 1 and len(edges) > 1:
        return book.words["edges-of"].format(edge=names[0], pieces=listed(book, [book.words["the-piece"].format(piece=titles[key]) for key, _ in edges]))
    each_one = [book.words["edge-of"].format(edge=edge_word(book, name), piece=titles[key]) for key, name in edges]
    return each_one[0] if len(each_one) == 1 else listed(book, [each_one[0], *(f"the {text}" for text in each_one[1:])])
