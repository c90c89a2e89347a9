"""The command `swatch`: what it says, what it changes, and every way to go wrong."""

import json
from pathlib import Path

import pytest
from cli.running import COWL, SCARF, command

READINGS = """\
fresh: {stitches: [{count: 20, over: 20 cm}], rows: [{count: 10, over: 20 cm}]}
washed:
  stitches: [{count: 20, over: 21 cm}, {count: 19.5, over: 20.5 cm}, {count: 20, over: 21.2 cm}]
  rows: [{count: 10, over: 20 cm}, {count: 10, over: 20.2 cm}]
weighed: {mass: 33 g, stitches: 20, rows: 10}
tool: 8 mm
"""


def files(folder: Path, readings: str = READINGS, spec: str = COWL) -> tuple[Path, Path]:
    (folder / "readings.yaml").write_text(readings, encoding="utf-8")
    (folder / "cowl.yaml").write_text(spec, encoding="utf-8")
    return folder / "readings.yaml", folder / "cowl.yaml"


def test_readings_alone_give_a_gauge_and_a_block(tmp_path: Path) -> None:
    files(tmp_path)
    done = command("swatch", "readings.yaml", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "washed, which is graded from:" in done.stdout and "From fresh to washed" in done.stdout
    assert "swatch: {stitches: 20, rows: 10, width: 21.1 cm, height: 20.1 cm, mass: 33 g}" in done.stdout


def test_for_a_spec_each_size_has_its_range(tmp_path: Path) -> None:
    files(tmp_path)
    done = command("swatch", "readings.yaml", "--for", "cowl.yaml", "--json", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    meaning = json.loads(done.stdout)["meaning"]
    assert meaning["fabric"] == "plain"
    done = command("swatch", "readings.yaml", "--for", "cowl.yaml", folder=tmp_path)
    assert "try the 7 mm" in done.stdout or "try the 7.5 mm" in done.stdout or "try the 6.5 mm" in done.stdout, done.stdout


def test_into_a_spec_changes_its_block_and_keeps_a_copy(tmp_path: Path) -> None:
    _, spec = files(tmp_path)
    done = command("swatch", "readings.yaml", "--into", "cowl.yaml", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    changed = spec.read_text(encoding="utf-8")
    old = "swatch: {stitches: 20, rows: 10, width: 20 cm, height: 20 cm, mass: 30 g, thickness: 6 mm}"
    assert changed == COWL.replace(old, "swatch: {stitches: 20, rows: 10, width: 21.1 cm, height: 20.1 cm, mass: 33 g, thickness: 6 mm}")
    assert (tmp_path / "cowl-before-1.yaml").read_text(encoding="utf-8") == COWL
    assert command("swatch", "readings.yaml", "--into", "cowl.yaml", folder=tmp_path).returncode == 0
    assert (tmp_path / "cowl-before-2.yaml").read_text(encoding="utf-8") == changed
    assert command("check", "cowl.yaml", folder=tmp_path).returncode == 0


def test_a_gauge_in_words_becomes_a_swatch(tmp_path: Path) -> None:
    files(tmp_path, spec=SCARF)
    assert command("swatch", "readings.yaml", "--into", "cowl.yaml", "--fabric", "plain", folder=tmp_path).returncode == 0
    assert "plain: {stitch: hdc, tool: 10 mm, swatch: {stitches: 20," in (tmp_path / "cowl.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize(("readings", "arguments", "name"), [
    ("tool: 8 mm\n", [], "missing-key"),
    ("washed: {stitches: [{count: 0, over: 20 cm}], rows: [{count: 10, over: 20 cm}]}\n", [], "out-of-range"),
    ("washed: {stitches: [{count: 20, over: 0 cm}], rows: [{count: 10, over: 20 cm}]}\n", [], "not-positive"),
    ("washed: {stitches: [], rows: [{count: 10, over: 20 cm}]}\n", [], "out-of-range"),
    ("washed: {stitches: [{count: 20, over: 20}], rows: [{count: 10, over: 20 cm}]}\n", [], "number-without-unit"),
    ("washed: {stitches: [{count: 20, over: 20 cm}]}\n", [], "missing-key"),
    ("washed: {stitches: ~, rows: [{count: 10, over: 20 cm}]}\n", [], "empty-value"),
    ("use: hung\n" + READINGS, [], "missing-key"),
    (READINGS + "wool: 3\n", [], "unknown-key"),
    (READINGS, ["--fabric", "plain"], "fabric-without-spec"),
    (READINGS, ["--for", "cowl.yaml", "--fabric", "plane"], "unknown-fabric"),
    (READINGS, ["--for", "nowhere.yaml"], "file-missing"),
    (READINGS, ["--into", "nowhere.yaml"], "file-missing"),
])
def test_every_way_to_go_wrong_is_told(tmp_path: Path, readings: str, arguments: list[str], name: str) -> None:
    files(tmp_path, readings)
    before = sorted(path.name for path in tmp_path.iterdir())
    done = command("swatch", "readings.yaml", *arguments, folder=tmp_path)
    assert done.returncode == 1 and name in done.stderr and "Traceback" not in done.stderr, done.stderr
    assert sorted(path.name for path in tmp_path.iterdir()) == before


def test_of_several_fabrics_one_must_be_named(tmp_path: Path) -> None:
    files(tmp_path, spec=COWL.replace("fabrics:\n", "fabrics:\n  other: {like: plain}\n").replace("  cowl:\n", "  cowl:\n    fabric: plain\n"))
    done = command("swatch", "readings.yaml", "--for", "cowl.yaml", folder=tmp_path)
    assert done.returncode == 1 and "write --fabric with one of other, plain" in done.stderr


HUNG = READINGS + "hung: {stitches: [{count: 20, over: 21 cm}], rows: [{count: 10, over: 21.5 cm}]}\n"


def test_a_swatch_read_flat_and_hung_tells_its_growth(tmp_path: Path) -> None:
    """Ten rows are 20.1 cm washed and 21.5 cm hung: 7 % longer."""
    _, spec = files(tmp_path, HUNG)
    done = command("swatch", "readings.yaml", "--for", "cowl.yaml", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "Hung, its rows are 7.0 % longer than washed" in done.stdout
    assert "height: 20.1 cm, mass: 33 g, hung: 21.5 cm}" in done.stdout
    assert command("swatch", "readings.yaml", "--into", "cowl.yaml", folder=tmp_path).returncode == 0
    assert "hung: 21.5 cm" in spec.read_text(encoding="utf-8")
    assert command("check", "cowl.yaml", folder=tmp_path).returncode == 0


def test_rows_shorter_hung_than_flat_were_misread(tmp_path: Path) -> None:
    files(tmp_path, HUNG.replace("over: 21.5 cm", "over: 19 cm"))
    done = command("swatch", "readings.yaml", "--for", "cowl.yaml", folder=tmp_path)
    assert "5.5 % shorter than washed, which cloth isn't" in done.stdout and "hung: 20.1 cm}" in done.stdout


def test_a_stated_growth_gives_way_only_by_hand(tmp_path: Path) -> None:
    _, spec = files(tmp_path, HUNG, COWL.replace("tool: 8 mm", "tool: 8 mm\n    growth: 4 %"))
    before = spec.read_text(encoding="utf-8")
    done = command("swatch", "readings.yaml", "--into", "cowl.yaml", folder=tmp_path)
    assert done.returncode == 1 and done.stderr.startswith("two-growths: ") and "\n    hint: take `growth` out" in done.stderr
    assert spec.read_text(encoding="utf-8") == before
