"""A length of time with its range."""

from collections.abc import Iterable
from dataclasses import dataclass

from gaugewright.rounding import half_up
from gaugewright.trade.work_times import WorkTime


@dataclass(frozen=True, slots=True)
class Duration:
    """Seconds: at least, as expected, at most. Ranges add up end to end: who is slow is slow throughout.

    >>> Duration(60, 90, 120) + Duration(60, 60, 60).times(2)
    Duration(low=180, mean=210, high=240)
    """

    low: float
    mean: float
    high: float

    def __add__(self, other: "Duration") -> "Duration":
        return Duration(self.low + other.low, self.mean + other.mean, self.high + other.high)

    def times(self, often: float) -> "Duration":
        """So often."""
        return Duration(self.low * often, self.mean * often, self.high * often)

    def wider(self, share: float) -> "Duration":
        """A range wider by a share of the mean at either end; never below nothing."""
        return Duration(max(0.0, self.low - share * self.mean), self.mean, self.high + share * self.mean)

    @property
    def minutes(self) -> int:
        """The mean to five minutes, and never nothing: what a table prints and adds up."""
        return max(5, 5 * half_up(self.mean / 300)) if self.mean else 0


NO_TIME = Duration(0.0, 0.0, 0.0)


def taking(figure: WorkTime, often: float) -> Duration:
    """What is done so often, each time by a figure in seconds."""
    return Duration(*figure).times(often)


def total(durations: Iterable[Duration]) -> Duration:
    """All of them, one after the other."""
    return sum(durations, NO_TIME)
