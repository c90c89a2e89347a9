"""Small specs written in a test, read and graded; and rows in a compact text, for goldens and eyes.

Every fabric here counts 10 stitches and 10 rows to 10 cm unless it says otherwise, so that 1 cm is one of either.
"""

from gaugewright.design.model import Design
from gaugewright.design.resolve import resolve
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.model import CentreStart, ChainStart, DivideStart, EdgeStart, GoOnStart, GradedPiece, Row, SpanStart, Strip
from gaugewright.measurements import MEASURES, TABLES, size_labels
from gaugewright.sizing.bodies import bodies, environments
from gaugewright.spec import load_spec_text

HEAD = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
yarns:
  oat: {colour: "#d9c9a8"}
  kelp: {colour: "#3f5d4e"}
fabrics:
  plain: {stitch: hdc, gauge: "10 sts, 10 rows / 10 cm"}
  round: {stitch: hdc, worked: joined rounds, gauge: "10 sts, 10 rows / 10 cm"}
  tall: {stitch: dc, gauge: "10 sts, 5 rows / 10 cm"}
  rib: {stitch: sc, loop: back, gauge: "10 sts, 10 rows / 10 cm", multiple: {of: 4, plus: 2}}
"""

ONE_SIZE = HEAD + "sizes: {own: {M: {bust: 100 cm}}}\n"
THREE_SIZES = HEAD + "sizes: {own: {S: {bust: 80 cm}, M: {bust: 100 cm}, L: {bust: 120 cm}}}\n"
DROPPED_BACK = """\
levels: {shoulder: 40 cm, underarm: shoulder - 20 cm}
pieces:
  back:
    fabric: plain
    colours: oat
    start: {chain: 50 cm}
    sections: [even: {to: shoulder}, shoulders: {neck: 20 cm}]
    edges: {both: [side, underarm, armhole], bottom: hem}
"""


def designed(text: str) -> Design:
    """The design of a spec's text."""
    labels = {table: size_labels(table) for table in TABLES}
    return resolve(load_spec_text(text, "tiny.yaml", labels, MEASURES), labels)


def graded(text: str) -> Grading:
    """A spec's text graded."""
    design = designed(text)
    return grade(design, environments(design, bodies(design)))


def one_piece(text: str, key: str = "piece", size: str = "M") -> GradedPiece:
    """One graded piece of one size."""
    return graded(text).pieces[key][size]


def counts(text: str, key: str = "piece", size: str = "M") -> tuple[int, ...]:
    """The stitches after each row."""
    return tuple(one_piece(text, key, size).main.counts())


def problems(text: str) -> list[Problem]:
    """What grading finds wrong."""
    try:
        graded(text)
    except ProblemsFound as found:
        return list(found.problems)
    return []


def told(text: str) -> list[tuple[str, str, str]]:
    """The problems' names, the text of the line each stands on, and the sizes."""
    return [(p.name, p.origin.line_text.strip() if p.origin else "", p.size) for p in problems(text)]


SHORT = {"increase": "inc", "decrease": "dec", "turning chain": "ch", "picked up": "pick", "corner decrease": "corner dec", "corner increase": "corner inc", "leave": "leave", "slip over": "over", "skip": "skip", "wait": "wait", "anchor": "anchor"}


PATTERNED = {"same place": "in the same", "space": "under ch", "cluster": "in one", "together": ""}


def row_text(row: Row) -> str:
    """A row as it is worked: "RS kelp: ch(0) inc 5 hdc inc = 9"."""
    parts: list[str] = []
    colour = ""
    for run in row.runs:
        if run.colour != colour:
            colour = run.colour
            parts.append(f"{colour}:")
        operation = run.operation
        name = SHORT.get(operation.kind, operation.stitch)
        if operation.kind == "turning chain":
            parts.append(f"{name}({operation.makes})")
        elif operation.kind in PATTERNED:
            parts.append(f"{run.times} {operation.stitch} {PATTERNED[operation.kind]}{operation.uses if operation.kind == 'space' else ''}".rstrip())
        elif operation.kind == "stitch":
            loop = "" if operation.loop == "both" else f" {operation.loop}"
            parts.append(f"{run.times} {operation.stitch}{loop}")
        else:
            parts.append(name if run.times == 1 else f"{run.times} {name}")
    return f"{row.side} {' '.join(parts)} = {row.makes}"


def start_text(strip: Strip) -> str:
    """What a strip starts from."""
    start = strip.start
    if isinstance(start, ChainStart):
        return f"{'ring' if start.ring else 'chain'} of {start.chains} for {start.stitches}"
    if isinstance(start, CentreStart):
        return f"centre of {start.stitches}"
    if isinstance(start, EdgeStart):
        return "; ".join(f"{up.stitches} along {up.rows or up.of} {'rows' if up.rows else 'sts'} of {up.piece}.{up.edge}" for up in start.pick_ups)
    if isinstance(start, SpanStart):
        return f"stitches {start.first + 1} to {start.first + start.stitches} of {start.strip}"
    if isinstance(start, DivideStart):
        return f"{start.part} of {start.piece}: {start.works} of {start.takes} sts, {start.underarm} under the arm"
    if isinstance(start, GoOnStart):
        return f"first {start.stitches} sts of {start.piece}, {start.left} left as its {start.edge}"
    raise TypeError(f"no text for {start!r}")


def strip_text(strip: Strip) -> list[str]:
    """A strip's start and its rows, like rows together."""
    lines = [start_text(strip)]
    texts = [row_text(row) for row in strip.rows]
    breaks = {group.after for group in strip.short}
    first = 0
    while first < len(texts):
        last = first
        # Rows alike but for the side that is up, which alternates or stays by itself.
        while last + 1 < len(texts) and last + 1 not in breaks and texts[last + 1][3:] == texts[first][3:]:
            last += 1
        number = str(first + 1) if last == first else f"{first + 1}-{last + 1}"
        lines.append(f"{number:>5} {texts[first]}")
        lines += [f"{f'{group.after}.{place}':>7} {row_text(row)}" for group in strip.short for place, row in enumerate(group.rows, start=1) if group.after == last + 1]
        first = last + 1
    return lines
