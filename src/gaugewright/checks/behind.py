"""What stands behind a measure: the formula that makes it, and the body measures that make that formula grow.

Named lengths and other pieces' measures are followed to the formulas they hold, before any rounding to
stitches and rows, so that a size may be asked what it would be with another size's body.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import NamedTuple

from gaugewright.checks.lengths import wanted_total
from gaugewright.checks.model import Subject
from gaugewright.design.model import UNSTACKED, Cap, Design, ForLength, Formula, NamedEdge, Neck, NeckEdge, Piece, RaglanEdge, Shoulders, Triangle
from gaugewright.errors import ProblemsFound
from gaugewright.formulas.names import names_in
from gaugewright.formulas.nodes import Binary, Call, FormulaError, Name, Node, Number
from gaugewright.sizing.environment import Environment, named_formulas
from gaugewright.units import Quantity


class Behind(NamedTuple):
    """A measure before rounding, and the formula to point at."""

    node: Node
    formula: Formula


def behind(piece: Piece, name: str, design: Design) -> Behind | None:
    """What makes a piece's measure or edge; None where no formula states it."""
    widths = _widths(piece)
    top = piece.sections[-1]
    neck = _neck(piece)
    if name == "neck" and neck is not None:
        return _as_it_stands(neck)
    if name == "shoulder" and isinstance(top, (Shoulders, Neck)) and widths and neck is not None:
        return Behind(_share("/", Binary("-", widths[-1].node, neck.node, 0), 2.0), widths[-1])
    if name == "cap" and isinstance(top, Cap):
        return _as_it_stands(top.opening)
    edge = next((one for one in piece.edges if one.name == name), None)
    if edge is not None:
        return _between(piece, edge, design)
    if isinstance(top, Triangle):
        return _as_it_stands(top.width) if name in ("width", "widest", "bottom", piece.bottom) else Behind(_share("/", top.width.node, 2.0), top.width)
    if name == "length":
        return _length(piece)
    if not widths:
        return None
    if name in ("widest", "narrowest"):
        function = "max" if name == "widest" else "min"
        return Behind(Call(function, tuple(one.node for one in widths), 0), widths[-1])
    return _as_it_stands(widths[0] if name in ("width", "bottom", piece.bottom) and piece.start.kind != "centre" else widths[-1])


def _neck(piece: Piece) -> Formula | None:
    """The formula of a neck's width: between raglan edges what they are shaped to."""
    raglan = next((section for section in piece.sections if isinstance(section, RaglanEdge)), None)
    if raglan is not None:
        return raglan.target
    match piece.sections[-1]:
        case Shoulders(neck=neck) | Neck(width=neck) | NeckEdge(width=neck):
            return neck
    return None


def _as_it_stands(formula: Formula) -> Behind:
    return Behind(formula.node, formula)


def _share(operator: str, node: Node, by: float) -> Node:
    return Binary("/" if operator == "/" else "*", node, Number(Quantity(by, "number"), 0), 0)


def _widths(piece: Piece) -> list[Formula]:
    """The widths a piece goes through, from its start up."""
    targets = [getattr(section, "target", None) for section in piece.sections]
    return [formula for formula in (piece.start.width, *targets) if formula is not None]


def _length(piece: Piece) -> Behind | None:
    """A piece's total, or what its sections' own lengths add up to; the one that follows a name is pointed at."""
    total = wanted_total(piece)
    if total is not None:
        return _as_it_stands(total)
    extents = [section.extent for section in piece.sections if not isinstance(section, UNSTACKED)]
    lengths = [extent.length for extent in extents if isinstance(extent, ForLength)]
    if not lengths or len(lengths) < len(extents):
        return None
    node = lengths[0].node
    for length in lengths[1:]:
        node = Binary("+", node, length.node, 0)
    return Behind(node, next((length for length in lengths if names_in(length.node)), lengths[0]))


def _between(piece: Piece, edge: NamedEdge, design: Design) -> Behind | None:
    """From one level to the next; what is stated is the lower level, which hangs from the upper one."""
    named, total = named_formulas(design), wanted_total(piece)
    above = named[edge.top] if edge.top is not None else total
    if above is None:
        return None
    if edge.bottom is None:
        return _as_it_stands(above)
    return Behind(Binary("-", above.node, named[edge.bottom].node, 0), named[edge.bottom])


def times(one: Behind, by: float) -> Behind:
    """So many of a measure."""
    return Behind(_share("*", one.node, by), one.formula)


def stated(formula: Formula, design: Design) -> Formula:
    """The formula that a formula of a name alone, or of another piece's measure alone, stands for."""
    named = named_formulas(design)
    seen: list[Formula] = []
    while formula not in seen:
        seen.append(formula)
        match formula.node:
            case Name(name=name) if name in named:
                formula = named[name]
            case Call(function="finished" | "edge", arguments=(Name(name=name),)):
                made = _of_name(name, design)
                formula = made.formula if made is not None else formula
    return formula


def _of_name(name: str, design: Design) -> Behind | None:
    piece, _, measure = name.partition(".")
    return behind(design.piece(piece), measure, design)


def bodies_behind(node: Node, design: Design) -> frozenset[str]:
    """The body measures that a formula leans on, wherever it takes them from."""
    named = named_formulas(design)
    waiting, seen = [node], set[str]()
    while waiting:
        for name in names_in(waiting.pop()):
            if name.name in seen:
                continue
            seen.add(name.name)
            if name.name in named:
                waiting.append(named[name.name].node)
            elif name.name.partition(".")[0] in {piece.key for piece in design.pieces}:
                made = _of_name(name.name, design)
                waiting += [made.node] if made is not None else []
    return frozenset(name.removeprefix("body.") for name in seen if name.startswith("body."))


def length_of(node: Node, env: Environment, design: Design, body: Mapping[str, float]) -> float | None:
    """A node before rounding, for a body; None where it can't be said."""
    def made(call: Call, at: Environment) -> float:
        argument = call.arguments[0]
        found = _of_name(argument.name, design) if isinstance(argument, Name) else None
        if found is None:
            raise FormulaError("no formula states this", call.column)
        piece = design.piece(argument.name.partition(".")[0]) if isinstance(argument, Name) else design.pieces[0]
        return at.within({} if piece.total is None else {"total": at.length(piece.total)}).value(found.node).amount

    answers = {"finished": made, "edge": made, "in_rows": lambda call, at: at.value(call.arguments[0]).amount}
    try:
        return replace(env, body=body, answers=answers, known={}, own={}).value(node).amount
    except (FormulaError, ProblemsFound):
        return None


def grown_by(node: Node, subject: Subject, small: str, large: str) -> dict[str, float]:
    """How much of the growth to the size `large` each body measure brings, in mm.

    It is what that size would lack with the other one's figure for that measure alone.
    """
    return dict(_parts(node, subject, small, large))


def _parts(node: Node, subject: Subject, small: str, large: str) -> Iterator[tuple[str, float]]:
    env, body = subject.environments[large], subject.environments[small].body
    whole = length_of(node, env, subject.design, env.body)
    for measure in sorted(bodies_behind(node, subject.design)):
        if whole is not None and measure in body:
            less = length_of(node, env, subject.design, {**env.body, measure: body[measure]})
            if less is not None:
                yield measure, whole - less
