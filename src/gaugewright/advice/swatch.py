"""What a swatch's readings say: the gauge with its range, and what that range does to each size."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gaugewright.gauge.model import Gauge
from gaugewright.gauge.readings import UNEVEN, Estimate, Reading, estimate, width_needed
from gaugewright.pipeline import Graded
from gaugewright.rounding import half_up, to_step
from gaugewright.spec.readings import STATES, ReadState, SwatchReadings, WrittenReading
from gaugewright.tolerances import GAUGE_OFF

FEWEST_FOR_UNEVENNESS = 3
"""From so many readings on, their spread tells how uneven the stitches are."""


GIRTHS = ("bust", "chest", "hip", "waist", "head", "hand", "foot", "upper_arm")
"""Body measures that go round: their garments' widths follow the stitch, lengths follow the row."""


@dataclass(frozen=True, slots=True)
class ReadGauge:
    """A swatch in one state."""

    state: str
    stitches: Estimate
    rows: Estimate


@dataclass(frozen=True, slots=True)
class Width:
    """A finished measurement of one size, mm, if the pattern is worked at the gauge read: the mean and its range."""

    measure: str
    size: str
    printed: float
    mean: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Meaning:
    """What the readings mean for a pattern: its measurements at this gauge, how wide a swatch would tell sizes apart
    (`needed` mm; `step` is half the smallest step of its girth), and the gauge it asks for."""

    fabric: str
    wanted: Gauge
    widths: tuple[Width, ...]
    step: float
    needed: float


@dataclass(frozen=True, slots=True)
class SwatchAdvice:
    """Everything the readings say. `used` is the state graded from; `growth` the share by which its rows lengthen when it hangs, None
    where it wasn't read flat and hung; `block` the values of a spec's `swatch`.
    """

    gauges: tuple[ReadGauge, ...]
    used: ReadGauge
    growth: float | None
    block: Mapping[str, str]
    measured: float
    meaning: Meaning | None


def advise(readings: SwatchReadings, graded: Graded | None, fabric: str) -> SwatchAdvice:
    """The advice; `graded` is the pattern it is for, if any, and `fabric` that of its fabrics which was swatched."""
    gauges = tuple(_gauges(readings))
    used = next(gauge for gauge in gauges if gauge.state == readings.used)
    state: ReadState = getattr(readings, readings.used)
    measured = sum(one.over.mm for one in state.stitches)
    meaning = None if graded is None else _meaning(graded, fabric, used, _uneven(used, state))
    hung = hung_of(gauges, used)
    growth = None if hung is None else hung.rows.mean / used.rows.mean - 1
    return SwatchAdvice(gauges, used, growth, block_of(readings, used, state, hung), measured, meaning)


def hung_of(gauges: Sequence[ReadGauge], used: ReadGauge) -> ReadGauge | None:
    """The hung state beside a flat one that is graded from."""
    return next((one for one in gauges if one.state == "hung" and used.state != "hung"), None)


def _gauges(readings: SwatchReadings) -> Iterator[ReadGauge]:
    for state in STATES:
        read: ReadState | None = getattr(readings, state)
        if read is not None:
            across, along = ([_reading(one) for one in some] for some in (read.stitches, read.rows))
            yield ReadGauge(state, estimate(across), estimate(along))


def _reading(one: WrittenReading) -> Reading:
    return Reading(one.count, one.over.mm, one.along, one.start.mm if one.start else 0.0)


def _uneven(used: ReadGauge, state: ReadState) -> float:
    """How much stitches differ among themselves: readings over n stitches differ by 1 / sqrt(n) of it."""
    if used.stitches.readings < FEWEST_FOR_UNEVENNESS or not used.stitches.spread:
        return UNEVEN
    counted = sum(one.count for one in state.stitches) / len(state.stitches)
    return float(used.stitches.spread / used.stitches.mean * counted**0.5)


def block_of(readings: SwatchReadings, used: ReadGauge, state: ReadState, hung: ReadGauge | None = None) -> dict[str, str]:
    """A spec's `swatch`: whole stitches and rows over the lengths that they measure on average, what they weigh, and how long they hang.

    Rows that seem shorter hung than flat were misread: then they are as long.
    """
    stitches = max(1, half_up(max(one.count for one in state.stitches)))
    rows = max(1, half_up(max(one.count for one in state.rows)))
    block = {
        "stitches": str(stitches), "rows": str(rows),
        "width": _cm(stitches * used.stitches.mean), "height": _cm(rows * used.rows.mean),
    }
    weighed = readings.weighed
    if weighed is not None:
        grams = weighed.mass.grams / (weighed.stitches * weighed.rows) * stitches * rows
        block["mass"] = f"{to_step(grams, 0.1):.1f}".removesuffix(".0") + " g"
    if readings.thickness is not None:
        block["thickness"] = readings.thickness.text
    if hung is not None:
        block["hung"] = _cm(rows * max(hung.rows.mean, used.rows.mean))
    return block


def _cm(mm: float) -> str:
    return f"{to_step(mm / 10, 0.1):.1f}".removesuffix(".0") + " cm"


def _meaning(graded: Graded, fabric: str, used: ReadGauge, uneven: float) -> Meaning:
    """Widths go with the stitch's width, lengths with the row's height; the pattern's numbers stay as they are."""
    wanted = graded.design.fabric(fabric).flat
    envs = graded.grading.environments
    widths = []
    for measured in graded.design.finished:
        across = measured.of in GIRTHS
        read, own = (used.stitches, wanted.stitch_width) if across else (used.rows, wanted.row_height)
        if not across and not measured.key.endswith("length"):
            continue
        for size, env in envs.items():
            printed = env.length(measured.measure)
            widths.append(Width(measured.label, size, printed, *(printed * mm / own for mm in (read.mean, read.low, read.high))))
    girths = [one for one in widths if one.measure == widths[0].measure] if widths else []
    steps = [abs(b.printed - a.printed) for a, b in zip(girths, girths[1:], strict=False) if abs(b.printed - a.printed) > GAUGE_OFF]
    step = min(steps) / 2 if steps else 0.0
    needed = width_needed(used.stitches.mean, step / max(one.printed for one in girths), uneven) if step else 0.0
    return Meaning(fabric, wanted, tuple(widths), step, needed)
