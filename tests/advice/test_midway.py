"""In the middle of a piece: what is recommended, and the figures with it, worked by hand on the tabard."""

from pathlib import Path

import pytest

from advice.test_follow import TABARD, tabard
from cli.running import spec_in
from gaugewright import pipeline
from gaugewright.advice.midway import Midway, advise
from gaugewright.errors import UserError
from gaugewright.spec.worked_text import WorkedText


def told(folder: Path, rows: int, stitches: int, width: float, height: float, size: str = "M") -> Midway:
    """The tabard's back in M has 50 sts, 50 cm wide, and 40 rows, 50 cm high."""
    (found,) = advise(tabard(folder), "back", WorkedText(rows, stitches, width * 10, height * 10), size)
    return found


def test_as_wide_and_high_as_it_should_be_it_goes_on(tmp_path: Path) -> None:
    found = told(tmp_path, 16, 50, 50, 20)
    assert (found.way, found.rest, found.new_total) == ("go on", 24, 40)


def test_higher_rows_are_worked_fewer(tmp_path: Path) -> None:
    """16 rows that are 22 cm high are a tenth too high: 36 rows make 49.5 cm."""
    found = told(tmp_path, 16, 50, 50, 22)
    assert (found.way, found.new_total, found.sewn) == ("go on with other rows", 36, ("Front",))
    (length,) = found.this.others
    assert length.got == pytest.approx(550) and length.rows == -4


def test_a_little_too_wide_is_a_matter_of_the_hook(tmp_path: Path) -> None:
    """4 % too wide is 104 cm of bust; a tenth and more of the piece is worked."""
    found = told(tmp_path, 16, 50, 52, 20)
    assert found.way == "change hook" and found.this.lead.got == pytest.approx(1040)


def test_with_little_worked_it_is_ripped_out(tmp_path: Path) -> None:
    found = told(tmp_path, 4, 50, 52, 5)
    assert (found.way, found.lost, found.lost_stitches) == ("rip out", 4, 200)


def test_a_tenth_too_wide_begins_again_a_size_smaller(tmp_path: Path) -> None:
    """S's 45 sts are then 49.5 cm: 99 cm of bust where 100 are wanted."""
    found = told(tmp_path, 16, 50, 55, 20)
    assert (found.way, found.another, found.begin.numbers) == ("rip out", None, "S")
    assert found.begin.lead.got == pytest.approx(990)


def test_every_size_is_told_what_it_would_come_to(tmp_path: Path) -> None:
    found = told(tmp_path, 16, 50, 55, 20)
    assert [one.lead.got for one in found.continued] == pytest.approx([990, 1100, 1210, 1320])


def test_a_size_whose_stitches_are_near_is_followed_from_here(tmp_path: Path) -> None:
    """Sizes 2 cm apart: 50 and 52 sts; 4 % too narrow, the 52 sts of the next give 99.84 cm where 100 are wanted."""
    from advice.test_follow import TABARD
    from cli.running import spec_in
    from gaugewright import pipeline

    near = TABARD.replace("L: {bust: 100 cm}", "L: {bust: 94 cm}")
    graded = pipeline.grade(pipeline.load(spec_in(tmp_path, near)))
    (found,) = advise(graded, "back", WorkedText(16, 50, 480.0, 200.0), "M")
    assert found.way == "follow another size" and found.another is not None
    assert (found.another.size, found.another.stitches) == ("L", 2)
    assert found.another.result.lead.got == pytest.approx(2 * 52 * 9.6)


def test_sizes_with_the_same_stitches_are_all_answered(tmp_path: Path) -> None:
    found = advise(tabard(tmp_path), "front", WorkedText(10, 55, 550.0, 125.0), "")
    assert [one.size for one in found] == ["L"]


@pytest.mark.parametrize(("worked", "name"), [(WorkedText(16, 49, 500.0, 200.0), "worked-astray"), (WorkedText(16, 50, 1500.0, 200.0), "worked-unlikely"), (WorkedText(16, 50, 500.0, 20.0), "worked-unlikely")])
def test_what_follows_no_size_is_told(tmp_path: Path, worked: WorkedText, name: str) -> None:
    with pytest.raises(UserError) as fault:
        advise(tabard(tmp_path), "back", worked, "")
    assert fault.value.name == name and fault.value.hint


def test_a_piece_is_measured_flat_where_its_fabric_grows(tmp_path: Path) -> None:
    """Rows of 12.5 mm flat that hang 10 % longer: M's 50 cm are 36 rows, and 16 of them lie 20 cm high and go on."""
    text = TABARD.replace("10 cm\"}", "10 cm\", growth: 10 %}")
    graded = pipeline.grade(pipeline.load(spec_in(tmp_path, text)))
    (found,) = advise(graded, "back", WorkedText(16, 50, 500.0, 200.0), "M")
    assert (found.way, found.total, found.new_total) == ("go on", 36, 36)
    assert found.hand.along == pytest.approx(1)
