"""`bodies`: what share of surveyed bodies each size fits."""

import json
from dataclasses import asdict
from pathlib import Path

from gaugewright import pipeline
from gaugewright.advice.bodies import BodiesAdvice, Share, bodies_within
from gaugewright.advice.together import Overall, Together
from gaugewright.cli.outcome import say
from gaugewright.checks.wording import listed
from gaugewright.errors import UserError
from gaugewright.measurements.limits import Limits
from gaugewright.problem_text import count_of
from gaugewright.tolerances import FEW_BODIES, TIGHT_ON_MANY
from gaugewright.units import cm_text

SURVEY = (
    "The survey is of a serving army, young and fit, with few large bodies and nobody under 17; arms of women are flexed. "
    "Nobody in it counts for more or less than another, so its shares are the survey's, not a country's: a 95 % range (Wilson 1927) "
    "tells only what the draw of single bodies may have moved. Own readings of a tape differ by 1 to 2 cm."
)


OWN_EASE = ", or over the size's own ease and two standard deviations of such bodies where that is more"


def bodies_lines(spec: Path, ease: list[str], templates: Path | None, as_json: bool) -> None:
    """Prints the share of bodies that each size fits, by measure and in all of them together."""
    wanted = dict(_limits(text) for text in ease)
    found = bodies_within(pipeline.grade(pipeline.load(spec, None, templates)), wanted)
    if as_json:
        say(json.dumps(_data(found), indent=2, ensure_ascii=False))
        return
    for line in _lines(found, frozenset(wanted)):
        say(line)


def _data(found: BodiesAdvice) -> dict[str, object]:
    data = asdict(found)
    data["limits"] = {name: {"least": one.least, "most": one.most} for name, one in found.limits.items()}
    for one, told in zip(found.shares, data["shares"], strict=True):
        told["fits"] = one.fits
    for joint, told in zip(found.together, data["together"], strict=True):
        told["range"] = joint.range
    data["some"]["range"] = found.some.range
    data["caveats"] = [*found.caveats, SURVEY]
    return data


def _limits(text: str) -> tuple[str, Limits]:
    """`upper_arm=2..12`, in cm."""
    name, _, ends = text.partition("=")
    least, _, most = ends.partition("..")
    try:
        found = Limits(float(least) * 10, float(most) * 10, "as asked for")
    except ValueError:
        found = Limits(0, 0, "")
    if not name or not -1000 < found.least < found.most < 1000:
        raise UserError("bad-ease-limits", f"--ease {text} is no measure with a least and a most ease", "write --ease upper_arm=2..12, in cm, the smaller first")
    return name, found


def _lines(found: BodiesAdvice, asked: frozenset[str]) -> list[str]:
    told = []
    for measure, allowed in found.limits.items():
        told.append(f"{measure}: of bodies of the size's {found.girth}, tight under {cm_text(allowed.least)} cm of ease, loose over {cm_text(allowed.most)} cm{'' if measure in asked else OWN_EASE} ({allowed.source})")
        told += [_share_line(one, one.most != allowed.most) for one in found.shares if one.measure == measure]
    if found.beyond:
        told.append(f"Nobody surveyed has the {found.girth} of {', '.join(found.beyond)}: nothing is said of them.")
    return [*told, "", *_joint_lines(found), "", *found.caveats, SURVEY]


def _share_line(one: Share, own: bool) -> str:
    line = f"  {one.size}: {cm_text(one.worn)} cm as worn on {cm_text(one.body)} cm (spread {one.spread / 10:.1f}): fits {_percent(one.fits)}, tight on {_percent(one.tight)}, loose on {_percent(one.loose)}"
    limit = f" (over {cm_text(one.most)} cm)" if own else ""
    return line + limit + ("  <- tight on many" if one.tight >= TIGHT_ON_MANY else "")


def _joint_lines(found: BodiesAdvice) -> list[str]:
    """In everything at once: bodies, not measures, are counted."""
    measures = listed(one.replace("_", " ") for one in found.measures)
    told = [f"In {measures} at once, of single bodies drawn from the survey, each in the size that its {found.girth} chooses:"]
    told += [_joint_line(one) for one in found.together if one.bodies]
    nobody = [one.size for one in found.together if not one.bodies]
    told += [f"  {', '.join(nobody)}: nobody drawn has its {found.girth}"] if nobody else []
    return [*told, _overall_line(found.some, found.girth)]


def _joint_line(one: Together) -> str:
    line = f"  {one.size}: fits {one.fits} of {count_of(one.bodies, 'body', 'bodies')}, {_share(one.fits, one.bodies, one.range)}"
    if one.dearest:
        line += f"; but for the {one.dearest.replace('_', ' ')} it would fit {one.without[one.dearest]}"
    return line + ("; few bodies: a hint, no figure to lean on" if one.bodies < FEW_BODIES else "")


def _overall_line(one: Overall, girth: str) -> str:
    if not one.bodies:
        return f"Nobody drawn has a {girth} within the sizes."
    return f"  Some size fits {one.some} of the {one.bodies} within the sizes' {girth}, {_share(one.some, one.bodies, one.range)}; the size of their {girth} fits {one.own}."


def _share(hits: int, of: int, ends: tuple[float, float]) -> str:
    low, high = ends
    return f"{_percent(hits / of)} (95 % range {low * 100:.0f} to {_percent(high)})"


def _percent(part: float) -> str:
    return f"{part * 100:.0f} %"
