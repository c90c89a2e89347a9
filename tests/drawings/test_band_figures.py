"""A band laid out straight: its ends upright, gaps over inner corners, its buttonholes where they are worked."""

import pytest
from tiny_specs import THREE_SIZES, designed, graded

from gaugewright.drawings.model import PieceFigure
from gaugewright.drawings.piece_figure import piece_figure

SPEC = THREE_SIZES + """\
pieces:
  back: {fabric: plain, colours: oat, start: {chain: 40 cm}, sections: [even: {length: 40 cm}, shoulders: {neck: 20 cm}], edges: {both: [side]}}
  front:
    fabric: plain
    colours: oat
    start: {chain: 20 cm}
    sections: [even: {length: 40 cm}, neck_edge: {shape: v, width: 10 cm, depth: 10 cm, at: front}]
    edges: {starting: [side], far: [front]}
  left: {like: front, mirrored: true}
  band:
    fabric: plain
    colours: kelp
    start: {pick_up: [front.front, front.neck, back.neck, left.neck, left.front], corners: back neck}
    sections: [even: {rows: 3}]
    buttonholes: {count: 3, size: 2 cm, edge: left.front, first: 3 cm, last: 3 cm}
seams:
  - {join: back.shoulder, to: front.shoulder}
  - {join: back.shoulder, to: left.shoulder}
"""


@pytest.fixture(scope="module")
def band() -> PieceFigure:
    grading, piece = graded(SPEC), next(piece for piece in designed(SPEC).pieces if piece.key == "band")
    return piece_figure(piece, grading.plans["band"], grading.pieces["band"], {"kelp": ("Kelp", "#3f5d4e")}, "M")


def test_it_gapes_where_it_loses_stitches_and_nowhere_else(band: PieceFigure) -> None:
    made = graded(SPEC).pieces["band"]["M"].main
    top = sorted(x for x, y in band.outline if y == 30)
    gaps = [right - left for left, right in zip(top[1::2], top[2::2], strict=False)]
    assert len(gaps) == 2 and sum(gaps) == pytest.approx(10.0 * (made.rows[0].makes - made.last_count))
    assert band.note
    lengths = {measure.name: measure.values[1] for measure in band.measures}
    assert lengths["Length where it is picked up"] - lengths["Length along the outer edge"] == pytest.approx(sum(gaps))


def test_buttonholes_are_drawn_where_they_are_worked(band: PieceFigure) -> None:
    """Counted from the band's end at the left front, 30 cm long: middles 3 cm from both of its ends."""
    width = max(x for x, _ in band.outline)
    assert sorted(width - (start[0] + end[0]) / 2 for start, end in band.holes) == pytest.approx([30, 150, 270])
    assert all(end[0] - start[0] == pytest.approx(20) and start[1] == pytest.approx(15) for start, end in band.holes)
    assert next(measure.values[1] for measure in band.measures if measure.name == "From buttonhole to buttonhole") == pytest.approx(120)
