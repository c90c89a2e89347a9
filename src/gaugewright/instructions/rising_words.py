"""A row of rising stitches in words: its groups from the armhole edge to the neck edge, for each size."""

from collections.abc import Iterator

from gaugewright.grading.plan import DividedPlan, ProfilePlan, Rise, ShouldersPlan
from gaugewright.instructions.nodes import Align, Block, Table
from gaugewright.instructions.steps import count_end, step
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import NO_BREAK, Book, Mm, counts_text
from gaugewright.sized import Sized
from gaugewright.trade.stitches import stitch, stitch_names

Sloped = ShouldersPlan | DividedPlan | ProfilePlan


def rising_blocks(book: Book, view: PieceView, plans: Sized[Sloped], row: Sized[int], title: str) -> Iterator[Block]:
    """The row and its table; `title` names the piece, or its side."""
    used = stitches_used(plans)
    fact, cloth = f"{view.piece.key}.rise", plans.values[0].cloth
    fabric = view.fabrics[cloth.fabric]
    depth = Mm(plans.map(lambda plan: fabric.flat.height_of(plan.rising[-1].height)), "flat" if fabric.lying else "")
    kind = "rise-top" if isinstance(plans.values[0], ShouldersPlan) else "rise"
    yield step(
        f"{book.row_word(False)}{NO_BREAK}{counts_text(row, book.labels)}:", book.sentence(
            "rise-slope", fact, depth=depth, loop=book.part(f"loop-{cloth.loop}"),
        ),
        book.sentence(
            kind, fact,
            neck=plans.map(lambda plan: plan.neck if isinstance(plan, ShouldersPlan) else 0),
            chains=plans.map(lambda plan: stitch(plan.rising[-1].stitch).chains),
        ),
        count=count_end(book, fact, plans.map(lambda plan: _stitches(plan))),
    )
    yield rising_table(book, plans, used, title)


def _stitches(plan: Sloped) -> int:
    return plan.side_end if isinstance(plan, DividedPlan) else plan.end


def stitches_used(plans: Sized[Sloped]) -> tuple[str, ...]:
    """The stitches that some size's slope has, the lowest first."""
    found = {each.stitch for plan in plans for each in plan.rising}
    return tuple(name for name in stitch_names() if name in found)


def rising_table(book: Book, plans: Sized[Sloped], used: tuple[str, ...], title: str) -> Table:
    """How many of each stitch, in order from the armhole edge."""
    right: Align = "right"
    rows = tuple((label, *(_count(book, plan.rising, name) for name in used)) for label, plan in plans.items())
    header = (book.words["size"], *(book.abbr(name) for name in used))
    return Table(book.words["rise-table"].format(title=title), header, rows, ("left", *(right for _ in used)))


def _count(book: Book, groups: tuple[Rise, ...], name: str) -> str:
    return next((str(each.stitches) for each in groups if each.stitch == name), book.words["no-value"])
