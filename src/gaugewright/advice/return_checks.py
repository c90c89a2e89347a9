"""Is a test maker's return about this pattern, and can its figures be? Every problem is told at its place in the file."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from gaugewright.advice.own_gauge import OwnGauge
from gaugewright.changes import Side, measures_of
from gaugewright.design.model import Design
from gaugewright.design.regauge import MAIN
from gaugewright.errors import Problem
from gaugewright.measurements.plausible import likelier
from gaugewright.rounding import half_up
from gaugewright.spec.messages import did_you_mean, listed
from gaugewright.spec.returns import MakerReturn, ReadReturn
from gaugewright.units import cm_text

LEAST_MADE, MOST_MADE = 0.6, 1.6
"""A finished measure so far from what this maker's gauge makes of it was misread or miswritten: no hand strays so far
(common practice, no source)."""

LEAST_STITCH, MOST_STITCH = 0.5, 2.0
"""Stitches half or twice as wide or high as the pattern's are another fabric, or a slip of the unit (common practice, no source)."""

LEAST_USED, MOST_USED = 1 / 3, 3.0
"""Yarn so far from what was counted was another colour's, or in another unit (common practice, no source)."""

FASTEST = 3000
"""Stitches an hour: fifty a minute for hours on end is faster than anybody works (common practice, no source)."""


def check_names(read: ReadReturn, graded_labels: tuple[str, ...], side: Side) -> Iterator[Problem]:
    """What the return names that the pattern hasn't; `side` is the pattern as it is printed."""
    told, design = read.told, side.design
    yield from _edition(read, design)
    if told.size not in graded_labels:
        yield _unknown(read, "unknown-size", ("size",), told.size, "size", graded_labels, key=False)
    known = {
        "gauge": ("unknown-fabric", "fabric", [fabric.key for fabric in design.fabrics]),
        "finished": ("unknown-finished", "finished measurement", [key for key, _, _ in measures_of(side)]),
        "yarn": ("unknown-yarn", "yarn", [yarn.key for yarn in design.yarns]),
        "hours": ("unknown-piece", "piece", [piece.key for piece in design.pieces]),
        "remarks": ("unknown-piece", "piece", [piece.key for piece in design.pieces]),
    }
    for field, (name, kind, names) in known.items():
        for key in _keys(getattr(told, field)):
            if key not in names:
                yield _unknown(read, name, (field, key), key, kind, names)


def _edition(read: ReadReturn, design: Design) -> Iterator[Problem]:
    told, about = read.told, design.about
    if told.pattern is not None and told.pattern.strip().casefold() != about.title.casefold():
        yield Problem("other-pattern", f"this return is for {told.pattern}, and the spec is {about.title}", read.source.origin_at(("pattern",)), "give the spec it was made from, or mend the title")
    if told.version is not None and told.version != about.version:
        spec = f"version {about.version}" if about.version else "a pattern without a version"
        yield Problem(
            "other-version", f"this return was worked from version {told.version}, and the spec is {spec}", read.source.origin_at(("version",)),
            "what was changed since may be what differs: compare it with the spec of that version", severity="warning",
        )


def _keys(value: Any) -> Iterable[str]:
    return value if isinstance(value, dict) else ()


def _unknown(read: ReadReturn, name: str, path: tuple[str, ...], found: str, kind: str, known: Iterable[str], key: bool = True) -> Problem:
    names = tuple(known)
    hint = did_you_mean(found, names, f"the {kind}s are {listed(names, 'and')}")
    return Problem(name, f"this pattern has no {kind} {found}", read.source.origin_at(path, key=key), hint)


def check_gauges(read: ReadReturn, gauges: Mapping[str, OwnGauge], design: Design) -> Iterator[Problem]:
    """Gauges that can't be of this fabric."""
    for key, one in gauges.items():
        pattern = design.fabric(key or design.pieces[0].fabric).gauge
        ratios = {"wide": one.gauge.stitch_width / pattern.stitch_width, "high": one.gauge.row_height / pattern.row_height}
        for way, ratio in ratios.items():
            if not LEAST_STITCH <= ratio <= MOST_STITCH:
                said = f"this gauge makes stitches {ratio:.1f} times as {way} as the pattern's"
                path = ("gauge",) if key == MAIN else ("gauge", key)
                yield Problem("out-of-range", said, read.source.origin_at(path), "measure it again, or mend the counts or the unit")
                break


def check_measures(read: ReadReturn, predicted: Mapping[str, float]) -> Iterator[Problem]:
    """Measures that can't be, mm: a digit forgotten, or another unit."""
    for key, length in read.told.finished.items():
        low, high = predicted[key] * LEAST_MADE, predicted[key] * MOST_MADE
        if not low <= length.mm <= high:
            guess = likelier(length.mm, low, high)
            said = f"{length.text} is not a likely {key.replace('_', ' ')}, where {cm_text(predicted[key])} cm are predicted" + (f": {guess}?" if guess else "")
            yield Problem("out-of-range", said, read.source.origin_at(("finished", key)), "measure it again, or mend the unit or the decimal point")


def check_yarn(read: ReadReturn, counted: Mapping[str, float]) -> Iterator[Problem]:
    """Yarn that can't be, grams by colour, "" for all of it; nothing is said where no figure is counted."""
    for key, grams in grams_told(read.told).items():
        if counted and key not in counted:
            yield Problem("unknown-yarn", f"size {read.told.size} is worked without {key}", read.source.origin_at(("yarn", key), key=True), "write it under the colour that it was, or take it out")
        elif counted and not LEAST_USED <= grams / counted[key] <= MOST_USED:
            said = f"{grams:.0f} g of {key or 'yarn'} are not likely, where {counted[key]:.0f} g are counted"
            yield Problem("out-of-range", said, read.source.origin_at(("yarn", key) if key else ("yarn",)), "weigh it again, or mend the unit or the decimal point")


def grams_told(told: MakerReturn) -> dict[str, float]:
    """Grams by yarn, or all of them under ""."""
    if told.yarn is None:
        return {}
    return {key: one.grams for key, one in told.yarn.items()} if isinstance(told.yarn, dict) else {"": told.yarn.grams}


def check_pace(read: ReadReturn, pace: Mapping[str, float]) -> Iterator[Problem]:
    """Hours in which nobody works so many stitches: stitches an hour by piece, "" for all of it."""
    for key, stitches in pace.items():
        if stitches > FASTEST:
            said = f"{half_up(stitches)} stitches an hour are more than anybody works"
            yield Problem("out-of-range", said, read.source.origin_at(("hours", key) if key else ("hours",)), "write the hours it took in all, such as 12.5")
