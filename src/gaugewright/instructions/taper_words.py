"""Tapers in words: what a shaping row is, on which rows it falls, and a table row by row."""

from collections.abc import Iterator

from gaugewright.grading.plan import TaperPlan
from gaugewright.grading.schedule import Schedule
from gaugewright.instructions.align import grouped
from gaugewright.instructions.nodes import Block, Paragraph, Table
from gaugewright.instructions.steps import count_end, edge_name_at, only, spoken, step, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Slot, Spans, Times, spaced
from gaugewright.sized import Sized


def taper_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """The shaping row, the colours that change on its way, the schedule, and the table of its rows."""
    plans: Sized[TaperPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first, last = view.section_first_rows(index), view.section_last_rows(index)
    name = ("Inc" if plans.values[0].sign > 0 else "Dec") + (" rnd" if view.in_rounds else " row")
    yield step(f"{name}:", *_shaping_row(book, view, plans, first))
    if colours:
        yield step("Colour:", *colours)
    yield from _schedule(book, view, plans, last, name.split()[0].lower())
    yield _table(book, view, plans, first, name)


def _shaping_row(book: Book, view: PieceView, plans: Sized[TaperPlan], first: Sized[int]) -> list[Spans]:
    plan = plans.values[0]
    way = "increase" if plan.sign > 0 else "decrease"
    stitch = book.abbr(plan.cloth.stitch)
    if plan.edges == "pairs":
        sentences = [book.sentence(f"taper-round-{way}", view.piece.key, stitch=stitch)]
    else:
        inset = "-inset" if plan.cloth.counts else ""
        place = "both" if plan.edges == "both" else "one"
        edge = "" if place == "both" else spoken(edge_name_at(view, plan.edges, first.values[0]))
        sentences = [book.sentence(f"taper-row-{place}-{way}{inset}", view.piece.key, stitch=stitch, edge=edge)]
    if any(step > 1 for p in plans for step in p.steps):
        sentences.append(book.sentence("taper-several"))
    return sentences


def _schedule(book: Book, view: PieceView, plans: Sized[TaperPlan], last: Sized[int], shaping: str) -> Iterator[Paragraph]:
    """One step for each structure of schedule; sizes that share one share the step."""
    groups = grouped(plans.map(lambda plan: _shape(plan.schedule)))
    for shape, sizes in groups:
        prefix = only(book, sizes) if len(groups) > 1 else ()
        rows = last.pick(sizes)
        phrases = _phrases(book, view, shape, plans.pick(sizes), rows, shaping)
        ending = book.sentence("taper-end", view.piece.key, length=view.height(rows), bottom=spoken(view.piece.bottom))
        count = count_end(book, f"{view.piece.key}.taper", view.stitches(rows))
        yield step(to_row(book, view, rows), prefix, *phrases, ending, count=count)


def _shape(schedule: Schedule) -> tuple[object, ...]:
    """What must be alike for two sizes to share a sentence."""
    blocks = tuple((len(block.gaps), block.gaps == (1,), block.times == 1) for block in schedule.blocks)
    return (*blocks, schedule.even > 0)


def _phrases(book: Book, view: PieceView, shape: object, plans: Sized[TaperPlan], last: Sized[int], shaping: str) -> list[Spans]:
    schedules = plans.map(lambda plan: plan.schedule)
    Row, row, rows = book.row_word(view.in_rounds), "rnd" if view.in_rounds else "row", book.words["rounds" if view.in_rounds else "rows"]
    fact = f"{view.piece.key}.schedule"
    blocks = schedules.values[0].blocks
    if not blocks:
        return [book.sentence("work-even-rounds" if view.in_rounds else "work-even", fact, length=view.height(last), bottom=spoken(view.piece.bottom))]

    def gap(block: int, which: int = 0) -> Sized[int]:
        return schedules.map(lambda s: s.blocks[block].gaps[which])

    def times(block: int) -> Times:
        return Times(schedules.map(lambda s: s.blocks[block].times))

    slots: dict[str, Slot] = {"shaping": shaping, "row": row, "Row": Row, "rows": rows, "gap": gap(0), "times": times(0)}
    lengths = tuple(len(block.gaps) for block in blocks)
    if lengths == (1,):
        kind = "taper-every-row" if blocks[0].gaps == (1,) else "taper-one-rate"
    elif lengths == (2,):
        kind, slots = "taper-turns", slots | {"gap2": gap(0, 1)}
    elif lengths == (1, 1):
        kind, slots = "taper-two-rates", slots | {"gap2": gap(1), "times2": times(1)}
    elif lengths == (2, 1):
        kind, slots = "taper-turns-then", slots | {"gap2": gap(0, 1), "gap3": gap(1), "times3": times(1)}
    elif lengths == (1, 2):
        kind, slots = "taper-then-turns", slots | {"gap2": gap(1, 0), "gap3": gap(1, 1), "times2": times(1)}
    else:
        raise TypeError(f"no sentence for a schedule of the shape {shape!r}")
    found = [book.sentence(kind, fact, **slots)]
    if schedules.values[0].even:
        found.append(book.sentence("taper-even-after", fact, rows=rows, Row=Row, last=last))
    return found


def _table(book: Book, view: PieceView, plans: Sized[TaperPlan], first: Sized[int], name: str) -> Table:
    """On which rows each size changes, and what it has after each of them."""
    several = any(step > 1 for plan in plans for step in plan.steps)
    rows = []
    for label, plan in plans.items():
        numbers = [first[label] - 1 + row for row in plan.shaping_rows()]
        cells = [label, ", ".join(str(n) for n in numbers) or book.words["no-value"]]
        if several:
            cells.append(", ".join(str(step) for step in plan.steps) or book.words["no-value"])
        rows.append((*cells, str(plan.stitches), str(plan.end)))
    Row = book.row_word(view.in_rounds)
    header = ["Size", f"{name}s fall on {Row}", *(["at the edge"] if several else []), "sts before", "sts after"]
    title = f"{view.piece.title}: where the {name.lower()}s fall"
    return Table(title, tuple(header), tuple(rows), ("left", *("left" for _ in header[1:-2]), "right", "right"))
