"""Charts of motifs and discs agree with the words: both are worked separately, stitch by stitch, and give the same."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cache

import pytest
import shapely

from gaugewright.design.model import Motif
from gaugewright.drawings.primitives import Item, Label, Polygon, Polyline
from gaugewright.drawings.round_chart import UNIT, draw_round_chart, shown
from gaugewright.drawings.round_layout import PlacedRound, place_rounds
from gaugewright.drawings.round_rows import ChartRound, centre_plan, chart_rounds
from gaugewright.drawings.round_signs import chain_sign, join_sign, round_sign
from gaugewright.drawings.text_width import text_width
from gaugewright.grading.model import CentreStart
from gaugewright.instructions.nodes import Document, Figure, Heading, Paragraph, spans_text
from instructions.specs import SPECS, document, graded

Worked = tuple[str, int | None]
"""A stitch by name, and the stitch of the round before that it is worked into, as that round was worked; None in the ring."""


def charted() -> Iterator[tuple[str, str]]:
    """Every piece of the set that begins as a motif or a disc, by its spec and its key."""
    for name in SPECS:
        if "centre:" in SPECS[name]:
            for piece in graded(name).design.pieces:
                plan = graded(name).grading.plans[piece.key].values[0]
                section = centre_plan(plan)
                if isinstance(plan.start, CentreStart) and section is not None and section.rows > 1:
                    yield name, piece.key


PIECES = list(charted())


@cache
def rounds(name: str, key: str, size: str) -> tuple[ChartRound, ...]:
    pieces, plans = graded(name).grading.pieces[key], graded(name).grading.plans[key]
    return chart_rounds(pieces[size].main.rows, plans[size])


def sizes(name: str) -> tuple[str, ...]:
    return graded(name).bodies.labels


def in_words(doc: Document, title: str) -> dict[int, str]:
    """The sentences of a piece's rounds by their number."""
    found, chapter = {}, ""
    for block in doc.blocks:
        if isinstance(block, Heading) and block.level == 2:
            chapter = block.text
        if chapter == title and isinstance(block, Paragraph) and (m := re.match(r"Rnd\s(\d+)\b", block.label)):
            found.setdefault(int(m[1]), spans_text(block.spans).replace("\u00a0", " "))
    return found


