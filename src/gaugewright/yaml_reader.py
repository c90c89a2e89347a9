"""YAML 1.2 to plain data that knows where each key and value stands.

In: a path, or text. Out: `Source`, plain data with `origin_at`; or `ProblemsFound`. Only the event
stream of ruamel.yaml is used (pure Python, about 180 KB/s), and the tree is built here, so limits
bite before anything is expanded: size, depth, aliases. Scalars follow the YAML 1.2 core schema, so
`no`, `1:2` and dates stay text; keys are always text; a number remembers how it was written, since
a version `1.10` or a size `08` is a name to its maker.
"""

import difflib
import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from gaugewright.errors import Location, Origin, Problem, ProblemsFound
from gaugewright.yaml_tree import DEEPEST, Placed, build_tree, file_problem, placed_problem

LARGEST = 1_000_000
_BREAK = re.compile("\r\n|[\n\r\x85\u2028\u2029]")


@dataclass(frozen=True, slots=True)
class Source:
    """A file's data and the places it came from."""

    file: str
    data: dict[str, Any]
    lines: tuple[str, ...]
    root: Placed

    def origin_at(self, path: tuple[str | int, ...], key: bool = False) -> Origin:
        """The place of the value at a path, or of its key.

        A step that is neither a key nor an index where it is taken is passed over: paths may hold
        names of choices that the file doesn't. If the last step isn't in the file (something is
        missing), the place of the key that ought to hold it is given.
        """
        node, mark, found = self.root, (self.root.line, self.root.column), False
        for step in path:
            child = node.children.get(step)
            found = child is not None
            if child is not None:
                node, mark = child, (child.key_line, child.key_column)
        if not key and (found or not path or not node.children):
            mark = (node.line, node.column)
        return self._origin(*mark)

    def value_at(self, path: tuple[str | int, ...]) -> Any:
        """The value where a path leads, steps that the file doesn't have being passed over."""
        node = self.root
        for step in path:
            node = node.children.get(step, node)
        return node.data

    def origin_in(self, path: tuple[str | int, ...], column: int) -> Origin:
        """The place of a column within a text value; the value's start where it spans lines."""
        node = self.root
        for step in path:
            node = node.children.get(step, node)
        value, line = str(node.data), self._line(node.line)
        for opening in (node.column, node.column + 1):
            if line[opening : opening + len(value)] == value:
                return self._origin(node.line, opening + column)
        return self._origin(node.line, node.column)

    def _line(self, line: int) -> str:
        return self.lines[line] if line < len(self.lines) else ""

    def _origin(self, line: int, column: int) -> Origin:
        return Origin(Location(self.file, line + 1, column + 1), self._line(line))


def read_yaml(path: str | Path) -> Source:
    """Reads a file; whatever is wrong with it is a problem at a place."""
    file = Path(path)
    text = _text_of(file, str(path))
    return read_yaml_text(text, str(path))


def read_yaml_text(text: str, file: str) -> Source:
    """Reads text as if it stood in `file`."""
    if len(text) > LARGEST:
        raise _too_large(file)
    text = text.removeprefix("\ufeff")
    lines = tuple(_BREAK.split(text))
    problems: list[Problem] = []
    root = build_tree(_events(text, file, lines), file, lines, problems)
    if root is None:
        raise file_problem(
            "file-empty", f"{file} holds nothing", file, "write a spec in it; it begins with `gaugewright: 1`"
        )
    if not isinstance(root.data, dict):
        found = "a list" if isinstance(root.data, list) else "plain text"
        origin = Origin(Location(file, root.line + 1, root.column + 1), lines[root.line])
        message = f"the file holds {found}; keys with values are expected"
        raise ProblemsFound(
            (Problem("yaml-not-keys", message, origin, "begin with `gaugewright: 1`, then `pattern:` and so on"),)
        )
    if problems:
        raise ProblemsFound(problems)
    return Source(file, root.data, lines, root)


def _events(text: str, file: str, lines: tuple[str, ...]) -> Iterator[Any]:
    """ruamel's events; what it raises becomes a problem in our words."""
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    try:
        yield from YAML(typ="safe", pure=True).parse(text)
    except MarkedYAMLError as fault:
        raise _syntax_problem(fault, file, lines) from None
    except (
        YAMLError,
        ValueError,
        OverflowError,
        ArithmeticError,
        LookupError,
        TypeError,
        AttributeError,
        AssertionError,
        NotImplementedError,
    ):
        # The reader names no place: a character that text may not hold, or a broken escape.
        message = "this file holds a character or an escape that YAML doesn't allow"
        line = next(
            (
                i
                for i, content in enumerate(lines)
                if re.search(r"[^\t\x20-\x7e\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]|\\[uUx]", content)
            ),
            0,
        )
        origin = Origin(Location(file, line + 1, 1), lines[line])
        raise ProblemsFound(
            (Problem("yaml-syntax", message, origin, "take it out, or write it as itself rather than as an escape"),)
        ) from None


