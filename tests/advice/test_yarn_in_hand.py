"""Yarn in hand: what it makes, what lacks, who lends, and which bands would do, against every place of their lines."""

from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from tiny_specs import designed

from cli.running import ROOT
from gaugewright import pipeline
from gaugewright.advice.band_search import bands_that_fit
from gaugewright.advice.yarn_in_hand import found_amounts, grams_held, in_hand
from gaugewright.design.formula import Formula
from gaugewright.errors import ProblemsFound
from gaugewright.formulas import parse_formula
from gaugewright.spec.yarn_text import parse_have

BANDED = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
sizes: {own: {S: {bust: 60 cm}, L: {bust: 90 cm}}}
yarns:
  oat: {colour: "#d9c9a8", weight: 5, ball: {mass: 50 g, length: 55 m}}
  kelp: {colour: "#3f5d4e", like: oat}
  slate: {colour: "#5b6b7a", weight: 2, ball: {mass: 50 g, length: 150 m}}
fabrics:
  plain: {stitch: hdc, swatch: {stitches: 13, rows: 11, width: 10 cm, height: 10 cm, mass: 9 g}}
pieces:
  back:
    fabric: plain
    start: {chain: body.bust / 2}
    sections: [even: {length: rest}]
    total: 18 cm
    colours: {bands: {to: total, heights: [30 %, 40 %, rest]}, order: [oat, kelp, slate]}
  cuff:
    make: 2
    fabric: plain
    start: {chain: 18 cm}
    sections: [even: {length: 3 cm, colour: slate}, taper: {length: rest, target: 26 cm}]
    total: 12 cm
    colours: {bands: {to: total, heights: [60 %, rest]}, order: [kelp, oat]}
"""


@cache
def pattern() -> pipeline.Graded:
    return pipeline.grade(designed(BANDED))


def held(*texts: str) -> dict[str, float]:
    return grams_held(pattern().design, parse_have(texts))


def test_each_colour_is_enough_just_enough_or_short() -> None:
    need = found_amounts(pattern(), "L")["oat"]
    for grams, verdict in ((need.total + 1, "enough"), (need.total - 1, "barely"), (need.counted.total - 1, "short")):
        answer = in_hand(pattern(), {"oat": grams})[1]
        assert answer.size == "L" and answer.verdict == verdict
        assert answer.stocks[0].short == pytest.approx(max(0.0, need.total - grams))
    assert [amount.colour for amount in in_hand(pattern(), {"oat": 1.0})[1].to_buy] == ["kelp", "slate"]


def test_a_smaller_size_takes_less() -> None:
    grams = (found_amounts(pattern(), "S")["oat"].total + found_amounts(pattern(), "L")["oat"].counted.total) / 2
    assert [one.verdict for one in in_hand(pattern(), {"oat": grams})] == ["enough", "short"]


def test_only_a_yarn_as_thick_lends() -> None:
    """Kelp is oat's like; slate is three times as fine."""
    answer = in_hand(pattern(), held("oat=0", "kelp=20", "slate=20"))[0]
    assert [(short.yarn.key, lender.yarn.key) for short, lender in answer.lenders] == [("oat", "kelp")]


def test_balls_grams_and_metres_are_one_amount() -> None:
    assert held("oat=2", "kelp=100 g", "slate=300 m") == pytest.approx({"oat": 100.0, "kelp": 100.0, "slate": 100.0})


def lines_of(graded: pipeline.Graded, key: str, size: str) -> tuple[int, ...]:
    """The last row of each band but the top one; the cuff's first rows have a colour of their own."""
    lines = tuple(band.last for band in graded.grading.plans[key][size].bands)[:-1]
    return lines[-1:] if key == "cuff" else lines


