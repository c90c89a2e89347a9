"""Bands worked sideways along edges: how many rows they have, and how those share the places of the edges.

The number of rows follows from the edges' true length, less what the band is to pull in. The ends of rows are joined to
whole stitches and rows, so places are shared out over the pairs of rows; where one number of places to every pair
comes within a hundredth, it is used, because it reads plainest.
"""

from collections.abc import Iterator, Mapping
from itertools import groupby

from gaugewright.design.model import Design, Even, Piece, Rest
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.grading.join_model import Join, JoinRun
from gaugewright.grading.model import EdgeLength, GradedPiece
from gaugewright.grading.rings import closes_ring
from gaugewright.rounding import half_up
from gaugewright.tolerances import PLAIN_JOIN_SHARE

Edge = tuple[str, str]


def join_of(piece: Piece, design: Design, size: str, pieces: Mapping[str, GradedPiece]) -> Join:
    """What a band is joined to in one size; raises where an edge can't be joined to row by row."""
    edges = {edge: _edge(piece, edge, size, pieces) for edge in piece.start.edges}
    alike = [tuple(group) for _, group in groupby(edges, key=lambda edge: _place(edges[edge]))]
    height, share = design.fabric(piece.sections[0].fabric).gauge.row_height, 1 - piece.start.gather
    runs, reached, done = [], 0.0, 0
    for group in alike:
        places = sum(edges[edge].rows or edges[edge].stitches for edge in group)
        length = sum(edges[edge].length for edge in group) * share
        # What the bands before it were rounded by is made good here, so that errors never add up.
        pairs = _pairs((reached + length) / (2 * height) - done, places)
        runs.append(JoinRun(group, places, edges[group[0]].rows > 0, pairs, length / height / places))
        reached, done = reached + length, done + pairs
    return Join(tuple(runs), closes_ring(piece, design), piece.start.sewn)


def _pairs(exact: float, places: int) -> int:
    """The nearest number of pairs, or one within a hundredth by which the places divide."""
    nearest = max(1, half_up(exact))
    within = PLAIN_JOIN_SHARE * exact
    plain = [pairs for pairs in range(max(1, int(exact - within)), int(exact + within) + 2) if places % pairs == 0 and abs(pairs - exact) <= within]
    return min(plain, key=lambda pairs: abs(pairs - exact), default=nearest)


def _place(edge: EdgeLength) -> tuple[bool, int]:
    """Edges with the same places, to the tenth of a millimetre, are worked along as one."""
    return edge.rows > 0, half_up(10 * edge.length / (edge.rows or edge.stitches))


def _edge(piece: Piece, edge: Edge, size: str, pieces: Mapping[str, GradedPiece]) -> EdgeLength:
    key, name = edge
    edges = pieces[key].edges
    if name not in edges:
        message = f"{piece.key} is joined to {key}.{name}, but {key} has only {', '.join(edges)}"
        raise ProblemsFound([Problem("unknown-edge", message, piece.start.origin, "use one of those edges", size)])
    if edges[name].rows and edges[name].stitches or edges[name].corners:
        message = f"{piece.key} is joined to {key}.{name}, which runs along stitches and row ends by turns: its places are not alike"
        hint = f"pick up a round or row along {key}.{name} in a piece of its own, and join {piece.key} to that piece's top"
        raise ProblemsFound([Problem("join-edge-uneven", message, piece.start.origin, hint, size)])
    return edges[name]


def join_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """What a joined band can't have: rows of its own number, shaping, bands of colour, a chain that counts at the joined edge."""
    if not piece.start.joined:
        return
    only = piece.sections[0] if len(piece.sections) == 1 else None
    if piece.total is not None or not isinstance(only, Even) or not isinstance(only.extent, Rest):
        message = f"{piece.key} is joined along an edge, and its rows follow from that"
        yield Problem("join-rows", message, piece.sections[0].origin, "leave out `total`, and let its sections be `[even: {length: rest}]`, or leave them out")
    if piece.colours.bands is not None:
        message = f"{piece.key} is joined along an edge: its rows lie across it, and bands of colour can't"
        yield Problem("join-rows", message, piece.colours.bands.origin, f"give {piece.key} one colour")
    fabric = design.fabric(piece.sections[0].fabric)
    if fabric.counts and fabric.chains and not piece.start.sewn:
        message = f"the turning chain of {fabric.key} counts as a stitch, and rows that begin at a joined edge have none"
        yield Problem("join-chain-counts", message, piece.start.origin, f"give {fabric.key} `turning_chain: {{chains: {fabric.chains}, counts: not as a stitch}}`")
    if piece.start.edges and len(set(piece.start.edges)) < len(piece.start.edges):
        yield Problem("edge-twice", f"{piece.key} is joined to one edge twice", piece.start.origin, "name each edge once")
