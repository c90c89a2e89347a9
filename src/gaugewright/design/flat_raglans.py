"""Flat raglans as designed: which edges are raglan edges, which pieces are sleeves, which seams join them."""

from gaugewright.design.model import Design, Piece, RaglanEdge, Seam


def raglan_edge_names(piece: Piece) -> frozenset[str]:
    """The names of a piece's raglan edges: those that begin at a level and run up to its top where it is shaped."""
    section = next((section for section in piece.sections if isinstance(section, RaglanEdge)), None)
    if section is None:
        return frozenset()
    return frozenset(
        edge.name for edge in piece.edges if edge.top is None and edge.bottom is not None and section.at in ("both", edge.side)
    )


def is_raglan_seam(design: Design, seam: Seam) -> bool:
    """Whether a seam joins raglan edges alone."""
    return all(end.edge in raglan_edge_names(design.piece(end.piece)) for end in (seam.join, *seam.to))


def is_raglan_sleeve(piece: Piece) -> bool:
    """A piece made twice, with a raglan edge at both sides."""
    return piece.make == 2 and any(isinstance(section, RaglanEdge) and section.at == "both" for section in piece.sections)