@cache
def every_place(size: str) -> tuple[tuple[int, dict[str, float]], ...]:
    """Each place of all lines, graded: rows moved, and what it takes of each colour with the margin."""
    graded = pattern()
    pieces = {key: graded.grading.pieces[key][size] for key in ("back", "cuff")}
    heights = {key: one.outline.heights for key, one in pieces.items()}
    now = {key: lines_of(graded, key, size) for key in pieces}
    rows = {key: len(each) - 1 for key, each in heights.items()}
    found = []
    for first in range(1, rows["back"] - 1):
        for second in range(first + 1, rows["back"]):
            for third in range(1, rows["cuff"]):
                changed = with_lines({"back": (first, second), "cuff": (third,)}, heights, {"back": 180.0, "cuff": 120.0})
                if changed is not None and third > 3:  # up to there the cuff's kelp would be lost
                    # Where a line comes to lie is the grading's: a share of a height is rounded to a row.
                    moved = sum(abs(a - b) for key in pieces for a, b in zip(lines_of(changed, key, size), now[key], strict=True))
                    found.append((moved, {key: one.total for key, one in found_amounts(changed, size).items()}))
    return tuple(found)


def with_lines(lines: dict[str, tuple[int, ...]], heights: dict[str, tuple[float, ...]], wholes: dict[str, float]) -> pipeline.Graded | None:
    design = pattern().design
    pieces = []
    for piece in design.pieces:
        bands = piece.colours.bands
        assert bands is not None
        shares = [f"{(heights[piece.key][after] - heights[piece.key][before]) / wholes[piece.key] * 100:.3f} %" for before, after in pairwise((0, *lines[piece.key]))]
        formulas = tuple(Formula(parse_formula(text), text, bands.origin) for text in shares)
        pieces.append(replace(piece, colours=replace(piece.colours, bands=replace(bands, heights=(*formulas, None)))))
    try:
        return pipeline.grade(replace(design, pieces=tuple(pieces)))
    except ProblemsFound:
        return None


@settings(max_examples=25, deadline=None)
@given(st.integers(10, 120), st.integers(10, 120), st.integers(10, 120))
@example(77, 17, 15)  # without the cuff's kelp its two ends would be saved
def test_the_bands_found_are_the_nearest_of_all_that_fit(oat: int, kelp: int, slate: int) -> None:
    """Every place of every line, graded; rows hidden by a colour of their own leave the cuff's line free below them."""
    have = {"oat": float(oat), "kelp": float(kelp), "slate": float(slate)}
    told = bands_that_fit(pattern(), "S", have)
    assert told is not None and told.all_seen
    able = [moved for moved, need in every_place("S") if all(need.get(colour, 0.0) <= grams + 1e-6 for colour, grams in have.items())]
    if told.changes and told.with_margin:
        moved = sum(abs(a - b) for change in told.changes for a, b in pairwise_lines(change.old, change.new))
        assert able and moved == min(able)
    elif in_hand(pattern(), have)[0].verdict in ("short", "barely"):
        assert not able


def pairwise_lines(old: tuple[int, ...], new: tuple[int, ...]) -> list[tuple[int, int]]:
    """The lines between bands, before and after."""
    return [(sum(old[:place]), sum(new[:place])) for place in range(1, len(old))]


def test_bands_of_the_jacket_meet_still() -> None:
    """Written into the spec as told, the bands are short of nothing, and no check finds anything new."""
    path = ROOT / "samples" / "saltmarsh-jacket" / "spec.yaml"
    graded = pipeline.grade(pipeline.load(path))
    have = {"oat": 400.0}
    assert in_hand(graded, have)[2].verdict == "short"
    told = bands_that_fit(graded, "M", have)
    assert told is not None and told.with_margin
    text = path.read_text(encoding="utf-8")
    for change in told.changes:
        old = "[50 %, rest]" if change.titles == ("Sleeve",) else "[35 %, 30 %, rest]"
        assert old in text
        text = text.replace(old, f"[{', '.join(change.heights)}]")
    changed = pipeline.grade(designed(text))
    assert found_amounts(changed, "M")["oat"].total <= 400
    assert pipeline.errors_of(pipeline.check(changed)) == ()


def test_without_bands_nothing_can_be_moved() -> None:
    plain = pipeline.grade(designed(BANDED.replace("{bands: {to: total, heights: [30 %, 40 %, rest]}, order: [oat, kelp, slate]}", "oat").replace("{bands: {to: total, heights: [60 %, rest]}, order: [kelp, oat]}", "kelp")))
    assert bands_that_fit(plain, "S", {"oat": 1.0}) is None
