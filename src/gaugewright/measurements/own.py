"""A body from somebody's own figures, with the gaps filled and marked.

Gaps are filled from the survey where it measures what the charts measure, else from the chart
at that bust or chest (read between its sizes, held at its ends).
"""

from collections.abc import Mapping
from dataclasses import replace

from gaugewright.errors import UserError
from gaugewright.measurements.model import Body, BodyValue, Which
from gaugewright.measurements.survey import surveyed
from gaugewright.measurements.tables import MEASURES, body, size_labels


def own_body(label: str, measures: Mapping[str, float], which: Which = "women") -> Body:
    """The body of a person whose measures (mm) are given; missing ones are filled and marked.

    Gaps are filled by the bust or chest, with the mean of bodies of that girth; without one (a hat needs a
    head and no more) the body has what was measured and nothing else.
    """
    unknown = sorted(set(measures) - MEASURES)
    if unknown:
        raise UserError(
            "unknown-measure",
            f"{', '.join(unknown)} is not a body measure known here",
            hint=f"the measures are {', '.join(sorted(MEASURES))}",
        )
    taken = {measure: _taken(mm) for measure, mm in measures.items()}
    name = "bust" if which == "women" else "chest"
    girth = measures.get(name, measures.get("bust"))
    if girth is None:
        return Body(label, taken)
    filled = {**_from_chart(which, girth), **surveyed(which, _taken(girth))}
    marked = {measure: replace(value, note=_mark(value.note)) for measure, value in filled.items()}
    return Body(label, {**marked, **taken, name: _taken(girth), "bust": _taken(girth)})


def _taken(mm: float) -> BodyValue:
    return BodyValue(mm, mm, mm, source="own measurement", confirmed=True)


def _mark(note: str) -> str:
    return "; ".join(part for part in ("not measured: the mean for this girth", note) if part)


def _from_chart(which: Which, girth: float) -> dict[str, BodyValue]:
    """The chart's measures at a girth: a straight line between the middles of two sizes."""
    sizes = [body(which, label, "middle").values for label in size_labels(which)]
    girths = [values["bust"].mm for values in sizes]
    above = next((i for i, mm in enumerate(girths) if mm >= girth), len(girths) - 1)
    low, high = sizes[max(above - 1, 0)], sizes[above]
    span = high["bust"].mm - low["bust"].mm
    share = min(max((girth - low["bust"].mm) / span, 0.0), 1.0) if span else 1.0
    held = "" if girths[0] <= girth <= girths[-1] else "held at the end of the chart"
    return {
        measure: _between(low[measure], high[measure], share, held)
        for measure in low
        if measure in high and measure not in ("bust", "chest")
    }


def _between(low: BodyValue, high: BodyValue, share: float, held: str) -> BodyValue:
    mm = low.mm + (high.mm - low.mm) * share
    note = "; ".join(part for part in (high.note, held) if part)
    return BodyValue(mm, mm, mm, high.source, low.confirmed and high.confirmed, note)
