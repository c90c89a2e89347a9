"""Triangles from the middle of their long edge: their rows from the width, and what can't be worked.

In: the designed section and one size's lengths. Out: rows and gains; located problems.
"""

from collections.abc import Iterator

from gaugewright.design.model import Design, Fabric, Piece, Triangle
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.gains import cycle_of, exact_gain, gain_ratio, rows_of_width, width_of_rows
from gaugewright.sizing.environment import Environment
from gaugewright.tolerances import MOST_STITCHES_PER_EDGE


def triangle_cycle(gauge: Gauge) -> tuple[int, ...]:
    """Gains of the rows of one cycle, the same in all sizes: they follow from the gauge alone."""
    return cycle_of(gain_ratio(exact_gain(gauge)))


def triangle_extent(section: Triangle, fabric: Fabric, piece: str, env: Environment) -> int:
    """Rows of a triangle; at least one cycle beyond the row in the ring, since that is what its words repeat."""
    rows, least = rows_of_width(env.length(section.width), fabric.gauge), len(triangle_cycle(fabric.gauge)) + 1
    if rows < least:
        message = f"{piece} comes to fewer rows than its gains repeat over, {least - 1} after row 1"
        hint = f"make it at least {width_of_rows(least, fabric.gauge) / 10:.1f} cm wide"
        raise ProblemsFound([Problem("triangle-too-small", message, section.width.origin, hint, env.size)])
    return rows


def triangle_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """A triangle is a whole piece, in a plain fabric whose rows are no higher than a place can gain."""
    triangles = [section for section in piece.sections if isinstance(section, Triangle)]
    fanned = piece.start.kind == "middle"
    if not triangles:
        if fanned:
            hint = "make its one section `triangle: {width: 140 cm}`, or start it with a chain"
            yield Problem("triangle-start", f"{piece.key} starts from the middle of an edge, as a triangle does, and has none", piece.start.origin, hint)
        return
    section = triangles[0]
    if not fanned:
        hint = "start the piece with `middle: flat`"
        yield Problem("triangle-start", f"the triangle of {piece.key} starts from the middle of its long edge", piece.start.origin, hint)
    yield from _alone(piece, section)
    yield from _of_fabric(piece, section, design.fabric(section.fabric))


def _alone(piece: Piece, section: Triangle) -> Iterator[Problem]:
    """Nothing goes on from its rows, and its width says all about its size."""
    if len(piece.sections) > 1:
        hint = "take out the other sections; a border is a piece of its own, picked up along its edges"
        yield Problem("triangle-alone", f"{piece.key} has other sections beside its triangle", section.origin, hint)
    if piece.total is not None:
        message = f"{piece.key} states a total, and a triangle is half as deep as it is wide"
        yield Problem("triangle-alone", message, piece.total.origin, "take out `total`")
    if piece.edges:
        message = f"{piece.key} names its side edges, and the row ends of a triangle are one long edge"
        yield Problem("triangle-alone", message, piece.origin, "name only its `bottom` (the long edge) and `top` (the last row)")


def _of_fabric(piece: Piece, section: Triangle, fabric: Fabric) -> Iterator[Problem]:
    rule = fabric.rule
    if fabric.pattern is not None or rule.multiple > 1 or rule.parity == "even":
        message = f"the rows of {piece.key} gain in their middle and at both ends, which would cut the repeats of {fabric.key}"
        hint = "work it in a fabric with a plain stitch and no multiple, or as a piece that a taper widens at one edge"
        yield Problem("triangle-in-pattern", message, section.origin, hint)
    exact = exact_gain(fabric.gauge)
    if exact > MOST_STITCHES_PER_EDGE:
        message = (
            f"a row of {fabric.key} is as high as {exact:.1f} stitches are wide, and {piece.key} lies flat only if each place gains as many:"
            f" {MOST_STITCHES_PER_EDGE} at most are worked ({MOST_STITCHES_PER_EDGE + 1} in one stitch)"
        )
        yield Problem("triangle-too-tall", message, section.origin, "work it in a lower stitch, or check the rows of the swatch")
