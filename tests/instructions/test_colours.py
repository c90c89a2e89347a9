"""Colours as told beforehand are the colours of the rows: stripes and bands line by line, blocks stitch by stitch."""

import re
from collections.abc import Iterator

import pytest

from gaugewright.grading.strands import ends_by_colour, segments, strands_of
from gaugewright.instructions.nodes import Heading, Table
from gaugewright.pipeline import Graded
from instructions.specs import SPECS, document, graded, pieces_told, at_size

COLOURED = tuple(name for name, text in SPECS.items() if "stripes:" in text or "bands:" in text or "blocks:" in text)


def tables(name: str, ending: str) -> Iterator[tuple[str, Table]]:
    """The tables of each piece whose caption ends so, with the piece's key."""
    titles = {piece.title: piece.key for piece in graded(name).design.pieces}
    chapter = ""
    for block in document(name).blocks:
        if isinstance(block, Heading) and block.level < 3:
            chapter = block.text
        elif isinstance(block, Table) and chapter in titles and block.caption.endswith(ending):
            yield titles[chapter], block


def of_size(cell: str, index: int, sizes: int) -> str:
    """One size's entry of a cell: "27 to 29 (28 to 30, –)" is a list, one entry alone serves all."""
    entries = cell.replace("\u00a0", " ").removesuffix(")").replace(" (", ", ").split(", ")
    assert len(entries) in (1, sizes), cell
    return entries[index % len(entries)]


def rows_in(cell: str) -> range:
    first, _, last = cell.partition(" to ")
    return range(int(first), int(last or first) + 1)


def told_of(table: Table, index: int, sizes: int) -> Iterator[tuple[str, range, str]]:
    """Colour, rows and last cell of the lines that one size has."""
    alone = table.header[1] in ("Rows", "Rnds")
    for line in table.rows:
        rows = of_size(line[1], index, sizes) if alone else line[1 + index].replace("\u00a0", " ")
        if rows != "–":
            yield line[0], rows_in(rows), of_size(line[-1], index, sizes)


@pytest.mark.parametrize("name", COLOURED)
@pytest.mark.parametrize("ending", ["stripes", "rows of each colour"])
def test_the_table_of_colours_accounts_for_every_row_of_every_size(name: str, ending: str) -> None:
    design, grading = graded(name).design, graded(name).grading
    labels = {yarn.key: yarn.label for yarn in design.yarns}
    for key, table in tables(name, ending):
        sizes = graded(name).bodies.labels
        for index, size in enumerate(sizes):
            plan, strips = grading.plans[key][size], grading.pieces[key][size].strips
            told = [(row, colour) for colour, rows, _ in told_of(table, index, len(sizes)) for row in rows if row <= plan.rows]
            one_side = (*strips[0].rows, *(strips[1].rows if len(strips) > 1 else ()))
            assert told == [(number, labels[row.runs[0].colour]) for number, row in enumerate(one_side, start=1)], f"{key} {size}"


@pytest.mark.parametrize("name", COLOURED)
def test_a_stripes_yarn_is_carried_or_cut_as_its_strand_is(name: str) -> None:
    design, grading = graded(name).design, graded(name).grading
    sizes = graded(name).bodies.labels
    for key, table in tables(name, "stripes"):
        for index, size in enumerate(sizes):
            plan, strips = grading.plans[key][size], grading.pieces[key][size].strips
            for _, rows, fate in told_of(table, index, len(sizes)):
                if rows[-1] < plan.rows:
                    strand = next(one for one in strands_of(strips, design.piece(key).colours.carry) if rows[-1] in one.rows)
                    alike = plan.colour_of(rows[-1]) == plan.colour_of(rows[-1] + 1)
                    assert fate == ("go on" if alike else "cut" if strand.last == rows[-1] else "carry"), f"{key} {size} {rows}"


def test_blocks_told_are_those_of_the_rows() -> None:
    """Read from the words: so many sts with a yarn, in order from where odd rows begin; their shaped ends too."""
    found = graded("colour-blocks")
    labels = found.bodies.labels
    names = {yarn.label: yarn.key for yarn in found.design.yarns}
    seen = 0
    for key, texts in pieces_told("colour-blocks").items():
        for index, size in enumerate(labels):
            rows = found.grading.pieces[key][size].main.rows
            for one in texts:
                label, text = (at_size(part, index, len(labels)) for part in (one.label, one.text))
                numbers = [int(number) for number in re.findall(r"\d+", label)] if label.startswith("Colours of") else []
                blocks = re.findall(r"(\d+) sts? with (\w+) \(block \d+\)", text)
                if not numbers or not blocks:
                    continue
                colours, lines = segments(rows[numbers[0] - 1], numbers[0])
                ends = (0, *lines, rows[numbers[0] - 1].makes)
                counted = [after - before for before, after in zip(ends, ends[1:], strict=False)]
                assert [(names[yarn], int(count)) for count, yarn in blocks] == list(zip(colours, counted, strict=True)), f"{key} {size}"
                if outer := re.search(r"the sts are (\d+) in the first and (\d+) in the last", text):
                    _, lines = segments(rows[numbers[1] - 1], numbers[1])
                    assert (int(outer[1]), int(outer[2])) == (lines[0], rows[numbers[1] - 1].makes - lines[-1]), f"{key} {size}"
                seen += 1
    assert seen == 3 * 4


def _goes_on(found: Graded, size: str) -> bool:
    """Whether the body begins in the colour of the yoke's last round: then the yarn between them isn't cut."""
    yoke, lower = (found.grading.pieces[key][size].main.rows for key in ("yoke", "lower"))
    return yoke[-1].colours == lower[0].colours


@pytest.mark.parametrize("name", ["stripes-meet", "stripes-in-rounds", "colour-blocks"])
def test_the_table_of_ends_adds_up(name: str) -> None:
    found = graded(name)
    labels = found.bodies.labels
    table = next(block for block in document(name).blocks if isinstance(block, Table) and block.caption == "Ends to weave in")
    assert len(table.rows) == len(found.design.pieces)
    for piece, row in zip(found.design.pieces, table.rows, strict=True):
        for index, size in enumerate(labels):
            cells = [0 if cell == "–" else int(at_size(cell.replace("\u00a0", " "), index, len(labels))) for cell in row[1:]]
            ends = ends_by_colour(found.grading.pieces[piece.key][size].strips, piece.colours.carry)
            uncut = piece.key in ("yoke", "lower") and _goes_on(found, size)
            assert cells[-1] == sum(cells[:-1]) == piece.make * sum(ends.values()) - uncut, f"{piece.key} {size}"
            assert uncut or {count for count in ends.values()} <= {cell // piece.make for cell in cells}
