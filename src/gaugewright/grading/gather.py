"""One result per size, and the problems of all sizes at once."""

from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

from gaugewright.errors import Origin, Problem, ProblemsFound
from gaugewright.sized import Sized

T = TypeVar("T")


def gather(labels: tuple[str, ...], make: Callable[[str], T]) -> Sized[T]:
    """What `make` gives for each size; raises each fault once, with the sizes it touches.

    One message serves all sizes it is met in: the first one's, whose figures are an example.
    """
    values: list[T] = []
    found: dict[tuple[str, Origin | None], list[Problem]] = {}
    for label in labels:
        try:
            values.append(make(label))
        except ProblemsFound as faults:
            for problem in faults.problems:
                found.setdefault((problem.name, problem.origin), []).append(problem)
    if found:
        raise ProblemsFound([merged(problems) for problems in found.values()])
    return Sized(labels, tuple(values))


def merged(problems: list[Problem]) -> Problem:
    """Like problems of several sizes as one."""
    sizes = dict.fromkeys(size for problem in problems for size in problem.size.split(", ") if size)
    return replace(problems[0], size=", ".join(sizes))
