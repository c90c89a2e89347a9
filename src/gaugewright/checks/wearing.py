"""Can it be put on and moved in? Openings, upper arms and hips, with the cloth's thickness taken off.

Thick cloth is smaller inside than it measures flat: a tube loses pi times its thickness.
"""

import math
from collections.abc import Iterable, Iterator

from gaugewright.checks.finished import body_values
from gaugewright.checks.model import Found, Measured, Subject
from gaugewright.checks.terms import fabrics_of, piece_fabrics, terms_of
from gaugewright.checks.wording import by_size, cm, count_of, problem, span_cm
from gaugewright.design.model import EdgeName, Fabric, Opening, Piece
from gaugewright.errors import Origin, Problem
from gaugewright.grading.corners import DEEPEST_BAND
from gaugewright.grading.rings import along_rows
from gaugewright.rounding import up
from gaugewright.tolerances import SAME_LENGTH, UPPER_ARM_EASE


def inside_loss(fabrics: Iterable[Fabric]) -> float:
    """What the thickest of these cloths takes off a girth, mm."""
    return math.pi * max((fabric.thickness for fabric in fabrics), default=0.0)


def check_openings(subject: Subject) -> Found:
    """Each opening with its bands, stretched as far as it goes, lets the hand or the head through."""
    problems: list[Problem] = []
    figures = []
    for opening in subject.design.openings:
        bodies = {label: body.values[opening.passes].mm for label, body in subject.bodies.items() if opening.passes in body.values}
        widths = {size: _around(subject, opening, size) for size in subject.sizes}
        if len(bodies) < len(subject.sizes):
            lacking = [size for size in subject.sizes if size not in bodies]
            problems.append(problem(
                "opening-unchecked", f"whether {opening.name} passes the {opening.passes} can't be told: the body has no {opening.passes}",
                opening.origin, f"give {opening.passes} for these sizes under sizes: own:", lacking, "note",
            ))
        tight = [size for size, around in bodies.items() if widths[size] * (1 + opening.stretch) < around - SAME_LENGTH]
        figures.append(f"{opening.name} {span_cm(widths.values())} around" + (f", {opening.passes} {span_cm(bodies.values())}" if bodies else ""))
        if tight:
            needed = {size: bodies[size] / (1 + opening.stretch) for size in tight}
            problems.append(problem(
                "opening-tight", f"{opening.name} doesn't pass the {opening.passes}: "
                + by_size((size, f"{cm(widths[size])} around, stretched {cm(widths[size] * (1 + opening.stretch))}, for {cm(bodies[size])}") for size in tight),
                opening.origin, f"make it {_at_least(needed, widths)}", tight,
            ))
    return Found(tuple(problems), "; ".join(figures) or "no openings named")


def _at_least(needed: dict[str, float], widths: dict[str, float]) -> str:
    """The width each size needs, told by the size that lacks most; rounded up, so that following it works."""
    worst = max(needed, key=lambda size: needed[size] - widths[size])
    more = up(needed[worst] - widths[worst])
    return f"at least {up(needed[worst]) / 10:.1f} cm around in {worst}: {more / 10:.1f} cm more, rounded up to whole stitches"


def _around(subject: Subject, opening: Opening, size: str) -> float:
    """The opening where it is tightest: what is worked in rounds on its edges narrows it, or leaves it as it is."""
    return min(_widths(subject, tuple((edge.piece, edge.edge) for edge in opening.around), size))


def _widths(subject: Subject, edges: tuple[tuple[str, str], ...], size: str) -> Iterator[float]:
    yield sum(subject.remade[key][size].edges.get(name, 0.0) for key, name in edges)
    for band in subject.design.pieces:
        if band.start.ring and set(band.start.edges) == set(edges):
            yield from _widths(subject, ((band.key, band.top),), size)


def check_upper_arm(subject: Subject) -> Found:
    """Sleeves leave the upper arm 2 cm of ease once they are worn, and are not narrower at their top."""
    problems: list[Problem] = []
    figures = []
    for measured in subject.measured:
        body = body_values(measured, subject)
        if measured.measure.of == "upper_arm" and body:
            loss = inside_loss(piece_fabrics(measured.measure.measure, subject.design))
            ease = {size: measured.actual[size] - loss - body[size] for size in subject.sizes}
            figures.append(f"{measured.measure.key}: ease as worn {span_cm(ease.values())}")
            tight = [size for size, left in ease.items() if left < UPPER_ARM_EASE - SAME_LENGTH]
            if tight:
                least = min(ease.values())
                problems.append(problem(
                    "upper-arm-tight", f"{measured.measure.key} leaves too little ease once the cloth's thickness ({cm(loss)}) is taken off: "
                    + by_size((size, cm(ease[size])) for size in tight) + f"; {cm(UPPER_ARM_EASE)} is expected", measured.measure.origin,
                    f"make the sleeve {up(UPPER_ARM_EASE - least) / 10:.1f} cm wider, rounded up to whole stitches", tight,
                    "error" if least < 0 else "warning",
                ))
    for piece, edge, origin in (*_sleeves(subject), *_picked_up_sleeves(subject)):
        problems += _sleeve_top(subject, piece, edge, origin)
    return Found(tuple(problems), "; ".join(figures) or "no measurement of the upper arm")


