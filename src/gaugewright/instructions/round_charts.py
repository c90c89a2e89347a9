"""The charts of a motif or a disc, for both hands, with what they show in words."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from gaugewright.drawings.round_chart import draw_round_chart, shown
from gaugewright.drawings.round_rows import ChartRound, centre_plan, chart_rounds
from gaugewright.grading.model import CentreStart
from gaugewright.instructions.nodes import Block, Figure, Paragraph, spans_text
from gaugewright.instructions.view import PieceView
from gaugewright.instructions.wording import Book, Spans, spaced

FEWEST = 2
"""A single round needs no chart."""

WAYS = {"joined rounds": "joined", "turned rounds": "turned", "spiral rounds": "spiral"}


def round_charts(book: Book, view: PieceView) -> Iterator[Block]:
    """The chart of the size with the most rounds, for right-handed makers and for left-handed ones."""
    if not has_round_chart(view):
        return
    every = {label: chart_rounds(view.graded[label].main.rows, plan) for label, plan in view.plans.items()}
    drawn = max(every, key=lambda label: len(every[label]))
    rounds = every[drawn]
    for hand in ("right", "left"):
        drawing = draw_round_chart(view.piece.title, rounds, book.terms, hand == "left")
        read = book.front_text(f"round-chart-{WAYS[view.first.worked]}-{hand}", title=view.piece.title, part=_part(book, rounds))
        caption = spans_text(spaced(read, *_sizes(book, every, drawn)))
        yield Figure(drawing, drawing.description, caption, f"{view.piece.key}-rounds-{hand}")


def has_round_chart(view: PieceView) -> bool:
    """Whether a piece begins with plain rounds that widen from a closed centre."""
    plan = centre_plan(view.first)
    if plan is None or plan.rows < FEWEST or not isinstance(view.first.start, CentreStart):
        return False
    return all(row.placed is None for graded in view.graded for row in graded.main.rows[: plan.rows])


def _part(book: Book, rounds: tuple[ChartRound, ...]) -> Spans:
    """Which of the rounds are drawn."""
    drawn, every = shown(rounds), len(rounds)
    part = book.part("round-chart-all") if drawn.rounds == every else book.part("round-chart-first", last=drawn.rounds, rounds=every)
    if drawn.one_side:
        part = book.part("round-chart-side", some=part, sides=len(rounds[0].corners))
    return part if drawn.rounds == every else book.part("round-chart-others", part=part)


def _sizes(book: Book, every: dict[str, tuple[ChartRound, ...]], drawn: str) -> list[Spans]:
    """Where sizes have other rounds: each ends sooner, or has a last one of its own."""
    rounds = every[drawn]
    others = [one for one in every.values() if one != rounds]
    if not others:
        return []
    same = all(one == rounds[: len(one)] for one in others)
    return [book.front_text("round-chart-sooner" if same else "round-chart-size", size=drawn)]



def charted(words: Iterable[Block], charts: Iterable[Block]) -> Iterator[Block]:
    """The charts after the words they belong to, the last of which is kept with them."""
    told, drawn = list(words), list(charts)
    if drawn and told and isinstance(told[-1], Paragraph):
        told[-1] = replace(told[-1], keep=True)
    yield from (*told, *drawn)
