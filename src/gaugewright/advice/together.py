"""Which bodies a size fits in everything at once: counted on single bodies, since a strong arm and a wide hip often go together."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from gaugewright.measurements.choice import nearest_size
from gaugewright.measurements.limits import Limits
from gaugewright.measurements.model import BodyValue
from gaugewright.measurements.proportion import wilson

Person = Mapping[str, float]


@dataclass(frozen=True, slots=True)
class Wearing:
    """A finished measurement of a body measure as worn, mm, and the limits of its ease, by size."""

    of: str
    worn: Mapping[str, float]
    allowed: Mapping[str, Limits]

    def fits(self, person: Person, size: str) -> bool:
        """Whether the size is neither tight nor loose on this body here."""
        return self.allowed[size].allow(self.worn[size] - person[self.of])


@dataclass(frozen=True, slots=True)
class Together:
    """Of the bodies whose size this is by bust, how many it fits in everything, and how many it would without each measure."""

    size: str
    bodies: int
    fits: int
    without: Mapping[str, int]

    @property
    def range(self) -> tuple[float, float]:
        """The 95 % range of the share among all that were surveyed."""
        return wilson(self.fits, self.bodies)

    @property
    def dearest(self) -> str:
        """The measure that costs most of the share; none where each alone costs nothing."""
        most = max(self.without, key=lambda of: self.without[of])
        return most if self.without[most] > self.fits else ""


@dataclass(frozen=True, slots=True)
class Overall:
    """Of the bodies in the bust range of all sizes, how many the size of their bust fits in everything, and how many some size does."""

    bodies: int
    own: int
    some: int

    @property
    def range(self) -> tuple[float, float]:
        """The 95 % range of the share that some size fits."""
        return wilson(self.some, self.bodies)


def together(people: Sequence[Person], sizes: Sequence[tuple[str, BodyValue]], worn: Sequence[Wearing]) -> tuple[Together, ...]:
    """The joint shares, size by size."""
    by_size = _by_size(people, sizes)
    return tuple(
        Together(
            size, len(own), sum(_fits(person, size, worn) for person in own),
            {one.of: sum(_fits(person, size, [other for other in worn if other is not one]) for person in own) for one in worn},
        )
        for size, own in by_size.items()
    )


def overall(people: Sequence[Person], sizes: Sequence[tuple[str, BodyValue]], worn: Sequence[Wearing]) -> Overall:
    """The pattern's share over all its sizes."""
    by_size = _by_size(people, sizes)
    own = sum(_fits(person, size, worn) for size, some in by_size.items() for person in some)
    everybody = [person for some in by_size.values() for person in some]
    return Overall(len(everybody), own, sum(any(_fits(person, size, worn) for size in by_size) for person in everybody))


def _by_size(people: Sequence[Person], sizes: Sequence[tuple[str, BodyValue]]) -> dict[str, list[Person]]:
    """The bodies between the smallest and the largest bust that sizes are made for, each with the size it would choose."""
    found: dict[str, list[Person]] = {label: [] for label, _ in sizes}
    low, high = min(value.low_mm for _, value in sizes), max(value.high_mm for _, value in sizes)
    for person in people:
        if low <= person["bust"] <= high:
            found[nearest_size(sizes, person["bust"])].append(person)
    return found


def _fits(person: Person, size: str, worn: Sequence[Wearing]) -> bool:
    return all(one.fits(person, size) for one in worn)
