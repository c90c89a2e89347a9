"""Openings within pieces, read from the rows: the edge round each, and whether a pair of pieces fits a pair of hands."""

from collections.abc import Sequence

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import count_of, problem
from gaugewright.design.model import Piece, Taper
from gaugewright.design.slits import slit_edges
from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import Row, Strip


def holes_in(row: Row) -> list[tuple[int, int]]:
    """Stitches before and up to the end of each chain over stitches passed over, in the order of working."""
    found, made = [], 0
    for run in row.runs:
        after = made + run.operation.makes * run.times
        if run.operation.kind == "chain" and run.operation.uses:
            found.append((made, after))
        made = after
    return found


def opening_edges(piece: Piece, strip: Strip, of_rows: Sequence[Gauge]) -> dict[str, float]:
    """The length round each opening, mm: its chain there and back, and its row's height at both corners."""
    holed = [(row, gauge) for row, gauge in zip(strip.rows, of_rows, strict=False) if holes_in(row)]
    found = {}
    for name, (row, gauge) in zip(slit_edges(piece.sections), holed, strict=False):
        ((first, last),) = holes_in(row)
        found[name] = 2 * (last - first) * gauge.width / gauge.stitches + 2 * gauge.height / gauge.rows
    return found


def check_pairs(subject: Subject) -> Found:
    """A piece in rounds with an opening to one side and a flat end isn't its own mirror image: a pair needs a mirrored twin."""
    problems = []
    pieces = [piece for piece in subject.design.pieces if piece.start.in_rounds and slit_edges(piece.sections)]
    for piece in pieces:
        tip = next((s for s in piece.sections if isinstance(s, Taper) and s.at == "sides"), None)
        if piece.make == 2 and tip is not None:
            problems.append(problem(
                "pair-alike", f"{piece.key} is made twice alike, and its opening lies on one face of a flat end: both fit the same hand", piece.origin,
                f"write `make: 1`, and a second piece `{{like: {piece.key}, mirrored: true}}`", (), "warning",
            ))
    return Found(tuple(problems), f"{count_of(len(pieces), 'piece')} in rounds with an opening" if pieces else "no openings in rounds")
