"""What raglans and circular yokes have in common: where they may stand, and how pieces go on from them.

In: the designed pieces and a yoke's plan. Out: located problems, the starts of body and sleeves, their girths.
"""

from collections.abc import Iterator
from typing import get_args

from gaugewright.design.model import YOKES, Design, Piece, Raglan, RoundYoke
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.divide_start import Division, DivideStart, Part
from gaugewright.grading.model import EdgeLength
from gaugewright.grading.plan import PiecePlan, RaglanPlan, RoundYokePlan
from gaugewright.grading.raglan import FEWEST

TURNED = "turned rounds"


def yoke_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Yokes out of place, whatever the size; and pieces that begin from something that isn't divided."""
    for index, section in enumerate(piece.sections):
        if not isinstance(section, YOKES):
            continue
        raglan = isinstance(section, Raglan)
        kind = "raglan" if raglan else "yoke"
        if piece.start.kind != "ring":
            message = f"the {kind} of {piece.key} is worked from the neck down in rounds"
            yield Problem("raglan-not-in-rounds" if raglan else "yoke-not-in-rounds", message, section.origin, "start the piece with a `ring`, the length around the neck")
        if index < len(piece.sections) - 1:
            message = f"{piece.key} has sections after its {kind}, whose last round is divided"
            yield Problem("raglan-not-last" if raglan else "yoke-not-last", message, section.origin, "give what is worked on from it a piece that starts with `divide`")
    yield from _start_faults(piece, design)


def _start_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    if piece.start.kind != "divide":
        return
    (key, name), origin = piece.start.edges[0], piece.start.origin
    if name not in get_args(Part) or not isinstance(design.piece(key).sections[-1], YOKES):
        hint = "write the piece that ends in a raglan or a round_yoke, with .body or .sleeve"
        yield Problem("nothing-to-divide", f"{key}.{name} is no part that a yoke is divided into", origin, hint)
        return
    own, above = (design.fabric(each.fabric).worked == TURNED for each in (piece, design.piece(key)))
    if own != above:
        message = f"{piece.key} is worked in turned rounds, and goes on from a yoke that isn't" if own else f"{piece.key} goes on from a yoke in turned rounds and isn't turned"
        hint = f"give it a fabric worked in {'joined or spiral' if own else 'turned'} rounds, as {key} has"
        yield Problem("yoke-turned-otherwise", message, origin, hint)


def checked(division: Division, section: Raglan | RoundYoke, gauge: Gauge, size: str) -> Division:
    """The division, if the chain under the arm leaves some of the sleeve and of the body; else located problems."""
    problems = []
    for left, girth, share, formula, name in (
        (division.sleeve, division.sleeve_girth, 1, section.sleeve, "each sleeve"),
        (division.back, division.back + division.underarm, 2, section.body, "half the body"),
    ):
        if left < FEWEST:
            message = f"the chain under the arm has {division.underarm} stitches, and {name} only {girth} in all"
            wide = gauge.width_of(share * (division.underarm + FEWEST)) / 10
            key = "sleeve" if share == 1 else "body"
            most = girth - FEWEST
            narrower = f"`underarm` at most {gauge.width_of(most) / 10:.1f} cm, or " if most >= FEWEST else ""
            problems.append(Problem("underarm-too-wide", message, section.underarm.origin, f"make {narrower}`{key}` at least {wide:.1f} cm", size))
    if problems:
        raise ProblemsFound(problems)
    return division


def divide_start(piece: Piece, yoke: PiecePlan) -> DivideStart:
    """How the piece begins from the yoke's plan in the same size: on the side that follows its last round."""
    key, name = piece.start.edges[0]
    section = yoke.sections[-1]
    assert isinstance(section, (RaglanPlan, RoundYokePlan))  # a piece that starts otherwise is a fault of its design
    parts, turned = section.division, yoke.worked == TURNED
    return DivideStart(
        key, "body" if name == "body" else "sleeve", parts.back, parts.sleeve, parts.underarm, turned, "WS" if turned and yoke.rows % 2 else "RS"
    )


def yoke_edges(section: object, gauge: Gauge) -> dict[str, EdgeLength]:
    """The girths that a yoke is divided into, the chain under the arm included."""
    if not isinstance(section, (RaglanPlan, RoundYokePlan)):
        return {}
    return {
        name: EdgeLength(gauge.width_of(girth), 0, girth)
        for name, girth in (("body", section.division.body_girth), ("sleeve", section.division.sleeve_girth))
    }
