"""Checks that every name in a spec names something that is there."""

import re
from collections.abc import Iterator, Mapping
from typing import Any

from gaugewright.errors import Problem
from gaugewright.spec.messages import did_you_mean, listed
from gaugewright.spec.names import RESERVED, Names, inherited, items, like_chain, table
from gaugewright.spec.walk import Reference
from gaugewright.yaml_reader import Source


def check_references(references: tuple[Reference, ...], names: Names, source: Source) -> Iterator[Problem]:
    """Names of yarns, fabrics, pieces, bands, stripes, measures and edges."""
    groups = {
        "yarn": names.yarns,
        "fabric": names.fabrics,
        "piece": names.pieces,
        "bands": names.bands,
        "stitch pattern": names.stitch_patterns,
        "stripes": names.stripes,
        "measure": names.measures,
    }
    for reference in references:
        if not reference.text:
            continue  # a name that is empty is told as that
        if reference.kind in groups:
            known = groups[reference.kind]
            if not known and reference.kind in ("yarn", "fabric", "piece"):
                continue  # the whole group is missing, which is told once
            if reference.text not in known:
                yield _unknown(_UNKNOWN[reference.kind], reference, known, source)
        elif reference.kind == "edge":
            yield from _edge(reference, names, source)
        elif reference.kind == "edge of to":
            piece = str(source.value_at(reference.path[:-1]).get("to"))
            if piece in names.edges:
                yield from _edge_of(piece, reference, names, source)
        elif reference.kind == "own edge" and reference.text not in ("both", "middle", *OF_ROUNDS):
            yield from _edge_of(str(reference.path[1]), reference, names, source)
        elif reference.kind == "edge or level":
            yield from _edge_or_level(reference, names, source)


OF_ROUNDS = ("pairs", "sides", "all round")
"""Where a taper in rounds may be shaped; in rows these are no edges, as grading tells."""

_UNKNOWN = {
    "yarn": "unknown-yarn",
    "fabric": "unknown-fabric",
    "piece": "unknown-piece",
    "bands": "unknown-bands",
    "stitch pattern": "unknown-stitch-pattern",
    "stripes": "unknown-stripes",
    "measure": "unknown-measure",
}


def _unknown(name: str, reference: Reference, known: tuple[str, ...], source: Source) -> Problem:
    kind = reference.kind
    many = kind in ("bands", "stripes")
    message = f"there {'are' if many else 'is'} no {kind} {reference.text}; {'there are ' + listed(known, 'and') if known else 'none is named'}"
    hint = did_you_mean(reference.text, known, f"use one of those, or name {reference.text} {f'under {kind}' if many else f'as a {kind}'}")
    return Problem(name, message, source.origin_at(reference.path, key=reference.is_key), hint)


def _edge(reference: Reference, names: Names, source: Source) -> Iterator[Problem]:
    piece, dot, edge = reference.text.partition(".")
    origin = source.origin_at(reference.path)
    if not dot or not re.fullmatch(r"[A-Za-z]\w*", edge, re.ASCII):
        choices = [f"{p}.{e}" for p, edges in names.edges.items() for e in edges if reference.text in (p, e)]
        hint = f"write {choices[0]}" if choices else "write a piece and its edge, such as back.side"
        yield Problem("edge-text", f"{reference.text!r} is not an edge: piece.edge is expected", origin, hint)
    elif piece not in names.edges and names.pieces:
        known = names.pieces
        near = did_you_mean(piece, known, "")
        hint = f"{near[:-1]}.{edge}?" if near else f"use one of the pieces {listed(known)}, or take this out"
        yield Problem(
            "unknown-piece",
            f"there is no piece {piece}; there are {listed(known, 'and')}",
            origin,
            hint,
        )
    elif piece in names.edges and edge not in names.edges[piece] and piece not in names.doubtful:
        yield unknown_edge(piece, edge, names, source, reference, len(piece) + 1)


def _edge_of(piece: str, reference: Reference, names: Names, source: Source) -> Iterator[Problem]:
    if reference.text not in names.edges.get(piece, ()) and piece not in names.doubtful:
        yield unknown_edge(piece, reference.text, names, source, reference, 0)


def unknown_edge(piece: str, edge: str, names: Names, source: Source, reference: Reference, column: int) -> Problem:
    """The problem of an edge that a piece doesn't have."""
    known = names.edges.get(piece, ())
    message = f"{piece} has no edge {edge}; it has {listed(known, 'and')}"
    hint = did_you_mean(edge, known, f"use one of those, or name {edge} under the edges of {piece}")
    return Problem("unknown-edge", message, source.origin_in(reference.path, column), hint)


