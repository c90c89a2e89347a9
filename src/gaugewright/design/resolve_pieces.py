"""Pieces: what each is like, its sections, its edges' names, its colours."""

from typing import Any

from gaugewright.design.likeness import resolved, stated_in
from gaugewright.design.model import (
    Even,
    Extent,
    ForLength,
    ForRows,
    NamedEdge,
    Piece,
    PieceStart,
    Rest,
    Section,
    Shoulders,
    Taper,
    ToLevel,
)
from gaugewright.design.opened import resolve_opened
from gaugewright.design.origins import Origins, Path
from gaugewright.design.raglans import resolve_raglan
from gaugewright.design.resolve_buttonholes import resolve_buttonholes
from gaugewright.design.resolve_colours import SharedColours, resolve_colours
from gaugewright.design.resolve_crowns import resolve_crown
from gaugewright.design.round_yokes import resolve_round_yoke
from gaugewright.design.resolve_motifs import resolve_grid, resolve_motif
from gaugewright.design.resolve_shapes import SHAPED, resolve_shape
from gaugewright.design.triangles import resolve_triangle
from gaugewright.design.wedges import resolve_wedge
from gaugewright.design.slits import resolve_slit
from gaugewright.spec import Spec
from gaugewright.spec.names import RIM
from gaugewright.vocabulary import RowEdge

def resolve_piece(key: str, spec: Spec, origins: Origins, only_fabric: str, shared: SharedColours) -> Piece:
    """One piece with everything made explicit."""
    get = resolved(spec.pieces, key)
    fabric = get("fabric") or only_fabric
    edges, total, start = get("edges"), get("total"), get("start")
    ring = start.pick_up is not None and (resolved(spec.fabrics, fabric)("worked") or "rows") != "rows"
    in_rounds = ring or any(way is not None for way in (start.ring, start.centre, start.divide))

    def path(field: str) -> Path:
        return ("pieces", stated_in(spec.pieces, key, field), field)

    named = _edges(edges)
    return Piece(
        key=key,
        title=spec.pieces[key].title or key.replace("_", " ").title(),
        make=get("make") or 1,
        fabric=fabric,
        start=_start(start, fabric, path("start"), origins, ring),
        sections=_joined_rows(start, fabric, path("start"), origins) if get("sections") is None else _sections(
            get("sections"), fabric, path("sections"), origins, named, in_rounds, spec.pieces[key].mirrored
        ),
        edges=named,
        bottom=(edges.bottom if edges else None) or ("inner_edge" if _borders(start) else "centre" if start.centre is not None else "long_edge" if start.middle is not None else "bottom"),
        top=(edges.top if edges else None) or ("outer_edge" if _borders(start) else "edge" if start.centre is not None else "lower_edge" if start.middle is not None else "top"),
        colours=resolve_colours(get("colours"), shared, path("colours"), origins),
        total=origins.formula(total, path("total")) if total is not None else None,
        mirrored=spec.pieces[key].mirrored,
        notes=spec.pieces[key].notes,
        origin=origins.at(("pieces", key), key=True),
        like=spec.pieces[key].like or "",
        buttonholes=resolve_buttonholes(get("buttonholes"), path("buttonholes"), origins),
        grid=resolve_grid(get("grid"), path("grid"), origins),
    )


def _borders(start: Any) -> bool:
    """Whether it is picked up all round joined motifs."""
    return start.pick_up is not None and any(edge.endswith(f".{RIM}") for edge in start.pick_up)


def kind_of(section: Any) -> str:
    """The key that opens a section."""
    return next(kind for kind in ("even", "taper", "shoulders", "crown", "raglan", "round_yoke", "wedge", "opening", "open", "motif", "triangle", *SHAPED) if getattr(section, kind) is not None)


