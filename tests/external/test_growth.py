"""How bodies grow with the bust: the stated rates against real bodies, airmen, and arms by hip."""

import csv
import math
import statistics
from pathlib import Path

import pytest
from external.sources import source

from gaugewright.measurements import Which
from gaugewright.measurements.growth import growth

DATA = Path(__file__).with_name("data")
SAMPLE = "ANSUR II 2012, 200 women and 200 men drawn at random, public domain"
COLUMNS = {
    "upper_arm": "upper_arm_flexed", "neck": "neck_base", "cross_back": "interscye_2", "shoulder_length": "shoulder_length",
    "wrist": "wrist", "forearm": "forearm_flexed", "head": "head", "hand": "hand_girth", "hip": "hip", "waist": "waist_omphalion",
    "back_waist_length": "back_waist_length_omphalion", "arm_length_to_underarm": "underarm_to_wrist_vertical",
    "center_back_neck_to_wrist": "sleeve_spine_wrist",
}  # fmt: skip
RELAXED = 0.94
"""A man's relaxed upper arm as a part of the flexed one (USAF 1967); the sample holds flexed arms."""


def read(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def fitted(which: str, column: str) -> tuple[float, float, float]:
    """Least squares on the chest of the sampled bodies: rate, its standard error, and the spread about the line."""
    rows = read(f"survey_sample_{which}.csv")
    chests, values = [float(row["chest_mm"]) for row in rows], [float(row[f"{column}_mm"]) for row in rows]
    slope, intercept = statistics.linear_regression(chests, values)
    left = [value - intercept - slope * chest for chest, value in zip(chests, values, strict=True)]
    spread = math.sqrt(sum(each * each for each in left) / (len(rows) - 2))
    return slope, spread / (statistics.stdev(chests) * math.sqrt(len(rows) - 1)), spread


@source("open data", SAMPLE)
@pytest.mark.parametrize("which", ["women", "men"])
def test_rates_are_those_of_a_random_sample_within_its_standard_error(which: Which) -> None:
    """Each within three standard errors; of all of them, two in three within one and a half.

    200 bodies fix a rate to about 0.2 cm per 10 cm of bust for an arm, 0.06 for a wrist.
    """
    apart = {}
    for measure, column in COLUMNS.items():
        slope, error, spread = fitted(which, column)
        part = RELAXED if (which, measure) == ("men", "upper_arm") else 1.0
        stated = growth(which)[measure]
        apart[measure] = abs(stated.rate - slope * part) / (error * part)
        assert stated.spread == pytest.approx(spread * part, rel=0.15), measure
        assert stated.error < error, measure
    assert {measure: far for measure, far in apart.items() if far > 3} == {}
    assert sum(far < 1.5 for far in apart.values()) >= 2 * len(apart) / 3


@source("open data", SAMPLE)
@pytest.mark.parametrize("which", ["women", "men"])
def test_shoulders_and_necks_grow_far_slower_than_girths_of_the_trunk(which: Which) -> None:
    """On the sampled bodies themselves, in parts of the measure at the mean chest: blown up, all would be 1."""
    def share(column: str) -> float:
        rows = read(f"survey_sample_{which}.csv")
        chest = statistics.mean(float(row["chest_mm"]) for row in rows)
        return fitted(which, column)[0] * chest / statistics.mean(float(row[f"{column}_mm"]) for row in rows)

    assert share("waist_omphalion") > 1
    for column, most in (("neck_base", 0.6), ("interscye_2", 0.6), ("shoulder_length", 0.25), ("head", 0.25), ("wrist", 0.45)):
        assert share(column) < most, column


@source("open data", "USAF 1967, 2,420 airmen, computed means and SDs, US Government work")
@pytest.mark.parametrize(("measure", "column", "correlation", "part", "apart"), [
    ("armhole_depth", "scye_girth_over_acromion", 0.657, 0.5, 0.02), ("neck", "neck", 0.657, 1.0, 0.15),
    ("upper_arm", "upper_arm_relaxed", 0.752, 1.0, 0.1), ("wrist", "wrist", 0.453, 1.0, 0.1), ("head", "head", 0.339, 1.0, 0.05),
    ("hip", "hip", 0.766, 1.0, 0.12),
])  # fmt: skip
def test_mens_rates_hold_for_airmen_of_1967(measure: str, column: str, correlation: float, part: float, apart: float) -> None:
    """A rate is the correlation with the chest times the ratio of the SDs; half the armscye girth is the armhole's depth."""
    spreads = {row["measure"]: float(row["sd_mm"]) for row in read("survey_published_means.csv") if row["dataset"] == "USAF_1967"}
    assert growth("men")[measure].rate == pytest.approx(correlation * spreads[column] / spreads["chest"] * part, rel=apart)


@source("open data", "NHANES 2017-2020, adults, relaxed upper arm by hip, CDC, public domain")
@pytest.mark.parametrize("which", ["women", "men"])
def test_arms_grow_no_faster_by_hip_than_is_stated_by_bust(which: Which) -> None:
    """Relaxed arms of all adults by their hips, times the hips' own rate on the bust; above a hip of 120 cm they grow slower still."""
    bins = [(float(row["low_cm"]) + 2.5, float(row["mean_cm"])) for row in read("arm_by_hip.csv") if row["sex"] == which and row["p5_cm"]]

    def rate(chosen: list[tuple[float, float]]) -> float:
        return statistics.linear_regression([hip for hip, _ in chosen], [arm for _, arm in chosen])[0] * growth(which)["hip"].rate

    below, above = rate([one for one in bins if one[0] < 120]), rate([one for one in bins if one[0] > 120])
    assert 0.7 * growth(which)["upper_arm"].rate < below < 1.1 * growth(which)["upper_arm"].rate
    assert above < 0.8 * below
