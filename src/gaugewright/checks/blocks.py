"""Blocks of colour: do they add up to their rows, keep their lines, and measure what was wanted?

Counted anew from the rows, block by block.
"""

from collections.abc import Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import by_size, cm, count_of, problem
from gaugewright.design.colours import BlockRows
from gaugewright.design.model import Piece
from gaugewright.errors import Problem
from gaugewright.grading.model import Row
from gaugewright.grading.plan import BlockPlan


def check_blocks(subject: Subject) -> Found:
    """Every row's blocks in order and without a gap; lines between them that run straight up; widths to the stitch."""
    problems: list[Problem] = []
    counted = 0
    for piece in subject.design.pieces:
        parts = {index: part for index, part in enumerate(piece.colours.blocks) if len(part.blocks) > 1}
        for index, part in parts.items():
            counted += len(part.blocks)
            faults = [(size, text) for size in subject.sizes for text in _faults(subject, piece, part, size)]
            if faults:
                problems.append(problem(
                    "blocks-uneven", f"the blocks of {piece.key} don't add up in rows {index + 1} of its list: {by_size(faults)}", part.origin,
                    "they can't be worked as they are told; please report it with this spec", [size for size, _ in faults],
                ))
    return Found(tuple(problems), f"{count_of(counted, 'block')} in each size" if counted else "no blocks")


def _faults(subject: Subject, piece: Piece, part: BlockRows, size: str) -> Iterator[str]:
    colours = tuple(block.colour for block in part.blocks)
    rows = subject.grading.pieces[piece.key][size].main.rows
    plans = [plan for plan in subject.grading.plans[piece.key][size].blocks if tuple(colour for colour, _ in plan.blocks) == colours]
    for plan in plans:
        numbered = [(number, _counts(rows[number - 1], number)) for number in range(plan.first, plan.last + 1)]
        for number, counts in numbered:
            if tuple(colour for colour, _ in counts) != colours or sum(count for _, count in counts) != rows[number - 1].makes:
                yield f"row {number} isn't {', '.join(colours)}"
                return
        inner = {tuple(count for _, count in counts[1:-1]) for _, counts in numbered}
        if len(inner) > 1:
            yield f"a block between others changes its stitches in rows {plan.first} to {plan.last}"
        yield from _widths(subject, part, plan, numbered[0][1], rows[plan.first - 1], size)


def _counts(row: Row, number: int) -> list[tuple[str, int]]:
    """Colour and stitches of each block, from the starting edge: odd rows begin there."""
    found: list[tuple[str, int]] = []
    for run in row.runs:
        made = run.operation.makes * run.times
        if found and found[-1][0] == run.colour:
            found[-1] = (run.colour, found[-1][1] + made)
        else:
            found.append((run.colour, made))
    return found if number % 2 else found[::-1]


def _widths(subject: Subject, part: BlockRows, plan: BlockPlan, counts: list[tuple[str, int]], row: Row, size: str) -> Iterator[str]:
    gauge, env = subject.design.fabric(row.fabric).gauge, subject.environments[size]
    stitch = gauge.width / gauge.stitches
    whole = row.makes * stitch
    for block, (colour, count) in zip(part.blocks, counts, strict=True):
        if block.width is not None:
            wanted = env.share_or_length(block.width, whole)
            if abs(count * stitch - wanted) > stitch:
                yield f"{colour} is {cm(count * stitch)} wide on row {plan.first}, {cm(wanted)} wanted"
