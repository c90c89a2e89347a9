"""Yarn on the page: what the tables say, and what the note under them admits."""

import re
from decimal import Decimal

import pytest

from gaugewright import pipeline
from gaugewright.changes import changes
from gaugewright.errors import ProblemsFound
from gaugewright.instructions.nodes import Document, Figure, Table
from instructions.specs import BARE, HEAD, ONE, THREE, UNWEIGHED
from tiny_specs import designed


def published(text: str) -> Document:
    return pipeline.document(pipeline.grade(designed(text)), pipeline.Edition())


def table(text: str, caption: str) -> Table:
    return next(block for block in published(text).blocks if isinstance(block, Table) and block.caption == caption)


def note(text: str) -> str:
    found = [block.note for block in published(text).blocks if isinstance(block, Table) and block.caption.startswith("Yarn by colour and size")]
    return found[0].replace("\u00a0", " ")


@pytest.mark.parametrize(("buying", "said"), [
    ("", "10 % to spare"), ("buying: {margin: 15 %}\n", "15 % to spare"), ("buying: {margin: 12.5}\n", "12.5 % to spare"), ("buying: {margin: 0 %}\n", "nothing to spare"),
])  # fmt: skip
def test_the_margin_is_told_as_it_is(buying: str, said: str) -> None:
    assert said in note(HEAD + THREE + buying + UNWEIGHED)


def test_swatches_are_told_with_whether_the_balls_hold_them() -> None:
    apart, within = note(HEAD + THREE + UNWEIGHED), note(HEAD + THREE + "buying: {swatches: in the balls}\n" + UNWEIGHED)
    # 27 x 22 stitches of 30 g / 320, half as much for a chain of 27, two tails; 30 x 32 of 34 g / 528 and 15 for its chain.
    assert "take 58 g of Oat and 64 g of Kelp by themselves, which is not in these figures" in apart
    assert "take 58 g of Oat and 64 g of Kelp by themselves, which is in these figures" in within


def test_grams_metres_and_yards_are_one_amount() -> None:
    rows = table(HEAD + THREE + UNWEIGHED, "Yarn by colour and size").rows
    assert [row[:2] for row in rows] == [("Oat", "g"), ("", "m"), ("", "yd"), ("", "g left over"), ("Kelp", "g"), ("", "m"), ("", "yd"), ("", "g left over")]
    grams, metres, yards = (int(row[2]) for row in rows[:3])
    assert metres == pytest.approx(grams * 1.2, abs=1.5) and yards == pytest.approx(metres / 0.9144, abs=1.5)


def test_an_estimate_is_one_everywhere() -> None:
    """In both captions, in the note with its sources, as two ends in every cell, and as open bars in the plot."""
    text = BARE + THREE + UNWEIGHED
    balls, yarn = table(text, "Balls by colour and size: an estimate"), table(text, "Yarn by colour and size: an estimate")
    assert all(re.fullmatch(r"[0-9]+( to [0-9]+)?", cell.replace("\u00a0", " ")) for row in balls.rows for cell in row[1:])
    assert all(re.fullmatch(r"[0-9]+ to [0-9]+", cell.replace("\u00a0", " ")) for row in yarn.rows for cell in row[2:])
    assert not any("left over" in row[1] for row in yarn.rows)
    said = note(text)
    assert said.startswith("An estimate: no swatch of plain was weighed") and "Interweave" in said and "Windchilde" in said
    plot = next(block for block in published(text).blocks if isinstance(block, Figure) and block.name == "yarn")
    assert "estimate" in plot.caption


def test_an_estimate_by_the_category_says_which_metres() -> None:
    bare = BARE.replace(", ball: {mass: 100 g, length: 120 m}", "").replace(", mass: 34 g", "")
    assert "90 to 120 m to 100 g that are published for yarns of weight category 5" in note(bare + ONE + UNWEIGHED)
    captions = [block.caption for block in published(bare + ONE + UNWEIGHED).blocks if isinstance(block, Table)]
    assert "Balls by colour and size: an estimate" not in captions


