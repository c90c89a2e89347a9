"""Checks of formulas: their names and calls, and that nothing needs itself."""

import re
from collections.abc import Iterator
from typing import NamedTuple

from gaugewright.errors import Origin, Problem
from gaugewright.formulas import Binary, Call, FormulaError, Name, Negative, Node, order_by_reference, parse_formula
from gaugewright.spec.messages import did_you_mean, listed
from gaugewright.spec.names import PLAIN_MEASURES, Names, inherited, like_chain, table
from gaugewright.spec.walk import Path, Reference
from gaugewright.yaml_reader import Source

CALLS = {"edge": "edge(back.side)", "finished": "finished(back.width)", "in_rows": "in_rows(4 cm, band)"}


class PlacedFormula(NamedTuple):
    """A formula's tree and the path of its text."""

    path: Path
    tree: Node


def formulas_in(references: tuple[Reference, ...]) -> tuple[PlacedFormula, ...]:
    """The formulas that can be read; the others are reported where they are read."""
    found = []
    for reference in references:
        if reference.kind == "formula" and reference.text != "rest":
            try:
                found.append(PlacedFormula(reference.path, parse_formula(reference.text)))
            except FormulaError:
                continue
    return tuple(found)


def check_formula_names(formulas: tuple[PlacedFormula, ...], names: Names, source: Source) -> Iterator[Problem]:
    """Every name in a formula is a length, a level, a measure or an ease; every call is known."""
    for formula in formulas:
        yield from _Walk(formula, names, source).problems(formula.tree)


class _Walk:
    """One formula's names and calls; the arguments of a call have their own meanings."""

    def __init__(self, formula: PlacedFormula, names: Names, source: Source) -> None:
        self.path, self.names, self.source = formula.path, names, source

    def at(self, column: int) -> Origin:
        return self.source.origin_in(self.path, column)

    def problems(self, node: Node) -> Iterator[Problem]:
        if isinstance(node, Name):
            yield from self.name(node)
        elif isinstance(node, Call):
            yield from self.call(node)
        elif isinstance(node, Binary):
            yield from self.problems(node.left)
            yield from self.problems(node.right)
        elif isinstance(node, Negative):
            yield from self.problems(node.operand)

    def name(self, node: Name) -> Iterator[Problem]:
        names = self.names
        bare = (*names.lengths, *names.levels, *(("total",) if self.has_total() else ()))
        known = (*bare, *(f"body.{m}" for m in names.measures), *(f"ease.{m}" for m in names.eases), *(f"size.{m}" for m in names.dimensions))
        if node.name in known:
            return
        piece, _, rest = node.name.partition(".")
        if node.name == "total":
            hint = "add `total: 45 cm` to the piece, or name a level instead"
        elif piece == "ease" and rest in names.measures:
            hint = f"add `ease: {{{rest}: 5 cm}}` to sizes"
        elif piece == "size":
            hint = did_you_mean(rest, names.dimensions, f"give it under sizes: `dimensions: {{{names.made[0] if names.made else 'M'}: {{{rest or 'width'}: 20 cm}}}}`")
        elif node.name in names.measures:
            hint = f"did you mean body.{node.name}?"
        elif piece in names.edges:
            call = "finished" if rest in PLAIN_MEASURES or not rest else "edge"
            hint = f"write {call}({piece}.{rest or 'width'})"
        else:
            hint = did_you_mean(node.name, known, f"name it under lengths: `{re.sub(r'[.]', '_', node.name)}: 20 cm`")
        message = f"{node.name} is no length, level or measure of this spec"
        yield Problem("unknown-name", message, self.at(node.column), hint)

    def has_total(self) -> bool:
        """A piece's formulas may use its total; bands may, since they serve pieces."""
        if self.path[0] == "bands":
            return True
        return self.path[0] == "pieces" and "total" in inherited(table(self.source.data, "pieces"), str(self.path[1]))

    def call(self, node: Call) -> Iterator[Problem]:
        if node.function in ("min", "max"):
            for argument in node.arguments:
                yield from self.problems(argument)
        elif node.function not in CALLS:
            hint = did_you_mean(
                node.function, (*CALLS, "min", "max"), f"write {node.function} * (...) if a product is meant"
            )
            message = f"{node.function}() is unknown; {listed((*CALLS, 'min', 'max'))} is expected"
            yield Problem("unknown-call", message, self.at(node.column), hint)
        elif len(node.arguments) != (2 if node.function == "in_rows" else 1):
            message = f"{node.function}() has {len(node.arguments)} parts in its brackets"
            yield Problem("call-parts", message, self.at(node.column), f"write it like {CALLS[node.function]}")
        elif node.function == "in_rows":
            yield from self.problems(node.arguments[0])
            yield from self.fabric(node.arguments[1])
        else:
            yield from self.edge(node.function, node.arguments[0])

    def fabric(self, node: Node) -> Iterator[Problem]:
        found = node.name if isinstance(node, Name) else ""
        if self.names.fabrics and found not in self.names.fabrics:
            message = f"in_rows() wants a fabric second; {listed(self.names.fabrics)} is expected"
            hint = did_you_mean(found, self.names.fabrics, f"write in_rows(4 cm, {self.names.fabrics[0]})")
            yield Problem("unknown-fabric", message, self.at(node.column), hint)

    def edge(self, function: str, node: Node) -> Iterator[Problem]:
        found = node.name if isinstance(node, Name) else ""
        piece, dot, edge = found.partition(".")
        if not dot:
            yield Problem(
                "call-parts",
                f"{function}() wants a piece and what is measured",
                self.at(node.column),
                f"write it like {CALLS[function]}",
            )
        elif piece not in self.names.edges and self.names.pieces:
            known = self.names.pieces
            near = did_you_mean(piece, known, "")
            hint = f"{near[:-1]}.{edge}?" if near else f"use one of the pieces: {', '.join(known)}"
            yield Problem("unknown-piece", f"there is no piece {piece}", self.at(node.column), hint)
        elif piece in self.names.edges:
            known = (*self.names.edges[piece], *(PLAIN_MEASURES if function == "finished" else ()))
            if edge not in known and piece not in self.names.doubtful:
                what = "measure or edge" if function == "finished" else "edge"
                message = f"{piece} has no {what} {edge}; it has {listed(known, 'and')}"
                hint = did_you_mean(edge, known, f"use one of those, or name {edge} under the edges of {piece}")
                hint = f"write finished({found})" if function == "edge" and edge in PLAIN_MEASURES else hint
                yield Problem("unknown-edge", message, self.at(node.column + len(piece) + 1), hint)


