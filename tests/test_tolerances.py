"""Tolerances change over where their reasons do."""

from gaugewright import tolerances


def test_a_seam_may_differ_by_a_row_until_three_percent_is_more() -> None:
    row = 12.0
    assert tolerances.seam_tolerance(399.0, row) == row
    assert tolerances.seam_tolerance(500.0, row) == 15.0


def test_the_total_errs_by_at_most_half_a_row() -> None:
    row = 14.0
    for wanted in range(400, 800):
        rows = int(wanted / row + 0.5)
        assert abs(rows * row - wanted) <= tolerances.total_tolerance(row)


def test_the_bust_of_two_pieces_errs_by_at_most_one_stitch() -> None:
    width = 11.0
    for bust in range(700, 1400):
        piece = int(bust / 2 / width + 0.5)
        assert abs(2 * piece * width - bust) <= tolerances.bust_tolerance(width)


def test_a_repeat_widens_the_tolerance_to_half_of_itself() -> None:
    assert tolerances.width_tolerance(10.0, 14) == 70.0
    assert tolerances.width_tolerance(10.0, 1) == 5.0


def test_an_edge_may_stray_one_stitch() -> None:
    assert tolerances.edge_tolerance(11.4) == 11.4