def test_one_ball_more_where_the_swatch_is_not_sure_enough() -> None:
    """Five stitches of four rows are sure to 25 %: where the rows come near the balls' edge that is one ball more."""
    small = HEAD.replace("stitches: 20, rows: 16, width: 20 cm, height: 20 cm, mass: 30 g", "stitches: 5, rows: 4, width: 5 cm, height: 5 cm, mass: 2.6 g")
    cells = table(small + THREE + "buying: {margin: 1 %}\n" + UNWEIGHED, "Balls by colour and size").rows[0][1:]
    assert [cell.replace("\u00a0", " ") for cell in cells] == ["1 + 1"] * 3
    assert "sure to 25 % either way" in note(small + THREE + "buying: {margin: 1 %}\n" + UNWEIGHED)
    assert "+ 1" not in note(HEAD + THREE + UNWEIGHED)


def test_balls_of_an_estimate_are_not_compared_between_gauges() -> None:
    """Its ends lie further apart than any gauge takes them."""
    graded = pipeline.side(pipeline.grade(designed(BARE + THREE + UNWEIGHED)))
    assert changes(graded, graded).balls == ()
    weighed = pipeline.side(pipeline.grade(designed(HEAD + THREE + UNWEIGHED)))
    assert [one.yarn for one in changes(weighed, weighed).balls] == ["oat", "kelp"]


PRICED = HEAD.replace("length: 120 m}", "length: 120 m}, price: 4.80 EUR").replace("kelp: {colour: \"#3f5d4e\", like: oat}", "kelp: {colour: \"#3f5d4e\", like: oat, price: PRICE}")


def cost(text: str) -> list[Table]:
    return [block for block in published(text).blocks if isinstance(block, Table) and block.caption.startswith("Cost of the balls")]


def test_the_cost_is_printed_where_it_is_asked_for() -> None:
    """Balls at their prices, size by size, and their sum."""
    text = PRICED.replace("PRICE", "5.25 EUR") + THREE + "buying: {cost: printed}\n" + UNWEIGHED
    [told] = cost(text)
    balls = table(text, "Balls by colour and size")
    oat, kelp, both = told.rows
    assert "EUR" in told.caption and (oat[0], kelp[0], both[0]) == ("Oat", "Kelp", "in all")
    for size in range(1, len(balls.header)):
        of_oat, of_kelp = (Decimal(price) * int(balls.rows[row][size]) for row, price in enumerate(("4.80", "5.25")))
        assert (oat[size], kelp[size], both[size]) == (str(of_oat), str(of_kelp), str(of_oat + of_kelp))
    assert cost(text.replace("buying: {cost: printed}\n", "")) == []


def test_two_currencies_are_never_added_up() -> None:
    told = cost(PRICED.replace("PRICE", "620 JPY") + THREE + "buying: {cost: printed}\n" + UNWEIGHED)
    assert [("EUR" in one.caption, "JPY" in one.caption, len(one.rows)) for one in told] == [(True, False, 1), (False, True, 1)]


def test_an_estimated_cost_has_two_ends() -> None:
    [told] = cost(BARE.replace("length: 120 m}", "length: 120 m}, price: 4.80 EUR") + THREE + "buying: {cost: printed}\n" + UNWEIGHED.replace("30 cm", "90 cm"))
    assert told.caption.endswith("an estimate")
    low, high = map(Decimal, told.rows[-1][-1].replace("\u00a0", " ").split(" to "))
    assert low < high and low % Decimal("4.80") == high % Decimal("4.80") == 0


def test_a_cost_needs_every_price() -> None:
    with pytest.raises(ProblemsFound) as found:
        published(PRICED.replace(", price: PRICE", "").replace("like: oat", "weight: 5") + THREE + "buying: {cost: printed}\n" + UNWEIGHED)
    assert [one.name for one in found.value.problems] == ["price-missing"] and "kelp" in found.value.problems[0].message
