"""The command `returns`: what it prints, what it keeps to itself, the empty file, and every way to go wrong."""

import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from advice.test_returns import TABARD
from cli.running import ROOT, SCARF, files_in, invoke, nothing_new, spec_in

JACKET = ROOT / "samples/saltmarsh-jacket"
GOLDEN = Path(__file__).with_name("golden") / "returns.txt"
RENEW = f"run: gaugewright returns samples/saltmarsh-jacket/spec.yaml samples/saltmarsh-jacket/returns > {GOLDEN.relative_to(ROOT)}"

WREN = """\
size: M
gauge: {plain: "9 sts, 10 rows / 10 cm"}
finished: {bust: 111 cm, length: 50 cm}
yarn: {oat: 260 g}
hours: 21
remarks: {back: A pleasure}
maker: Wren
"""


def files(folder: Path, *texts: str) -> list[Path]:
    return [spec_in(folder, TABARD), *(spec_in(folder, text, f"return-{number}.yaml") for number, text in enumerate(texts))]


def test_the_returns_of_the_sample() -> None:
    done = invoke("returns", JACKET / "spec.yaml", JACKET / "returns")
    assert (done.exit_code, done.stderr) == (0, "")
    assert done.stdout == GOLDEN.read_text(encoding="utf-8"), RENEW


def test_as_json(tmp_path: Path) -> None:
    found = json.loads(invoke("returns", *files(tmp_path, WREN), "--json").stdout)
    (one,) = found["returns"]
    bust = next(measure for measure in one["measures"] if measure["key"] == "bust")
    assert (one["maker"], one["size"], bust["verdict"], bust["made"]) == ("Wren", "M", "their gauge", 1110)
    assert found["overview"]["unmade"] == ["S", "L"] and found["overview"]["remarks"][0]["said"] == "A pleasure" and "Holm" in found["rule"]


def test_returns_are_only_read_and_no_name_is_published(tmp_path: Path) -> None:
    spec, home = files(tmp_path, WREN)
    invoke("publish", spec, "--sheet", "--out", tmp_path / "a.pdf")
    with nothing_new(tmp_path):
        assert invoke("returns", spec, home).exit_code == 0
    invoke("publish", spec, "--sheet", "--out", tmp_path / "b.pdf")
    for end in (".pdf", "-test-sheet.pdf"):
        first, second = (tmp_path / f"{name}{end}" for name in "ab")
        assert first.read_bytes() == second.read_bytes()
        assert "Wren" not in "".join(page.extract_text() for page in PdfReader(first).pages)


def test_another_version_is_told_and_compared_all_the_same(tmp_path: Path) -> None:
    done = invoke("returns", *files(tmp_path, f'version: "1"\n{WREN}'))
    assert done.exit_code == 0 and "other-version" in done.stderr and "return-0.yaml:1:10" in done.stderr and "Bust" in done.stdout


def test_more_yarn_than_the_pattern_asks_for_is_pointed_out(tmp_path: Path) -> None:
    done = invoke("returns", *files(tmp_path, "size: M\nyarn: {oat: 300 g, kelp: 270 g}"))
    (oat, kelp) = (line for line in done.stdout.splitlines() if " g used" in line)
    assert "more than the pattern says to have" in oat and "more than" not in kelp


def test_yarn_of_a_pattern_that_was_never_weighed(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, TABARD.replace(", mass: 40 g", ""))
    done = invoke("returns", spec, spec_in(tmp_path, "size: M\nyarn: {oat: 300 g}", "a.yaml"))
    assert "Oat: 300 g used; nothing is counted" in done.stdout and done.exit_code == 0


def test_an_empty_file_is_written_once_and_reads_as_nothing_told(tmp_path: Path) -> None:
    spec, blank = spec_in(tmp_path, TABARD), tmp_path / "blank.yaml"
    assert invoke("returns", spec, "--blank", blank, "--size", "M").exit_code == 0
    text = blank.read_text(encoding="utf-8")
    assert [key for key in ("size:", "gauge:", "finished:", "yarn:", "hours:", "remarks:", "hard_to_follow:", "more:", "maker:") if f"\n{key}" not in text] == []
    assert "Bust: 100 cm" in text and "90 cm" not in text, "the size's own predictions alone"
    read = invoke("returns", spec, blank)
    assert read.exit_code == 0 and "gauge: not told" in read.stdout and "Nobody measured: Length, Bust" in read.stdout
    with nothing_new(tmp_path):
        again = invoke("returns", spec, "--blank", blank)
    assert again.exit_code == 1 and "file-exists" in again.stderr and blank.read_text(encoding="utf-8") == text


