"""Where each taper is shaped: at which edges of rows, in pairs, or spread round the rounds.

Chosen once for all sizes of a piece, from the counts of all of them.
"""

from gaugewright.design.model import Design, Piece, Taper
from gaugewright.grading.allowed import parity_fits
from gaugewright.grading.measure import Measured, Shaped, lead_rows
from gaugewright.grading.plan import ShapedEdges
from gaugewright.sized import Sized


FEWEST_IN_PAIRS = 6
"""Two decreases need four stitches and, with one stitch left beside each of them, six."""


def edges_of_rows(piece: Piece) -> Shaped:
    """Edges as the spec says, both unless it does; in rounds nothing is settled yet."""
    if piece.start.in_rounds:
        return (None,) * len(piece.sections)
    return tuple((section.at or "both") if isinstance(section, Taper) else None for section in piece.sections)  # type: ignore[misc]


def pairs_of_rounds(piece: Piece, design: Design, measured: Sized[Measured]) -> Shaped:
    """In rounds a taper is worked in pairs at the underarm line wherever every size has the rounds for
    it; a balloon, which gains or loses more, is spread round. `measured` has nothing in pairs yet.
    A body that goes on from a yoke has two underarms and its join beside one, so it is spread round too.
    """
    if piece.start.kind == "divide" and piece.start.edges[0][1] == "body":
        return (None,) * len(piece.sections)
    return tuple(
        _in_pairs(design, section, index, measured) if isinstance(section, Taper) else None
        for index, section in enumerate(piece.sections)
    )


def _in_pairs(design: Design, section: Taper, index: int, measured: Sized[Measured]) -> ShapedEdges | None:
    if section.at in ("pairs", "sides"):
        return section.at  # type: ignore[return-value]
    if section.at == "all round":
        return None
    if section.each is not None:
        return "pairs" if abs(section.each) == 2 else None
    rule = design.fabric(section.fabric).rule
    for one in measured:
        change, rounds = abs(one.change(index)), one.rows[index] - lead_rows(index)
        narrow = min(one.before(index), one.ends[index]) < FEWEST_IN_PAIRS
        stated_odd = section.stitches is not None and change % 2
        if change > 2 * rounds or narrow or stated_odd or not parity_fits(rule, one.before(index)):
            return None
    return "pairs"