_SYNTAX: tuple[tuple[str, str, str], ...] = (
    ("'\\t'", "a tab stands where only spaces may", "indent with spaces"),
    (
        "mapping values are not allowed",
        "a colon stands where no value can begin",
        "check the indentation, or put quotes round the whole text",
    ),
    (
        "expected ',' or '}'",
        "a comma or a closing } is expected",
        "close the brace, or put a comma between the entries",
    ),
    (
        "expected ',' or ']'",
        "a comma or a closing ] is expected",
        "close the bracket, or put a comma between the entries",
    ),
    (
        "could not find expected ':'",
        "this is neither `key: value` nor an entry of a list",
        "write `key: value`, with a space after the colon",
    ),
    ("unexpected end of stream", "a quotation mark is opened and never closed", "close it"),
    (
        "expected <block end>",
        "this line's indentation fits nothing above it",
        "indent it like the lines it belongs with",
    ),
    (
        "expected '<document start>'",
        "something follows where the file's keys have ended",
        "check the brackets and the indentation of this line",
    ),
    ("cannot start any token", "a value can't begin with this character", "put quotes round the value"),
    ("unknown escape", "this escape means nothing to YAML", "use single quotes, or double the backslash"),
)


def _syntax_problem(fault: Any, file: str, lines: tuple[str, ...]) -> ProblemsFound:
    found = str(fault.problem or fault.context or "")
    message, hint = f"this can't be read as YAML ({found})", "check quotes, brackets and indentation near here"
    for part, plain, advice in _SYNTAX:
        if part in found:
            message, hint = plain, advice
            break
    mark = fault.problem_mark or fault.context_mark
    colour = _bare_colour(lines, mark.line if mark else len(lines) - 1)
    if colour is not None:
        line, column, text = colour
        message = "from a # on, the rest of the line is a remark: this colour and all after it are passed over"
        return ProblemsFound((placed_problem("yaml-syntax", message, f'write "{text}", in quotes', line, column, file, lines),))
    if fault.context_mark and ("end of stream" in found or "stream end" in found):
        mark = fault.context_mark
        message += "; it was opened here" if "expected" in found and "comma" in message else ""
    if mark is None:
        return file_problem("yaml-syntax", message, file, hint)
    return ProblemsFound((placed_problem("yaml-syntax", message, hint, mark.line, mark.column, file, lines),))


def _bare_colour(lines: tuple[str, ...], last: int) -> tuple[int, int, str] | None:
    """A colour without quotes just above a fault: within braces it takes the closing one with it."""
    for line in range(last, max(last - 3, -1), -1):
        found = re.search(r":\s+(#[0-9A-Fa-f]{6})\b", lines[line]) if line < len(lines) else None
        if found and "{" in lines[line][: found.start()]:
            return line, found.start(1), found.group(1)
    return None


def _text_of(path: Path, shown: str) -> str:
    try:
        status = path.stat()
        if stat.S_ISDIR(status.st_mode):
            inside = next(_specs_in(path), path / "spec.yaml")
            raise file_problem(
                "file-is-folder",
                f"{shown} is a folder; a spec file is expected",
                shown,
                f"name the file in it, such as {inside}",
            )
        if not stat.S_ISREG(status.st_mode):
            raise file_problem(
                "file-unreadable", f"{shown} is not an ordinary file", shown, "name a spec file, such as spec.yaml"
            )
        if status.st_size > LARGEST:
            raise _too_large(shown)
        raw = path.read_bytes()
    except (FileNotFoundError, NotADirectoryError):
        raise file_problem("file-missing", f"there is no file {shown}", shown, _nearest(path)) from None
    except (OSError, ValueError) as fault:
        reason = getattr(fault, "strerror", None) or "its name can't be used"
        raise file_problem(
            "file-unreadable", f"{shown} can't be read: {reason}", shown, "check the name and its permissions"
        ) from None
    return _decoded(raw, shown)


def _decoded(raw: bytes, shown: str) -> str:
    hint = "save the spec as plain text in UTF-8"
    if b"\0" in raw:
        raise file_problem("file-not-text", f"{shown} is not a text file", shown, hint)
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as fault:
        line = raw.count(b"\n", 0, fault.start)
        begin = raw.rfind(b"\n", 0, fault.start) + 1
        end = raw.find(b"\n", begin)
        quoted = raw[begin : end if end >= 0 else None].decode("utf-8", "replace")
        column = len(raw[begin : fault.start].decode("utf-8", "replace"))
        origin = Origin(Location(shown, line + 1, column + 1), quoted)
        raise ProblemsFound((Problem("file-not-text", f"{shown} is not text in UTF-8", origin, hint),)) from None


def _too_large(shown: str) -> ProblemsFound:
    message = f"{shown} is larger than {LARGEST // 1000} kB, more than a pattern needs"
    return file_problem("file-too-large", message, shown, "check that this is the spec; split a very large one")


def _specs_in(folder: Path) -> Iterator[Path]:
    try:
        yield from sorted(p for p in folder.iterdir() if p.suffix in (".yaml", ".yml"))
    except OSError:
        return


def _nearest(path: Path) -> str:
    names = [p.name for p in _specs_in(path.parent)]
    near = difflib.get_close_matches(path.name, names, n=1) or names[:1]
    return f"did you mean {path.parent / near[0]}?" if near else "check the name and the folder"


__all__ = ["DEEPEST", "LARGEST", "Source", "read_yaml", "read_yaml_text"]
