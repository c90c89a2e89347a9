"""Shaped pieces of all samples and cases in every size, against geometry worked out here and by shapely and scipy."""

import math
from collections.abc import Iterator
from functools import cache
from itertools import groupby
from pathlib import Path

import pytest
from scipy.integrate import quad
from shapely import Polygon
from shapely.affinity import scale, translate
from tiny_specs import designed

from gaugewright import pipeline
from gaugewright.checks.curves import edges_of
from gaugewright.checks.remeasure import subject_of
from gaugewright.design.model import Armhole, Cap, Neck, Piece
from gaugewright.gauge.model import Gauge
from gaugewright.grading.curves import phrases_of
from gaugewright.grading.model import ChainStart, GradedPiece, Row, SpanStart, Strip
from gaugewright.grading.outline import outline_of
from gaugewright.grading.plan import DividedPlan, ProfilePlan
from gaugewright.grading.profile import EdgeStep, Profile

ROOT = Path(__file__).parents[2]
SPECS = sorted((*ROOT.glob("samples/*/spec.yaml"), *ROOT.glob("tests/cases/*/spec.yaml")))
NAMES = [path.parent.name for path in SPECS]


@cache
def graded(name: str) -> pipeline.Graded:
    return pipeline.grade(designed(SPECS[NAMES.index(name)].read_text(encoding="utf-8")))


@pytest.fixture(params=NAMES)
def made(request: pytest.FixtureRequest) -> pipeline.Graded:
    return graded(request.param)


def pieces_of(made: pipeline.Graded) -> Iterator[tuple[Piece, str, GradedPiece]]:
    for piece in made.design.pieces:
        for size, one in made.grading.pieces[piece.key].items():
            yield piece, size, one


def gauges(made: pipeline.Graded) -> dict[str, Gauge]:
    return {fabric.key: fabric.gauge for fabric in made.design.fabrics}


def polygon(strip: Strip, known: dict[str, Gauge]) -> Polygon:
    outline = outline_of(strip, known)
    return Polygon((*outline.starting, *reversed(outline.far)))


def lies_flat(strip: Strip) -> bool:
    """A band round a corner is no figure of one width, and a row of rising stitches has no height of its own."""
    heights = ({run.operation.stitch for run in row.runs if run.operation.kind == "stitch"} for row in strip.rows)
    return isinstance(strip.start, (ChainStart, SpanStart)) and all(len(names) < 2 for names in heights)


def test_outlines_enclose_the_area_of_their_stitches(made: pipeline.Graded) -> None:
    """A row's ends are joined by lines, so that half of what it gains or loses is counted to the row before."""
    known = gauges(made)
    for piece, size, one in pieces_of(made):
        for strip in one.strips:
            if strip.worked != "rows" or not strip.rows or not lies_flat(strip):
                continue
            drawn = polygon(strip, known)
            assert drawn.is_valid, f"{piece.key} {size} {strip.name}"
            cells = [(row.makes * known[row.fabric].stitch_width, known[row.fabric].row_height) for row in strip.rows]
            before = strip.start.stitches * known[strip.rows[0].fabric].stitch_width
            area = slack = 0.0
            for width, height in cells:
                area, slack, before = area + width * height, slack + abs(width - before) * height / 2, width
            assert abs(drawn.area - area) <= slack + 1e-6 * area, f"{piece.key} {size} {strip.name}"


def test_mirrored_pieces_are_congruent(made: pipeline.Graded) -> None:
    known = gauges(made)
    for piece, size, one in pieces_of(made):
        if not piece.mirrored:
            continue
        twin = made.grading.pieces[piece.like][size]
        for strip, other in zip(one.strips, twin.strips, strict=True):
            ours, theirs = polygon(strip, known), polygon(other, known)
            flipped = scale(theirs, xfact=-1, origin=(0, 0))
            shifted = translate(flipped, ours.bounds[0] - flipped.bounds[0], ours.bounds[1] - flipped.bounds[1])
            same = ours.symmetric_difference(theirs).area < 1e-6 * ours.area
            assert same or ours.symmetric_difference(shifted).area < 1e-6 * ours.area, f"{piece.key} {size}"


