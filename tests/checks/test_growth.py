"""What grows over the sizes is held to how bodies grow."""

import pytest

from checks.specs import PULLOVER, checked, damaged, places, told_by
from gaugewright.measurements.growth import NECK_ACROSS, growth
from gaugewright.measurements.survey import lines

OWN = PULLOVER[PULLOVER.index("  make: [A") : PULLOVER.index("  ease: {bust")]
NECK = "neck: 24 cm => neck: body.neck * 0.5"


def of_table(table: str, *changes: str) -> str:
    """The pullover in all sizes of a table, its neck by body.neck unless it is changed."""
    return damaged(f"{OWN} =>   table: {table}\n", *(changes if any("neck:" in one for one in changes) else (NECK, *changes)))


def faults(text: str) -> list[tuple[str, str, str, str]]:
    return [place for place in places(told_by("grows-as-bodies-do", text), text) if place[0] == "grows-unlike-bodies"]


def figures(text: str) -> str:
    return next(result.figures for result in checked(text) if result.name == "grows-as-bodies-do")


def test_a_neck_that_grows_with_the_bust_is_told_at_its_formula() -> None:
    text = of_table("women", "neck: 24 cm => neck: body.bust * 0.2")
    assert faults(text) == [("grows-unlike-bodies", "warning", "XS, 5X", "body.bust * 0.2}")]
    told = told_by("grows-as-bodies-do", text)[0]
    assert "grows with `body.bust * 0.2` from 15.2 cm in XS to 31.5 cm in 5X: 16.3 cm, 16.3 cm of it with body.bust" in told.message
    assert "or 2.0 cm per 10 cm of bust; bodies grow 0.5 cm per 10 cm of bust there (the neck's girth by pi, 4.0 cm over these sizes" in told.message
    assert "none with a bust over 126.6 cm were surveyed" in told.message
    factor = told.hint.split(" * ")[1]
    assert told.hint == f"grade it by body.neck: in 1X it is now body.neck * {factor}"
    assert faults(text.replace("neck: body.bust * 0.2", f"neck: body.neck * {factor}")) == []


def test_a_neck_graded_by_the_neck_is_not() -> None:
    for table in ("women", "men"):
        assert faults(of_table(table)) == []


def test_a_name_is_followed_to_the_formula_that_it_stands_for() -> None:
    text = of_table("women", "neck: 24 cm => neck: opening", "levels: => lengths: {opening: width, width: body.bust * 0.2}\nlevels:")
    assert faults(text) == [("grows-unlike-bodies", "warning", "XS, 5X", "body.bust * 0.2}")]


def test_a_formula_that_knows_the_body_s_own_measure_is_only_noted() -> None:
    """A limit that no size comes to says nothing."""
    text = of_table("women", "neck: 24 cm => neck: 'max(body.bust * 0.2, body.neck * 0.46)'")
    assert [one[1] for one in faults(text)] == ["note"]
    assert [one[1] for one in faults(text.replace("0.46", "0.3"))] == ["warning"]


def test_twice_the_bodies_growth_and_a_stitch_are_allowed() -> None:
    """A neck of women may grow by 2 * 0.1561 / pi of the bust, 8.08 cm over these sizes, and by a stitch, 1 cm."""
    assert faults(of_table("women", "neck: 24 cm => neck: body.neck * 0.1 + body.bust * 0.1")) == []
    assert [one[1] for one in faults(of_table("women", "neck: 24 cm => neck: body.neck * 0.1 + body.bust * 0.105"))] == ["note"]


def test_what_minds_the_bust_alone_is_held_to_what_bodies_but_one_in_forty_grow() -> None:
    """4.04 cm as bodies, two spreads of 0.47 cm, and a stitch: 5.98 cm of 81.3 cm of bust."""
    assert faults(of_table("women", "neck: 24 cm => neck: body.bust * 0.073")) == []
    assert [one[1] for one in faults(of_table("women", "neck: 24 cm => neck: body.bust * 0.074"))] == ["note"]


