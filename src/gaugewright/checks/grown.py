"""The measures whose growth over the sizes can be held to bodies: finished ones, and those of graded pieces."""

from collections.abc import Iterator
from typing import NamedTuple

from gaugewright.checks.behind import Behind, behind, length_of, times
from gaugewright.checks.model import Subject
from gaugewright.checks.rising import row_of
from gaugewright.checks.terms import allowance, fabrics_of, terms_of
from gaugewright.design.flat_raglans import is_raglan_sleeve, raglan_edge_names
from gaugewright.design.model import Armhole, Cap, EdgeName, Formula, Neck, NeckEdge, Piece, Shoulders, Taper
from gaugewright.formulas.nodes import Node
from gaugewright.grading.plan import ProfilePlan
from gaugewright.measurements.growth import Growth


class Ends(NamedTuple):
    """The sizes of the least and the largest bust."""

    small: str
    large: str


class Grown(NamedTuple):
    """A measure of the garment in the sizes at both ends, mm; `slack` is what whole stitches or rows may add.

    `like` names its growth in the survey's table and `by` the body measure that would grade it; `formula` is
    where it is stated.
    """

    name: str
    like: str
    by: str
    node: Node
    formula: Formula
    small: float
    large: float
    slack: float


def grown_measures(subject: Subject, ends: Ends, rates: dict[str, Growth]) -> Iterator[Grown]:
    """Finished measurements of a body measure that the surveys hold, then necks, shoulders, armholes and arms."""
    yield from _finished(subject, ends, rates)
    for piece in subject.design.pieces:
        yield from _tops(subject, piece, ends)
    yield from _sleeves(subject, ends)


def _finished(subject: Subject, ends: Ends, rates: dict[str, Growth]) -> Iterator[Grown]:
    for one in subject.measured:
        formula, of = one.measure.measure, one.measure.of
        found = _fastest(formula, subject, ends)
        if of in rates and found is not None:
            slack = 2 * max(allowance(formula, subject, size).mm for size in ends)
            yield Grown(one.measure.key, of, of, formula.node, found.formula, one.actual[ends.small], one.actual[ends.large], slack)


def _fastest(formula: Formula, subject: Subject, ends: Ends) -> Behind | None:
    """What stands behind the part of a sum that grows most."""
    best: tuple[float, Behind] | None = None
    for term in terms_of(formula, subject.design):
        made = behind(subject.design.piece(term.piece), term.name, subject.design)
        lengths = _lengths(made, subject, ends)
        if made is not None and lengths is not None:
            gain = term.factor * (lengths[1] - lengths[0])
            best = (gain, made) if best is None or gain > best[0] else best
    return None if best is None else best[1]


def _lengths(made: Behind | None, subject: Subject, ends: Ends) -> tuple[float, float] | None:
    """A measure before rounding in both sizes."""
    if made is None:
        return None
    found = [length_of(made.node, subject.environments[size], subject.design, subject.environments[size].body) for size in ends]
    return None if found[0] is None or found[1] is None else (found[0], found[1])


def _grown(subject: Subject, ends: Ends, name: str, like: str, by: str, made: Behind | None, slack: float) -> Iterator[Grown]:
    lengths = _lengths(made, subject, ends)
    if made is not None and lengths is not None:
        yield Grown(name, like, by, made.node, made.formula, *lengths, slack)


def _tops(subject: Subject, piece: Piece, ends: Ends) -> Iterator[Grown]:
    """The neck, raglan edges leaving one too, and the shoulders of a piece with armholes: dropped ones hang as far down the arm as the cloth goes."""
    top = piece.sections[-1]
    if not isinstance(top, (Shoulders, Neck, NeckEdge)) and not (raglan_edge_names(piece) and not is_raglan_sleeve(piece)):
        return
    made, stitch = behind(piece, "neck", subject.design), _stitch_of(piece, subject)
    if isinstance(top, NeckEdge) and made is not None:
        made = times(made, 2.0)
    yield from _grown(subject, ends, f"the neck of {piece.key}", "neck_width", "neck", made, stitch)
    if isinstance(top, (Shoulders, Neck)) and _is_let_in(piece, subject):
        shoulder = behind(piece, "shoulder", subject.design)
        yield from _grown(subject, ends, f"the shoulder of {piece.key}", "shoulder_length", "cross_back", shoulder, stitch)


def _is_let_in(piece: Piece, subject: Subject) -> bool:
    """Whether armholes bring the shoulders in to the body's own: of a modified drop all that goes is left at once, and they hang."""
    for plan in subject.grading.plans[piece.key]:
        for section, part in zip(piece.sections, plan.sections, strict=True):
            if isinstance(section, Armhole) and isinstance(part, ProfilePlan):
                if any(len(one.profile.steps) > 1 for one in (*part.starting, *part.far) if one.name == "armhole"):
                    return True
    return False


def _stitch_of(piece: Piece, subject: Subject) -> float:
    return max(subject.design.fabric(key).gauge.stitch_width for key in fabrics_of(piece))


def _sleeves(subject: Subject, ends: Ends) -> Iterator[Grown]:
    """Each sleeve at its widest, and the armholes that sleeves are sewn into."""
    seen: set[str] = set()
    for seam in subject.design.seams:
        for one, others in ((seam.join, seam.to), *((to, (seam.join,)) for to in seam.to)):
            piece = subject.design.piece(one.piece)
            if not _is_sleeve_top(one, piece) or not all(_is_row_end(subject, edge) for edge in others):
                continue
            if piece.key not in seen:
                arm = behind(piece, "widest", subject.design)
                yield from _grown(subject, ends, f"the upper arm of {piece.key}", "upper_arm", "upper_arm", arm, _stitch_of(piece, subject))
            for edge in others:
                if str(edge) not in seen:
                    into = subject.design.piece(edge.piece)
                    depth = behind(into, edge.edge, subject.design)
                    yield from _grown(subject, ends, f"the depth of {edge}", "armhole_depth", "armhole_depth", depth, row_of(into, subject))
            seen |= {piece.key, *map(str, others)}


def _is_sleeve_top(edge: EdgeName, piece: Piece) -> bool:
    """A cap, or the last row of what widens from the wrist."""
    if isinstance(piece.sections[-1], Cap):
        return edge.edge == "cap"
    if edge.edge in raglan_edge_names(piece):
        return is_raglan_sleeve(piece)
    return edge.edge in (piece.top, "top") and any(isinstance(section, Taper) for section in piece.sections)


def _is_row_end(subject: Subject, edge: EdgeName) -> bool:
    graded = subject.grading.pieces[edge.piece].values[0].edges.get(edge.edge)
    return graded is not None and graded.rows > 0