def test_an_empty_file_for_any_size_asks_for_it(tmp_path: Path) -> None:
    spec, blank = spec_in(tmp_path, TABARD), tmp_path / "blank.yaml"
    invoke("returns", spec, "--blank", blank)
    assert "# Bust: S 90; M 100; L 110 cm\n" in blank.read_text(encoding="utf-8")
    done = invoke("returns", spec, blank)
    assert done.exit_code == 1 and "missing-key" in done.stderr and "`size`" in done.stderr


@pytest.mark.parametrize("name", ["quayside-throw", "lamplighter-hat", "shingle-bag", "sandpiper-raglan"])
def test_an_empty_file_filled_with_the_predictions_raises_no_remark(tmp_path: Path, name: str) -> None:
    from gaugewright import pipeline
    from gaugewright.changes import measures_of

    spec, blank = ROOT / "samples" / name / "spec.yaml", tmp_path / "blank.yaml"
    graded = pipeline.grade(pipeline.load(spec))
    size = graded.bodies.labels[-1]
    invoke("returns", spec, "--blank", blank, "--size", size)
    text = blank.read_text(encoding="utf-8")
    for key, _, values in measures_of(pipeline.side(graded)):
        line = next(line for line in text.splitlines() if line.startswith(("  " + key, f'  "{key}"')) and "#" in line)
        text = text.replace(line, line.replace(":  #", f": {values[size]:.4f} mm  #", 1))
    gauge = graded.design.fabric(graded.design.pieces[0].fabric).gauge
    text = text.replace("    washed:\n", f"    washed: {{stitches: [{{count: {gauge.stitches}, over: {gauge.width} mm}}], rows: [{{count: {gauge.rows}, over: {gauge.height} mm}}]}}\n", 1)
    blank.write_text(text, encoding="utf-8")
    done = json.loads(invoke("returns", spec, blank, "--json").stdout)
    verdicts = {measure["verdict"] for one in done["returns"] for measure in one["measures"]}
    assert verdicts == {"as predicted"} and done["overview"]["unmeasured"] == []


@pytest.mark.parametrize(("text", "name", "said"), [
    ("size: XXL", "unknown-size", "the sizes are S, M and L"),
    ("sizes: M", "unknown-key", "did you mean size?"),
    ("size:", "missing-key", "`size`"),
    ("size: M\nfinished: {bust: 10 cm}", "out-of-range", "100 cm?"),
    ("size: M\nfinished: {bust: 39 cm}", "out-of-range", "39 in?"),
    ("size: M\nfinished: {bust: 100}", "number-without-unit", "100 cm"),
    ("size: M\nfinished: {bust: 100 g}", "wrong-unit", "a length is expected"),
    ("size: M\nfinished: {bust: 100 cm / 39 in}", "wrong-unit", "only 100 cm"),
    ("size: M\nfinished: {bust: 100,5 cm}", "decimal-comma", "100.5 cm"),
    ("size: M\nfinished: {bust: -100 cm}", "not-positive", "more than nothing"),
    ("size: M\nfinished: {burst: 100 cm}", "unknown-finished", "did you mean bust?"),
    ("size: M\nfinished: [100 cm]", "wrong-kind", "keys with values"),
    ('size: M\ngauge: {plian: "9 sts, 9 rows / 10 cm"}', "unknown-fabric", "did you mean plain?"),
    ("size: M\ngauge: {plain: 9 sts, 9 rows / 10 cm}", "gauge-text", 'plain: "9 sts, 9 rows / 10 cm"'),
    ('size: M\ngauge: {plain: "9 sts, 9 rows / 10 in"}', "out-of-range", "2.8 times as wide"),
    ('size: M\ngauge: "9 sts / 10 cm"', "gauge-without-rows", "rows"),
    ("size: M\ngauge: [9]", "wrong-kind", "one value or keys with values"),
    ("size: M\ngauge: {plain: {washed: {stitches: [{count: , over: 20 cm}], rows: [{count: 9, over: 9 cm}]}}}", "missing-key", "count"),
    ("size: M\nyarn: {oats: 250 g}", "unknown-yarn", "did you mean oat?"),
    ("size: M\nyarn: {oat: 2.5 kg}", "out-of-range", "253 g are counted"),
    ("size: M\nyarn: 50 cm", "wrong-unit", "a mass is expected"),
    ("size: M\nhours: {bakc: 3}", "unknown-piece", "did you mean back?"),
    ("size: M\nhours: 3 h", "wrong-kind", "4:30"),
    ("size: M\nhours: 12 %", "wrong-unit", "4:30"),
    ("size: M\nhours: true", "wrong-kind", "4:30"),
    ("size: M\nhours: 0", "out-of-range", "more than 0"),
    ("size: M\nhours: 0.2", "out-of-range", "stitches an hour"),
    ("size: M\nremarks: {bakc: fine}", "unknown-piece", "did you mean back?"),
    ("size: M\nremarks: {back: [fine, null]}", "out-of-range", "empty"),
    ("pattern: Weir Tabard\nsize: M", "other-pattern", "Lock Tabard"),
    ("size: M\nsize: S", "duplicate-key", "twice"),
    ("", "file-empty", "holds nothing"),
])
def test_every_way_to_go_wrong_is_told(tmp_path: Path, text: str, name: str, said: str) -> None:
    spec, home = files(tmp_path, text)
    with nothing_new(tmp_path):
        done = invoke("returns", spec, home)
    assert (done.exit_code, done.stdout) == (1, "") and f"{home}:" in done.stderr, done.stderr
    assert f": {name}: " in done.stderr and said in done.stderr and "hint: " in done.stderr, done.stderr


