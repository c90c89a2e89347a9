"""What a piece's schematic shows, from its graded rows."""

from collections.abc import Mapping

from gaugewright.design.model import Piece
from gaugewright.drawings.model import ColourBand, Measure, PieceFigure
from gaugewright.grading.model import GradedPiece, Outline, Point
from gaugewright.grading.plan import PiecePlan, ShouldersPlan
from gaugewright.sized import Sized


def piece_figure(piece: Piece, plans: Sized[PiecePlan], graded: Sized[GradedPiece], yarns: Mapping[str, tuple[str, str]], drawn: str) -> PieceFigure:
    """The piece in the size drawn, worked measures of all sizes. `yarns` gives name and colour by key."""
    outline, plan = graded[drawn].outline, plans[drawn]
    in_rounds = plan.worked != "rows"
    return PieceFigure(
        name=piece.key, title=piece.title, sizes=plans.labels, drawn_size=drawn, outline=simplified(outline.polygon()),
        bands=tuple(
            ColourBand(*yarns[band.colour], outline.heights[band.first - 1], outline.heights[band.last]) for band in plan.bands
        ),
        measures=tuple(_measures(piece, plans, graded, drawn, in_rounds)),
        edge_names=() if in_rounds else _edge_names(piece, plan, outline),
        marks=tuple((mark.level.replace("_", " "), (outline.starting if mark.side == "starting" else outline.far)[mark.row]) for mark in plan.marks),
        in_rounds=in_rounds,
    )


def simplified(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """The same outline without points that lie on a straight line between their neighbours."""
    kept: list[Point] = []
    for index, (x, y) in enumerate(points):
        (x0, y0), (x1, y1) = points[index - 1], points[(index + 1) % len(points)]
        if abs((x - x0) * (y1 - y0) - (x1 - x0) * (y - y0)) > 1e-6:
            kept.append((x, y))
    return tuple(kept)


def _measures(piece: Piece, plans: Sized[PiecePlan], graded: Sized[GradedPiece], drawn: str, in_rounds: bool) -> list[Measure]:
    outline, plan = graded[drawn].outline, plans[drawn]
    share = 0.5 if in_rounds else 1.0
    widths = graded.map(lambda g: tuple((f[0] - s[0]) for s, f in zip(g.outline.starting, g.outline.far, strict=True)))
    found: list[Measure] = []

    def across(name: str, rows: Sized[int]) -> None:
        row = rows[drawn]
        values = tuple(widths[label][number] / share for label, number in rows.items())
        found.append(Measure(name, "across", outline.starting[row], outline.far[row], values))

    girth = "Around" if in_rounds else "Width"
    bottom = piece.bottom.replace("_", " ")
    across(f"{girth} at the {bottom}" if bottom != "bottom" else f"{girth} at the bottom", plans.map(lambda _plan: 0))
    top = plans.map(lambda p: p.rows)
    widest = graded.map(lambda g: max(range(len(g.outline.starting)), key=lambda i: g.outline.far[i][0] - g.outline.starting[i][0]))
    if any(widths[label][row] > max(widths[label][0], widths[label][-1]) + 1 for label, row in widest.items()):
        across(f"{girth} at the widest", widest)
    if any(abs(widths[label][-1] - widths[label][0]) > 1 for label in plans.labels):
        across(f"{girth} at the top", top)
    shoulders = next((s for s in plan.sections if isinstance(s, ShouldersPlan)), None)
    if shoulders is not None:
        found += _shoulder_measures(graded, drawn)
    found += _heights(plans, graded, drawn)
    return found


def _shoulder_measures(graded: Sized[GradedPiece], drawn: str) -> list[Measure]:
    piece = graded[drawn]
    (left, y), (right, _) = piece.outline.starting[-1], piece.outline.far[-1]
    shoulder, neck = piece.edges["shoulder"].length, piece.edges["neck"].length
    return [
        Measure("Shoulder", "across", (left, y), (left + shoulder, y), tuple(g.edges["shoulder"].length for g in graded)),
        Measure("Neck", "across", (left + shoulder, y), (left + shoulder + neck, y), tuple(g.edges["neck"].length for g in graded)),
    ]


def _heights(plans: Sized[PiecePlan], graded: Sized[GradedPiece], drawn: str) -> list[Measure]:
    """Heights of the marks and of sections that change the width, each from the bottom; then the whole."""
    outline = graded[drawn].outline
    x = outline.far[0][0]
    found: list[Measure] = []
    rows_of: dict[str, Sized[int]] = {}
    for level in dict.fromkeys(mark.level for mark in plans.values[0].marks):
        rows_of[f"Height to the {level.replace('_', ' ')}"] = plans.map(lambda p, level=level: next(m.row for m in p.marks if m.level == level))  # type: ignore[misc]
    sections = plans.values[0].sections
    for index, section in enumerate(sections[:-1]):
        following = sections[index + 1]
        if section.rows and following.rows and type(section) is not type(following):
            rows_of[f"Height to the end of section {index + 1}"] = plans.map(lambda p, index=index: sum(s.rows for s in p.sections[: index + 1]))  # type: ignore[misc]
    rows_of["Whole height"] = plans.map(lambda p: p.rows)
    for name, rows in rows_of.items():
        values = tuple(graded[label].outline.heights[row] for label, row in rows.items())
        found.append(Measure(name, "up", (x, 0.0), (x, outline.heights[rows[drawn]]), values))
    return found


def _edge_names(piece: Piece, plan: PiecePlan, outline: Outline) -> tuple[tuple[str, Point], ...]:
    rows = {mark.level: mark.row for mark in plan.marks}
    found = []
    for edge in piece.edges:
        first = rows[edge.bottom] if edge.bottom else 0
        last = rows[edge.top] if edge.top else plan.rows
        points = outline.starting if edge.side == "starting" else outline.far
        found.append((edge.name.replace("_", " "), points[(first + last) // 2]))
    return tuple(found)
