"""Any stripes and blocks: rows and stitches add up, lines run straight, and yarn by colour is a recount of the runs."""

from hypothesis import given, settings
from hypothesis import strategies as st
from tiny_specs import designed

from gaugewright.design.model import Design
from gaugewright.errors import ProblemsFound
from gaugewright.grading.grade import Grading, grade
from gaugewright.grading.strands import segments, strands_of
from gaugewright.sizing.bodies import bodies, environments
from gaugewright.trade.tails import tail
from gaugewright.yarn.amounts import amounts
from gaugewright.yarn.counted import CHAIN_SHARE, stitches_worked
from gaugewright.yarn.blocks import block_amounts

HEAD = """\
gaugewright: 1
pattern: {title: Tiny, workshop: Ferry Lane Workshop}
sizes: {own: {S: {bust: 70 cm}, L: {bust: 131 cm}}}
yarns:
  oat: {colour: "#d9c9a8", ball: {mass: 100 g, length: 120 m}}
  kelp: {colour: "#3f5d4e", like: oat}
  slate: {colour: "#5b6b7a", like: oat}
fabrics:
  plain: {stitch: hdc, swatch: {stitches: 13, rows: 11, width: 10 cm, height: 10 cm, mass: 9 g}}
  joined: {like: plain, worked: joined rounds}
  turned: {like: plain, worked: turned rounds}
"""
YARNS = ("oat", "kelp", "slate")
Orders = st.lists(st.sampled_from(YARNS), min_size=2, max_size=4).filter(lambda order: all(a != b for a, b in zip(order, (*order[1:], order[0]), strict=True)))


def graded(text: str) -> tuple[Design, Grading] | None:
    """The design and its rows, or nothing where a problem is told instead."""
    design = designed(text)
    try:
        return design, grade(design, environments(design, bodies(design)))
    except ProblemsFound as found:
        assert all(problem.origin is not None for problem in found.problems)
        return None


@settings(max_examples=60, deadline=None)
@given(Orders, st.data())
def test_rows_of_stripes_add_up_and_every_yarn_is_a_recount(order: list[str], data: st.DataObject) -> None:
    rows = data.draw(st.lists(st.integers(1, 6), min_size=len(order), max_size=len(order)))
    stripes = ", ".join(f"{{{yarn}: {count}}}" for yarn, count in zip(order, rows, strict=True))
    cloth, start = data.draw(st.sampled_from([("plain", "chain"), ("joined", "ring")]))
    begin, height = data.draw(st.integers(0, 10)), data.draw(st.integers(11, 40))
    carry = data.draw(st.integers(0, 6))
    found = graded(HEAD + f"""\
pieces:
  piece:
    fabric: {cloth}
    start: {{{start}: body.bust / 4}}
    sections: [taper: {{length: {height} cm, target: body.bust / 3}}]
    colours: {{stripes: [{stripes}], begin: {begin} cm, carry: {carry}}}
""")
    assert found is not None
    design, grading = found
    sequence = [yarn for yarn, count in zip(order, rows, strict=True) for _ in range(count)]
    for size, piece in grading.pieces["piece"].items():
        colours = [row.runs[0].colour for row in piece.main.rows]
        shift = grading.plans["piece"][size].stripes.shift  # type: ignore[union-attr]
        assert colours == [sequence[(shift + row) % len(sequence)] for row in range(len(colours))]
        strands = strands_of(piece.strips, carry)
        assert sorted(row for one in strands for row in one.rows) == list(range(1, len(colours) + 1))
        for one in strands:
            rests = [after - before - 1 for before, after in zip(one.rows, one.rows[1:], strict=False)]
            assert all(rest <= carry and (cloth == "joined" or rest % 2 == 0) for rest in rests)
        told = amounts(design, {"piece": piece})
        assert told is not None
        stitch = 9 / (13 * 11)
        for yarn in set(colours):
            worked = sum(stitches_worked(run) for row in piece.main.rows for run in row.runs if run.colour == yarn) * stitch
            chain = piece.main.start.chains * CHAIN_SHARE * stitch if yarn == colours[0] else 0.0  # type: ignore[union-attr]
            tails = 2 * sum(one.colour == yarn for one in strands) * tail("weave in") * 100 / 120_000
            assert abs(told[yarn].total - (worked + chain + tails) * 1.1) < 1e-9


@settings(max_examples=80, deadline=None)
@given(st.lists(st.sampled_from(YARNS), min_size=2, max_size=5).filter(lambda order: all(a != b for a, b in zip(order, order[1:], strict=False))), st.data())
def test_stitches_of_blocks_add_up_in_every_row(order: list[str], data: st.DataObject) -> None:
    widths = data.draw(st.lists(st.sampled_from(["1 cm", "2 cm", "5 cm", "12 %", "20 %"]), min_size=len(order), max_size=len(order)))
    widths[data.draw(st.integers(0, len(order) - 1))] = "rest"
    across = ", ".join(f"{{{yarn}: {width}}}" for yarn, width in zip(order, widths, strict=True))
    cloth, start, shape = data.draw(st.sampled_from([
        ("plain", "chain", "even: {length: 9 cm}"), ("turned", "ring", "even: {length: 9 cm}"),
        ("plain", "chain", "taper: {length: 12 cm, target: body.bust / 4 - 3 cm}"), ("plain", "chain", "taper: {length: 12 cm, target: body.bust / 4 + 6 cm}"),
    ]))
    found = graded(HEAD + f"""\
pieces:
  piece:
    fabric: {cloth}
    start: {{{start}: body.bust / 4}}
    sections: [{shape}]
    colours: {{blocks: [{{to: 2 cm, across: slate}}, {{across: [{across}]}}]}}
""")
    if found is None:
        return
    design, grading = found
    for size, piece in grading.pieces["piece"].items():
        plan = grading.plans["piece"][size]
        blocks = plan.blocks[1]
        inner = {tuple(after - before for before, after in zip(lines, lines[1:], strict=False)) for lines in (
            segments(piece.main.rows[number - 1], number)[1] for number in range(blocks.first, blocks.last + 1)
        )}
        assert inner == {tuple(count for _, count in blocks.blocks[1:-1])}
        for number in range(blocks.first, blocks.last + 1):
            row = piece.main.rows[number - 1]
            colours, lines = segments(row, number)
            assert colours == tuple(order) and 0 < lines[0] and lines[-1] < row.makes
        assert sum(count for _, count in blocks.blocks) == piece.main.rows[blocks.first - 1].makes
        grams = [one.grams for part in block_amounts(design, plan, piece) for one in part]
        worked = sum(stitches_worked(run) for row in piece.main.rows[blocks.first - 1 : blocks.last] for run in row.runs) * 9 / (13 * 11)
        tails = 2 * len(order) * tail("weave in") * 100 / 120_000
        assert abs(sum(one or 0.0 for one in grams) - (worked + tails) * 1.1) < 1e-9
