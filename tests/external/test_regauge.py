"""Another gauge for a whole pattern, and a pattern's numbers worked at another, against published worked examples."""

import pytest
from external.sources import source

from gaugewright import pipeline
from gaugewright.design.regauge import regauged
from gaugewright.gauge.model import Gauge
from gaugewright.sizing.bodies import bodies, environments
from gaugewright.grading.grade import grade
from tiny_specs import designed

IN = 25.4


def spec(gauge: str, start: str, *more: str, rule: str = "") -> str:
    """One panel, in one size, at a gauge of so much to the inch."""
    return "\n".join((
        "gaugewright: 1", "pattern: {title: Panel, workshop: Ferry Lane Workshop}", 'yarns: {oat: {colour: "#d9c9a8"}}',
        f'fabrics: {{plain: {{stitch: hdc, gauge: "{gauge} / 1 in"{rule}}}}}',
        "pieces:", f"  panel: {{start: {{chain: {start}}}, sections: [even: {{length: 4 in}}], edges: {{both: [side]}}}}", *more,
    )) + "\n"  # fmt: skip


def graded(text: str, gauge: Gauge | None = None) -> pipeline.Graded:
    design = designed(text)
    design = regauged(design, gauge) if gauge is not None else design
    found = bodies(design)
    return pipeline.Graded(design, found, grade(design, environments(design, found)))


def stitches(one: pipeline.Graded) -> int:
    return one.grading.pieces["panel"].values[0].main.start.stitches


MINE = Gauge(13, 2 * IN, 8, IN)


@source("published", "Ann Budd, 'How to adapt a pattern written for one gauge to another gauge', 2010")
@pytest.mark.parametrize(("parity", "new"), [("even", 128), ("odd", 127)])
def test_parity_is_kept_at_another_gauge(parity: str, new: int) -> None:
    """98 sts at 5 to the inch are 19.6 in; at 6.5 they are 127.4, by parity 128 or 127."""
    text = spec("5 sts, 8 rows", "19.6 in", rule=f", parity: {parity}")
    assert stitches(graded(text, MINE)) == new


@source("published", "C. W. Carvalho, Fiber Images, 1997")
def test_rows_for_the_same_length() -> None:
    """24 knitted rows at 6 to the inch are 4 in: 12 at 3."""
    text = spec("5 sts, 6 rows", "10 in")
    crocheted = graded(text, Gauge(5, IN, 3, IN))
    assert [one.grading.plans["panel"].values[0].rows for one in (graded(text), crocheted)] == [24, 12]


@source("published", "Knit Nottingham (shop blog), 'Moving on with gauge', 2011")
@pytest.mark.parametrize(("old", "new"), [(128, 151), (112, 132)])
def test_seam_stitches_are_no_part_of_the_width(old: int, new: int) -> None:
    """A stitch at each side goes into the seams at either gauge: 126 or 110 sts at 5.5 to the inch are worn, not 128 or 112."""
    seamed = ("  other: {like: panel}", "seams: [{join: panel.side, to: other.side, take_up: whole stitch}]")
    text = spec("5.5 sts, 8 rows", f"{(old - 2) / 5.5:.4f} in", *seamed)
    assert (stitches(graded(text)), stitches(graded(text, MINE))) == (old, new)


@source("published", "Knitting With Karma, 'Knitting math 2: short repeats', 2011: 7 extra stitches are printed, no multiple of 4")
def test_whole_repeats_at_another_gauge() -> None:
    """9.4 in at 6 to the inch are 56.4 sts: whole repeats of 4 are 56, where 48 + 7 are printed."""
    found = stitches(graded(spec("4 sts, 8 rows", "9.4 in", rule=", multiple: {of: 4}"), Gauge(6, IN, 8, IN)))
    assert found == 56 and found % 4 == 0 and found != 48 + 7


@source("published", "Becki Knits (blog), 2008")
def test_a_size_worked_at_my_gauge_is_another_size() -> None:
    """43 in at 30 sts to 4 in, worked as it is at 36 to 4 in, is 36 in to the nearest."""
    own = graded(spec("7.5 sts, 8 rows", "43 in"))
    worked = pipeline.worked_at(own, Gauge(36, 4 * IN, 8, IN))
    assert worked.grading.pieces["panel"].values[0].worked["width"] / IN == pytest.approx(36, abs=0.2)
