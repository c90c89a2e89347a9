"""Which names and calls a formula holds, and the order in which named formulas can be worked out."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from gaugewright.formulas.nodes import Binary, Call, Name, Negative, Node, Number


def _walk(node: Node) -> Iterator[Node]:
    """A node and all below it, from left to right."""
    yield node
    if isinstance(node, Negative):
        yield from _walk(node.operand)
    elif isinstance(node, Binary):
        yield from _walk(node.left)
        yield from _walk(node.right)
    elif isinstance(node, Call):
        for argument in node.arguments:
            yield from _walk(argument)
    elif not isinstance(node, (Number, Name)):
        raise TypeError(f"not a formula node: {node!r}")


def names_in(node: Node) -> tuple[Name, ...]:
    """All names, those within calls included, from left to right."""
    return tuple(part for part in _walk(node) if isinstance(part, Name))


def calls_in(node: Node) -> tuple[Call, ...]:
    """All calls, from left to right."""
    return tuple(part for part in _walk(node) if isinstance(part, Call))


@dataclass(frozen=True, slots=True)
class Cycle:
    """Names that need one another, in the order they do; the last needs the first."""

    names: tuple[str, ...]

    def __str__(self) -> str:
        return " needs ".join((*self.names, self.names[0]))


def order_by_reference(needs: Mapping[str, Iterable[str]]) -> tuple[tuple[str, ...], tuple[Cycle, ...]]:
    """Sorts names so that each comes after all it needs; names outside the mapping are ignored.

    Gives the order and each cycle found (names on a cycle are left out of the order). The order
    follows the mapping's own wherever the references leave a choice.

    >>> order_by_reference({"underarm": ["shoulder", "armhole"], "shoulder": [], "armhole": []})
    (('shoulder', 'armhole', 'underarm'), ())
    >>> str(order_by_reference({"a": ["b"], "b": ["a"]})[1][0])
    'a needs b needs a'
    """
    order: list[str] = []
    cycles: list[Cycle] = []
    done: set[str] = set()
    for first in needs:
        if first not in done:
            _visit(first, needs, done, order, cycles)
    on_cycle = {name for cycle in cycles for name in cycle.names}
    return tuple(name for name in order if name not in on_cycle), tuple(cycles)


def _visit(
    first: str, needs: Mapping[str, Iterable[str]], done: set[str], order: list[str], cycles: list[Cycle]
) -> None:
    """Depth first with its own stack, since a spec may chain more names than Python nests calls."""
    path: list[str] = [first]
    waiting = [iter(needs[first])]
    while path:
        for name in waiting[-1]:
            if name in path:
                cycles.append(Cycle(tuple(path[path.index(name) :])))
            elif name in needs and name not in done:
                path.append(name)
                waiting.append(iter(needs[name]))
                break
        else:
            done.add(path[-1])
            order.append(path.pop())
            waiting.pop()
