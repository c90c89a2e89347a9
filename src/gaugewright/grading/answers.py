"""What formulas may ask: edges and finished measures of the pieces graded so far, and whole rows."""

from collections.abc import Mapping

from gaugewright.design.model import Design
from gaugewright.formulas.nodes import Call, FormulaError, Name
from gaugewright.gauge.model import Gauge
from gaugewright.grading.model import GradedPiece
from gaugewright.rounding import half_up
from gaugewright.sizing.environment import Answer, Environment


def answers(design: Design, pieces: Mapping[str, GradedPiece]) -> dict[str, Answer]:
    """The calls a formula may make, for one size. `pieces` grows while grading goes on."""
    gauges = {fabric.key: fabric.gauge for fabric in design.fabrics}
    return {
        "edge": lambda call, _env: _edge(call, pieces),
        "finished": lambda call, _env: _finished(call, pieces),
        "depth": lambda call, _env: _depth(call, design, pieces),
        "in_rows": lambda call, env: _in_rows(call, env, gauges),
    }


def _edge(call: Call, pieces: Mapping[str, GradedPiece]) -> float:
    piece, name = _piece_and_name(call)
    edges = pieces[piece].edges
    if name not in edges:
        raise FormulaError(f"{piece} has no edge {name}", call.column, f"its edges are {', '.join(edges)}")
    return edges[name].length


def _finished(call: Call, pieces: Mapping[str, GradedPiece]) -> float:
    piece, name = _piece_and_name(call)
    measures = {name: edge.length for name, edge in pieces[piece].edges.items()} | pieces[piece].finished
    if name not in measures:
        raise FormulaError(f"{piece} has no measure {name}", call.column, f"its measures are {', '.join(measures)}")
    return measures[name]


def _depth(call: Call, design: Design, pieces: Mapping[str, GradedPiece]) -> float:
    """How high an edge of row ends reaches: a cap's height is judged by its armhole's depth."""
    piece, name = _piece_and_name(call)
    edges = pieces[piece].edges
    if name not in edges or not edges[name].rows:
        raise FormulaError(f"{piece} has no edge of row ends {name}", call.column, "name the edge the cap is sewn into")
    return design.fabric(design.piece(piece).fabric).gauge.height_of(edges[name].rows)


def _in_rows(call: Call, env: Environment, gauges: Mapping[str, Gauge]) -> float:
    length, gauge = _length_and_gauge(call, env, gauges)
    return gauge.height_of(max(1, half_up(gauge.rows_in(length))))


def _piece_and_name(call: Call) -> tuple[str, str]:
    first = call.arguments[0] if len(call.arguments) == 1 else None
    if isinstance(first, Name) and "." in first.name:
        piece, _, name = first.name.partition(".")
        return piece, name
    raise FormulaError(f"{call.function}() takes one piece.name", call.column, f"write it like {call.function}(back.shoulder)")


def _length_and_gauge(call: Call, env: Environment, gauges: Mapping[str, Gauge]) -> tuple[float, Gauge]:
    fabric = call.arguments[1] if len(call.arguments) == 2 else None
    if not isinstance(fabric, Name) or fabric.name not in gauges:
        raise FormulaError(
            f"{call.function}() takes a length and a fabric", call.column,
            f"write it like {call.function}(4 cm, {next(iter(gauges))})",
        )
    quantity = env.value(call.arguments[0])
    if quantity.dimension != "length":
        raise FormulaError(f"{call.function}() takes a length, not a {quantity.dimension}", call.column, "add a unit, such as cm")
    return quantity.amount, gauges[fabric.name]
