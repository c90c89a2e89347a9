"""Seams: do the edges sewn together fit, in every size, and do colour bands meet across them?"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.raglan_seams import blocks_differ, raglan_depth, slants_apart
from gaugewright.checks.remeasure import side_edges, span_of
from gaugewright.checks.terms import fabrics_of
from gaugewright.checks.wording import by_size, cm, count_of, problem
from gaugewright.design.flat_raglans import is_raglan_seam
from gaugewright.design.model import Cap, EdgeName, NamedEdge, Seam
from gaugewright.design.sides import is_folded
from gaugewright.errors import Problem
from gaugewright.grading.model import EdgeLength
from gaugewright.tolerances import EASED_SLACK, SAME_LENGTH, raglan_tolerance, seam_tolerance

LARGEST_RATIO = 5
"""A sewing ratio in larger numbers than these can't be held in mind."""


@dataclass(frozen=True, slots=True)
class Pair:
    """The two sides of a seam in one size, each with its edges laid end to end; lengths as measured anew."""

    join: EdgeLength
    to: EdgeLength
    set_in: bool = False

    @property
    def kind(self) -> str:
        """What is sewn to what: rows, stitches, stitches eased into row ends, a curve of both, or a cap set into its armhole."""
        if self.set_in:
            return "cap"
        if any(edge.rows and edge.stitches for edge in (self.join, self.to)):
            return "curve"
        if self.join.stitches and self.to.stitches and not (self.join.rows or self.to.rows):
            return "stitches"
        return "rows" if not (self.join.stitches or self.to.stitches) else "eased"


def check_seams(subject: Subject) -> Found:
    """Each seam in each size: lengths within one row or 3 %, raglan edges within a tenth, rows against rows equal, eased edges not short."""
    problems: list[Problem] = []
    figures = []
    for seam in subject.design.seams:
        missing = tuple(_missing(subject, seam))
        problems += missing
        if missing or is_folded(subject.design, seam):  # its halves are checked by themselves
            continue
        pairs = {size: _pair(subject, seam, size) for size in subject.sizes}
        problems += _mismatch(subject, seam, pairs)
        problems += _counts_differ(subject, seam, pairs)
        problems += _too_short(seam, pairs)
        problems += _cap_off(subject, seam, pairs)
        problems += blocks_differ(subject, seam)
        figures.append(_figures(seam, pairs))
    return Found(tuple(problems), "; ".join(figures) or "no seams")


def _other(seam: Seam) -> str:
    return " + ".join(str(edge) for edge in seam.to)


def _missing(subject: Subject, seam: Seam) -> Iterator[Problem]:
    for edge in (seam.join, *seam.to):
        sized = subject.grading.pieces[edge.piece]
        lacking = [size for size, piece in sized.items() if edge.edge not in piece.edges]
        if lacking:
            known = ", ".join(sized[lacking[0]].edges)
            yield problem("unknown-edge", f"{edge.piece} has no edge {edge.edge} to sew; it has {known}", edge.origin, f"use one of those, or name {edge.edge} under the edges of {edge.piece}", lacking)


def _pair(subject: Subject, seam: Seam, size: str) -> Pair:
    def laid_together(names: tuple[EdgeName, ...]) -> EdgeLength:
        graded = [subject.grading.pieces[name.piece][size].edges[name.edge] for name in names]
        length = sum(subject.remade[name.piece][size].edges[name.edge] for name in names)
        return EdgeLength(length, sum(edge.rows for edge in graded), sum(edge.stitches for edge in graded), sum(edge.corners for edge in graded))

    return Pair(laid_together((seam.join,)), laid_together(seam.to), any(end.edge == "cap" for end in (seam.join, *seam.to)))


def _row_height(subject: Subject, seam: Seam) -> float:
    keys = [key for edge in (seam.join, *seam.to) for key in fabrics_of(subject.design.piece(edge.piece))]
    return max(subject.design.fabric(key).gauge.row_height for key in keys)


