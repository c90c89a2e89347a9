"""Whatever shapes and stitches a spec holds, its hours are counted, and no smaller size with fewer stitches takes longer."""

import pytest

from gaugewright import pipeline
from instructions.specs import SPECS, graded


@pytest.mark.parametrize("name", SPECS)
def test_every_piece_takes_time_and_more_of_it_takes_more(name: str) -> None:
    times = pipeline.hours(graded(name))
    for index in range(len(times.values[0].pieces)):
        pieces = [size.pieces[index] for size in times]
        assert all(0 < piece.time.low < piece.time.mean < piece.time.high for piece in pieces)
        for one, other in ((one, other) for one in pieces for other in pieces):
            if one.stitches <= other.stitches and one.rows <= other.rows and len(graded(name).design.fabrics) == 1:
                assert one.time.mean <= other.time.mean + 1e-6, (name, one.key)
    assert all(size.whole.mean > sum(piece.time.mean for piece in size.pieces) for size in times)
