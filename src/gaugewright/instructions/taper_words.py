"""Tapers in words: what a shaping row is, on which rows it falls, and a table row by row."""

from collections.abc import Iterator

from gaugewright.design.slits import slit_edges
from gaugewright.grading.plan import TaperPlan
from gaugewright.grading.schedule import Schedule
from gaugewright.grading.slits import works_back
from gaugewright.instructions.align import grouped
from gaugewright.instructions.nodes import Align, Block, Paragraph, Table, spans_text
from gaugewright.instructions.steps import count_end, edge_name_at, spoken, step, to_row
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans, Times
from gaugewright.sized import Sized


def taper_blocks(book: Book, view: PieceView, index: int, colours: list[Spans]) -> Iterator[Block]:
    """The shaping row, the colours that change on its way, the schedule, and the table of its rows."""
    plans: Sized[TaperPlan] = view.plans.map(lambda plan: plan.sections[index])  # type: ignore[arg-type,return-value]
    first, last = view.section_first_rows(index), view.section_last_rows(index)
    if not any(plan.steps for plan in plans):
        # The target is the width it has already, in every size printed: there is no shaping to tell.
        if colours:
            yield step("Colour:", *colours)
        count = count_end(book, f"{view.piece.key}.taper", view.stitches(last))
        yield step(to_row(book, view, last), *_phrases(book, view, plans, last, ""), count=count)
        return
    name = ("Inc" if plans.values[0].sign > 0 else "Dec") + (" rnd" if view.in_rounds else " row")
    yield step(f"{name}:", *_shaping_row(book, view, plans, first))
    if colours:
        yield step("Colour:", *colours)
    alike = len(grouped(plans.map(lambda plan: _shape(plan.schedule)))) == 1
    shaping = name.split()[0].lower()
    yield _schedule(book, view, plans, last, shaping, alike)
    yield _table(book, view, plans, first, name, alike)


def _shaping_row(book: Book, view: PieceView, plans: Sized[TaperPlan], first: Sized[int]) -> list[Spans]:
    plan = plans.values[0]
    if plan.in_one and any(step > 1 for p in plans for step in p.steps):
        return _in_one(book, view, plans, first)
    way = "increase" if plan.sign > 0 else "decrease"
    stitch = book.abbr(plan.cloth.stitch)
    if plan.edges == "sides":
        half, row = Sized(plans.labels, tuple(_first_half(view, p, first[label]) for label, p in plans.items())), first.map(lambda number: number - 1)
        before = book.sentence("taper-sides-marker", view.piece.key, half=half, Row=book.row_word(True), row=row)
        slits = slit_edges(view.piece.sections) if view.first.worked != "turned rounds" else ()
        lean = [book.sentence("taper-sides-wander", edge=spoken(slits[0]), slst=book.abbr("sl st"))] if slits else []
        sentences = [*lean, before, book.sentence(f"taper-sides-{way}", view.piece.key, stitch=stitch)]
    elif plan.edges == "pairs":
        kind = "spiral" if view.first.worked == "spiral rounds" else "round"
        sentences = [book.sentence(f"taper-{kind}-{way}", view.piece.key, stitch=stitch)]
    else:
        inset = "-inset" if plan.cloth.counts else ""
        place = "both" if plan.edges == "both" else "one"
        edge = "" if place == "both" else spoken(edge_name_at(view, plan.edges, first.values[0]))
        sentences = [book.sentence(f"taper-row-{place}-{way}{inset}", view.piece.key, stitch=stitch, edge=edge)]
    if any(step > 1 for p in plans for step in p.steps):
        sentences.append(book.sentence("taper-several"))
    return sentences


def _in_one(book: Book, view: PieceView, plans: Sized[TaperPlan], first: Sized[int]) -> list[Spans]:
    """Several increases in the edge stitch: how many sts go into it, the same on every row or by the table."""
    plan, steps = plans.values[0], {step for p in plans for step in p.steps}
    stitch, place = book.abbr(plan.cloth.stitch), "both" if plan.edges == "both" else "one"
    edge = "" if place == "both" else spoken(edge_name_at(view, plan.edges, first.values[0]))
    inset = "-inset" if plan.cloth.counts else ""
    found = [book.sentence(f"taper-in-one-{place}{inset}", view.piece.key, n=min(steps) + 1, stitch=stitch, edge=edge)]
    return found + ([book.sentence("taper-in-one-table")] if len(steps) > 1 else [])


def _first_half(view: PieceView, plan: TaperPlan, row: int) -> int:
    """Stitches up to the marker at the other side, in the order in which the section's first round is worked."""
    return plan.stitches - plan.half if works_back(view.first.worked, row) else plan.half


def _schedule(book: Book, view: PieceView, plans: Sized[TaperPlan], last: Sized[int], shaping: str, alike: bool) -> Paragraph:
    """The schedule in a sentence where one serves all sizes; otherwise the table tells each size its own."""
    if alike:
        phrases = _phrases(book, view, plans, last, shaping)
    else:
        row, rows = row_words(book, view)
        after = {plan.schedule.even > 0 for plan in plans}
        kind = "taper-by-table-mixed" if len(after) > 1 else "taper-by-table" if after == {True} else "taper-by-table-between"
        phrases = [book.sentence(kind, shaping=shaping, row=row, rows=rows)]
    ending = book.sentence(
        "taper-end-round" if view.in_rounds else "taper-end", view.piece.key,
        length=view.height(last), width=view.width(last), bottom=spoken(view.piece.bottom),
    )
    return step(to_row(book, view, last), *phrases, ending, count=count_end(book, f"{view.piece.key}.taper", view.stitches(last)))


