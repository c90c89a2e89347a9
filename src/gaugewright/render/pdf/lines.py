"""Runs of text broken into lines: at ordinary spaces only.

In: runs (face and text). Out: lines that fit a width. U+00A0 holds words together, so a size list
never breaks inside its brackets; only a word wider than the whole line is taken apart, first at
its own U+00A0, then between letters, because text outside the margins is worse still.
"""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from gaugewright.render.pdf.faces import NO_BREAK, Faces
from gaugewright.render.pdf.style import Face

Run = tuple[Face, str]


class Line(NamedTuple):
    """One line. `glue` is the space that ended it: drawn, so that no two words run together."""

    runs: tuple[Run, ...]
    width: float
    glue: str = ""

    @property
    def text(self) -> str:
        """The line's words without their faces."""
        return "".join(text for _, text in self.runs)

    @property
    def drawn(self) -> tuple[Run, ...]:
        """The runs as they are drawn, glue and all."""
        if not self.glue:
            return self.runs
        *others, (face, text) = self.runs
        return (*others, (face, text + self.glue))


class Word(NamedTuple):
    """What stands between two places where a line may break."""

    runs: tuple[Run, ...]
    width: float
    space: str  # the space after it: " ", "" within a word that had to be taken apart
    space_width: float


def break_lines(runs: tuple[Run, ...], faces: Faces, size: float, first: float, rest: float) -> tuple[Line, ...]:
    """Lines no wider than `first`, then `rest`, filled one after the other."""
    lines: list[Line] = []
    taken: list[Word] = []
    used = 0.0
    for word in _words(runs, faces, size, min(first, rest)):
        room = rest if lines else first
        gap = taken[-1].space_width if taken else 0.0
        if taken and used + gap + word.width > room + 1e-6:
            lines.append(_line(taken, used))
            taken, used, gap = [], 0.0, 0.0
        taken.append(word)
        used += gap + word.width
    if taken:
        lines.append(_line(taken, used, last=True))
    return tuple(lines)


def natural_width(runs: tuple[Run, ...], faces: Faces, size: float) -> float:
    """Width of the text on one line."""
    return sum(faces.width(face, size, text) for face, text in runs)


def longest_word(run: Run, faces: Faces, size: float) -> float:
    """Width of the widest word: no line can be narrower."""
    face, text = run
    return max(faces.width(face, size, word) for word in text.split(" "))


def _line(words: list[Word], width: float, last: bool = False) -> Line:
    runs: list[Run] = []
    for place, word in enumerate(words):
        space = word.space if place < len(words) - 1 else ""
        pieces = list(word.runs)
        if space:
            face, text = pieces[-1]
            pieces[-1] = (face, text + space)
        for face, text in pieces:
            if runs and runs[-1][0] == face:
                runs[-1] = (face, runs[-1][1] + text)
            else:
                runs.append((face, text))
    return Line(tuple(runs), width, "" if last else words[-1].space)


def _words(runs: tuple[Run, ...], faces: Faces, size: float, room: float) -> list[Word]:
    """Words as they follow; one may change its face within."""
    words: list[Word] = []
    pending: tuple[Run, ...] = ()
    for face, text in runs:
        space = faces.width(face, size, " ")
        for place, piece in enumerate(text.replace("\n", " ").split(" ")):
            if place and pending:
                words += _word(pending, space, faces, size, room)
                pending = ()
            if piece:
                pending += ((face, piece),)
    if pending:
        words += _word(pending, space, faces, size, room)
    return words


def _word(pieces: tuple[Run, ...], space: float, faces: Faces, size: float, room: float) -> Iterable[Word]:
    width = natural_width(pieces, faces, size)
    return (Word(pieces, width, " ", space),) if width <= room else _taken_apart(pieces, faces, size, room)


def _taken_apart(pieces: tuple[Run, ...], faces: Faces, size: float, room: float) -> Iterator[Word]:
    """A word wider than the line, as narrower words."""
    chunks: list[tuple[Face, str, str]] = []
    for face, text in pieces:
        parts = text.split(NO_BREAK)
        for place, part in enumerate(parts):
            space = " " if place < len(parts) - 1 else ""
            if faces.width(face, size, part) > room:
                chunks += [(face, letter, "") for letter in part[:-1]] + [(face, part[-1], space)]
            else:
                chunks.append((face, part, space))
    final = len(chunks) - 1
    for place, (face, text, space) in enumerate(chunks):
        after = space or (" " if place == final else "")
        gap = faces.width(face, size, " ") if after else 0.0
        yield Word(((face, text),), faces.width(face, size, text), after, gap)
