"""Where a picked-up band turns a corner, by how much, and what that takes from its rows.

In: the designed piece, the pieces it is picked up on, its stitches. Out: corners of one size, and which there
are at all (once for all sizes). A sharp turn of an inner corner takes 2 tan(turn / 2) of its depth off a row's
length, one that a curve makes takes the turn itself; an outer corner adds as much.
"""

import itertools
import math
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from gaugewright.design.model import Armhole, Design, Even, Fabric, Motif, Neck, NeckEdge, Piece, Shoulders, Triangle
from gaugewright.design.rims import on_rim
from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.grading.mitre import Corner, Site, runs_out
from gaugewright.grading.model import EdgeStart, GradedPiece, Point, RimPick
from gaugewright.grading.rings import along_rows
from gaugewright.problem_text import count_of
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Environment
from gaugewright.tolerances import SAME_LENGTH
from gaugewright.trade.stitches import decrease_of
from gaugewright.vocabulary import CornerKind, RowEdge

EXPECTED: tuple[CornerKind, ...] = ("point", "square", "underarm", "hem", "tip", "outer", "valley")
"""Corners that a band is shaped at unless it says otherwise; over a neck's start and the back neck it usually runs straight."""

DEEPEST_BAND = 60.0
"""What is deeper than 6 cm is no band but a sleeve, a collar or a border, and hangs by itself (common practice, no source)."""

Pieces = Mapping[str, GradedPiece]


class Turn(NamedTuple):
    """A corner of one size: its turn in radians, inwards if positive; whether a curve makes it; its marked stitch."""

    site: Site
    turn: float
    curved: bool
    at: int

    def lost(self, depth: float) -> float:
        """What a row so deep in the band is shorter by than the edge, mm; negative where it is longer.

        >>> round(Turn(Site("square", 0), math.pi / 2, False, 9).lost(10.0), 6)
        20.0
        """
        return (self.turn if self.curved else 2 * math.tan(self.turn / 2)) * depth


def sites(piece: Piece, design: Design) -> tuple[Site, ...]:
    """The corners that a band is shaped at, in the order of its stitches, be it as deep as it may."""
    found = tuple(sorted(all_sites(piece, design), key=lambda site: (site.edge, site.second)))
    asked = piece.start.corners
    if asked is not None:
        return tuple(site for site in found if site.kind in asked)
    refused = _refused(design.fabric(piece.start.fabric)) and not on_rim(piece, design)
    return tuple(site for site in found if site.kind in EXPECTED) if not refused else ()


def all_sites(piece: Piece, design: Design) -> Iterator[Site]:
    edges = piece.start.edges
    if piece.start.kind != "pick up" or not all(isinstance(section, Even) for section in piece.sections):
        return
    if on_rim(piece, design):
        motif = design.piece(edges[0][0]).sections[0]
        yield Site("outer", 0)
        yield from [Site("valley", 0)] if isinstance(motif, Motif) and motif.sides == 6 else []
        return
    for index, (key, name) in enumerate(edges):
        top = design.piece(key).sections[-1]
        if isinstance(top, Triangle) and name in ("top", design.piece(key).top):
            yield Site("tip", index)
        if name == "neck" and isinstance(top, Neck) and top.shape in ("v", "square"):
            yield Site("point" if top.shape == "v" else "square", index)
            yield from [Site("square", index, True)] if top.shape == "square" else []
    if len(edges) == 2 and all(_is_armhole(design.piece(key), name) for key, name in edges):
        yield from (Site("underarm", 0), Site("underarm", 1))
    pairs = zip(range(len(edges)), (*range(1, len(edges)), *([0] if piece.start.ring else ())), strict=False)
    for one, other in pairs:
        yield from _between(edges, one, other, design)


def _between(edges: tuple[tuple[str, str], ...], one: int, other: int, design: Design) -> Iterator[Site]:
    """A corner where one edge ends and the next begins."""
    (key, name), (next_key, next_name) = edges[one], edges[other]
    piece, following = design.piece(key), design.piece(next_key)
    if key == next_key and {along_rows(design, edges[one]), along_rows(design, edges[other])} == {True, False}:
        ends = {name, next_name}
        if ends & {"bottom", piece.bottom} or (ends & {"top", piece.top} and not _shaped(piece)):
            yield Site("hem", one)
    if key == next_key and isinstance(piece.sections[-1], NeckEdge):
        if next_name == "neck" and along_rows(design, edges[one]):
            yield Site("neck start", other)
        elif name == "neck" and along_rows(design, edges[other]):
            yield Site("neck start", one, True)
    if {name, next_name} == {"neck"}:
        if isinstance(piece.sections[-1], NeckEdge) and isinstance(following.sections[-1], Shoulders):
            yield Site("back neck", other)
        elif isinstance(piece.sections[-1], Shoulders) and isinstance(following.sections[-1], NeckEdge):
            yield Site("back neck", one, True)