def test_a_straight_body_over_the_hips_grows_with_the_bust() -> None:
    text = of_table("women", "finished:\n => finished:\n  hips: {measure: finished(back.width) + finished(front.width), of: hip}\n")
    assert faults(text) == []


def test_a_sleeve_and_its_armhole_that_grow_with_the_bust() -> None:
    text = of_table("men", "underarm: shoulder - 21 cm => underarm: shoulder - body.chest * 0.4 + 15 cm")
    assert faults(text) == [
        ("grows-unlike-bodies", "warning", "S, XXL", "edge(back.armhole) + edg"), ("grows-unlike-bodies", "warning", "S, XXL", "shoulder - body.chest * "),
    ]
    arm, depth = told_by("grows-as-bodies-do", text)[:2]
    assert arm.message.startswith("upper_arm grows with `edge(back.armhole) + edge(front.armhole)` from")
    assert "16.3 cm of it with body.chest" in depth.message and "grade it by body.armhole_depth: in L it is now body.armhole_depth +" in depth.hint
    hung = text.replace("shoulder: 52 cm", "shoulder: body.back_waist_length + 12 cm")
    assert [one[1] for one in faults(hung)] == ["warning", "warning"]
    assert faults(text.replace("body.chest * 0.4 + 15 cm", "body.armhole_depth - 1 cm")) == []


def test_shoulders_of_armholes_may_hardly_grow_and_dropped_ones_may() -> None:
    shaped = of_table(
        "women", "      - even: {to: shoulder}\n =>       - even: {to: underarm}\n      - armhole: {to: shoulder, target: body.bust * 0.42}\n",
        "neck: 24 cm => neck: body.neck * 0.5", "target: edge(back.armhole) + edge(front.armhole) => target: body.upper_arm + 8 cm",
    )
    assert faults(shaped) == [("grows-unlike-bodies", "warning", "XS, 5X", "body.bust * 0.42}")]
    assert "the width above the armholes by body.cross_back" in told_by("grows-as-bodies-do", shaped)[0].hint
    assert faults(shaped.replace("body.bust * 0.42", "body.cross_back + 1 cm")) == []
    assert faults(of_table("women")) == []


def test_what_the_chart_s_own_measure_grades_is_held_to_the_chart() -> None:
    """The chart's arms grow longer by 0.6 cm for 10 cm of bust where those of bodies hardly do."""
    arm = "finished:\n => finished:\n  arm: {measure: finished(sleeve.length), of: arm_length_to_underarm}\n"
    by_chart = of_table("men", "length: 40 cm, => length: body.arm_length_to_underarm - 6 cm,", arm)
    assert faults(by_chart) == []
    faster = of_table("men", "length: 40 cm, => length: body.arm_length_to_underarm * 2 - 54 cm,", arm)
    assert [one[1] for one in faults(faster)] == ["note"]


def test_a_chart_that_grows_unlike_bodies_is_noted_once() -> None:
    text = of_table("women", "shoulder: 52 cm => shoulder: body.back_waist_length + 12 cm")
    told = [one for one in told_by("grows-as-bodies-do", text) if one.name == "chart-unlike-bodies"]
    assert places(tuple(told), text) == [("chart-unlike-bodies", "note", "XS, 5X", "body.back_waist_length +")]
    assert "grows 0.6 cm per 10 cm of bust from XS to 5X, bodies' 1.5 cm per 10 cm of bust" in told[0].message
    assert [one.name for one in told_by("grows-as-bodies-do", of_table("women"))] == []


def test_nobody_s_growth_is_known_for_children_or_within_a_few_centimetres() -> None:
    assert "no surveyed bodies" in figures(PULLOVER.replace("bust: 86 cm", "bust: 66 cm"))
    assert "no surveyed bodies" in figures(of_table("child", "neck: 24 cm => neck: 14 cm"))
    near = of_table("women").replace("table: women", "table: women\n  make: [S]")
    assert figures(near) == "the bust grows 0.0 cm over the sizes: too little to compare"
    assert figures(of_table("women")).endswith("measures compared over 81.3 cm of bust")


