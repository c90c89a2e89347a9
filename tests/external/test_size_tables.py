"""The size charts against other publications: women's busts, children, sewing charts, ease."""

import csv
from pathlib import Path

import pytest
from external.sources import source

from gaugewright.measurements import Read, body, ease_range, size_labels

DATA = Path(__file__).with_name("data")
DOTTY = "Yay For Yarn, 'Dotty Pullover' (crochet, to the CYC women's sizes), nine sizes"
TEXTURED = "Yay For Yarn, 'Textured Pullover' (crochet), nine sizes"
WATTS = "James N. Watts, 'Super Bulky Basic Drop Sleeve Sweater', 2024, nine sizes"
SEWING = "US sewing-pattern misses chart, copied by Sewing Scholar, 2011 (a cross-check, not the same chart)"
LION_EASE = "Lion Brand, fit and ease table (copied 2011)"
BUSTS_IN = (30, 34, 38, 42, 46, 50, 54, 58, 62)


def inches(table: str, measure: str, read: Read = "upper") -> list[float]:
    """A measure of every size of a table, in inches."""
    return [body(table, label, read).values[measure].mm / 25.4 for label in size_labels(table)]


def rows(name: str) -> list[dict[str, float]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return [{key: float(value) for key, value in row.items()} for row in csv.DictReader(file)]


@source("published", DOTTY)
def test_womens_busts_are_the_published_ones() -> None:
    assert inches("women", "bust") == pytest.approx(BUSTS_IN)


@source("published", DOTTY)
def test_least_classic_ease_gives_the_published_finished_busts() -> None:
    least = ease_range("classic")[0]
    finished = [body("women", label).values["bust"].mm + least for label in size_labels("women")]
    assert [mm / 25.4 for mm in finished] == pytest.approx([32, 36, 40, 44, 48, 52, 56, 60, 64])
    printed_cm = [81.3, 91.4, 101.6, 111.8, 121.9, 132, 142.2, 152.4, 162.6]
    assert [mm / 10 for mm in finished] == pytest.approx(printed_cm, abs=0.1)


@source("published", TEXTURED)
def test_a_published_grade_stays_within_classic_ease() -> None:
    low, high, _ = ease_range("classic")
    printed = (32.25, 36.75, 41.25, 44.25, 48.75, 53.25, 56.25, 60.75, 65.25)
    worn = [have * 25.4 - want * 25.4 for have, want in zip(printed, inches("women", "bust"), strict=True)]
    assert high is not None
    assert all(low <= mm <= high for mm in worn)


@source("published", WATTS)
def test_a_super_bulky_drop_sleeve_is_oversized_on_the_same_busts() -> None:
    finished = [37, 41, 45, 49, 53, 57, 61, 65, 69]
    assert [bust + 7 for bust in inches("women", "bust")] == pytest.approx(finished)
    assert 5 * 25.4 <= ease_range("oversized")[0] <= 7 * 25.4


@source("published", "Fosbas Designs (citing the CYC women's chart)")
def test_there_are_nine_womens_sizes_from_28_to_62_inches() -> None:
    assert len(size_labels("women")) == 9
    assert inches("women", "bust", "lower")[0] == pytest.approx(28)
    assert inches("women", "bust")[-1] == pytest.approx(62)


@source("published", "Caron pattern CAC0129-028772M, 2020, and Rowan, Bloom Book Four: women's busts in cm")
def test_inches_and_the_published_centimetres_are_half_a_centimetre_apart_at_most() -> None:
    printed = {
        "XS": (71, 76), "S": (81, 86), "M": (91.5, 96.5), "L": (101.5, 106.5),
        "2X": (122, 127), "3X": (132, 137), "4X": (142, 147),
    }  # fmt: skip
    for label, (low, high) in printed.items():
        bust = body("women", label).values["bust"]
        assert bust.confirmed
        assert (bust.low_mm / 10, bust.high_mm / 10) == pytest.approx((low, high), abs=0.51)


@source("published", LION_EASE)
@pytest.mark.parametrize(("fit", "low", "high"), [("classic", 2, 4), ("loose", 4, 6), ("oversized", 6, None)])
def test_ease_ranges_are_the_published_ones(fit: str, low: float, high: float | None) -> None:
    least, most, _ = ease_range(fit)
    assert least / 25.4 == pytest.approx(low)
    assert (most is None) if high is None else most == pytest.approx(high * 25.4)


@source("published", LION_EASE)
def test_a_bust_of_40_finishes_at_42_to_44_in_a_standard_fit() -> None:
    low, high, _ = ease_range("classic")
    bust = body("women", "L", "lower").values["bust"].mm
    assert high is not None
    assert ((bust + low) / 25.4, (bust + high) / 25.4) == pytest.approx((42, 44))


@source("published", "Purl Soho and Interweave newsletter: standard ease 2 to 4 in")
def test_independent_copies_agree_on_classic_ease() -> None:
    assert ease_range("classic")[:2] == pytest.approx((2 * 25.4, 4 * 25.4))


@source("published", "Crochet Kitten, 'Measurements for Designers: Children' (built on the CYC charts), sizes 2 to 16")
@pytest.mark.parametrize(
    ("measure", "printed"),
    [
        ("back_waist_length", [8.5, 9.5, 10.5, 12.5, 14, 15, 15.5, 16]),
        ("cross_back", [9.25, 9.75, 10.25, 10.75, 11.25, 12, 12.25, 13]),
        ("arm_length_to_underarm", [8.5, 10.5, 11.5, 12.5, 13.5, 15, 16, 16.5]),
        ("upper_arm", [7, 7.5, 8, 8.5, 8.75, 9, 9.25, 9.5]),
        ("armhole_depth", [4.25, 4.75, 5, 5.5, 6, 6.5, 7, 7.5]),
    ],
)
def test_childrens_measures_are_the_published_ones(measure: str, printed: list[float]) -> None:
    assert inches("child", measure) == pytest.approx(printed)
    assert all(body("child", label).values[measure].confirmed for label in size_labels("child"))


@source("published", "Tikki Knits, sizing page: children's chests")
def test_childrens_chests_are_the_published_ones() -> None:
    printed = {"2": 21, "4": 23, "6": 25, "10": 28, "12": 30}
    found = {label: body("child", label).values["chest"].mm / 25.4 for label in printed}
    assert found == pytest.approx(printed)
    babies = {label: body("baby", label).values["chest"].mm / 25.4 for label in ("3 months", "6 months")}
    assert babies == pytest.approx({"3 months": 16, "6 months": 17})


@source("published", "a UK yarn shop's children's chart and a designer's page 'in line with CYC' (copies disagree by up to an inch)")
def test_childrens_chests_lie_within_an_inch_of_other_copies() -> None:
    shop = {"2": 22, "4": 24, "6": 25, "8": 27, "10": 29, "12": 31}
    designer = {"2": 21, "4": 23, "6": 25, "8": 27, "10": 28, "12": 30}
    for copy in (shop, designer):
        for label, chest in copy.items():
            assert body("child", label).values["chest"].mm / 25.4 == pytest.approx(chest, abs=1)


@source("published", SEWING)
@pytest.mark.parametrize("measure", ["waist", "hip"])
def test_waist_and_hip_go_with_the_bust_as_in_sewing_patterns(measure: str) -> None:
    sewing = {row["bust_in"]: row[f"{measure}_in"] for row in rows("sewing_misses.csv")}
    for label, bust in (("S", 34), ("M", 38), ("L", 42)):
        assert body("women", label).values["bust"].mm == pytest.approx(bust * 25.4)
        assert body("women", label).values[measure].mm / 25.4 == pytest.approx(sewing[bust], abs=0.25)


@source("published", SEWING)
def test_back_waist_length_is_within_an_inch_of_sewing_patterns() -> None:
    sewing = {row["bust_in"]: row["back_waist_length_in"] for row in rows("sewing_misses.csv")}
    for label, bust in (("S", 34), ("M", 38), ("L", 42)):
        assert body("women", label).values["back_waist_length"].mm / 25.4 == pytest.approx(sewing[bust], abs=0.8)


@source("memory", "EN 13402-3, women's girth steps, to be confirmed")
def test_waist_and_hip_go_with_the_bust_as_in_the_european_standard() -> None:
    steps = rows("en13402_women.csv")
    for label in size_labels("women")[:-1]:
        values = body("women", label).values
        near = min(steps, key=lambda row: abs(row["bust_or_chest_cm"] * 10 - values["bust"].mm))
        assert values["hip"].mm / 10 == pytest.approx(near["hip_cm"], abs=5)
        assert values["waist"].mm / 10 == pytest.approx(near["waist_cm"], abs=13)


@source("published", "Pope Knits, 'Heaven Cardigan' (Morris & Sons page), nine sizes, finished measures")
def test_armholes_leave_a_published_cardigan_room_but_not_much() -> None:
    busts = (85, 93, 103, 113, 123, 133, 143, 153, 163)
    finished = (20, 22, 22, 24, 24, 25, 27, 27, 29)
    bodies = [body("women", label).values for label in size_labels("women")]
    for bust, armhole in zip(busts, finished, strict=True):
        worn = max((b for b in bodies if b["bust"].mm / 10 <= bust), key=lambda b: b["bust"].mm)
        assert 1 <= armhole - worn["armhole_depth"].mm / 10 <= 5


@source("common practice", "no measure falls from a smaller to a larger size; ties are allowed")
@pytest.mark.parametrize("table", ["women", "men", "child", "baby"])
def test_no_measure_falls_with_size(table: str) -> None:
    labels = size_labels(table)
    shared = set.intersection(*(set(body(table, label).values) for label in labels))
    for measure in shared:
        values = inches(table, measure)
        assert values == sorted(values), measure
