"""What can't be made is told at its place with what would fit, and what the hint says, when written, fits."""

import re
from typing import NamedTuple

import pytest
from tiny_specs import ONE_SIZE, THREE_SIZES, designed, problems

from gaugewright import pipeline
from gaugewright.errors import Problem

GAUGES = ("10 sts, 10 rows / 10 cm", "13 sts, 9 rows / 10 cm")

BODY = """\
levels: {shoulder: 60 cm, underarm: shoulder - 22 cm}
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: 50 cm}
    sections:
      - even: {to: underarm}
      - armhole: {to: shoulder, target: 38 cm}
      - neck: {shape: round, width: 18 cm, depth: 6 cm}
    edges: {both: [side, underarm, armhole], bottom: hem}
  sleeve:
    fabric: plain
    colours: oat
    start: {chain: 34 cm}
    sections: [even: {rows: 4}, cap: {fit: [back.armhole, back.armhole]}]
seams:
  - {join: sleeve.cap, to: [back.armhole, back.armhole]}
"""
BACK = BODY.partition("  sleeve:")[0]
SLOPED = BACK.replace("depth: 6 cm}", "depth: 6 cm, slope: 3 cm}")
BAND = """\
pieces:
  panel: {fabric: plain, colours: oat, start: {chain: 20 cm}, sections: [even: {length: 20 cm}], edges: {starting: [front], far: [back]}}
  band:
    fabric: plain
    colours: kelp
    start: {pick_up: [panel.front]}
    sections: [even: {length: 5 cm}]
    buttonholes: {count: 3, size: 2 cm, edge: panel.front, first: 4 cm, last: 3 cm}
"""


def piece(start: str, sections: str, fabric: str = "plain", more: str = "") -> str:
    return f"pieces: {{piece: {{fabric: {fabric}, colours: oat, start: {{{start}}}, sections: [{sections}]{more}}}}}\n"


def raglan(start: str, section: str) -> str:
    return piece(f"ring: {start}", f"even: {{rounds: 1}}, raglan: {{{section}}}", "round")


class Ask(NamedTuple):
    """A sound spec, what is asked instead of what, the name it is told by, and how each hint is written into the spec:
    a pattern in the hint, and the text it takes the place of (a pattern too), with the hint's figure as \\\\1."""

    sound: str
    right: str
    wrong: str
    name: str
    hints: tuple[tuple[str, str, str], ...]


