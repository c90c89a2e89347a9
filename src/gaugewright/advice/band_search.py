"""Which widths of the colour bands the yarn in hand would do: every place of their lines, by whole rows.

The order of the colours stays, every band keeps a row at least, and of all that fit the one is taken whose lines move
least. What is found is graded again before it is told.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import combinations, pairwise
from math import comb

from gaugewright import pipeline
from gaugewright.advice.band_rows import BandGroup, band_groups
from gaugewright.advice.yarn_in_hand import found_amounts
from gaugewright.design.formula import Formula
from gaugewright.design.model import Design
from gaugewright.errors import ProblemsFound
from gaugewright.formulas import parse_formula
from gaugewright.yarn.amounts import Amount
from gaugewright.yarn.counted import counted
from gaugewright.yarn.weighing import weighing

MOST = 20_000
"""Places of lines looked through in one list of bands; of more the nearest ones."""


@dataclass(frozen=True, slots=True)
class BandChange:
    """Bands that would do: the pieces, rows of each band from the bottom up as they are and as they would be, and what to
    write under `heights`.
    """

    titles: tuple[str, ...]
    colours: tuple[tuple[str, ...], ...]
    old: tuple[int, ...]
    new: tuple[int, ...]
    heights: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BandsThatFit:
    """Changes that make the size out of what is there, none where there are none; `with_margin` says whether the margin is
    left too, `all_seen` whether every place of every line was looked at.
    """

    changes: tuple[BandChange, ...]
    with_margin: bool
    all_seen: bool


@dataclass(frozen=True, slots=True)
class _Place:
    """Lines somewhere: how many rows they moved, and grams by colour."""

    moved: int
    lines: tuple[int, ...]
    grams: Mapping[str, float]


def bands_that_fit(graded: pipeline.Graded, size: str, held: Mapping[str, float]) -> BandsThatFit | None:
    """The nearest bands for which the yarn does, first with the margin, then without; None where nothing has bands."""
    found = found_amounts(graded, size)
    groups = band_groups(graded, size, _weigh(graded, size))
    if not groups:
        return None
    seen = all(_within(group) == group.lead.rows for group in groups)
    for margin in (True, False):
        chosen = _nearest(groups, found, held, margin)
        if chosen is not None and any(place.moved for place in chosen):
            changed = _with_lines(graded.design, groups, chosen, graded, size)
            if _does(changed, size, held, margin):
                return BandsThatFit(tuple(_change(group, place, graded, size) for group, place in zip(groups, chosen, strict=True) if place.moved), margin, seen)
    return BandsThatFit((), False, seen)


def _weigh(graded: pipeline.Graded, size: str) -> Mapping[tuple[str, str], float]:
    """Grams of a stitch in every fabric and colour, used together or not yet."""
    shares = counted(graded.design, pipeline.pieces_of(graded, size))
    every = [one._replace(fabric=fabric, colour=yarn.key) for one in shares[:1] for fabric in {share.fabric for share in shares} for yarn in graded.design.yarns]
    weights = weighing(graded.design, every)
    return weights.middle.stitch if weights is not None else {}


def _nearest(groups: tuple[BandGroup, ...], found: Mapping[str, Amount], held: Mapping[str, float], margin: bool) -> tuple[_Place, ...] | None:
    """Of all places that leave no colour short, those that move fewest rows."""
    places = [sorted(_places(group), key=lambda place: (place.moved, place.lines)) for group in groups]
    room = {colour: _room(found.get(colour), have, margin) for colour, have in held.items()}
    for group in groups:
        for colour, grams in group.grams(group.lead.lines).items():
            if colour in room:
                room[colour] += grams
    least = [{colour: min(place.grams.get(colour, 0.0) for place in each) for colour in room} for each in places]
    best: tuple[int, tuple[_Place, ...]] | None = None

    def look(index: int, moved: int, left: Mapping[str, float], chosen: tuple[_Place, ...]) -> None:
        nonlocal best
        if index == len(places):
            best = moved, chosen
            return
        for place in places[index]:
            if best is not None and moved + place.moved >= best[0]:
                return
            rest = {colour: grams - place.grams.get(colour, 0.0) for colour, grams in left.items()}
            if all(grams + 1e-6 >= sum(one[colour] for one in least[index + 1 :]) for colour, grams in rest.items()):
                look(index + 1, moved + place.moved, rest, (*chosen, place))

    look(0, 0, room, ())
    return None if best is None else best[1]


def _room(amount: Amount | None, have: float, margin: bool) -> float:
    """Grams of a colour left for bands to move into: in hand, less all that it takes now. May be less than nothing."""
    if amount is None:
        return have
    apart = amount.counted.swatches if amount.buying.swatches_in_balls else 0.0
    return (have - apart) / (1 + amount.buying.margin * margin) - amount.counted.total


def _places(group: BandGroup) -> Iterator[_Place]:
    now, rows, within = group.lead.lines, group.lead.rows, _within(group)
    near = [row for row in range(1, rows) if any(abs(row - line) <= within for line in now)]
    for lines in combinations(near, len(now)):
        if not group.shows_all(lines):
            continue
        yield _Place(sum(abs(a - b) for a, b in zip(lines, now, strict=True)), lines, group.grams(lines))


def _within(group: BandGroup) -> int:
    """How many rows a line may move: all, unless there are too many places to look at."""
    lines, rows = len(group.lead.lines), group.lead.rows
    return next((within for within in range(rows, 0, -1) if comb(min(rows - 1, lines * (2 * within + 1)), lines) <= MOST), 1)


def _shares(group: BandGroup, lines: tuple[int, ...], graded: pipeline.Graded, size: str) -> tuple[str, ...]:
    """Heights of the bands as shares of what they fill, the top one taking the rest."""
    env, lead = graded.grading.environments[size], group.lead
    heights = lead.heights
    top = group.bands.top or lead.piece.total
    whole = heights[-1] if top is None else env.length(top)
    return (*(f"{(heights[after] - heights[before]) / whole * 100:.2f} %" for before, after in pairwise((0, *lines))), "rest")


def _with_lines(design: Design, groups: tuple[BandGroup, ...], chosen: tuple[_Place, ...], graded: pipeline.Graded, size: str) -> pipeline.Graded | None:
    """The pattern graded with these bands; None where some size then can't be made."""
    new = {}
    for group, place in zip(groups, chosen, strict=True):
        texts = _shares(group, place.lines, graded, size)
        heights = tuple(None if text == "rest" else Formula(parse_formula(text), text, group.bands.origin) for text in texts)
        new[str(group.bands.origin.location)] = replace(group.bands, heights=heights)
    pieces = tuple(
        replace(piece, colours=replace(piece.colours, bands=new[str(piece.colours.bands.origin.location)]))
        if piece.colours.bands and str(piece.colours.bands.origin.location) in new else piece
        for piece in design.pieces
    )
    try:
        return pipeline.grade(replace(design, pieces=pieces))
    except ProblemsFound:
        return None


def _does(graded: pipeline.Graded | None, size: str, held: Mapping[str, float], margin: bool) -> bool:
    """Whether the yarn in hand does for the pattern as it is graded now."""
    if graded is None:
        return False
    found = found_amounts(graded, size)
    need = {key: one.total if margin else one.used(one.counted) for key, one in found.items()}
    return all(need.get(colour, 0.0) <= have + 1e-6 for colour, have in held.items())


def _change(group: BandGroup, place: _Place, graded: pipeline.Graded, size: str) -> BandChange:
    old, new = (tuple(after - before for before, after in pairwise((0, *lines, group.lead.rows))) for lines in (group.lead.lines, place.lines))
    members = tuple(member.piece for member in group.members)
    return BandChange(tuple(piece.title for piece in members), tuple(piece.colours.order for piece in members), old, new, _shares(group, place.lines, graded, size))
