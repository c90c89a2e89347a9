"""A test maker's own gauge: what was told of it, and how surely it is known."""

from collections.abc import Mapping
from dataclasses import dataclass

from gaugewright.design.regauge import MAIN
from gaugewright.gauge.model import Gauge
from gaugewright.gauge.readings import Estimate, Reading, estimate
from gaugewright.spec.gauge_text import WrittenGauge
from gaugewright.spec.readings import ReadState
from gaugewright.spec.returns import FabricReturn, MakerReturn

WHOLE = 1000
"""Stitches and rows that a mean is told over, so that a gauge holds it to the hair."""


@dataclass(frozen=True, slots=True)
class OwnGauge:
    """A fabric's gauge as a maker read it; `across` and `along` are half the 95 % range, as shares of a stitch and a row.
    `state` is "washed" or "fresh", "" where only a gauge was told.
    """

    gauge: Gauge
    across: float
    along: float
    state: str


def own_gauges(told: MakerReturn) -> dict[str, OwnGauge]:
    """The gauge of each fabric that one was told of; `MAIN` where it was told without a name."""
    if told.gauge is None:
        return {}
    if isinstance(told.gauge, WrittenGauge):
        return {MAIN: _of_text(told.gauge, "")}
    found = {key: _of_fabric(one) for key, one in told.gauge.items()}
    return {key: one for key, one in found.items() if one is not None}


def _of_fabric(told: WrittenGauge | FabricReturn) -> OwnGauge | None:
    """What the pattern's finished measures are to be held to: the washed gauge, else the fresh one."""
    if isinstance(told, WrittenGauge):
        return _of_text(told, "")
    state, read = ("washed", told.washed) if told.washed is not None else ("fresh", told.fresh)
    return None if read is None else _of_readings(read, state) if isinstance(read, ReadState) else _of_text(read, state)


def _of_text(written: WrittenGauge, state: str) -> OwnGauge:
    """A gauge told as text was counted once, over the length it names."""
    gauge = Gauge(written.stitches, written.width, written.rows, written.height)
    across, along = (estimate([Reading(count(written.over), written.over)]) for count in (gauge.stitches_in, gauge.rows_in))
    return OwnGauge(gauge, across.share, along.share, state)


def _of_readings(read: ReadState, state: str) -> OwnGauge:
    across, along = (estimate([Reading(one.count, one.over.mm) for one in some]) for some in (read.stitches, read.rows))
    return OwnGauge(_gauge_of(across, along), across.share, along.share, state)


def _gauge_of(across: Estimate, along: Estimate) -> Gauge:
    return Gauge(WHOLE, WHOLE * across.mean, WHOLE, WHOLE * along.mean)


def stretched(gauges: Mapping[str, OwnGauge], across: float, along: float) -> dict[str, Gauge]:
    """The same at the end of their ranges: `across` and `along` are how much of half the range is added, 0 or 1."""
    return {
        key: Gauge(one.gauge.stitches, one.gauge.width * (1 + across * one.across), one.gauge.rows, one.gauge.height * (1 + along * one.along))
        for key, one in gauges.items()
    }