def test_the_parts_of_a_divided_piece_meet_and_do_not_overlap(made: pipeline.Graded) -> None:
    """Below the division and both sides above it: no cloth twice, and each side stands on the row it goes on from."""
    known = gauges(made)
    for piece, size, one in pieces_of(made):
        if not isinstance(made.grading.plans[piece.key][size].sections[-1], DividedPlan):
            continue
        whole, below = one.outline, outline_of(one.main, known)
        parts = [Polygon((*part.starting, *reversed(part.far))) for part in (below, *whole.sides)]
        least = min(part.area for part in parts)
        for index, part in enumerate(parts):
            for other in parts[index + 1 :]:
                assert part.intersection(other).area < 1e-6 * least, f"{piece.key} {size}"
        top = below.heights[-1]
        for side in whole.sides:
            assert side.starting[0][1] == side.far[0][1] == pytest.approx(top)
            assert below.starting[-1][0] - 1e-6 <= side.starting[0][0] < side.far[0][0] <= below.far[-1][0] + 1e-6


def worked(row: Row) -> list[tuple[str, int]]:
    """What a row works from its starting edge to its far one: turning chains left out, stitches gone alike at both ends."""
    kinds = []
    for run in row.runs:
        kind = run.operation.kind
        if kind != "turning chain" or run.operation.makes:
            name = "gone" if kind in ("leave", "slip over") else "stitch" if kind == "turning chain" else f"{kind} {run.operation.uses} {run.operation.makes}" if kind != "stitch" else kind
            kinds.append((name, run.times))
    joined = [(name, sum(times for _, times in group)) for name, group in groupby(kinds, key=lambda one: one[0])]
    return joined if row.side == "RS" else joined[::-1]


def test_both_sides_of_a_divided_top_are_mirrors_row_by_row(made: pipeline.Graded) -> None:
    for piece, size, one in pieces_of(made):
        sides = sorted((strip for strip in one.strips if isinstance(strip.start, SpanStart)), key=lambda strip: strip.start.first)  # type: ignore[union-attr]
        if not isinstance(made.grading.plans[piece.key][size].sections[-1], DividedPlan):
            continue
        first, second = sides
        assert len(first.rows) == len(second.rows)
        for number, (row, other) in enumerate(zip(first.rows, second.rows, strict=True), start=1):
            assert worked(row) == worked(other)[::-1], f"{piece.key} {size} row {number}"


def test_armholes_and_caps_shape_both_edges_alike(made: pipeline.Graded) -> None:
    for piece, size, one in pieces_of(made):
        plan, first = made.grading.plans[piece.key][size], 0
        for section, part in zip(piece.sections, plan.sections, strict=True):
            if isinstance(section, Cap) or (isinstance(section, Armhole) and section.at == "both"):
                for number, row in enumerate(one.main.rows[first : first + part.rows], start=first + 1):
                    assert worked(row) == worked(row)[::-1], f"{piece.key} {size} row {number}"
            first += part.rows


def profiles(made: pipeline.Graded) -> Iterator[tuple[str, Profile]]:
    """Every shaped edge whole: what a neck cuts off an armhole goes on beside the neck."""
    for piece, size, _ in pieces_of(made):
        edges: dict[tuple[str, str], list[EdgeStep]] = {}
        done = 0
        for part in made.grading.plans[piece.key][size].sections:
            if isinstance(part, (ProfilePlan, DividedPlan)):
                sides = {"starting": part.starting, "far": part.far} if isinstance(part, ProfilePlan) else {"outer": part.outer, "inner": part.inner}
                for side, parts in sides.items():
                    for one in parts:
                        key = ("starting" if side == "outer" else side, one.name)
                        steps = [step._replace(row=done + step.row) for step in one.profile.steps]
                        edges.setdefault(key, []).extend(steps)
            done += part.rows
        for (side, name), steps in edges.items():
            if steps and name in ("armhole", "neck", "cap"):
                begun = steps[0].row - 1
                yield f"{piece.key} {size} {side} {name}", Profile(done - begun, tuple(step._replace(row=step.row - begun) for step in steps))


