"""The pace of each fabric: as timed, as the one who asks states it, from another fabric, or as published."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from gaugewright.design.model import Design, Fabric
from gaugewright.design.timing import Timing
from gaugewright.hours.duration import NO_TIME, Duration
from gaugewright.trade.work_times import movements, work_time

Basis = Literal["timed", "stated", "published"]


@dataclass(frozen=True, slots=True)
class Pace:
    """Seconds of one stitch of a fabric and of ending one of its rows. `of` is the fabric that was timed, where it is another."""

    fabric: str
    stitch: Duration
    row: Duration
    basis: Basis
    of: str = ""

    @property
    def per_minute(self) -> float:
        """Stitches a minute, as expected."""
        return 60 / self.stitch.mean


@dataclass(frozen=True, slots=True)
class Maker:
    """Whose hours are asked for: paces of the maker's own, stitches a minute by fabric, and how many `times` as long as the pattern's
    everything else takes.
    """

    own: Mapping[str, float]
    times: float = 1.0


THE_DESIGNER = Maker({})


def beginner(own: Mapping[str, float]) -> Maker:
    """A beginner, by the published hours of beginners and of experienced makers."""
    return Maker(own, work_time("beginner").usual)


def paces(design: Design, maker: Maker = THE_DESIGNER) -> dict[str, Pace]:
    """A pace for each fabric."""
    known = _stated(maker) or _timed(design, maker.times)
    return {fabric.key: known[fabric.key] if fabric.key in known else _from(design, fabric, known, maker.times) for fabric in design.fabrics}


def _stated(maker: Maker) -> dict[str, Pace]:
    """The maker's own paces; a stitch a minute holds no turns."""
    spread = work_time("one timing").usual
    end = _row_end(1.0, turned=True)
    return {key: Pace(key, Duration(*(60 / rate,) * 3).wider(spread), end, "stated") for key, rate in maker.own.items()}


def _timed(design: Design, times: float) -> dict[str, Pace]:
    return {
        fabric.key: Pace(fabric.key, stitch_time(fabric.timed).times(times), _row_end(times, turned=False), "timed")
        for fabric in design.fabrics if fabric.timed
    }  # fmt: skip


def stitch_time(timings: Sequence[Timing]) -> Duration:
    """Seconds of a stitch: all timings as one, and the range from the fastest to the slowest, but never narrower than
    a pace is known.

    >>> stitch_time([Timing(72, 540.0)])
    Duration(low=6.0, mean=7.5, high=9.0)
    >>> stitch_time([Timing(60, 360.0), Timing(40, 340.0)])
    Duration(low=6.0, mean=7.0, high=8.5)
    """
    mean = sum(one.seconds for one in timings) / sum(one.stitches for one in timings)
    each = [one.seconds / one.stitches for one in timings]
    known = Duration(mean, mean, mean).wider(work_time("one timing" if len(timings) == 1 else "several timings").usual)
    return Duration(min(*each, known.low), mean, max(*each, known.high))


def _from(design: Design, fabric: Fabric, known: Mapping[str, Pace], times: float) -> Pace:
    """By the hook's movements from the fabric most like it: the same stitch, else the nearest in movements; with none, as published."""
    own = movements(fabric.stitch)
    if not known:
        published = Duration(*work_time("single crochet"))
        return Pace(fabric.key, published.times(own / movements("sc") * times), _row_end(times, turned=True), "published")
    near = min((one for one in design.fabrics if one.key in known), key=lambda one: (one.stitch != fabric.stitch, abs(movements(one.stitch) - own)))
    pace = known[near.key]
    further = 0.0 if near.stitch == fabric.stitch else work_time("by movements").usual
    stitch = pace.stitch.times(own / movements(near.stitch)).wider(further)
    return Pace(fabric.key, stitch, pace.row, pace.basis, near.key)


def _row_end(times: float, turned: bool) -> Duration:
    """What a row takes beside its stitches: counting it, and turning, unless the turns were timed with the stitches."""
    turn = Duration(*work_time("turn")) if turned else NO_TIME
    return (Duration(*work_time("row")) + turn).times(times)
