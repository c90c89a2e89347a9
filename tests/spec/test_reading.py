"""Reading a spec: what is wrong is told at its place, and doing what the hint says puts it right."""

import re
from pathlib import Path
from typing import NamedTuple

import pytest
from spec.vest import MEASURES, VEST, read

from gaugewright.errors import Problem, ProblemsFound
from gaugewright.problem_names import PROBLEM_NAMES
from gaugewright.spec import load_spec

SAMPLE = Path(__file__).parents[2] / "samples" / "saltmarsh-jacket" / "spec.yaml"


def problems(text: str) -> tuple[Problem, ...]:
    with pytest.raises(ProblemsFound) as caught:
        read(text)
    return caught.value.problems


class Case(NamedTuple):
    """`good` becomes `bad` (« stands before the place); `fixed` is `bad` after doing what the hint says."""

    good: str
    bad: str
    name: str
    hint: str
    fixed: str


CASES = [
    Case("  level: easy", "  «levle: easy", "unknown-key", "did you mean level?", "  level: easy"),
    Case("    tool: 8 mm", "    «hook: 8 mm", "unknown-key", "write tool instead", "    tool: 8 mm"),
    Case("pattern:\n  title: Slipway Vest\n", "«pattern:\n", "missing-key", "add `title: Saltmarsh Jacket`", "pattern:\n  title: Saltmarsh Jacket\n"),
    Case("rows: 14, width", "width", "missing-key", "add `rows: 14`", "rows: 14, width"),
    Case("level: easy", "level: «esy", "unknown-word", "did you mean easy?", "level: easy"),
    Case("level: easy", "level: «3", "unknown-word", "write basic, easy, intermediate or complex", "level: basic"),
    Case('version: "1.0"', "version: «true", "wrong-kind", 'write it in quotes: "true"', 'version: "true"'),
    Case("date: 2026-03-02", "date: «2026-02-30", "date-text", "write year-month-day, such as 2026-11-25", "date: 2026-11-25"),
    Case("thickness: 9 mm", "thickness: «9 g", "wrong-unit", "write the unit as cm or in", "thickness: 9 cm"),
    Case("thickness: 9 mm", "thickness: 9 «mmm", "wrong-unit", "did you mean mm?", "thickness: 9 mm"),
    Case("mass: 41 g", "mass: «41", "number-without-unit", "write 41 g or 41 oz", "mass: 41 g"),
    Case("width: 20.5 cm", "width: «20,5 cm", "decimal-comma", "write 20.5 cm", "width: 20.5 cm"),
    Case('"8 sts, 6.5 rows / 10 cm"', '"8 sts, 6.5 rows / 10«,5 cm"', "gauge-text", "write 10.5 cm", '"8 sts, 6.5 rows / 10.5 cm"'),
    Case("stitches: 18", "stitches: «0", "not-positive", "write how many there are, at least 1", "stitches: 1"),
    Case("stitches: 18", "stitches: «-18", "not-positive", "write how many there are, at least 1", "stitches: 18"),
    Case("stitches: 18", "stitches: «18.5", "wrong-kind", "write a whole number such as 2, with no unit", "stitches: 2"),
    Case("width: 20.5 cm", "width: «0 cm", "not-positive", "write the length you measured, such as 10 cm", "width: 10 cm"),
    Case('"8 sts, 6.5', '"«0 sts, 6.5', "not-positive", "write the stitches you count, such as 8", '"8 sts, 6.5'),
    Case('"8 sts, 6.5', '"8 sts, «-6.5', "not-positive", "write the rows you count, such as 8", '"8 sts, 8'),
    Case('"8 sts, 6.5 rows / 10 cm"', '"«8 sts / 10 cm"', "gauge-without-rows", "write 8 sts, 7 rows / 10 cm", '"8 sts, 7 rows / 10 cm"'),
    Case('"8 sts, 6.5 rows / 10 cm"', '"8 sts, 6.5 rows over 10 cm«"', "gauge-text", "write 8 sts, 6.5 rows / 10 cm", '"8 sts, 6.5 rows / 10 cm"'),
    Case('"8 sts, 6.5 rows / 10 cm"', "«8 sts, 6.5 rows / 10 cm", "gauge-text", 'write gauge: "8 sts, 6.5 rows / 10 cm"', '"8 sts, 6.5 rows / 10 cm"'),
    Case(', gauge: "8 sts, 6.5 rows / 10 cm"}', "}", "missing-key", "add `gauge: 8 sts, 7 rows / 10 cm`", ', gauge: "8 sts, 7 rows / 10 cm"}'),
    Case('colour: "#d9c9a8"', "colour: «oatmeal", "colour-text", 'write it as "#d9c9a8", in quotes', 'colour: "#d9c9a8"'),
    Case("nylon: 30", "nylon: 20", "fibre-total", "change the shares so that they come to 100", "nylon: 30"),
    Case("weight: 5", "weight: «9", "out-of-range", "write a number up to 7", "weight: 7"),
    Case("6.50 EUR", "«€6,50", "decimal-comma", "write 6.50 EUR", "6.50 EUR"),
    Case("6.50 EUR", "«6,50 EUR", "decimal-comma", "write 6.50 EUR", "6.50 EUR"),
    Case("6.50 EUR", "«6.50 EURO", "price-text", "write 6.50 EUR", "6.50 EUR"),
    Case("[S, M, L]", "[S, M, «S, L]", "duplicate-size", "keep one S", "[S, M, L]"),
    Case("[S, M, L]", "[S, M, «4X]", "unknown-size", "use one of those", "[S, M, L]"),
    Case("[S, M, L]", "[S, M, «l]", "unknown-size", "use one of those", "[S, M, L]"),
    Case("ease: {bust: 10 cm}", "ease: {bust: {«XS: 5 cm}}", "unknown-size", "add XS to `make`, or take it out here", "ease: {bust: {}}"),
    Case("ease: {bust: 10 cm}", "ease: {bust: «[8 cm, 9 cm]}", "ease-list", "give 3 lengths, for S, M, L", "ease: {bust: [8 cm, 9 cm, 9 cm]}"),
    Case("ease: {bust: 10 cm}", "ease: {bust: «losse}", "unknown-word", "one of: very close, close, classic, loose, oversized", "ease: {bust: loose}"),
    Case("ease: {bust: 10 cm}", "ease: {bust: 10 cm, «hips: 5 cm}", "unknown-measure", "use one of those", "ease: {bust: 10 cm, head: 5 cm}"),
    Case("chain: around / 2", "chain: «arond / 2", "unknown-name", "did you mean around?", "chain: around / 2"),
    Case("around / 2", "2 cm + «bust / 2", "unknown-name", "did you mean body.bust?", "2 cm + body.bust / 2"),
    Case("+ ease.bust", "+ «ease.head", "unknown-name", "add `ease: {head: 5 cm}` to sizes", "+ ease.bust"),
    Case("total: in_rows(6 cm, rib)", "total: «back.width", "unknown-name", "write finished(back.width)", "total: finished(back.width)"),
    Case("in_rows(6 cm, rib)", "«inrows(6 cm, rib)", "unknown-call", "did you mean in_rows?", "in_rows(6 cm, rib)"),
    Case("in_rows(6 cm, rib)", "«in_rows(6 cm)", "call-parts", "write it like in_rows(4 cm, band)", "in_rows(4 cm, rib)"),
    Case("in_rows(6 cm, rib)", "in_rows(«6, rib)", "formula", "write in_rows(4 cm, and the fabric)", "in_rows(4 cm, rib)"),
    Case("in_rows(6 cm, rib)", "in_rows(6 cm, «ribb)", "unknown-fabric", "did you mean rib?", "in_rows(6 cm, rib)"),
    Case("finished(back.width) +", "finished(«bakc.width) +", "unknown-piece", "did you mean back.width?", "finished(back.width) +"),
    Case("finished(back.width) +", "finished(back.«widht) +", "unknown-edge", "did you mean width?", "finished(back.width) +"),
    Case("finished(back.width) +", "edge(back.«width) +", "unknown-edge", "write finished(back.width)", "finished(back.width) +"),
    Case("body.upper_arm * 1.1", "body.upper_arm * 1.1 «+ 6", "formula", "give the number a unit, such as cm", "body.upper_arm * 1.1 + 6 cm"),
    Case("body.upper_arm * 1.1", "body.upper_arm «* body.head", "formula", "only a number multiplies a length", "body.upper_arm * 1.1"),
    Case("body.upper_arm * 1.1", "body.upper_arm * «* 1.1", "formula", "take away '*'", "body.upper_arm * 1.1"),
    Case("body.upper_arm * 1.1", "«20", "number-without-unit", "write 20 cm", "20 cm"),
    Case("shoulder: 56 cm", "shoulder: «56", "number-without-unit", "write 56 cm", "shoulder: 56 cm"),
    Case("shoulder: 56 cm", "shoulder: «56 / 2", "number-without-unit", "give it a unit, as in 20 cm", "shoulder: 56 cm / 2"),
    Case("heights: [50 %, rest]", "heights: [«50, rest]", "number-without-unit", "write 50 %", "heights: [50 %, rest]"),
    Case("heights: [50 %, rest]", "heights: [rest, «rest]", "rest-twice", "give this band a height such as 30 %", "heights: [rest, 30 %]"),
    Case("order: [oat, kelp]", "order: «[oat]", "bands-and-order", "give 2 yarns", "order: [oat, oat]"),
    Case("order: [oat, kelp]", "order: [oat, «klep]", "unknown-yarn", "did you mean kelp?", "order: [oat, kelp]"),
    Case("bands: tide", "bands: «tied", "unknown-bands", "did you mean tide?", "bands: tide"),
    Case("fabric: rib", "fabric: «ribs", "unknown-fabric", "did you mean rib?", "fabric: rib"),
    Case("    fabric: rib\n", "", "missing-key", "add `fabric: body` to cuff", "    fabric: body\n"),
    Case("like: oat}", "like: «kelp}", "like-cycle", "take out `like` from kelp", 'colour: "#3f5d4e"}'),
    Case("armhole: body.armhole_depth", "armhole: shoulder - «underarm", "formula-cycle", "write a length such as 20 cm for armhole", "armhole: 20 cm"),
    Case("around: body.bust", "around: «around", "formula-cycle", "write a length such as 20 cm for around", "around: 20 cm"),
    Case("in_rows(6 cm, rib)", "edge(«cuff.rim)", "formula-cycle", "write a length such as 20 cm for the piece cuff", "20 cm"),
    Case("  shoulder: 56 cm", "  shoulder: 56 cm\n  «around: 20 cm", "name-clash", "call one of them around_height", "  shoulder: 56 cm\n  around_height: 20 cm"),
    Case("around: body.bust", "«rest: 5 cm\n  around: body.bust", "name-clash", "call it rest_length", "rest_length: 5 cm\n  around: body.bust"),
    Case("lengths:\n", "lengths:\n  «half-way: 5 cm\n", "bad-name", "write half_way", "lengths:\n  half_way: 5 cm\n"),
    Case("underarm, arm_edge]", "«undrarm, arm_edge]", "unknown-level", "did you mean underarm?", "underarm, arm_edge]"),
    Case("[side, underarm, arm_edge], bottom", "«[arm_edge, underarm], bottom", "edge-list", "write `both: [arm_edge]`", "[side, underarm, arm_edge], bottom"),
    Case("join: back.side", "join: «bakc.side", "unknown-piece", "did you mean back.side?", "join: back.side"),
    Case("to: front.side", "to: «collar.side", "unknown-piece", "use one of the pieces back, front or cuff", "to: front.side"),
    Case("join: back.side", "join: back.«sdie", "unknown-edge", "did you mean side?", "join: back.side"),
    Case("join: back.side", "join: «side", "edge-text", "write back.side", "join: back.side"),
    Case("take_up: half stitch", "take_up: «half", "unknown-word", "did you mean half stitch?", "take_up: half stitch"),
    Case("piece: cuff, to: front", "piece: cuff, to: «frnt", "unknown-piece", "did you mean front?", "piece: cuff, to: front"),
    Case("from: side", "from: «sdie", "unknown-edge", "did you mean side?", "from: side"),
    Case("rounds: 2}", "rounds: 2, each: «1}", "taper-overstated", "take out `each`", "rounds: 2}"),
    Case(", rounds: 2}", "}", "taper-understated", "add `length: 9 cm`", ", length: 9 cm}"),
    Case("rounds: 2}", "rounds: 2, rows: 3}", "two-extents", "take out `rounds`", "rows: 3}"),
    Case("rounds: 2}", "rounds: 2, stitches: «3}", "two-widths", "keep one of them", "rounds: 2}"),
    Case("even: {length: 2 cm}", "even: {length: 2 cm, rows: «3}", "two-extents", "take out `rows`", "even: {length: 2 cm}"),
    Case("even: {length: 2 cm}", "«even: {}", "missing-key", "add `length: 10 cm`", "even: {length: 10 cm}"),
    Case("even: {length: 2 cm}", "«evn: {length: 2 cm}", "unknown-key", "did you mean even?", "even: {length: 2 cm}"),
    Case("      - shoulders:", "        shoulders:", "two-kinds", "begin a new entry with `- shoulders:`", "      - shoulders:"),
    Case("even: {length: rest}", "even: {length: rest}\n      - even: {length: «rest}", "rest-twice", "a length such as 10 cm", "even: {length: rest}\n      - even: {length: 10 cm}"),
    Case("    total: in_rows(6 cm, rib)\n", "", "rest-without-total", "add `total: 45 cm` to cuff", "    total: 45 cm\n"),
    Case("start: {chain: around / 2}", "start: {chain: around / 2, ring: «20 cm}", "two-starts", "take out `ring`", "start: {chain: around / 2}"),
    Case("start: {chain: around / 2}", "start: {chain: around / 2, take_up: «half stitch}", "take-up-without-edge", "take out `take_up`", "start: {chain: around / 2}"),
    Case("start: {chain: around / 2}", "start: {chain: around / 2, corners: «point}", "corners-without-edge", "take out `corners`", "start: {chain: around / 2}"),
    Case("start: {chain: around / 2}", "start: «around / 2", "wrong-kind", "write the keys of start under it", "start: {chain: around / 2}"),
    Case("make: 2", "make: «two", "wrong-kind", "write a whole number such as 2", "make: 2"),
    Case("make: 2", "mirrored: «true\n    make: 2", "mirrored-alone", "take out `mirrored`", "make: 2"),
    Case("seams:", "openings:", "duplicate-key", "keep one of the two", "seams:"),
    Case("openings:\n", "openings:\n  «-\n", "empty-value", "take the entry out", "openings:\n"),
    Case("sizes:\n", "sizes:\n  own: {«S: }\n", "empty-value", "take S out", "sizes:\n"),
    Case("passes: head", "passes: «", "empty-value", "write what belongs to passes", "passes: head"),
]  # fmt: skip


