"""What is bought beyond what the rows take."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Buying:
    """The margin as a share of what the rows take, whether the yarn for swatches is in the balls, and whether the pattern prints what they cost."""

    margin: float = 0.10
    swatches_in_balls: bool = False
    cost: bool = False
