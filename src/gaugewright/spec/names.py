"""What a spec names: read from the plain data, so that it is known even where other things are wrong."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from gaugewright.spec.fields import as_written

# Edges and measures that every piece has, whether or not it names them.
PLAIN_EDGES = ("bottom", "top", "starting", "far")
PLAIN_MEASURES = ("width", "top_width", "length", "widest", "narrowest", "longest")
GRID_MEASURES = ("joined_width", "joined_length")
"""Measures of motifs once they are joined, and of these with the border round them; they stand among the edges that only some pieces have."""
RIM = "rim"
"""The edge all round joined motifs."""
RESERVED = ("body", "ease", "size", "rest", "total", "min", "max", "edge", "finished", "in_rows")


@dataclass(frozen=True, slots=True)
class Names:
    """All names by kind; `edges` by piece, those of the piece it is like included.

    `made` are the sizes made, of all `sizes` known; the edges of `doubtful` pieces can't be told.
    """

    yarns: tuple[str, ...]
    fabrics: tuple[str, ...]
    bands: tuple[str, ...]
    stitch_patterns: tuple[str, ...]
    stripes: tuple[str, ...]
    lengths: tuple[str, ...]
    levels: tuple[str, ...]
    edges: Mapping[str, tuple[str, ...]]
    measures: tuple[str, ...]
    eases: tuple[str, ...]
    dimensions: tuple[str, ...]
    sizes: tuple[str, ...]
    made: tuple[str, ...]
    doubtful: frozenset[str]

    @property
    def pieces(self) -> tuple[str, ...]:
        """The pieces."""
        return tuple(self.edges)


def names_of(
    data: Mapping[str, Any],
    size_labels: Mapping[str, tuple[str, ...]],
    measures: frozenset[str],
    faulty: frozenset[str],
    shelved: tuple[str, ...] = (),
) -> Names:
    """Gathers a file's names; anything of a wrong shape counts as nothing."""
    sizes = table(data, "sizes")
    own, dimensions = table(sizes, "own"), table(sizes, "dimensions")
    of_table = size_labels.get(str(sizes.get("table")), ())
    labels = tuple(dict.fromkeys((*of_table, *own, *dimensions)))
    made = tuple(str(as_written(label)) for label in items(sizes.get("make"))) or tuple(of_table or own or dimensions)
    more = {measure for label in own for measure in table(own, label)}
    pieces = table(data, "pieces")
    return Names(
        yarns=tuple(table(data, "yarns")),
        fabrics=tuple(table(data, "fabrics")),
        bands=tuple(table(data, "bands")),
        stitch_patterns=tuple(dict.fromkeys((*table(data, "stitch_patterns"), *shelved))),
        stripes=tuple(table(data, "stripes")),
        lengths=tuple(table(data, "lengths")),
        levels=tuple(table(data, "levels")),
        edges={name: tuple(dict.fromkeys(_edges(inherited(pieces, name), data))) for name in pieces},
        measures=tuple(sorted(measures | more)),
        eases=tuple(table(sizes, "ease")),
        dimensions=tuple(dict.fromkeys(name for label in dimensions for name in table(dimensions, label))),
        sizes=labels,
        made=made,
        doubtful=frozenset(name for name in pieces if _is_doubtful(pieces, name, faulty)),
    )


def table(data: Any, key: str) -> Mapping[str, Any]:
    """The mapping under a key, or an empty one."""
    found = data.get(key) if isinstance(data, dict) else None
    return found if isinstance(found, dict) else {}


def items(value: Any) -> list[Any]:
    """A list as it is; one text as a list of one; else nothing."""
    return value if isinstance(value, list) else [value] if isinstance(value, str) else []


def like_chain(group: Mapping[str, Any], name: str) -> list[str]:
    """A name, what it is like, what that is like, and so on; ends before a name comes again."""
    chain: list[str] = []
    link: Any = name
    while isinstance(link, str) and link in group and link not in chain:
        chain.append(link)
        link = group[link].get("like") if isinstance(group[link], dict) else None
    return chain


def inherited(group: Mapping[str, Any], name: str) -> dict[str, Any]:
    """An entry's keys with those it takes from what it is like."""
    keys: dict[str, Any] = {}
    for link in reversed(like_chain(group, name)):
        keys.update(group[link] if isinstance(group[link], dict) else {})
    return keys


def _is_doubtful(pieces: Mapping[str, Any], name: str, faulty: frozenset[str]) -> bool:
    """A piece is in doubt if it, or what it is like, is faulty, or its likeness leads nowhere."""
    chain = like_chain(pieces, name)
    last = pieces[chain[-1]]
    return bool(faulty & set(chain)) or not isinstance(last, dict) or "like" in last


def _edges(piece: Mapping[str, Any], data: Mapping[str, Any]) -> Iterator[str]:
    edges = table(piece, "edges")
    for side in ("both", "starting", "far"):
        yield from (str(name) for name in items(edges.get(side))[::2])
    for end in ("bottom", "top"):
        if isinstance(edges.get(end), str):
            yield edges[end]
    kinds = {kind for section in items(piece.get("sections")) if isinstance(section, dict) for kind in section}
    if "raglan_edge" in kinds:
        yield "neck"
    elif kinds & {"shoulders", "neck", "neck_edge"}:
        yield from ("shoulder", "neck")
    if "cap" in kinds:
        yield "cap"
    slits = [table(section, "opening") for section in items(piece.get("sections")) if isinstance(section, dict)]
    yield from (str(slit["edge"]) for slit in slits if "edge" in slit)
    opened = [table(section, "open") for section in items(piece.get("sections")) if isinstance(section, dict) and "open" in section]
    yield from (str(one.get(key, name)) for one in opened for key, name in (("left", "instep"), ("rest", "sole")))
    if kinds & {"raglan", "round_yoke"}:
        yield from ("body", "sleeve")
    if "centre" in table(piece, "start"):
        yield from (name for end, name in (("bottom", "centre"), ("top", "edge")) if end not in edges)
    if "grid" in piece:
        yield from (RIM, *GRID_MEASURES)
    if any(str(edge).endswith(f".{RIM}") for edge in items(table(piece, "start").get("pick_up"))):
        yield from GRID_MEASURES
        yield from (name for end, name in (("bottom", "inner_edge"), ("top", "outer_edge")) if end not in edges)
    if "middle" in table(piece, "start"):
        yield from (name for end, name in (("bottom", "long_edge"), ("top", "lower_edge")) if end not in edges)
    yield from PLAIN_EDGES
