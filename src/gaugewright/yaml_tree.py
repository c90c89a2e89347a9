"""The tree of a YAML file: each value with its place, built from the event stream.

The limits stand here: a tree deeper than `DEEPEST` is refused while it is read, and the values
that aliases would repeat are counted, so that a short file can't unfold into a huge one. Nothing
here calls itself, so no file can exhaust Python's stack.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from gaugewright.errors import Location, Origin, Problem, ProblemsFound

DEEPEST = 60
MOST_WORDS = 50_000  # keys and values in one file; a garment has some hundreds
MOST_REPEATED = 5_000  # values that aliases may add in one file

_INT = re.compile(r"[-+]?[0-9]{1,18}")
_FLOAT = re.compile(r"[-+]?(?:\.[0-9]{1,18}|[0-9]{1,18}(?:\.[0-9]{0,18})?)(?:[eE][-+]?[0-9]{1,2})?")
_WORDS: dict[str, bool | None] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL"), None),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
}


class WrittenInt(int):
    """A whole number that remembers how it was written."""

    written: str


class WrittenFloat(float):
    """A decimal that remembers how it was written."""

    written: str


@dataclass(slots=True)
class Placed:
    """A value with its place (lines and columns from 0), its children, and its key's place."""

    data: Any
    line: int
    column: int
    children: "dict[str | int, Placed]" = field(default_factory=dict)
    key_line: int = 0
    key_column: int = 0
    size: int = 1
    height: int = 1


def file_problem(name: str, message: str, file: str, hint: str) -> ProblemsFound:
    """A problem with a file as a whole."""
    return ProblemsFound((Problem(name, message, Origin(Location(file, 1, 1)), hint),))


def placed_problem(
    name: str, message: str, hint: str, line: int, column: int, file: str, lines: tuple[str, ...]
) -> Problem:
    """A problem at a line and column counted from 0."""
    quoted = lines[line] if line < len(lines) else ""
    return Problem(name, message, Origin(Location(file, line + 1, column + 1), quoted), hint)


def build_tree(events: Iterator[Any], file: str, lines: tuple[str, ...], problems: list[Problem]) -> Placed | None:
    """The tree of the only document; duplicate keys go to `problems`, all else that's wrong is raised."""
    return _Builder(file, lines, problems).build(events)


