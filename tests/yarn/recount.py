"""Reads a published pattern's text and counts its yarn again, from the words and numbers on the page alone.

Nothing of the engine is used here. What the page must say: gauges with what their stitches weigh, foundations, the
stitches of every row, the rows of each colour, how many are made, seams, ends, the ball and what is to spare.
"""

import math
import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field

LIST = r"(?:[0-9.½¼¾⅛⅜⅝⅞–]+ \([^)]*\)|[0-9.½¼¾⅛⅜⅝⅞–]+)"
TAIL = 0.1524
"""Metres: a tail of 6 in, as the page says."""
STRAND = 3.5
"""Three to four times the seam."""


@dataclass
class Fabric:
    stitch_grams: float
    stitch_mm: float
    row_mm: float
    words: str


@dataclass
class Piece:
    """By size: the stitches of each row, and from which row on each fabric is worked."""

    make: dict[str, int]
    counts: dict[str, dict[int, int]]
    fabrics: dict[str, list[tuple[int, str]]]
    changes: dict[str, dict[int, int]]
    last: dict[str, int]
    chains: dict[str, int] = field(default_factory=dict)
    colour: str = ""
    rows_of: dict[str, list[tuple[str, int, int]]] = field(default_factory=dict)


class Page:
    """A pattern's text, cut into chapters and paragraphs."""

    def __init__(self, text: str) -> None:
        text = text.replace("\u00a0", " ")
        parts = re.split(r"\n([^\n]+)\n-{3,}\n", text)
        self.chapters = dict(zip(parts[1::2], parts[2::2], strict=True))
        sizes = re.search(r"in the order of the sizes:\s+([^.]*)\.", _joined(text))
        assert sizes is not None
        self.sizes = [size.strip() for size in sizes[1].split(",")]
        self.fabrics = dict(self._fabrics())
        self.pieces = {name: piece for name, chapter in self.chapters.items() if (piece := self._piece(name, chapter)) is not None}

    def table(self, chapter: str, caption: str) -> list[list[str]]:
        """The rows of a table, cut where two spaces stand, without its header."""
        block = next((part for part in self.chapters[chapter].split("\n\n") if part.strip().startswith(caption)), "")
        lines = block.strip().splitlines()[2:]
        return [re.split(r" {2,}", line.strip()) for line in lines]

    def by_size(self, numbers: str) -> dict[str, int]:
        """One number, or one for each size; a size with a dash is left out."""
        found = re.findall(r"[0-9]+|–", numbers)
        values = found * len(self.sizes) if len(found) == 1 else found
        return {size: int(value) for size, value in zip(self.sizes, values, strict=True) if value != "–"}

    def _fabrics(self) -> Iterator[tuple[str, Fabric]]:
        for part in self.chapters["Gauge"].split("\n\n"):
            told = re.match(
                r"(\w[\w ]*): ([0-9]+) sts measure ([0-9.]+) cm / .*? and ([0-9]+) (?:rows|rnds) measure ([0-9.]+) cm / [0-9.]+ in, in (.*? hook)\..*weigh ([0-9.]+) g",
                _joined(part),
            )
            if told:
                name, stitches, width, rows, height, words, grams = told.groups()
                each = float(grams) / (int(stitches) * int(rows))
                yield name.lower(), Fabric(each, float(width) * 10 / int(stitches), float(height) * 10 / int(rows), words)

    def _piece(self, name: str, chapter: str) -> Piece | None:
        told = [_joined(part) for part in chapter.split("\n\n") if not part.strip().startswith("[")]
        intro = re.match(rf"Make ({LIST})(?:, alike[^.]*)?\. (?:“The first colour” [^.]*\. )?Worked in .*?, in (.*? hook)[.,]", told[0])
        if intro is None:
            return None
        first = next(key for key, fabric in self.fabrics.items() if fabric.words == intro[2])
        every: dict[str, int] = dict.fromkeys(self.sizes, 0)
        piece = Piece(self.by_size(intro[1]), {size: {} for size in self.sizes}, {size: [(1, first)] for size in self.sizes}, {size: {} for size in self.sizes}, every)
        for part in told:
            self._read(piece, part)
        for row in (line for caption in ("rows", "rnds") for line in self.table(name, f"{name}: {caption} of each colour")):
            self._colour_rows(piece, row)
        for row in self.table(name, f"{name}: stripes"):
            self._colour_rows(piece, row)
        self._tables(piece, chapter)
        self._corners(piece, chapter, name)
        return piece

    def _read(self, piece: Piece, part: str) -> None:
        """One paragraph: a foundation, a row that is told, rows up to a number, or the fabric that comes next."""
        if found := re.match(rf"Foundation: With ([^,]+), (?:ch ({LIST})\.|make)", part):
            piece.colour = found[1]
            piece.chains = self.by_size(found[2]) if found[2] else {}
        if found := re.match(r"(?:Row|Rnd) 1 \(pick-up (?:row|rnd).*?\): With (\w+)", part):
            piece.colour = found[1]
        stitches = re.search(rf"— ({LIST}) sts\.$", part)
        if (found := re.match(r"(?:Row|Rnd) ([0-9]+)(?: \([^)]*\))?:", part)) and stitches:
            for size, count in self.by_size(stitches[1]).items():
                piece.counts[size][int(found[1])] = count
                piece.last[size] = max(piece.last[size], int(found[1]))
        if found := re.match(rf"To the end of (?:Row|Rnd) ({LIST}):", part):
            piece.last |= self.by_size(found[1])
        if found := re.match(r"Pattern: Work in the stitch pattern ([\w ]+), as told", part):
            name = next(key for key, fabric in self.fabrics.items() if fabric.words.startswith(f"the stitch pattern {found[1]} "))
            for size in self.sizes:
                if piece.last[size] > 1:
                    piece.fabrics[size].append((piece.last[size] + 1, name))
        if found := re.match(r"Plain (?:row|rnd) \(([\w ]+)\):", part):
            for size in self.sizes:
                if piece.last[size] > 1:
                    piece.fabrics[size].append((piece.last[size] + 1, found[1]))

    def _colour_rows(self, piece: Piece, row: list[str]) -> None:
        colour, *cells = row
        if len(cells) == 1:
            cells *= len(self.sizes)
        for size, cell in zip(self.sizes, cells, strict=False):
            if found := re.fullmatch(r"([0-9]+)(?: to ([0-9]+))?", cell):
                piece.rows_of.setdefault(size, []).append((colour, int(found[1]), int(found[2] or found[1])))

    def _tables(self, piece: Piece, chapter: str) -> None:
        """Rows that a table tells one by one, and those on which it lets stitches come or go."""
        for part in chapter.split("\n\n"):
            if "\nSize | " not in part:
                continue
            lines = re.sub(r"\n {4}", " ", part.strip()).splitlines()
            for cells in ([cell.strip() for cell in line.split(" | ")] for line in lines[2:]):
                for size in self._sizes_named(cells[0]):
                    if " fall on " in lines[1]:
                        rows = [int(number) for number in re.findall(r"[0-9]+", cells[2])]
                        change = int(cells[4]) - int(cells[3])
                        assert change % len(rows) == 0
                        piece.changes[size] |= dict.fromkeys(rows, change // len(rows))
                    else:
                        piece.counts[size][int(cells[1])] = int(cells[3])
                        piece.last[size] = max(piece.last[size], int(cells[1]))

    def _corners(self, piece: Piece, chapter: str, name: str) -> None:
        """Counts that a table of corners has after each round."""
        block = next((part for part in chapter.split("\n\n") if part.startswith(f"{name}: corners")), "")
        told = re.search(r"sts after Rnds ([0-9]+) to [0-9]+", block)
        if told is None:
            return
        for size, *_, counts in self.table(name, f"{name}: corners"):
            for number, count in enumerate(counts.split(", "), start=int(told[1])):
                piece.counts[size][number] = int(count)

    def _sizes_named(self, text: str) -> list[str]:
        if text == "all":
            return self.sizes
        found = []
        for part in re.split(r", | and ", text):
            first, _, last = part.partition(" to ")
            found += self.sizes[self.sizes.index(first) : self.sizes.index(last or first) + 1]
        return found


def _joined(text: str) -> str:
    return re.sub(r"\s+", " ", text.strip())


def rows_of(piece: Piece, size: str) -> Iterator[tuple[int, int, str, str]]:
    """Every row: its number, the stitches worked in it (those it uses where it loses some), fabric and colour."""
    before = 0
    for number in range(1, piece.last[size] + 1):
        count = piece.counts[size].get(number, before + piece.changes[size].get(number, 0))
        fabric = [name for first, name in piece.fabrics[size] if first <= number][-1]
        colour = next((name for name, first, last in piece.rows_of.get(size, ()) if first <= number <= last), piece.colour)
        yield number, max(count, before if number > 1 else 0), fabric, colour
        before = count


def recounted(page: Page, size: str) -> dict[str, float]:
    """Grams of each colour, with what is to spare, as the page has it."""
    grams: dict[str, float] = defaultdict(float)
    turns = _turns(page, size)
    for piece in page.pieces.values():
        for number, stitches, fabric, colour in rows_of(piece, size):
            for own, times in turns.items() if colour == "the first colour" else ((colour, piece.make[size]),):
                each = page.fabrics[fabric].stitch_grams
                grams[own] += stitches * times * each
                if number == 1 and piece.chains:
                    grams[own] += piece.chains[size] * times * each / 2
    per_metre = _grams_to_the_metre(page)
    for colour, metres in strands(page, size).items():
        grams[colour] += metres * per_metre[colour]
    spare = re.search(r"and ([0-9.]+) % to spare", _joined(page.chapters["Materials"]))
    assert spare is not None
    return {colour: one * (1 + float(spare[1]) / 100) for colour, one in grams.items()}


def _turns(page: Page, size: str) -> dict[str, int]:
    """Motifs by the colour they begin in."""
    found: dict[str, int] = {}
    for chapter in page.chapters.values():
        if told := re.search(r"alike but for their first colour: ([^.]*)\.", _joined(chapter)):
            for number, colour in re.findall(rf"({LIST}) in (\w+)", told[1]):
                found[colour] = page.by_size(number)[size]
    return found


def _grams_to_the_metre(page: Page) -> dict[str, float]:
    found = {}
    for line in re.findall(r"• ([^•]*? to\s+the\s+ball)", page.chapters["Materials"]):
        told = _joined(line)
        ball = re.search(r"([0-9.]+) g and ([0-9]+) m", told)
        assert ball is not None
        for name in re.split(r", | and ", told.partition(":")[0]):
            found[name] = float(ball[1]) / float(ball[2])
    return found


def strands(page: Page, size: str) -> dict[str, float]:
    """Metres of tails and of what is sewn. A seam is sewn in the last colour of the piece that is named first."""
    found: dict[str, float] = defaultdict(float)
    index = page.sizes.index(size)
    block = next((part for part in page.chapters["Finishing"].split("\n\n") if part.startswith("Ends to weave in")), "")
    if not block:  # one length of yarn in each piece: it begins and ends once
        for piece in page.pieces.values():
            found[piece.colour] += 2 * TAIL * piece.make[size]
        return found
    header, *lines = block.splitlines()[1:]
    colours = re.split(r" {2,}", header.strip())[1:-1]
    for line in lines:
        cells = re.split(r" {2,}", line.strip())[1:-1]
        if len(cells) == len(colours) and not line.startswith("Joining: "):  # in what a joining length is reckoned with
            for colour, cell in zip(colours, cells, strict=True):
                ends = re.findall(r"[0-9]+", cell)
                found[colour] += TAIL * int(ends[min(index, len(ends) - 1)]) if ends else 0.0
    for colour, millimetres in _sewn(page, size):
        found[colour] += STRAND * millimetres / 1000
    return found


def _sewn(page: Page, size: str) -> Iterator[tuple[str, float]]:
    """Colour and mm of each seam."""
    for part in map(_joined, page.chapters.get("Making up", "").split("\n\n")):
        if found := re.search(rf"Join the [\w ]+ edge of the ([\w ]+?) to .*?: ({LIST}) (sts|rows) on each side", part):
            colour, fabric = _end_of(page, found[1], size)
            yield colour, page.by_size(found[2])[size] * (fabric.stitch_mm if found[3] == "sts" else fabric.row_mm)
        elif found := re.search(rf"Fold the (\w+) flat .*?: ({LIST}) sts to", part):
            colour, fabric = _end_of(page, found[1], size)
            yield colour, page.by_size(found[2])[size] * fabric.stitch_mm
        elif found := re.search(r"Place the ([\w ]+?) on the outside", part):
            piece = page.pieces[found[1]]
            colour, fabric = _end_of(page, found[1], size)
            yield colour, 2 * piece.last[size] * fabric.row_mm + piece.counts[size][1] * fabric.stitch_mm
    for chapter, text in page.chapters.items():
        if chapter.startswith("Joining: "):
            told = _joined(text)
            grid = re.search(rf"Join {LIST} of them: ({LIST}) rows of ({LIST})\.", told)
            colour = re.search(r"Join in (\w+): ", told)
            side = re.search(r"each side, with one corner, has ([0-9]+) sts", _joined(page.chapters[chapter.removeprefix("Joining: ")]))
            assert grid and colour and side
            down, across = page.by_size(grid[1])[size], page.by_size(grid[2])[size]
            fabric = next(iter(page.fabrics.values()))
            yield colour[1], (down * (across - 1) + across * (down - 1)) * int(side[1]) * fabric.stitch_mm


def _end_of(page: Page, name: str, size: str) -> tuple[str, Fabric]:
    *_, (_, _, fabric, colour) = rows_of(page.pieces[name], size)
    return colour, page.fabrics[fabric]


def printed(page: Page, size: str) -> dict[str, tuple[int, int]]:
    """Grams and balls of each colour as the page's tables have them."""
    index = page.sizes.index(size)
    balls = {row[0]: int(row[1 + index]) for row in page.table("Materials", "Balls by colour and size") if len(row) == len(page.sizes) + 1}
    grams = {row[0]: int(row[2 + index]) for row in page.table("Materials", "Yarn by colour and size") if len(row) == len(page.sizes) + 2 and row[1] == "g"}
    return {colour: (grams[colour], balls[colour]) for colour in balls}


def ball_grams(page: Page) -> float:
    found = re.search(r"([0-9.]+) g and [0-9]+ m", _joined(page.chapters["Materials"]))
    assert found is not None
    return float(found[1])


def balls_for(grams: float, ball: float) -> int:
    return math.ceil(grams / ball)
