"""Joint shares of single bodies, reckoned anew with numpy straight from the survey's rows; the range of a share against scipy."""

import csv
from pathlib import Path

import numpy as np
import pytest
from external.sources import source
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from gaugewright import pipeline
from gaugewright.advice.bodies import bodies_within
from gaugewright.measurements.limits import Limits
from gaugewright.measurements.proportion import wilson
from gaugewright.measurements.surveyed_bodies import surveyed_bodies

DATA = Path(__file__).with_name("data")
SAMPLES = Path(__file__).parents[2] / "samples"
GIRTH = {"saltmarsh-jacket": (100, 280), "dunlin-yoke": (40, 200), "shearwater-cardigan": (40, 200)}
"""Limits of ease at bust or chest, mm; those of the other measures stand beside them."""
SAMPLE = "ANSUR II 2012, 200 women and 200 men drawn at random, public domain"
INCH = 25.4
WOMEN = [(28, 30), (32, 34), (36, 38), (40, 42), (44, 46), (48, 50), (52, 54), (56, 58), (60, 62)]
MEN = [(34, 36), (38, 40), (42, 44), (46, 48), (50, 52)]
"""Busts and chests of the sizes in inches, as their chart prints them."""


def column(which: str, name: str) -> np.ndarray:
    with (DATA / f"survey_sample_{which}.csv").open(encoding="utf-8", newline="") as file:
        return np.array([float(row[f"{name}_mm"]) for row in csv.DictReader(file)])


def sizes_of(chests: np.ndarray, chart: list[tuple[int, int]]) -> np.ndarray:
    """The place of the nearest size of each body, of two as near the larger; -1 beyond the chart."""
    ends = np.array(chart, dtype=float) * INCH
    off = np.floor(np.maximum(np.maximum(ends[:, 0] - chests[:, None], chests[:, None] - ends[:, 1]), 0) + 0.5)
    nearest = off.shape[1] - 1 - np.argmin(off[:, ::-1], axis=1)
    return np.where((chests < ends[0, 0]) | (chests > ends[-1, 1]), -1, nearest)


@source("open data", SAMPLE)
@pytest.mark.parametrize(
    ("name", "which", "chart", "girth", "measured"),
    [
        ("saltmarsh-jacket", "women", WOMEN, "bust", {"hip": ("hip", 1.0, (60, 240)), "upper_arm": ("upper_arm_flexed", 1.0, (220, 280)), "wrist": ("wrist", 1.0, (20, 60))}),
        ("dunlin-yoke", "women", WOMEN, "bust", {"upper_arm": ("upper_arm_flexed", 1.0, (20, 80)), "wrist": ("wrist", 1.0, (30, 50))}),
        ("shearwater-cardigan", "men", MEN, "chest", {"upper_arm": ("upper_arm_flexed", 0.94, (60, 120)), "wrist": ("wrist", 1.0, (40, 70))}),
    ],
)
def test_a_size_fits_as_many_in_everything_as_numpy_counts(name: str, which: str, chart: list[tuple[int, int]], girth: str, measured: dict[str, tuple[str, float, tuple[float, float]]]) -> None:
    graded = pipeline.grade(pipeline.load(SAMPLES / name / "spec.yaml"))
    used = {**{of: ends for of, (_, _, ends) in measured.items()}, girth: GIRTH[name]}
    found = bodies_within(graded, {of: Limits(*ends, "") for of, ends in used.items()})
    bodies = {of: column(which, raw) * factor for of, (raw, factor, _) in measured.items()} | {girth: column(which, "chest")}
    thick = {fabric.thickness for fabric in graded.design.fabrics}
    place = sizes_of(bodies[girth], chart)
    labels = graded.bodies.labels
    fits = {}
    for label in labels:
        for one in graded.design.finished:
            if one.of in used:
                worn = graded.grading.environments[label].length(one.measure) - np.pi * max(thick)
                ease = worn - bodies[one.of]
                fits[label, one.of] = (ease >= used[one.of][0]) & (ease <= used[one.of][1])
    everything = {label: np.all([fits[label, of] for of in used], axis=0) for label in labels}
    for at, (label, one) in enumerate(zip(labels, found.together, strict=True)):
        own = place == at
        assert (one.size, one.bodies, one.fits) == (label, own.sum(), (everything[label] & own).sum())
        for of in used:
            assert one.without[of] == (np.all([fits[label, other] for other in used if other != of], axis=0) & own).sum()
    inside = place >= 0
    assert found.some.bodies == inside.sum() > 190
    assert found.some.some == (np.any(list(everything.values()), axis=0) & inside).sum()
    assert found.some.own == sum((everything[label] & (place == at)).sum() for at, label in enumerate(labels))
    assert found.some.own < found.some.some < found.some.bodies


@source("open data", SAMPLE)
@pytest.mark.parametrize("which", ["women", "men"])
def test_the_bodies_counted_are_the_surveys(which: str) -> None:
    """Waists brought to the natural waist, men's arms to relaxed ones, as their lines are."""
    factor, waist = (1.0, -66.4) if which == "women" else (0.94, -22.5)
    found = surveyed_bodies(which)
    assert [one["bust"] for one in found] == list(column(which, "chest"))
    assert [one["hip"] for one in found] == list(column(which, "hip"))
    assert np.allclose([one["upper_arm"] for one in found], column(which, "upper_arm_flexed") * factor)
    assert np.allclose([one["waist"] for one in found], column(which, "waist_omphalion") + waist)


@source("library", "scipy.stats.binomtest, proportion_ci by Wilson's method")
@given(st.integers(1, 2000).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_the_range_of_a_share_is_wilsons(counted: tuple[int, int]) -> None:
    hits, of = counted
    theirs = stats.binomtest(hits, of).proportion_ci(0.95, "wilson")
    assert wilson(hits, of) == pytest.approx((theirs.low, theirs.high), abs=1e-6)
