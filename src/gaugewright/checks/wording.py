"""Figures and sizes in words, alike in all checks."""

from collections.abc import Iterable

from gaugewright.errors import Origin, Problem, Severity
from gaugewright.problem_text import count_of as count_of  # one way to count, for grading's problems too
from gaugewright.rounding import to_step


def cm(mm: float) -> str:
    """A length as checks state it, to the millimetre.

    >>> cm(414.96), cm(-3.0)
    ('41.5 cm', '-0.3 cm')
    """
    return f"{to_step(mm, 1.0) / 10:.1f} cm"


def span_cm(lengths: Iterable[float]) -> str:
    """Least to largest, or the one figure where all agree.

    >>> span_cm([568, 574, 570]), span_cm([570, 570.2])
    ('56.8 to 57.4 cm', '57.0 cm')
    """
    low, high = _ends(lengths)
    return cm(low) if cm(low) == cm(high) else f"{cm(low).removesuffix(' cm')} to {cm(high)}"


def _ends(lengths: Iterable[float]) -> tuple[float, float]:
    values = tuple(lengths)
    return min(values), max(values)


def by_size(found: Iterable[tuple[str, str]]) -> str:
    """Figures of each size, sizes with the same figures together; one figure for all needs no sizes.

    >>> by_size([("S", "4 rows"), ("M", "4 rows"), ("L", "5 rows")])
    '4 rows in S and M; 5 rows in L'
    >>> by_size([("S", "4 rows"), ("M", "4 rows")])
    '4 rows'
    """
    groups: dict[str, list[str]] = {}
    for size, figure in found:
        groups.setdefault(figure, []).append(size)
    if len(groups) == 1:
        return next(iter(groups))
    return "; ".join(f"{figure} in {listed(sizes)}" for figure, sizes in groups.items())


def listed(names: Iterable[str]) -> str:
    """Names in a row.

    >>> listed(["S"]), listed(["S", "M", "L"])
    ('S', 'S, M and L')
    """
    *first, last = names
    return f"{', '.join(first)} and {last}" if first else last


def problem(
    name: str, message: str, origin: Origin | None, hint: str, sizes: Iterable[str], severity: Severity = "error"
) -> Problem:
    """One problem for all sizes it touches: the same fault in nine sizes is told once."""
    return Problem(name, message, origin, hint, ", ".join(dict.fromkeys(sizes)), severity)
