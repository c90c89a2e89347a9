"""Edges picked up in rounds: do they close a ring, and which seams close it?

A neck is closed by the shoulder seams, an armhole by the shoulder seam and the side seam, a hem by the side
seams. One seam of a spec stands for both sides of the body, so two edges of a neck or hem need one; the two
edges of an armhole meet twice and need two.
"""

from collections import Counter
from collections.abc import Iterator

from gaugewright.design.flat_raglans import is_raglan_seam
from gaugewright.design.model import Design, Piece, Seam
from gaugewright.design.sides import is_folded
from gaugewright.design.slits import slit_edges
from gaugewright.errors import Problem

Edge = tuple[str, str]


def ring_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """A piece picked up in rounds on edges that no seams close into a ring."""
    if piece.start.ring:
        yield from _open_places(piece, design)


def closes_ring(piece: Piece, design: Design) -> bool:
    """Whether the edges a piece is made on close into a ring, so that its own ends meet."""
    return not any(_open_places(piece, design))


def _open_places(piece: Piece, design: Design) -> Iterator[Problem]:
    edges = piece.start.edges
    if any(edge[1] in slit_edges(design.piece(edge[0]).sections) for edge in edges):
        if len(edges) > 1:
            message = f"{piece.key} is picked up round an opening and along other edges: the opening is a ring of its own"
            yield Problem("ring-open", message, piece.start.origin, "pick up a piece of its own along each")
        return
    if goes_all_round(edges, design):
        return
    if len({key for key, _ in edges}) == 1:
        key = edges[0][0]
        if not _closes_itself(design, key):
            message = f"{piece.key} is worked in rounds, and {key} alone closes no ring"
            yield Problem("ring-open", message, piece.start.origin, _hint(key, key))
        return
    ends = (edges[0], edges[-1])
    if ends[0][0] == ends[1][0] and not _sewn_to_itself(design, ends[0][0]):
        key = ends[0][0]
        message, top = f"{piece.key} is worked in rounds, and no seam closes {key} between {ends[0][1]} and {ends[1][1]}", f"{key}.{design.piece(key).top}"
        yield Problem("ring-open", message, piece.start.origin, f"fold {key} in half and sew it: `{{join: {top}, to: {top}}}`")
    needed = Counter(frozenset((a[0], b[0])) for a, b in _neighbours(edges))
    for a, b in dict.fromkeys(_neighbours(edges)):
        pair = frozenset((a[0], b[0]))
        wanted = needed.pop(pair, 0)
        if len(pair) < 2 or not wanted or _goes_on(design, pair):
            continue
        wanted = wanted if along_rows(design, a) and along_rows(design, b) else 1
        found = sum(1 for _ in _seams_between(design, a, b))
        if found < wanted:
            count = "no seam joins" if not found else "only one seam joins"
            message = f"{piece.key} is worked in rounds, and {count} {a[0]} and {b[0]} beside {a[1]}: the edges close no ring"
            yield Problem("ring-open", message, piece.start.origin, _hint(a[0], b[0]))


def goes_all_round(edges: tuple[Edge, ...], design: Design) -> bool:
    """Whether the edges are all four of one flat piece, in the order in which they follow one another round it."""
    keys = {key for key, _ in edges}
    if len(edges) != 4 or len(keys) != 1:
        return False
    piece = design.piece(edges[0][0])
    if piece.start.in_rounds or any(edge.top is not None for edge in piece.edges):
        return False
    sides = {edge.name: edge.side for edge in piece.edges}
    named = {piece.bottom: "bottom", piece.top: "top", **sides}
    round_it = tuple(named.get(name, name) for _, name in edges)
    turns = [tuple(("top", "far", "bottom", "starting")[(first + step * way) % 4] for step in range(4)) for first in range(4) for way in (1, -1)]
    return round_it in turns


def _hint(first: str, second: str) -> str:
    return f"add the seam between {first} and {second}, or use a fabric worked in rows" if first != second else f"sew {first} to itself with a seam, or use a fabric worked in rows"


