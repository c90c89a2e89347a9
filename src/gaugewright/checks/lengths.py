"""Along and across single pieces: total lengths, necks, and sizes that come out alike."""

from collections.abc import Iterator
from dataclasses import replace

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.rising import moved_to_rise, row_of
from gaugewright.checks.wording import by_size, cm, count_of, listed, problem, span_cm
from gaugewright.design.model import UNSTACKED, Formula, Neck, Piece, Shoulders, ToLevel
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.grading.model import GradedPiece, SpanStart, Strip
from gaugewright.grading.plan import DividedPlan, ShouldersPlan
from gaugewright.sized import Sized
from gaugewright.sizing.environment import Answer
from gaugewright.tolerances import NECK_STITCHES, SAME_LENGTH, total_tolerance


def wanted_total(piece: Piece) -> Formula | None:
    """The formula of a piece's whole length: its total, or the height at which its last section ends, if it says so."""
    if piece.total is not None:
        return piece.total
    extents = [section.extent for section in piece.sections if not isinstance(section, UNSTACKED)]
    return extents[-1].height if extents and isinstance(extents[-1], ToLevel) else None


def check_total_length(subject: Subject) -> Found:
    """Each piece's rows together come to its wanted total within half a row."""
    problems, figures = [], []
    for piece in subject.design.pieces:
        formula = wanted_total(piece)
        if formula is None:
            continue
        limit = total_tolerance(row_of(piece, subject))
        off: dict[str, tuple[float, float]] = {}
        try:
            for size, env in subject.environments.items():
                off[size] = subject.remade[piece.key][size].rows_length, env.length(formula)
        except ProblemsFound as found:
            problems += list(found.problems)
            continue
        worst = max(off, key=lambda size: abs(off[size][0] - off[size][1]))
        figures.append(f"{piece.key} off by up to {cm(abs(off[worst][0] - off[worst][1]))} ({worst})")
        excused = _moved_to_rise(subject, piece, formula, off)
        if excused:
            problems.append(problem(
                "row-for-rising", f"{piece.key} is {by_size((size, _figures(off[size])) for size in excused)}: a row more or less than the nearest, "
                "so that no size reaches less far than a smaller one", formula.origin,
                "nothing needs doing; a finer gauge, or wanted lengths that rise more from size to size, would be nearer", excused, "note",
            ))
        over = [size for size, (worked, wanted) in off.items() if abs(worked - wanted) > limit + SAME_LENGTH and size not in excused]
        if over:
            problems.append(problem(
                "total-off-target", f"{piece.key} is {by_size((size, _figures(off[size])) for size in over)}; within half a row, {cm(limit)}, is expected",
                formula.origin, "let one section take what the others leave: `length: rest` with a total, or `to` a level", over,
            ))
    return Found(tuple(problems), "; ".join(figures) or "no piece has a wanted total")


def _figures(worked_and_wanted: tuple[float, float]) -> str:
    return f"{cm(worked_and_wanted[0])} long where {cm(worked_and_wanted[1])} is wanted"


def _moved_to_rise(subject: Subject, piece: Piece, formula: Formula, off: dict[str, tuple[float, float]]) -> tuple[str, ...]:
    """Sizes moved by a row so that what the piece reaches to, with the pieces it hangs on, never falls.

    How far it reaches is its total's formula without the pieces measured in it, and what rounding adds.
    """
    if piece.total is None:
        return ()
    nothing: dict[str, Answer] = {name: lambda _call, _env: 0.0 for name in ("finished", "edge")}
    alone = subject.environments.map(lambda env: replace(env, answers={**env.answers, **nothing}, known={}).length(formula))
    errors = {size: worked - wanted for size, (worked, wanted) in off.items()}
    reach = Sized(alone.labels, tuple(value + errors[size] for size, value in alone.items()))
    return moved_to_rise(reach, errors, row_of(piece, subject))


def check_necks(subject: Subject) -> Found:
    """Both shoulders alike with the neck in the middle, both sides of a divided top mirrors of each other;
    and how far its parity takes the neck from its width."""
    problems: list[Problem] = []
    necks = 0
    for piece in subject.design.pieces:
        for index, section in enumerate(piece.sections):
            if isinstance(section, (Shoulders, Neck)):
                necks += 1
                problems += _off_centre(subject, piece, section, index)
                problems += _neck_parity(subject, piece, section, index)
    return Found(tuple(problems), f"{count_of(necks, 'neck')} centred" if not problems else f"{count_of(necks, 'neck')} looked at")


def _neck_plan(subject: Subject, piece: Piece, index: int, size: str) -> ShouldersPlan | DividedPlan:
    plan = subject.grading.plans[piece.key][size].sections[index]
    assert isinstance(plan, (ShouldersPlan, DividedPlan))
    return plan


