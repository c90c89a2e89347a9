"""`returns`: what came back from test makers beside what the pattern predicts; or an empty file for them to fill in."""

import json
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict
from itertools import groupby
from pathlib import Path
from typing import Any

from gaugewright import pipeline
from gaugewright.advice.own_gauge import OwnGauge
from gaugewright.advice.returns import Compared, Returned, YarnUsed, returned
from gaugewright.advice.standing_out import YARN_OFF, Overview, Remark, Spent, Standing, overview
from gaugewright.cli.gauge_option import parse_gauge_options
from gaugewright.cli.outcome import complain, say
from gaugewright.errors import Problem, ProblemsFound, UserError
from gaugewright.rounding import half_up, to_step
from gaugewright.spec.returns import ReadReturn, read_return, returns_in
from gaugewright.units import cm_text

RULE = (
    "The rule: of each measure, how far each maker is from what their own gauge makes of it. From three makers on, it is the design where the mean is off by "
    "more than 1 cm and 2 %, and makers so far apart would come to it by chance less than once in twenty, allowing for all measures looked at (t test, Holm); "
    f"perhaps the design, where only that one measure by itself passes. Of yarn, the mean must be off by more than {YARN_OFF * 100:.0f} %."
)

VERDICTS = {
    "as predicted": "as predicted", "their gauge": "their gauge", "not their gauge": "NOT their gauge",
    "unclear": "unclear: their gauge isn't known so closely", "gauge not told": "their gauge wasn't told",
}  # fmt: skip


def returns_lines(spec: Path, paths: Sequence[Path], gauge: Sequence[str], templates: Path | None, as_json: bool) -> None:
    """Prints the returns in these files and folders beside the predictions, and what stands out over all of them.

    `gauge` is that of the edition the makers worked from, where it was another than the spec's.
    """
    graded = pipeline.grade(pipeline.load(spec, parse_gauge_options(gauge), templates))
    reads = _read_all(returns_in(tuple(paths)))
    found, warnings = returned(graded, reads)
    seen = overview(graded, reads, found)
    if as_json:
        say(json.dumps(_data(found, seen, warnings), indent=2, ensure_ascii=False))
        return
    about = graded.design.about
    say(f"{about.title}{f', version {about.version}' if about.version else ''}: {_counted(len(found), 'return')}")
    for line in (*(line for one in found for line in _return_lines(one)), *_overview_lines(seen)):
        say(line)
    if warnings:
        complain(warnings)


def write_blank(spec: Path, target: Path, size: str, gauge: Sequence[str], templates: Path | None) -> None:
    """Writes an empty return for this pattern; a file that is there already is left alone."""
    from gaugewright.advice.blank_return import blank_return
    from gaugewright.output import write_whole

    if target.exists():
        raise UserError("file-exists", f"{target} is there already, and may have been filled in", "choose another name with --blank")
    graded = pipeline.grade(pipeline.load(spec, parse_gauge_options(gauge), templates))
    pipeline.chosen(graded, (size,) if size else ())
    write_whole(target, blank_return(graded, size).encode())
    say(str(target))


def _read_all(paths: Sequence[Path]) -> list[ReadReturn]:
    """All files; the problems of all of them are told together."""
    reads: list[ReadReturn] = []
    problems: list[Problem] = []
    for path in paths:
        try:
            reads.append(read_return(path))
        except ProblemsFound as found:
            problems += found.problems
    if problems:
        raise ProblemsFound(problems)
    return reads


def _data(found: Sequence[Returned], seen: Overview, warnings: Sequence[Problem]) -> dict[str, Any]:
    told = [{**asdict(one), "measures": [{**asdict(each), "off": each.off} for each in one.measures], "yarns": [{**asdict(each), "off": each.off} for each in one.yarns]} for one in found]
    return {"returns": told, "overview": asdict(seen), "rule": RULE, "warnings": [{"name": one.name, "message": one.message} for one in warnings]}


def _return_lines(one: Returned) -> Iterator[str]:
    yield ""
    yield f"{_who(one.maker, one.file)}: size {one.size}"
    yield from (f"  gauge {_gauge_text(key, gauge)}{_hook(one, key)}" for key, gauge in one.gauges.items())
    if not one.gauges:
        yield "  gauge: not told, so nothing can be put down to it"
    yield from _measure_lines(one.measures)
    yield from (f"  {_yarn_line(yarn)}" for yarn in one.yarns)
    if one.hours is not None:
        yield f"  hours: {_hours_text(one.hours)}" + (f", about {_tens(one.pace)} sts an hour" if one.pace else "")


def _who(maker: str, file: str) -> str:
    """A name, or the file's without its folder."""
    return Path(file).name if maker == file else maker


def _gauge_text(key: str, one: OwnGauge) -> str:
    sts, rows = one.gauge.stitches_in(100), one.gauge.rows_in(100)
    state = f", {one.state}" if one.state else ""
    return f"{key + ': ' if key else 'of the main fabric: '}{sts:.2f} sts (±{one.across * 100:.1f} %), {rows:.2f} rows (±{one.along * 100:.1f} %) to 10 cm{state}"


def _hook(one: Returned, key: str) -> str:
    return f"; {'worked with the hands' if one.hooks[key] == 'hands' else 'hook ' + one.hooks[key]}" if key in one.hooks else ""


