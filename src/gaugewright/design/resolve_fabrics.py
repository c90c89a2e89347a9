"""Fabrics: stitch or stitch pattern, turning chains, gauge, and which counts they allow."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from gaugewright.design.likeness import resolved, stated_in
from gaugewright.design.model import Fabric, Timing
from gaugewright.design.origins import Origins
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.counts import CountRule
from gaugewright.gauge.hanging import hung
from gaugewright.gauge.model import Gauge
from gaugewright.spec import Spec
from gaugewright.stitch_patterns.pattern import StitchPattern
from gaugewright.trade.stitches import stitch

Get = Callable[[str], Any]


def resolve_fabric(key: str, spec: Spec, origins: Origins, patterns: Mapping[str, StitchPattern]) -> Fabric:
    """One fabric with what it takes from the one it is like."""
    get = resolved(
        spec.fabrics, key, together=(("swatch", "gauge"), ("stitch", "pattern")), goes_with={"turning_chain": "stitch", "edge_stitches": "pattern"}
    )
    swatch, written, tool = get("swatch"), get("gauge"), get("tool")
    pattern = patterns[get("pattern")] if get("pattern") else None
    worked: Any = get("worked") or "rows"
    if pattern is not None:
        _check_way(key, pattern, worked, spec, origins)
    facts = stitch(pattern.plain if pattern else get("stitch"))
    chain = None if pattern else get("turning_chain")
    if chain and chain.counts == "as a stitch" and not chain.chains:
        place = origins.at(("fabrics", stated_in(spec.fabrics, key, "turning_chain"), "turning_chain"))
        message = "a turning chain of no chains can't count as a stitch"
        hint = f"give it {facts.chains or 1} chains, or don't count it"
        raise ProblemsFound([Problem("chainless-stitch", message, place, hint)])
    measured = swatch or written
    lying = Gauge(measured.stitches, _mm(measured.width), measured.rows, _mm(measured.height))
    gauge, judged = _hanging(lying, swatch, get("growth"))
    return Fabric(
        key, facts.name, get("loop") or "both", worked,
        chain.chains if chain else facts.chains,
        chain.counts == "as a stitch" if chain else facts.counts_unless_set,
        None if tool in (None, "hands") else tool.mm, tool == "hands", gauge,
        swatch.mass.grams if swatch and swatch.mass else None,
        swatch.thickness.mm if swatch and swatch.thickness else 0.0,
        _rule(get, pattern, worked), origins.at(("fabrics", key), key=True),
        pattern, _edge(get), _timings(swatch), lying if gauge != lying else None, judged,
    )


def _timings(swatch: Any) -> tuple[Timing, ...]:
    stated = swatch.timed if swatch is not None else None
    return tuple(Timing(one.stitches * one.rows, one.minutes * 60) for one in stated or ())


def _hanging(lying: Gauge, swatch: Any, growth: float | None) -> tuple[Gauge, bool]:
    """The gauge as the finished piece hangs, from the swatch as it was hung or from a stated percentage; and whether either is there."""
    if swatch and swatch.hung:
        return replace(lying, height=swatch.hung.mm), True
    return hung(lying, (growth or 0.0) / 100), growth is not None


def _check_way(key: str, pattern: StitchPattern, worked: str, spec: Spec, origins: Origins) -> None:
    """A pattern in rows isn't one in rounds: its edges and its wrong-side rows have no place there."""
    if pattern.cycle(worked != "rows"):
        return
    place = origins.at(("fabrics", stated_in(spec.fabrics, key, "pattern"), "pattern"))
    has, wants = ("rows", "rounds") if worked != "rows" else ("rounds", "rows")
    message = f"the stitch pattern {pattern.key} has no {wants}, and this fabric is worked in {worked}"
    hint = f"work it in {has}, or write a pattern of your own with `{wants}` under stitch_patterns"
    raise ProblemsFound([Problem("stitch-pattern-way", message, place, hint)])


def _edge(get: Get) -> int:
    stated = get("edge_stitches")
    return stated if isinstance(stated, int) else 0


def _rule(get: Get, pattern: StitchPattern | None, worked: str) -> CountRule:
    """Counts that are allowed: whole repeats with their edge stitches, unless plain stitches fill up what is left."""
    parity: Any = get("parity") or "any"
    minimum, multiple = get("minimum") or 1, get("multiple")
    if pattern is None:
        return CountRule(multiple.of if multiple else 1, multiple.plus if multiple else 0, parity, minimum)
    extra = (0 if worked != "rows" else pattern.plus) + 2 * _edge(get)
    if get("edge_stitches") == "as needed":
        return CountRule(parity=parity, minimum=minimum)
    return CountRule(pattern.of, extra, parity, max(minimum, pattern.of + extra))


def _mm(length: Any) -> float:
    return float(getattr(length, "mm", length))