def _off_centre(subject: Subject, piece: Piece, section: Shoulders | Neck, index: int) -> Iterator[Problem]:
    off = []
    for size in subject.sizes:
        plan, graded = _neck_plan(subject, piece, index, size), subject.grading.pieces[piece.key][size]
        text = mirror_fault(graded) if isinstance(plan, DividedPlan) else _uneven(plan, graded.main)
        if text:
            off.append((size, text))
    if off:
        yield problem(
            "neck-off-centre", f"the neck of {piece.key} is not in the middle: {by_size(off)}", section.origin,
            "the shoulders can't be sewn; please report it with this spec", [size for size, _ in off],
        )


def _uneven(plan: ShouldersPlan, main: Strip) -> str:
    """What is wrong with the shoulders of an undivided top, whose slope has left stitches at both ends alike."""
    before = main.rows[-plan.rows - 1].across
    if 2 * plan.shoulder + plan.neck == before and plan.shoulder >= 1 and plan.neck >= 1 and main.last_count == plan.end:
        return ""
    return f"shoulders of {plan.shoulder} and {before - plan.shoulder - plan.neck} stitches beside a neck of {plan.neck}"


def mirror_fault(graded: GradedPiece) -> str:
    """Where the second side of a divided top is no mirror of the first; nothing where it is."""
    main, *sides = graded.strips
    starts = sorted((side.start.first, side.start.stitches) for side in sides if isinstance(side.start, SpanStart))
    if len(starts) != 2 or starts[0][0] != 0 or sum(starts[1]) != main.last_count or starts[0][1] != starts[1][1]:
        return f"sides over stitches {starts} of {main.last_count}"
    for number, rows in enumerate(zip(sides[0].rows, sides[1].rows, strict=True), start=len(main.rows) + 1):
        gained = [row.edge_changes() for row in rows]
        if gained[0] != gained[1][::-1] or rows[0].across != rows[1].across:
            return f"row {number} has {rows[0].across} stitches on one side and {rows[1].across} on the other, or other edges"
    return ""


def _neck_parity(subject: Subject, piece: Piece, section: Shoulders | Neck, index: int) -> Iterator[Problem]:
    width = section.neck if isinstance(section, Shoulders) else section.width
    if width is None:
        return  # between raglan edges it is as wide as they leave it
    gauge = subject.design.fabric(section.fabric).gauge
    off = []
    for size, env in subject.environments.items():
        plan, wanted = _neck_plan(subject, piece, index, size), env.length(width)
        if abs(plan.neck - wanted * gauge.stitches / gauge.width) > NECK_STITCHES + SAME_LENGTH:
            got = plan.neck * gauge.width / gauge.stitches
            off.append((size, f"{plan.neck} stitches, {cm(got)} for {cm(wanted)}"))
    if off:
        yield problem(
            "neck-parity", f"the neck of {piece.key} is {by_size(off)}; with two equal shoulders it is even or odd as the piece is",
            width.origin, f"a piece one stitch ({cm(gauge.stitch_width)}) wider or narrower lets it be nearer", [size for size, _ in off], "note",
        )


def check_equal_counts(subject: Subject) -> Found:
    """Neighbouring sizes that start with the same count although they are meant to differ."""
    problems = []
    alike = 0
    for piece in subject.design.pieces:
        width = piece.start.width
        if width is None:
            continue
        wanted = {size: env.length(width) for size, env in subject.environments.items()}
        counts = {size: plan.start.stitches for size, plan in subject.grading.plans[piece.key].items()}
        groups = [group for group in _runs_alike(counts) if max(wanted[s] for s in group) - min(wanted[s] for s in group) > SAME_LENGTH]
        if groups:
            alike += len(groups)
            texts = [f"{counts[group[0]]} stitches in {listed(group)} (wanted {span_cm(wanted[s] for s in group)})" for group in groups]
            stitch = subject.design.fabric(piece.start.fabric).gauge.stitch_width
            problems.append(problem(
                "equal-counts", f"{piece.key} starts alike in neighbouring sizes: {'; '.join(texts)}", width.origin,
                f"a stitch is {cm(stitch)} here: a finer gauge, or wider steps between sizes, tells them apart",
                [size for group in groups for size in group], "note",
            ))
    return Found(tuple(problems), f"{count_of(alike, 'group')} of sizes with equal counts" if alike else "all sizes differ where they are meant to")


def _runs_alike(counts: dict[str, int]) -> Iterator[tuple[str, ...]]:
    """Neighbouring sizes of one count, two or more together."""
    run: list[str] = []
    for size in counts:
        if run and counts[run[-1]] != counts[size]:
            if len(run) > 1:
                yield tuple(run)
            run = []
        run.append(size)
    if len(run) > 1:
        yield tuple(run)
