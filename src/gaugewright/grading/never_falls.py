"""Lengths that reach over several pieces and must not fall with size: neck to wrist.

A sleeve's total is what the wearer feels (neck to wrist) less what another piece, rounded by itself,
gives already. Two roundings can then take a larger size below a smaller one by part of a row. Rows of
the section that takes the rest are therefore settled over all sizes together: as near as possible to
the wanted lengths, but never falling where the wanted length does not fall.
"""

from collections.abc import Sequence
from dataclasses import replace

from gaugewright.design.model import UNSTACKED, Design, Piece, Rest
from gaugewright.errors import ProblemsFound
from gaugewright.formulas.names import calls_in
from gaugewright.grading.measure import Measured
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment, lengths_needed, named_formulas

FELT_SAME = 0.05
"""mm: lengths nearer than this are the same to any tape."""


def settled(piece: Piece, design: Design, envs: Sized[Environment], measured: Sized[Measured]) -> Sized[Measured]:
    """The same counts with the rest's rows moved by at most one where a size would fall behind a smaller one."""
    taker = next((i for i, s in enumerate(piece.sections) if not isinstance(s, UNSTACKED) and isinstance(s.extent, Rest)), None)
    if taker is None or piece.total is None or not _leans_on_pieces(piece, design):
        return measured
    row = design.fabric(piece.sections[taker].fabric).gauge.row_height
    total, wanted = piece.total, []
    for env in envs:
        alone = replace(env, answers={**env.answers, "finished": _nothing, "edge": _nothing}, known={})
        try:
            wanted.append(alone.length(total))
        except ProblemsFound:  # it divides by another piece's measure: nothing is known of it alone
            return measured
    gauges = [design.fabric(section.fabric).gauge for section in piece.sections]
    errors = [
        sum(gauge.height_of(rows) for gauge, rows in zip(gauges, m.rows, strict=True)) + m.taller - m.wanted_total for m in measured
    ]
    moves = settle(wanted, errors, row)
    return Sized(measured.labels, tuple(_moved(m, taker, move) for m, move in zip(measured, moves, strict=True)))


def settle(wanted: Sequence[float], errors: Sequence[float], row: float) -> tuple[int, ...]:
    """Rows to add (or take away) per size so that wanted + error never falls where wanted doesn't.

    Of all ways that move no size by more than a row, the one with the least sum of squared errors;
    where there is none, nothing is moved and the checks tell.

    >>> settle([838, 838, 851], [5.0, -0.4, -1.0], 14)
    (-1, 0, 0)
    >>> settle([800, 838, 851], [5.0, -0.4, -1.0], 14)
    (0, 0, 0)
    """
    paths: dict[int, tuple[float, tuple[int, ...]]] = {move: ((errors[0] + move * row) ** 2, (move,)) for move in (-1, 0, 1)}
    for i in range(1, len(wanted)):
        extended: dict[int, tuple[float, tuple[int, ...]]] = {}
        for move in (-1, 0, 1):
            error = errors[i] + move * row
            reached = [
                (cost + error**2, (*path, move)) for before, (cost, path) in paths.items()
                if wanted[i] < wanted[i - 1] - FELT_SAME
                or wanted[i] + error >= wanted[i - 1] + errors[i - 1] + before * row - FELT_SAME
            ]
            if reached:
                extended[move] = min(reached, key=lambda r: (r[0], [abs(m) for m in r[1]]))
        if not extended:
            return (0,) * len(wanted)
        paths = extended
    return min(paths.values(), key=lambda p: (p[0], [abs(m) for m in p[1]]))[1]


def _leans_on_pieces(piece: Piece, design: Design) -> bool:
    """Whether the total depends on pieces graded before, named lengths followed."""
    named = named_formulas(design)
    assert piece.total is not None
    waiting, seen = [piece.total], set()
    while waiting:
        node = waiting.pop().node
        if any(call.function in ("finished", "edge") for call in calls_in(node)):
            return True
        for name in lengths_needed(node):
            if name.name in named and name.name not in seen:
                seen.add(name.name)
                waiting.append(named[name.name])
    return False


def _nothing(_call: object, _env: object) -> float:
    return 0.0


def _moved(measured: Measured, taker: int, move: int) -> Measured:
    rows = tuple(count + move if index == taker else count for index, count in enumerate(measured.rows))
    return replace(measured, rows=rows) if min(r for i, r in enumerate(rows) if i == taker) >= 1 else measured
