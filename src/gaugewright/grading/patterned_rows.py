"""Stitch patterns laid over plain rows: whole repeats in the middle, plain stitches at shaped edges.

In: the rows of a strip as plain stitches, with all their shaping at the edges. Out: the same rows with the
pattern's stitches in them. Shaping stays where it is, in plain edge stitches. A repeat is taken up or given up
only where it can be: a new one on a plain ground, when the pattern begins again; one less where a row leaves
the pattern's own count. Rows that the pattern can't be ended on are worked plain, and so is the row into a
foundation or an edge.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from gaugewright.grading.cloth import Cloth
from gaugewright.grading.model import Operation, Placed, Row, Run, SpanStart, Strip, chain, skip, turning_chain, work
from gaugewright.grading.runs import joined, makes_of, uses_of
from gaugewright.stitch_patterns.nodes import Chains, Element, Group, Skips, Stitches, made
from gaugewright.stitch_patterns.pattern import StitchPattern, opening_stitch
from gaugewright.stitch_patterns.working import repeats_over
from gaugewright.trade.stitches import stitch


def with_patterns(strip: Strip, cloths: Mapping[str, Cloth]) -> Strip:
    """The strip with the patterns of its fabrics; `cloths` by fabric."""
    if not any(cloth.pattern for cloth in cloths.values()):
        return strip
    rows: list[Row] = []
    for fabric, first, last in _stretches(strip.rows):
        cloth = cloths.get(fabric)
        stretch = strip.rows[first:last]
        if cloth is None or cloth.pattern is None:
            rows += stretch
            continue
        plain = int(first == 0 and not isinstance(strip.start, SpanStart))
        rows += [*stretch[:plain], *_patterned(stretch[plain:], cloth, cloth.pattern, strip.worked != "rows")]
    return replace(strip, rows=tuple(rows))


def _stretches(rows: Sequence[Row]) -> Iterator[tuple[str, int, int]]:
    """Neighbouring rows of one fabric: its name, the first row and the one after the last."""
    first = 0
    for number in range(1, len(rows) + 1):
        if number == len(rows) or rows[number].fabric != rows[first].fabric:
            yield rows[first].fabric, first, number
            first = number


@dataclass(frozen=True, slots=True)
class _Parts:
    """A plain row taken apart: its turning chain, what shapes its first and last edge, the plain stitches between."""

    opening: tuple[Run, ...]
    head: tuple[Run, ...]
    middle: Run
    tail: tuple[Run, ...]
    forward: bool

    @property
    def used(self) -> tuple[int, int]:
        """Stitches of the row before that its shaping takes at the starting and at the far edge."""
        ends = uses_of((*self.opening, *self.head)), uses_of(self.tail)
        return ends if self.forward else ends[::-1]

    @property
    def gained(self) -> tuple[int, int]:
        """Stitches gained at the starting and at the far edge."""
        ends = makes_of(self.head) - uses_of(self.head), makes_of(self.tail) - uses_of(self.tail)
        return ends if self.forward else ends[::-1]


@dataclass(frozen=True, slots=True)
class _Window:
    """Where the pattern stands: its next row, its repeats and the stitches that row works over, plain stitches at
    the starting and at the far edge."""

    phase: int
    repeats: int
    over: int
    starting: int
    far: int


def _patterned(rows: Sequence[Row], cloth: Cloth, pattern: StitchPattern, in_rounds: bool) -> list[Row]:
    """Rows of one stretch, in the pattern up to the last that it can be ended on."""
    parts = [_taken_apart(row) for row in rows]
    level = pattern.level(in_rounds)
    found: list[Row] = []
    ended, window = 0, None
    for index, (row, part) in enumerate(zip(rows, parts, strict=True)):
        if window is None or level[_before(window, pattern, in_rounds)]:
            window = _laid(window, rows, parts, index, cloth, pattern, in_rounds)
        if window is None or part is None:
            found.append(row)
            window, ended = None, index + 1
            continue
        found.append(_worked(row, part, window, pattern, in_rounds))
        if level[window.phase]:
            ended = index + 1
        gained = part.gained
        over = made(_elements(window, pattern, in_rounds))
        window = _Window(pattern.after(window.phase, in_rounds), window.repeats, over, window.starting + gained[0], window.far + gained[1])
    return [*found[:ended], *rows[ended:]]


def _before(window: _Window, pattern: StitchPattern, in_rounds: bool) -> int:
    """The row of the cycle that the next one follows; the last one before the first."""
    return window.phase - 1 if window.phase else len(pattern.cycle(in_rounds)) - 1


def _laid(
    window: _Window | None, rows: Sequence[Row], parts: Sequence[_Parts | None], index: int, cloth: Cloth, pattern: StitchPattern, in_rounds: bool
) -> _Window | None:
    """The window for the rows up to the next one that leaves the pattern's own count; None: they stay plain."""
    begun = 0 if in_rounds else len(pattern.begun)
    phase = 0 if window is None else window.phase
    need = _needed(parts, index, phase, cloth, pattern, in_rounds)
    if need is None:
        return None
    kept = [max(need[edge], _beside(parts[index:], edge)) for edge in (0, 1)]
    if window is None:
        return _first(rows[index], (kept[0], kept[1]), pattern, in_rounds)
    step = pattern.of * (-(-FEWEST // pattern.of))
    trend = _trend(parts[index:])
    repeats, edges = window.repeats, [window.starting, window.far]
    if any(edges[edge] < need[edge] for edge in (0, 1)):
        for edge in (0, 1):
            while edges[edge] < need[edge] + (step - pattern.of if trend[edge] < 0 else 0):
                edges[edge], repeats = edges[edge] + pattern.of, repeats - 1
    growing = [edge for edge in (0, 1) if trend[edge] > 0]
    if phase == begun and growing and all(edges[edge] - kept[edge] >= step for edge in growing):
        phase = 0
        for edge in growing:
            more = (edges[edge] - kept[edge]) // pattern.of
            edges[edge], repeats = edges[edge] - more * pattern.of, repeats + more
    if repeats < 1:
        return None
    return _Window(phase, repeats, pattern.count(repeats, in_rounds), edges[0], edges[1])


FEWEST = 4
"""Repeats are taken up or given up so many stitches at a time at least, so that the maker is told less often."""


def _first(row: Row, need: tuple[int, int], pattern: StitchPattern, in_rounds: bool) -> _Window | None:
    """Where the pattern begins: on a right-side row if its faces differ, in the middle of its stitches."""
    if pattern.sided and not in_rounds and row.side == "WS":
        return None
    plus = 0 if in_rounds else pattern.plus
    repeats, spare = divmod(row.uses - plus - sum(need), pattern.of)
    if repeats < 1:
        return None
    return _Window(0, repeats, pattern.count(repeats, in_rounds), need[0] + spare // 2, need[1] + spare - spare // 2)


def _beside(parts: Sequence[_Parts | None], edge: int) -> int:
    """Plain stitches that a widening edge needs for its shaping, on whichever row that comes."""
    shaped = [part for part in parts if part is not None and (part.head or part.tail) and part.gained[edge] > 0]
    return max((part.used[edge] for part in shaped), default=0)


def _trend(parts: Sequence[_Parts | None]) -> list[int]:
    """Stitches that the rows to come gain at the starting and at the far edge."""
    gained = [part.gained for part in parts if part is not None]
    return [sum(one[edge] for one in gained) for edge in (0, 1)]


def _needed(
    parts: Sequence[_Parts | None], index: int, phase: int, cloth: Cloth, pattern: StitchPattern, in_rounds: bool
) -> tuple[int, int] | None:
    """Plain stitches that the coming rows' shaping takes at each edge; None where a row has no plain middle."""
    level = pattern.level(in_rounds)
    gained, need = [0, 0], [cloth.edge, cloth.edge]
    for part in parts[index:]:
        if part is None:
            return None
        shaped = [used if part.head or part.tail else 0 for used in part.used]
        for edge in (0, 1):
            need[edge] = max(need[edge], shaped[edge] - gained[edge])
            gained[edge] += part.gained[edge]
        if level[phase]:
            break
        phase = pattern.after(phase, in_rounds)
    return need[0], need[1]


def _taken_apart(row: Row) -> _Parts | None:
    """A row's parts; None for one without plain stitches, or shaped within."""
    opening = tuple(run for run in row.runs[:1] if run.operation.kind == "turning chain")
    runs = row.runs[len(opening) :]
    plain = [index for index, run in enumerate(runs) if run.operation.kind == "stitch"]
    if not plain:
        return None
    middle = max(plain, key=lambda index: runs[index].times)
    head, tail = runs[:middle], runs[middle + 1 :]
    if len(head) > 2 or len(tail) > 2:
        return None  # spread round a round: its stitches are not whole repeats
    return _Parts(opening, head, runs[middle], tail, row.side == "RS")


def _worked(row: Row, part: _Parts, window: _Window, pattern: StitchPattern, in_rounds: bool) -> Row:
    """The row with the pattern's stitches between its plain edge stitches."""
    first, last = (window.starting, window.far) if part.forward else (window.far, window.starting)
    elements = _elements(window, pattern, in_rounds)
    colour, fabric = part.middle.colour, part.middle.fabric
    opening, head = part.opening, first - uses_of(part.head) - uses_of(part.opening)
    taken = False
    if not first:
        opening, taken = _opened(elements[0], colour, fabric)
        head = 0
    inner = tuple(run for index, element in enumerate(elements) for run in _runs(element, colour, fabric, taken and not index))
    plain = part.middle.operation
    runs = (
        *opening, *part.head, *_times(plain, head, colour, fabric), *inner,
        *_times(plain, last - uses_of(part.tail), colour, fabric), *part.tail,
    )
    placed = Placed(window.phase, window.repeats, first, last, row.makes)
    return Row(joined(runs), row.side, placed)


def _elements(window: _Window, pattern: StitchPattern, in_rounds: bool) -> tuple[Element, ...]:
    """What the window's next row works, its repeat as often as it goes into the stitches there."""
    text = pattern.cycle(in_rounds)[window.phase]
    return text.worked(repeats_over(text, window.over))


def _opened(element: Element, colour: str, fabric: str) -> tuple[tuple[Run, ...], bool]:
    """The turning chain of a row that begins in the pattern: by its first stitch, in whose place it may stand."""
    name, counts = opening_stitch(element)
    if not stitch(name).chains:
        return (), False
    return (Run(turning_chain(name, counts), 1, colour, fabric),), counts


def _runs(element: Element, colour: str, fabric: str, taken: bool) -> Iterator[Run]:
    """An element as runs; its first stitch is `taken` where the turning chain stands for it."""
    for operation, times in _operations(element):
        times -= taken
        taken = False
        if times:
            yield Run(operation, times, colour, fabric)


def _operations(element: Element) -> Iterator[tuple[Operation, int]]:
    match element:
        case Stitches(name=name, times=times, hold=hold, together=1):
            yield work(name, hold), times
        case Stitches(name=name, times=times, hold=hold, together=together):
            yield Operation("together", f"{name}{together}tog", together, 1, hold), times
        case Chains(times=times):
            yield chain(), times
        case Skips(times=times):
            yield skip(), times
        case Group(parts=parts, space=space):
            yield from _in_one_place(parts, space)


def _in_one_place(parts: tuple[Stitches | Chains, ...], space: int) -> Iterator[tuple[Operation, int]]:
    """Only the first stitch uses the place; the others share it."""
    for index, part in enumerate(parts):
        if isinstance(part, Chains):
            yield chain(), part.times
            continue
        name = part.name if part.together == 1 else f"{part.name}{part.together}tog"
        shared = part.times
        if not index:
            shared -= 1
            kind = "space" if space else "stitch" if part.together == 1 else "cluster"
            yield Operation(kind, name, space or 1, 1, part.hold), 1  # type: ignore[arg-type]
        if shared:
            yield Operation("same place", name, 0, 1, part.hold), shared


def _times(operation: Operation, times: int, colour: str, fabric: str) -> tuple[Run, ...]:
    return (Run(operation, times, colour, fabric),) if times > 0 else ()
