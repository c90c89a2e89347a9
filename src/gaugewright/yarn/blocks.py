"""Yarn of each block of colour, to wind off before its rows are begun.

In: graded rows of one size, where its blocks are, weighed swatches. Out: grams and metres of each block, with its
two tails and the margin.
"""

from dataclasses import dataclass

from gaugewright.design.model import Design
from gaugewright.grading.model import GradedPiece, Row, Run
from gaugewright.grading.plan import BlockPlan, PiecePlan
from gaugewright.trade.tails import tail
from gaugewright.yarn.amounts import grams_of
from gaugewright.yarn.counted import stitches_worked
from gaugewright.yarn.weighing import mass_per_stitch


@dataclass(frozen=True, slots=True)
class BlockAmount:
    """What one block takes: grams (None without a weighed swatch) and metres (None without the ball's length)."""

    grams: float | None
    metres: float | None


def block_amounts(design: Design, plan: PiecePlan, graded: GradedPiece) -> tuple[tuple[BlockAmount, ...], ...]:
    """For each of the piece's rows in several blocks the amounts of the blocks, from the starting edge."""
    rows = graded.main.rows
    return tuple(tuple(_amounts(design, blocks, rows)) for blocks in plan.blocks if blocks.several)


def _amounts(design: Design, blocks: BlockPlan, rows: tuple[Row, ...]) -> list[BlockAmount]:
    grams: list[float | None] = [0.0] * len(blocks.blocks)
    for number in range(blocks.first, blocks.last + 1):
        for index, runs in enumerate(_by_block(rows[number - 1], number)):
            so_far, mass = grams[index], _mass(design, runs)
            grams[index] = None if so_far is None or mass is None else so_far + mass
    return [_amount(design, colour, one) for (colour, _), one in zip(blocks.blocks, grams, strict=True)]


def _by_block(row: Row, number: int) -> list[list[Run]]:
    """The runs of each block, from the starting edge."""
    found: list[list[Run]] = []
    for run in row.runs:
        if found and found[-1][0].colour == run.colour:
            found[-1].append(run)
        else:
            found.append([run])
    return found if number % 2 else found[::-1]


def _mass(design: Design, runs: list[Run]) -> float | None:
    total = 0.0
    for run in runs:
        mass = mass_per_stitch(design.fabric(run.fabric))
        if mass is None:
            return None
        total += mass * stitches_worked(run)
    return total


def _amount(design: Design, colour: str, grams: float | None) -> BlockAmount:
    if grams is None:
        return BlockAmount(None, None)
    yarn = design.yarn(colour)
    total = (grams + 2 * grams_of(design, colour, tail("weave in"))) * (1 + design.buying.margin)
    metres = total * yarn.ball_length / yarn.ball_mass / 1000 if yarn.ball_length and yarn.ball_mass else None
    return BlockAmount(total, metres)
