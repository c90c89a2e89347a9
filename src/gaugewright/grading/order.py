"""In which order pieces are graded: a piece comes after those whose edges or measures it uses."""

from collections.abc import Iterator

from gaugewright.design.model import Crown, Design, Formula, ForLength, Motif, Piece, Taper, ToLevel
from gaugewright.design.rims import border_of
from gaugewright.design.shapes import shape_formulas
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.formulas.names import calls_in, order_by_reference
from gaugewright.formulas.nodes import Name
from gaugewright.sizing.environment import lengths_needed, named_formulas

PIECE_CALLS = ("edge", "finished")


def grading_order(design: Design) -> tuple[Piece, ...]:
    """Pieces in the order of their references, the spec's order where they are free.

    Raises a located `piece-cycle` problem where pieces wait for one another.
    """
    order, cycles = order_by_reference({piece.key: pieces_needed(piece, design) for piece in design.pieces})
    if cycles:
        raise ProblemsFound([
            Problem(
                "piece-cycle", f"these pieces wait for one another: {cycle}", design.piece(cycle.names[0]).origin,
                "give one of them a length of its own, or use in_rows(length, fabric) for a band's depth",
            )
            for cycle in cycles
        ])
    return tuple(design.piece(key) for key in order)


def pieces_needed(piece: Piece, design: Design) -> tuple[str, ...]:
    """Pieces that must be graded before this one, since it is made on their edges or to their measures."""
    border = border_of(piece, design)
    depth = _named_in(border, design) if border else ()
    return (*(edge_piece for edge_piece, _ in piece.start.edges), *_named_in(piece, design), *depth)


def _named_in(piece: Piece, design: Design) -> tuple[str, ...]:
    """Pieces that a piece's formulas and stripes name. How deep a border is must be known before what it goes round."""
    found = []
    if piece.colours.stripes and piece.colours.stripes.match:
        found.append(piece.colours.stripes.match.piece)
    named = named_formulas(design)
    seen: set[str] = set()
    queue = list(_formulas(piece, design))
    while queue:
        formula = queue.pop()
        for call in calls_in(formula.node):
            if call.function in PIECE_CALLS and isinstance(call.arguments[0], Name):
                found.append(call.arguments[0].name.partition(".")[0])
        for name in lengths_needed(formula.node):
            if name.name in named and name.name not in seen:
                seen.add(name.name)
                queue.append(named[name.name])
    return tuple(found)


def _formulas(piece: Piece, design: Design) -> Iterator[Formula]:
    levels = named_formulas(design)
    for formula in (piece.start.width, piece.total):
        if formula is not None:
            yield formula
    for section in piece.sections:
        extent = getattr(section, "extent", None)
        if isinstance(extent, ForLength):
            yield extent.length
        elif isinstance(extent, ToLevel):
            yield extent.height
        if isinstance(section, (Taper, Crown, Motif)) and section.target is not None:
            yield section.target
        yield from shape_formulas(section)
    if piece.grid is not None:
        yield from (piece.grid.across, piece.grid.down)
    if piece.buttonholes is not None:
        yield from (piece.buttonholes.first, piece.buttonholes.last)
    for edge in piece.edges:
        yield from (levels[level] for level in (edge.bottom, edge.top) if level is not None)
    yield from piece.colours.formulas()
