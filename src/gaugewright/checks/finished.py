"""Finished measurements: near enough to what was wanted, as graded, and with even ease over the sizes."""

from collections.abc import Iterator

from gaugewright.checks.model import Found, Measured, Subject
from gaugewright.checks.rising import falls_of, lengthened, moved_to_rise, rising_hint, row_of
from gaugewright.checks.terms import Term, allowance, terms_of
from gaugewright.checks.wording import by_size, cm, count_of, listed, problem, span_cm
from gaugewright.errors import Problem
from gaugewright.tolerances import SAME_LENGTH


def check_finished(subject: Subject) -> Found:
    """Each measurement measured anew against its wanted length, within its own allowance."""
    problems = list(subject.faults)
    figures = []
    for measured in subject.measured:
        problems += _differs_from_graded(measured, subject)
        if measured.wanted is None:
            continue
        limits = {size: allowance(measured.measure.measure, subject, size) for size in subject.sizes}
        off = {size: measured.actual[size] - measured.wanted[size] for size in subject.sizes}
        piece = lengthened(measured, subject)
        excused = moved_to_rise(measured.actual, off, row_of(piece, subject)) if piece is not None else ()
        over = [size for size in subject.sizes if abs(off[size]) > limits[size].mm + SAME_LENGTH and size not in excused]
        worst = max(subject.sizes, key=lambda size: abs(off[size]))
        figures.append(
            f"{measured.measure.key} {span_cm(measured.actual)}, off by up to {cm(abs(off[worst]))} ({worst}), "
            f"allowed {limits[worst].words}"
        )
        if over:
            problems.append(problem(
                "finished-off-target", f"{measured.measure.key} comes out "
                + by_size((size, f"at {cm(measured.actual[size])} where {cm(measured.wanted[size])} is wanted") for size in over)
                + f"; within {limits[over[0]].words} is expected", measured.measure.origin,
                "make the pieces' formulas add up to `wanted` (bands and seams included), or set `wanted` to what they add up to", over,
            ))
    return Found(tuple(problems), "; ".join(figures) or "no finished measurement states what is wanted")


def _differs_from_graded(measured: Measured, subject: Subject) -> Iterator[Problem]:
    """The graded pieces must hold the same figures as those measured anew from their rows."""
    for term in dict.fromkeys(terms_of(measured.measure.measure, subject.design)):
        differing = [(size, text) for size in subject.sizes if (text := _difference(term, subject, size))]
        if differing:
            yield problem(
                "finished-disagrees", f"{term.piece}.{term.name} is graded as {by_size(differing)}", measured.measure.origin,
                "the figure can't be trusted; please report it with this spec", [size for size, _ in differing],
            )


def _difference(term: Term, subject: Subject, size: str) -> str:
    graded, remade = subject.grading.pieces[term.piece][size], subject.remade[term.piece][size]
    was = graded.edges[term.name].length if term.is_edge else graded.finished[term.name]
    now = remade.edges[term.name] if term.is_edge else remade.measures[term.name]
    return f"{cm(was)}, and its rows measure {cm(now)}" if abs(was - now) > SAME_LENGTH else ""


def check_ease_drift(subject: Subject) -> Found:
    """How evenly each measurement with a wanted length follows the body from size to size.

    Rounding makes the ease drift; it is told where it does so by more than rounding once may.
    """
    problems, figures = [], []
    for measured in subject.measured:
        body = body_values(measured, subject)
        if measured.wanted is None or not body:
            continue
        ease = {size: measured.actual[size] - body[size] for size in subject.sizes}
        off = {size: measured.actual[size] - measured.wanted[size] for size in subject.sizes}
        drift = max(off.values()) - min(off.values())
        key, limit = measured.measure.key, max((allowance(measured.measure.measure, subject, size) for size in subject.sizes), key=lambda one: one.mm)
        figures.append(f"{key}: ease {span_cm(ease.values())}, drift {cm(drift)}")
        if drift > limit.mm + SAME_LENGTH:
            least, most = min(off, key=lambda size: off[size]), max(off, key=lambda size: off[size])
            problems.append(problem(
                "ease-drift", f"ease of {key} drifts by {cm(drift)} over the sizes: {cm(ease[least])} in {least}, {cm(ease[most])} in {most}; "
                f"whole stitches and rows allow {limit.words} either way", measured.measure.origin,
                "a finer gauge drifts less; state the finished measurements beside the sizes",
                [size for size in subject.sizes if size in (least, most)], "note",
            ))
    return Found(tuple(problems), "; ".join(figures) or "no measurement with a body measure and a wanted length")


