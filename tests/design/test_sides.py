"""Which seams are sewn on both sides of the garment, in the words and in the yarn."""

from dataclasses import replace
from pathlib import Path

import pytest

from gaugewright import pipeline
from gaugewright.design.sides import is_folded, on_both_sides
from gaugewright.instructions.nodes import Paragraph, spans_text
from gaugewright.trade.tails import tail
from gaugewright.yarn.amounts import amounts

SAMPLES = Path(__file__).parents[2] / "samples"


@pytest.mark.parametrize(("name", "twice"), [
    ("breakwater-pullover", [True, True, True, True]),
    ("groyne-vest", [False, False, False, False]),
    ("saltmarsh-jacket", [False, False, False, False, False, False]),
])
def test_a_seam_is_sewn_twice_where_all_its_edges_are_there_twice(name: str, twice: list[bool]) -> None:
    graded = pipeline.grade(pipeline.load(SAMPLES / name / "spec.yaml"))
    assert [on_both_sides(graded.design, seam) for seam in graded.design.seams] == twice
    blocks = pipeline.document(graded, pipeline.Edition()).blocks
    told = [spans_text(block.spans) for block in blocks if isinstance(block, Paragraph)]
    assert sum("Do both sides alike." in text for text in told) == sum(twice)


def test_a_seam_on_both_sides_takes_its_yarn_twice() -> None:
    """The pullover with its side seam taken out: the strands of two such seams are saved."""
    graded = pipeline.grade(pipeline.load(SAMPLES / "breakwater-pullover" / "spec.yaml"))
    pieces = {key: sized["M"] for key, sized in graded.grading.pieces.items()}
    fewer = replace(graded.design, seams=tuple(seam for seam in graded.design.seams if seam.join.edge != "side"))
    whole, less = amounts(graded.design, pieces), amounts(fewer, pieces)
    assert whole and less
    saved = whole["chalk"].counted.seams - less["chalk"].counted.seams
    strand = 2 * tail("seam factor") * pieces["back"].edges["side"].length
    assert saved == pytest.approx(strand / 110_000 * 100)  # 110 m to a ball of 100 g


def folding() -> pipeline.Graded:
    return pipeline.grade(pipeline.load(SAMPLES.parent / "tests" / "cases" / "folded-edges" / "spec.yaml"))


def test_an_edge_sewn_to_itself_is_folded_by_whichever_name() -> None:
    design = folding().design
    assert [str(seam.join) for seam in design.seams if is_folded(design, seam)] == ["hood.top", "slipper.heel", "strip.crown", "bag.base", "back.neck"]
    assert [str(seam.join) for seam in design.seams if on_both_sides(design, seam)] == ["slipper.heel"]
    sleeve = replace(design.seams[2], join=replace(design.seams[2].join, edge="face"), to=(replace(design.seams[2].to[0], edge="face"),))
    assert not is_folded(design, sleeve) and not on_both_sides(design, sleeve)


def test_a_folded_edge_takes_yarn_for_half_its_length() -> None:
    graded = folding()
    pieces = {key: sized["S"] for key, sized in graded.grading.pieces.items()}
    yarn = replace(graded.design.yarns[0], ball_mass=100.0, ball_length=100_000.0)
    fabrics = tuple(replace(fabric, swatch_mass=30.0) for fabric in graded.design.fabrics)
    design = replace(graded.design, yarns=(yarn,), fabrics=fabrics)
    fewer = replace(design, seams=tuple(seam for seam in design.seams if seam.join.piece != "hood"))
    whole, less = amounts(design, pieces), amounts(fewer, pieces)
    assert whole and less
    strand = tail("seam factor") * pieces["hood"].edges["top"].length / 2
    assert whole["oat"].counted.seams - less["oat"].counted.seams == pytest.approx(strand / 100_000 * 100)
