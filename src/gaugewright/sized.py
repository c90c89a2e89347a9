"""`Sized[T]`: one value for each size, in the order of the size list.

The only module that maps over sizes: everything else is written for one size, or
receives a `Sized` value whole.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

T = TypeVar("T")
U = TypeVar("U")


@dataclass(frozen=True, slots=True)
class Sized(Generic[T]):
    """Values aligned with size labels, smallest size first.

    >>> heights = Sized(("S", "M"), (40, 42))
    >>> heights["M"], heights.map(lambda h: h + 1).values, heights.agree
    (42, (41, 43), False)
    """

    labels: tuple[str, ...]
    values: tuple[T, ...]

    def __post_init__(self) -> None:
        if len(self.labels) != len(self.values):
            raise ValueError("a Sized needs one value per size")

    def __getitem__(self, label: str) -> T:
        return self.values[self.labels.index(label)]

    def __iter__(self) -> Iterator[T]:
        return iter(self.values)

    def __len__(self) -> int:
        return len(self.values)

    def items(self) -> Iterator[tuple[str, T]]:
        """Pairs of label and value."""
        return zip(self.labels, self.values, strict=True)

    def map(self, function: Callable[[T], U]) -> "Sized[U]":
        """The function's result for each size."""
        return Sized(self.labels, tuple(function(v) for v in self.values))

    @property
    def agree(self) -> bool:
        """True when all sizes have the same value."""
        return all(v == self.values[0] for v in self.values)

    def pick(self, labels: tuple[str, ...]) -> "Sized[T]":
        """The same values for some of the sizes, in this order."""
        return Sized(labels, tuple(self[label] for label in labels))


def for_each_size(labels: tuple[str, ...], make: Callable[[str], U]) -> Sized[U]:
    """Calls `make` once per size label, smallest first."""
    return Sized(labels, tuple(make(label) for label in labels))


def join(function: Callable[..., U], *parts: Sized[Any]) -> Sized[U]:
    """Applies a function of several values size by size; all parts must have the same sizes."""
    labels = parts[0].labels
    if any(part.labels != labels for part in parts):
        raise ValueError("these Sized values belong to different size lists")
    return Sized(labels, tuple(function(*vs) for vs in zip(*(p.values for p in parts), strict=True)))
