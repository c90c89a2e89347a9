"""Triangles from the middle of their long edge: measured anew from their rows, and do they lie flat?

Written apart from the engine: the long edge is the two slanting sides of squares as high as the rows, and the
gain at a place is counted from the rows themselves.
"""

from collections.abc import Iterator, Mapping, Sequence

from gaugewright.checks.model import Found, Remade, Subject
from gaugewright.checks.wording import by_size, problem
from gaugewright.design.model import Piece, Triangle
from gaugewright.errors import Problem
from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import Row, Strip
from gaugewright.tolerances import TRIANGLE_FLAT_SHARE
from gaugewright.vocabulary import RowEdge

DIAGONAL = 2**0.5


def remade_triangle(piece: Piece, strip: Strip, gauges: Mapping[str, Gauge], lost: Mapping[tuple[str, RowEdge | None], float]) -> Remade:
    """Edges and finished measures from the rows of one size."""
    heights = [gauges[row.fabric].height / gauges[row.fabric].rows for row in strip.rows]
    last = gauges[strip.rows[-1].fabric]
    stitch = last.width / last.stitches
    half = sum((2 * height * height) ** 0.5 for height in heights)
    lower = strip.rows[-1].makes * stitch
    less = lost.get((piece.bottom, None), 0.0) * stitch / DIAGONAL + lost.get((piece.top, None), 0.0) * heights[-1] * DIAGONAL
    edges = {piece.bottom: 2 * half, "bottom": 2 * half, "starting": half, "far": half, piece.top: lower, "top": lower}
    wide = dict.fromkeys((piece.bottom, "bottom", "width", "widest"), 2 * (half - less))
    measures = wide | dict.fromkeys((piece.top, "top", "top_width"), lower) | {"narrowest": 0.0, "length": half - less, "longest": half - less}
    return Remade(measures, edges, sum(heights))


def check_triangles(subject: Subject) -> Found:
    """Stitches gained at each place over all rows, against those that are as wide as the rows are high."""
    problems: list[Problem] = []
    figures: list[str] = []
    for piece in subject.design.pieces:
        for section in piece.sections:
            if isinstance(section, Triangle):
                gauge = subject.design.fabric(section.fabric).gauge
                rows = {size: subject.grading.pieces[piece.key][size].main.rows for size in subject.sizes}
                exact = (gauge.height / gauge.rows) / (gauge.width / gauge.stitches)
                off = {size: gained_at_each(each) - len(each) * exact for size, each in rows.items()}
                told = by_size((size, f"{gained_at_each(each)} in {len(each)} rows, {off[size]:+.1f}") for size, each in rows.items())
                figures.append(f"{piece.key}: gained at each place {told} from flat")
                limits = {size: max(1.0, TRIANGLE_FLAT_SHARE * len(each) * exact) for size, each in rows.items()}
                problems += _flatness(piece, section, {size: gained_at_each(each) / len(each) for size, each in rows.items()}, exact, (
                    [size for size in rows if off[size] > limits[size]], [size for size in rows if off[size] < -limits[size]],
                ))
    return Found(tuple(problems), "; ".join(figures) or "no triangles")


def gained_at_each(rows: Sequence[Row]) -> int:
    """Stitches gained at each of the four places of a row, by the last one: all but the spine, from nothing."""
    return (rows[-1].makes - 1) // 4


def _flatness(
    piece: Piece, section: Triangle, gained: Mapping[str, float], exact: float, off_flat: tuple[list[str], list[str]]
) -> Iterator[Problem]:
    for name, does, off in zip(
        ("triangle-ruffles", "triangle-cups"), ("ruffles along its lower edges", "draws in along its lower edges"), off_flat, strict=True
    ):
        if off:
            texts = by_size((size, f"{gained[size]:.2f} stitches a row") for size in off)
            yield problem(
                name, f"{piece.key} {does}: {texts} gained at each place, and {exact:.2f} lie flat; no cycle of up to six rows comes nearer",
                section.origin, "block it well, or try a swatch whose rows are a little higher or lower", off, "warning",
            )
