"""One block of a YAML file changed, everything else kept byte for byte: comments, order, quotes, line ends.

In: the file's text, the path of a table in it, and plain values. Out: the new text. Values that are there are
replaced where they stand; new ones follow the last one, in the style the table has.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

Path = tuple[str, ...]


@dataclass(slots=True)
class _Node:
    """A value's extent in the text, its key's start, and its children; `flow` where it stands in braces."""

    start: int
    end: int = 0
    key_start: int = 0
    flow: bool = False
    table: bool = False
    children: "dict[str, _Node]" = field(default_factory=dict)


def set_values(text: str, table: Path, values: Mapping[str, str], instead: Mapping[str, str] | None = None) -> str:
    """The text with `values` (as they are written) under `table`.

    A key of `instead` that the table's parent has is replaced, with its value, by the whole table: `{"gauge": "swatch"}`
    puts a swatch in the place of a gauge. Raises `KeyError` where the table's parent isn't there.

    >>> set_values("a: {b: {c: 1}}  # kept", ("a", "b"), {"c": "2", "d": "x"})
    'a: {b: {c: 2, d: x}}  # kept'
    >>> set_values("a:\\n  gauge: old # kept\\n", ("a", "b"), {"c": "2"}, {"gauge": "b"})
    'a:\\n  b: {c: 2} # kept\\n'
    """
    root = _tree(text)
    parent = _at(root, table[:-1])
    found = parent.children.get(table[-1])
    if found is not None and found.table:
        return _changed(text, found, values)
    whole = "{" + ", ".join(f"{key}: {value}" for key, value in values.items()) + "}"
    for key, name in (instead or {}).items():
        if name == table[-1] and key in parent.children:
            old = parent.children[key]
            return text[: old.key_start] + f"{name}: {whole}" + text[old.end :]
    if found is not None:
        return text[: found.start] + whole + text[found.end :]
    return _changed(text, parent, {table[-1]: whole})


def _changed(text: str, table: _Node, values: Mapping[str, str]) -> str:
    """Values replaced from the last to the first, so that places before them stay true; new ones after the last."""
    new = {key: value for key, value in values.items() if key not in table.children}
    edits = [(table.children[key].start, table.children[key].end, value) for key, value in values.items() if key in table.children]
    if new:
        last = max(table.children.values(), key=lambda child: child.end)
        first = min(table.children.values(), key=lambda child: child.key_start)
        between = ", " if table.flow else "\n" + _indent(text, first.key_start)
        edits.append((last.end, last.end, "".join(f"{between}{key}: {value}" for key, value in new.items())))
    # At one place what is added comes after what is replaced, so it is put in first.
    for start, end, value in sorted(edits, key=lambda edit: (edit[0], edit[1]), reverse=True):
        text = text[:start] + value + text[end:]
    return text


def _indent(text: str, at: int) -> str:
    return " " * (at - (text.rfind("\n", 0, at) + 1))


def _at(root: _Node, path: Path) -> _Node:
    node = root
    for step in path:
        node = node.children[step]
    return node


def _tree(text: str) -> _Node:
    """Extents of all values, from the event stream; the file has been read before, so it is sound."""
    from ruamel.yaml import YAML

    root = _Node(0)
    stack: list[tuple[_Node, bool]] = []
    key: tuple[str, int] | None = None
    last = 0

    def placed(node: _Node) -> None:
        nonlocal key
        if stack and stack[-1][1] and key is not None:
            node.key_start = key[1]
            stack[-1][0].children[key[0]] = node
            key = None

    for event in YAML(typ="safe", pure=True).parse(text):
        kind, start, end = type(event).__name__, event.start_mark.index, event.end_mark.index
        if kind == "ScalarEvent" and stack and stack[-1][1] and key is None:
            key = (event.value, start)
        elif kind in ("ScalarEvent", "AliasEvent"):
            placed(_Node(start, end))
            last = end
        elif kind in ("MappingStartEvent", "SequenceStartEvent"):
            table = kind == "MappingStartEvent"
            node = root if not stack and table else _Node(start, flow=bool(event.flow_style), table=table)
            if node is root:
                node.flow, node.table = bool(event.flow_style), True
            placed(node)
            stack.append((node, table))
        elif kind in ("MappingEndEvent", "SequenceEndEvent"):
            node, _ = stack.pop()
            last = end if node.flow else last
            node.end = last
    return root


def plain(data: Any) -> Any:
    """Data without what the reader keeps beside it, so that two readings can be compared."""
    if isinstance(data, dict):
        return {str(key): plain(value) for key, value in data.items()}
    return [plain(value) for value in data] if isinstance(data, list) else data
