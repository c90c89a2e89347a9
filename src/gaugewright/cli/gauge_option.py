"""`--gauge`, as often as fabrics are named: `8 sts, 6.5 rows / 10 cm` or `body=8 sts, 6.5 rows / 10 cm`."""

import re
from collections.abc import Mapping, Sequence

from gaugewright.design.regauge import MAIN
from gaugewright.errors import UserError
from gaugewright.gauge.model import Gauge

_NAMED = re.compile(r"\s*([A-Za-z][A-Za-z0-9_]*)\s*=\s*(.*)", re.DOTALL)


def parse_gauge_options(texts: Sequence[str]) -> Mapping[str, Gauge] | None:
    """The gauge of each fabric named, `MAIN` where none is; None where no gauge is asked for.

    >>> parse_gauge_options(["body=8 sts, 6.5 rows / 10 cm"])
    {'body': Gauge(stitches=8, width=100.0, rows=13, height=200.0)}
    """
    found: dict[str, Gauge] = {}
    for text in texts:
        name, gauge = _split(text)
        if name in found:
            raise UserError("two-gauges", f"--gauge {text!r}: a gauge for {name or 'the main fabric'} is already given", "give each fabric one gauge, as in --gauge body=\"8 sts, 7 rows / 10 cm\"")
        found[name] = _parsed(gauge, text)
    return found or None


def gauges_text(texts: Sequence[str]) -> str:
    """The gauges asked for, as they are printed.

    >>> gauges_text(["8 sts, 7 rows / 10 cm"]), gauges_text(["body=8 sts, 7 rows / 10 cm", "rib = 9 sts, 9 rows / 10 cm"])
    ('8 sts, 7 rows / 10 cm', 'body: 8 sts, 7 rows / 10 cm; rib: 9 sts, 9 rows / 10 cm')
    """
    parts = [_split(text) for text in texts]
    return "; ".join(f"{name}: {gauge}" if name else gauge for name, gauge in parts)


def _split(text: str) -> tuple[str, str]:
    named = _NAMED.fullmatch(text)
    return (named[1], named[2].strip()) if named else (MAIN, text)


def _parsed(gauge: str, text: str) -> Gauge:
    from gaugewright.spec.gauge_text import GaugeError, parse_gauge

    try:
        written = parse_gauge(gauge)
    except GaugeError as fault:
        raise UserError(fault.name, f"--gauge {text!r}: {fault.message}", fault.hint) from None
    return Gauge(written.stitches, written.width, written.rows, written.height)
