"""What a piece's schematic shows, from its graded rows."""

from collections.abc import Mapping

from gaugewright.design.model import Piece
from gaugewright.drawings.band_figures import with_corners_and_holes
from gaugewright.drawings.colour_plan import colour_plan, opened
from gaugewright.drawings.crown_figures import disc_figure, from_centre, is_disc, lying
from gaugewright.drawings.model import Measure, PieceFigure
from gaugewright.drawings.motif_figures import motif_figure, motif_of
from gaugewright.drawings.rim_figures import border_figure, rim_pick
from gaugewright.drawings.top_measures import is_shaped, top_measures
from gaugewright.drawings.raglan_figures import from_neck, hangs
from gaugewright.drawings.wedge_measures import wedge_marks, wedge_measures
from gaugewright.drawings.triangle_figures import triangle_figure
from gaugewright.drawings.slit_lines import heights_to_slits, slits_of
from gaugewright.drawings.round_yoke_figures import as_spread
from gaugewright.grading.model import GradedPiece, Outline, Point
from gaugewright.grading.plan import PiecePlan, SectionPlan, ShouldersPlan, SpreadPlan, TaperPlan
from gaugewright.sized import Sized


def piece_figure(piece: Piece, plans: Sized[PiecePlan], graded: Sized[GradedPiece], yarns: Mapping[str, tuple[str, str]], drawn: str) -> PieceFigure:
    """The piece in the size drawn, worked measures of all sizes. `yarns` gives name and colour by key."""
    graded = as_spread(plans, graded)
    outline, plan = graded[drawn].outline, plans[drawn]
    in_rounds = plan.worked != "rows"
    motif = motif_of(piece)
    if motif is not None:
        return motif_figure(piece, motif, graded, yarns, drawn)
    rim = rim_pick(graded[drawn])
    if rim is not None:
        return border_figure(piece, rim, graded, drawn)
    if is_disc(piece):
        return disc_figure(piece, plan, graded, yarns, drawn)
    if outline.spine:
        return triangle_figure(piece, plans, graded, drawn)
    figure = PieceFigure(
        name=piece.key, title=piece.title, sizes=plans.labels, drawn_size=drawn, outline=simplified(lying(outline, piece, plan) if in_rounds else outline.polygon()),
        bands=colour_plan(plan, graded[drawn], yarns),
        measures=tuple(_measures(piece, plans, graded, drawn, in_rounds)),
        edge_names=() if in_rounds else _edge_names(piece, plan, outline),
        marks=(*wedge_marks(plan, outline), *((mark.level.replace("_", " "), (outline.starting if mark.side == "starting" else outline.far)[mark.row]) for mark in plan.marks)),
        in_rounds=in_rounds, slits=tuple(slits_of(plan, graded[drawn])),
    )
    if piece.start.kind == "pick up" and not in_rounds:
        return with_corners_and_holes(figure, plans, graded)
    if in_rounds and any(band.number for band in figure.bands):
        figure = opened(figure)
    if hangs(piece):
        return from_neck(figure, piece)
    return from_centre(figure, piece) if in_rounds else figure


