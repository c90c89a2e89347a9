"""Slopes of rising stitches: their groups, the row's height within the total, and what they can't give."""

import pytest
from tiny_specs import THREE_SIZES, one_piece, problems, row_text, told

from gaugewright.grading.rising import heights_beside, rising, tallest
from gaugewright.trade.stitch_heights import times_as_high

SLOPED = "as: rising stitches"


def piece(top: str, fabric: str = "plain", body: str = "even: {length: 40 cm}") -> str:
    return THREE_SIZES + (
        f"pieces:\n  piece:\n    fabric: {fabric}\n    colours: oat\n    start: {{chain: 50 cm}}\n    sections: [{body}, {top}]\n"
        "    edges: {starting: [side], far: [front], bottom: hem}\n"
    )


def test_groups_rise_from_the_low_edge() -> None:
    assert [(each.stitch, each.stitches) for each in rising(10, 1.0, "dc")] == [("sl st", 2), ("sc", 3), ("hdc", 3), ("dc", 2)]
    assert [(each.stitch, each.stitches) for each in rising(1, 1.0, "sc")] == [("sc", 1)]


def test_a_row_is_as_high_as_its_tallest_stitch() -> None:
    assert tallest(1.0, "hdc") == 1.0
    assert tallest(1.6, "hdc") == pytest.approx(2.04 / 1.32)
    assert heights_beside("sc")["sc"] == 1.0 and times_as_high("dc", "dc") == 1.0


def test_both_shoulders_mirror_each_other_about_the_neck() -> None:
    made = one_piece(piece(f"shoulders: {{neck: 20 cm, slope: 1.5 cm, {SLOPED}}}"))
    assert row_text(made.main.rows[-1]) == "RS oat: 3 sl st 5 sc 4 hdc 26 dc 4 hdc 5 sc 3 sl st = 50"
    assert (made.edges["shoulder"].stitches, made.edges["neck"].stitches) == (15, 20)


def test_the_slope_lies_within_the_total() -> None:
    made = one_piece(piece(f"shoulders: {{neck: 20 cm, slope: 1.5 cm, {SLOPED}}}"))
    assert len(made.main.rows) == 39 and made.edges["side"].rows == 38
    assert made.finished["length"] == pytest.approx(380 + 10 * 2.04 / 1.32)
    low = one_piece(piece(f"shoulders: {{neck: 20 cm, slope: 1.3 cm, {SLOPED}}}", "tall"))
    assert low.finished["length"] == pytest.approx(380 + 20 * 1.32 / 2.04)


def test_rows_stated_are_kept() -> None:
    made = one_piece(piece(f"shoulders: {{neck: 20 cm, slope: 2 cm, {SLOPED}}}", body="even: {rows: 40}"))
    assert len(made.main.rows) == 40


def test_the_outline_slants_over_the_shoulder() -> None:
    made = one_piece(piece(f"shoulders: {{neck: 20 cm, slope: 1.5 cm, {SLOPED}}}"))
    corners = made.outline.polygon()
    top = max(y for _, y in corners)
    assert sorted(x for x, y in corners if y == top) == pytest.approx([150.0, 350.0])
    assert sorted(x for x, y in corners if y == pytest.approx(380.0)) == pytest.approx([0.0, 500.0])


@pytest.mark.parametrize("shape", ["round", "v", "boat", "square"])
def test_both_sides_of_a_neck_rise_to_it(shape: str) -> None:
    made = one_piece(piece(f"neck: {{shape: {shape}, width: 20 cm, depth: 9 cm, slope: 1.5 cm, {SLOPED}}}"))
    last = [row_text(strip.rows[-1]).split(": ", 1)[1] for strip in made.strips[1:]]
    low, high = "3 sl st 5 sc 4 hdc 3 dc = 15", "ch(0) 3 dc 4 hdc 5 sc 3 sl st = 15"
    assert sorted(last) == sorted((low, high))
    assert made.outline.sides[0].far[-1] == pytest.approx((150.0, made.outline.heights[-1]))


def test_a_half_front_rises_to_its_neck_edge() -> None:
    made = one_piece(piece(f"neck_edge: {{shape: round, width: 20 cm, depth: 9 cm, slope: 1.5 cm, at: front, {SLOPED}}}"))
    row = made.main.rows[-1]
    groups = [run.operation.stitch for run in row.runs if run.operation.kind == "stitch"]
    assert groups == (["sl st", "sc", "hdc", "dc"] if row.side == "RS" else ["dc", "hdc", "sc", "sl st"])
    assert made.edges["side"].rows == len(made.main.rows) - 1


@pytest.mark.parametrize(
    ("top", "name", "words"),
    [
        (f"shoulders: {{neck: 20 cm, slope: 3 cm, {SLOPED}}}", "rising-too-high", "make `slope` at most 2.0 cm, or take out `as`"),
        (f"shoulders: {{neck: 20 cm, slope: 0.3 cm, {SLOPED}}}", "rising-too-low", "make `slope` at least 0.7 cm, or take it out"),
        (f"neck: {{shape: round, width: 20 cm, depth: 1 cm, slope: 2 cm, {SLOPED}}}", "rising-too-high", "make `depth` at least 3.1 cm, or take out `as`"),
    ],
)
def test_what_stitches_cannot_give_is_told_with_what_they_can(top: str, name: str, words: str) -> None:
    found = problems(piece(top))
    assert {each.name for each in found} == {name}
    assert all(words in each.hint for each in found)
    number = words.split("`")[1], words.split("least " if "least" in words else "most ")[1].split(" cm")[0]
    followed = top.replace("3 cm", f"{number[1]} cm") if "slope: 3 cm" in top else top.replace("0.3 cm", f"{number[1]} cm") if "0.3" in top else top.replace("depth: 1 cm", f"depth: {number[1]} cm")
    assert told(piece(followed)) == []


def test_slip_stitches_rise_by_nothing_known() -> None:
    text = piece(f"shoulders: {{neck: 20 cm, slope: 1 cm, {SLOPED}}}", "slipped").replace("  tall: {", '  slipped: {stitch: sl st, gauge: "10 sts, 10 rows / 10 cm"}\n  tall: {')
    assert {each[0] for each in told(text)} == {"rising-too-low"}
