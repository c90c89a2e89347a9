"""Does each row use what the row before makes? Pure functions on strips, and the check over all pieces."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.divisions import division_faults
from gaugewright.checks.waiting import in_order, waiting_faults
from gaugewright.checks.wording import by_size, count_of, problem
from gaugewright.design.model import Piece
from gaugewright.errors import Origin, Problem
from gaugewright.grading.model import DivideStart, EdgeStart, GradedPiece, Row, SpanStart, Strip
from gaugewright.grading.plan import PiecePlan


@dataclass(frozen=True, slots=True)
class RowFault:
    """What is wrong at a row of a strip; row 0 is the strip's start."""

    row: int
    text: str


def row_faults(strip: Strip, strips: Sequence[Strip]) -> tuple[str, ...]:
    """Every place at which a strip's rows don't follow, in words; `strips` are all strips of its piece.

    A strip follows if its first row uses what it starts from (a chain, a centre, edges picked up, a
    span of another strip's last row), each later row what the row before makes, and no stitch is
    worked into by two strips.
    """
    return tuple(fault.text for fault in faults_of(strip, strips))


def faults_of(strip: Strip, strips: Sequence[Strip]) -> Iterator[RowFault]:
    """The same with the number of the row."""
    yield from _start_faults(strip, strips)
    available, before, side = _given(strip), "the start", ""
    for number, called, row, is_short in in_order(strip):
        picking_up = number == 1 and not is_short and isinstance(strip.start, EdgeStart)
        makes = row.makes
        wanted = makes if picking_up else row.uses
        dividing = number == 1 and not is_short and isinstance(strip.start, DivideStart)
        if wanted != available:
            does = "picks up" if picking_up else "works over"
            yield RowFault(number, f"{called} {does} {count_of(wanted, 'stitch', 'stitches')}, and {before} gives {available}")
        yield from (RowFault(number, f"{called} {text}") for text in _run_faults(row, number, picking_up, dividing))
        if not _side_follows(strip, row, side):
            yield RowFault(number, f"{called} shows its {row.side}, the wrong face after the row before")
        available, before, side = makes, called, row.side
    yield from (RowFault(number, text) for number, text in waiting_faults(strip))
    yield from _shared_stitches(strip, strips)


def _given(strip: Strip) -> int:
    """Stitches that row 1 has to work over: of a yoke, those before any are chained under the arm."""
    return strip.start.takes if isinstance(strip.start, DivideStart) else strip.start.stitches


def _run_faults(row: Row, number: int, picking_up: bool, dividing: bool) -> Iterator[str]:
    """Operations where they can't be worked; a gap within a row is one only where strips divide."""
    last, made = len(row.runs) - 1, 0
    for index, run in enumerate(row.runs):
        kind = run.operation.kind
        if run.times < 1:
            yield f"has a {kind} worked {run.times} times"
        if kind == "leave" and index != last and number > 1:
            yield "leaves stitches before its end"
        elif kind == "slip over" and made and number > 1:
            yield "slip-stitches over stitches after its start"
        elif kind == "turning chain" and made:
            yield "has a turning chain after its first stitch"
        if (kind == "picked up") != picking_up and not dividing:
            yield "picks up stitches within a piece" if kind == "picked up" else f"has a {kind} among stitches picked up"
        made += run.operation.makes * run.times
    if made < 1:
        yield "has no stitches"


def _side_follows(strip: Strip, row: Row, before: str) -> bool:
    """Turned work shows its faces in turn; rounds that are not turned show the right side only."""
    if strip.worked in ("joined rounds", "spiral rounds"):
        return row.side == "RS"
    return row.side != before


def _start_faults(strip: Strip, strips: Sequence[Strip]) -> Iterator[RowFault]:
    start = strip.start
    if start.stitches < 1:
        yield RowFault(0, "the start has no stitches")
    if not isinstance(start, SpanStart):
        return
    parent = _parent(strip, strips)
    if parent is None or parent is strip:
        yield RowFault(0, f"the strip starts from {start.strip}, which is no other strip of the piece")
    elif start.first < 0 or start.first + start.stitches > parent.last_count:
        yield RowFault(
            0, f"the strip starts from stitches {start.first + 1} to {start.first + start.stitches} of {start.strip}, "
            f"whose last row has {parent.last_count}"
        )


def _parent(strip: Strip, strips: Sequence[Strip]) -> Strip | None:
    name = strip.start.strip if isinstance(strip.start, SpanStart) else None
    return next((one for one in strips if one.name == name), None)


