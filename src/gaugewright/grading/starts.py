"""How many stitches a piece starts with: foundation chains and rings, and stitches picked up along edges."""

from collections.abc import Mapping

from gaugewright.design.model import Design, Formula, Motif, NeckEdge, Piece, Raglan, Taper
from gaugewright.design.rims import on_rim
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.formulas.names import calls_in
from gaugewright.gauge.model import Gauge
from gaugewright.grading.allowed import Asked, allowed_count, even_by, of_parity
from gaugewright.grading.corners import sites
from gaugewright.grading.crowns import centre_count
from gaugewright.grading.model import EdgeLength, EdgeStart, GradedPiece, PickUp
from gaugewright.grading.motifs import motif_centre
from gaugewright.grading.rim import pick_rim, rim_of
from gaugewright.grading.take_up import TakeUps, side_take_up
from gaugewright.grading.triangle_rows import after_rows
from gaugewright.grading.triangles import triangle_cycle
from gaugewright.rounding import half_up, nearest_of_series
from gaugewright.sizing.environment import Environment

ONE_TO_ONE_WITHIN = 0.10
"""Stitch for stitch is what anyone does on a stitch edge; a gauge further off than this would ruffle or pull it."""


def start_count(piece: Piece, design: Design, env: Environment, taken: TakeUps) -> int:
    """Stitches of the foundation or the centre: its finished width and what seams take, at the gauge of the start's fabric."""
    fabric, width = design.fabric(piece.start.fabric), piece.start.width
    if piece.start.kind == "centre":
        first = piece.sections[0]
        return motif_centre(first, design.fabric(first.fabric)) if isinstance(first, Motif) else centre_count(piece.start, first, fabric)
    if piece.start.kind == "middle":
        return after_rows(1, triangle_cycle(fabric.gauge))
    assert width is not None  # only pieces picked up have none
    exact = fabric.gauge.stitches_in(env.length(width))
    if piece.start.kind == "chain" and not is_edge_length(width):
        exact += side_take_up(piece, taken, 0.0, env)
    halved = isinstance(piece.sections[-1], Raglan)  # back and front are alike, and so are the sleeves
    rule = of_parity(fabric.rule, 0) if halved else fabric.rule
    if any(isinstance(section, Taper) and section.at in ("both", "pairs", "") for section in piece.sections):
        rule = even_by(design.conventions.taper_ends, rule)
    return allowed_count(exact, rule, Asked(f"{piece.key} starts with", width.origin, env.size))


def pick_up_start(piece: Piece, design: Design, size: str, pieces: Mapping[str, GradedPiece]) -> EdgeStart:
    """Stitches picked up along each edge of the pieces graded before, in all a count that the fabric allows."""
    fabric = design.fabric(piece.start.fabric)
    if on_rim(piece, design):
        return _round_rim(piece, fabric.gauge, size, pieces)
    edges = [_edge_of(piece, key, name, size, pieces) for key, name in piece.start.edges]
    exact = [fabric.gauge.stitches_in(edge.length) for edge in edges]
    counts = [stitches_along(edge, fabric.gauge) for edge in edges]
    points = [site.edge for site in sites(piece, design) if site.kind in ("point", "tip")]
    for i in points:  # a point has a stitch of its own, in the middle
        counts[i] = nearest_of_series(exact[i], 1, 2)
    wanted = allowed_count(sum(counts), fabric.rule, Asked(f"{piece.key} picks up", piece.start.origin, size))
    # Stitch edges stay stitch for stitch where they can: row ends give or take one unseen.
    free = [i for i, edge in enumerate(edges) if edge.rows and i not in points] or [i for i in range(len(edges)) if i not in points] or list(range(len(edges)))
    while sum(counts) != wanted:
        change = 1 if wanted > sum(counts) else -1
        nearest = max(free, key=lambda i: (change * (exact[i] - counts[i]), exact[i]))
        counts[nearest] += change
    if min(counts) < 1:
        message = f"an edge that {piece.key} is picked up on has no stitch left by the fabric's multiple"
        raise ProblemsFound([Problem("multiple-does-not-fit", message, piece.start.origin, "use a smaller multiple", size)])
    return EdgeStart(tuple(
        _pick_up(design.piece(key), name, count, edge, design, fabric.gauge)
        for (key, name), count, edge in zip(piece.start.edges, counts, edges, strict=True)
    ))


def _round_rim(piece: Piece, gauge: Gauge, size: str, pieces: Mapping[str, GradedPiece]) -> EdgeStart:
    """Stitches picked up along the motifs' sides, all round what they are joined to."""
    ((key, name),) = piece.start.edges
    edge = _edge_of(piece, key, name, size, pieces)
    assert edge.layout is not None  # only a grid has a rim
    picked = pick_rim(edge.layout, edge.stitches // rim_of(edge.layout).sides, gauge.stitch_width)
    return EdgeStart((PickUp(key, name, sum(picked.along), of=edge.stitches, rim=picked),))


def _pick_up(own: Piece, name: str, count: int, edge: EdgeLength, design: Design, gauge: Gauge) -> PickUp:
    """Of the stitches picked up along a curve, those across its level stretch are told apart: one in each st, unless the gauges differ."""
    level = 0
    if edge.rows and edge.stitches:
        width = design.fabric(own.sections[-1].fabric).gauge.width_of(edge.stitches)
        level = max(0, min(stitches_along(EdgeLength(width, 0, edge.stitches), gauge), count - 1))
    both = not isinstance(own.sections[-1], NeckEdge)
    return PickUp(own.key, name, count, edge.rows, edge.stitches, edge.corners, level, both, edge.above, edge.chains)


def _edge_of(piece: Piece, key: str, name: str, size: str, pieces: Mapping[str, GradedPiece]) -> EdgeLength:
    edges = pieces[key].edges
    if name not in edges:
        message = f"{piece.key} is picked up along {key}.{name}, but {key} has only {', '.join(edges)}"
        raise ProblemsFound([Problem("unknown-edge", message, piece.start.origin, "use one of those edges", size)])
    return edges[name]


def stitches_along(edge: EdgeLength, gauge: Gauge) -> int:
    """Stitches picked up along an edge: one to one on stitches, by true length on row ends and curves."""
    exact = gauge.stitches_in(edge.length)
    if not edge.rows and abs(exact - edge.stitches) <= ONE_TO_ONE_WITHIN * edge.stitches:
        return edge.stitches
    return max(1, half_up(exact))


def is_edge_length(formula: Formula) -> bool:
    """A length made of edges is met stitch for stitch: no take-up is added to it."""
    return any(call.function == "edge" for call in calls_in(formula.node))