def _sections(parts: Any, fabric: str, path: Path, origins: Origins, edges: tuple[NamedEdge, ...], in_rounds: bool, mirrored: bool) -> tuple[Section, ...]:
    """The sections in order; each knows the fabric of the one below it."""
    found: list[Section] = []
    for index, section in enumerate(parts):
        below, own = found[-1].fabric if found else fabric, (*path, index, kind_of(section))
        if kind_of(section) == "crown":
            found.append(resolve_crown(section.part, fabric, own, origins))
        elif kind_of(section) == "motif":
            found.append(resolve_motif(section.part, fabric, own, origins))
        elif kind_of(section) == "raglan":
            found.append(resolve_raglan(section.part, fabric, own, origins))
        elif kind_of(section) == "wedge":
            found.append(resolve_wedge(section.part, below, own, origins, lambda at: _at(at, edges, in_rounds)))
        elif kind_of(section) == "opening":
            found.append(resolve_slit(section.part, fabric, own, origins, mirrored and in_rounds))
        elif kind_of(section) == "open":
            found.append(resolve_opened(section.part, below, own, origins))
        elif kind_of(section) == "round_yoke":
            found.append(resolve_round_yoke(section.part, fabric, own, origins))
        elif kind_of(section) == "triangle":
            found.append(resolve_triangle(section.part, fabric, own, origins))
        elif kind_of(section) in SHAPED:
            found.append(resolve_shape(section.part, fabric, below, own, origins, lambda at: _at(at, edges, in_rounds)))
        else:
            found.append(_section(section.part, fabric, below, own, origins, edges, in_rounds))
    return tuple(found)


def _start(start: Any, fabric: str, path: Path, origins: Origins, ring: bool) -> PieceStart:
    kind = next(name for name in ("chain", "ring", "centre", "middle", "pick_up", "divide", "go_on") if getattr(start, name) is not None)
    width = None if kind in ("centre", "middle", "pick_up", "divide", "go_on") else origins.formula(getattr(start, kind), (*path, kind))
    named = start.pick_up or start.join or [one for one in (start.divide, start.go_on) if one]
    edges = tuple((text.partition(".")[0], text.partition(".")[2]) for text in named)
    return PieceStart(
        kind.replace("_", " "), width, edges,  # type: ignore[arg-type]
        getattr(start, "take_up", None) or "edge to edge", start.fabric or fabric, origins.at((*path, kind)),
        start.centre if isinstance(start.centre, int) else None, ring, (start.gather or 0.0) / 100, start.join_by == "sewing",
        None if start.corners is None else tuple(name for name in start.corners if name != "none"),
    )


def _joined_rows(start: Any, fabric: str, path: Path, origins: Origins) -> tuple[Section, ...]:
    """The one section of a band joined along edges, whose rows follow from those."""
    return (Even(Rest(), start.fabric or fabric, "", origins.at((*path, "join"))),)


def _section(
    part: Any, fabric: str, below: str, path: Path, origins: Origins, edges: tuple[NamedEdge, ...], in_rounds: bool
) -> Section:
    origin = origins.at(path[:-1])
    if hasattr(part, "neck"):
        slope = None if part.slope is None else origins.formula(part.slope, (*path, "slope"))
        return Shoulders(origins.formula(part.neck, (*path, "neck")), fabric if slope is None else below, origin, slope, part.worked_as != "steps")
    extent, own_fabric, colour = _extent(part, path, origins), part.fabric or fabric, part.colour or ""
    if not hasattr(part, "target"):
        assert extent is not None
        return Even(extent, own_fabric, colour, origin)
    return Taper(
        extent,
        origins.formula(part.target, (*path, "target")) if part.target is not None else None,
        part.stitches, part.each, _at(part.at, edges, in_rounds), part.round, own_fabric, colour, origin, part.close, part.in_one,
    )


def _extent(part: Any, path: Path, origins: Origins) -> Extent | None:
    if part.to is not None:
        return ToLevel(origins.formula(part.to, (*path, "to")))
    if part.length is not None:
        return Rest() if part.length == "rest" else ForLength(origins.formula(part.length, (*path, "length")))
    rows = part.rows or part.rounds
    return ForRows(rows) if rows is not None else None


def _at(at: str, edges: tuple[NamedEdge, ...], in_rounds: bool) -> str:
    """Where a taper shapes: an edge's name stands for the side it is on; rounds have no edges."""
    if in_rounds:
        return at if at in ("pairs", "sides", "all round") else ""
    sides = {edge.side for edge in edges if edge.name == at}
    return next(iter(sides)) if len(sides) == 1 else "both" if len(sides) == 2 else at


def _edges(edges: Any) -> tuple[NamedEdge, ...]:
    if edges is None:
        return ()
    found: list[NamedEdge] = []
    sides: tuple[RowEdge, ...] = ("starting", "far")
    for side in sides:
        names = edges.both or getattr(edges, side) or ()
        for position in range(0, len(names), 2):
            bottom = names[position - 1] if position else None
            top = names[position + 1] if position + 1 < len(names) else None
            found.append(NamedEdge(names[position], side, bottom, top))
    return tuple(found)
