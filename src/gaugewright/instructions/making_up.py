"""Making up: seams in order, lettered, with their sewing ratios; pieces sewn on; finishing."""

from collections.abc import Iterator, Mapping

from gaugewright.design.model import Attachment, Design, EdgeName, Piece, Seam
from gaugewright.design.rims import on_rim
from gaugewright.design.sides import is_folded, on_both_sides
from gaugewright.grading.model import EdgeLength, GradedPiece
from gaugewright.grading.outline_model import row_nearest
from gaugewright.grading.ratio import sewing_ratio
from gaugewright.grading.rings import picked_edges
from gaugewright.grading.waiting import bands_after, seams_before
from gaugewright.instructions.buttonhole_words import buttons_sewn
from gaugewright.instructions.ends_words import ends_table
from gaugewright.instructions.flat_raglan_words import raglan_seam
from gaugewright.instructions.fold_words import fold_sentences
from gaugewright.instructions.hanging import edge_length, flat_heights, percent
from gaugewright.instructions.nodes import Block, Heading, Paragraph, spans_text
from gaugewright.instructions.pieces import Names
from gaugewright.instructions.steps import edge_word, step
from gaugewright.instructions.wording import Book, Mm, Slot, Spans, listed
from gaugewright.instructions.yarn_words import sewn_apart
from gaugewright.rounding import half_up
from gaugewright.sized import Sized, join
from gaugewright.sizing.environment import Environment

Pieces = Mapping[str, Sized[GradedPiece]]


def making_up(book: Book, design: Design, pieces: Pieces, envs: Sized[Environment], names: Names) -> Iterator[Block]:
    """The chapter on making up: how seams are sewn, then what is sewn on, then the seams in order."""
    if not design.seams and not design.attachments:
        return
    yield Heading(2, book.front["assembly-heading"])
    sewn_on = ["whip"] if design.attachments else []
    for kind in dict.fromkeys((*(METHODS[seam.method] for seam in design.seams), *sewn_on)):
        yield Paragraph(book.sentence(f"seam-method-{kind}", slst=book.abbr("sl st")), "bullet")
    for kind in dict.fromkeys((TAKES[seam.take_up] for seam in design.seams)):
        yield Paragraph(book.sentence(f"seam-take-{kind}"), "bullet")
    if design.seams:
        yield Paragraph(book.sentence(_seam_yarn(design, pieces)), "bullet")
    for index, one in enumerate(design.attachments):
        yield step(f"{letter(index)}.", _attach(book, one, pieces, design, envs, names))
    for index, seam in enumerate(design.seams):
        yield step(f"{seam_letter(design, index)}.", *_seam(book, seam, design, pieces, names))
        for key in bands_after(design, index):
            yield Paragraph(book.sentence("band-now", piece=names.pieces[key]), "body")


def _seam_yarn(design: Design, pieces: Pieces) -> str:
    if sewn_apart(design):
        return "seam-yarn-strong"
    used = {colour for sized in pieces.values() for graded in sized for strip in graded.strips for row in strip.all_rows() for colour in row.colours}
    return "seam-yarn" if len(used) > 1 else "seam-yarn-one"


METHODS = {"mattress": "mattress", "whip": "whip", "slip stitch": "slip"}
TAKES = {"edge to edge": "edge", "half stitch": "half", "whole stitch": "whole"}


def letter(index: int) -> str:
    """A, B, C ... in order."""
    return chr(ord("A") + index) if index < 26 else f"{chr(ord('A') + index // 26 - 1)}{chr(ord('A') + index % 26)}"


def seam_letter(design: Design, index: int) -> str:
    """A seam's letter: what is sewn on while the pieces lie flat comes first."""
    return letter(len(design.attachments) + index)


def _edge(pieces: Pieces, name: EdgeName) -> Sized[EdgeLength]:
    return pieces[name.piece].map(lambda piece: piece.edges[name.edge])


def _seam(book: Book, seam: Seam, design: Design, pieces: Pieces, names: Names) -> list[Spans]:
    """A seam: what is joined to what and how it meets, then how it is sewn."""
    slots: dict[str, Slot] = {"edge": edge_word(book, seam.join.edge), "piece": names.pieces[seam.join.piece], "to": _targets(book, seam, names)}
    others = [_edge(pieces, name) for name in seam.to]
    told = list(raglan_seam(book, seam, design, _edge(pieces, seam.join), others[0], slots)) if len(others) == 1 else []
    if is_folded(design, seam):
        told = fold_sentences(book, seam, design, _edge(pieces, seam.join), names.pieces[seam.join.piece])
    told = told or _meeting(book, seam, design, pieces, slots)
    method, take = book.sentence(f"method-{METHODS[seam.method]}"), book.sentence(f"take-{TAKES[seam.take_up]}")
    both = [book.sentence("seam-both-sides")] if on_both_sides(design, seam) else []
    if both and is_folded(design, seam):
        both = [book.sentence("fold-each", piece=names.pieces[seam.join.piece])]
    return [*told, book.sentence("seam-how", method=method, take=take), *both]


