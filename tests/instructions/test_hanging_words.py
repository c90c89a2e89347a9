"""A fabric that grows: every length told says its state, flat ones are shorter than hung ones by just the growth; unspun yarn's page."""

import re
from dataclasses import replace

import pytest
from tiny_specs import designed

from gaugewright import pipeline
from gaugewright.design.regauge import regauged
from gaugewright.gauge.model import Gauge
from gaugewright.instructions.hanging import flat_slant
from gaugewright.instructions.view import PieceView
from gaugewright.trade.structures import traits
from instructions.specs import SPECS, document, graded, told

HUNG = [name for name in SPECS if name.startswith("hung")]
NUMBERS = r"(?:[0-9.]+|[–¼½¾⅛⅜⅝⅞])[0-9.,()–¼½¾⅛⅜⅝⅞ ]*"


def view(name: str, key: str) -> PieceView:
    one = graded(name)
    return PieceView(one.design.piece(key), one.grading.plans[key], one.grading.pieces[key], {fabric.key: fabric for fabric in one.design.fabrics})


@pytest.mark.parametrize("name", HUNG)
def test_each_length_from_an_edge_says_that_it_is_flat(name: str) -> None:
    titles = {piece.title for piece in graded(name).design.pieces if any(one.fabric == "body" for one in piece.sections)}
    texts = [one.text for one in told(document(name), drawings=False) if one.chapter in titles]
    lengths = [text for text in texts if re.search(r"\bin (?:flat )?from the (?:hem|cuff|bottom)", text)]
    assert lengths
    assert [text for text in lengths if re.search(r"\bin from the", text)] == []


@pytest.mark.parametrize("name", ["hung", "hung caps", "hung raglans"])
def test_flat_is_hung_less_the_growth_of_each_row(name: str) -> None:
    for piece in graded(name).design.pieces:
        seen = view(name, piece.key)
        rows = seen.plans.map(lambda plan: plan.rows)
        fabrics = {section.fabric for section in piece.sections}
        if fabrics != {"body"}:
            continue
        growth = seen.fabrics["body"].growth
        assert growth > 0.05
        flat = seen.height(rows)
        assert flat.state == "flat"
        for size, mm in flat.values.items():
            assert mm * (1 + growth) == pytest.approx(seen.graded[size].outline.heights[rows[size]])


def test_a_piece_in_two_fabrics_shrinks_by_the_rows_of_one() -> None:
    text = SPECS["picked up"].replace("plain: {stitch: hdc,", "plain: {stitch: hdc, growth: 10 %,", 1)
    assert text != SPECS["picked up"]
    one = pipeline.grade(designed(text))
    fabrics = {fabric.key: fabric for fabric in one.design.fabrics}
    checked = 0
    for piece in one.design.pieces:
        seen = PieceView(piece, one.grading.plans[piece.key], one.grading.pieces[piece.key], fabrics)
        for size, found in one.grading.pieces[piece.key].items():
            rows = found.main.rows
            flat = seen.height(seen.plans.map(lambda plan: plan.rows))
            if not flat.state or len(found.strips) > 1:
                continue
            checked += 1
            assert flat.values[size] == pytest.approx(sum(row.height * fabrics[row.fabric].flat.row_height for row in rows), rel=1e-6)
    assert checked


def test_a_slanted_edge_keeps_its_width() -> None:
    """A 3-4-5 edge of 4 up and 3 across: its rows a tenth longer hung, it was 4 / 1.1 up flat."""
    one = graded("hung raglans")
    fabric = one.design.fabric("body")
    edge = next(edge for piece in one.grading.pieces["back"] for edge in piece.edges.values() if edge.rows)
    rise = fabric.gauge.height_of(edge.rows)
    slanted = replace(edge, length=rise * 5 / 4)
    flat = fabric.flat.height_of(edge.rows)
    assert flat_slant(slanted, fabric) == pytest.approx(((rise * 3 / 4) ** 2 + flat**2) ** 0.5)
    plain = one.design.fabric("band")
    assert flat_slant(slanted, plain) == slanted.length


def test_the_finished_table_says_hung_of_lengths_alone() -> None:
    texts = [one.text for one in told(document("hung"))]
    assert {"finished: length, hung", "finished: armhole depth, hung", "finished: bust"} <= set(texts)
    assert not any(text == "finished: bust, hung" for text in texts)
    assert any("hang-measured" in text for text in texts)


def test_the_page_of_unspun_yarn_carries_every_caution() -> None:
    """The vest in roving: its strong sewing yarn is among the materials, the seams are sewn with it, and lint keeps off mouths and flames."""
    pages = [(one.chapter, one.text) for one in told(document("hung"))]
    materials = [text for chapter, text in pages if chapter == "Materials"]
    for trait in traits("roving", ["merino", "cotton"]):
        assert trait.text in materials, trait.key
    assert any(re.match(r"For sewing: 4 m of another yarn, strong", text) for text in materials)
    assert any("Sew with the strong yarn listed under Materials" in text for chapter, text in pages if chapter == "Making up")
    assert any("keep it away from babies' mouths and from open flame" in text for chapter, text in pages if chapter == "Cautions")
    assert any("Unspun yarn is washed cold" in text for chapter, text in pages if chapter == "Care")


def test_a_plain_yarn_has_none_of_it() -> None:
    plain = [one.text for one in told(document("bodies in three"))]
    assert not any(word in text for text in plain for word in ("strong, smooth", "hang-measured", " hung", "sheds"))


def test_the_range_for_another_yarn_lies_within_the_share_it_states() -> None:
    [text] = [one.text for one in told(document("hung")) if one.text.startswith("If you take another yarn")]
    low, high, share = (int(number) for number in re.findall(r"(\d+) to (\d+) m .* within (\d+) %", text)[0])
    assert 34 * (1 - share / 100) <= low < high <= 34 * (1 + share / 100) and high - low >= 34 * 2 * share / 100 - 2


def test_regauged_the_growth_stays() -> None:
    design = graded("hung").design
    other = regauged(design, Gauge(12, 200.0, 11, 200.0)).fabric("body")
    assert other.flat == Gauge(12, 200.0, 11, 200.0) and other.growth == pytest.approx(design.fabric("body").growth, abs=1e-3)
    assert pipeline.grade(regauged(design, design.fabric("body").flat)).grading.plans == graded("hung").grading.plans
