"""Survey lines against real bodies, other surveys and published lists."""

import csv
import statistics
from pathlib import Path

import pytest
from external.sources import source

from gaugewright.measurements import Which, body, own_body, size_labels
from gaugewright.rounding import down

DATA = Path(__file__).with_name("data")
SAMPLE = "ANSUR II 2012, 200 women and 200 men drawn at random, public domain"
BINS = "ANSUR II 2012, means of 5 cm chest bins, public domain"
MEANS_1988 = "ANSUR 1988 (NATICK/TR-89/044), published means and SDs of other people"
LINES = (
    ("wrist", "wrist"), ("neck", "neck_base"), ("hand", "hand_girth"), ("hand_length", "hand_length"),
    ("head", "head"), ("hip", "hip"), ("cross_back", "interscye_2"), ("foot_length", "foot_length"),
    ("arm_length_to_underarm", "underarm_to_wrist_vertical"),
)  # fmt: skip


def read(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def predicted(which: Which, chest_mm: float, measure: str) -> float:
    return own_body("one", {"bust": chest_mm}, which).values[measure].mm


def published(dataset: str, sex: str) -> dict[str, tuple[float, float]]:
    rows = (r for r in read("survey_published_means.csv") if (r["dataset"], r["sex"]) == (dataset, sex))
    return {r["measure"]: (float(r["mean_mm"]), float(r["sd_mm"])) for r in rows}


@source("open data", SAMPLE)
@pytest.mark.parametrize("which", ["women", "men"])
@pytest.mark.parametrize(("measure", "column"), LINES)
def test_lines_meet_a_random_sample_of_bodies(which: Which, measure: str, column: str) -> None:
    """Mean error within three standard errors of 200 bodies; scatter within 15 % of the stated."""
    rows = read(f"survey_sample_{which}.csv")
    errors = [predicted(which, float(r["chest_mm"]), measure) - float(r[f"{column}_mm"]) for r in rows]
    spread = own_body("one", {"bust": 1000.0}, which).values[measure].spread_mm
    assert len(errors) == 200
    assert abs(statistics.mean(errors)) < 3 * spread / len(errors) ** 0.5
    assert statistics.stdev(errors) == pytest.approx(spread, rel=0.15)


@source("open data", BINS)
@pytest.mark.parametrize("which", ["women", "men"])
@pytest.mark.parametrize(("measure", "column", "apart_cm"), [("wrist", "wrist", 0.25), ("neck", "neck_base", 0.4), ("hand", "hand_girth", 0.3), ("head", "head", 0.8)])
def test_a_straight_line_follows_the_bins(which: Which, measure: str, column: str, apart_cm: float) -> None:
    bins = [r for r in read("survey_bins.csv") if r["sex"] == which]
    chests = {r["chest_low_cm"]: float(r["mean_cm"]) for r in bins if r["measure"] == "chest"}
    compared = [r for r in bins if r["measure"] == column]
    assert len(compared) >= 9
    for row in compared:
        line = predicted(which, chests[row["chest_low_cm"]] * 10, measure) / 10
        assert line == pytest.approx(float(row["mean_cm"]), abs=apart_cm)


@source("published", MEANS_1988)
@pytest.mark.parametrize("which", ["women", "men"])
@pytest.mark.parametrize(
    ("measure", "column", "spreads"),
    [
        ("wrist", "wrist", 0.5), ("hand", "hand_girth", 0.7), ("hand_length", "hand_length", 0.5), ("hip", "hip", 0.5),
        ("waist", "waist_natural_indentation", 0.6), ("neck", "neck_base", 1.2), ("cross_back", "interscye_2", 1.1),
        ("foot_length", "foot_length", 0.3),
    ],
)  # fmt: skip
def test_lines_hold_for_people_measured_a_generation_earlier(which: Which, measure: str, column: str, spreads: float) -> None:
    """Within a stated part of the older survey's SD; neck and back were measured a little differently."""
    figures = published("ANSUR_1988", which)
    mean, spread = figures[column]
    assert abs(predicted(which, figures["chest"][0], measure) - mean) < spreads * spread


@source("open data", "USAF 1967, 2,420 airmen, computed means, US Government work")
@pytest.mark.parametrize(("measure", "column"), [("wrist", "wrist"), ("head", "head"), ("hip", "hip"), ("upper_arm", "upper_arm_relaxed")])
def test_mens_lines_hold_for_airmen_of_1967(measure: str, column: str) -> None:
    figures = published("USAF_1967", "men")
    mean, spread = figures[column]
    assert abs(predicted("men", figures["chest"][0], measure) - mean) < 0.6 * spread


@source("open data", "NHANES 2017-2020, adults, relaxed upper arm by hip, CDC, public domain")
@pytest.mark.parametrize("table", ["women", "men"])
def test_chart_arms_are_arms_of_people_with_that_hip(table: str) -> None:
    """Every chart arm lies between the 5th and 95th percentile, where the bin has enough people."""
    bins = {float(r["low_cm"]): r for r in read("arm_by_hip.csv") if r["sex"] == table and r["p5_cm"]}
    compared = 0
    for label in size_labels(table):
        values = body(table, label).values
        row = bins.get(down(values["hip"].mm / 50) * 5.0)
        if row:
            assert float(row["p5_cm"]) <= values["upper_arm"].mm / 10 <= float(row["p95_cm"]), label
            compared += 1
    assert compared == (8 if table == "women" else 5)


@source("published", "PurlsAndPixels knitwear size guide: heads (most adults 21 to 23 in, larger adults 23 to 25 in)")
def test_adult_heads_lie_in_the_published_ranges() -> None:
    for table, most in (("women", 23), ("men", 23.5)):
        for label in size_labels(table):
            assert 21 <= body(table, label).values["head"].mm / 25.4 <= most


@source("published", "PurlsAndPixels knitwear size guide: hands (women 6 to 7.5 in, men 7.5 to 9 in)")
def test_adult_hands_lie_in_the_published_range() -> None:
    for label in ("XS", "S", "M"):
        assert 6 <= body("women", label).values["hand"].mm / 25.4 <= 7.5
    for label in ("S", "M", "L", "XL", "XXL"):
        assert 7.5 <= body("men", label).values["hand"].mm / 25.4 <= 9


@source("published", "PurlsAndPixels knitwear size guide: heads of babies (13 to 16, then 16 to 18 in) and children (18 to 21 in)")
def test_childrens_heads_from_one_list_lie_in_the_ranges_of_another() -> None:
    ranges = {"3 months": (13, 16), "6 months": (16, 18), "12 months": (16, 18)}
    for label, (low, high) in ranges.items():
        assert low <= body("baby", label).values["head"].mm / 25.4 <= high + 1e-9
    for label in ("4", "6", "8", "10", "12", "14"):
        assert 18 <= body("child", label).values["head"].mm / 25.4 <= 21 + 1e-9


@source("published", "Crochet Kitten, 'Measurements for designers: hat sizes', 2014")
def test_heads_of_children_are_the_published_ones() -> None:
    babies = [body("baby", label).values["head"].mm / 25.4 for label in size_labels("baby")]
    children = [body("child", label).values["head"].mm / 25.4 for label in size_labels("child")]
    assert babies == pytest.approx([16, 17, 17, 19, 19])
    assert children == pytest.approx([19, 20.5, 20.5, 20.5, 20.5, 21, 21, 21])
