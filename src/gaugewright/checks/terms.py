"""Which pieces a finished measurement is made of, and how near to its wanted length it can be."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import lcm

from gaugewright.checks.model import Subject
from gaugewright.checks.wording import cm
from gaugewright.design.model import Crown, Design, Fabric, Formula, Piece, Taper
from gaugewright.design.rims import on_rim
from gaugewright.formulas.nodes import Binary, Call, Name, Negative, Node, Number
from gaugewright.gauge.counts import CountImpossible, CountRule, spacing
from gaugewright.grading.model import GradedPiece
from gaugewright.grading.plan import ProfilePlan, TaperPlan
from gaugewright.sizing.environment import named_formulas
from gaugewright.tolerances import bust_tolerance, total_tolerance, width_tolerance

SHAPED = ("top_width", "widest", "narrowest")


@dataclass(frozen=True, slots=True)
class Term:
    """`factor` times a measure or an edge of a piece."""

    piece: str
    name: str
    is_edge: bool
    factor: float


@dataclass(frozen=True, slots=True)
class Allowance:
    """How far a measurement may be from the wanted one, and the rule in words."""

    mm: float
    words: str


def terms_of(formula: Formula, design: Design) -> tuple[Term, ...]:
    """The measures and edges a formula adds up, named lengths followed to what they hold."""
    return _terms(formula.node, named_formulas(design), 1.0)


def _terms(node: Node, named: Mapping[str, Formula], factor: float) -> tuple[Term, ...]:
    match node:
        case Name(name=name):
            return _terms(named[name].node, named, factor) if name in named else ()
        case Negative(operand=operand):
            return _terms(operand, named, -factor)
        case Binary(operator=operator, left=left, right=right) if operator in "+-":
            return (*_terms(left, named, factor), *_terms(right, named, factor if operator == "+" else -factor))
        case Binary(operator=operator, left=left, right=right):
            first, second = _number(left), _number(right)
            inner = _terms(right, named, factor * (first or 1.0)) if operator == "*" else ()
            return (*_terms(left, named, _scaled(factor, operator, second)), *inner)
        case Call(function="finished" | "edge" as kind, arguments=(Name(name=name),)):
            piece, _, measure = name.partition(".")
            return (Term(piece, measure, kind == "edge", factor),)
        case Call(function="min" | "max", arguments=arguments):
            return tuple(term for argument in arguments for term in _terms(argument, named, factor))
    return ()


def _scaled(factor: float, operator: str, by: float | None) -> float:
    return factor if not by else factor * by if operator == "*" else factor / by


def _number(node: Node) -> float | None:
    """The value of a plain number, or of a sum of plain numbers; None for what holds lengths."""
    match node:
        case Number(quantity=quantity):
            return quantity.amount if quantity.dimension == "number" else None
        case Negative(operand=operand):
            value = _number(operand)
            return None if value is None else -value
        case Binary(operator=operator, left=left, right=right):
            first, second = _number(left), _number(right)
            if first is None or second is None or (operator == "/" and not second):
                return None
            return {"+": first + second, "-": first - second, "*": first * second, "/": first / (second or 1.0)}[operator]
    return None


def allowance(formula: Formula, subject: Subject, size: str) -> Allowance:
    """Half a row along the rows; half a step across them, one step where several pieces add up.

    A step is one stitch, or the gap of a stitch repeat or parity where one is in force. Where a
    measurement goes both along and across, the larger holds: the piece graded last takes up the rest.
    """
    along, across, widest_step, words = 0.0, 0.0, 0.0, "one stitch"
    for term in terms_of(formula, subject.design):
        piece = subject.design.piece(term.piece)
        joined = subject.design.piece(piece.start.edges[0][0]) if on_rim(piece, subject.design) else piece
        if term.name in GRID_STEPS and joined.grid is not None:
            step, words = GRID_STEPS[term.name](subject.grading.pieces[joined.key][size]), "one motif"
            across, widest_step = across + abs(term.factor) * step / 2, max(widest_step, step)
        elif runs_along(term, subject, size):
            heights = [subject.design.fabric(key).gauge.row_height for key in fabrics_of(piece)]
            along = max(along, total_tolerance(max(heights)) * _of_a_row(term, piece))
        else:
            fabric = _fabric_of(term, piece, subject.design)
            stitches, share = _step(term, piece, fabric, subject, size)
            across += abs(term.factor) * width_tolerance(fabric.gauge.stitch_width, stitches) * 2 * share
            step = bust_tolerance(fabric.gauge.stitch_width) * stitches
            if step > widest_step:
                widest_step, words = step, "one stitch" if stitches == 1 else f"a step of {stitches} stitches"
    if along >= min(across, widest_step):
        return Allowance(along, f"half a row, {cm(along)}")
    if across < widest_step:
        return Allowance(across, f"{across / widest_step:.2g} of {words}, {cm(across)}")
    return Allowance(widest_step, f"{words}, {cm(widest_step)}")


GRID_STEPS: dict[str, Callable[[GradedPiece], float]] = {
    "joined_width": lambda piece: piece.layout.width if piece.layout else 0.0,
    "joined_length": lambda piece: piece.layout.rise if piece.layout else 0.0,
}
"""By how much a motif more widens or lengthens what motifs are joined to."""


def _of_a_row(term: Term, piece: Piece) -> float:
    """How far a row takes a measure, in row heights: in a triangle further, along its spine or both ways along its long edge."""
    if piece.start.kind != "middle":
        return 1.0
    return abs(term.factor) * 2**0.5 * (1 if term.name in ("length", "longest", "starting", "far") else 2)


def runs_along(term: Term, subject: Subject, size: str) -> bool:
    """Whether a term is measured in rows rather than in stitches."""
    if subject.design.piece(term.piece).start.kind == "middle":
        return True
    if not term.is_edge:
        return term.name in ("length", "longest")
    edge = subject.grading.pieces[term.piece][size].edges.get(term.name)
    return edge is not None and edge.rows > 0


def fabrics_of(piece: Piece) -> tuple[str, ...]:
    """The fabrics of a piece's sections, each once."""
    return tuple(dict.fromkeys(section.fabric for section in piece.sections))


