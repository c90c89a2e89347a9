"""Notes: what holds for the whole pattern, told once, and only where it applies."""

from collections.abc import Iterator

from gaugewright.design.model import Crown, Design, Neck, NeckEdge, RaglanEdge
from gaugewright.grading.plan import MotifPlan, RaglanPlan, RoundYokePlan, SectionPlan, SpreadPlan, TaperPlan
from gaugewright.instructions.pattern_chapter import opens_counted
from gaugewright.instructions.nodes import Block, Heading, Paragraph, plain
from gaugewright.instructions.pattern_steps import has_plain_rows
from gaugewright.instructions.shape_words import edges_of
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book
from gaugewright.trade.foundation import CENTRE_CHAINS


def notes_page(book: Book, design: Design, views: tuple[PieceView, ...]) -> Iterator[Block]:
    """The chapter on notes."""
    yield Heading(2, book.front["notes-heading"])
    yield Paragraph(book.front_text("note-terms", terms=book.terms.upper()), "bullet")
    for note in design.about.notes:
        yield Paragraph(plain(note), "bullet")
    for kind in _kinds(design, views):
        yield Paragraph(book.front_text(kind, slst=book.abbr("sl st"), chains=CENTRE_CHAINS, row="row or rnd" if any(v.in_rounds for v in views) else "row", stitch=_counted(book, views), gauge=book.word("gauge")), "bullet")


def _counted(book: Book, views: tuple[PieceView, ...]) -> str:
    names = [book.abbr(s.cloth.stitch) for v in views for s in v.first.sections if s.cloth.counts]
    return " or ".join(dict.fromkeys(names))


def _kinds(design: Design, views: tuple[PieceView, ...]) -> Iterator[str]:
    sections = [section for view in views for section in view.first.sections]
    chained = [s for view in views if view.first.worked != "spiral rounds" for s in view.first.sections]
    in_rows = [s for view in views if not view.in_rounds for s in view.first.sections]
    if any(not s.cloth.counts and s.cloth.chains for s in chained):
        yield "note-counts-not-but" if any(s.cloth.pattern and opens_counted(s.cloth.pattern) for s in in_rows) else "note-counts-not"
    if any(s.cloth.counts for s in chained):
        yield "note-counts"
    if any(not isinstance(section, MotifPlan) for section in sections):
        yield "note-fasten-off"
    plain_in = {v.in_rounds for v in views for index, s in enumerate(v.first.sections) if not isinstance(s, MotifPlan) and has_plain_rows(v, index)}
    if plain_in:
        yield "note-work-even" + ("-both" if len(plain_in) > 1 else "-rnds" if True in plain_in else "")
    if any(isinstance(s, TaperPlan) for s in sections):
        yield "note-every"
    if any(isinstance(s, (RoundYokePlan, SpreadPlan)) for s in sections):
        yield "note-stars"
    yield from _habits(design, sections)
    if any(view.piece.start.kind in ("centre", "middle") for view in views):
        yield "note-centre"
    if any(isinstance(section, Crown) for view in views for section in view.piece.sections):
        yield "note-crown"
    worked = {view.first.worked for view in views}
    for loop in ("back", "front"):
        if any(s.cloth.loop == loop for s in sections):
            yield f"note-{loop}-loop"
    turned = [isinstance(view.first.sections[0], MotifPlan) for view in views if view.first.worked == "turned rounds"]
    if not all(turned):
        yield "note-round-join"
    if any(turned):
        yield "note-round-join-motif"
    if "joined rounds" in worked:
        yield "note-round-join-flat"
    if any(len(plan.bands) > 1 for view in views for plan in view.plans):
        blocks = any(block.several for view in views for block in view.first.blocks)
        yield "note-colour-blocks" if blocks else "note-colour-carried" if any(view.piece.colours.carry for view in views) else "note-colour"
        if worked & {"joined rounds", "turned rounds"}:
            yield "note-colour-rounds"
    if any(view.piece.edges for view in views):
        yield "note-edges"
    yield "note-check" if design.seams else "note-check-alone"
    if any(not view.in_rounds for view in views):
        yield "note-markers"
    if design.seams:
        yield "note-take-up"


def _habits(design: Design, sections: list[SectionPlan]) -> Iterator[str]:
    """Habits of placing remainders other than the engine's own, where something is worked by them."""
    habits = design.conventions
    necks = [s for piece in design.pieces for s in piece.sections if isinstance(s, (Neck, NeckEdge)) and s.shape == "v"]
    tapers = [s for s in sections if isinstance(s, TaperPlan)]
    raglans = any(isinstance(s, RaglanEdge) for piece in design.pieces for s in piece.sections) or any(isinstance(s, RaglanPlan) for s in sections)
    if habits.schedules != "straightest" and (tapers or necks or raglans):
        yield f"note-{habits.schedules.replace(' ', '-')}"
    if habits.spreading != "shared out" and any(isinstance(s, (RoundYokePlan, SpreadPlan)) for s in sections):
        yield f"note-{habits.spreading.replace(' ', '-')}"
    sloped = [s for s in sections if any(part.name == "shoulder" for parts in edges_of(s) for part in parts)]
    if habits.shoulder_steps != "larger at the neck" and sloped:
        yield f"note-{habits.shoulder_steps.replace(' ', '-')}"
    if habits.taper_ends != "as they fall" and any(s.edges in ("both", "pairs") for s in tapers):
        yield f"note-{habits.taper_ends.replace(' ', '-')}"
