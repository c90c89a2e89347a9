"""What a finished garment weighs: the yarn worked into it and what is stated to go on it."""

from collections.abc import Mapping

from gaugewright.design.model import Design
from gaugewright.yarn.amounts import Amount


def worked_mass(amounts: Mapping[str, Amount]) -> float:
    """Grams of yarn in one size, as it is worked: nothing to spare.

    >>> worked_mass({"oat": Amount("oat", 400.0, 6.0, 14.0, 462.0, 5)})
    420.0
    """
    return sum(one.stitches + one.foundations + one.tails_and_seams for one in amounts.values())


def garment_mass(design: Design, amounts: Mapping[str, Amount]) -> float:
    """Grams of the finished piece: its yarn, and the notions whose mass the spec states."""
    return worked_mass(amounts) + sum(grams for _, grams in design.notions)
