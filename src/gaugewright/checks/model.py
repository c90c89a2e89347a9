"""What checks receive and what they give, as plain data."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from gaugewright.design.model import Design, FinishedMeasure
from gaugewright.errors import Problem
from gaugewright.grading.grade import Grading
from gaugewright.measurements.model import Body
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Environment


@dataclass(frozen=True, slots=True)
class CheckResult:
    """What one check found: its problems, and its figures in a few words."""

    name: str
    title: str
    problems: tuple[Problem, ...]
    figures: str


class Found(NamedTuple):
    """A check's problems and figures, before they are given its name."""

    problems: tuple[Problem, ...]
    figures: str


@dataclass(frozen=True, slots=True)
class Remade:
    """A piece measured anew from its rows, in mm: finished measures and edges by name, all rows together."""

    measures: Mapping[str, float]
    edges: Mapping[str, float]
    rows_length: float


@dataclass(frozen=True, slots=True)
class Measured:
    """One finished measurement in all sizes, measured anew, and what was wanted; mm."""

    measure: FinishedMeasure
    actual: Sized[float]
    wanted: Sized[float] | None


@dataclass(frozen=True, slots=True)
class Subject:
    """What is checked. `environments` answer formulas from the pieces `remade`, size by size.

    `faults` are finished measurements that could not be worked out; `measured` holds the others.
    """

    design: Design
    bodies: Sized[Body]
    grading: Grading
    remade: Mapping[str, Sized[Remade]]
    environments: Sized[Environment]
    measured: tuple[Measured, ...]
    faults: tuple[Problem, ...]

    @property
    def sizes(self) -> tuple[str, ...]:
        """Size labels, smallest first."""
        return self.environments.labels


Check = Callable[[Subject], Found]
