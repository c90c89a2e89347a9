"""How far worked edges stray from the curves they are drawn as: armholes, necks, caps, size by size.

An edge of whole stitches and rows in few phrases can't lie on its curve. What it strays is measured from
the rows, in stitches; within one stitch it is the least step there is, over one a maker may see it.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import accumulate
from typing import NamedTuple

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.row_ends import RowEnd, row_ends
from gaugewright.checks.wording import by_size, cm, problem
from gaugewright.design.model import TOPS, Armhole, Cap, Neck, NeckEdge, Piece
from gaugewright.errors import Problem
from gaugewright.gauge.model import Gauge
from gaugewright.grading.armhole import armhole, armhole_curve, default_curve_rows
from gaugewright.grading.curves import Curve, ProfileImpossible, bell, deviation
from gaugewright.grading.necks import centre_of, neck, neck_curve
from gaugewright.grading.profile import Profile
from gaugewright.rounding import to_step
from gaugewright.tolerances import STRAY_STITCHES
from gaugewright.vocabulary import RowEdge, Schedules

SIDES: tuple[RowEdge, RowEdge] = ("starting", "far")

HAIR = 1e-6

FURTHEST = 24
"""So many stitches or rows more or less are tried, to say what would lie nearer."""

MOST_HELPED = 100
"""An edge of more stitches takes too long to try out, and no body is so wide there."""


class Edge(NamedTuple):
    """A shaped edge of one size: stitches gone after each row, those left at once on row 1 or before it among
    them (`block`), and the curve that the rest was drawn as from there."""

    gone: tuple[int, ...]
    block: int
    curve: Curve

    @property
    def strays(self) -> float:
        """The largest distance of a row's end from the curve, in stitches."""
        return max((abs(after - self.block - self.curve(row)) for row, after in enumerate(self.gone, start=1)), default=0.0)


def check_curves(subject: Subject) -> Found:
    """Each shaped edge's distance from its curve in each size; over a stitch it is a note."""
    figures: list[str] = []
    problems: list[Problem] = []
    for piece in subject.design.pieces:
        for index, section in enumerate(piece.sections):
            if not isinstance(section, (Armhole, Neck, NeckEdge, Cap)):
                continue
            strays = {size: found for size in subject.sizes if (found := strayed(subject, piece, index, size)) is not None}
            if strays:
                name = f"{'neck' if isinstance(section, (Neck, NeckEdge)) else type(section).__name__.lower()} of {piece.key}"
                figures.append(f"{name} {_list(subject, strays)}")
                problems += _told(subject, piece, index, name, strays)
    text = f"stitches off the curve, by size: {'; '.join(figures)}" if figures else "no curves"
    return Found(tuple(problems), text)


def _list(subject: Subject, strays: Mapping[str, float]) -> str:
    first, *others = (f"{to_step(strays[size], 0.1):.1f}" if size in strays else "–" for size in subject.sizes)
    return f"{first} ({', '.join(others)})" if set(others) - {first} else first


def strayed(subject: Subject, piece: Piece, index: int, size: str) -> float | None:
    """How far a section's shaped edges stray in one size; None where nothing is drawn as a curve."""
    found = [edge.strays for edge in edges_of(subject, piece, index, size)]
    return max(found, default=None)


def edges_of(subject: Subject, piece: Piece, index: int, size: str) -> Iterator[Edge]:
    """The shaped edges of a section, measured anew from the rows."""
    plan, strips, section = subject.grading.plans[piece.key][size], subject.grading.pieces[piece.key][size].strips, piece.sections[index]
    gauge = subject.design.fabric(section.fabric).gauge
    ends = row_ends(strips, {fabric.key: fabric.gauge for fabric in subject.design.fabrics})
    first = sum(part.rows for part in plan.sections[:index])
    if isinstance(section, Neck):
        centre = strips[0].last_count - sum(strip.start.stitches for strip in strips[1:])
        for edge in ends.neck:
            gone = gone_of(edge, gauge)
            if section.shape != "square":
                yield Edge(gone, 0, neck_curve(section.shape, centre + 2 * gone[-1], len(gone)))
    if not isinstance(section, (Armhole, NeckEdge, Cap)):
        return
    for side in SIDES:
        goes_on = isinstance(section, Armhole) and isinstance(piece.sections[-1], TOPS) and index == len(piece.sections) - 2
        rows = plan.edge_end(side) - first if goes_on else plan.sections[index].rows
        if not isinstance(section, Cap) and section.at not in ("both", side):
            continue
        gone = gone_of(getattr(ends, side)[first : first + rows], gauge)
        yield from _outer(section, gone, gauge)


