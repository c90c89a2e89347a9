"""What a share counted on a few bodies is worth."""

import math

Z = 1.959964
"""The normal distribution's point for 95 % both sides."""


def wilson(hits: int, of: int) -> tuple[float, float]:
    """The 95 % range of a share that was counted, as parts of one; all of nought to one where nothing was counted.

    Why this one: it stays between nought and one and holds for few bodies (E. B. Wilson, "Probable inference, the
    law of succession, and statistical inference", Journal of the American Statistical Association 22, 1927).

    >>> [round(end, 3) for end in wilson(8, 10)]
    [0.49, 0.943]
    """
    if of == 0:
        return 0.0, 1.0
    share, weight = hits / of, Z * Z / of
    middle = share + weight / 2
    half = Z * math.sqrt(share * (1 - share) / of + weight / (4 * of))
    return max(0.0, (middle - half) / (1 + weight)), min(1.0, (middle + half) / (1 + weight))