def _meeting(book: Book, seam: Seam, design: Design, pieces: Pieces, slots: dict[str, Slot]) -> list[Spans]:
    """How the edges of a seam meet: by rows, by stitches, or by both."""
    join = _edge(pieces, seam.join)
    others = [_edge(pieces, name) for name in seam.to]
    first_rows, first_sts = join.map(lambda e: e.rows), join.map(lambda e: e.stitches)
    rows = Sized(join.labels, tuple(sum(o[label].rows for o in others) for label in join.labels))
    sts = Sized(join.labels, tuple(sum(o[label].stitches for o in others) for label in join.labels))
    fact, fabrics = f"seam.{seam.join}", {fabric.key: fabric for fabric in design.fabrics}
    graded = [pieces[end.piece].values[0] for end in (seam.join, *seam.to)]
    found: list[Spans] = []
    if any(end.rows and end.stitches for side in (join, *others) for end in side):
        lengths = Sized(join.labels, tuple(sum(other[label].length for other in others) for label in join.labels))
        kind = "seam-cap" if seam.join.edge == "cap" else "seam-length"
        found.append(book.sentence(kind, fact, first=edge_length(join, graded, fabrics), second=Mm(lengths, edge_length(others[0], graded, fabrics).state), **slots))
    elif any(end.corners for end in join) != any(end.corners for other in others for end in other) and not _in_rounds(seam, design):
        found.append(book.sentence("seam-corner", fact, length=edge_length(join, graded, fabrics), **slots))
    elif _in_rounds(seam, design) and any(end.corners for other in others for end in other):
        found.append(book.sentence("seam-corner-round", fact, length=edge_length(join, graded, fabrics), **slots))
    elif all(first_rows) and all(rows):
        same = first_rows.values == rows.values
        own = [(end.piece, end.edge) for end in seam.to] == [(seam.join.piece, seam.join.edge)]
        kind = "seam-rows-own" if own else "seam-rows" if same else "seam-rows-uneven"
        found.append(book.sentence(kind, fact, first=first_rows, second=rows, **slots))
        if _colours_meet(seam, design, pieces):
            found.append(book.sentence("seam-colours"))
    elif all(first_sts) and all(sts):
        same = first_sts.values == sts.values
        found.append(book.sentence("seam-stitch-for-stitch" if same else "seam-stitches", fact, first=first_sts, second=sts, **slots))
    else:
        stitches, ends = (first_sts, rows) if any(first_sts) else (sts, first_rows)
        ratio = sewing_ratio(sum(stitches.values), sum(ends.values))
        kind = "seam-mixed" if _in_rounds(seam, design) else "seam-mixed-flat"
        if ratio.first == ratio.second:
            found.append(book.sentence(f"{kind}-one", fact, first=stitches, second=ends, **slots))
        else:
            a = book.words["st-one" if ratio.first == 1 else "st-many"].format(n=ratio.first)
            b = book.words["row-each" if ratio.second == 1 else "row-every"].format(n=ratio.second)
            found.append(book.sentence(kind, fact, first=stitches, second=ends, a=a, b=b, **slots))
    return found


def _colours_meet(seam: Seam, design: Design, pieces: Pieces) -> bool:
    """Whether colours change at the same rows on both sides of a seam, in every size; not told where none changes."""
    sides = [_changes(design.piece(end.piece), end.edge, pieces) for end in (seam.join, *seam.to)]
    return len(sides) == 2 and any(sides[0]) and sides[0].values == sides[1].values


def _changes(piece: Piece, edge: str, pieces: Pieces) -> Sized[tuple[int, ...]]:
    """The rows of a side edge that begins at the bottom, after which its colour changes; none of another edge."""
    named = next((one for one in piece.edges if one.name == edge and one.bottom is None), None)
    if named is None:
        return pieces[piece.key].map(lambda _graded: ())
    at = 0 if named.side == "starting" else -1

    def changes(graded: GradedPiece) -> tuple[int, ...]:
        rows = graded.main.rows[: graded.edges[edge].rows]
        colours = [row.runs[at if number % 2 else -1 - at].colour for number, row in enumerate(rows, start=1)]
        return tuple(number for number in range(1, len(colours)) if colours[number] != colours[number - 1])

    return pieces[piece.key].map(changes)


def _in_rounds(seam: Seam, design: Design) -> bool:
    return design.piece(seam.join.piece).start.kind == "ring"


def _targets(book: Book, seam: Seam, names: Names) -> str:
    """The edges a seam is sewn to: "armhole edges of the Back and the Right Front"."""
    edges = dict.fromkeys(name.edge for name in seam.to)
    if len(seam.to) > 1 and len(edges) == 1:
        pieces = [f"the {names.pieces[name.piece]}" for name in seam.to]
        return f"{edge_word(book, next(iter(edges)))} edges of {', '.join(pieces[:-1])} {book.words['and']} {pieces[-1]}"
    return f" {book.words['and']} the ".join(f"{edge_word(book, name.edge)} edge of the {names.pieces[name.piece]}" for name in seam.to)