CM = r"([0-9.]+ cm)"
NARROWER, WIDTH = r"at least (\d+) stitch(?:es)? wider there", r"{was} - \1 * {stitch}"
ASKS = {
    "a cap that can't reach its armhole": Ask(BODY, "chain: 34 cm", "chain: 8 cm", "cap-impossible", ((rf"with \d+ stitches \({CM}\)", r"chain: 8 cm", r"chain: \1"),)),
    "a sleeve far too wide for its armhole": Ask(BODY, "chain: 34 cm", "chain: 90 cm", "cap-impossible", ((rf"with \d+ stitches \({CM}\)", r"chain: 90 cm", r"chain: \1"),)),
    "a neck of one stitch": Ask(piece("chain: 41 cm", "even: {rows: 30}, neck: {shape: round, width: 9 cm, depth: 6 cm}"), "width: 9 cm", "width: 1 cm", "neck-too-narrow", ((f"the neck at least {CM} wide", "width: 1 cm", r"width: \1"),)),
    "a neck wider than its shoulders": Ask(BODY, "width: 18 cm", "width: 40 cm", "neck-too-wide", ((f"the neck at most {CM} wide", "width: 40 cm", r"width: \1"), (NARROWER, "width: [0-9.]+ cm", WIDTH))),
    "a neck deeper than its armhole": Ask(BODY, "depth: 6 cm", "depth: 23 cm", "neck-too-deep", ((f"at most {CM} deep", "depth: 23 cm", r"depth: \1"),)),
    "an armhole deeper than its piece": Ask(BODY, "underarm: shoulder - 22 cm", "underarm: 50 cm - shoulder", "levels-out-of-order", ((f"to at least {CM}", "underarm: 50 cm - shoulder", r"underarm: \1"),)),
    "armholes that take nothing": Ask(BODY, "target: 38 cm", "target: 55 cm", "armhole-takes-nothing", ((f"`target` at most {CM}", "target: 55 cm", r"target: \1"),)),
    "a block wider than all that goes": Ask(BODY, "target: 38 cm", "target: 38 cm, block: 9 cm", "armhole-block-too-wide", ((f"`block` at most {CM}", "block: 9 cm", r"block: \1"),)),
    "an armhole without rows": Ask(BACK.replace("depth: 6 cm", "depth: 0.5 cm"), "shoulder - 22 cm", "shoulder - 1.2 cm", "armhole-too-shallow", ((f"at least {CM} deep", "shoulder - 1.2 cm", r"shoulder - \1"),)),
    "a slope higher than its rows": Ask(SLOPED, "slope: 3 cm", "slope: 40 cm", "armhole-too-shallow", (
        (f"`slope` at most {CM}", "slope: 40 cm", r"slope: \1"), (f"`slope` at most {CM}", "slope: [0-9.]+ cm", r"slope: \1"))),
    "a slope of more rows than stitches": Ask(SLOPED.replace("width: 18 cm", "width: 24 cm"), "slope: 3 cm", "slope: 12 cm", "slope-too-steep", ((f"`slope` at most {CM}", "slope: 12 cm", r"slope: \1"),)),
    "a slope on a single stitch": Ask(SLOPED, "width: 18 cm", "width: 36.4 cm", "slope-too-steep", ((f"the neck at least {CM} narrower", "width: 36.4 cm", r"width: 36.4 cm - \1"),)),
    "a half front narrower than its neck": Ask(piece("chain: 20 cm", "even: {rows: 30}, neck_edge: {shape: round, width: 9 cm, depth: 9 cm, at: far}"), "width: 9 cm", "width: 25 cm", "neck-too-wide",
        ((f"the neck at most {CM} wide", "width: 25 cm", r"width: \1"), (NARROWER, "width: [0-9.]+ cm", WIDTH))),
    "shoulders without stitches": Ask(piece("chain: 30 cm", "even: {rows: 9}, shoulders: {neck: 12 cm}"), "neck: 12 cm", "neck: 31 cm", "neck-too-wide", ((f"the neck at most {CM} wide", "neck: 31 cm", r"neck: \1"),)),
    "a top of two stitches": Ask(piece("chain: 30 cm", "even: {rows: 9}, shoulders: {neck: 1 cm}"), "chain: 30 cm", "chain: 1.6 cm", "neck-too-wide", ((f"at least {CM} wide", "chain: 1.6 cm", r"chain: \1"),)),
    "a taper steeper than its rows": Ask(piece("chain: 20 cm", "even: {rows: 1}, taper: {rows: 20, target: 60 cm}"), "rows: 20", "rows: 3", "taper-too-steep", ((r"at least (\d+) rows", "rows: 3", r"rows: \1"),)),
    "a gather in too few rounds": Ask(piece("ring: 20 cm", "even: {rounds: 1}, taper: {rounds: 4, target: 90 cm}", "round"), "rounds: 4", "rounds: 1", "taper-too-steep",
        ((r"at least (\d+) shaping rounds", "taper: {rounds: 1", r"taper: {rounds: \1"),)),
    "more stitches each time than an edge takes": Ask(piece("chain: 20 cm", "even: {rows: 1}, taper: {each: 4, target: 60 cm}"), "each: 4", "each: 16", "taper-too-steep", ((r"`each: (\d+)` or less", "each: 16", r"each: \1"),)),
    "a taper that loses all its stitches": Ask(piece("chain: 20 cm", "even: {rows: 1}, taper: {rows: 3, each: -4}"), "rows: 3", "rows: 9", "nothing-left", ((r"at most (\d+) shaping rows", r"rows: \d+, each", r"rows: \1, each"),)),
    "a count that whole steps don't reach": Ask(piece("chain: 20 cm", "even: {rows: 1}, taper: {each: 2, stitches: 60}"), "stitches: 60", "stitches: 61", "steps-miss-target",
        ((r"write (\d+) or", "stitches: 61", r"stitches: \1"),)),
    "a crown that can't close": Ask(piece("ring: 50 cm", "even: {rounds: 2}, crown: {close: true, stitches: 9}", "round"), "stitches: 9", "stitches: 80", "nothing-to-shape", ((r"`stitches: (\d+)` or less", "stitches: 80", r"stitches: \1"),)),
    "a raglan that doesn't meet": Ask(raglan("44 cm", "length: 25 cm, body: 100 cm, sleeve: 36 cm, underarm: 6 cm"), "length: 25 cm", "length: 5 cm", "raglan-does-not-meet", ((f"at least {CM} deep", "length: 5 cm", r"length: \1"),)),
    "a raglan's body too narrow": Ask(raglan("60 cm", "length: 30 cm, body: 100 cm, sleeve: 36 cm, underarm: 6 cm"), "body: 100 cm", "body: 40 cm", "raglan-does-not-meet", ((f"`body` at least {CM}", "body: 40 cm", r"body: \1"),)),
    "a raglan's sleeves that take the neck": Ask(raglan("44 cm", "length: 30 cm, body: 100 cm, sleeve: 40 cm, underarm: 6 cm, neck_sleeve: 6 cm"), "neck_sleeve: 6 cm", "neck_sleeve: 24 cm", "raglan-does-not-meet",
        ((f"neck wider than {CM}", "ring: 44 cm", r"ring: \1 + 2 cm"),)),
    "too many buttonholes": Ask(BAND, "count: 3", "count: 14", "buttonholes-do-not-fit", ((r"`count: (\d+)`", "count: 14", r"count: \1"),)),
    "a buttonhole longer than its band has before it": Ask(BAND, "size: 2 cm", "size: 10 cm", "buttonholes-do-not-fit",
        ((r"`count: (\d+)`", "count: 3", r"count: \1"), (f"`first` at least {CM}", "first: 4 cm", r"first: \1"), (f"`last` at least {CM}", "last: 3 cm", r"last: \1"))),
    "a band too low for buttonholes": Ask(BAND, "length: 5 cm", "length: 1.5 cm", "buttonholes-do-not-fit", ((f"at least {CM} deep", "length: 1.5 cm", r"length: \1"),)),
    "a part that leaves no room": Ask(piece("chain: 20 cm", "even: {length: 30 cm}, even: {length: rest}", more=", total: 40 cm"), "total: 40 cm", "total: 20 cm", "no-room",
        ((f"the whole at least {CM} longer", "total: 20 cm", r"total: 20 cm + \1"),)),
    "a section of no rows": Ask(piece("chain: 20 cm", "even: {length: 30 cm}"), "length: 30 cm", "length: 0.2 cm", "too-short", ((f"one row long, {CM}", "length: 0.2 cm", r"length: \1"),)),
}


