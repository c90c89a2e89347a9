"""Colours as told beforehand are the colours of the rows: stripes and bands line by line, blocks stitch by stitch."""

import re
from collections.abc import Iterator

import pytest

from gaugewright.grading.strands import ends_by_colour, segments, strands_of
from gaugewright.instructions.nodes import Heading, Table
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


def rows_in(cell: str) -> range:
    first, _, last = cell.replace("\u00a0", " ").partition(" to ")
    return range(int(first), int(last or first) + 1)


@pytest.mark.parametrize("name", COLOURED)
@pytest.mark.parametrize("ending", ["stripes", "rows of each colour"])
def test_the_table_of_colours_accounts_for_every_row_of_every_size(name: str, ending: str) -> None:
    design, grading = graded(name).design, graded(name).grading
    labels = {yarn.key: yarn.label for yarn in design.yarns}
    for key, table in tables(name, ending):
        assert len({piece.title for piece in design.pieces}) == len(design.pieces)
        sizes = graded(name).bodies.labels
        for index, size in enumerate(sizes):
            plan, strips = grading.plans[key][size], grading.pieces[key][size].strips
            column = 1 if table.header[1] in ("Rows", "Rnds") else 1 + index
            told = {row: line[0] for line in table.rows if line[column] != "–" for row in rows_in(line[column])}
            worked = {number: labels[row.runs[0].colour] for number, row in enumerate((*strips[0].rows, *(strips[1].rows if len(strips) > 1 else ())), start=1)}
            assert {row: colour for row, colour in told.items() if row <= plan.rows} == worked, f"{key} {size}"


@pytest.mark.parametrize("name", COLOURED)
def test_a_stripes_yarn_is_carried_or_cut_as_its_strand_is(name: str) -> None:
    design, grading = graded(name).design, graded(name).grading
    sizes = graded(name).bodies.labels
    for key, table in tables(name, "stripes"):
        carry = design.piece(key).colours.carry
        for line in table.rows:
            spans = [line[1] if table.header[1] in ("Rows", "Rnds") else line[1 + index] for index in range(len(sizes))]
            lasts = {size: rows_in(span)[-1] for size, span in zip(sizes, spans, strict=True) if span != "–"}
            going_on = [size for size, last in lasts.items() if last < grading.plans[key][size].rows]
            fates = re.findall(r"carry|cut", line[-1])
            assert len(fates) in (1, len(going_on)) if going_on else line[-1] == "–", f"{key} {line}"
            for place, size in enumerate(going_on):
                strand = next(one for one in strands_of(grading.pieces[key][size].strips, carry) if lasts[size] in one.rows)
                assert fates[place % len(fates)] == ("cut" if strand.last == lasts[size] else "carry"), f"{key} {size} {line}"


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
            assert cells[-1] == sum(cells[:-1]) == piece.make * sum(ends.values()), f"{piece.key} {size}"
            assert {count for count in ends.values()} <= {cell // piece.make for cell in cells}