def _edge_or_level(reference: Reference, names: Names, source: Source) -> Iterator[Problem]:
    """A list of edges goes edge, level, edge: the odd ones out are levels."""
    index = reference.path[-1]
    if not isinstance(index, int):
        return
    origin, text = source.origin_at(reference.path), reference.text
    if index % 2 and text not in names.levels:
        hint = did_you_mean(text, names.levels, f"name {text} under levels, or use a level that is there")
        yield Problem(
            "unknown-level",
            f"there is no level {text}; there are {listed(names.levels, 'and')}",
            origin,
            hint,
        )
    elif not index % 2 and text in names.levels and text not in names.lengths:
        yield Problem(
            "name-clash", f"{text} is a level, but the name of an edge is expected here", origin, f"write {text}_edge"
        )


def check_clashes(names: Names, source: Source) -> Iterator[Problem]:
    """Lengths and levels are used bare, so they share their names with nothing."""
    for name in names.levels:
        if name in names.lengths:
            origin = source.origin_at(("levels", name), key=True)
            yield Problem(
                "name-clash", f"{name} is both a length and a level", origin, f"call one of them {name}_height"
            )
    for group, members in (("lengths", names.lengths), ("levels", names.levels), ("pieces", names.pieces)):
        for name in members:
            if name in RESERVED:
                origin = source.origin_at((group, name), key=True)
                yield Problem(
                    "name-clash",
                    f"{name} has a meaning of its own in formulas",
                    origin,
                    f"call it {name}_{group.rstrip('s')}",
                )


def check_likeness(source: Source) -> Iterator[Problem]:
    """What is like another must end at one that stands by itself."""
    for group in ("yarns", "fabrics", "pieces"):
        entries = table(source.data, group)
        told: set[str] = set()
        for name in entries:
            chain = like_chain(entries, name)
            last = entries[chain[-1]] if chain else {}
            back = last.get("like") if isinstance(last, dict) else None
            if back in chain and back not in told:
                cycle = chain[chain.index(back) :]
                told.update(cycle)
                message = f"{' is like '.join((*cycle, back))}: one of them must stand by itself"
                yield Problem(
                    "like-cycle",
                    message,
                    source.origin_at((group, back, "like")),
                    f"take out `like` from {back} and state what it has",
                )


def check_pieces(names: Names, source: Source) -> Iterator[Problem]:
    """What may be left out only where there is one choice: a piece's fabric and colours."""
    pieces = table(source.data, "pieces")
    for name in pieces:
        piece = inherited(pieces, name)
        if name in names.doubtful:
            continue
        for key, choices in (("fabric", names.fabrics), ("colours", names.yarns)):
            if key not in piece and len(choices) > 1:
                origin = source.origin_at(("pieces", name), key=True)
                yield Problem(
                    "missing-key",
                    f"{name} has no `{key}`, and there are {listed(choices, 'and')}",
                    origin,
                    f"add `{key}: {choices[0]}` to {name}",
                )
        yield from _bands_match(name, pieces, source)
        yield from _rest_has_total(name, piece, source)


def _rest_has_total(name: str, piece: Mapping[str, Any], source: Source) -> Iterator[Problem]:
    """`rest` takes what a total leaves, be both taken over from another piece; a band joined to edges is as long as they are."""
    if "join" in table(piece, "start"):
        return
    for index, section in enumerate(items(piece.get("sections"))):
        if table(section, "even").get("length") == "rest" and "total" not in piece:
            own = ("pieces", name, "sections", index, "even", "length")
            message = "`rest` takes what the total leaves, but this piece has no `total`"
            yield Problem("rest-without-total", message, source.origin_at(own), f"add `total: 45 cm` to {name}")


def _bands_match(name: str, pieces: Mapping[str, Any], source: Source) -> Iterator[Problem]:
    """One yarn for each band."""
    colours = table(pieces[name], "colours") if isinstance(pieces[name], dict) else {}
    bands, order = colours.get("bands"), colours.get("order")
    heights = (bands if isinstance(bands, dict) else table(table(source.data, "bands"), str(bands))).get("heights")
    if isinstance(heights, list) and isinstance(order, list) and heights and len(heights) != len(order):
        message = f"{len(order)} yarns are given for {len(heights)} bands"
        hint = f"give {len(heights)} yarns, one for each band; a yarn may come again"
        yield Problem("bands-and-order", message, source.origin_at(("pieces", name, "colours", "order")), hint)
