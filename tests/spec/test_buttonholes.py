"""Buttonholes as written: what is missing, misnamed or of the wrong kind is told at its place."""

import pytest

from gaugewright.errors import ProblemsFound
from spec.vest import VEST, read

BAND = VEST.replace(
    "    total: in_rows(6 cm, rib)\n", "    total: in_rows(6 cm, rib)\n    buttonholes: {count: 3, size: 18 mm, edge: back.arm_edge, first: 3 cm, last: 2 cm}\n"
)


def problems(text: str) -> list[tuple[str, str]]:
    with pytest.raises(ProblemsFound) as caught:
        read(text)
    return [(p.name, p.origin.line_text[p.origin.location.column - 1 :].strip()[:12] if p.origin else "") for p in caught.value.problems]


def test_buttonholes_are_read() -> None:
    holes = read(BAND).spec.pieces["cuff"].buttonholes
    assert holes is not None and (holes.count, holes.size.mm, holes.edge, holes.first, holes.last) == (3, 18.0, "back.arm_edge", "3 cm", "2 cm")


@pytest.mark.parametrize(
    ("old", "new", "name"),
    [
        ("count: 3, ", "", "missing-key"),
        ("count: 3", "count: 0", "not-positive"),
        ("count: 3", "count: 2.5", "wrong-kind"),
        ("size: 18 mm", "size: 18", "number-without-unit"),
        ("size: 18 mm", "size: body.bust / 50", "wrong-unit"),
        ("edge: back.arm_edge", "edge: back.arm_egde", "unknown-edge"),
        ("edge: back.arm_edge", "edge: bakc.arm_edge", "unknown-piece"),
        ("first: 3 cm", "first: body.bsut / 20", "unknown-name"),
        ("last: 2 cm", "lest: 2 cm", "unknown-key"),
    ],
)
def test_what_is_wrong_is_told(old: str, new: str, name: str) -> None:
    assert BAND != VEST and old in BAND
    found = problems(BAND.replace(old, new))
    assert name in [each for each, _ in found], found
