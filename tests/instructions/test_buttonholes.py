"""What is written of buttonholes, held to the rows: which stitches are skipped, what fills them, what to buy."""

import re

import pytest

from gaugewright.instructions.nodes import Table
from instructions.specs import document, graded, pieces_told, told

VESTS = ("vest in three", "vest in one", "button-band")


def skipped(cell: str) -> list[int]:
    """The stitches of "4 to 6, 17 to 19"."""
    found: list[int] = []
    for part in cell.replace("\u00a0", " ").split(", "):
        first, _, last = part.partition(" to ")
        found += range(int(first), int(last or first) + 1)
    return found


@pytest.mark.parametrize("name", VESTS)
def test_the_table_gives_the_stitches_that_the_row_skips(name: str) -> None:
    design, seen = graded(name).design, 0
    for table in (block for block in document(name).blocks if isinstance(block, Table) and block.caption.endswith(": buttonholes")):
        [piece] = [piece for piece in design.pieces if piece.title == table.caption.partition(":")[0]]
        assert piece.buttonholes is not None
        for size, cell in table.rows:
            strip = graded(name).grading.pieces[piece.key][size].main
            [number] = [n for n, row in enumerate(strip.rows, start=1) if any(run.operation.kind == "chain" for run in row.runs)]
            chains, at = [], 0
            for run in strip.rows[number - 1].runs:
                made = run.operation.makes * run.times
                chains += [at + i for i in range(1, made + 1)] if run.operation.kind == "chain" else []
                at += made
            # Turned to count from the end at the edge: of the band's beginning, or of its end.
            at_beginning = piece.buttonholes.edge == piece.start.edges[0]
            told_from = chains if bool(number % 2) == at_beginning else sorted(at + 1 - stitch for stitch in chains)
            assert skipped(cell) == told_from, f"{piece.key} {size}"
            seen += 1
    assert seen


def test_rows_are_named_and_counted() -> None:
    texts = {one.label: one.text for one in pieces_told("vest in three")["band"] if one.label.startswith("Row")}
    assert list(texts) == ["Row 1 (pick-up row, RS):", "Row 3 (buttonhole row):", "Row 4:"]
    assert "ch 2 and skip 2 sts" in texts["Row 3 (buttonhole row):"] and "of the Left only" in texts["Row 3 (buttonhole row):"]
    assert re.search(r"with sc in each ch of the buttonholes. — ", texts["Row 4:"])


def test_buttons_are_listed_and_sewn_on() -> None:
    texts = [one.text for one in told(document("vest in three"))]
    thread = ", and sewing thread with a fine needle."
    assert f"5 buttons, 20 mm / ¾ in across{thread}" in texts and f"A button, 10 mm / ⅜ in across{thread}" in texts
    assert any(text.startswith("Sew each button to the band") for text in texts)
    assert not any("button" in one.text for one in told(document("picked up")))


def test_rounds_picked_up_begin_join_and_end_in_words() -> None:
    [first] = [one for one in pieces_told("vest in three")["armband"] if one.label.startswith("Rnd 1")]
    assert first.label == "Rnd 1 (pick-up rnd, RS):"
    assert "begin at the underarm, beside the side seam" in first.text and ", join with a sl st in the first hdc." in first.text
    neck, hem, cuff = (next(one.text for one in pieces_told("picked-up-rounds")[key] if one.label.startswith("Rnd 1")) for key in ("neckband", "hem_band", "cuff"))
    assert "begin beside a seam" in neck and "do not join. Place a marker" in neck
    assert "row ends insert" not in hem and ", join with a sl st in the first dc." in hem
    assert "where rnds were joined" in cuff


def test_the_order_of_work_puts_rings_after_the_seams_that_close_them() -> None:
    order = [one.text for one in told(document("picked-up-rounds")) if one.chapter == "Order of work"]
    assert order[1:] == ["Back and Front: work them in any order.", "Sew seam A.", "Work the Neckband.", "Sew seam B.", "Work the Hem Band.", "Work the Sleeve (make 2).", "Work the Cuff (make 2)."]


def test_stitches_left_at_a_picked_up_corner_are_told() -> None:
    """The band round a shaped armhole passes the stitches left at the underarm; the one up a straight front has none."""
    told_of = {key: " ".join(one.text for one in pieces_told("vest")[key] if "(pick-up" in one.label) for key in ("armhole_band", "front_band")}
    assert "work about one sc in each of them" in told_of["armhole_band"] and "row ends" in told_of["armhole_band"]
    assert "row ends" in told_of["front_band"] and "left at a corner" not in told_of["front_band"]
