"""Do picked-up bands lie flat? Each row is held to the length that the corners of its edges leave it.

A corner that turns inwards by an angle takes 2 tan(angle / 2) of a row's depth off it, a curve that turns as
far the angle itself. Angles are measured anew from the rows of the pieces that the band is on.
"""

import math
from collections.abc import Iterator, Sequence

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.rims import rim_rate
from gaugewright.checks.row_ends import RowEnd, RowEnds, row_ends
from gaugewright.checks.wording import by_size, cm, count_of, problem
from gaugewright.design.model import NeckEdge, Piece
from gaugewright.errors import Problem
from gaugewright.grading.corners import DEEPEST_BAND, EXPECTED, all_sites
from gaugewright.grading.mitre import Site
from gaugewright.tolerances import CORNER_STITCHES, SAME_LENGTH
from gaugewright.vocabulary import RowEdge


def check_corners(subject: Subject) -> Found:
    """Each row of each band is within a stitch at each of its corners of what lies flat there."""
    problems: list[Problem] = []
    off: list[float] = []
    worked = 0
    for piece in subject.design.pieces:
        sites = list(dict.fromkeys(corner.site for corner in subject.grading.plans[piece.key].values[0].corners))
        left = [site for site in all_sites(piece, subject.design) if site.kind in EXPECTED] if piece.start.corners == () else []
        faults, notes = [], []
        for size in subject.sizes:
            stray = max(_strays(subject, piece, sites, size), key=abs, default=0.0)
            off += [stray] if sites else []
            if abs(stray) > len(subject.grading.plans[piece.key][size].corners) * CORNER_STITCHES * _stitch(subject, piece) + SAME_LENGTH:
                faults.append((size, f"{cm(abs(stray))} too {'long' if stray > 0 else 'short'}"))
            extra = max(_strays(subject, piece, left, size), key=abs, default=0.0)
            if abs(extra) > _stitch(subject, piece) * len(left):
                notes.append((size, f"{cm(abs(extra))} too {'long' if extra > 0 else 'short'}"))
        worked += len(subject.grading.plans[piece.key].values[0].corners)
        if faults:
            problems.append(problem(
                "band-not-flat", f"a row of {piece.key} doesn't lie flat at its corners: {by_size(faults)}", piece.start.origin,
                "its counts don't follow from its corners; please report it with this spec", [size for size, _ in faults],
            ))
        if notes and subject.grading.pieces[piece.key].values[0].outline.heights[-1] <= DEEPEST_BAND:
            kinds = " and ".join(dict.fromkeys(site.kind for site in left))
            problems.append(problem(
                "band-not-flat", f"{piece.key} runs straight over its corners ({kinds}), so that its outer edge doesn't lie flat: {by_size(notes)}", piece.start.origin,
                "take out `corners: none`, or let it stand up", [size for size, _ in notes], "note",
            ))
    figures = f"{count_of(worked, 'corner')}, rows {cm(max(map(abs, off)))} from flat at most" if worked else "no band turns a corner"
    return Found(tuple(problems), figures)


def _stitch(subject: Subject, piece: Piece) -> float:
    gauge = subject.design.fabric(piece.start.fabric).gauge
    return gauge.width / gauge.stitches


def _strays(subject: Subject, piece: Piece, sites: Sequence[Site], size: str) -> Iterator[float]:
    """How much longer each row is than lies flat, mm: depth is measured from the pick-up row's middle to its own."""
    if not sites:
        return
    rate = sum(_rate(subject, piece, site, size) for site in sites)
    strip = subject.grading.pieces[piece.key][size].main
    depth = 0.0
    for row in strip.rows[1:]:
        gauge = subject.design.fabric(row.fabric).gauge
        depth += gauge.height / gauge.rows
        yield row.makes * _stitch(subject, piece) - (strip.start.stitches * _stitch(subject, piece) - rate * depth)


def _rate(subject: Subject, piece: Piece, site: Site, size: str) -> float:
    """What a mm of depth takes off a row at one corner."""
    key, name = piece.start.edges[site.edge]
    match site.kind:
        case "point":
            return _sharp(math.pi - 2 * _lean(_ends(subject, key, size).neck[0]))
        case "square":
            return _sharp(math.pi / 2)
        case "hem" | "tip":
            return -_sharp(math.pi / 2)
        case "outer" | "valley":
            return rim_rate(subject, key, site.kind, size)
        case "underarm":
            return math.pi / 2 if _curved(subject, key, name, size) else _sharp(math.pi / 2)
        case "neck start":
            return -_sharp(_front_lean(subject, key, size))
        case "back neck":
            front = piece.start.edges[site.edge + (1 if site.second else -1)][0]
            sloped = sum(_slope(subject, one, size) for one in (key, front))
            return _sharp(_front_lean(subject, front, size) + math.pi / 2 - sloped)
    raise TypeError(f"no angle of the corner {site!r}")


def _sharp(turn: float) -> float:
    return 2 * math.tan(turn / 2)


def _ends(subject: Subject, key: str, size: str) -> RowEnds:
    gauges = {fabric.key: fabric.gauge for fabric in subject.design.fabrics}
    return row_ends(subject.grading.pieces[key][size].strips, gauges)


def _lean(rows: Sequence[RowEnd]) -> float:
    """An edge's angle from upright over all of its rows."""
    return math.atan2(abs(sum(row.move for row in rows)), sum(row.height for row in rows))


def _curved(subject: Subject, key: str, name: str, size: str) -> bool:
    """Whether more goes at an armhole than the stitches left at its foot."""
    side = next(edge.side for edge in subject.design.piece(key).edges if edge.name == name and edge.top is None)
    rows = getattr(_ends(subject, key, size), side)[: subject.grading.plans[key][size].edge_end(side)]
    block = next((index for index, row in enumerate(rows) if row.stair), len(rows))
    return any(abs(row.move) > SAME_LENGTH for row in rows[block + 1 :])


def _front_lean(subject: Subject, key: str, size: str) -> float:
    """The lean of a half front's neck edge."""
    top = subject.design.piece(key).sections[-1]
    assert isinstance(top, NeckEdge)
    ends = _ends(subject, key, size)
    rows = subject.grading.plans[key][size].sections[-1].rows
    return _lean((ends.starting if top.at == "starting" else ends.far)[-rows:])


def _slope(subject: Subject, key: str, size: str) -> float:
    """The angle of a shoulder: its rise over the stitches it is wide."""
    top = subject.design.piece(key).sections[-1]
    side: RowEdge = "far" if isinstance(top, NeckEdge) and top.at == "starting" else "starting"
    rows = _ends(subject, key, size).starting[subject.grading.plans[key][size].edge_end(side) :]
    return math.atan2(sum(row.height for row in rows), subject.remade[key][size].edges["shoulder"])