def simplified(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """The same outline without points that are there twice or lie on a straight line between their neighbours."""
    points = tuple(point for index, point in enumerate(points) if point != points[index - 1])
    kept: list[Point] = []
    for index, (x, y) in enumerate(points):
        (x0, y0), (x1, y1) = points[index - 1], points[(index + 1) % len(points)]
        if abs((x - x0) * (y1 - y0) - (x1 - x0) * (y - y0)) > 1e-6:
            kept.append((x, y))
    return tuple(kept)


LEAST_ROOM, MOST_ROOM = 46.0, 78.0
"""Millimetres of paper for the lowest and the highest piece, dimension lines included."""


def rooms_of(figures: Mapping[str, PieceFigure]) -> dict[str, tuple[float, float]]:
    """Width and height on paper for each piece: small pieces are drawn smaller, none tiny."""
    sizes = {key: _extent(figure.outline) for key, figure in figures.items()}
    highest = max(height for _, height in sizes.values())
    return {
        key: (150.0, LEAST_ROOM + (MOST_ROOM - LEAST_ROOM) * height / highest) for key, (_, height) in sizes.items()
    }


def _extent(points: tuple[Point, ...]) -> Point:
    return max(x for x, _ in points) - min(x for x, _ in points), max(y for _, y in points) - min(y for _, y in points)


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
    along = f"{girth} at the {bottom}"
    if piece.start.kind == "pick up" and not in_rounds:
        along = "Length where it is picked up" if piece.bottom == "bottom" else f"Length along the {bottom}"
    across("Depth" if piece.start.joined else along, plans.map(lambda _plan: 0))
    top = plans.map(lambda p: p.rows)
    widest = graded.map(lambda g: max(range(len(g.outline.starting)), key=lambda i: g.outline.far[i][0] - g.outline.starting[i][0]))
    if any(widths[label][row] > max(widths[label][0], widths[label][-1]) + 1 for label, row in widest.items()):
        across(f"{girth} at the widest", widest)
    if is_shaped(plan):
        return [*found, *top_measures(plans, graded, drawn), *_heights(plans, graded, drawn), *wedge_measures(plans, graded, drawn)]
    if any(abs(widths[label][-1] - widths[label][0]) > 1 for label in plans.labels):
        end = piece.top.replace("_", " ") if piece.start.kind == "pick up" else "top"
        across(f"{girth} at the {end}", top)
    shoulders = next((s for s in plan.sections if isinstance(s, ShouldersPlan)), None)
    if shoulders is not None:
        found += _shoulder_measures(graded, drawn)
    return [*found, *_heights(plans, graded, drawn, piece.start.joined), *wedge_measures(plans, graded, drawn)]


def _shoulder_measures(graded: Sized[GradedPiece], drawn: str) -> list[Measure]:
    piece = graded[drawn]
    (left, y), (right, _) = piece.outline.starting[-1], piece.outline.far[-1]
    shoulder, neck = piece.edges["shoulder"].length, piece.edges["neck"].length
    return [
        Measure("Shoulder", "across", (left, y), (left + shoulder, y), tuple(g.edges["shoulder"].length for g in graded)),
        Measure("Neck", "across", (left + shoulder, y), (left + shoulder + neck, y), tuple(g.edges["neck"].length for g in graded)),
    ]


def _heights(plans: Sized[PiecePlan], graded: Sized[GradedPiece], drawn: str, joined: bool = False) -> list[Measure]:
    """Heights of the marks and of where shaping begins and ends, each from the bottom; then the whole."""
    outline = graded[drawn].outline
    found: list[Measure] = []
    for name, rows in _heights_wanted(plans).items():
        name = "Length along the edge" if joined else name
        values = tuple(graded[label].outline.heights[row] for label, row in rows.items())
        found.append(Measure(name, "up", outline.far[0], outline.far[rows[drawn]], values))
    return found


def _heights_wanted(plans: Sized[PiecePlan]) -> dict[str, Sized[int]]:
    rows_of: dict[str, Sized[int]] = {}
    for level in dict.fromkeys(mark.level for mark in plans.values[0].marks):
        rows_of[f"Height to the {level.replace('_', ' ')}"] = plans.map(lambda p, level=level: next(m.row for m in p.marks if m.level == level))  # type: ignore[misc]
    rows_of |= heights_to_slits(plans)
    sections = plans.values[0].sections
    for index, (section, following) in enumerate(zip(sections, sections[1:], strict=False), start=1):
        shaped, shaped_next = _way(section), _way(following)
        if section.rows and following.rows and shaped != shaped_next:
            if shaped_next:
                rows_of[f"Height below the first {shaped_next}"] = plans.map(lambda p, index=index: _below_first(p, index))  # type: ignore[misc]
            else:
                rows_of[f"Height to the last {shaped}"] = plans.map(lambda p, index=index: _up_to_last(p, index - 1))  # type: ignore[misc]
    rows_of["Whole height"] = plans.map(lambda p: p.rows)
    return rows_of


def _below_first(plan: PiecePlan, index: int) -> int:
    """The last row before a shaped section's first shaping row."""
    before, section = sum(s.rows for s in plan.sections[:index]), plan.sections[index]
    positions = section.shaping_rows() if isinstance(section, TaperPlan) else (1,)
    return before + (positions[0] - 1 if positions else section.rows)


def _up_to_last(plan: PiecePlan, index: int) -> int:
    """A shaped section's last shaping row."""
    before, section = sum(s.rows for s in plan.sections[:index]), plan.sections[index]
    positions = section.shaping_rows() if isinstance(section, TaperPlan) else (section.rows,)
    return before + (positions[-1] if positions else 0)


def _way(section: SectionPlan) -> str:
    """What a section does to the width, in a word; nothing where it is even."""
    if isinstance(section, (TaperPlan, SpreadPlan)):
        return "increase" if section.sign > 0 else "decrease"
    return ""


def _edge_names(piece: Piece, plan: PiecePlan, outline: Outline) -> tuple[tuple[str, Point], ...]:
    rows = {mark.level: mark.row for mark in plan.marks}
    found = []
    for edge in piece.edges:
        first = rows[edge.bottom] if edge.bottom else 0
        last = rows[edge.top] if edge.top else plan.edge_end(edge.side)
        points = outline.starting if edge.side == "starting" else outline.far
        found.append((edge.name.replace("_", " "), points[(first + last) // 2]))
    return tuple(found)