def gone_of(rows: Sequence[RowEnd], gauge: Gauge) -> tuple[int, ...]:
    """Stitches gone at an edge after each row, by how far its row ends have moved inwards."""
    stitch = gauge.width / gauge.stitches
    return tuple(int(to_step(-moved / stitch, 1.0)) for moved in accumulate(row.move for row in rows))


def _outer(section: Armhole | NeckEdge | Cap, gone: tuple[int, ...], gauge: Gauge) -> Iterator[Edge]:
    """An armhole or a cap after what it leaves on its first row, or a half front's neck edge."""
    if isinstance(section, NeckEdge):
        width = 2 * gone[-1]
        yield Edge(gone, centre_of(section.shape, width, len(gone)) // 2, neck_curve(section.shape, width, len(gone)))
        return
    rest = gone[-1] - gone[0]
    if rest:
        rows = len(gone) if isinstance(section, Cap) else default_curve_rows(gone[-1], len(gone), gauge)
        curve = bell(rest, rows - 1) if isinstance(section, Cap) else armhole_curve(rest, rows - 1)
        yield Edge(gone, gone[0], lambda row: curve(row - 1))


def _told(subject: Subject, piece: Piece, index: int, name: str, strays: Mapping[str, float]) -> Iterator[Problem]:
    off = {size: stitches for size, stitches in strays.items() if stitches > STRAY_STITCHES + HAIR}
    if not off:
        return
    section, stitch = piece.sections[index], subject.design.fabric(piece.sections[index].fabric).gauge.stitch_width
    texts = by_size((size, f"{to_step(stitches, 0.1):.1f} stitches, {cm(stitches * stitch)}") for size, stitches in off.items())
    size = max(off, key=lambda size: off[size])
    hint = _hint(subject, piece, index, size)
    yield problem("curve-strays", f"the edge at the {name} strays from its curve by {texts}", section.origin, hint, off, "note")


def _hint(subject: Subject, piece: Piece, index: int, size: str) -> str:
    """What would lie nearer in the size that strays most; a cap is eased in, so that nothing needs doing."""
    section, edges = piece.sections[index], tuple(edges_of(subject, piece, index, size))
    gauge, gone = subject.design.fabric(section.fabric).gauge, edges[0].gone
    if isinstance(section, Cap):
        return "nothing needs doing: a cap's edge is eased into its armhole"
    if gone[-1] > MOST_HELPED:
        return f"four phrases can't follow an edge of {gone[-1]} stitches more nearly: check its widths"
    if isinstance(section, Armhole):
        tries = ((block, _armhole(gone[-1], len(gone), block, gauge)) for block in _near(gone[0], 1, gone[-1]))
        found = next((block for block, off in tries if off <= STRAY_STITCHES), gone[-1])
        return f"write `block: {cm(gauge.width_of(found))}`, so that {found} stitches are left at once in {size}"
    assert isinstance(section, (Neck, NeckEdge))
    width = 2 * gone[-1] + (0 if isinstance(section, NeckEdge) else _centre(subject, piece, size))
    depths = ((rows, _neck(section, width, rows, subject.design.conventions.schedules)) for rows in _near(len(gone), 1, len(gone) + FURTHEST))
    deep = next((rows for rows, off in depths if off <= STRAY_STITCHES), None)
    if deep is None:
        return "make the neck less wide, or work it in fabric of fewer rows"
    return f"make it {cm(gauge.height_of(deep))} deep, {deep} rows in {size}"


def _centre(subject: Subject, piece: Piece, size: str) -> int:
    strips = subject.grading.pieces[piece.key][size].strips
    return strips[0].last_count - sum(strip.start.stitches for strip in strips[1:])


def _near(count: int, least: int, most: int) -> Iterator[int]:
    """Counts by their distance from one."""
    for number in range(1, FURTHEST + 1):
        yield from (other for other in (count + number, count - number) if least <= other <= most)


def _armhole(stitches: int, rows: int, block: int, gauge: Gauge) -> float:
    """How far an armhole with another block would stray."""
    curved = default_curve_rows(stitches, rows, gauge)
    made = armhole(stitches, rows, block, None, gauge)
    rest = Profile(curved - 1, tuple(step._replace(row=step.row - 1) for step in made.steps[1:]))
    return deviation(rest, armhole_curve(stitches - block, curved - 1))


def _neck(section: Neck | NeckEdge, width: int, rows: int, habit: Schedules) -> float:
    """How far a neck of another depth would stray."""
    try:
        return deviation(neck(section.shape, width, rows, habit).side, neck_curve(section.shape, width, rows))
    except ProfileImpossible:
        return float("inf")