def following(text: str, told: list[Problem], ask: Ask, stitch: str) -> str:
    """The spec with what the first hint says that can be written; a figure may come off what stands there."""
    for pattern, place, written in ask.hints:
        found = next((hit for problem in told if (hit := re.search(pattern, problem.hint))), None)
        was = re.search(place, text)
        if found and was:
            return text.replace(was[0], found.expand(written).replace("{was}", was[0]).replace("{stitch}", stitch), 1)
    raise AssertionError([problem.hint for problem in told])


@pytest.mark.parametrize("gauge", GAUGES)
@pytest.mark.parametrize("name", ASKS)
def test_an_impossible_ask_says_what_would_fit(name: str, gauge: str) -> None:
    ask, head = ASKS[name], ONE_SIZE.replace(GAUGES[0], gauge)
    assert ask.sound.count(ask.right) >= 1
    assert problems(head + ask.sound) == [], "the ask is sound but for one thing"
    text = ask.sound.replace(ask.right, ask.wrong, 1)
    told = problems(head + text)
    assert ask.name in [problem.name for problem in told], [problem.name for problem in told]
    for problem in told:
        assert problem.origin is not None and problem.size == "M" and problem.message and problem.hint
    for _ in range(3):
        text = following(text, told, ask, f"10 cm / {gauge.partition(' ')[0]}")
        told = problems(head + text)
        if not told:
            return
    raise AssertionError([(problem.message, problem.hint) for problem in told])


def test_a_head_that_does_not_pass_is_told_what_would_let_it() -> None:
    text = ONE_SIZE + "openings:\n  - {name: neck, around: [piece.top], passes: head}\n" + piece("ring: 50 cm", "even: {rounds: 3}, taper: {rounds: 8, target: 40 cm}", "round")
    [tight] = pipeline.errors_of(pipeline.check(pipeline.grade(designed(text))))
    assert tight.name == "opening-tight"
    around = re.search(rf"at least {CM} around", tight.hint)
    assert around
    followed = text.replace("target: 40 cm", f"target: {around[1]}, round: up")
    assert pipeline.errors_of(pipeline.check(pipeline.grade(designed(followed)))) == ()


def test_sizes_of_nothing_among_others_are_named() -> None:
    text = THREE_SIZES + piece("chain: body.bust - 100 cm", "even: {rows: 30}")
    [told] = problems(text)
    assert (told.name, told.size) == ("multiple-does-not-fit", "S, M")
    least = re.search(r"at least (\d+) stitch", told.hint)
    assert least
    assert problems(text.replace("body.bust - 100 cm", f"'max(body.bust - 100 cm, {least[1]} cm)'")) == []


def test_a_taper_that_goes_both_ways_says_where_it_begins() -> None:
    text = THREE_SIZES + piece("chain: 40 cm", "even: {rows: 3}, taper: {rows: 30, target: body.bust - 60 cm}")
    [told] = problems(text)
    assert told.name == "taper-both-ways" and "its stitches begin at 40 in L, 40 in S" in told.hint
    assert problems(text.replace("target: body.bust - 60 cm", "target: 'max(body.bust - 60 cm, 40 cm)'")) == []


def test_an_edge_too_short_for_a_repeat_is_told() -> None:
    text = ONE_SIZE.replace("of: 4, plus: 2", "of: 24, plus: 2") + BAND.partition("    buttonholes")[0].replace("fabric: plain\n    colours: kelp", "fabric: rib\n    colours: kelp").replace("length: 20 cm", "length: 8 cm").replace("length: 5 cm", "rows: 5")
    [told] = problems(text)
    assert told.name == "multiple-does-not-fit"
    least = re.search(r"(\d+) stitches wide", told.hint)
    assert least
    assert problems(text.replace("length: 8 cm", f"length: {least[1]} cm")) == []
