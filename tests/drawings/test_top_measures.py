"""What is measured at shaped tops, against figures worked out by hand (a stitch and a row are 1 cm)."""

import pytest
from tiny_specs import ONE_SIZE, graded

from gaugewright.drawings.cover import folded
from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.piece_figure import piece_figure
from gaugewright.drawings.strips import clip_strip
from gaugewright.drawings.top_measures import last_armhole_row

SPEC = ONE_SIZE + """\
levels: {shoulder: 40 cm, underarm: 20 cm}
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: 40 cm}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: 30 cm, block: 3 cm}
      - neck: {shape: square, width: 12 cm, depth: 6 cm, slope: 2 cm}
    edges: {both: [side, underarm, armhole]}
  half:
    fabric: plain
    colours: oat
    start: {chain: 20 cm}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: 15 cm, block: 3 cm, at: armhole}
      - neck_edge: {shape: round, width: 6 cm, depth: 8 cm, slope: 2 cm, at: front}
    edges: {far: [side, underarm, armhole], starting: [front]}
  slant:
    fabric: plain
    colours: oat
    start: {chain: 30 cm}
    sections: [even: {to: shoulder}, shoulders: {neck: 12 cm, slope: 2 cm}]
  sleeve:
    fabric: plain
    colours: oat
    start: {chain: 28 cm}
    sections: [even: {rows: 4}, cap: {fit: [back.armhole, back.armhole], block: 3 cm}]
"""


@pytest.fixture(scope="module")
def figures() -> dict[str, PieceFigure]:
    grading = graded(SPEC)
    from tiny_specs import designed

    return {
        piece.key: piece_figure(piece, grading.plans[piece.key], grading.pieces[piece.key], {"oat": ("Oat", "#d9c9a8")}, "M")
        for piece in designed(SPEC).pieces
    }


def values(figure: PieceFigure) -> dict[str, float]:
    return {measure.name: round(measure.values[0]) for measure in figure.measures}


def test_a_divided_top(figures: dict[str, PieceFigure]) -> None:
    assert values(figures["back"]) == {
        "Width at the bottom": 400, "Width above the armholes": 300, "Shoulder": 90, "Neck": 120, "Armhole depth": 180,
        "Neck depth": 60, "Shoulder slope": 20, "Height to the underarm": 200, "Whole height": 400,
    }


def test_a_half_front_with_its_neck_at_the_edge_where_rows_begin(figures: dict[str, PieceFigure]) -> None:
    assert values(figures["half"]) == {
        "Width at the bottom": 200, "Width above the armhole": 150, "Shoulder": 90, "Neck": 60, "Armhole depth": 180,
        "Neck depth": 80, "Shoulder slope": 20, "Height to the underarm": 200, "Whole height": 400,
    }


def test_sloped_shoulders(figures: dict[str, PieceFigure]) -> None:
    assert values(figures["slant"]) == {"Width at the bottom": 300, "Shoulder": 90, "Neck": 120, "Shoulder slope": 20, "Whole height": 400}


def test_a_cap(figures: dict[str, PieceFigure]) -> None:
    found = values(figures["sleeve"])
    sleeve = graded(SPEC).pieces["sleeve"]["M"]
    assert found["Cap height"] == 10 * (len(sleeve.main.rows) - 4)
    assert found["Width at the top of the cap"] == 10 * sleeve.main.last_count


@pytest.mark.parametrize("key", ["back", "half", "slant", "sleeve"])
def test_points_of_measures_are_as_far_apart_as_they_say(figures: dict[str, PieceFigure], key: str) -> None:
    for measure in figures[key].measures:
        index = 0 if measure.along == "across" else 1
        assert abs(measure.end[index] - measure.start[index]) == pytest.approx(measure.values[0]), measure.name


def test_a_colour_band_beside_a_neck_is_in_two_parts(figures: dict[str, PieceFigure]) -> None:
    assert len(clip_strip(figures["back"].outline, 350, 370)) == 2
    assert len(clip_strip(figures["back"].outline, 300, 330)) == 1


def test_a_folded_sleeve_is_half_as_wide(figures: dict[str, PieceFigure]) -> None:
    half = folded(figures["sleeve"]).outline
    assert (min(x for x, _ in half), max(x for x, _ in half)) == (pytest.approx(140), pytest.approx(280))


def test_the_width_above_an_armhole_that_ends_beside_the_neck_is_taken_where_it_ends() -> None:
    """The neck begins 2 rows above the underarm: the armhole's last step falls on rows that shape the neck too."""
    from tiny_specs import designed

    low = SPEC.replace("depth: 8 cm, slope: 2 cm, at: front", "depth: 18 cm, slope: 2 cm, at: front")
    grading, piece = graded(low), next(piece for piece in designed(low).pieces if piece.key == "half")
    plan, made = grading.plans["half"]["M"], grading.pieces["half"]["M"]
    figure = piece_figure(piece, grading.plans["half"], grading.pieces["half"], {"oat": ("Oat", "#d9c9a8")}, "M")
    width = next(measure for measure in figure.measures if measure.name == "Width above the armhole")
    counts, row = list(made.main.counts()), last_armhole_row(plan)
    assert row > plan.rows - plan.sections[-1].rows  # above the neck's foot
    assert any(name.startswith("armhole") for name in (part.name for part in plan.sections[-1].parts("far")))  # type: ignore[union-attr]
    assert width.values[0] == pytest.approx(10.0 * counts[row - 1])
    assert width.start[1] == width.end[1] == made.outline.heights[row]