def body_values(measured: Measured, subject: Subject) -> dict[str, float]:
    """The body measure that a measurement clothes, by size; empty unless every size has it."""
    values = {label: body.values[measured.measure.of].mm for label, body in subject.bodies.items() if measured.measure.of in body.values}
    return values if len(values) == len(subject.sizes) else {}


GIRTHS = ("bust", "chest", "upper_arm", "hip", "wrist", "waist", "neck", "head")
LENGTHS = ("back_waist_length", "center_back_neck_to_wrist")


def check_never_falls(subject: Subject) -> Found:
    """Girths, total length and neck to wrist never fall from one size to the next.

    Sleeve and side may: with dropped shoulders the sleeve grows shorter as the body widens.
    """
    problems = []
    watched = [one for one in subject.measured if one.measure.of in (*GIRTHS, *LENGTHS) or _is_total_length(one, subject)]
    for one in watched:
        falls = falls_of(one.actual)
        if falls:
            meant = one.wanted is not None and all(one.wanted[after] < one.wanted[before] - SAME_LENGTH for before, after in falls)
            steps = listed(f"{before} {cm(one.actual[before])} to {after} {cm(one.actual[after])}" for before, after in falls)
            problems.append(problem(
                "size-falls", f"{one.measure.key} falls from one size to the next: {steps}", one.measure.origin,
                "the wanted length falls too; check the body measures of these sizes" if meant else rising_hint(one, subject, falls),
                [after for _, after in falls], "note" if meant else "error",
            ))
    figures = f"{count_of(len(watched), 'measurement')} rising: {', '.join(one.measure.key for one in watched)}" if watched else "nothing to compare"
    return Found(tuple(problems), figures)


def _is_total_length(one: Measured, subject: Subject) -> bool:
    """A measurement of a single piece's whole length, of a piece whose sections end at heights above the hem."""
    terms = terms_of(one.measure.measure, subject.design)
    if len(terms) != 1 or terms[0].is_edge or terms[0].name != "length":
        return False
    piece = subject.design.piece(terms[0].piece)
    return piece.total is None and any(type(getattr(section, "extent", None)).__name__ == "ToLevel" for section in piece.sections)


def check_bust_steps(subject: Subject) -> Found:
    """The bust grows evenly: steps from size to size differ by no more than one stitch."""
    problems, figures = [], []
    for one in subject.measured:
        if one.measure.of not in ("bust", "chest") or len(one.actual) < 3:
            continue
        values = one.actual.values
        steps = [after - before for before, after in zip(values, values[1:], strict=False)]
        body = list(body_values(one, subject).values())
        own = [after - before for before, after in zip(body, body[1:], strict=False)]
        limit = max((allowance(one.measure.measure, subject, size) for size in subject.sizes), key=lambda each: each.mm)
        figures.append(f"{one.measure.key}: steps of {span_cm(steps)}")
        if max(steps) - min(steps) > limit.mm + SAME_LENGTH:
            names = [f"{cm(step)} to {size}" for step, size in zip(steps, subject.sizes[1:], strict=True)]
            problems.append(problem(
                "uneven-steps", f"{one.measure.key} grows in steps of {', '.join(names)}; they differ by {cm(max(steps) - min(steps))}, "
                f"more than {limit.words}" + (f" (the body's own steps are {span_cm(own)})" if own else ""), one.measure.origin,
                "a finer gauge, or body measures in even steps, evens them out", subject.sizes, "note",
            ))
    return Found(tuple(problems), "; ".join(figures) or "no bust in three sizes or more")