def _mismatch(subject: Subject, seam: Seam, pairs: dict[str, Pair]) -> Iterator[Problem]:
    height, raglan = _row_height(subject, seam), is_raglan_seam(subject.design, seam)
    tolerance = raglan_tolerance if raglan else seam_tolerance
    off = [
        (size, f"{cm(pair.join.length)} meets {cm(pair.to.length)}") for size, pair in pairs.items()
        if pair.kind != "cap" and abs(pair.join.length - pair.to.length) > tolerance(max(pair.join.length, pair.to.length), height) + SAME_LENGTH
    ]
    if off and raglan:
        deeper = max(raglan_depth(pairs[size].join.length, pairs[size].to.length, height * pairs[size].join.rows) for size, _ in off)
        yield slants_apart(seam, off, deeper)
    elif off:
        aim = " + ".join(f"edge({edge})" for edge in seam.to)
        kind = pairs[off[0][0]].kind
        hint = (
            f"let {seam.join} and {_other(seam)} begin and end at the same levels" if kind == "rows"
            else f"give {seam.join.piece} a taper with `target: {aim}` that ends at {seam.join.edge}"
        )
        yield problem(
            "seam-mismatch", f"{seam.join} doesn't fit {_other(seam)}: {by_size(off)}; within one row ({cm(height)}) or 3 % is expected",
            seam.origin, hint, [size for size, _ in off],
        )


def _counts_differ(subject: Subject, seam: Seam, pairs: dict[str, Pair]) -> Iterator[Problem]:
    """Where both sides have one gauge, row meets row and stitch meets stitch."""
    rows_alike, stitches_alike = _gauges_alike(subject, seam)
    for kind, alike, name in (("rows", rows_alike, "seam-rows"), ("stitches", stitches_alike, "seam-stitches")):
        off = [
            (size, f"{getattr(pair.join, kind)} {kind} meet {getattr(pair.to, kind)}") for size, pair in pairs.items()
            if alike and pair.kind == kind and getattr(pair.join, kind) != getattr(pair.to, kind) and not _turns_a_corner(subject, seam, size)
        ]
        if off and kind == "rows":
            yield problem(
                "seam-rows", f"{seam.join} and {_other(seam)} have the same fabric, and {by_size(off)}; equal rows are expected",
                seam.origin, _same_rows(subject, seam), [size for size, _ in off],
            )
        elif off:
            yield problem(
                name, f"{seam.join} and {_other(seam)} don't meet stitch for stitch: {by_size(off)}", seam.origin,
                f"take the width of the one from the other: edge({seam.to[0]})", [size for size, _ in off], "note",
            )


def _same_rows(subject: Subject, seam: Seam) -> str:
    if is_raglan_seam(subject.design, seam):
        return f"give {seam.join.piece} and {' and '.join(edge.piece for edge in seam.to)} the same `length` for their raglan_edge"
    return f"let {seam.join} and {_other(seam)} begin and end at the same levels"


def _turns_a_corner(subject: Subject, seam: Seam, size: str) -> bool:
    """Whether one side of a seam alone runs along stitches left, as at an underarm: its rows then say nothing of its length."""
    if is_raglan_seam(subject.design, seam):
        return False
    join, *to = (subject.grading.pieces[edge.piece][size].edges[edge.edge].corners > 0 for edge in (seam.join, *seam.to))
    return join != any(to)


def _gauges_alike(subject: Subject, seam: Seam) -> tuple[bool, bool]:
    pieces = [subject.design.piece(edge.piece) for edge in (seam.join, *seam.to)]
    fabrics = [tuple(subject.design.fabric(key).gauge for key in fabrics_of(piece)) for piece in pieces]
    heights = {tuple(gauge.row_height for gauge in each) for each in fabrics}
    widths = {gauge.stitch_width for each in fabrics for gauge in each}
    return len(heights) == 1, len(widths) == 1


def _too_short(seam: Seam, pairs: dict[str, Pair]) -> Iterator[Problem]:
    """A stitch edge eased into row ends is never shorter than they are: cloth can be eased in, not stretched."""
    off = []
    for size, pair in pairs.items():
        if pair.kind == "eased":
            eased, opening = (pair.join, pair.to) if pair.join.stitches else (pair.to, pair.join)
            if eased.length < opening.length - EASED_SLACK:
                off.append((size, f"{cm(eased.length)} for an opening of {cm(opening.length)}"))
    if off:
        yield problem(
            "eased-edge-short", f"{seam.join} with {_other(seam)}: the edge eased in is shorter than its opening: {by_size(off)}", seam.origin,
            "add `round: up` to the taper that ends at this edge, with the opening's length as its target", [size for size, _ in off],
        )


def _cap_off(subject: Subject, seam: Seam, pairs: dict[str, Pair]) -> Iterator[Problem]:
    """A cap's edge is never shorter than its armhole, and longer by its ease and a row at most."""
    height, short, long = _row_height(subject, seam), [], []
    for size, pair in pairs.items():
        if pair.kind != "cap":
            continue
        over = pair.join.length - pair.to.length
        over = over if pair.join.stitches else -over
        text = f"{cm(pair.join.length)} meets {cm(pair.to.length)}"
        if over < -EASED_SLACK:
            short.append((size, text))
        elif over > _cap_ease(subject, seam, size) + height + SAME_LENGTH:
            long.append((size, text))
    hint = f"name all edges it is sewn into in the cap's `fit`, and sew it to those: {_other(seam)}"
    for name, off in (("eased-edge-short", short), ("seam-mismatch", long)):
        if off:
            message = f"the cap doesn't fill its armhole: {by_size(off)}; none shorter, and at most a row ({cm(height)}) longer is expected"
            yield problem(name, message, seam.origin, hint, [size for size, _ in off])


