"""Schematics: proportion, dimension lines, texts that keep clear of everything, the key."""

import math
from itertools import combinations
from pathlib import Path

import pytest
from drawings.figures import FIGURES, back, band, front, graded, pocket, sleeve, striped_gore
from drawings.inspection import (
    arrowheads,
    cross,
    dimension_lines,
    drawn_lines,
    ground_under,
    labels,
    labels_overlap,
    listing,
    piece_outline,
    touches_label,
)
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugewright.drawings.colour import contrast
from gaugewright.drawings.model import ColourBand, Measure, PieceFigure, Schematic
from gaugewright.drawings.primitives import Drawing, Label, Polygon, Polyline
from gaugewright.drawings.schematic import draw_schematic

each_figure = pytest.mark.parametrize("figure", FIGURES, ids=lambda f: f"{f.name}-{len(f.sizes)}")


def size_of(points: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    xs, ys = zip(*points, strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


def assert_readable(drawing: Drawing) -> None:
    """Every rule for text: clear of texts and lines, on paper or a light plain plate, large enough."""
    texts = labels(drawing)
    lines = list(drawn_lines(drawing))
    for one, other in combinations(texts, 2):
        assert not labels_overlap(one, other), (one.text, other.text)
    for label in texts:
        assert label.size >= 2.2
        assert not [line for line in lines if touches_label(label, line)], label.text
        for ground in ground_under(drawing, label):
            assert ground is None or (ground.hatch == "none" and contrast("#1a1a1a", ground.fill) >= 4.5)


def assert_on_canvas(drawing: Drawing) -> None:
    points = [p for i in drawing.items if not isinstance(i, Label) for p in i.points]
    assert all(0 <= x <= drawing.width and 0 <= y <= drawing.height for x, y in points)
    assert all(0 <= label.x <= drawing.width and 0 <= label.y <= drawing.height for label in labels(drawing))


def assert_in_proportion(figure: PieceFigure, drawing: Drawing) -> None:
    width, height = size_of(figure.outline)
    drawn_width, drawn_height = size_of(piece_outline(drawing).points)
    assert drawn_width / drawn_height == pytest.approx(width / height, rel=0.005)


@each_figure
@pytest.mark.parametrize("units", ["cm", "in"])
def test_texts_keep_clear_of_all_else(figure: PieceFigure, units: str) -> None:
    drawing = draw_schematic(figure, units).drawing
    assert_readable(drawing)
    assert_on_canvas(drawing)


@each_figure
def test_the_drawing_fits_its_room_in_true_proportion(figure: PieceFigure) -> None:
    drawing = draw_schematic(figure, "cm").drawing
    assert drawing.width <= 160 + 1e-6
    assert drawing.height <= 110 + 1e-6
    assert max(drawing.width / 160, drawing.height / 110) > 0.9
    assert_in_proportion(figure, drawing)


@each_figure
def test_each_measure_has_one_dimension_line_and_none_cross(figure: PieceFigure) -> None:
    drawing = draw_schematic(figure, "cm").drawing
    lines = dimension_lines(drawing)
    assert len(lines) == len(figure.measures)
    assert not [pair for pair in combinations(lines, 2) if cross(*pair)]


def test_arrowheads_are_filled_and_open_thirty_degrees() -> None:
    for head in arrowheads(draw_schematic(front(), "cm").drawing):
        tip, one, other = head.points
        turn = math.atan2(one[1] - tip[1], one[0] - tip[0]) - math.atan2(other[1] - tip[1], other[0] - tip[0])
        assert abs(math.degrees((turn + math.pi) % (2 * math.pi) - math.pi)) == pytest.approx(30)


def test_the_outline_is_twice_as_thick_as_dimension_lines() -> None:
    drawing = draw_schematic(back(), "cm").drawing
    thin = {item.width for item in drawing.items if isinstance(item, Polyline) and item.points[0] != item.points[-1]}
    assert piece_outline(drawing).width == pytest.approx(2 * min(thin))


def test_shorter_dimensions_lie_nearer_the_piece() -> None:
    figure = PieceFigure(
        "p", "P", ("S", "M"), "S", ((0, 0), (300, 0), (300, 400), (0, 400)),
        measures=(
            Measure("whole", "across", (0, 0), (300, 0), (300, 340)),
            Measure("most", "across", (30, 0), (270, 0), (240, 270)),
            Measure("some", "across", (60, 0), (200, 0), (140, 150)),
        ),
    )  # fmt: skip
    drawing = draw_schematic(figure, "cm").drawing
    hem = max(y for _, y in piece_outline(drawing).points)
    lines = sorted(dimension_lines(drawing), key=lambda line: abs(line[1][0] - line[0][0]))
    assert [line[0][1] - hem for line in lines] == pytest.approx([10, 17, 24])


def test_short_dimensions_side_by_side_share_a_level() -> None:
    drawing = draw_schematic(back(), "cm").drawing
    top = min(y for _, y in piece_outline(drawing).points)
    heights = [line[0][1] for line in dimension_lines(drawing) if line[0][1] == line[1][1] < top]
    assert len(heights) == 2
    assert heights[0] == heights[1]


def test_where_there_is_no_room_arrows_stand_outside() -> None:
    drawing = draw_schematic(band(), "cm").drawing
    outline = piece_outline(drawing).points
    low, high = min(x for x, _ in outline), max(x for x, _ in outline)
    (line,) = [line for line in dimension_lines(drawing) if line[0][1] == line[1][1]]
    assert min(line[0][0], line[1][0]) < low - 4
    assert max(line[0][0], line[1][0]) > high + 4
    bodies = [x for head in arrowheads(drawing) for x, _ in head.points if head.points[0][1] == line[0][1]]
    assert all(x <= low + 1e-9 or x >= high - 1e-9 for x in bodies)


def test_several_sizes_show_letters_and_the_key_has_all_values_in_order() -> None:
    schematic = draw_schematic(back(9), "cm")
    strong = [label.text for label in labels(schematic.drawing) if label.strong]
    assert sorted(strong) == ["A", "B", "C", "D", "E", "F"]
    assert schematic.key[0] == ("A", "Width", (600, 640, 680, 720, 760, 800, 840, 880, 920))
    assert [(letter, name) for letter, name, _ in schematic.key] == [
        ("A", "Width"), ("B", "Length"), ("C", "Armhole depth"), ("D", "Side"), ("E", "Back neck"), ("F", "Shoulder"),
    ]  # fmt: skip


@pytest.mark.parametrize(("units", "expected"), [("cm", ["A 40 cm", "B 6 cm"]), ("in", ["A 15¾ in", "B 2⅜ in"])])
def test_one_size_shows_letter_and_value(units: str, expected: list[str]) -> None:
    schematic = draw_schematic(pocket(), units)
    assert sorted(label.text for label in labels(schematic.drawing) if label.strong) == expected
    assert schematic.key == (("A", "Width", (400,)), ("B", "Height", (60,)))


def test_every_name_is_written() -> None:
    texts = [label.text for label in labels(draw_schematic(back(), "cm").drawing)]
    for name in ("kelp", "oat", "slate", "hem", "side", "armhole", "shoulder"):
        assert texts.count(name) == 1
    assert texts.count("underarm") == 2


def test_band_names_stand_level_with_their_bands() -> None:
    drawing = draw_schematic(back(), "cm").drawing
    fills = {item.fill: item.points for item in drawing.items if isinstance(item, Polygon) and item.hatch != "none"}
    for name, colour in (("kelp", "#3f5d4e"), ("oat", "#d9c9a8"), ("slate", "#5b6b7a")):
        (label,) = [label for label in labels(drawing) if label.text == name]
        ys = [y for _, y in fills[colour]]
        assert min(ys) < label.y - 1 < max(ys)


def test_each_colour_name_has_its_own_hatch() -> None:
    drawing = draw_schematic(striped_gore(), "cm").drawing
    pairs = {(i.fill, i.hatch) for i in drawing.items if isinstance(i, Polygon) and i.fill and i.hatch != "none"}
    assert len(pairs) == 4
    assert len({hatch for _, hatch in pairs}) == 4


def test_hatches_given_for_the_whole_pattern_are_used() -> None:
    hatches = {"kelp": "cross", "oat": "vertical", "slate": "dots"}
    drawing = draw_schematic(front(), "cm", hatches=hatches).drawing
    pairs = {(i.fill, i.hatch) for i in drawing.items if isinstance(i, Polygon) and i.hatch != "none"}
    assert pairs == {("#3f5d4e", "cross"), ("#d9c9a8", "vertical"), ("#5b6b7a", "dots")}


def test_stripes_too_narrow_for_names_get_a_key_of_colours() -> None:
    texts = [label.text for label in labels(draw_schematic(striped_gore(), "cm").drawing)]
    assert [texts.count(name) for name in ("oat", "kelp", "slate", "rust")] == [1, 1, 1, 1]


def test_a_piece_in_rounds_says_that_it_shows_half() -> None:
    def words(schematic: Schematic) -> str:
        return " ".join(label.text for label in labels(schematic.drawing))

    assert "worked in rounds; width shown is half the round" in words(draw_schematic(sleeve(), "cm"))
    narrow = draw_schematic(sleeve(), "cm", max_width=50)
    assert "worked in rounds; width shown is half the round" in words(narrow)
    assert narrow.drawing.width <= 50
    assert "rounds" not in words(draw_schematic(back(), "cm"))


def test_the_description_tells_what_is_drawn() -> None:
    description = draw_schematic(front(), "cm").drawing.description
    assert description.startswith("Outline of Right Front, drawn in true proportion in size XS.")
    assert "Colours from the bottom edge up: kelp, slate, oat." in description
    assert "A: Width, 27 cm." in description


def test_the_same_figure_gives_the_same_drawing() -> None:
    assert draw_schematic(front(), "in") == draw_schematic(front(), "in")


def test_a_small_piece_is_drawn_as_recorded() -> None:
    """The stored listing changes only when the look of drawings is meant to change."""
    recorded = Path(__file__).with_name("pocket.draw.txt").read_text(encoding="utf-8")
    assert listing(draw_schematic(pocket(), "cm").drawing) == recorded


def test_a_figure_whose_values_do_not_match_its_sizes_is_refused() -> None:
    with pytest.raises(ValueError, match="one value per size"):
        PieceFigure(
            "p", "P", ("S", "M"), "S", ((0, 0), (9, 0), (9, 9)),
            measures=(Measure("w", "across", (0, 0), (9, 0), (9,)),),
        )  # fmt: skip


def rectangle(width: float, height: float, _share: float) -> tuple[tuple[float, float], ...]:
    return (0, 0), (width, 0), (width, height), (0, height)


def trapezoid(width: float, height: float, share: float) -> tuple[tuple[float, float], ...]:
    inset = width * share / 2
    return (0, 0), (width, 0), (width - inset, height), (inset, height)


def stepped(width: float, height: float, share: float) -> tuple[tuple[float, float], ...]:
    step, level = width * share / 4, height * (1 - share / 2)
    return (
        (0, 0), (width, 0), (width, level), (width - step, level), (width - step, height), (step, height),
        (step, level), (0, level),
    )  # fmt: skip


@st.composite
def figures(draw: st.DrawFn) -> PieceFigure:
    """Pieces from a buttonhole tab to a shawl, with measures of every kind."""
    width, height = draw(st.floats(40, 1500)), draw(st.floats(40, 2000))
    shape = draw(st.sampled_from([rectangle, trapezoid, stepped]))
    outline = shape(width, height, draw(st.floats(0.1, 0.9)))
    sizes = draw(st.integers(1, 9))
    names = draw(st.lists(st.sampled_from(["oat", "kelp", "slate", "rust red"]), max_size=6))
    edges = list(zip(outline, outline[1:] + outline[:1], strict=True))
    chosen = draw(st.lists(st.sampled_from(edges), max_size=5, unique=True))
    measures = tuple(
        Measure(f"edge {index}", kind(a, b), a, b, graded(math.dist(a, b), 10, sizes))
        for index, (a, b) in enumerate(chosen)
    )
    named = draw(st.lists(st.sampled_from(edges), max_size=3, unique=True))
    return PieceFigure(
        "piece", "Piece", tuple(f"{n}" for n in range(sizes)), "0", outline,
        bands=tuple(
            ColourBand(name, f"#{40 * index + 30:02x}8070", height * index / len(names), height * (index + 1) / len(names))
            for index, name in enumerate(names)
        ),
        measures=measures,
        edge_names=tuple((f"edge no {i}", ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)) for i, (a, b) in enumerate(named)),
        marks=draw(st.sampled_from([(), (("underarm", outline[2]),), (("top", outline[-1]),)])),
        in_rounds=draw(st.booleans()),
    )  # fmt: skip


def kind(start: tuple[float, float], end: tuple[float, float]) -> str:
    if start[1] == end[1]:
        return "across"
    return "up" if start[0] == end[0] else "edge"


@settings(max_examples=120, deadline=None)
@given(figures())
def test_any_piece_is_readable_and_in_proportion(figure: PieceFigure) -> None:
    schematic = draw_schematic(figure, "cm")
    assert_readable(schematic.drawing)
    assert_on_canvas(schematic.drawing)
    assert_in_proportion(figure, schematic.drawing)
    lines = dimension_lines(schematic.drawing)
    assert len(lines) == len(figure.measures)
    assert not [pair for pair in combinations(lines, 2) if cross(*pair)]
    assert [values for _, _, values in schematic.key] == [measure.values for measure in figure.measures]