@pytest.mark.parametrize("case", CASES, ids=[f"{i}-{case.name}" for i, case in enumerate(CASES)])
def test_a_fault_is_told_at_its_place_and_its_hint_works(case: Case) -> None:
    assert VEST.count(case.good) >= 1
    marked = VEST.replace(case.good, case.bad, 1)
    found = problems(marked.replace("«", ""))
    assert [problem.name for problem in found] == [case.name]
    (problem,) = found
    assert problem.name in PROBLEM_NAMES
    assert case.hint in problem.hint
    assert problem.origin is not None
    if "«" in marked and case.name != "empty-value":
        before = marked[: marked.index("«")]
        place = before.count("\n") + 1, len(before) - before.rfind("\n")
        assert problem.origin.location[1:] == place, problem
    assert problem.origin.line_text == marked.replace("«", "").split("\n")[problem.origin.location.line - 1]
    assert read(VEST.replace(case.good, case.fixed, 1)).spec.pattern.title


def test_a_name_that_is_empty_is_told_once() -> None:
    (problem,) = problems(VEST.replace("make: 2", "colours: ''\n    make: 2"))
    assert problem.name != "unknown-yarn" and "  " not in problem.message


@pytest.mark.parametrize(("good", "bad"), [("make: 2", "make: true"), ("start: {chain: around / 2}", "start: true")])
def test_true_and_false_are_said_as_they_are_written(good: str, bad: str) -> None:
    told = " ".join(problem.message for problem in problems(VEST.replace(good, bad, 1)))
    assert re.search("true|false", told) and not re.search("True|False", told)


