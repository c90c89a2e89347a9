"""What rows are counted as: stitches' worth, rows, stitches picked up."""

import re
from collections.abc import Mapping

import pytest

from gaugewright import pipeline
from gaugewright.hours.work import Work, work_of
from instructions.specs import ROOT
from tiny_specs import HEAD, ONE_SIZE, designed, graded

JACKET = ROOT / "samples/saltmarsh-jacket"


def worked(text: str, key: str = "piece", measured: tuple[str, ...] = ()) -> Work:
    return work_of(designed(text), graded(text).pieces[key].values[0], measured)


def test_a_plain_rectangle_counts_its_chain_and_every_stitch() -> None:
    """20 hdc on 22 chains, 10 rows: a chain is one movement of the hook, a hdc three."""
    found = worked(ONE_SIZE + "pieces: {piece: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 10 cm}]}}\n")
    assert found.rows == {"plain": 10} and found.picked_up == 0
    assert found.stitches == pytest.approx({"plain": 10 * 20 + 22 / 3})


def test_a_decrease_takes_less_than_two_stitches_and_an_increase_as_much() -> None:
    """hdc2tog is five movements, so a row of two decreases at its edges is 2 x 1/3 short of the row before it."""
    text = ONE_SIZE + "pieces: {piece: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {rows: 1}, taper: {rows: 1, target: 18 cm}]}}\n"
    assert worked(text).stitches["plain"] == pytest.approx(22 / 3 + 20 + 16 + 2 * 5 / 3)
    wider = text.replace("target: 18 cm", "target: 22 cm")
    assert worked(wider).stitches["plain"] == pytest.approx(22 / 3 + 20 + 22)


def test_what_is_picked_up_is_counted_apart() -> None:
    text = ONE_SIZE + """\
pieces:
  piece: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 10 cm}]}
  band: {fabric: plain, colours: oat, start: {pick_up: [piece.top]}, sections: [even: {rows: 3}]}
"""
    found = worked(text, "band")
    assert found.picked_up == 20 and found.rows == {"plain": 3}
    assert found.stitches == pytest.approx({"plain": 40.0})


def test_short_rows_are_rows_and_their_waiting_stitches_take_no_time() -> None:
    """A wedge over 65 stitches for a body of 130 cm: the front is the back and the short rows, row by row what is worked of them."""
    text = (ROOT / "tests/cases/front-wedge/spec.yaml").read_text(encoding="utf-8")
    design, pieces = designed(text), {key: sized["2X"] for key, sized in graded(text).pieces.items()}
    back, front = (work_of(design, pieces[key], ()) for key in ("back", "front"))
    short = [row for group in pieces["front"].main.short for row in group.rows]
    assert short and front.rows["body"] - back.rows["body"] == len(short)
    stitches = sum(run.times for row in short for run in row.runs if run.operation.kind == "stitch")
    turns = sum(run.times for row in pieces["front"].main.all_rows() for run in row.runs if run.operation.kind == "anchor")
    waiting = sum(run.times for row in pieces["front"].main.rows for run in row.runs if run.operation.kind == "wait")
    assert waiting or any(run.operation.kind == "wait" for row in short for run in row.runs)
    assert front.stitches["body"] - back.stitches["body"] == pytest.approx(stitches - waiting + turns / 3)


def test_in_a_stitch_pattern_a_timed_fabric_counts_as_its_timed_rows_do() -> None:
    """Arches make more of their rows than they are wide: timed rows are told by their width, published paces by movements."""
    text = HEAD.replace('  plain: {stitch: hdc', '  plain: {pattern: arches') + "pieces: {piece: {fabric: plain, colours: oat, start: {chain: 21 cm}, sections: [even: {rows: 9}]}}\n"
    rows = graded(text).pieces["piece"].values[0].main.rows
    patterned = sum(row.across for row in rows if row.placed is not None)
    assert patterned > 0
    plain = sum(row.makes for row in rows if row.placed is None)
    measured, counted = worked(text, measured=("plain",)).stitches["plain"], worked(text).stitches["plain"]
    chains = measured - patterned - plain
    assert 0 < chains < 15
    movements = sum(_movements(run.operation.kind, run.operation.stitch) * run.times for row in rows if row.placed is not None for run in row.runs)
    assert counted - chains - plain == pytest.approx(movements / 2)


def _movements(kind: str, stitch: str) -> int:
    """Told apart from the code: arches are of chains and sc, and skip what is below them."""
    if kind in ("skip", "turning chain"):
        return 0
    return {"ch": 1, "sc": 2}[stitch]


@pytest.fixture(scope="module")
def jacket() -> tuple[pipeline.Graded, str]:
    text = (JACKET / "saltmarsh-jacket.txt").read_text(encoding="utf-8").replace("\u00a0", " ")
    return pipeline.grade(pipeline.load(JACKET / "spec.yaml")), text


def test_the_jackets_stitches_recounted_from_its_printed_pages(jacket: tuple[pipeline.Graded, str]) -> None:
    """The back and the right front, in every size, from the words and the table that a maker follows."""
    graded_jacket, text = jacket
    for index, size in enumerate(graded_jacket.bodies.labels):
        for key, title in (("back", "Back"), ("right_front", "Right Front")):
            found = work_of(graded_jacket.design, graded_jacket.grading.pieces[key][size], ("body",))
            expected, rows = _recounted(_chapter(text, title), size, index)
            assert found.rows == {"body": rows}, (key, size)
            assert found.stitches == pytest.approx({"body": expected}), (key, size)


def _chapter(text: str, title: str) -> str:
    return re.search(rf"^{title}\n-+\n(.*?)\n[A-Z][A-Za-z ]+\n---", text, re.S | re.M)[1]  # type: ignore[index]


def _recounted(chapter: str, size: str, index: int) -> tuple[float, int]:
    chains, stitches = _listed(chapter, r"Foundation: With \w+, ch")[index], _listed(chapter, r"across, turn\.\s+—")[index]
    rows = [_listed(chapter[found.start() :], "To the end of Row")[index] for found in re.finditer("To the end of Row", chapter)][-1]
    shaped = re.search(rf"^{size} \|[^|]*\| ([0-9, ]+) \| ([0-9]+) \| ([0-9]+)$", chapter, re.M)
    falls = {int(row) for row in shaped[1].split(", ")} if shaped else set()
    total, count = chains / 3, stitches
    for row in range(1, rows + 1):
        total += count - 2 + 5 / 3 if row in falls else count
        count -= row in falls
    if shaped:
        assert count == int(shaped[3]), size
    return total, rows


def _listed(text: str, begins: str) -> list[int]:
    """The list of numbers after some words: the first size's and the others in brackets; one alone is all sizes'."""
    found = re.search(rf"(?:{begins})\s+([0-9]+)(?: \(([0-9, ]+)\))?", text)
    assert found, begins
    return [int(found[1]), *(int(part) for part in found[2].split(", "))] if found[2] else [int(found[1])] * 9


def test_every_row_of_every_sample_is_counted_once() -> None:
    for spec in sorted((ROOT / "samples").glob("*/spec.yaml")):
        one = pipeline.grade(pipeline.load(spec))
        for sized in one.grading.pieces.values():
            piece = sized.values[0]
            rows: Mapping[str, int] = work_of(one.design, piece, ()).rows
            assert sum(rows.values()) == sum(len(strip.rows) + sum(len(short.rows) for short in strip.short) for strip in piece.strips)