def test_curves_are_worked_in_four_phrases_at_most(made: pipeline.Graded) -> None:
    for place, profile in profiles(made):
        assert len(phrases_of(profile)[0]) <= 4, place


def ellipse(stitches: float, rows: float, row: float) -> float:
    return stitches * math.sqrt(1 - (1 - min(1.0, row / rows)) ** 2)


def test_what_an_armhole_strays_is_what_its_counts_say(made: pipeline.Graded) -> None:
    """From the stitches of whole rows, and an ellipse written out here: the curve ends where its last step may lie."""
    subject = subject_of(made.design, made.bodies, made.grading)
    for piece, size, one in pieces_of(made):
        for index, section in enumerate(piece.sections):
            if not isinstance(section, Armhole) or section.at != "both":
                continue
            plan = made.grading.plans[piece.key][size]
            first = sum(part.rows for part in plan.sections[:index])
            counts = [one.main.start.stitches, *one.main.counts()][first:]
            gone = [(counts[0] - count) // 2 for count in counts[1:]]
            for edge in edges_of(subject, piece, index, size):
                assert edge.gone[: len(gone)] == tuple(gone[: len(edge.gone)])
                rest, rows = edge.gone[-1] - edge.gone[0], next(row for row in range(1, 400) if edge.curve(row) >= edge.gone[-1] - edge.gone[0] - 1e-9) - 1
                off = max(abs(after - edge.gone[0] - ellipse(rest, rows, row)) for row, after in enumerate(edge.gone))
                assert edge.strays == pytest.approx(off)


def test_armholes_necks_and_caps_are_as_long_as_their_drawn_curves(made: pipeline.Graded) -> None:
    """The curve's own length by numerical integration, its block in full and what stands upright.

    A row an edge apart at most, or a twentieth: stitches left make a stair, which is longer than the slope it stands for.
    """
    subject, known = subject_of(made.design, made.bodies, made.grading), gauges(made)
    for piece, size, _ in pieces_of(made):
        for index, section in enumerate(piece.sections):
            if not isinstance(section, (Armhole, Cap, Neck)) or (isinstance(section, Neck) and section.shape == "square"):
                continue
            gauge, edges = known[section.fabric], list(edges_of(subject, piece, index, size))
            if not edges:
                continue
            drawn = sum(drawn_length(edge.block, len(edge.gone), edge.curve, gauge, isinstance(section, Neck)) for edge in edges)
            graded_edges = made.grading.pieces[piece.key][size].edges
            if isinstance(section, Armhole):
                names = {edge.side: edge.name for edge in piece.edges if edge.top is None and edge.bottom is not None}
                if section.at != "both" or set(names) != {"starting", "far"}:
                    continue
                length = sum(graded_edges[name].length for name in names.values())
            elif isinstance(section, Neck):
                plan = made.grading.plans[piece.key][size].sections[-1]
                assert isinstance(plan, DividedPlan)
                # Between raglan edges there is no shoulder: what is left at the top of each side belongs to the neck.
                length = graded_edges["neck"].length - gauge.width_of(plan.centre + (plan.end if plan.raglan else 0))
            else:
                last = made.grading.pieces[piece.key][size].main.last_count
                length = graded_edges["cap"].length - gauge.width_of(last)
            assert abs(length - drawn) <= max(len(edges) * gauge.row_height, 0.05 * drawn), f"{piece.key} {size}: {length} and {drawn}"


def drawn_length(block: int, rows: int, curve: object, gauge: Gauge, from_start: bool) -> float:
    """A block goes level and up its own row; the curve begins after it, a neck's at once."""
    assert callable(curve)
    begin = 0.0 if from_start else 1.0

    def speed(row: float) -> float:
        step = 1e-4
        low, high = max(begin, row - step), min(float(rows), row + step)
        return math.hypot(gauge.width_of(1) * (curve(high) - curve(low)) / (high - low), gauge.row_height)

    length, _ = quad(speed, begin, rows, limit=400, points=[begin + 0.01, begin + 0.1, begin + 1.0])
    return length + gauge.width_of(block) + begin * gauge.row_height
