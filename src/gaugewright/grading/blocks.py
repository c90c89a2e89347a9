"""Blocks of colour side by side: each block's stitches, graded once for its rows, and the rows cut into them.

The lines between blocks run straight up the cloth. Shaping at the edges falls in the outer blocks, so the
inner ones keep their stitches; shaping anywhere else, or an outer block shaped away, is a located problem.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import accumulate

from gaugewright.design.colours import BlockRows
from gaugewright.design.model import Design, Piece, Wedge
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.model import Gauge
from gaugewright.grading.colour_plans import BlockPlan
from gaugewright.grading.model import Row, Run
from gaugewright.rounding import down, half_up
from gaugewright.sizing.environment import Environment

Cut = tuple[int, str]
"""A block's last stitch, counted in the order of working, and its colour."""


SAME = 1e-6
"""Widths in stitches that differ by less are one: the last bits of a quotient."""


def block_stitches(part: BlockRows, stitches: int, gauge: Gauge, env: Environment) -> tuple[tuple[str, int], ...]:
    """Stitches of each block in a row of so many; they add up to the row, and none is without a stitch."""
    if len(part.blocks) == 1 and part.blocks[0].width is None:
        return ((part.blocks[0].colour, stitches),)
    whole = gauge.width_of(stitches)
    wanted = [None if block.width is None else gauge.stitches_in(env.share_or_length(block.width, whole)) for block in part.blocks]
    stated, resting = sum(width for width in wanted if width is not None), None in wanted
    if stated > stitches if resting else abs(stated - stitches) > 1:
        message = f"these blocks come to {gauge.width_of(stated) / 10:.1f} cm, and their row is {whole / 10:.1f} cm wide"
        hint = "make the others narrower, to leave something for the `rest`" if resting else "write `rest` for one of them, or widths that come to 100 % together"
        raise ProblemsFound([Problem("blocks-off-width", message, part.origin, hint, env.size)])
    counts = _with_rest(wanted, stitches) if resting else shared_out([width or 0.0 for width in wanted], stitches)
    for block, count in zip(part.blocks, counts, strict=True):
        if count < 1:
            message = f"the block of {block.colour} has no stitch in a row of {stitches} ({whole / 10:.1f} cm)"
            raise ProblemsFound([Problem("block-of-no-stitch", message, block.origin, "make it wider, the others narrower, or have fewer blocks", env.size)])
    return tuple((block.colour, count) for block, count in zip(part.blocks, counts, strict=True))


def _with_rest(wanted: list[float | None], stitches: int) -> list[int]:
    stated = [None if width is None else half_up(width) for width in wanted]
    rest = stitches - sum(count for count in stated if count is not None)
    return [rest if count is None else count for count in stated]


def shared_out(wanted: list[float], stitches: int) -> list[int]:
    """Whole stitches in proportion to widths that are to fill a row.

    Blocks that are alike from both edges stay so, and the middle one takes what is left; else the largest
    remainders are rounded up, from the outside in.

    >>> shared_out([10.75, 21.5, 10.75], 43), shared_out([1, 1, 1], 44), shared_out([1, 1, 1, 1], 10), shared_out([1, 2, 3], 10)
    ([11, 21, 11], [15, 14, 15], [3, 2, 2, 3], [2, 3, 5])
    """
    exact = [width / sum(wanted) * stitches for width in wanted]
    middle, last = len(wanted) // 2, len(wanted) - 1
    if len(wanted) % 2 and all(abs(one - other) < SAME for one, other in zip(exact, reversed(exact), strict=True)):
        counts = [half_up(one) for one in exact]
        counts[middle] = stitches - sum(counts[:middle]) - sum(counts[middle + 1 :])
        return counts
    counts = [down(one) for one in exact]
    order = sorted(range(len(exact)), key=lambda index: (-half_up((exact[index] - counts[index]) / SAME), min(index, last - index)))
    for index in order[: stitches - sum(counts)]:
        counts[index] += 1
    return counts


def block_plans(piece: Piece, ranges: tuple[tuple[int, int, int], ...], rows: tuple[Row, ...], design: Design, env: Environment) -> tuple[BlockPlan, ...]:
    """Stitches of all blocks; `ranges` are first row, last row and which of the piece's blocks they have.

    Rows above a division are not among `rows`: each side is worked by itself there.
    """
    found: list[BlockPlan] = []
    problems: list[Problem] = []
    for first, last, index in ranges:
        part = piece.colours.blocks[index]
        if first > len(rows) or (last > len(rows) and len(part.blocks) > 1):
            if len(part.blocks) > 1:
                message = f"rows {first} to {last} of {piece.key} have blocks, and from row {len(rows) + 1} on each side of its neck is worked by itself"
                problems.append(Problem("blocks-divided", message, part.origin, "let one yarn begin where the neck does: `{across: YARN}` last", env.size))
                continue
            found.append(BlockPlan(first, last, ((part.blocks[0].colour, 0),)))
            continue
        gauge = design.fabric(rows[first - 1].fabric).gauge
        try:
            plan = BlockPlan(first, last, block_stitches(part, rows[first - 1].makes, gauge, env))
        except ProblemsFound as faults:
            problems += faults.problems
            continue
        problems += _shaping_faults(piece, part, plan, rows, env)
        found.append(plan)
    if problems:
        raise ProblemsFound(problems)
    return tuple(found)


