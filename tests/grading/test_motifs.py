"""Motifs: stitches at their corners, rounds to a size, what can't be a motif or a grid."""

import pytest
from tiny_specs import designed, graded

from gaugewright.errors import ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.motif_rows import motif_rounds
from gaugewright.grading.motifs import at_each_corner, increases, width_across
from gaugewright.yarn.amounts import amounts

SPEC = """\
gaugewright: 1
pattern: {title: Squares, workshop: Ferry Lane Workshop}
sizes: {dimensions: {Small: {width: 45 cm, length: 60 cm}, Large: {width: 75 cm, length: 91 cm}}}
yarns: {oat: {colour: "#d9c9a8", ball: {mass: 100 g, length: 200 m}}, kelp: {like: oat, colour: "#3f5d4e"}}
fabrics:
  tall: {stitch: dc, worked: joined rounds, swatch: {stitches: 30, rows: 15, width: 20 cm, height: 20 cm, mass: 15 g}}
  spiral: {like: tall, worked: spiral rounds}
pieces:
  square:
    fabric: tall
    start: {centre: flat}
    sections: [motif: {sides: 4, target: 13 cm}]
    colours: oat
    grid: {across: size.width, down: size.length}
"""


def test_a_square_of_tall_stitches_grows_by_four_at_each_corner() -> None:
    rounds = [row.makes for row in graded(SPEC).pieces["square"]["Small"].main.rows]
    assert rounds == [16, 32, 48, 64, 80]


def test_counts_by_hand() -> None:
    """Rounds are 1.33 cm high, so five are 13.3 cm across: three or four times 13.3 cm come nearest to 45 and 60 cm."""
    layouts = [piece.layout for piece in graded(SPEC).pieces["square"]]
    assert [(one.across, one.down, one.motifs) for one in layouts if one] == [(3, 5, 15), (6, 7, 42)]
    assert [round(one.joined_width, 1) for one in layouts if one] == [400.0, 800.0]


def test_joins_take_up_what_they_say() -> None:
    text = SPEC.replace("down: size.length}", "down: size.length, take_up: half stitch}")
    layout = graded(text).pieces["square"]["Small"].layout
    assert layout is not None and layout.width == pytest.approx(2 * 4.5 * 200 / 15)


def test_hexagons_lie_in_offset_rows() -> None:
    layout = graded(SPEC.replace("sides: 4", "sides: 6")).pieces["square"]["Large"].layout
    assert layout is not None
    assert [layout.in_row(row) for row in range(3)] == [6, 5, 6]
    assert layout.motifs == len(list(layout.places()))


def test_an_odd_number_at_a_corner_is_one_more_and_one_less_by_turns() -> None:
    gauge = Gauge(stitches=30, width=200, rows=20, height=200)
    assert at_each_corner(4, gauge) == 3
    assert [sum(increases(3, rounds)) for rounds in range(1, 7)] == [4, 6, 10, 12, 16, 18]


def test_a_round_begins_where_the_one_before_ended() -> None:
    """Before the first corner and after the last one there are a side's stitches together, whichever way the work is turned."""
    for turned in (False, True):
        rounds = motif_rounds(increases(4, 6), turned)
        assert [one.lead + one.trail for one in rounds] == [one.side for one in rounds]
    assert [(one.lead, one.trail) for one in motif_rounds(increases(4, 4), True)] == [(3, 0), (0, 3), (5, 2), (4, 7)]


def test_an_odd_motif_is_measured_from_side_to_corner() -> None:
    assert width_across(3, 10) == pytest.approx(30)


@pytest.mark.parametrize(
    ("old", "new", "name", "line"),
    [
        ("centre: flat", "centre: 7", "motif-start", 11),
        ("centre: flat", "ring: 20 cm", "motif-start", 11),
        ("[motif: {sides: 4, target: 13 cm}]", "[motif: {sides: 4, rounds: 3}, even: {rounds: 1}]", "motif-alone", 12),
        ("fabric: tall", "fabric: spiral", "motif-spiral", 12),
        ("mass: 15 g}}", "mass: 15 g}, multiple: {of: 4}}", "motif-in-pattern", 12),
        ("target: 13 cm", "target: 1 cm", "motif-size", 12),
        ("target: 13 cm", "target: 130 cm", "grid-too-small", 14),
        ("across: size.width", "across: size.width * 400", "grid-too-large", 14),
        ("sides: 4", "sides: 5", "grid-of-others", 14),
        ("colours: oat", "colours: oat\n    make: 4", "grid-and-make", 14),
        ("sides: 4", "sides: 9", "out-of-range", 12),
    ],
)
def test_what_cannot_be(old: str, new: str, name: str, line: int) -> None:
    with pytest.raises(ProblemsFound) as found:
        graded(SPEC.replace(old, new))
    assert {problem.name for problem in found.value.problems} == {name}
    places = {problem.origin.location.line for problem in found.value.problems if problem.origin}
    assert places == {line}


def test_a_grid_and_a_number_to_make_do_not_go_together_through_likeness() -> None:
    text = SPEC.replace("    grid:", "    make: 4\n  tile:\n    like: square\n    grid:")
    with pytest.raises(ProblemsFound) as found:
        graded(text)
    assert [problem.name for problem in found.value.problems] == ["grid-and-make"]


def test_yarn_by_hand() -> None:
    """15 squares of 240 stitches at a thirtieth of a gram; 22 joins of 13.3 cm, 3.5 times as long, in the first yarn; two ends each."""
    text = SPEC.replace("down: size.length}", "down: size.length, turns: [oat, kelp]}")
    grading = graded(text)
    found = amounts(designed(text), {"square": grading.pieces["square"]["Small"]})
    assert found is not None
    assert (found["oat"].counted.stitches, found["kelp"].counted.stitches) == (pytest.approx(8 * 8), pytest.approx(7 * 8))
    joins, tails = 22 * 3.5 * 400 / 3 / 2000, 2 * 152.4 / 2000
    assert (found["oat"].counted.seams, found["oat"].counted.tails) == (pytest.approx(joins), pytest.approx(8 * tails))
    assert (found["kelp"].counted.seams, found["kelp"].counted.tails) == (0.0, pytest.approx(7 * tails))