def _attach(book: Book, one: Attachment, pieces: Pieces, design: Design, envs: Sized[Environment], names: Names) -> Spans:
    """Where a piece is sewn on: the row its base lies on, as the rows are, and the stitches in from an edge."""
    onto = pieces[one.to]
    rows = join(lambda piece, env: row_nearest(piece.outline.heights, env.length(one.up)), onto, envs)
    up = flat_heights(onto, {fabric.key: fabric for fabric in design.fabrics}, rows)
    gauges = join(lambda piece, row: design.fabric(piece.main.rows[min(max(row, 1), len(piece.main.rows)) - 1].fabric).gauge, onto, rows)
    sts = join(lambda gauge, env: half_up(gauge.stitches_in(env.length(one.inset))), gauges, envs)
    base = book.part("attach-up", f"attach.{one.piece}", up=up, rows=rows) if any(rows) else book.part("attach-bottom")
    kind = "attach-at" if not any(sts) else "attach-in-one" if set(sts) == {1} else "attach-in"
    inset = Mm(join(lambda gauge, count: gauge.width_of(count), gauges, sts))
    side = book.part(kind, f"attach.{one.piece}", edge=edge_word(book, one.from_edge), **({"inset": inset} if any(sts) else {}), **({"sts": sts} if kind == "attach-in" else {}))
    return book.sentence("attach", f"attach.{one.piece}", piece=names.pieces[one.piece], to=names.pieces[one.to], base=base, side=side)


def order_of_work(book: Book, design: Design, names: Names, made: Mapping[str, Sized[int]]) -> Iterator[Block]:
    """What to make and sew, in order; nothing where there is one piece only."""
    if len(design.pieces) < 2:
        return
    yield Heading(2, book.front["order-heading"])
    waiting = {piece.key for piece in design.pieces if seams_before(design, piece)}
    divided = [piece.key for piece in design.pieces if piece.start.kind in ("divide", "go on")]
    told = {p.key: names.pieces[p.key] if set(made[p.key].values) == {1} else spans_text(book.front_text("twice", piece=names.pieces[p.key], make=made[p.key])) for p in design.pieces}
    onto = [p for p in design.pieces if p.start.edges and p.key not in (*waiting, *divided)]
    free = [told[p.key] for p in design.pieces if p.key not in (*waiting, *divided) and p not in onto]
    yield Paragraph(book.front_text("order-pieces" if len(free) > 1 else "order-first", pieces=listed(book, free)), "bullet")
    for piece in (p for p in design.pieces if p.grid is not None):
        joining = book.front["joining-heading"].format(title=names.pieces[piece.key])
        yield Paragraph(book.front_text("order-join", heading=joining), "bullet")
    for piece in onto:
        if on_rim(piece, design):
            yield Paragraph(book.front_text("order-rim", piece=told[piece.key]), "bullet")
            continue
        below = listed(book, [names.pieces[key] for key in dict.fromkeys(key for key, _ in picked_edges(design, piece))])
        yield Paragraph(book.front_text("order-onto", piece=told[piece.key], below=below), "bullet")
    for key in divided:
        yield Paragraph(book.front_text("order-divide", piece=told[key], yoke=names.pieces[design.piece(key).start.edges[0][0]]), "bullet")
    for index, one in enumerate(design.attachments):
        seams = book.sentence("seam-one", letters=letter(index))
        yield Paragraph(book.front_text("order-attach", piece=names.pieces[one.piece], to=names.pieces[one.to], seams=seams), "bullet")
    run: list[str] = []
    for index in range(len(design.seams)):
        run.append(seam_letter(design, index))
        bands = bands_after(design, index)
        if bands or index == len(design.seams) - 1:
            seams = book.sentence("seam-one" if len(run) == 1 else "seam-many", letters=listed(book, run))
            yield Paragraph(book.front_text("order-sew", seams=seams), "bullet")
            run = []
        for key in bands:
            yield Paragraph(book.front_text("order-band", piece=told[key]), "bullet")


def finishing(book: Book, design: Design, pieces: Pieces, names: Names) -> Iterator[Block]:
    """Ends, blocking, and the shoulders of heavy cloth."""
    yield Heading(2, book.front["finishing-heading"])
    yield Paragraph(book.front_text("finish-ends"), "bullet")
    if any(seam.join.edge == "shoulder" for seam in design.seams):
        yield Paragraph(book.front_text("finish-shoulders", slst=book.abbr("sl st")), "bullet")
    yield from buttons_sewn(book, design)
    grown = [1 - 1 / (1 + fabric.growth) for fabric in design.fabrics if fabric.lying]
    if grown:
        yield Paragraph(book.front_text("finish-block-grows", less=percent(max(grown))), "bullet")
    else:
        yield Paragraph(book.front_text("finish-block"), "bullet")
    yield from ends_table(book, design, pieces, names)