def _shaping_faults(piece: Piece, part: BlockRows, plan: BlockPlan, rows: tuple[Row, ...], env: Environment) -> list[Problem]:
    """The first row whose shaping isn't in the outer blocks alone."""
    if not plan.several:
        return []
    for number, lines in lines_of(plan, rows):
        row = rows[number - 1]
        if lines[0] < 1 or lines[-1] > row.makes - 1 or not _outside_only(row, number, lines):
            message = f"the shaping of row {number} of {piece.key} reaches beyond the outer blocks of its rows {plan.first} to {plan.last}"
            hint = "make the outer blocks wider, shape at the edges, or let these rows be of one yarn"
            return [Problem("blocks-shaped", message, part.origin, hint, env.size)]
    return []


def lines_of(plan: BlockPlan, rows: tuple[Row, ...]) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Each row's number and the stitches from its starting edge to each line between blocks, after that row."""
    lines = tuple(accumulate(stitches for _, stitches in plan.blocks))[:-1]
    for number in range(plan.first, plan.last + 1):
        if number > plan.first:
            gained = rows[number - 1].edge_changes()[0 if number % 2 else 1]
            lines = tuple(line + gained for line in lines)
        yield number, lines


def _outside_only(row: Row, number: int, lines: tuple[int, ...]) -> bool:
    """Whether all that changes the count lies between an edge and the line next to it."""
    first, last = (lines[0], lines[-1]) if number % 2 else (row.makes - lines[-1], row.makes - lines[0])
    made = 0
    for run in row.runs:
        after = made + run.operation.makes * run.times
        if run.operation.change and run.operation.kind != "picked up" and after > first and made < last:
            return False
        made = after
    return True


def with_blocks(rows: tuple[Row, ...], plans: tuple[BlockPlan, ...]) -> tuple[Row, ...]:
    """The same rows, those of several blocks cut at the lines between them."""
    found = list(rows)
    for plan in plans:
        if plan.several:
            colours = [colour for colour, _ in plan.blocks]
            for number, lines in lines_of(plan, rows):
                row = rows[number - 1]
                ends = (*lines, row.makes)
                cuts = list(zip(ends, colours, strict=True)) if number % 2 else _reversed(ends, colours)
                found[number - 1] = replace(row, runs=tuple(_cut(row.runs, cuts)))
    return tuple(found)


def _reversed(ends: tuple[int, ...], colours: list[str]) -> list[Cut]:
    """The same blocks in a row that begins at the far edge."""
    starts = (0, *ends[:-1])
    return [(ends[-1] - start, colour) for start, colour in zip(reversed(starts), reversed(colours), strict=True)]


def _cut(runs: tuple[Run, ...], cuts: list[Cut]) -> Iterator[Run]:
    """The runs in the colours of the blocks they are in; what makes no stitch goes with the one before it, or the first."""
    made = 0
    for run in runs:
        left, makes = run.times, run.operation.makes
        while left:
            inside = made < cuts[0][0] or len(cuts) == 1 or not makes
            if not inside:
                cuts = cuts[1:]
                continue
            room = left if not makes else max(1, min(left, (cuts[0][0] - made) // makes))
            yield replace(run, times=room, colour=cuts[0][1])
            made, left = made + room * makes, left - room


def block_faults(piece: Piece, design: Design) -> Iterator[Problem]:
    """Blocks that no size could have: in rounds that aren't turned, or two of one yarn side by side."""
    for part in piece.colours.blocks:
        if len(part.blocks) < 2:
            continue
        worked = design.fabric(piece.fabric).worked
        if piece.start.in_rounds and worked != "turned rounds":
            message = f"{piece.key} is worked in rounds that aren't turned, and there each block's yarn waits at its end when the round comes back to its beginning"
            yield Problem("blocks-in-rounds", message, part.origin, "give it a fabric with `worked: turned rounds`, or work it in rows from a chain")
        if any(isinstance(section, Wedge) for section in piece.sections):
            message = f"{piece.key} has a wedge, whose short rows would turn within blocks"
            yield Problem("blocks-shaped", message, part.origin, "take the wedge out, or let the piece have stripes, bands or one yarn")
        if any(design.fabric(section.fabric).pattern is not None for section in piece.sections):
            message = f"{piece.key} has a stitch pattern, whose repeats blocks would cut"
            yield Problem("blocks-in-pattern", message, part.origin, "give the piece a fabric with a plain stitch, or let it have stripes, bands or one yarn")
        for block, after in zip(part.blocks, part.blocks[1:], strict=False):
            if block.colour == after.colour:
                yield Problem("neighbours-alike", f"two blocks of {block.colour} lie side by side", after.origin, "write them as one block")
