"""Spec -> Design: defaults and `like:` made explicit, formulas parsed, origins attached."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from gaugewright.design.likeness import resolved, stated_in
from gaugewright.design.model import (
    About,
    Attachment,
    Bands,
    Conventions,
    Design,
    EdgeName,
    Fabric,
    FinishedMeasure,
    Opening,
    Seam,
    Yarn,
)
from gaugewright.design.origins import Origins
from gaugewright.design.resolve_pieces import resolve_piece
from gaugewright.design.resolve_sizes import resolve_sizes
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.gauge.counts import CountRule
from gaugewright.gauge.model import Gauge
from gaugewright.spec import LoadedSpec, Spec
from gaugewright.trade.stitches import stitch

SizeLabels = Mapping[str, tuple[str, ...]]


def resolve(loaded: LoadedSpec, size_labels: SizeLabels) -> Design:
    """The design of a spec that reads without a problem."""
    spec, origins = loaded.spec, Origins(loaded.source)
    fabrics = {key: _fabric(key, spec, origins) for key in spec.fabrics}
    yarns = tuple(_yarn(key, spec) for key in spec.yarns)
    bands = {key: _bands(key, value, ("bands", key), origins) for key, value in spec.bands.items()}
    return Design(
        about=_about(spec),
        sizes=resolve_sizes(spec, origins, size_labels),
        conventions=Conventions(**spec.conventions.model_dump()),
        yarns=yarns,
        fabrics=tuple(fabrics.values()),
        lengths=tuple((name, origins.formula(text, ("lengths", name))) for name, text in spec.lengths.items()),
        levels=tuple((name, origins.formula(text, ("levels", name))) for name, text in spec.levels.items()),
        pieces=tuple(
            resolve_piece(key, spec, origins, next(iter(fabrics)), yarns[0].key, bands, _bands) for key in spec.pieces
        ),
        seams=tuple(_seam(index, spec, origins) for index in range(len(spec.seams))),
        attachments=tuple(_attachment(index, spec, origins) for index in range(len(spec.attach))),
        openings=tuple(_opening(index, spec, origins) for index in range(len(spec.openings))),
        finished=tuple(_finished(key, spec, origins) for key in spec.finished),
    )


def _about(spec: Spec) -> About:
    p = spec.pattern
    return About(
        p.title, p.workshop or "", p.level or "", p.version or "", str(p.date or ""), p.language, p.terms, p.units,
        p.about or "", p.licence or "", p.notes,
    )


def _yarn(key: str, spec: Spec) -> Yarn:
    get = resolved(spec.yarns, key)
    ball, price = get("ball"), get("price")
    label = spec.yarns[key].label or key.replace("_", " ").capitalize()
    return Yarn(
        key, label, get("colour") or "#808080", get("weight"), tuple((get("fibre") or {}).items()),
        ball.mass.grams if ball else None, ball.length.mm if ball else None,
        Decimal(price.amount) if price else None, price.code if price else "", get("structure") or "",
    )


def _fabric(key: str, spec: Spec, origins: Origins) -> Fabric:
    get = resolved(spec.fabrics, key, together=(("swatch", "gauge"),), goes_with={"turning_chain": "stitch"})
    name, swatch, written = get("stitch"), get("swatch"), get("gauge")
    facts = stitch(name)
    chain, tool, multiple = get("turning_chain"), get("tool"), get("multiple")
    if chain and chain.counts == "as a stitch" and not chain.chains:
        place = origins.at(("fabrics", stated_in(spec.fabrics, key, "turning_chain"), "turning_chain"))
        message = "a turning chain of no chains can't count as a stitch"
        hint = f"give it {facts.chains or 1} chains, or don't count it"
        raise ProblemsFound([Problem("chainless-stitch", message, place, hint)])
    measured = swatch or written
    gauge = Gauge(measured.stitches, _mm(measured.width), measured.rows, _mm(measured.height))
    rule = CountRule(
        multiple.of if multiple else 1, multiple.plus if multiple else 0, get("parity") or "any", get("minimum") or 1
    )
    return Fabric(
        key, name, get("loop") or "both", get("worked") or "rows",
        chain.chains if chain else facts.chains,
        chain.counts == "as a stitch" if chain else facts.counts_unless_set,
        None if tool in (None, "hands") else tool.mm, tool == "hands", gauge,
        swatch.mass.grams if swatch and swatch.mass else None,
        swatch.thickness.mm if swatch and swatch.thickness else 0.0,
        rule, origins.at(("fabrics", key), key=True),
    )


def _mm(length: Any) -> float:
    return float(getattr(length, "mm", length))


def _bands(key: str, value: Any, path: tuple[str | int, ...], origins: Origins) -> Bands:
    top = None if value.to == "total" else origins.formula(value.to, (*path, "to"))
    heights = tuple(
        None if text == "rest" else origins.formula(text, (*path, "heights", index)) for index, text in enumerate(value.heights)
    )
    return Bands(key, top, heights, origins.at((*path, "heights")))


def _edge(text: str, path: tuple[str | int, ...], origins: Origins) -> EdgeName:
    piece, _, edge = text.partition(".")
    return EdgeName(piece, edge, origins.at(path))


def _edges(texts: tuple[str, ...], path: tuple[str | int, ...], origins: Origins) -> tuple[EdgeName, ...]:
    return tuple(_edge(text, (*path, index), origins) for index, text in enumerate(texts))


def _seam(index: int, spec: Spec, origins: Origins) -> Seam:
    seam, path = spec.seams[index], ("seams", index)
    return Seam(
        _edge(seam.join, (*path, "join"), origins), _edges(seam.to, (*path, "to"), origins),
        seam.take_up, seam.method or "mattress", origins.at((*path, "join")),
    )


def _attachment(index: int, spec: Spec, origins: Origins) -> Attachment:
    one, path = spec.attach[index], ("attach", index)
    return Attachment(
        one.piece, one.to, origins.formula(one.up, (*path, "up")), origins.formula(one.inward, (*path, "in")),
        one.from_edge, origins.at((*path, "piece")),
    )


def _opening(index: int, spec: Spec, origins: Origins) -> Opening:
    one, path = spec.openings[index], ("openings", index)
    around = _edges(one.around, (*path, "around"), origins)
    return Opening(one.name, around, one.passes, (one.stretch or 0.0) / 100, origins.at((*path, "name")))


def _finished(key: str, spec: Spec, origins: Origins) -> FinishedMeasure:
    one, path = spec.finished[key], ("finished", key)
    return FinishedMeasure(
        key, one.label or key.replace("_", " ").capitalize(), origins.formula(one.measure, (*path, "measure")),
        origins.formula(one.wanted, (*path, "wanted")) if one.wanted else None, one.of or "", origins.at(path, key=True),
    )