def _place(term: Term, piece: Piece) -> str:
    """Where a term is measured: what begins at a centre has its width at its last round."""
    return "top_width" if term.name == "width" and piece.start.kind == "centre" else term.name


def _fabric_of(term: Term, piece: Piece, design: Design) -> Fabric:
    at_start = _place(term, piece) in ("width", "bottom", piece.bottom)
    return design.fabric(piece.start.fabric if at_start else piece.sections[-1].fabric)


def _step(term: Term, piece: Piece, fabric: Fabric, subject: Subject, size: str) -> tuple[int, float]:
    """Stitches from one allowed count to the next, and the share of it that rounding may be off."""
    rule, share, by = fabric.rule, 0.5, 1
    if piece.start.kind == "divide" and _place(term, piece) in ("width", "bottom", "widest", piece.bottom):
        # A yoke's parts grow by two: a sleeve's counts lie two apart, and the body's, back and front together, four.
        return (2, share) if piece.start.edges[0][1] == "sleeve" else (4, share)
    if _place(term, piece) in (*SHAPED, "top", piece.top):
        sections = subject.grading.plans[piece.key][size].sections
        for designed, plan in zip(piece.sections, sections, strict=True):
            if isinstance(designed, (Taper, Crown)) and designed.direction != "nearest":
                share = 1.0
            by = 4 if isinstance(plan, TaperPlan) and plan.edges == "sides" else by
            two_edges = isinstance(plan, TaperPlan) and plan.edge_count == 2
            two_edges = two_edges or (isinstance(plan, ProfilePlan) and plan.starting == plan.far != ())
            if two_edges and rule.parity == "any":
                rule = CountRule(rule.multiple, rule.plus, "odd" if plan.end % 2 else "even")
    try:
        return lcm(by, spacing(rule)), share
    except CountImpossible:
        return spacing(fabric.rule), share


def piece_fabrics(formula: Formula, design: Design) -> tuple[Fabric, ...]:
    """The fabrics of all pieces that a formula measures."""
    keys = [key for term in terms_of(formula, design) for key in fabrics_of(design.piece(term.piece))]
    return tuple(design.fabric(key) for key in dict.fromkeys(keys))
