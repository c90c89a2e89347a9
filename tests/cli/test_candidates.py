"""The command `candidates`: the sample, as text, JSON and PDF, and every way to go wrong."""

import json
from pathlib import Path

import pytest
from cli.running import ROOT, SCARF, command, files_in, invoke, nothing_new, spec_in

SAMPLE = ROOT / "samples/saltmarsh-jacket"
YARN = "{weight: 6, ball: {mass: 100 g, length: 60 m}, price: 4.20 EUR}"


def file_in(folder: Path, text: str) -> Path:
    path = folder / "yarns.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def test_the_sample_side_by_side(tmp_path: Path) -> None:
    result = invoke("candidates", SAMPLE / "spec.yaml", SAMPLE / "candidates.yaml", "--size", "M")
    assert result.exit_code == 0, result.stderr
    rows = {line.split("  ")[0]: line for line in result.stdout.splitlines() if line.startswith(("Plover", "Drift", "Eider")) and "  " in line}
    assert rows["Plover Wool"].endswith("  fit") and rows["Drift Roving"].endswith("fit with cautions") and "≈" in rows["Drift Roving"]
    data = json.loads(invoke("candidates", SAMPLE / "spec.yaml", SAMPLE / "candidates.yaml", "--size", "M", "--json").stdout)
    assert [one["verdict"] for one in data["candidates"]] == ["fit", "fit with cautions", "fit with cautions"]
    plover, drift, _ = data["candidates"]
    low, high = plover["balls"]["M"]
    assert low == high and plover["cost"]["M"] == [f"{low * 960 // 100}.{low * 960 % 100:02d}"] * 2
    assert {reason.get("about") for reason in drift["reasons"]} >= {"strength", "seams", "shedding", "pilling", "felting", "ripping"}
    assert all(reason["source"] for one in (data["own"], *data["candidates"]) for reason in one["reasons"])


def test_a_page_and_its_plot_are_written(tmp_path: Path) -> None:
    done = command("candidates", SAMPLE / "spec.yaml", SAMPLE / "candidates.yaml", "--size", "M,L", "--pdf", "--out", ".", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert files_in(tmp_path) == ["saltmarsh-jacket-candidates-cost.svg", "saltmarsh-jacket-candidates.pdf"]
    assert (tmp_path / "saltmarsh-jacket-candidates.pdf").read_bytes().startswith(b"%PDF")
    assert "163.20 EUR" in (tmp_path / "saltmarsh-jacket-candidates-cost.svg").read_text(encoding="utf-8")


WRONG = (
    ("candidates: {}\n", "out-of-range", "{}"),
    ("yarns: {A: 1}\n", "unknown-key", "yarns"),
    (f"candidates: {{A: {YARN.replace('60 m', '0 m')}}}\n", "not-positive", "0 m"),
    (f"candidates: {{A: {YARN.replace('4.20 EUR', '-4 EUR')}}}\n", "price-text", "-4 EUR"),
    (f"candidates: {{A: {YARN.replace('EUR', 'EUX')}}}\n", "price-text", "EUX"),
    (f"candidates: {{A: {YARN.replace('weight: 6', 'weight: 9')}}}\n", "out-of-range", "9"),
    ("candidates: {A: {weight: 6}}\n", "missing-key", "A: {weight"),
    ("candidates: {A: {ball: {mass: 100 g, length: 85 m}}}\n", "missing-key", "A: {ball"),
    (f"candidates: {{A: {YARN.replace('weight: 6', 'weight: 6, structure: felted')}}}\n", "unknown-word", "felted"),
    (f"candidates: {{A: {YARN.replace('weight: 6', 'weight: 6, fibre: {wool: 80}')}}}\n", "fibre-total", "{wool: 80}"),
    (f"candidates: {{A: {YARN[:-1]}, gauge: \"8 sts, 7 rows / 10 cm\", swatch: {{stitches: 8, rows: 7, width: 10 cm, height: 10 cm}}}}}}\n", "two-gauges", '"8 sts'),
    (f"candidates: {{A: {YARN[:-1]}, swatch: {{stitches: 8, rows: 7, width: 10 cm, height: 10 cm, hung: 9 cm}}}}}}\n", "hung-unlikely", "9 cm"),
)


@pytest.mark.parametrize(("text", "name", "place"), WRONG, ids=[f"{name}-{index}" for index, (_, name, _) in enumerate(WRONG)])
def test_what_is_wrong_is_told_at_its_place(tmp_path: Path, text: str, name: str, place: str) -> None:
    spec, path = spec_in(tmp_path, SCARF), file_in(tmp_path, text)
    with nothing_new(tmp_path):
        result = invoke("candidates", spec, path, "--pdf")
    assert (result.exit_code, result.stdout) == (1, "")
    line, column = result.stderr.split(f"{path}:")[1].split(":")[:2]
    assert f": {name}" in result.stderr and "hint:" in result.stderr, result.stderr
    assert text.splitlines()[int(line) - 1][int(column) - 1 :].startswith(place), result.stderr


def test_a_size_that_is_not_made_and_a_file_that_is_not_there(tmp_path: Path) -> None:
    path = file_in(tmp_path, f"candidates: {{A: {YARN}}}\n")
    assert "size-not-made" in invoke("candidates", SAMPLE / "spec.yaml", path, "--size", "9X").stderr
    assert "file-missing" in invoke("candidates", SAMPLE / "spec.yaml", tmp_path / "none.yaml").stderr
    result = invoke("candidates", spec_in(tmp_path, SCARF), path)
    assert result.exit_code == 0, result.stderr
    told = next(line for line in result.stdout.splitlines() if line.startswith("A "))
    assert "≈" in told.split("EUR")[0].partition("to 10 cm")[0], "no weighed swatch: an estimate, marked as one"
