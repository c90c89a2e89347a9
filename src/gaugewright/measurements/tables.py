"""The published size charts: labels, bodies, credit.

The charts print inches and cm, rounded apart. Lengths are taken from the inch column (the one
that published copies agree on) at 25.4 mm, so they may differ from the printed cm by up to
half a centimetre. Women have a `bust`; men, children and babies a `chest`, which is given a
second time as `bust` so that one formula serves every table.
"""

from collections.abc import Mapping
from functools import cache

from gaugewright.datafiles import read_table
from gaugewright.errors import UserError
from gaugewright.measurements.model import Body, BodyValue, Read
from gaugewright.measurements.survey import DATA, surveyed

TABLES = ("women", "men", "child", "baby")
TENTHS_PER_INCH = 254  # tenths of a millimetre, so that 34 in is 863.6 mm to the last bit


def size_labels(table: str) -> tuple[str, ...]:
    """A table's size labels, smallest first.

    >>> size_labels("women")
    ('XS', 'S', 'M', 'L', '1X', '2X', '3X', '4X', '5X')
    """
    return tuple(dict.fromkeys(row["size_label"] for row in _rows(table)))


def body(table: str, label: str, read: Read = "upper") -> Body:
    """The body of one size; a chart's range is read at its lower end, middle or upper end.

    What the chart lacks comes from the survey (women, men) or from the head and hand lists
    (children, babies); a measure that neither has is absent.
    """
    chart = _chart(table)
    if label not in chart:
        raise UserError(
            "unknown-size",
            f"the {table} chart has no size {label!r}",
            hint=f"its sizes are {', '.join(chart)}",
        )
    values = {name: _read(value, read) for name, value in chart[label].items()}
    girth = values["bust" if table == "women" else "chest"]
    fill = {**surveyed(table, girth), **_listed(table, label, read)}
    return Body(label, {**fill, **values, "bust": girth})


def credit(table: str) -> str:
    """The line the chart's publisher asks for where its figures are used."""
    _chart(table)
    return _publication(table)["credit_line"]


@cache
def how_to_measure(measure: str) -> str:
    """How a measure is taken, in words; empty when the lists do not say."""
    return next((r["how"] for r in read_table(DATA / "how_to_measure.csv") if r["measure"] == measure), "")


def _mm(inches: str) -> float:
    return float(inches) * TENTHS_PER_INCH / 10


def _read(value: BodyValue, read: Read) -> BodyValue:
    mm = {"lower": value.low_mm, "middle": (value.low_mm + value.high_mm) / 2, "upper": value.high_mm}[read]
    return BodyValue(mm, value.low_mm, value.high_mm, value.source, value.confirmed, value.note)


@cache
def _publication(table: str) -> Mapping[str, str]:
    return next(r for r in read_table(DATA / "publications.csv") if r["table"] == table)


@cache
def _all_rows() -> tuple[Mapping[str, str], ...]:
    return read_table(DATA / "body_long.csv")


def _rows(table: str) -> tuple[Mapping[str, str], ...]:
    """A chart's figures as they stand in the file, smallest size first."""
    if table not in TABLES:
        raise UserError(
            "unknown-size-table", f"there is no size table {table!r}", hint=f"the tables are {', '.join(TABLES)}"
        )
    return tuple(row for row in _all_rows() if row["table"] == table)


@cache
def _chart(table: str) -> Mapping[str, Mapping[str, BodyValue]]:
    """A chart's values by size label and measure, `mm` at the upper end."""
    chart: dict[str, dict[str, BodyValue]] = {}
    for row in _rows(table):
        chart.setdefault(row["size_label"], {})[row["measurement"]] = _chart_value(table, row)
    return chart


def _chart_value(table: str, row: Mapping[str, str]) -> BodyValue:
    confirmed = row["source"] in ("found", "found_in_only")
    return BodyValue(
        mm=_mm(row["max_in"]),
        low_mm=_mm(row["min_in"]),
        high_mm=_mm(row["max_in"]),
        source=_publication(table)["publication"],
        confirmed=confirmed,
        note="" if confirmed else "from memory, to be checked against the publication",
    )


@cache
def _lists() -> tuple[Mapping[str, str], ...]:
    return read_table(DATA / "head_hand.csv")


def _listed(table: str, label: str, read: Read) -> dict[str, BodyValue]:
    """Head and hand of a child's or baby's size, where a list has them."""
    return {
        row["measure"]: _read(
            BodyValue(
                mm=_mm(row["max_in"]),
                low_mm=_mm(row["min_in"]),
                high_mm=_mm(row["max_in"]),
                source=row["publication"],
                confirmed=row["source"] == "found",
                note="; ".join(part for part in (f"list for {row['group']}", row["note"]) if part),
            ),
            read,
        )
        for row in _lists()
        if row["table"] == table and row["size_label"] == label
    }


MEASURES: frozenset[str] = frozenset(row["measure"] for row in read_table(DATA / "plausible.csv"))