def _sleeves(subject: Subject) -> Iterator[tuple[Piece, str, Origin]]:
    """Pieces worked from a ring whose top is sewn into row ends, each once."""
    found = set()
    for seam in subject.design.seams:
        for one, others in ((seam.join, seam.to), *((to, (seam.join,)) for to in seam.to)):
            piece = subject.design.piece(one.piece)
            into_rows = all(_is_row_end(subject, edge) for edge in others)
            if piece.start.kind == "ring" and one.edge in (piece.top, "top") and into_rows and piece.key not in found:
                found.add(piece.key)
                yield piece, piece.top, seam.origin


def _picked_up_sleeves(subject: Subject) -> Iterator[tuple[Piece, str, Origin]]:
    """What is picked up in rounds along row ends, and deeper than a band."""
    for piece in subject.design.pieces:
        along = all(along_rows(subject.design, edge) for edge in piece.start.edges)
        if piece.start.ring and along and max(remade.rows_length for remade in subject.remade[piece.key]) > DEEPEST_BAND:
            yield piece, piece.bottom, piece.start.origin


def _is_row_end(subject: Subject, edge: EdgeName) -> bool:
    graded = subject.grading.pieces[edge.piece].values[0].edges.get(edge.edge)
    return graded is not None and graded.rows > 0


def _sleeve_top(subject: Subject, piece: Piece, edge: str, origin: Origin) -> Iterator[Problem]:
    loss = inside_loss(subject.design.fabric(key) for key in fabrics_of(piece))
    tops = {size: subject.remade[piece.key][size].edges[edge] for size in subject.sizes}
    arms = {label: body.values["upper_arm"].mm for label, body in subject.bodies.items() if "upper_arm" in body.values}
    tight = [size for size, arm in arms.items() if tops[size] - loss < arm + UPPER_ARM_EASE - SAME_LENGTH]
    if tight:
        yield problem(
            "sleeve-top-tight", f"the top of {piece.key} is narrow for the arm: "
            + by_size((size, f"{cm(tops[size])}, as worn {cm(tops[size] - loss)}, for an arm of {cm(arms[size])}") for size in tight)
            + f"; {cm(UPPER_ARM_EASE)} of ease is expected", origin,
            f"make the armholes {_deeper(tight, tops, arms, loss)} cm deeper on each side of the shoulder", tight, "warning",
        )


def _deeper(tight: list[str], tops: dict[str, float], arms: dict[str, float], loss: float) -> str:
    """An armhole has two sides, so each needs half of what is missing."""
    return f"{up(max(arms[size] + UPPER_ARM_EASE + loss - tops[size] for size in tight) / 2) / 10:.1f}"


def check_hips(subject: Subject) -> Found:
    """A garment that ends below the waist goes round the hips, as worn."""
    hips = [one for one in subject.measured if one.measure.of == "hip"]
    chosen = hips or [one for one in subject.measured if one.measure.of in ("bust", "chest")][:1]
    problems: list[Problem] = []
    figures = []
    for measured in chosen:
        below = [size for size in subject.sizes if _ends_below_waist(subject, measured, size)]
        if not below:
            continue
        loss = inside_loss(piece_fabrics(measured.measure.measure, subject.design))
        ease = {size: _bottom(subject, measured, size) - loss - subject.bodies[size].values["hip"].mm for size in below}
        figures.append(f"{measured.measure.key}: ease at the hips as worn {span_cm(ease.values())}, {count_of(len(below), 'size')} below the waist")
        tight = [size for size, left in ease.items() if left < -SAME_LENGTH]
        if tight:
            worst = min(tight, key=lambda size: ease[size])
            problems.append(problem(
                "hips-tight", f"{measured.measure.key} is narrower than the hips it covers: "
                + by_size((size, f"{cm(-ease[size])} short as worn") for size in tight), measured.measure.origin,
                f"make the lower edge {up(-ease[worst]) / 10:.1f} cm wider ({worst}), leave side slits, or end above the hips", tight, "warning",
            ))
    return Found(tuple(problems), "; ".join(figures) or "nothing ends below the waist")


def _bottom(subject: Subject, measured: Measured, size: str) -> float:
    """The girth at the lower edge: a measurement of widths is taken there as it stands."""
    if measured.measure.of == "hip":
        return measured.actual[size]
    off = 0.0
    for term in terms_of(measured.measure.measure, subject.design):
        if not term.is_edge and term.name in ("widest", "narrowest", "top_width"):
            measures = subject.remade[term.piece][size].measures
            off += term.factor * (measures["bottom"] - measures[term.name])
    return measured.actual[size] + off


def _ends_below_waist(subject: Subject, measured: Measured, size: str) -> bool:
    values = subject.bodies[size].values
    if "hip" not in values or "back_waist_length" not in values:
        return False
    pieces = {
        term.piece for term in terms_of(measured.measure.measure, subject.design)
        if not term.is_edge and term.name in ("width", "bottom", "widest", "narrowest", "top_width")
    }
    return any(subject.remade[key][size].rows_length > values["back_waist_length"].mm + SAME_LENGTH for key in pieces)