def _shaped(piece: Piece) -> bool:
    return isinstance(piece.sections[-1], (Neck, NeckEdge, Shoulders))


def _is_armhole(piece: Piece, name: str) -> bool:
    """Whether an edge runs along an armhole that is shaped, from its foot to the shoulder."""
    shaped = any(isinstance(section, Armhole) for section in piece.sections)
    return shaped and any(edge.name == name and edge.bottom is not None and edge.top is None for edge in piece.edges)


def _refused(fabric: Fabric) -> str:
    """Why a fabric can't be shaped at corners; nothing where it can."""
    if fabric.rule.multiple > 2:
        return f"the fabric {fabric.key} repeats over {fabric.rule.multiple} stitches, and a corner changes two at a time"
    if fabric.pattern is not None:
        return f"the fabric {fabric.key} has a stitch pattern, and its corners would break it"
    try:
        decrease_of(fabric.stitch, 3)
    except UserError as lacking:
        return str(lacking.message)
    return ""


def corner_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Corners asked for that the edges don't have, or that the fabric can't turn."""
    found = {site.kind for site in all_sites(piece, design)}
    asked = tuple(sorted(found)) if piece.start.corners is None and on_rim(piece, design) else piece.start.corners
    if not asked:
        return
    for kind in asked:
        if kind not in found:
            even = all(isinstance(section, Even) for section in piece.sections)
            has = f"it has {' and '.join(sorted(found))}" if found else "it has none" if even else "it is shaped by itself"
            message = f"{piece.key} turns no corner of the kind {kind}: {has}"
            hint = f"write `corners: [{', '.join(sorted(found))}]`" if found else "take out `corners`"
            yield Problem("no-such-corner", message, piece.start.origin, hint)
    refused = _refused(design.fabric(piece.start.fabric))
    if refused and found & set(asked):
        yield Problem("corner-impossible", f"{piece.key} can't be shaped at its corners: {refused}", piece.start.origin, "write `corners: none`, or use another fabric")


def turns(piece: Piece, design: Design, start: EdgeStart, pieces: Pieces, env: Environment) -> tuple[Turn, ...]:
    """The corners of one size, each with its turn and the stitch that is marked there."""
    gauge = design.fabric(piece.start.fabric).gauge
    found: list[Turn] = []
    for site in sites(piece, design):
        rim = start.pick_ups[site.edge].rim
        if rim is not None:
            found += _rim_turns(site, rim)
            continue
        up = start.pick_ups[site.edge]
        edge, graded = design.piece(up.piece), pieces[up.piece]
        before = sum(one.stitches for one in start.pick_ups[: site.edge])
        turn, curved, within = math.pi / 2, False, 1
        match site.kind:
            case "point":
                turn, within = math.pi - 2 * _lean(graded.outline.sides[0].far), (up.stitches + 1) // 2
            case "square":
                within = (up.stitches - up.level) // 2  # the last st beside the level stretch
            case "underarm":
                block, whole = _block(edge, graded, up.edge)
                curved, within, site_second = not whole, half_up(gauge.stitches_in(block)), site.edge == 1
                site = site._replace(second=site_second)
            case "hem":
                turn, site = -turn, site._replace(second=True)
            case "tip":
                turn, within = -turn, (up.stitches + 1) // 2  # on the spine
            case "neck start":
                turn = -_lean(_neck_edge(edge, graded))
            case "back neck":
                turn = _over_shoulder(piece, design, site, pieces, env)
        within = min(max(1, within), up.stitches)
        found.append(Turn(site, turn, curved, before + (up.stitches + 1 - within if site.second else within)))
    return tuple(sorted(found, key=lambda turn: turn.at))


def _rim_turns(site: Site, rim: RimPick) -> Iterator[Turn]:
    """All corners of a rim that are of one kind: each has the stitch at the end of a side."""
    turn = 2 * math.pi / rim.layout.sides * (-1 if site.kind == "outer" else 1)
    ends = itertools.accumulate(rim.along)
    yield from (Turn(site, turn, False, at) for at, outer in zip(ends, rim.outer, strict=True) if outer == (site.kind == "outer"))


def _lean(points: tuple[Point, ...]) -> float:
    """How far an edge leans from upright, from its first point to its last."""
    (x0, y0), (x1, y1) = points[0], points[-1]
    return math.atan2(abs(x1 - x0), y1 - y0)


def _neck_edge(piece: Piece, graded: GradedPiece) -> tuple[Point, ...]:
    """The neck edge of a half front."""
    top = piece.sections[-1]
    assert isinstance(top, NeckEdge)
    points = graded.outline.starting if top.at == "starting" else graded.outline.far
    return points[-graded.edges["neck"].rows - 1 :]


def _block(piece: Piece, graded: GradedPiece, name: str) -> tuple[float, bool]:
    """The stitches left at once at an armhole's foot, in mm, and whether they are all that goes there."""
    side: RowEdge = next(edge.side for edge in piece.edges if edge.name == name and edge.top is None)
    points = graded.outline.starting if side == "starting" else graded.outline.far
    row = min(graded.outline.left[0 if side == "starting" else 1], default=0)
    if not row:
        return 0.0, False
    level = abs(points[row][0] - points[row - 1][0])
    top = points[min(len(points), row + graded.edges[name].rows) - 1]
    return level, abs(top[0] - points[row][0]) < SAME_LENGTH


