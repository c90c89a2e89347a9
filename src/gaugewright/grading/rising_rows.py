"""Rows of rising stitches: along one shoulder, or over an undivided top from shoulder to shoulder."""

from collections.abc import Iterator

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.model import Run, turning_chain, work
from gaugewright.grading.rising import Rise

Runs = Iterator[Run]


def rising_row(cloth: Cloth, groups: tuple[Rise, ...], from_neck: bool, colour: str) -> Runs:
    """One shoulder. A row that begins low needs no turning chain; one that begins at the neck has the tallest stitch's."""
    if from_neck:
        yield Run(turning_chain(groups[-1].stitch, False), 1, colour, cloth.fabric)
    for each in reversed(groups) if from_neck else groups:
        yield Run(work(each.stitch, cloth.loop, each.height), each.stitches, colour, cloth.fabric)


def rising_top(cloth: Cloth, groups: tuple[Rise, ...], neck: int, colour: str) -> Runs:
    """A whole top: up one shoulder, the neck in the tallest stitch, and down the other."""
    yield from rising_row(cloth, groups, False, colour)
    yield Run(work(groups[-1].stitch, cloth.loop, groups[-1].height), neck, colour, cloth.fabric)
    for each in reversed(groups):
        yield Run(work(each.stitch, cloth.loop, each.height), each.stitches, colour, cloth.fabric)