def check_cycles(
    formulas: tuple[PlacedFormula, ...], references: tuple[Reference, ...], names: Names, source: Source
) -> Iterator[Problem]:
    """Lengths, levels and pieces in the order they need one another; a piece needs the edges it names."""
    needs: dict[str, dict[str, Origin]] = {
        name: {} for name in (*names.lengths, *names.levels, *map(_piece, names.pieces))
    }
    for formula in formulas:
        for needed, column in _needed(formula.tree, names):
            for owner in _owners(formula.path, source):
                needs.get(owner, {}).setdefault(needed, source.origin_in(formula.path, column))
    for reference in references:
        if reference.kind == "edge" and reference.path[0] == "pieces":
            for owner in _owners(reference.path, source):
                needs.get(owner, {}).setdefault(
                    _piece(reference.text.partition(".")[0]), source.origin_at(reference.path)
                )
    for cycle in order_by_reference(needs)[1]:
        first, second = cycle.names[0], (*cycle.names, cycle.names[0])[1]
        message = f"{cycle}, and so on without end" if len(cycle.names) > 1 else f"{first} needs itself"
        yield Problem(
            "formula-cycle",
            message,
            needs[first][second],
            f"write a length such as 20 cm for {first}, or for what it needs",
        )


def _piece(name: str) -> str:
    return f"the piece {name}"


def _owners(path: Path, source: Source) -> Iterator[str]:
    """What is worked out from the formula at a path: a length, a level, or pieces (those like it too)."""
    if path[0] in ("lengths", "levels"):
        yield str(path[1])
    elif path[0] == "pieces" and path[2] != "colours":
        pieces = table(source.data, "pieces")
        for name in pieces:
            keepers = [
                link for link in like_chain(pieces, name) if isinstance(pieces[link], dict) and path[2] in pieces[link]
            ]
            if keepers and keepers[0] == path[1]:
                yield _piece(name)


def _needed(node: Node, names: Names) -> Iterator[tuple[str, int]]:
    if isinstance(node, Name):
        if (node.name in names.lengths) != (node.name in names.levels):  # in both: told as a clash
            yield node.name, node.column
    elif isinstance(node, Call):
        if node.function in ("edge", "finished"):
            for argument in node.arguments:
                if isinstance(argument, Name):
                    yield _piece(argument.name.partition(".")[0]), argument.column
        else:
            for argument in node.arguments[: 1 if node.function == "in_rows" else None]:
                yield from _needed(argument, names)
    elif isinstance(node, Binary):
        yield from _needed(node.left, names)
        yield from _needed(node.right, names)
    elif isinstance(node, Negative):
        yield from _needed(node.operand, names)