@dataclass
class Reader:
    """Works a round from its words over the round before: the places it meets, and which of them are corners."""

    met: list[int] | None
    corners: set[int]
    at: int = 0
    found: list[Worked] = field(default_factory=list)
    made: set[int] = field(default_factory=set)

    def into(self, name: str, count: int = 1, places: int = 1) -> None:
        for _ in range(places):
            base = None if self.met is None else self.met[self.at]
            self.found += [(name, base)] * count
            self.at += 1

    def corner(self, parts: list[tuple[str, int]]) -> None:
        assert self.met is not None and self.met[self.at] in self.corners, "no corner here"
        size = sum(1 if name == "ch" else count for name, count in parts)
        self.made.add(len(self.found) + size // 2)
        for name, count in parts:
            self.found += [(name, self.met[self.at])] * (1 if name == "ch" else count)
        self.at += 1

    def part(self, text: str) -> None:
        if m := re.fullmatch(r"ch (\d)", text):  # in the ring: a corner space
            self.made.add(len(self.found))
            self.into("ch")
        elif m := re.fullmatch(r"(?:(\d+) )?([a-z ]+?) in the ring", text):
            self.into(m[2], places=int(m[1] or 1))
        elif m := re.fullmatch(r"\((.*)\) in the corner space", text):
            words = [re.fullmatch(r"(ch) (\d+)|(?:(\d+) )?([a-z ]+)", part) for part in m[1].split(", ")]
            assert all(words), text
            self.corner([(w[1], int(w[2])) if w[1] else (w[4], int(w[3] or 1)) for w in words if w])
        elif m := re.fullmatch(r"(?:(\d+) )?([a-z ]+?) in the corner st", text):
            self.corner([(m[2], int(m[1] or 1))])
        elif m := re.fullmatch(r"(?:(\d+) )?([a-z ]+?) in (?:next|last) st", text):
            self.into(m[2], int(m[1] or 1))
        elif m := re.fullmatch(r"(?:(\d+) )?([a-z ]+?) in each of (?:next|last) (\d+) sts", text):
            self.into(m[2], int(m[1] or 1), int(m[3]))
        elif m := re.fullmatch(r"([a-z ]+?) in each st around", text):
            assert self.met is not None
            self.into(m[1], places=len(self.met))
        else:
            raise AssertionError(f"no reading of {text!r}")

    def work(self, text: str) -> None:
        """All of a round between its opening and its join."""
        for stretch in re.split(r", (?=\*)|; then |, then ", text):
            m = re.fullmatch(r"(.*?, )?(\*\*?)(.*); (?:rep|work) from \2 (?:(\d+) more times|(once) more|(\d+) times in all)((?:, .*)?)", stretch)
            if not m:
                self.parts(stretch)
                continue
            self.parts(m[1] or "")
            for _ in range(int(m[4]) + 1 if m[4] else 2 if m[5] else int(m[6])):
                self.parts(m[3])
            self.parts(m[7])

    def parts(self, text: str) -> None:
        for part in re.split(r", (?![^(]*\))", text.strip(", ")):
            if part:
                self.part(part)


OPEN = r"(?:Ch (\d+) \(does not count as a st\), |Chain once to hold the loop \(not a st\), |With [^:]*: (?:ch (\d+) \(does not count as a st\), )?)?"


def read_round(text: str, before: int, corners: set[int], turned: str, number: int) -> tuple[list[Worked], set[int], int, bool, bool]:
    """A sentence worked: its stitches, its corners, the chain it opens with, whether it is joined and turned."""
    m = re.match(OPEN + r"(.*?),? (?:pull its tail until it is closed, )?(join with a sl st in the first [a-z ]+(?:, turn)?|do not join)", text)
    assert m, text
    forward = list(range(before))
    back = turned and number > 1
    met = None if number == 1 else [0, *forward[:0:-1]] if back and turned == "first" else forward[::-1] if back else forward
    work = re.sub(r", in (?:back|front) loops$", "", m[3].rstrip(","))
    reader = Reader(met, corners)
    reader.work(work[:1].lower() + work[1:])
    assert met is None or reader.at == len(met), text
    if each := re.search(r"Every (\d+)(?:st|nd|rd|th) st is a corner st", text):
        reader.made = set(range(int(each[1]) - 1, len(reader.found), int(each[1])))
    return reader.found, reader.made, int(m[1] or m[2] or 0), "join" in m[4] and "not" not in m[4], "turn" in m[4]


def first_of_turned(doc: Document, motif: bool) -> str:
    """Where the notes say that a turned round begins: in the stitch of the join, or beside it."""
    notes = [spans_text(block.spans) for block in doc.blocks if isinstance(block, Paragraph) and "joined and turned" in spans_text(block.spans)]
    told = [note for note in notes if ("motif" in note) == motif]
    assert len(told) == 1, notes
    return "first" if "the first st of a round goes into the same st as the joining" in told[0] else "beside"


@pytest.mark.parametrize(("name", "key"), PIECES)
def test_words_and_chart_give_the_same_stitches(name: str, key: str) -> None:
    piece = graded(name).design.piece(key)
    motif = isinstance(piece.sections[0], Motif)
    for size in sizes(name):
        doc = document(name, (size,))
        chart = rounds(name, key, size)
        turned = first_of_turned(doc, motif) if graded(name).grading.plans[key][size].worked == "turned rounds" else ""
        before, corners = 0, set[int]()
        told = in_words(doc, piece.title)
        for one in chart:
            found, corners, chain, joined, turns = read_round(told[one.number], before, corners, turned, one.number)
            assert found == [(stitch.name, stitch.base) for stitch in one.stitches], (size, one.number)
            assert (chain, joined, turns) == (one.turn, one.joined, bool(turned)), (size, one.number)
            assert sorted(corners) == list(one.corners), (size, one.number)
            before = len(found)


@pytest.mark.parametrize(("name", "key"), PIECES)
def test_charts_are_in_the_chapter_for_both_hands_with_the_signs_used(name: str, key: str) -> None:
    figures = {block.name: block for block in document(name).blocks if isinstance(block, Figure)}
    largest = max((rounds(name, key, size) for size in sizes(name)), key=len)
    part = shown(largest)
    for hand in ("right", "left"):
        figure = figures[f"{key}-rounds-{hand}"]
        texts = [item.text for item in figure.drawing.items if isinstance(item, Label)]
        assert [text for text in texts if text.isdigit()] == [str(number + 1) for number in range(part.rounds)]
        made = {stitch.name for one in largest[: part.rounds] for stitch in one.stitches}
        made |= {"ch"} if any(one.turn for one in largest) else set()
        made |= {"sl st"} if any(one.joined for one in largest) else set()
        named = {text.removesuffix(" in the back loop").removesuffix(" in the front loop") for text in texts}
        assert {text for text in named if not text.isdigit() and "sides" not in text} == {*made, "ring"}
        assert (f"the first {part.rounds} of" in figure.caption) == (part.rounds < len(largest))
        assert ("one side of" in figure.caption) == part.one_side
        way = "clockwise" if hand == "left" else "counterclockwise"
        assert re.search(rf"read {way}\b", figure.caption)


def shape(item: Item) -> shapely.Geometry:
    """What a sign covers on paper."""
    if isinstance(item, Label):
        half = text_width(item.text, item.size) / 2
        return shapely.box(item.x - half, item.y - 0.72 * item.size, item.x + half, item.y)
    line = shapely.Polygon(item.points) if isinstance(item, Polygon) else shapely.LineString(item.points)
    return line.buffer(item.width / 2)


def signs(placed: tuple[PlacedRound, ...]) -> list[tuple[shapely.Geometry, tuple[float, float] | None]]:
    """Every sign with its foot where it has one."""
    found = []
    for one in placed:
        feet = [stitch.foot for stitch in one.stitches]
        for stitch in one.stitches:
            items = list(round_sign(stitch, feet.count(stitch.foot) > 1, UNIT))
            found.append((shapely.union_all([shape(item) for item in items]), None if stitch.stitch.name == "ch" else stitch.foot))
        others = list(chain_sign(one.chain, one.round.turn, UNIT)) if one.round.turn else []
        others += [join_sign(one.chain, UNIT)] if one.round.joined else []
        if others:
            found.append((shapely.union_all([shape(item) for item in others]), None))
        x, y = one.number
        found.append((shape(Label(x * UNIT, -y * UNIT + 2.3 / 3, str(one.round.number), 2.3, "middle")), None))
    return found


def distinct() -> list[tuple[str, str]]:
    """One piece of each way of working and each stitch, so that every layout is measured once."""
    kinds = {}
    for name, key in PIECES:
        one = max((rounds(name, key, size) for size in sizes(name)), key=len)
        last = shown(one).rounds
        kinds.setdefault((tuple(stitch for made in one[:last] for stitch in made.stitches), one[0].joined, one[1].backward), (name, key))
    return list(kinds.values())


@pytest.mark.parametrize(("name", "key"), distinct())
def test_no_sign_overlaps_another_but_where_they_share_a_foot(name: str, key: str) -> None:
    largest = max((rounds(name, key, size) for size in sizes(name)), key=len)
    all_signs = signs(place_rounds(largest[: shown(largest).rounds]))
    tree = shapely.STRtree([one for one, _ in all_signs])
    for first, second in zip(*tree.query([one for one, _ in all_signs], predicate="intersects"), strict=True):
        if first >= second:
            continue
        (one, foot), (other, other_foot) = all_signs[first], all_signs[second]
        both = shapely.intersection(one, other)
        if foot is not None and foot == other_foot:
            both = both.difference(shapely.Point(foot[0] * UNIT, -foot[1] * UNIT).buffer(0.75 * UNIT))
        assert both.area < 1e-3, (first, second, both.centroid)
    assert len(all_signs) > 10


@pytest.mark.parametrize(("name", "key"), distinct())
def test_feet_stand_just_above_the_stitches_they_are_worked_into(name: str, key: str) -> None:
    largest = max((rounds(name, key, size) for size in sizes(name)), key=len)
    placed = place_rounds(largest)
    for below, one in zip(placed, placed[1:], strict=False):
        for stitch in one.stitches:
            ground = below.stitches[stitch.stitch.base or 0]
            assert shapely.Point(stitch.foot).distance(shapely.Point(ground.top)) < 0.31
            assert sum((top - foot) * up for top, foot, up in zip(stitch.top, stitch.foot, stitch.up, strict=True)) > 0.3


@pytest.mark.parametrize(("name", "key"), distinct())
def test_a_round_goes_counterclockwise_or_back(name: str, key: str) -> None:
    largest = max((rounds(name, key, size) for size in sizes(name)), key=len)
    for one in place_rounds(largest):
        points = [stitch.top for stitch in one.stitches]
        ring = shapely.LinearRing([one.number, *points]) if len(points) > 3 else None
        assert ring is None or shapely.is_ccw(ring) != one.round.backward


@pytest.mark.parametrize(("name", "key"), distinct())
def test_nothing_lies_outside_the_frame_and_the_left_hand_s_chart_is_the_mirror_image(name: str, key: str) -> None:
    largest = max((rounds(name, key, size) for size in sizes(name)), key=len)
    right, left = (draw_round_chart("A Piece", largest, "us", hand) for hand in (False, True))
    for drawing in (right, left):
        frame = shapely.box(0, 0, drawing.width, drawing.height)
        assert all(frame.contains(shape(item) if not isinstance(item, Label) or item.anchor == "middle" else shapely.Point(item.x, item.y)) for item in drawing.items)
    assert right.title != left.title and (right.width, right.height) == pytest.approx((left.width, left.height))
    bodies = [[item for item in drawing.items if not isinstance(item, Label)] for drawing in (right, left)]
    words = [[(item.text, item) for item in drawing.items if isinstance(item, Label) and item.anchor == "middle"] for drawing in (right, left)]
    middle = mirror_line(bodies[0][0], bodies[1][0])
    key_from = max(item.y for _, item in words[0])
    pairs = [(a, b) for a, b in zip(*bodies, strict=True) if min(y for _, y in a.points) < key_from]
    assert len(pairs) > 10
    for one, other in pairs:
        assert type(one) is type(other)
        assert [(round(2 * middle - x, 6), round(y, 6)) for x, y in one.points] == [(round(x, 6), round(y, 6)) for x, y in other.points]
    for (text, one_label), (other_text, other_label) in zip(*words, strict=True):
        assert text == other_text and 2 * middle - one_label.x == pytest.approx(other_label.x)


def mirror_line(one: Polyline | Polygon, other: Polyline | Polygon) -> float:
    """The line between an item and its image."""
    return (one.points[0][0] + other.points[0][0]) / 2


def test_a_large_motif_shows_one_side_and_a_large_disc_its_first_rounds() -> None:
    triangle, mat = (max((rounds(name, key, size) for size in sizes(name)), key=len) for name, key in (("motif-corners", "triangle"), ("round-mat", "mat")))
    assert shown(triangle).one_side and not shown(mat).one_side and shown(mat).rounds < len(mat)
    drawing = draw_round_chart("A Piece", triangle, "us")
    assert drawing.width < 170 and "one of 3 sides" in [item.text for item in drawing.items if isinstance(item, Label)]


def test_every_way_of_working_is_among_those_read() -> None:
    """The set has joined, turned and spiral rounds, corner stitches and corner spaces, and all heights but the tallest."""
    found = [rounds(name, key, sizes(name)[0]) for name, key in PIECES]
    assert len(PIECES) > 12
    assert {(one[0].joined, one[1].backward, bool(one[0].corners)) for one in found} >= {(True, False, True), (True, True, True), (True, False, False), (True, True, False), (False, False, False)}
    assert {stitch.name for one in found for made in one for stitch in made.stitches} >= {"sl st", "sc", "hdc", "dc", "ch"}
