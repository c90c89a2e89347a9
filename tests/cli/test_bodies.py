"""The command `bodies`: what it says, and every way to go wrong."""

import json
from pathlib import Path

import pytest
from cli.running import COWL, ROOT, command

JACKET = ROOT / "samples" / "saltmarsh-jacket" / "spec.yaml"


def test_each_size_has_its_shares_and_the_survey_its_caveats(tmp_path: Path) -> None:
    done = command("bodies", JACKET, folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "hip: of bodies of the size's bust, tight under 0 cm of ease, loose over 20 cm, or over the size's own ease" in done.stdout
    assert "ANSUR II 2012" in done.stdout and "serving army" in done.stdout
    assert "Nobody surveyed has the bust of 2X, 3X, 4X, 5X" in done.stdout
    assert "tight on many" not in done.stdout
    assert "In bust, upper arm, wrist and hip at once" in done.stdout
    assert "XS: fits 0 of 1 body, 0 % (95 % range 0 to 79 %); but for the hip it would fit 1; few bodies" in done.stdout
    assert "  Some size fits 197 of the 199 within the sizes' bust, 99 % (95 % range 96 to 100 %)" in done.stdout
    assert "Nobody in it counts for more or less than another" in done.stdout


def test_own_limits_take_the_place_of_the_usual_and_warn(tmp_path: Path) -> None:
    done = command("bodies", JACKET, "--ease", "hip=8..20", folder=tmp_path)
    line = next(line for line in done.stdout.splitlines() if line.startswith("  XS: 94 cm as worn"))
    assert "loose over 20 cm (as asked for)" in done.stdout
    assert line.endswith("<- tight on many")


def test_as_json(tmp_path: Path) -> None:
    done = command("bodies", JACKET, "--json", folder=tmp_path)
    found = json.loads(done.stdout)
    assert found["table"] == "women" and found["limits"]["hip"] == {"least": 0.0, "most": 200.0}
    assert found["some"]["bodies"] == sum(one["bodies"] for one in found["together"]) and found["together"][1]["range"][0] > 0.8
    assert all(one["tight"] + one["fits"] + one["loose"] == pytest.approx(1) for one in found["shares"])


@pytest.mark.parametrize("ease", ["hip", "hip=4", "hip=8..2", "=2..3", "hip=nan..3"])
def test_limits_that_are_none(tmp_path: Path, ease: str) -> None:
    done = command("bodies", JACKET, "--ease", ease, folder=tmp_path)
    assert done.returncode == 1 and "bad-ease-limits" in done.stderr and "upper_arm=2..12" in done.stderr


def test_a_measure_that_the_pattern_lacks(tmp_path: Path) -> None:
    done = command("bodies", JACKET, "--ease", "waist=0..9", folder=tmp_path)
    assert done.returncode == 1 and "nothing-to-compare" in done.stderr and "waist" in done.stderr


def test_sizes_of_no_table(tmp_path: Path) -> None:
    (tmp_path / "cowl.yaml").write_text(COWL, encoding="utf-8")
    done = command("bodies", "cowl.yaml", folder=tmp_path)
    assert done.returncode == 1 and "no-survey" in done.stderr
