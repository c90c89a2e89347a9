"""Where a band is begun: only one that runs from a front to the other begins at a hem or at a front's neck."""

import pytest

from instructions.specs import pieces_told


@pytest.mark.parametrize(
    ("name", "piece", "begins"),
    [
        ("bordered-panel", "border", "begin at the end of the first or of the last of these edges."),
        ("half-front-wedge", "band", "begin at one end of the edge."),
        ("front-band-with-corners", "band", "begin at the hem of a front:"),
    ],
)
def test_a_band_begins_where_its_edges_do(name: str, piece: str, begins: str) -> None:
    first = next(one.text for one in pieces_told(name)[piece] if "pick-up row" in one.label)
    assert begins in first and first.count("begin at") == 1