def test_the_vest_and_the_sample_read() -> None:
    vest = read(VEST).spec
    assert vest.fabrics["rib"].gauge is not None and vest.fabrics["rib"].gauge[:4] == (8, 100.0, 13, 200.0)
    assert (vest.attach[0].inward, vest.attach[0].from_edge) == ("3 cm", "side")
    assert vest.openings[0].stretch == 20
    jacket = load_spec(
        SAMPLE,
        {"women": ("XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X")},
        MEASURES | {"hip", "back_waist_length", "center_back_neck_to_wrist"},
    )
    assert len(jacket.spec.pieces) == 6
    assert str(jacket.source.origin_at(("pieces", "back", "start", "chain")).location).rpartition(":")[2] == "20"


def test_all_faults_are_told_at_once_in_the_order_of_the_file() -> None:
    text = (
        VEST.replace("level: easy", "level: esy")
        .replace("stitches: 18", "stitches: 0")
        .replace("around / 2", "arond / 2")
    )
    text = text.replace("join: back.side", "join: bakc.side").replace("[S, M, L]", "[S, M, S, L]")
    assert [problem.name for problem in problems(text)] == [
        "unknown-word",
        "duplicate-size",
        "not-positive",
        "unknown-name",
        "unknown-piece",
    ]


def test_a_faulty_piece_is_told_once_and_not_at_every_seam() -> None:
    found = problems(VEST.replace("shoulders:", "shoulder:"))
    assert [(problem.name, problem.hint) for problem in found] == [("unknown-key", "did you mean shoulders?")]


