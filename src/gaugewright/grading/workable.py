"""Can the piece be worked at all, whatever its size? Faults of its design, told once.

In: the designed piece. Out: located problems; nothing is changed.
"""

from collections.abc import Iterator

from gaugewright.design.model import TOPS, UNSTACKED, Design, Opened, Piece, Taper
from gaugewright.errors import Problem
from gaugewright.grading.blocks import block_faults
from gaugewright.grading.buttonholes import buttonhole_faults
from gaugewright.grading.corners import corner_faults
from gaugewright.grading.crowns import crown_faults
from gaugewright.grading.hanging import hanging_faults
from gaugewright.grading.joins import join_faults
from gaugewright.grading.pattern_faults import pattern_faults
from gaugewright.grading.rim_faults import rim_faults
from gaugewright.grading.rings import ring_faults
from gaugewright.grading.motifs import motif_faults
from gaugewright.grading.opened import opened_faults
from gaugewright.grading.shape_faults import shape_faults, top_edges
from gaugewright.grading.slits import slit_faults
from gaugewright.grading.stripes import stripe_faults
from gaugewright.grading.take_up import SIDES
from gaugewright.grading.triangles import triangle_faults
from gaugewright.grading.wedge_plans import wedge_faults
from gaugewright.grading.yokes import yoke_faults
from gaugewright.problem_text import count_of


def faults_of(piece: Piece, design: Design) -> tuple[Problem, ...]:
    """Everything about the piece that no size could work."""
    checks = (
        _sections, crown_faults, motif_faults, yoke_faults, shape_faults, wedge_faults, pattern_faults, _tapers, _edges_in_rounds, _edge_names, ring_faults,
        join_faults, corner_faults, buttonhole_faults, slit_faults, opened_faults, stripe_faults, block_faults, triangle_faults, hanging_faults, rim_faults,
    )
    return tuple(problem for check in checks for problem in check(piece, design))


def _sections(piece: Piece, design: Design) -> Iterator[Problem]:
    if all(isinstance(section, UNSTACKED) for section in piece.sections):
        hint = "add a section, such as `even: {length: 10 cm}`"
        yield Problem("no-rows", f"{piece.key} has no section with rows", piece.origin, hint)
        return
    for index, section in enumerate(piece.sections):
        if not isinstance(section, TOPS) or isinstance(section, Opened):
            continue
        if index < len(piece.sections) - 1:
            message = f"{piece.key} has sections above its shoulders, and shoulders end a piece"
            yield Problem("shoulders-not-last", message, section.origin, "put the shoulders last")
        if piece.start.in_rounds:
            message = f"{piece.key} is worked in rounds: a round has no shoulders and neck"
            hint = "start the piece with a chain, or take out the shoulders"
            yield Problem("shoulders-in-rounds", message, section.origin, hint)


def _tapers(piece: Piece, design: Design) -> Iterator[Problem]:
    for section in piece.sections:
        if not isinstance(section, Taper):
            continue
        if piece.start.in_rounds:
            if section.in_one:
                message = f"{piece.key} is worked in rounds, which have no edge stitch for several increases"
                yield Problem("in-one-misplaced", message, section.origin, "take out `in_one`")
            yield from _shared_in_rounds(piece, section)
            continue
        if section.in_one and section.each is not None and section.each < 0:
            message = f"this taper of {piece.key} takes stitches away, and only increases go into one stitch"
            yield Problem("in-one-misplaced", message, section.origin, "take out `in_one`, or widen it")
        if section.at not in ("both", *SIDES):
            message = f"{section.at} is no edge of row ends, and tapers of {piece.key} are shaped at those"
            hint = "write `at: both`, starting or far, or the name of a side edge"
            yield Problem("no-such-side", message, section.origin, hint)
        elif section.at == "both" and section.each is not None and section.each % 2:
            message = f"{count_of(abs(section.each), 'stitch', 'stitches')} each time can't be shared between both edges of {piece.key}"
            even = section.each + (1 if section.each > 0 else -1)
            yield Problem("each-odd", message, section.origin, f"write `each: {even}`, or name one edge with `at`")


def _shared_in_rounds(piece: Piece, section: Taper) -> Iterator[Problem]:
    """In pairs two stitches go at once, at both sides four."""
    by = {"pairs": 2, "sides": 4}.get(section.at, 1)
    if section.each is not None and section.each % by:
        message = f"{count_of(abs(section.each), 'stitch', 'stitches')} each time can't be shared between the {by} places at which this taper of {piece.key} is shaped"
        sign = -1 if section.each < 0 else 1
        yield Problem("each-odd", message, section.origin, f"write `each: {sign * by}`, or take out `at`")


def _edges_in_rounds(piece: Piece, design: Design) -> Iterator[Problem]:
    if piece.start.in_rounds and piece.edges:
        names = ", ".join(dict.fromkeys(edge.name for edge in piece.edges))
        message = f"{piece.key} is worked in rounds, which have no row ends to name: {names}"
        yield Problem("edges-in-rounds", message, piece.origin, "name only its `bottom` and `top`")


def _edge_names(piece: Piece, design: Design) -> Iterator[Problem]:
    """One name for two edges: on one side, or of a side and an end."""
    ends = [piece.bottom, piece.top, *top_edges(piece)]
    told: set[str] = set()
    for side in SIDES:
        names = [edge.name for edge in piece.edges if edge.side == side]
        for name in names:
            if (names.count(name) > 1 or name in ends) and name not in told:
                told.add(name)
                message = f"{name} names two different edges of {piece.key}"
                yield Problem("edge-twice", message, piece.origin, "give each edge of a side a name of its own")
    if piece.bottom == piece.top:
        message = f"{piece.bottom} names both the bottom and the top of {piece.key}"
        yield Problem("edge-twice", message, piece.origin, "give one of them another name")
