"""`bodies`: what share of surveyed bodies each size fits."""

import json
from dataclasses import asdict
from pathlib import Path

from gaugewright import pipeline
from gaugewright.advice.bodies import MANY, BodiesAdvice, Share, bodies_within
from gaugewright.cli.outcome import say
from gaugewright.errors import UserError
from gaugewright.measurements.limits import Limits
from gaugewright.units import cm_text

SURVEY = "The survey is of a serving army, young and fit, with few large bodies and nobody under 17; arms of women are flexed. Own readings of a tape differ by 1 to 2 cm."


def bodies_lines(spec: Path, ease: list[str], templates: Path | None, as_json: bool) -> None:
    """Prints the share of bodies that each size fits, by measure."""
    wanted = dict(_limits(text) for text in ease)
    found = bodies_within(pipeline.grade(pipeline.load(spec, None, templates)), wanted)
    if as_json:
        data = asdict(found)
        data["limits"] = {name: {"least": one.least, "most": one.most} for name, one in found.limits.items()}
        for one, told in zip(found.shares, data["shares"], strict=True):
            told["fits"] = one.fits
        data["caveats"] = [*found.caveats, SURVEY]
        say(json.dumps(data, indent=2, ensure_ascii=False))
        return
    for line in _lines(found):
        say(line)


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


def _lines(found: BodiesAdvice) -> list[str]:
    told = []
    for measure, allowed in found.limits.items():
        told.append(f"{measure}: of bodies of the size's {found.girth}, with {cm_text(allowed.least)} to {cm_text(allowed.most)} cm of ease ({allowed.source})")
        told += [_share_line(one) for one in found.shares if one.measure == measure]
    if found.beyond:
        told.append(f"Nobody surveyed has the {found.girth} of {', '.join(found.beyond)}: nothing is said of them.")
    return [*told, "", *found.caveats, SURVEY]


def _share_line(one: Share) -> str:
    line = f"  {one.size}: {cm_text(one.finished)} cm on {cm_text(one.body)} cm (spread {one.spread / 10:.1f}): fits {one.fits * 100:.0f} %, tight on {one.tight * 100:.0f} %, loose on {one.loose * 100:.0f} %"
    return line + ("  <- tight on many" if one.tight >= MANY else "")
