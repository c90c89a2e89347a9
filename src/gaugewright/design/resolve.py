"""Spec -> Design: defaults and `like:` made explicit, formulas parsed, origins attached."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from gaugewright.design.likeness import resolved
from gaugewright.design.model import (
    About,
    Attachment,
    Buying,
    Conventions,
    Design,
    EdgeName,
    FinishedMeasure,
    Opening,
    Seam,
    Yarn,
)
from gaugewright.design.origins import Origins
from gaugewright.design.resolve_colours import shared_colours
from gaugewright.design.resolve_fabrics import resolve_fabric
from gaugewright.design.resolve_pieces import resolve_piece
from gaugewright.design.resolve_sizes import resolve_sizes
from gaugewright.errors import Problem, ProblemsFound
from gaugewright.spec import LoadedSpec, Spec

SizeLabels = Mapping[str, tuple[str, ...]]


def resolve(loaded: LoadedSpec, size_labels: SizeLabels) -> Design:
    """The design of a spec that reads without a problem."""
    spec, origins = loaded.spec, Origins(loaded.source)
    fabrics = {key: resolve_fabric(key, spec, origins, loaded.patterns) for key in spec.fabrics}
    yarns = tuple(_yarn(key, spec, origins) for key in spec.yarns)
    colours = shared_colours(spec, origins)
    return Design(
        about=_about(spec),
        sizes=resolve_sizes(spec, origins, size_labels),
        conventions=Conventions(**spec.conventions.model_dump()),
        yarns=yarns,
        notions=tuple((name, mass.grams) for name, mass in spec.notions.items()),
        fabrics=tuple(fabrics.values()),
        lengths=tuple((name, origins.formula(text, ("lengths", name))) for name, text in spec.lengths.items()),
        levels=tuple((name, origins.formula(text, ("levels", name))) for name, text in spec.levels.items()),
        pieces=tuple(resolve_piece(key, spec, origins, next(iter(fabrics)), colours) for key in spec.pieces),
        seams=tuple(_seam(index, spec, origins) for index in range(len(spec.seams))),
        attachments=tuple(_attachment(index, spec, origins) for index in range(len(spec.attach))),
        openings=tuple(_opening(index, spec, origins) for index in range(len(spec.openings))),
        finished=tuple(_finished(key, spec, origins) for key in spec.finished),
        buying=Buying(spec.buying.margin / 100, spec.buying.swatches == "in the balls", spec.buying.cost == "printed"),
    )


def _about(spec: Spec) -> About:
    p = spec.pattern
    return About(
        p.title, p.workshop or "", p.level or "", p.version or "", str(p.date or ""), p.language, p.terms, p.units,
        p.about or "", p.licence or "", p.notes, p.hours or "",
    )


def _yarn(key: str, spec: Spec, origins: Origins) -> Yarn:
    get = resolved(spec.yarns, key)
    ball, price = get("ball"), get("price")
    label = spec.yarns[key].label or key.replace("_", " ").capitalize()
    if price is None and spec.buying.cost == "printed":
        message = f"what the balls cost is to be printed, and {key} has no price"
        raise ProblemsFound([Problem("price-missing", message, origins.at(("yarns", key), key=True), "add `price: 7.40 EUR` with the price of a ball, or take out `cost: printed`")])
    return Yarn(
        key, label, get("colour") or "#808080", get("weight"), tuple((get("fibre") or {}).items()),
        ball.mass.grams if ball else None, ball.length.mm if ball else None,
        Decimal(price.amount) if price else None, price.code if price else "", get("structure") or "",
        origins.at(("yarns", key), key=True), get("treatment") or "",
    )




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
