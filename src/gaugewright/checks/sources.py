"""What the spec names and what it stands on: yarns that are used, body measures that are sure."""

from collections.abc import Iterator

from gaugewright.checks.model import Found, Subject
from gaugewright.checks.wording import by_size, cm, count_of, problem
from gaugewright.design.model import UNSTACKED, Cap, Crown, Design, ForLength, Formula, Motif, Taper, ToLevel
from gaugewright.design.shapes import shape_formulas
from gaugewright.errors import Origin, Problem
from gaugewright.formulas.names import names_in


def check_yarns_used(subject: Subject) -> Found:
    """Each yarn of the spec is worked with in some row, and each that is can be bought: where one has a ball, all have."""
    used = {
        run.colour for sized in subject.grading.pieces.values() for graded in sized
        for strip in graded.strips for row in strip.rows for run in row.runs
    }
    used |= {colour for piece in subject.design.pieces if piece.grid for colour in piece.grid.turns}
    problems = [
        problem("yarn-unused", f"no piece is worked in {yarn.key}", yarn.origin, f"take {yarn.key} out of yarns, or name it in a piece's colours", (), "note")
        for yarn in subject.design.yarns if yarn.key not in used
    ]
    if any(yarn.ball_mass for yarn in subject.design.yarns):
        problems += [
            problem("yarn-not-bought", f"{yarn.key} is used but has no ball, so that nobody can tell how many to buy of it", yarn.origin, f"add `ball: {{mass: 100 g, length: 58 m}}` to {yarn.key}, or `like:` a yarn that has one", (), "warning")
            for yarn in subject.design.yarns if yarn.key in used and not yarn.ball_mass
        ]
    return Found(tuple(problems), f"{len(used)} of {count_of(len(subject.design.yarns), 'yarn')} used")


def formulas_of(design: Design) -> Iterator[Formula]:
    """Every formula of a design, in the order of the spec's parts."""
    yield from (formula for _, formula in (*design.lengths, *design.levels))
    for piece in design.pieces:
        yield from (formula for formula in (piece.start.width, piece.total) if formula is not None)
        for section in piece.sections:
            yield from shape_formulas(section)
            if isinstance(section, (*UNSTACKED, Cap)):
                continue
            if isinstance(section.extent, ToLevel):
                yield section.extent.height
            elif isinstance(section.extent, ForLength):
                yield section.extent.length
            if isinstance(section, (Taper, Crown, Motif)) and section.target is not None:
                yield section.target
        yield from piece.colours.formulas()
    for one in design.attachments:
        yield from (one.up, one.inset)
    for measure in design.finished:
        yield measure.measure
        if measure.wanted is not None:
            yield measure.wanted


def measures_used(design: Design) -> dict[str, Origin]:
    """Body measures that the design uses, each with the first place it does."""
    found: dict[str, Origin] = {}
    for formula in formulas_of(design):
        for name in names_in(formula.node):
            family, _, measure = name.name.partition(".")
            if family == "body":
                found.setdefault(measure, formula.origin.shifted(name.column))
    for finished in design.finished:
        if finished.of:
            found.setdefault(finished.of, finished.origin)
    for opening in design.openings:
        found.setdefault(opening.passes, opening.origin)
    return found


def check_unconfirmed(subject: Subject) -> Found:
    """Body measures that are not a published chart's: given from memory, or a survey's average."""
    problems: list[Problem] = []
    used = measures_used(subject.design)
    for measure, origin in used.items():
        values = {label: body.values[measure] for label, body in subject.bodies.items() if measure in body.values}
        doubted = [size for size, value in values.items() if not value.confirmed]
        surveyed = [size for size, value in values.items() if value.confirmed and value.spread_mm]
        if doubted:
            problems.append(problem(
                "measure-unconfirmed", f"body.{measure} is {by_size((size, values[size].note or 'not confirmed') for size in doubted)}", origin,
                f"check it against {values[doubted[0]].source}, or give your own under sizes: own:", doubted, "note",
            ))
        if surveyed:
            notes = by_size((size, values[size].note) for size in surveyed if values[size].note)
            spread = max(values[size].spread_mm for size in surveyed)
            problems.append(problem(
                "measure-surveyed", f"body.{measure} is an average of surveyed bodies; one in three differs by more than {cm(spread)}"
                + (f" ({notes})" if notes else ""), origin, f"give your own {measure} under sizes: own: where the fit depends on it", surveyed, "note",
            ))
    return Found(tuple(problems), f"{count_of(len(used), 'body measure')} used, {len(problems)} not from a chart seen in print")