def _cap_ease(subject: Subject, seam: Seam, size: str) -> float:
    """The ease that the cap in a seam states, in mm."""
    for edge in (seam.join, *seam.to):
        for section in subject.design.piece(edge.piece).sections:
            if isinstance(section, Cap) and section.ease is not None and edge.edge == "cap":
                return subject.environments[size].length(section.ease)
    return 0.0


def _figures(seam: Seam, pairs: dict[str, Pair]) -> str:
    """The largest difference and, for an eased edge, the sewing ratio: along stitches left at a corner rows alone give none."""
    worst = max(pairs, key=lambda size: abs(pairs[size].join.length - pairs[size].to.length))
    gap = f"{seam.join} to {_other(seam)}: up to {cm(abs(pairs[worst].join.length - pairs[worst].to.length))} apart"
    ratios = dict.fromkeys(_ratio(pair) for pair in pairs.values() if pair.kind == "eased" and not (pair.join.corners or pair.to.corners))
    return f"{gap}, {' or '.join(ratios)}" if ratios else gap


def _ratio(pair: Pair) -> str:
    stitches, rows = (pair.join.stitches, pair.to.rows) if pair.join.stitches else (pair.to.stitches, pair.join.rows)
    ratio = Fraction(stitches, max(1, rows)).limit_denominator(LARGEST_RATIO)
    return f"{count_of(ratio.numerator, 'stitch', 'stitches')} to {count_of(ratio.denominator, 'row')}"


def check_bands_meet(subject: Subject) -> Found:
    """Pieces with the same colour bands change colour at the same rows of the seam between them."""
    problems: list[Problem] = []
    compared = 0
    for seam in subject.design.seams:
        if len(seam.to) != 1 or not _share_bands(subject, seam.join, seam.to[0]):
            continue
        off = []
        for size in subject.sizes:
            first, second = _band_rows(subject, seam.join, size), _band_rows(subject, seam.to[0], size)
            for band in first.keys() & second.keys():
                compared += 1
                if first[band] != second[band]:
                    off.append((size, f"band {band + 1} ends after row {first[band]} of {seam.join} and row {second[band]} of {seam.to[0]}"))
        if off:
            problems.append(problem(
                "bands-do-not-meet", f"colour bands don't meet across this seam: {by_size(sorted(off, key=lambda one: subject.sizes.index(one[0])))}",
                seam.origin, "let both pieces have the same sections up to the top of the bands", [size for size, _ in off],
            ))
    return Found(tuple(problems), f"{count_of(compared, 'colour change')} compared over all sizes" if compared else "no bands meet at a seam")


def _share_bands(subject: Subject, one: EdgeName, other: EdgeName) -> bool:
    bands = [subject.design.piece(edge.piece).colours.bands for edge in (one, other)]
    named = [_row_edge(subject, edge) for edge in (one, other)]
    return all(named) and bands[0] is not None and bands[1] is not None and bool(bands[0].key) and bands[0].key == bands[1].key


def _row_edge(subject: Subject, edge: EdgeName) -> NamedEdge | None:
    return next((named for named in side_edges(subject.design.piece(edge.piece)) if named.name == edge.edge), None)


def _band_rows(subject: Subject, edge: EdgeName, size: str) -> dict[int, int]:
    """For each band of a piece, the row of the edge after which it ends, where it ends within the edge.

    Empty where a section's own colour hides the bands.
    """
    piece, named = subject.design.piece(edge.piece), _row_edge(subject, edge)
    assert named is not None
    order = piece.colours.order
    strips = subject.grading.pieces[piece.key][size].strips
    rows = (*strips[0].rows, *(strips[-1].rows if len(strips) > 1 else ()))
    changes = [number for number in range(1, len(rows)) if rows[number].runs[0].colour != rows[number - 1].runs[-1].colour]
    bands = [index for index, (colour, after) in enumerate(zip(order, order[1:], strict=False)) if colour != after]
    if len(changes) != len(bands):
        return {}
    low, high = span_of(named, subject.grading.plans[piece.key][size])
    return {band: row - low for band, row in zip(bands, changes, strict=True) if low < row < high}
