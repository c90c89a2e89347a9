"""One problem of one size, where grading can't go on."""

from gaugewright.errors import Origin, Problem, ProblemsFound
from gaugewright.sizing.environment import Environment


def fault(name: str, message: str, origin: Origin, hint: str, env: Environment) -> ProblemsFound:
    """The problem to raise, for the size of this environment."""
    return ProblemsFound([Problem(name, message, origin, hint, env.size)])