def _shared_stitches(strip: Strip, strips: Sequence[Strip]) -> Iterator[RowFault]:
    """Stitches that an earlier strip works into as well."""
    if not isinstance(strip.start, SpanStart):
        return
    own = worked_into(strip)
    for other in strips:
        if other is strip:
            return
        if isinstance(other.start, SpanStart) and other.start.strip == strip.start.strip:
            shared = own & worked_into(other)
            if shared:
                places = count_of(len(shared), "stitch", "stitches")
                yield RowFault(1, f"row 1 works into {places} of {strip.start.strip} that {other.name} works into too")


def worked_into(strip: Strip) -> frozenset[int]:
    """Stitches of the parent's last row that a span's first row works into, counted from the starting edge.

    Stitches left, skipped or slipped over stay free for another strip: so a yoke's body passes its sleeves.
    """
    start = strip.start
    if not isinstance(start, SpanStart) or not strip.rows:
        return frozenset()
    found: set[int] = set()
    position = 0
    for run in strip.rows[0].runs:
        reach = run.operation.uses * run.times
        if run.operation.kind not in ("leave", "slip over", "skip"):
            found.update(range(position, position + reach))
        position += reach
    if strip.rows[0].side == "WS":
        found = {start.stitches - 1 - place for place in found}
    return frozenset(start.first + place for place in found)


def check_rows_follow(subject: Subject) -> Found:
    """Each row of each strip in each size, and each picked-up edge against the edge it is on."""
    problems: list[Problem] = []
    rows = 0
    for piece in subject.design.pieces:
        told: dict[tuple[Origin, str], list[str]] = {}
        for label, graded in subject.grading.pieces[piece.key].items():
            plan = subject.grading.plans[piece.key][label]
            others = {key: sized[label] for key, sized in subject.grading.pieces.items()}
            for fault in (*_piece_faults(graded), *_pick_up_faults(graded, others), *_division_faults(graded, others)):
                told.setdefault((section_origin(piece, plan, fault.row), fault.text), []).append(label)
            rows += sum(len(list(in_order(strip))) for strip in graded.strips)
        by_place: dict[Origin, list[tuple[str, str]]] = {}
        for (origin, text), sizes in told.items():
            by_place.setdefault(origin, []).extend((size, text) for size in sizes)
        problems += [
            problem(
                "rows-do-not-follow", f"rows of {piece.key} don't follow one another: {by_size(found)}", origin,
                "the stitches of these rows can't be worked; please report it with this spec", [size for size, _ in found],
            )
            for origin, found in by_place.items()
        ]
    return Found(tuple(problems), f"{count_of(rows, 'row')} followed")


def _piece_faults(graded: GradedPiece) -> Iterator[RowFault]:
    for strip in graded.strips:
        for fault in faults_of(strip, graded.strips):
            place = "" if strip is graded.main else f"{strip.name}: "
            yield RowFault(fault.row if strip is graded.main else len(graded.main.rows) + max(1, fault.row), place + fault.text)


def _division_faults(graded: GradedPiece, others: Mapping[str, GradedPiece]) -> Iterator[RowFault]:
    return (RowFault(1, text) for text in division_faults(graded, others))


def _pick_up_faults(graded: GradedPiece, others: Mapping[str, GradedPiece]) -> Iterator[RowFault]:
    """An edge is picked up as it is: all its row ends, or all its stitches."""
    for strip in graded.strips:
        for one in strip.start.pick_ups if isinstance(strip.start, EdgeStart) else ():
            edge = others[one.piece].edges.get(one.edge) if one.piece in others else None
            if edge is None:
                yield RowFault(0, f"stitches are picked up on {one.piece}.{one.edge}, which isn't there")
            elif (one.rows, one.of) != (edge.rows, edge.stitches):
                yield RowFault(
                    0, f"stitches are picked up along {one.rows} row ends and {one.of} stitches of {one.piece}.{one.edge}, "
                    f"which has {edge.rows} and {edge.stitches}"
                )


def section_origin(piece: Piece, plan: PiecePlan, row: int) -> Origin:
    """Where the section that works a row stands in the spec; row 0 is the piece's start."""
    if row < 1:
        return piece.start.origin
    last = 0
    for designed, section in zip(piece.sections, plan.sections, strict=True):
        last += section.rows
        if row <= last:
            return designed.origin
    return piece.origin