WIDE = PULLOVER.replace("bust: 86 cm", "bust: 80 cm").replace("bust: 94 cm", "bust: 100 cm").replace("bust: 102 cm", "bust: 130 cm").replace("hip: 106 cm", "hip: 130 cm")
ARMHOLES = ("      - even: {to: shoulder}\n", "      - even: {to: underarm}\n      - armhole: {to: shoulder, target: body.bust * 0.42}\n")


def own(*changes: tuple[str, str]) -> str:
    """The pullover in own sizes of 80, 100 and 130 cm, its neck by body.neck unless it is changed."""
    text = WIDE
    for old, new in (("neck: 24 cm", "neck: body.neck * 0.5"), *changes):
        assert old in text
        text = text.replace(old, new)
    return text


@pytest.mark.parametrize(
    ("change", "place", "message", "hint"),
    [
        (("target: edge(back.armhole) + edge(front.armhole), length: 40 cm, round: up", "target: body.bust * 0.4, length: 40 cm"), "body.bust * 0.4, length:",
         "upper_arm grows with `body.bust * 0.4` from 32.0 cm in A to 52.0 cm in C: 20.0 cm, 20.0 cm of it with body.bust, or 4.0 cm per 10 cm of bust; bodies grow 2.8 cm", ""),
        (("neck: body.neck * 0.5", "neck: body.bust * 0.25"), "body.bust * 0.25}",
         "the neck of back grows with `body.bust * 0.25` from 20.0 cm in A to 32.5 cm in C: 12.5 cm, 12.5 cm of it with body.bust, or 2.5 cm per 10 cm of bust; bodies grow 0.5 cm",
         "grade it by body.neck: in B it is now body.neck * "),
        (ARMHOLES, "body.bust * 0.42}", "the shoulder of back grows with `body.bust * 0.42`", "grade the width above the armholes by body.cross_back"),
        (("underarm: shoulder - 21 cm", "underarm: shoulder - body.bust * 0.4 + 15 cm"), "shoulder - body.bust * 0.",
         "the depth of back.armhole grows with `shoulder - body.bust * 0.4 + 15 cm` from 17.0 cm in A to 37.0 cm in C: 20.0 cm, 20.0 cm of it with body.bust, or 4.0 cm per 10 cm of bust; bodies grow 1.4 cm",
         "grade it by body.armhole_depth: in B it is now body.armhole_depth "),
    ],
)
def test_own_sizes_without_a_table_are_held_to_women_by_their_own_busts(change: tuple[str, str], place: str, message: str, hint: str) -> None:
    text = own(change)
    told = [one for one in told_by("grows-as-bodies-do", text) if places((one,), text)[0][3].startswith(place[:20])]
    assert [one.name for one in told] == ["grows-unlike-bodies"], told_by("grows-as-bodies-do", text)
    assert told[0].size == "A, C" and message in told[0].message and told[0].hint.startswith(hint)


def test_own_sizes_graded_by_their_bodies_pass() -> None:
    assert faults(own()) == []
    assert figures(own()) == "6 measures compared over 50.0 cm of bust with the women surveyed, since no table is named"
    assert "too little to compare" in figures(damaged("bust: 102 cm => bust: 95 cm"))


@pytest.mark.parametrize("table", ["women", "men"])
def test_rates_are_those_that_fill_the_charts(table: str) -> None:
    """What the survey fills a chart's gaps with grows at the same rate."""
    rates = growth(table)
    shared = [measure for measure in lines(table) if measure in rates]
    assert len(shared) >= 9
    for measure in shared:
        line = lines(table)[measure]
        assert rates[measure].rate == pytest.approx(line.slope * line.factor, abs=1e-4)
        assert rates[measure].spread == pytest.approx(line.spread * 10, abs=0.01)
    assert rates["neck_width"].rate == pytest.approx(rates["neck"].rate * NECK_ACROSS)
    assert not growth("child")