class _Builder:
    """Takes events one at a time; `open` holds the lists and mappings not yet ended."""

    def __init__(self, file: str, lines: tuple[str, ...], problems: list[Problem]) -> None:
        self.file, self.lines, self.problems = file, lines, problems
        self.open: list[Placed] = []
        self.keys: list[tuple[str, int, int] | None] = []
        self.anchors: dict[str, Placed] = {}
        self.names: list[str | None] = []
        self.words, self.repeated, self.documents = 0, 0, 0
        self.root: Placed | None = None

    def build(self, events: Iterator[Any]) -> Placed | None:
        for event in events:
            kind = type(event).__name__
            if kind == "ScalarEvent":
                self.scalar(event)
            elif kind in ("MappingStartEvent", "SequenceStartEvent"):
                self.begin(event, {} if kind == "MappingStartEvent" else [])
            elif kind in ("MappingEndEvent", "SequenceEndEvent"):
                self.end()
            elif kind == "AliasEvent":
                self.alias(event)
            elif kind == "DocumentStartEvent":
                self.documents += 1
                if self.documents > 1:
                    raise self.problem(
                        "yaml-documents",
                        "a second document begins here",
                        "keep one spec in a file: take out the line ---",
                        event,
                    )
        return self.root

    def problem(self, name: str, message: str, hint: str, event: Any) -> ProblemsFound:
        mark = event.start_mark
        return ProblemsFound((placed_problem(name, message, hint, mark.line, mark.column, self.file, self.lines),))

    def begin(self, event: Any, data: Any) -> None:
        self.refuse_tag(event)
        if len(self.open) >= DEEPEST:
            raise self.problem(
                "yaml-too-deep",
                f"values are nested more than {DEEPEST} deep here",
                "take out brackets: a spec needs about six",
                event,
            )
        if self.open and isinstance(self.open[-1].data, dict) and self.keys[-1] is None:
            raise self.problem(
                "yaml-key", "a key must be plain text, not a list or a mapping", "write a word, then a colon", event
            )
        self.open.append(Placed(data, event.start_mark.line, event.start_mark.column))
        self.keys.append(None)
        self.names.append(event.anchor)

    def end(self) -> None:
        node, name = self.open.pop(), self.names.pop()
        self.keys.pop()
        self.place(node)
        if name:
            self.anchors[name] = node

    def scalar(self, event: Any) -> None:
        self.words += 1
        if self.words > MOST_WORDS:
            message = f"the file holds more than {MOST_WORDS} keys and values by here, more than a pattern needs"
            raise self.problem("file-too-large", message, "check that this is the spec; split a very large one", event)
        self.refuse_tag(event)
        mark, parent = event.start_mark, self.open[-1] if self.open else None
        if parent is not None and isinstance(parent.data, dict) and self.keys[-1] is None:
            self.keys[-1] = (event.value, mark.line, mark.column)
            self.refuse_repeat(parent, event)
            return
        node = Placed(resolved(event.value) if event.style is None else event.value, mark.line, mark.column)
        if event.value == "" and event.style is None and self.keys and self.keys[-1]:
            _, node.line, node.column = self.keys[-1]  # nothing is written: its key is the place
        if parent is None and node.data is None:
            return
        if event.anchor:
            self.anchors[event.anchor] = node
        self.place(node)

    def refuse_repeat(self, parent: Placed, event: Any) -> None:
        first = parent.children.get(event.value)
        if first is not None:
            message = f"the key {event.value} is given twice; it stands in line {first.key_line + 1} already"
            mark = event.start_mark
            self.problems.append(
                placed_problem(
                    "duplicate-key", message, "keep one of the two", mark.line, mark.column, self.file, self.lines
                )
            )

    def refuse_tag(self, event: Any) -> None:
        if event.tag:
            raise self.problem(
                "yaml-tag",
                f"the tag {event.tag} has no meaning in a spec",
                "take the tag out; quotes make a value text",
                event,
            )

    def alias(self, event: Any) -> None:
        """An alias repeats what its anchor names; how much that comes to is counted before it is used."""
        target = self.anchors.get(event.anchor)
        if target is None:
            raise self.problem(
                "yaml-alias",
                f"the alias *{event.anchor} repeats nothing that has ended before it",
                "write the value out",
                event,
            )
        if self.open and isinstance(self.open[-1].data, dict) and self.keys[-1] is None:
            raise self.problem("yaml-key", "a key must be plain text, not an alias", "write the key out", event)
        self.repeated += target.size
        if self.repeated > MOST_REPEATED or len(self.open) + target.height > DEEPEST:
            raise self.problem(
                "yaml-alias",
                "the aliases of this file repeat too much",
                "write the values out instead of repeating them with *",
                event,
            )
        copy = Placed(target.data, target.line, target.column, target.children, size=target.size, height=target.height)
        self.place(copy)

    def place(self, node: Placed) -> None:
        if not self.open:
            self.root = node
            return
        parent = self.open[-1]
        parent.size += node.size
        parent.height = max(parent.height, node.height + 1)
        if isinstance(parent.data, list):
            node.key_line, node.key_column = node.line, node.column
            parent.children[len(parent.data)] = node
            parent.data.append(node.data)
            return
        key = self.keys[-1]
        assert key is not None
        self.keys[-1] = None
        name, node.key_line, node.key_column = key
        parent.children[name] = node
        parent.data[name] = node.data


def resolved(text: str) -> Any:
    """A plain scalar by YAML 1.2's core schema (decimal numbers only).

    >>> resolved("no"), resolved("1:2"), resolved("2026-11-25"), resolved("18"), resolved("1.0").written
    ('no', '1:2', '2026-11-25', 18, '1.0')
    """
    if text in _WORDS:
        return _WORDS[text]
    if text[0] not in "+-.0123456789":
        return text
    number: WrittenInt | WrittenFloat
    if _INT.fullmatch(text):
        number = WrittenInt(text)
    elif _FLOAT.fullmatch(text):
        number = WrittenFloat(text)
    else:
        return text
    number.written = text
    return number