def edge_seams(piece: Piece, design: Design) -> tuple[int, ...]:
    """The seams that must be sewn before a piece is made on edges, in the spec's order; of both sides where two are made.

    They join each edge to the next, and where the piece goes round, the last to the first.
    """
    edges = piece.start.edges
    pairs = _neighbours(edges)
    found: set[int] = set()
    goes_round = piece.start.ring or (piece.start.joined and closes_ring(piece, design))
    if all(name in slit_edges(design.piece(key).sections) for key, name in edges):
        return ()
    for a, b in pairs if goes_round or len(edges) == 1 else pairs[:-1]:
        for first in _both_sides(design, piece, a):
            for second in _both_sides(design, piece, b):
                seams = _seams_between(design, first, second)
                # An open band over two armholes turns at their shoulder; the sides are sewn when they like.
                found |= {i for i in seams if goes_round or not along_rows(design, first) or joins_tops(design, design.seams[i])}
    return tuple(sorted(found))


def along_rows(design: Design, edge: Edge) -> bool:
    """Whether an edge is one of a piece's sides, made of row ends from one level to another."""
    return any(one.name == edge[1] for one in design.piece(edge[0]).edges)


def joins_tops(design: Design, seam: Seam) -> bool:
    """A seam of shoulders, of raglan edges, or of the last rows of pieces."""
    return is_raglan_seam(design, seam) or all(end.edge in ("shoulder", "top", design.piece(end.piece).top) for end in (seam.join, *seam.to))


def _neighbours(edges: tuple[Edge, ...]) -> tuple[tuple[Edge, Edge], ...]:
    """Each edge with the next one round the ring."""
    return tuple(zip(edges, (*edges[1:], *edges[:1]), strict=True))


def picked_edges(design: Design, piece: Piece) -> tuple[Edge, ...]:
    """All edges a piece is picked up on, those of its second copy too."""
    return tuple(one for edge in piece.start.edges for one in _both_sides(design, piece, edge))


def _both_sides(design: Design, piece: Piece, edge: Edge) -> tuple[Edge, ...]:
    """The edge, and where the piece is made twice the same edge of a mirrored twin."""
    if piece.make == 1:
        return (edge,)
    own = design.piece(edge[0])
    twins = [p.key for p in design.pieces if (p.mirrored and p.like == own.key) or (own.mirrored and own.like == p.key)]
    return (edge, *((key, edge[1]) for key in twins))


def _seams_between(design: Design, first: Edge, second: Edge) -> Iterator[int]:
    """Seams of two pieces that lie at an end of both edges."""
    for index, seam in enumerate(design.seams):
        pairs = {frozenset((seam.join.piece, to.piece)) for to in seam.to}
        if frozenset((first[0], second[0])) in pairs and _lies_at(design, seam, first) and _lies_at(design, seam, second):
            yield index


def _lies_at(design: Design, seam: Seam, edge: Edge) -> bool:
    if along_rows(design, edge):
        return True
    at_hem = edge[1] in ("bottom", design.piece(edge[0]).bottom)
    return joins_tops(design, seam) != at_hem


def _goes_on(design: Design, pair: frozenset[str]) -> bool:
    """Whether one of two pieces goes on from the other, so that no seam lies between them."""
    return any(piece.start.kind == "go on" and pair == {piece.key, piece.start.edges[0][0]} for piece in design.pieces)


def _sewn_to_itself(design: Design, key: str) -> bool:
    """Whether a piece goes round, or a seam of its own brings its two sides together, as a heel's that is folded and sewn."""
    return design.piece(key).start.in_rounds or any({seam.join.piece, *(to.piece for to in seam.to)} == {key} for seam in design.seams)


def _closes_itself(design: Design, key: str) -> bool:
    own = design.piece(key).start.in_rounds
    return own or any({seam.join.piece, *(to.piece for to in seam.to)} == {key} and not is_folded(design, seam) for seam in design.seams)
