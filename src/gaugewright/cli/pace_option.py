"""`--pace`, as often as needed: `beginner`, `practised`, `14` stitches a minute of the main fabric, or `body=14`."""

import math
import re
from collections.abc import Sequence

from gaugewright.errors import UserError
from gaugewright.hours.paces import Maker, beginner
from gaugewright.trade.work_times import pace_fault

_STATED = re.compile(r"\s*(?:([A-Za-z][A-Za-z0-9_]*)\s*=)?\s*([0-9]{1,6}(?:\.[0-9]{1,6})?)\s*")
HINT = "write --pace beginner, --pace practised, --pace 14 (stitches a minute), or --pace body=14 for one fabric"


def maker_of(texts: Sequence[str], fabrics: Sequence[str]) -> Maker:
    """Whose hours are asked for; `fabrics` are those worked, the main one first.

    >>> maker_of(["14", "band=20"], ["body", "band"])
    Maker(own={'body': 14.0, 'band': 20.0}, times=1.0)
    """
    words = [text.strip() for text in texts if text.strip() in ("beginner", "practised")]
    if len(set(words)) > 1:
        raise UserError("bad-pace", "--pace says both beginner and practised", "give one of them")
    own: dict[str, float] = {}
    for text in texts:
        if text.strip() not in words:
            fabric, rate = _stated(text, fabrics)
            if fabric in own:
                raise UserError("bad-pace", f"--pace {text}: a pace for {fabric} is already given", "give each fabric one pace")
            own[fabric] = rate
    return beginner(own) if "beginner" in words else Maker(own)


def _stated(text: str, fabrics: Sequence[str]) -> tuple[str, float]:
    found = _STATED.fullmatch(text)
    if not found or not math.isfinite(float(found[2])) or not float(found[2]):
        raise UserError("bad-pace", f"--pace {text} is no pace", HINT)
    fabric, rate = found[1] or fabrics[0], float(found[2])
    if fabric not in fabrics:
        raise UserError("unknown-fabric", f"--pace {text}: nothing is worked in a fabric {fabric}", f"the fabrics worked are {', '.join(fabrics)}")
    fault = pace_fault(rate)
    if fault:
        raise UserError(fault.name, f"--pace {text}: {fault.message}", HINT)
    return fabric, rate