def _measure_lines(measures: Sequence[Compared]) -> Iterator[str]:
    """A table: the pattern's and made, what their gauge makes of it, and what that leaves."""
    if not measures:
        return
    rows = [("", "pattern", "made", "off by", "", "at their gauge", "off by", "", "")]
    for one in measures:
        own = one.pattern if one.own is None else one.own
        theirs = ("-", "-", "-") if one.own is None else (cm_text(own), _difference(one.made, own), _percent(one.off))
        rows.append((one.label, cm_text(one.pattern), cm_text(one.made), _difference(one.made, one.pattern), _percent(one.made / one.pattern - 1), *theirs, VERDICTS[one.verdict]))
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]) - 1)]
    for row in rows:
        numbers = (cell.rjust(width) for cell, width in zip(row[1:-1], widths[1:], strict=True))
        yield f"  {'  '.join((row[0].ljust(widths[0]), *numbers, row[-1]))}".rstrip()


def _yarn_line(one: YarnUsed) -> str:
    if one.off is None:
        return f"{one.label}: {half_up(one.used)} g used; nothing is counted, since a swatch wasn't weighed"
    over = ": more than the pattern says to have" if one.used > one.printed else ""
    return f"{one.label}: {half_up(one.used)} g used, {half_up(one.counted)} g counted ({_percent(one.off)}), {half_up(one.printed)} g with the margin{over}"


def _overview_lines(seen: Overview) -> Iterator[str]:
    yield from ("", "What stands out:")
    standing = [*_standing_lines(seen.measures, "larger than predicted", "smaller than predicted"), *_standing_lines(seen.yarns, "more used than counted", "less used than counted")]
    few = [one.label.lower() for one in (*seen.measures, *seen.yarns) if one.judged == "too few"]
    yield from standing
    if few:
        yield f"  too few makers to say (three are needed, with their gauge): {', '.join(few)}"
    if not standing and not few:
        yield "  nothing is off in one direction over all makers" if seen.measures or seen.yarns else "  nothing was measured by a maker whose gauge is told, and no yarn was weighed"
    yield f"  {RULE}"
    yield from _hour_lines(seen)
    yield from _gap_lines(seen)
    for about, remarks in groupby(seen.remarks, lambda one: one.about):
        yield from ("", f"{about}:", *(f"  {_remark_line(one)}" for one in remarks))


def _standing_lines(some: Sequence[Standing], more: str, less: str) -> Iterator[str]:
    for one in some:
        found = one.agreement
        if one.judged in ("the design", "perhaps the design"):
            yield f"  {one.label.lower()}: {more if found.mean > 0 else less}, {_percent(found.mean)} ({_percent(found.low)} to {_percent(found.high)}, {found.makers} makers): {one.judged}"


def _hour_lines(seen: Overview) -> Iterator[str]:
    if seen.hours:
        yield from ("", "Hours:")
        for size, spent in groupby(seen.hours, lambda one: one.size):
            yield f"  {size}: " + "; ".join(_spent_text(one) for one in spent)
    if seen.pace:
        yield f"  pace, in stitches an hour: about {_range(seen.pace, _tens)}"


def _spent_text(one: Spent) -> str:
    return f"{one.piece + ' ' if one.piece else ''}{_range(one, _hours_text)}" + ("" if one.piece else " in all")


def _range(one: Spent, text: Callable[[float], str]) -> str:
    return text(one.mean) if one.makers == 1 else f"{text(one.mean)} ({text(one.low)} to {text(one.high)}, {one.makers} makers)"


def _tens(pace: float) -> str:
    """
    >>> _tens(257.0)
    '260'
    """
    return f"{to_step(pace, 10):.0f}"


def _hours_text(hours: float) -> str:
    """
    >>> _hours_text(31.5), _hours_text(4.0)
    ('31.5', '4')
    """
    return f"{to_step(hours, 0.1):.1f}".removesuffix(".0")


def _gap_lines(seen: Overview) -> Iterator[str]:
    gaps = (("Nobody made", seen.unmade), ("Nobody measured", seen.unmeasured), ("Nobody weighed", seen.unweighed), ("Nobody timed", seen.untimed))
    told = [f"{said}: {', '.join(names)}" for said, names in gaps if names]
    if told:
        yield from ("", *told)


def _remark_line(one: Remark) -> str:
    return f"{one.size}, {_who(one.maker, one.file)}: {' '.join(one.said.split())}"


def _difference(made: float, predicted: float) -> str:
    """Printed figures less printed figures, so that anybody's sum agrees; mm.

    >>> _difference(594.0, 592.0), _difference(580.0, 592.3), _difference(584.0, 581.0)
    ('+0.5 cm', '-1 cm', '+0.5 cm')
    """
    halves = half_up(made / 5) - half_up(predicted / 5)
    return f"{'+' if halves > 0 else '-' if halves < 0 else ''}{cm_text(abs(halves) * 5)} cm"


def _percent(share: float) -> str:
    """
    >>> _percent(0.0312), _percent(-0.0004)
    ('+3.1 %', '0 %')
    """
    text = f"{to_step(abs(share) * 100, 0.1):.1f}"
    return f"{'' if text == '0.0' else '-' if share < 0 else '+'}{text.removesuffix('.0')} %"


def _counted(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"
