"""A small pullover for checks to pass, and the means to damage its spec or its graded rows."""

from collections.abc import Callable
from dataclasses import replace

from gaugewright.checks import CHECKS, CheckResult, run_checks
from gaugewright.checks.model import Found, Subject
from gaugewright.checks.remeasure import subject_of
from gaugewright.design.model import Design
from gaugewright.design.resolve import resolve
from gaugewright.errors import Problem
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.model import GradedPiece, Row, Strip
from gaugewright.grading.plan import PiecePlan
from gaugewright.measurements import MEASURES, TABLES, size_labels
from gaugewright.measurements.model import Body
from gaugewright.sized import Sized
from gaugewright.sizing.bodies import bodies, environments
from gaugewright.spec import load_spec_text

LABELS = {table: size_labels(table) for table in TABLES}
FILE = "pullover.yaml"

PULLOVER = """\
gaugewright: 1
pattern: {title: Quayside Pullover}
sizes:
  make: [A, B, C]
  own:
    A: {bust: 86 cm, upper_arm: 28 cm, hip: 90 cm, hand: 18 cm, head: 56 cm, back_waist_length: 42 cm}
    B: {bust: 94 cm, upper_arm: 31 cm, hip: 98 cm, hand: 20 cm, head: 57 cm, back_waist_length: 43 cm}
    C: {bust: 102 cm, upper_arm: 34 cm, hip: 106 cm, hand: 22 cm, head: 58 cm, back_waist_length: 44 cm}
  ease: {bust: 16 cm}
yarns:
  oat: {colour: "#d9c9a8"}
  kelp: {colour: "#3f5d4e"}
fabrics:
  body: {stitch: hdc, swatch: {stitches: 20, rows: 20, width: 20 cm, height: 20 cm, thickness: 5 mm}}
  tube: {like: body, worked: joined rounds, parity: even}
levels:
  shoulder: 52 cm
  underarm: shoulder - 21 cm
bands:
  tide: {to: shoulder, heights: [20 cm, rest]}
pieces:
  back:
    fabric: body
    start: {chain: (body.bust + ease.bust) / 2}
    sections:
      - even: {to: shoulder}
      - shoulders: {neck: 24 cm}
    edges: {both: [side, underarm, armhole], bottom: hem}
    colours: {bands: tide, order: [oat, kelp]}
  front:
    like: back
    colours: {bands: tide, order: [kelp, oat]}
  sleeve:
    make: 2
    fabric: tube
    start: {ring: body.hand + 4 cm}
    sections:
      - taper: {target: edge(back.armhole) + edge(front.armhole), length: 40 cm, round: up}
    edges: {bottom: cuff, top: sleeve_top}
    colours: kelp
seams:
  - {join: back.shoulder, to: front.shoulder, take_up: edge to edge}
  - {join: sleeve.sleeve_top, to: [back.armhole, front.armhole], take_up: edge to edge}
  - {join: back.side, to: front.side, take_up: half stitch}
openings:
  - {name: cuff, around: [sleeve.cuff], passes: hand, stretch: 10 %}
finished:
  bust: {measure: finished(back.width) + finished(front.width), wanted: body.bust + ease.bust, of: bust}
  length: {measure: finished(back.length), wanted: shoulder}
  upper_arm: {measure: finished(sleeve.widest), of: upper_arm}
"""


def damaged(*changes: str) -> str:
    """The pullover with texts exchanged, each given as "old => new"."""
    text = PULLOVER
    for change in changes:
        old, _, new = change.partition(" => ")
        assert text.count(old) >= 1, f"the pullover has no {old!r}"
        text = text.replace(old, new)
    return text


def pullover(text: str = PULLOVER) -> tuple[Design, Sized[Body], Grading]:
    """The spec taken through every stage up to graded rows."""
    design = resolve(load_spec_text(text, FILE, LABELS, MEASURES), LABELS)
    of_sizes = bodies(design)
    return design, of_sizes, grade(design, environments(design, of_sizes))


def checked(text: str = PULLOVER) -> tuple[CheckResult, ...]:
    """What all checks say about a spec."""
    return run_checks(*pullover(text))


def told_by(name: str, text: str = PULLOVER) -> tuple[Problem, ...]:
    """The problems of one check."""
    return next(result.problems for result in checked(text) if result.name == name)


def problems_of(check: Callable[[Subject], Found], graded: tuple[Design, Sized[Body], Grading]) -> tuple[Problem, ...]:
    """The problems of one check about pieces that may have been doctored."""
    assert check in [each for _, _, each in CHECKS]
    return check(subject_of(*graded)).problems


def places(problems: tuple[Problem, ...], text: str = PULLOVER) -> list[tuple[str, str, str, str]]:
    """Name, severity, sizes and the words at the place of each problem, up to 24 characters."""
    lines = text.split("\n")
    found = []
    for one in problems:
        assert one.message and one.hint, one.name
        at = ""
        if one.origin is not None:
            assert one.origin.location.file == FILE
            at = lines[one.origin.location.line - 1][one.origin.location.column - 1 :][:24]
        found.append((one.name, one.severity, one.size, at))
    return found


def with_piece(grading: Grading, key: str, size: str, change: Callable[[GradedPiece], GradedPiece]) -> Grading:
    """The grading with one graded piece of one size changed."""
    sized = grading.pieces[key]
    values = tuple(change(piece) if label == size else piece for label, piece in sized.items())
    return replace(grading, pieces={**grading.pieces, key: Sized(sized.labels, values)})


def with_plan(grading: Grading, key: str, size: str, change: Callable[[PiecePlan], PiecePlan]) -> Grading:
    """The grading with one plan of one size changed."""
    sized = grading.plans[key]
    values = tuple(change(plan) if label == size else plan for label, plan in sized.items())
    return replace(grading, plans={**grading.plans, key: Sized(sized.labels, values)})


def with_rows(piece: GradedPiece, change: Callable[[tuple[Row, ...]], tuple[Row, ...]]) -> GradedPiece:
    """The piece with the rows of its only strip changed."""
    strip = piece.main
    return replace(piece, strips=(Strip(strip.name, strip.start, strip.worked, change(strip.rows)),))
