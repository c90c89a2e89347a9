"""Steps at an edge in words: how many stitches on which rows, for one size or as a table for all."""

from collections.abc import Sequence

from gaugewright.grading.profile import EdgeStep, Way
from gaugewright.grading.shape_plans import EdgeParts
from gaugewright.instructions.nodes import Align, Table
from gaugewright.instructions.wording import Book, NO_BREAK, Spans, listed
from gaugewright.sized import Sized

Columns = tuple[tuple[str, Way], ...]
"""What is shaped and in which way: one column of a table each."""

FEWEST_IN_A_RANGE = 3
"""Row numbers in a row are written as a range from three on."""


MOST_GROUPS = 4
"""Steps that change oftener than a curve's phrases do are told by their stitches."""


def columns_of(edges: Sized[EdgeParts]) -> Columns:
    """The columns that some size needs, in the order of working."""
    found: dict[tuple[str, Way], None] = {}
    ways: tuple[Way, Way] = ("leave", "decrease")
    for name in dict.fromkeys(part.name for parts in edges for part in parts):
        for way in ways:
            if any(_steps(parts, name, way) for parts in edges):
                found[name, way] = None
    return tuple(found)


def _steps(parts: EdgeParts, name: str, way: Way) -> list[EdgeStep]:
    return [step for part in parts if part.name == name for step in part.profile.steps if step.way == way]


def edge_table(book: Book, title: str, edges: Sized[EdgeParts], first: Sized[int], counts: Sequence[tuple[str, Sized[int]]] = (), how: Sized[str] | None = None) -> Table:
    """A line for each size: how many stitches go on which rows of the piece, of each part of the edges named.

    `counts` add columns at the end, `how` one before the rows.
    """
    columns = columns_of(edges)
    rows = []
    for label, parts in edges.items():
        cells = [steps_text(book, _steps(parts, name, way), first[label]) or book.words["no-value"] for name, way in columns]
        if how is not None:
            cells.insert(0, how[label] or book.words["no-value"])
        rows.append((label, *cells, *(str(values[label]) for _, values in counts)))
    heads = [book.words[f"column-{way}"].format(part=book.words[f"part-{name}"]) for name, way in columns]
    heads = [book.words["how-often"], *heads] if how is not None else heads
    header = (book.words["size"], *heads, *(name for name, _ in counts))
    left: Align = "left"
    right: Align = "right"
    return Table(title, header, tuple(rows), (*(left for _ in range(len(heads) + 1)), *(right for _ in counts)))


def steps_text(book: Book, steps: Sequence[EdgeStep], first: int, row_word: str = "") -> str:
    """ "3 sts on Row 29; 1 st on Rows 30 to 32 and 35"; steps of the same stitches stand together while they follow,
    or all of them where one and two stitches go by turns."""
    groups: list[tuple[int, list[int]]] = []
    for step in steps:
        if not groups or groups[-1][0] != step.stitches:
            groups.append((step.stitches, []))
        groups[-1][1].append(first - 1 + step.row)
    if len(groups) > MOST_GROUPS:
        sizes = sorted({stitches for stitches, _ in groups})
        groups = [(size, [row for stitches, rows in groups if stitches == size for row in rows]) for size in sizes]
    return "; ".join(_group(book, stitches, rows, row_word or book.words["row"]) for stitches, rows in groups)


def _group(book: Book, stitches: int, rows: list[int], row_word: str) -> str:
    count = book.words["count-one" if stitches == 1 else "count-many"].replace("{count}", str(stitches)).replace(" ", NO_BREAK)
    key = "on-row" if len(rows) == 1 else "on-rows"
    return book.words[key].format(count=count, Row=row_word, rows=listed(book, ranges(rows, book.words["to"])))


def ranges(rows: Sequence[int], to: str) -> list[str]:
    """Row numbers, three or more that follow one another as a range.

    >>> ranges([30, 31, 33, 34, 35, 40], "to")
    ['30', '31', '33 to 35', '40']
    """
    runs: list[list[int]] = []
    for row in rows:
        if runs and row == runs[-1][-1] + 1:
            runs[-1].append(row)
        else:
            runs.append([row])
    found: list[str] = []
    for run in runs:
        found += [f"{run[0]} {to} {run[-1]}"] if len(run) >= FEWEST_IN_A_RANGE else [str(row) for row in run]
    return found


def edge_sentences(book: Book, parts: EdgeParts, first: int, place: str) -> list[Spans]:
    """The same in sentences, where a pattern is for one size only."""
    found = []
    for name, way in columns_of(Sized(("",), (parts,))):
        text = steps_text(book, _steps(parts, name, way), first)
        where = book.words[place].format(part=book.words[f"part-{name}"])
        found.append(book.sentence(f"shape-{way}-rows", Where=where, rows=text))
    return found