def _over_shoulder(piece: Piece, design: Design, site: Site, pieces: Pieces, env: Environment) -> float:
    """At a shoulder seam laid open: a straight back neck, the slopes of both shoulders, the front edge's lean."""
    key, front_key = (piece.start.edges[index][0] for index in (site.edge, site.edge + (1 if site.second else -1)))
    sloped = 0.0
    for one in (design.piece(key), design.piece(front_key)):
        slope = getattr(one.sections[-1], "slope", None)
        sloped += 0.0 if slope is None else math.atan2(env.length(slope), pieces[one.key].edges["shoulder"].length)
    return _lean(_neck_edge(design.piece(front_key), pieces[front_key])) + math.pi / 2 - sloped


def band_depths(piece: Piece, rows: tuple[int, ...], design: Design) -> tuple[float, ...]:
    """How deep in the band each row after the first lies: the rows between it and the edge, mm."""
    heights = [design.fabric(section.fabric).gauge.row_height for section, count in zip(piece.sections, rows, strict=True) for _ in range(count)]
    return tuple(itertools.accumulate(heights[1:]))


def corners_of(piece: Piece, found: tuple[Turn, ...], start: EdgeStart, depths: tuple[float, ...], design: Design, size: str) -> tuple[Corner, ...]:
    """What each corner takes on each row after the first; `depths` are those rows' depths in the band, mm.

    Raises `corner-impossible` where the stitches beside a corner run out.
    """
    fabric = design.fabric(piece.start.fabric)
    made = []
    for turn in found:
        gone = [0, *(_in_twos(fabric.gauge.stitches_in(turn.lost(depth))) for depth in depths)]
        made.append(Corner(turn.site, turn.at, tuple(before - after for before, after in zip(gone, gone[1:], strict=False))))
    corners = tuple(made)
    fault = runs_out(corners, start.stitches, fabric.counts, fabric.worked in ("rows", "turned rounds"))
    if fault is not None:
        most = fabric.gauge.height_of(fault.row - 1) / 10
        message = f"row {fault.row} of {piece.key} has {count_of(fault.found, 'stitch', 'stitches')} beside a corner, and needs {fault.needed}"
        hint = f"make the band at most {most:.1f} cm deep, or write `corners: none`"
        if fabric.counts and fault.needed == 1:  # only the turning chain stands in the corner's way
            hint = f"don't count the turning chain of {fabric.key}: `turning_chain: {{chains: {fabric.chains}}}`"
        raise ProblemsFound([Problem("corner-impossible", message, piece.start.origin, hint, size)])
    return corners


def _in_twos(stitches: float) -> int:
    """The nearest even number of stitches.

    >>> _in_twos(2.9), _in_twos(3.1), _in_twos(-1.4)
    (2, 4, -2)
    """
    return int(math.copysign(2 * half_up(abs(stitches) / 2), stitches))
