"""Single bodies of the open survey: what a line on chest can't tell, which measures go together on one body."""

from collections.abc import Mapping
from functools import cache

from gaugewright.datafiles import read_table
from gaugewright.measurements.survey import DATA, lines


@cache
def surveyed_bodies(table: str) -> tuple[Mapping[str, float], ...]:
    """Women or men drawn from the survey at random, their measures in mm where charts measure them; none of children."""
    known = lines(table)
    found = []
    for row in read_table(DATA / "survey_bodies.csv"):
        if row["table"] == table:
            taken = {column.removesuffix("_mm"): float(text) for column, text in row.items() if column.endswith("_mm")}
            charted = {measure: known[measure].as_charted(mm) if measure in known else mm for measure, mm in taken.items()}
            found.append({**charted, "chest": charted["bust"]})
    return tuple(found)
