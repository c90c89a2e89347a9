"""What a finished garment weighs: the yarn worked into it and what is stated to go on it."""

from collections.abc import Mapping

from gaugewright.design.model import Design
from gaugewright.yarn.amounts import Amount


def worked_mass(amounts: Mapping[str, Amount]) -> float:
    """Grams of yarn in one size, as it is worked: nothing to spare."""
    return sum(one.counted.total for one in amounts.values())


def garment_mass(design: Design, amounts: Mapping[str, Amount]) -> float:
    """Grams of the finished piece, of an estimate its upper end: its yarn, and the notions whose mass the spec states."""
    return worked_mass(amounts) + sum(grams for _, grams in design.notions)


def least_mass(design: Design, amounts: Mapping[str, Amount]) -> float:
    """The same at an estimate's lower end."""
    return sum((one.low if one.estimated else one.counted).total for one in amounts.values()) + sum(grams for _, grams in design.notions)
