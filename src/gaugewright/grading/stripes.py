"""Stripes: a sequence of rows repeated over a piece, placed so that it meets another piece's.

In: the designed piece, its rows in one size, the piece it is matched to. Out: a `StripePlan`. The sequence
is whole rows, so its place is a number of rows: what stands before row 1.
"""

from collections.abc import Callable, Iterator, Mapping

from gaugewright.design.colours import Match, Stripe
from gaugewright.design.model import Design, Formula, Piece
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.colour_plans import StripePlan
from gaugewright.grading.plan import Mark, PiecePlan
from gaugewright.grading.stack import SAME_HEIGHT, level_height, row_from_bottom, section_end_at
from gaugewright.rounding import half_up
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment

Gauges = tuple[Gauge, ...]


def stripe_plan(
    piece: Piece, gauge: Gauge, rows: tuple[int, ...], gauges: Gauges, marks: tuple[Mark, ...], env: Environment, other: StripePlan | None
) -> StripePlan | None:
    """Where the sequence stands on a piece of these `rows`; `other` is the matched piece's, shifted to the height that is matched."""
    stripes = piece.colours.stripes
    if stripes is None:
        return None
    sequence = tuple((stripe.colour, _rows_of(stripe, piece, gauge, env)) for stripe in stripes.sequence)
    plan = StripePlan(sequence, 0)
    if stripes.begin is not None:
        return StripePlan(sequence, -row_at(stripes.begin, piece, rows, gauges, marks, env) % plan.period)
    if other is None:
        return plan
    if other.sequence != sequence:
        match = stripes.match
        assert match is not None
        raise ProblemsFound([_unlike(piece, match, f"{_told(sequence)} there, {_told(other.sequence)} on {match.piece}", env.size)])
    own = 0 if stripes.match is None or stripes.match.own is None else row_at(stripes.match.own, piece, rows, gauges, marks, env)
    return StripePlan(sequence, (other.shift - own) % plan.period)


def _rows_of(stripe: Stripe, piece: Piece, gauge: Gauge, env: Environment) -> int:
    if stripe.length is None:
        return stripe.rows or 0
    length = env.length(stripe.length)
    rows = half_up(gauge.rows_in(length))
    if rows < 1:
        message = f"a stripe of {length / 10:.1f} cm in {stripe.colour} is no row of {piece.key}, whose rows are {gauge.row_height / 10:.2f} cm high"
        raise ProblemsFound([Problem("stripe-of-no-row", message, stripe.origin, "write its rows, such as 2, or a greater length", env.size)])
    return rows


def _told(sequence: tuple[tuple[str, int], ...]) -> str:
    return ", ".join(f"{rows} {colour}" for colour, rows in sequence)


def _unlike(piece: Piece, match: Match, how: str, size: str = "") -> Problem:
    return Problem(
        "stripes-unlike", f"{piece.key} can't be matched to {match.piece}: {how}", match.origin,
        f"give both the same sequence, named once under `stripes`, or take out `match` from {piece.key}", size,
    )


def row_at(formula: Formula, piece: Piece, rows: tuple[int, ...], gauges: Gauges, marks: tuple[Mark, ...], env: Environment) -> int:
    """The row whose end is at a height of the piece: a section's end or a mark where one is there, else the nearest."""
    height, whole = env.length(formula), sum(gauge.height_of(count) for gauge, count in zip(gauges, rows, strict=True))
    highest = max(gauge.row_height for gauge in gauges)
    if not -SAME_HEIGHT <= height <= whole + highest:
        message = f"{formula.text} comes to {height / 10:.1f} cm, and {piece.key} is {whole / 10:.1f} cm high"
        raise ProblemsFound([Problem("level-outside", message, formula.origin, f"name a height between 0 cm and {whole / 10:.1f} cm", env.size)])
    end = section_end_at(height, piece, rows, env)
    if end is not None:
        return end
    marked = (mark.row for mark in marks if abs(level_height(mark.level, env) - height) < SAME_HEIGHT)
    return next(marked, row_from_bottom(height, rows, gauges))


def matched_stripes(piece: Piece, design: Design, envs: Sized[Environment], plans: Mapping[str, Sized[PiecePlan]]) -> Callable[[str], StripePlan | None]:
    """For each size the matched piece's sequence, as it stands just above the height that is matched."""
    match = piece.colours.stripes.match if piece.colours.stripes else None

    def found(label: str) -> StripePlan | None:
        if match is None:
            return None
        plan, other = plans[match.piece][label], design.piece(match.piece)
        if plan.stripes is None:
            raise ProblemsFound([_unlike(piece, match, f"{match.piece} has no stripes", label)])
        rows = tuple(section.rows for section in plan.sections)
        gauges = tuple(design.fabric(section.cloth.fabric).gauge for section in plan.sections)
        row = plan.rows if match.at is None else row_at(match.at, other, rows, gauges, plan.marks, envs[label])
        return StripePlan(plan.stripes.sequence, (plan.stripes.shift + row) % plan.stripes.period)

    return found


def stripe_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Neighbours of one yarn, those where the sequence begins again as well: they would be one stripe."""
    stripes = piece.colours.stripes
    if stripes is None:
        return
    sequence = stripes.sequence
    for stripe, after in zip(sequence, (*sequence[1:], sequence[0]), strict=True):
        if stripe.colour == after.colour:
            message = f"the stripe of {stripe.colour} is followed by another of {after.colour}"
            hint = "write them as one stripe" if len(sequence) > 2 else "add a stripe of another yarn, or name the yarn alone as the colour of the piece"
            yield Problem("neighbours-alike", message, after.origin, hint)
            return
