"""Blocks of colour in words: how their yarns cross, the stitches of each, and the yarn to wind off for each."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gaugewright.grading.blocks import lines_of
from gaugewright.grading.plan import BlockPlan
from gaugewright.instructions.nodes import Block, Paragraph, Span, Table, measure_columns
from gaugewright.instructions.steps import step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans, counts_text
from gaugewright.rounding import up
from gaugewright.sized import Sized
from gaugewright.yarn.blocks import BlockAmount


@dataclass(frozen=True, slots=True)
class NumberedBlock:
    """A block with its number on the drawing, the stitches it is counted with and what it takes, for all sizes."""

    number: int
    colour: str
    stitches: Sized[int]
    amounts: Sized[BlockAmount]


def block_steps(book: Book, view: PieceView, names: Mapping[str, str]) -> Iterator[Block]:
    """How blocks are worked, those of each stretch of rows, and a table of what to wind off."""
    numbered = _numbered(view)
    wound = all(amount.grams is not None for group in numbered for block in group for amount in block.amounts)
    yield step("Blocks:", *_how(book, view, wound))
    for plans, blocks in zip(_by_rows(view), numbered, strict=True):
        yield _rows_of_blocks(book, view, plans, blocks, names)
    if wound:
        yield _table(book, view, [block for group in numbered for block in group], names)


def _by_rows(view: PieceView) -> list[Sized[BlockPlan]]:
    """The stretches of rows with the same blocks, each for all sizes."""
    return [view.plans.map(lambda plan, index=index: plan.blocks[index]) for index in range(len(view.first.blocks))]  # type: ignore[misc]


def _numbered(view: PieceView) -> list[list[NumberedBlock]]:
    """The blocks of each stretch that has several, numbered through; none of those in one yarn."""
    found: list[list[NumberedBlock]] = []
    number = several = 0
    for plans in _by_rows(view):
        group = []
        if plans.values[0].several:
            for index, (colour, _) in enumerate(plans.values[0].blocks):
                number += 1
                amounts = view.winding.map(lambda parts, at=several, index=index: parts[at][index])  # type: ignore[misc]
                group.append(NumberedBlock(number, colour, plans.map(lambda plan, index=index: plan.blocks[index][1]), amounts))  # type: ignore[misc]
            several += 1
        found.append(group)
    return found


def _how(book: Book, view: PieceView, wound: bool) -> list[Spans]:
    sentences = [book.sentence("blocks-wind" if wound else "blocks-own-yarn"), book.sentence("blocks-cross")]
    if view.in_rounds:
        sentences.append(book.sentence("blocks-cross-join"))
    if not view.paired and any(_lopsided(blocks) for plan in view.plans for blocks in plan.blocks):
        sentences.append(book.sentence("blocks-hands"))
    return sentences


def _lopsided(blocks: BlockPlan) -> bool:
    """Whether blocks read otherwise from the other edge: then it shows with which hand they were worked."""
    colours = [colour for colour, _ in blocks.blocks]
    return colours != colours[::-1] or any(abs(one - other) > 1 for (_, one), (_, other) in zip(blocks.blocks, reversed(blocks.blocks), strict=True))


def _rows_of_blocks(book: Book, view: PieceView, plans: Sized[BlockPlan], blocks: list[NumberedBlock], names: Mapping[str, str]) -> Paragraph:
    first, last = plans.map(lambda plan: plan.first), plans.map(lambda plan: plan.last)
    one = first.values == last.values
    label = book.words["colours-of-row" if one else "colours-of-rows"].format(
        Row=book.row_word(view.in_rounds), first=counts_text(first, book.labels), last=counts_text(last, book.labels),
    )
    fact = f"{view.piece.key}.blocks.{plans.values[0].first}"
    if not blocks:
        return step(label, book.sentence("blocks-one", fact, colour=names[plans.values[0].blocks[0][0]]))
    told = book.sentence("blocks-rounds" if view.in_rounds else "blocks-rows", fact, blocks=_told(book, fact, blocks, names))
    return step(label, told, *_shaped(book, view, plans, fact))


def _told(book: Book, fact: str, blocks: Sequence[NumberedBlock], names: Mapping[str, str]) -> Spans:
    """ "8 sts with Oat (block 1), 6 (9, 13) sts with Kelp (block 2)"."""
    spans: list[Span] = []
    for block in blocks:
        kind = "block-one" if block.stitches.agree and block.stitches.values[0] == 1 else "block"
        spans += [Span(", ")] if spans else []
        spans += book.part(kind, f"{fact}.{block.number}", stitches=block.stitches, colour=names[block.colour], number=block.number)
    return tuple(spans)


def _shaped(book: Book, view: PieceView, plans: Sized[BlockPlan], fact: str) -> list[Spans]:
    """What shaping at the edges makes of the outer blocks."""
    ends = Sized(plans.labels, tuple(_outer(view, label, plan) for label, plan in plans.items()))
    begun = plans.map(lambda plan: (plan.blocks[0][1], plan.blocks[-1][1]))
    if ends.values == begun.values:
        return []
    found = [book.sentence(
        "blocks-outer", fact, Row=book.row_word(view.in_rounds), first=plans.map(lambda plan: plan.first),
        last=plans.map(lambda plan: plan.last), a=ends.map(lambda pair: pair[0]), b=ends.map(lambda pair: pair[1]),
    )]
    return [*found, book.sentence("blocks-inner")] if len(plans.values[0].blocks) > 2 else found


def _outer(view: PieceView, label: str, plan: BlockPlan) -> tuple[int, int]:
    """Stitches of the first and the last block after their last row."""
    rows = view.graded[label].main.rows
    *_, (number, lines) = lines_of(plan, rows)
    return lines[0], rows[number - 1].makes - lines[-1]


def _table(book: Book, view: PieceView, blocks: Sequence[NumberedBlock], names: Mapping[str, str]) -> Table:
    """Grams and metres to wind off, both rounded up: a length wound off must not run out."""
    rows = tuple((f"{block.number} {names[block.colour]}", *(_wound(amount) for amount in block.amounts)) for block in blocks)
    same = all(len(set(row[1:])) == 1 for row in rows)
    header = (book.words["block-head"], *((book.words["block-yarn"],) if same else book.labels))
    return Table(
        book.words["block-table"].format(title=view.piece.title), header, tuple(row[: len(header)] for row in rows),
        measure_columns(len(header) - 1), note=book.words["block-note"],
    )


def _wound(amount: BlockAmount) -> str:
    assert amount.grams is not None  # without a weighed swatch there is no table
    grams = f"{up(amount.grams)}\u00a0g"
    return grams if amount.metres is None else f"{grams}, {up(amount.metres)}\u00a0m"