def _shape(schedule: Schedule) -> tuple[object, ...]:
    """What must be alike for two sizes to share a sentence."""
    blocks = tuple((*(gap == 1 for gap in block.gaps), block.times == 1) for block in schedule.blocks)
    return (*blocks, schedule.even > 0)


def _phrases(book: Book, view: PieceView, plans: Sized[TaperPlan], last: Sized[int], shaping: str) -> list[Spans]:
    schedules = plans.map(lambda plan: plan.schedule)
    row, rows = row_words(book, view)
    fact = f"{view.piece.key}.schedule"
    blocks = len(schedules.values[0].blocks)
    if not blocks:
        kind = "work-even-rounds" if view.in_rounds else "work-even"
        return [book.sentence(kind, fact, length=view.height(last), bottom=spoken(view.piece.bottom))]
    rates = [_rate(book, view, schedules, index, fact) for index in range(blocks)]
    if blocks == 1:
        found = [book.sentence("taper-schedule", fact, shaping=shaping, row=row, first=rates[0])]
    elif blocks == 2:
        found = [book.sentence("taper-schedule-then", fact, shaping=shaping, row=row, first=rates[0], second=rates[1])]
    else:
        raise TypeError(f"no sentence for a schedule of {blocks} blocks")
    if schedules.values[0].even:
        found.append(book.sentence("taper-even-after", fact, rows=rows, Row=book.row_word(view.in_rounds), last=last))
    return found


def row_words(book: Book, view: PieceView) -> tuple[str, str]:
    """ "row" and "rows", or "rnd" and "rnds"."""
    return ("rnd", book.words["rounds"]) if view.in_rounds else ("row", book.words["rows"])


def _rate(book: Book, view: PieceView, schedules: Sized[Schedule], index: int, fact: str) -> Spans:
    """One block of a schedule: how often, after how many rows. All sizes have the same shape here."""
    row, rows = row_words(book, view)
    block = schedules.values[0].blocks[index]
    times = schedules.map(lambda s: s.blocks[index].times)
    gaps = [schedules.map(lambda s, which=which: s.blocks[index].gaps[which]) for which in range(len(block.gaps))]  # type: ignore[misc]
    fact = f"{fact}.{index}"
    if len(gaps) == 2:
        even, even2 = (gap.map(lambda g: g - 1) for gap in gaps)
        if not even.values[0]:
            return book.part("rate-turns-next", fact, row=row, even2=even2, rows=_one_or_many(even2, row, rows), times=Times(times))
        if not even2.values[0]:
            return book.part("rate-turns-last", fact, row=row, even=even, rows=_one_or_many(even, row, rows), times=Times(times))
        return book.part("rate-turns", fact, even=even, even2=even2, rows=rows, times=Times(times))
    if block.gaps == (1,):
        return book.part("rate-next", fact, row=row) if block.times == 1 else book.part("rate-each-next", fact, times=times, rows=rows)
    if block.times == 1:
        even = gaps[0].map(lambda gap: gap - 1)
        return book.part("rate-once" if index else "rate-once-first", fact, even=even, rows=_one_or_many(even, row, rows))
    return book.part("rate-every", fact, gap=gaps[0], rows=rows, times=Times(times))


def _one_or_many(number: Sized[int], one: str, many: str) -> str:
    return one if number.agree and number.values[0] == 1 else many


def _table(book: Book, view: PieceView, plans: Sized[TaperPlan], first: Sized[int], name: str, alike: bool) -> Table:
    """On which rows each size changes, what it has after them, and how they follow where sizes differ in that."""
    steps_found = {step for plan in plans for step in plan.steps}
    several = len(steps_found) > 1 if plans.values[0].in_one else max(steps_found, default=1) > 1
    rows = []
    for label, plan in plans.items():
        numbers = [first[label] - 1 + row for row in plan.shaping_rows()]
        how = [] if alike else [how_often(book, view, plan.schedule)]
        steps = [", ".join(str(step) for step in plan.steps) or book.words["no-value"]] if several else []
        falls = ", ".join(str(n) for n in numbers) or book.words["no-value"]
        rows.append((label, *how, falls, *steps, str(plan.stitches), str(plan.end)))
    words = book.words
    header = [words["size"], *([] if alike else [words["how"].format(name=name)]), words["falls-on"].format(name=name, Row=book.row_word(view.in_rounds))]
    header += [words["at-the-edge"]] if several else []
    title = words["taper-table"].format(title=view.piece.title, name=name.lower())
    left: list[Align] = ["left"] * len(header)
    return Table(title, (*header, words["before"], words["after"]), tuple(rows), (*left, "right", "right"))


def how_often(book: Book, view: PieceView, schedule: Schedule) -> str:
    """One size's schedule, for its line of a table."""
    alone = Sized(("",), (schedule,))
    rates = [_rate(book, view, alone, index, "") for index in range(len(schedule.blocks))]
    return f", {book.words['then']} ".join(spans_text(rate) for rate in rates) or book.words["no-value"]