def test_missing_groups_are_told_once_each() -> None:
    found = problems("gaugewright: 1\n")
    assert [(problem.name, problem.message) for problem in found] == [
        ("missing-key", f"the file has no `{key}`") for key in ("pattern", "yarns", "fabrics", "pieces")
    ]
    added = "\n".join(["gaugewright: 1", *(problem.hint.removeprefix("add `").removesuffix("`") for problem in found)])
    assert read(added).spec.pieces.keys() == {"square"}


def test_a_colour_that_yaml_takes_for_a_remark() -> None:
    text = "gaugewright: 1\npattern: {title: A}\nyarns:\n  oat:\n    colour: #d9c9a8\nfabrics: {b: {stitch: sc, gauge: 8 sts, 7 rows / 10 cm}}\n"
    text = text.replace("gauge: 8 sts, 7 rows / 10 cm", 'gauge: "8 sts, 7 rows / 10 cm"')
    text += "pieces: {s: {start: {chain: 20 cm}, sections: [even: {rows: 4}]}}\n"
    (problem,) = problems(text)
    assert (problem.name, problem.hint, problem.origin and problem.origin.location[1:]) == (
        "colour-text",
        'write colour: "#d9c9a8"',
        (5, 5),
    )
    assert read(text.replace("colour: #d9c9a8", 'colour: "#d9c9a8"')).spec.yarns["oat"].colour == "#d9c9a8"


def test_sizes_of_ones_own_need_no_table() -> None:
    text = VEST.replace(
        "table: women\n  make: [S, M, L]", "own: {2: {bust: 56 cm, head: 48 cm}, 4: {bust: 60 cm}}\n  make: [2, 4]"
    )
    assert read(text).spec.sizes.make == ("2", "4")
    lost = VEST.replace("  table: women\n", "")
    assert [problem.name for problem in problems(lost)] == ["unknown-size"] * 3


def test_versions_written_without_quotes_stay_as_written() -> None:
    assert read(VEST.replace('"1.0"', "1.10")).spec.pattern.version == "1.10"


def test_a_price_is_exact() -> None:
    price = read(VEST).spec.yarns["oat"].price
    assert price is not None and str(price.amount * 3) == "19.50" and price.code == "EUR"
