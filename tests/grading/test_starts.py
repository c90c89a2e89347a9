"""Starts: widths to counts, foundations in row 1's stitch, stitches picked up."""

import pytest
from tiny_specs import ONE_SIZE, one_piece, problems, told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.model import ChainStart, EdgeStart

FLAT = """\
pieces:
  piece:
    fabric: {fabric}
    colours: oat
    start: {{chain: {width}{more}}}
    sections:
      - even: {{rows: 3{own}}}
"""


def flat(width: str, fabric: str = "plain", more: str = "", own: str = "") -> str:
    return ONE_SIZE + FLAT.format(width=width, fabric=fabric, more=more, own=own)


@pytest.mark.parametrize(("fabric", "chains"), [("plain", 22), ("tall", 22), ("rib", 23)])
def test_the_foundation_has_the_skipped_chains_of_row_one(fabric: str, chains: int) -> None:
    start = one_piece(flat("20 cm", fabric)).main.start
    assert isinstance(start, ChainStart) and start.chains == chains


def test_row_one_is_of_its_own_section_even_where_the_start_counts_in_another() -> None:
    text = flat("20 cm", "rib", more=", fabric: plain", own=", fabric: tall")
    start = one_piece(text).main.start
    assert isinstance(start, ChainStart) and (start.stitches, start.chains) == (20, 22)


def test_a_width_too_small_or_too_large_is_told() -> None:
    assert told(flat("3 mm")) == [("multiple-does-not-fit", "start: {chain: 3 mm}", "M")]
    assert told(flat("1 cm", "rib")) == []
    assert [p.name for p in problems(flat("2000 m"))] == ["too-many-stitches"]


def test_even_rows_in_a_fabric_that_does_not_allow_the_count_are_told() -> None:
    text = flat("20 cm", own=", fabric: rib")
    (problem,) = problems(text)
    assert problem.name == "multiple-does-not-fit" and "18" not in problem.message and "22" in problem.message


def test_a_chain_of_no_chains_does_not_count() -> None:
    text = flat("20 cm").replace("plain: {stitch: hdc", "plain: {stitch: hdc, turning_chain: {chains: 0, counts: as a stitch}")
    assert [p.name for p in problems(text)] == ["chainless-stitch"]


def test_a_fabric_with_its_own_stitch_takes_no_turning_chain_over() -> None:
    text = flat("20 cm", "low").replace(
        "  rib:", "  high: {stitch: dc, turning_chain: {chains: 3, counts: as a stitch}, gauge: \"10 sts, 5 rows / 10 cm\"}\n"
        "  low: {like: high, stitch: sc, gauge: \"10 sts, 10 rows / 10 cm\"}\n  rib:"
    )
    start = one_piece(text).main.start
    assert isinstance(start, ChainStart) and start.chains == 21


BAND = """\
  band:
    fabric: {fabric}
    colours: kelp
    start: {{pick_up: [{edges}]}}
    sections:
      - {section}
"""


def band(edges: str, section: str = "even: {rows: 3}", fabric: str = "plain") -> str:
    return flat("20 cm").replace("rows: 3", "rows: 15") + BAND.format(edges=edges, section=section, fabric=fabric)


def test_stitches_are_picked_up_by_true_length_and_stitch_for_stitch() -> None:
    start = one_piece(band("piece.starting, piece.top, piece.far"), "band").main.start
    assert isinstance(start, EdgeStart)
    assert [(up.stitches, up.rows, up.of) for up in start.pick_ups] == [(15, 15, 0), (20, 0, 20), (15, 15, 0)]


def test_stitches_picked_up_obey_the_fabric() -> None:
    strip = one_piece(band("piece.starting, piece.top, piece.far", fabric="rib"), "band").main
    assert strip.start.stitches == 50  # 12 fours and two; 50 fits as it is
    strip = one_piece(band("piece.starting, piece.top", fabric="rib"), "band").main
    assert isinstance(strip.start, EdgeStart) and [up.stitches for up in strip.start.pick_ups] == [14, 20]


@pytest.mark.parametrize("section", ["even: {rows: 3}", "taper: {rows: 5, target: 58 cm}", "taper: {target: 58 cm, each: 2}"])
def test_row_one_of_a_band_is_the_row_picked_up(section: str) -> None:
    strip = one_piece(band("piece.starting, piece.top, piece.far", section), "band").main
    assert row_faults(strip, (strip,)) == ()
    assert [run.operation.kind for run in strip.rows[0].runs] == ["picked up"] and strip.rows[0].makes == 50
    assert strip.last_count == (58 if "taper" in section else 50)


NECKED = """\
pieces:
  piece:
    fabric: {fabric}
    colours: oat
    start: {{chain: 40 cm}}
    sections: [even: {{length: 30 cm}}, {top}]
    edges: {{starting: [side], far: [front]}}
"""


@pytest.mark.parametrize(
    ("top", "level", "both"),
    [("neck: {shape: round, width: 16 cm, depth: 6 cm}", 8, True), ("neck_edge: {shape: round, width: 8 cm, depth: 6 cm, at: front}", 5, False)],
)
def test_along_a_curve_level_stitches_are_picked_up_one_to_one(top: str, level: int, both: bool) -> None:
    text = ONE_SIZE + NECKED.format(fabric="plain", top=top) + BAND.format(fabric="plain", edges="piece.neck", section="even: {rows: 3}")
    start = one_piece(text, "band").main.start
    assert isinstance(start, EdgeStart)
    (up,) = start.pick_ups
    assert (up.of, up.level, up.both) == (level, level, both)
    assert up.stitches - up.level >= up.rows and up.rows > 0
    finer = text.replace("  rib:", "  fine: {like: plain, gauge: \"20 sts, 20 rows / 10 cm\"}\n  rib:").replace("    fabric: plain\n    colours: kelp", "    fabric: fine\n    colours: kelp")
    (up,) = one_piece(finer, "band").main.start.pick_ups  # type: ignore[union-attr]
    assert (up.of, up.level) == (level, 2 * level)


@pytest.mark.parametrize(("gauge", "count"), [("10 sts, 10 rows / 10 cm", 20), ("11 sts, 10 rows / 10 cm", 20), ("12 sts, 10 rows / 10 cm", 24)])
def test_a_hem_worked_down_from_a_foundation_chain(gauge: str, count: int) -> None:
    """Stitch for stitch where the gauges are within a tenth, else by width: 20 stitches of 1 cm."""
    text = band("piece.bottom", fabric="down").replace("  rib:", f'  down: {{like: plain, gauge: "{gauge}"}}\n  rib:')
    start = one_piece(text, "band").main.start
    assert isinstance(start, EdgeStart) and [(up.stitches, up.of, up.rows) for up in start.pick_ups] == [(count, 20, 0)]
