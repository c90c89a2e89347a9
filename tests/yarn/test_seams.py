"""What is sewn, counted by hand: as often as it is sewn, whoever asks."""

from pathlib import Path

import pytest

from gaugewright import pipeline
from gaugewright.hours.sizes import size_time
from gaugewright.yarn.counted import counted
from gaugewright.yarn.ends import ends_of_pieces
from gaugewright.yarn.seams import sewn

SAMPLES = Path(__file__).parents[2] / "samples"


def of(name: str) -> tuple[pipeline.Graded, dict[str, object]]:
    graded = pipeline.grade(pipeline.load(SAMPLES / name / "spec.yaml"))
    return graded, {key: sized.values[0] for key, sized in graded.grading.pieces.items()}


def test_two_pockets_on_two_fronts_are_sewn_on_once_each() -> None:
    graded, pieces = of("turnstone-vest")
    pocket = pieces["pocket"]
    own = [one for one in sewn(graded.design, pieces) if one.piece == "pocket"]  # type: ignore[arg-type]
    around = 2 * pocket.edges["pocket_side"].length + pocket.edges["pocket_base"].length if "pocket_side" in pocket.edges else sum(pocket.edges[name].length for name in ("starting", "far", "bottom"))  # type: ignore[attr-defined]
    assert [one.length for one in own] == pytest.approx([around, around])


@pytest.mark.parametrize(("name", "seam_ends"), [("dunlin-yoke", 0), ("quayside-throw", 2 * (9 * 5 + 8)), ("lamplighter-hat", 0)])
def test_hours_weave_in_the_ends_that_the_page_counts(name: str, seam_ends: int) -> None:
    """Dunlin's body goes on from its yoke uncut; the throw in its first size joins 9 rows of 6."""
    graded, pieces = of(name)
    ends = sum(number for colours in ends_of_pieces(graded.design, pieces).values() for number in colours.values())  # type: ignore[arg-type]
    chore = next(one for one in size_time(graded.design, pieces).finishing if one.kind == "ends")  # type: ignore[arg-type]
    assert chore.amount == ends + seam_ends


def test_yarn_and_hours_sew_the_same_lengths() -> None:
    for name in ("saltmarsh-jacket", "turnstone-vest", "quayside-throw"):
        graded, pieces = of(name)
        strands = sum(share.amount for share in counted(graded.design, pieces) if share.term == "seams")  # type: ignore[arg-type]
        chore = next(one for one in size_time(graded.design, pieces).finishing if one.kind == "seams")  # type: ignore[arg-type]
        assert strands / chore.amount == pytest.approx(strands / sum(one.length for one in sewn(graded.design, pieces)))  # type: ignore[arg-type]
        assert 3 <= strands / chore.amount <= 4, "three to four times the seam"
