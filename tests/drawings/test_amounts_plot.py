"""Yarn as bars: as high as its grams, told apart without colour, and only where a drawing helps."""

from itertools import combinations

import pytest
from drawings.inspection import corners

from gaugewright.drawings.amounts_plot import HEIGHT, Bar, ColourBars, draw_amounts, grid_step
from gaugewright.drawings.colour_bands import assign_hatches
from gaugewright.drawings.primitives import Drawing, Label, Polygon

SIZES = ("S", "M", "L")


def colours(*bars: tuple[Bar | None, ...]) -> list[ColourBars]:
    return [ColourBars(name, paint, each) for name, paint, each in zip(("Oat", "Kelp", "Slate"), ("#d9c9a8", "#3f5d4e", "#5b6b7a"), bars, strict=False)]


def drawn(*bars: tuple[Bar | None, ...], sizes: tuple[str, ...] = SIZES) -> Drawing | None:
    return draw_amounts(sizes, colours(*bars), assign_hatches(["Oat", "Kelp", "Slate"]))


def of(*grams: float) -> tuple[Bar | None, ...]:
    return tuple(Bar(one, one, str(round(one / 50))) for one in grams)


def heights(drawing: Drawing, hatch: str) -> list[float]:
    """Painted bars from left to right; the key's swatch comes last, below."""
    found = [item for item in drawing.items if isinstance(item, Polygon) and item.hatch == hatch]
    return [max(y for _, y in one.points) - min(y for _, y in one.points) for one in found][:-1]


def test_bars_are_as_high_as_their_grams() -> None:
    drawing = drawn(of(120, 150, 180), of(300, 310, 400))
    assert drawing is not None
    assert heights(drawing, "diagonal") == pytest.approx([120 * HEIGHT / 400, 150 * HEIGHT / 400, 180 * HEIGHT / 400])
    assert heights(drawing, "dots") == pytest.approx([300 * HEIGHT / 400, 310 * HEIGHT / 400, HEIGHT])
    labels = [item.text for item in drawing.items if isinstance(item, Label)]
    assert {"0 g", "100 g", "400 g", "S", "M", "L", "Oat", "Kelp", "2", "8"} <= set(labels)
    assert "Kelp: S 300, M 310, L 400." in drawing.description


def test_an_estimate_is_open_above_its_lower_end() -> None:
    ranges = tuple(Bar(low, high, f"{low // 50}–{high // 50}") for low, high in ((100, 250), (150, 300), (200, 500)))
    drawing = drawn(ranges, ranges)
    assert drawing is not None
    assert heights(drawing, "diagonal") == pytest.approx([20 * HEIGHT / 100, 30 * HEIGHT / 100, 40 * HEIGHT / 100])
    unfilled = [item for item in drawing.items if isinstance(item, Polygon) and item.fill == "#ffffff" and item.width == 0.25]
    assert len(unfilled) == 6
    assert "S 100 to 250" in drawing.description and "estimate" in drawing.title


def test_no_drawing_where_a_table_says_it_as_well() -> None:
    assert drawn(of(120), of(130), sizes=("One size",)) is None
    assert drawn(of(120, 150, 180)) is None
    many = draw_amounts(tuple(map(str, range(12))), [ColourBars(f"c{n}", "#808080", of(*range(100, 112))) for n in range(6)], assign_hatches([f"c{n}" for n in range(6)]))
    assert many is None


def test_a_size_without_a_colour_has_no_bar_of_it() -> None:
    drawing = drawn(of(120, 150, 180), (None, *of(40, 50)))
    assert drawing is not None
    assert len(heights(drawing, "dots")) == 2 and "Kelp: M 40, L 50." in drawing.description


def test_no_text_lies_over_another_and_all_lies_on_the_canvas() -> None:
    nine = tuple(f"{n}X" for n in range(1, 10))
    for drawing in (drawn(of(*range(450, 720, 30)), of(*range(480, 750, 30)), of(*range(280, 550, 30)), sizes=nine), drawn(of(120, 150, 180), of(300, 310, 400))):
        assert drawing is not None
        boxes = [corners(item) for item in drawing.items if isinstance(item, Label)]
        spans = [(min(x for x, _ in box), min(y for _, y in box), max(x for x, _ in box), max(y for _, y in box)) for box in boxes]
        assert all(0 <= left and 0 <= top and right <= drawing.width and bottom <= drawing.height for left, top, right, bottom in spans)
        for one, other in combinations(spans, 2):
            assert one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


@pytest.mark.parametrize("most", [0.7, 3.0, 59.0, 60.0, 61.0, 999.0, 12_345.0])
def test_a_grid_has_three_to_seven_lines(most: float) -> None:
    assert 2 <= most / grid_step(most) <= 6