def test_files_and_folders_that_are_not_there_and_wrong_use(tmp_path: Path) -> None:
    (spec,) = files(tmp_path)
    (tmp_path / "nothing").mkdir()
    assert "file-missing" in invoke("returns", spec, tmp_path / "nowhere.yaml").stderr
    assert "no-returns" in invoke("returns", spec, tmp_path / "nothing").stderr
    assert "size-not-made" in invoke("returns", spec, "--blank", tmp_path / "b.yaml", "--size", "XL").stderr
    assert [invoke(*arguments).exit_code for arguments in (("returns", spec), ("returns", spec, spec, "--size", "M"), ("returns", spec, spec, "--blank", tmp_path / "b.yaml"))] == [2, 2, 2]
    assert files_in(tmp_path) == ["nothing", "spec.yaml"]


def test_makers_of_an_edition_for_another_gauge_are_held_to_it(tmp_path: Path) -> None:
    """At 8 sts to 10 cm M is graded to 40 sts a piece, 100 cm again; the pattern's own 50 would come to 125."""
    spec, home = files(tmp_path, 'size: M\ngauge: "8 sts, 10 rows / 10 cm"\nfinished: {bust: 100 cm}')
    edition, own = (json.loads(invoke("returns", spec, home, *more, "--json").stdout)["returns"][0]["measures"][0] for more in (("--gauge", "8 sts, 10 rows / 10 cm"), ()))
    assert (edition["own"], edition["verdict"]) == (pytest.approx(1000), "as predicted")
    assert (own["own"], own["verdict"]) == (pytest.approx(1250), "not their gauge")


def test_a_pattern_of_one_size_needs_none_filled_in(tmp_path: Path) -> None:
    spec, blank = spec_in(tmp_path, SCARF), tmp_path / "blank.yaml"
    assert invoke("returns", spec, "--blank", blank).exit_code == 0
    done = invoke("returns", spec, blank)
    assert done.exit_code == 0 and "Nobody made" not in done.stdout and "Nobody measured: Scarf, width, Scarf, length" in done.stdout


def test_a_yarn_that_the_size_is_worked_without(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, TABARD.replace("fabrics:", '  slate: {colour: "#5b6b7a"}\nfabrics:'))
    done = invoke("returns", spec, spec_in(tmp_path, "size: M\nyarn: {slate: 100 g}", "a.yaml"))
    assert done.exit_code == 1 and "a.yaml:2:8: unknown-yarn: size M is worked without slate" in done.stderr


def test_a_colon_in_a_remark_is_a_colon(tmp_path: Path) -> None:
    done = invoke("returns", *files(tmp_path, "size: M\nhard_to_follow:\n  - Page 3: where do I begin?\n"))
    assert done.exit_code == 0 and "M, return-0.yaml: Page 3: where do I begin?" in done.stdout


def test_the_read_me_quotes_what_is_printed() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    start = readme.index("of which it says, among other things:")
    quoted = [line.strip() for line in readme[start : readme.index("Names in such files", start)].splitlines()[1:] if line.strip()]
    printed = [line.strip() for line in GOLDEN.read_text(encoding="utf-8").splitlines()]
    assert len(quoted) == 6 and [line for line in quoted if line not in printed] == []
