"""Where text may stand, and how a scale is found."""

import pytest

from gaugewright.drawings.canvas import cut_canvas
from gaugewright.drawings.colour_bands import assign_hatches
from gaugewright.drawings.dimension_lines import reading_angle
from gaugewright.drawings.edge_labels import mark_point
from gaugewright.drawings.placing import write_with_leader
from gaugewright.drawings.primitives import Label, Polygon, Polyline
from gaugewright.drawings.scale import fit_to_room
from gaugewright.drawings.scene import Scene, centred_label

SQUARE = ((-20.0, -20.0), (20.0, -20.0), (20.0, 20.0), (-20.0, 20.0))
WORD = centred_label((0, 0), "hem")


def test_text_keeps_off_lines() -> None:
    assert Scene().draw(Polyline(((-9, 9), (9, 9)))).has_room(WORD)
    assert not Scene().draw(Polyline(((-9, 1), (9, 1)))).has_room(WORD)
    assert not Scene().draw(Polyline(((-9, -9), (9, 9)))).has_room(WORD)


def test_text_keeps_off_texts_so_that_two_never_read_as_one() -> None:
    beside = centred_label((6.5, 0), "hem")
    assert not Scene().write(WORD).has_room(beside)
    assert Scene().write(WORD).has_room(centred_label((8, 0), "hem"))


def test_text_on_a_hatched_fill_needs_a_plate() -> None:
    scene = Scene().fill(Polygon(SQUARE, 0.0, fill="#3f5d4e", hatch="dots"))
    assert not scene.has_room(WORD)
    assert scene.has_room(WORD, plate=True)
    written = scene.write(WORD, plate=True)
    assert [type(item) for item in written.items] == [Polygon, Polygon, Label]
    assert written.items[1].fill == "#ffffff"


def test_a_leader_finds_the_nearest_free_place() -> None:
    walls = tuple(Polyline(((-30.0, y), (30.0, y))) for y in (-6.0, -3.0, 3.0, 6.0))
    scene = write_with_leader(Scene().draw(*walls), (0, 0), "mark")
    label = scene.items[-1]
    assert isinstance(label, Label)
    assert Scene().draw(*walls).has_room(label)


def test_a_walled_in_point_still_gets_its_name() -> None:
    scene = write_with_leader(Scene().draw(*(Polygon(((-r, -r), (r, -r), (r, r), (-r, r))) for r in range(1, 60))), (0, 0), "mark")
    assert scene.items[-1].text == "mark"


def test_a_tick_never_runs_over_text() -> None:
    square = ((0.0, -40.0), (40.0, -40.0), (40.0, 0.0), (0.0, 0.0))
    free = Scene().draw(Polygon(square))
    assert _tick(mark_point(free, square, "underarm", (40, -20))) == ((40, -20), (42.5, -20))
    taken = free.write(Label(41, -19, "A", 2.8))
    assert _tick(mark_point(taken, square, "underarm", (40, -20))) == ((40, -20), (37.5, -20))


def _tick(scene: Scene) -> tuple[tuple[float, float], ...]:
    (tick,) = [item for item in scene.items if isinstance(item, Polyline)]
    return tick.points


def test_a_canvas_is_cut_round_all_that_is_drawn() -> None:
    drawing = cut_canvas(Scene().draw(Polygon(SQUARE, width=0.0)).write(Label(30, 0, "hem", 2.8)), "t", "d")
    assert drawing.items[0].points[0] == (1, 1)
    assert drawing.height == pytest.approx(42)
    assert drawing.width > 52


def test_hatches_stay_distinct_for_seven_colours() -> None:
    hatches = assign_hatches("abcdefgabcdefg")
    assert len(set(hatches.values())) == 7


@pytest.mark.parametrize(
    ("along", "angle"),
    [((1, 0), 0), ((-1, 0), 0), ((0, 1), 90), ((0, -1), 90), ((0.8, -0.6), 36.87), ((-0.8, 0.6), 36.87)],
)
def test_no_text_stands_on_its_head(along: tuple[float, float], angle: float) -> None:
    assert reading_angle(along) == pytest.approx(angle, abs=0.01)


def block(width: float, height: float) -> Scene:
    return Scene((Polyline(((0, 0), (width, height)), width=0.0),))


def test_a_piece_is_never_drawn_larger_than_life() -> None:
    scene = fit_to_room(lambda s: block(30 * s, 20 * s), (30, 20), (160, 110))
    assert scene.extent() == (0, 0, 30, 20)


def test_surroundings_larger_than_the_room_end_the_search() -> None:
    scene = fit_to_room(lambda s: block(100 * s + 500, 100 * s), (100, 100), (160, 110))
    assert 0 < scene.extent()[3] <= 20


def test_a_point_that_lies_under_text_is_led_to_all_the_same() -> None:
    """Its leader can't but cross the text, so it does, where nothing else serves."""
    scene = Scene().write(centred_label((0, 0), "underarm to thumb opening"))
    written = write_with_leader(scene, (0.0, 0.0), "slot")
    assert [item.text for item in written.items if isinstance(item, Label)] == ["underarm to thumb opening", "slot"]
