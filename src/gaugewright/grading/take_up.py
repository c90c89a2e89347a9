"""What seams take off: finished = worked - take-up.

A seam through one whole edge stitch on each side costs 4.6 cm of bust at 9 sts / 10 cm, so each
seam and each picked-up edge states its take-up, and widths are graded with it.
"""

from gaugewright.design.model import TAKE_UP_STITCHES, Design

TakeUps = dict[tuple[str, str], float]


def take_ups(design: Design) -> TakeUps:
    """Stitches (0, 1/2, 1) that each named edge loses; an edge used twice loses the larger."""
    found: TakeUps = {}
    used = [
        (edge.piece, edge.edge, seam.take_up) for seam in design.seams for edge in (seam.join, *seam.to)
    ] + [
        (piece, edge, taker.start.take_up) for taker in design.pieces for piece, edge in taker.start.edges
    ]
    for piece_key, edge_name, take_up in used:
        key = (piece_key, edge_name)
        found[key] = max(found.get(key, 0.0), TAKE_UP_STITCHES[take_up])
    return found
