"""The size a drawing shows, in its words."""

from gaugewright.design.size_list import ONE_SIZE


def in_size(label: str) -> str:
    """Nothing where there is one size only.

    >>> in_size("M"), in_size("One size")
    (' in size M', '')
    """
    return "" if label == ONE_SIZE else f" in size {label}"
