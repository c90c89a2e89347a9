"""The command `regauge`: both answers, the middle of a piece, and every way to go wrong."""

import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from cli.running import COWL, ROOT, SCARF, command, invoke, nothing_new, spec_in

JACKET = ROOT / "samples/saltmarsh-jacket/spec.yaml"
GAUGE = "8 sts, 6.5 rows / 10 cm"


def test_old_and_new_stand_side_by_side(tmp_path: Path) -> None:
    """Pier Scarf: 20 cm at 9 sts to 10 cm are 18 sts, at 8 they are 16; 150 cm are 105 rows, or 98 at 6.5."""
    done = command("regauge", spec_in(tmp_path, SCARF), "--gauge", GAUGE, folder=tmp_path)
    assert done.returncode == 0, done.stderr
    lines = [" ".join(line.split()) for line in done.stdout.splitlines()]
    assert "foundation, sts 18->16" in lines and "end of part 1 (even), rows 105->98" in lines
    assert "no figure, since a swatch in use was not weighed" in done.stdout


def test_json_holds_everything_that_is_told() -> None:
    found = json.loads(invoke("regauge", JACKET, "--gauge", GAUGE, "--json").stdout)
    assert found["gauge"] == {"main": {"stitches": 8, "width": 100.0, "rows": 13, "height": 200.0}}
    back = next(one for one in found["changes"]["counts"] if (one["piece"], one["part"]) == ("back", 0))
    assert (back["old"]["M"], back["new"]["M"]) == (52, 48)
    assert found["changes"]["costs"][0]["new"]["M"] == "96.20"
    assert [one["wanted"] for one in found["follow"]] == ["XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"]
    large = next(one for one in found["follow"] if one["wanted"] == "L")
    assert (large["numbers"], large["lead"]["key"], large["lead"]["fits"]) == ("M", "bust", True)
    # M's 52 + 23 + 23 sts less three half stitches a side and two bands of 4 rows: within a centimetre of 127.5.
    assert large["lead"]["got"] == pytest.approx(1275, abs=10)


def test_some_sizes_only() -> None:
    lines = invoke("regauge", JACKET, "--gauge", GAUGE, "--size", "S,M").stdout.splitlines()
    assert lines[2].split() == ["Back", "S", "M"]
    assert [line.split()[1] for line in lines if line.startswith("  for ")] == ["S", "M"]


def test_a_gauge_for_each_fabric() -> None:
    """The band alone changes: the body's numbers stay."""
    found = json.loads(invoke("regauge", JACKET, "--gauge", "band=8 sts, 8 rows / 10 cm", "--json").stdout)
    changed = {one["piece"] for one in found["changes"]["counts"] if one["old"] != one["new"]}
    assert "front_band" in changed and "back" not in changed


def test_the_edition_says_on_every_page_what_it_is_worked_at(tmp_path: Path) -> None:
    invoke("publish", JACKET, "--gauge", GAUGE, "--out", tmp_path)
    invoke("publish", JACKET, "--out", tmp_path)
    for name, said in (("saltmarsh-jacket-own-gauge", "worked at 8 × 6.5"), ("saltmarsh-jacket", "gauge 8.78 × 7.18")):
        pages = [page.extract_text().replace("\u00a0", " ") for page in PdfReader(tmp_path / f"{name}.pdf").pages]
        assert len(pages) > 10 and all(said in page and "version 1.0" in page for page in pages)
        assert any("What this gauge changes" in page for page in pages) == name.endswith("gauge")


def test_many_gauges_stay_on_the_page(tmp_path: Path) -> None:
    """A footer names three gauges and counts the others."""
    given = [part for n, name in enumerate(("body", "sleeve", "cuff", "band")) for part in ("--gauge", f"{name}={8 + n / 10} sts, 7 rows / 10 cm")]
    invoke("publish", JACKET, *given, "--out", tmp_path)
    (page, *_) = PdfReader(tmp_path / "saltmarsh-jacket-own-gauge.pdf").pages
    assert "worked at 8 × 7, 8.1 × 7, 8.2 × 7 and 1 more to 10 cm" in page.extract_text().replace("\u00a0", " ")


def test_in_the_middle_of_a_piece(tmp_path: Path) -> None:
    """The cowl's S: 54 cm round are 54 sts, 12 rounds of 2 cm. Measured as the pattern says, it goes on."""
    spec = spec_in(tmp_path, COWL)
    done = invoke("regauge", spec, "--piece", "cowl", "--worked", "6 rnds, 54 sts, measures 54 cm around, 12 cm high")
    assert done.exit_code == 0 and "You began S (row 6 of 12). Best: go on," in done.stdout
    done = invoke("regauge", spec, "--piece", "cowl", "--worked", "6 rnds, 54 sts, measures 60 cm around, 12 cm high")
    assert "Best: rip out, since around would be 6 cm too large" in done.stdout and "costs 6 rows (324 sts)" in done.stdout
    assert "change hook: a smaller one" in done.stdout and "the 7 mm" in done.stdout


@pytest.mark.parametrize(("arguments", "name"), [
    (["--gauge", "8 sts / 10 cm"], "gauge-without-rows"),
    (["--gauge", "plane=8 sts, 7 rows / 10 cm"], "unknown-fabric"),
    (["--gauge", "plain=8 sts, 7 rows / 10 cm", "--gauge", "plain=9 sts, 7 rows / 10 cm"], "two-gauges"),
    (["--gauge", "8 sts, 7 rows / 10 cm", "--gauge", "plain=9 sts, 7 rows / 10 cm"], "two-gauges"),
    (["--gauge", GAUGE, "--size", "XL"], "size-not-made"),
    (["--piece", "scarf", "--worked", "6 rows, 54 sts, 54 cm around, 12 cm high"], "unknown-piece"),
    (["--piece", "cowl", "--worked", "6 rows, 54 sts, 54 cm around"], "worked-text"),
    (["--piece", "cowl", "--worked", "6 rows, 53 sts, 54 cm around, 12 cm high"], "worked-astray"),
    (["--piece", "cowl", "--worked", "60 rows, 54 sts, 54 cm around, 12 cm high"], "worked-astray"),
    (["--piece", "cowl", "--worked", "6 rows, 54 sts, 54 cm around, 12 cm high", "--size", "M"], "worked-astray"),
    (["--piece", "cowl", "--worked", "6 rows, 54 sts, 54 cm around, 12 cm high", "--size", "XL"], "size-not-made"),
    (["--piece", "cowl", "--worked", "6 rows, 54 sts, 54 in around, 12 cm high"], "worked-unlikely"),
])
def test_every_way_to_go_wrong_is_told(tmp_path: Path, arguments: list[str], name: str) -> None:
    spec = spec_in(tmp_path, COWL)
    with nothing_new(tmp_path):
        done = invoke("regauge", spec, *arguments)
    assert (done.exit_code, done.stdout) == (1, "") and name in done.stderr and "hint: " in done.stderr


@pytest.mark.parametrize("arguments", [[], ["--piece", "cowl"], ["--worked", "6 rows"], ["--gauge", GAUGE, "--piece", "cowl", "--worked", "6 rows"]])
def test_wrong_use_of_the_command(tmp_path: Path, arguments: list[str]) -> None:
    done = command("regauge", spec_in(tmp_path, COWL), *arguments, folder=tmp_path)
    assert done.returncode == 2 and "--piece and --worked together" in done.stderr
