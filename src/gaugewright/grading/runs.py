"""Runs of a row: how it opens, alike neighbours joined, what they use and make together."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.model import Run, turning_chain

Runs = Iterator[Run]


def opening(cloth: Cloth, colour: str) -> Runs:
    """The turning chain, where there is one: it takes the first stitch's place if it counts."""
    if cloth.chains:
        yield Run(turning_chain(cloth.stitch, cloth.counts), 1, colour, cloth.fabric)


def joined(runs: Iterable[Run]) -> tuple[Run, ...]:
    """Runs without empty ones, neighbours that are alike as one."""
    found: list[Run] = []
    for run in runs:
        if found and (found[-1].operation, found[-1].colour, found[-1].fabric) == (run.operation, run.colour, run.fabric):
            found[-1] = replace(run, times=found[-1].times + run.times)
        elif run.times:
            found.append(run)
    return tuple(found)


def uses_of(runs: Iterable[Run]) -> int:
    """Stitches of the row before that they work into, pass over or leave."""
    return sum(run.operation.uses * run.times for run in runs)


def makes_of(runs: Iterable[Run]) -> int:
    """Stitches that they make."""
    return sum(run.operation.makes * run.times for run in runs)
