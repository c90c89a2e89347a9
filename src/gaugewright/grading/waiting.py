"""What waits for what: pieces made on edges wait for the seams that join those, and seams for the pieces they sew."""

from gaugewright.design.model import Design, Piece
from gaugewright.grading.rings import edge_seams


def seams_before(design: Design, piece: Piece) -> tuple[int, ...]:
    """Seams that must be sewn before a piece is made on edges: those that join each edge to the next, and all that the
    pieces below it wait for.
    """
    picked = {key for key, _ in piece.start.edges}
    own = () if piece.start.kind == "divide" else edge_seams(piece, design)
    below = (index for key in picked for index in seams_before(design, design.piece(key)))
    return tuple(sorted({*own, *below}))


def bands_after(design: Design, index: int) -> tuple[str, ...]:
    """Pieces to pick up once this seam is sewn, because it is the last they wait for."""
    waits = {piece.key: seams_before(design, piece) for piece in design.pieces}
    return tuple(key for key, before in waits.items() if before and before[-1] == index)


def in_working_order(design: Design) -> tuple[str, ...]:
    """Pieces as they are told: those that wait for no seam first, each after the pieces it is made on, else in the spec's order."""
    order: dict[str, None] = {}

    def tell(piece: Piece) -> None:
        for key, _ in piece.start.edges:
            if key not in order:
                tell(design.piece(key))
        order[piece.key] = None

    for piece in sorted(design.pieces, key=lambda piece: bool(seams_before(design, piece))):
        if piece.key not in order:
            tell(piece)
    return tuple(order)


def seams_too_early(design: Design) -> tuple[tuple[int, int], ...]:
    """Seams that sew a piece which itself waits for a later seam, each with that later one."""
    found = []
    for index, seam in enumerate(design.seams):
        later = [seams_before(design, design.piece(end.piece))[-1:] for end in (seam.join, *seam.to)]
        last = max((before[0] for before in later if before), default=-1)
        if last >= index:
            found.append((index, last))
    return tuple(found)
