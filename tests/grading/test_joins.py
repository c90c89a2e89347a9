"""Bands worked sideways: rows that follow from their edges, joined to each place once."""

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, graded, one_piece, told

from gaugewright.checks.rows import row_faults
from gaugewright.grading.model import ChainStart, Join

PANEL = """\
pieces:
  piece:
    fabric: plain
    colours: oat
    start: {{chain: {width}}}
    sections: [{sections}]
    edges: {{starting: [front], far: [inner], bottom: hem}}
  band:
    fabric: {fabric}
    colours: kelp
    start: {{{start}}}
"""


def banded(start: str = "chain: 5 cm, join: piece.hem", fabric: str = "plain", width: str = "30 cm", sections: str = "even: {length: 20 cm}", head: str = ONE_SIZE) -> str:
    return head + PANEL.format(width=width, fabric=fabric, start=start, sections=sections)


def join(text: str, size: str = "M") -> Join:
    start = one_piece(text, "band", size).main.start
    assert isinstance(start, ChainStart) and start.join is not None
    return start.join


def test_rows_follow_from_the_true_length_of_the_edge() -> None:
    strip = one_piece(banded(), "band").main
    assert len(strip.rows) == 30 and {row.makes for row in strip.rows} == {5}
    assert row_faults(strip, (strip,)) == ()
    assert join(banded()).takes() == (2,) * 15


def test_each_second_row_ends_in_slip_stitches_and_the_next_begins_without_a_chain() -> None:
    kinds = [[run.operation.kind for run in row.runs] for row in one_piece(banded(), "band").main.rows]
    assert kinds == [["turning chain", "stitch", "join"], ["stitch"]] * 15


@pytest.mark.parametrize(("gather", "rows"), [("10 %", 26), ("50 %", 14)])
def test_a_band_that_pulls_in_has_fewer_rows(gather: str, rows: int) -> None:
    """27 and 15 cm want 13.5 and 7.5 pairs; the half is taken up, or to a number that shares 30 places out alike."""
    band = join(banded(f"chain: 5 cm, join: piece.hem, gather: {gather}"))
    assert abs(band.rows - rows) <= 2 and sum(band.takes()) == 30


def test_the_ratio_of_row_ends_to_rows() -> None:
    """60 row ends of 5 mm each meet rows of 10 mm: a pair of rows to every four."""
    text = banded("chain: 5 cm, join: piece.front", sections="even: {length: 30 cm}").replace("10 sts, 10 rows", "10 sts, 20 rows", 1)
    text = text.replace("fabric: plain\n    colours: kelp", "fabric: low\n    colours: kelp").replace("  rib:", "  low: {like: plain, gauge: \"10 sts, 10 rows / 10 cm\"}\n  rib:")
    found = join(text)
    assert (found.rows, found.places, set(found.takes())) == (30, 60, {4})


def test_edges_of_unlike_places_keep_their_own_ratio_and_errors_do_not_add_up() -> None:
    found = join(banded("chain: 5 cm, join: [piece.front, piece.top, piece.inner]", width="31 cm", sections="even: {length: 21 cm}"))
    assert [(run.along_rows, run.places) for run in found.runs] == [(True, 21), (False, 31), (True, 21)]
    assert found.rows in (72, 74)  # 73 cm of edge


def test_a_band_round_a_tube_meets_its_own_beginning() -> None:
    tube = banded().replace("    sections: [even: {length: 20 cm}]\n    edges: {starting: [front], far: [inner], bottom: hem}", "    sections: [even: {length: 20 cm}]\n    edges: {bottom: hem}")
    assert not join(banded()).ring
    assert join(tube.replace("    fabric: plain\n    colours: oat\n    start: {chain", "    fabric: round\n    colours: oat\n    start: {ring")).ring


def test_a_band_sewn_on_has_plain_rows() -> None:
    text = banded("chain: 5 cm, join: piece.hem, join_by: sewing")
    assert len(one_piece(text, "band").main.rows) == 30
    assert {run.operation.kind for row in one_piece(text, "band").main.rows for run in row.runs} == {"turning chain", "stitch"}


def test_every_size_has_its_own_rows() -> None:
    text = banded(head=THREE_SIZES, width="body.bust / 2")
    assert [len(piece.main.rows) for piece in graded(text).pieces["band"]] == [40, 50, 60]


def test_what_a_joined_band_cannot_have_is_told_where_it_stands() -> None:
    start = "start: {chain: 5 cm, join: piece.hem}"
    own_rows = banded() + "    sections: [even: {rows: 4}]\n"
    assert told(own_rows) == [("join-rows", "sections: [even: {rows: 4}]", "")]
    assert told(own_rows.replace("rows: 4", "length: rest")) == []
    assert told(banded() + "    total: 30 cm\n")[0][0] == "join-rows"
    bands = banded().replace("colours: kelp", "colours: {bands: {to: 20 cm, heights: [50 %, rest]}, order: [oat, kelp]}")
    assert [name for name, _, _ in told(bands)] == ["join-rows"]
    counted = banded(fabric="tall").replace("tall: {stitch: dc", "tall: {stitch: dc, turning_chain: {chains: 3, counts: as a stitch}")
    assert told(counted) == [("join-chain-counts", start, "")]
    assert told(counted.replace("counts: as a stitch", "counts: not as a stitch")) == []


def test_a_curved_edge_is_told_with_what_to_do_instead() -> None:
    neck = banded("chain: 3 cm, join: piece.neck", sections="even: {length: 20 cm}, neck: {shape: round, width: 12 cm, depth: 5 cm}")
    assert told(neck) == [("join-edge-uneven", "start: {chain: 3 cm, join: piece.neck}", "M")]
    picked = "  collar: {fabric: plain, colours: oat, start: {pick_up: piece.neck}, sections: [even: {rows: 1}]}\n"
    followed = neck.replace("  band:", picked + "  band:").replace("join: piece.neck", "join: collar.top")
    assert told(followed) == []


def test_an_edge_that_is_not_there_is_told() -> None:
    assert told(banded("chain: 5 cm, join: piece.front", sections="even: {length: 20 cm}").replace("starting: [front], far: [inner]", "both: [front]")) == []
