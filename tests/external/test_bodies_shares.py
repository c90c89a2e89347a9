"""Shares of bodies against a random sample of the surveyed ones."""

import csv
from pathlib import Path

import pytest
from external.sources import source

from gaugewright.advice.bodies import share_of
from gaugewright.measurements import Which
from gaugewright.measurements.limits import Limits
from gaugewright.measurements.survey import Bodies, lines

DATA = Path(__file__).with_name("data")
COLUMNS = {"upper_arm": "upper_arm_flexed", "hip": "hip", "waist": "waist_omphalion", "wrist": "wrist"}


@source("open data", "ANSUR II 2012, 200 women and 200 men drawn at random, public domain")
@pytest.mark.parametrize("measure", COLUMNS)
@pytest.mark.parametrize("which", ["women", "men"])
@pytest.mark.parametrize("ease", [-1.0, 0.0, 1.0])
def test_as_many_sampled_bodies_are_tight_as_is_said(which: Which, measure: str, ease: float) -> None:
    """A garment as wide as the mean body of each chest and so many spreads: within three standard errors of 200 bodies."""
    line = lines(which)[measure]
    with (DATA / f"survey_sample_{which}.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    tight, said = 0, 0.0
    for row in rows:
        mean, spread = line.at(float(row["chest_mm"])), line.spread * 10
        finished = mean + ease * spread
        said += share_of(measure, "M", finished, Bodies(mean, spread), Limits(0.0, 1000.0, "")).tight
        tight += float(row[f"{COLUMNS[measure]}_mm"]) * line.factor + line.offset * 10 > finished
    share = said / len(rows)
    assert abs(tight / len(rows) - share) < 3 * (share * (1 - share) / len(rows)) ** 0.5
