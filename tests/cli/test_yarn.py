"""`yarn`: amounts, yarn in hand, pieces weighed; and what can't be read or can't be."""

import json
from pathlib import Path

import pytest

from cli.running import COWL, ROOT, SCARF, command, invoke, spec_in

JACKET = ROOT / "samples" / "saltmarsh-jacket" / "spec.yaml"


def test_amounts_are_those_of_the_page() -> None:
    found = json.loads(invoke("yarn", JACKET, "--json").stdout)
    assert [one["size"] for one in found] == ["XS", "S", "M", "L", "1X", "2X", "3X", "4X", "5X"]
    oat = found[2]["colours"][0]
    assert (oat["colour"], oat["balls"], oat["left_grams"]) == ("oat", 6, 117.6)
    assert oat["terms"]["total"] * 1.1 == pytest.approx(oat["grams"], abs=0.1)
    assert len(invoke("yarn", JACKET, "--size", "M").stdout.split("M oat:")) == 2


def test_yarn_in_hand_of_one_size() -> None:
    told = invoke("yarn", JACKET, "--size", "M", "--have", "oat=5", "--have", "kelp=700 g").stdout
    assert told.startswith("M can just be made")
    assert "kelp could lend oat" in told and "slate is to be bought" in told
    assert told.endswith("Sizes that this yarn makes: XS, S, M.\n")


def test_yarn_in_hand_as_data() -> None:
    (found,) = json.loads(invoke("yarn", JACKET, "--size", "M", "--have", "oat=4", "--json").stdout)
    assert found["verdict"] == "short" and found["colours"][0]["short_balls"] == 2
    assert found["bands"]["changes"][0]["heights"][-1] == "rest"


def test_pieces_weighed_and_what_is_still_to_buy() -> None:
    told = invoke("yarn", JACKET, "--size", "M", "--used", "back=400 g", "--have", "oat=2").stdout
    assert told.startswith("Back, size M: 400 g where 378 g were counted, +5.8 %\n")
    assert "oat: " in told and "200 g in hand\n" in told and "Still to buy" in told
    found = json.loads(invoke("yarn", JACKET, "--size", "M", "--used", "back=400 g", "--json").stdout)
    assert found["weighed"][0]["ratio"] == pytest.approx(1.06, abs=0.01)


def test_an_estimate_is_told_as_one(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF)
    assert "(an estimate)" in invoke("yarn", spec).stdout
    told = invoke("yarn", spec, "--have", "oat=5").stdout
    assert "can perhaps be made" in told and "No piece has bands" in told and told.endswith("This yarn makes no size of the pattern for certain.\n")


@pytest.mark.parametrize(("options", "names"), [
    (["--have", "oat=-5"], ["not-positive"]),
    (["--have", "plum=5"], ["unknown-yarn"]),
    (["--have", "oat"], ["yarn-text"]),
    (["--have", "oat=5 %"], ["wrong-unit"]),
    (["--have", "oat=five"], ["wrong-unit"]),
    (["--have", "oat=5", "--have", "oat=6"], ["yarn-text"]),
    (["--have", "oat=-5", "--have", "kelp="], ["not-positive", "yarn-text"]),
    (["--size", "M", "--used", "back=0 g"], ["not-positive"]),
    (["--size", "M", "--used", "back=5"], ["wrong-unit"]),
    (["--size", "M", "--used", "back=5 kg"], ["used-unlikely"]),
    (["--size", "M", "--used", "hood=50 g"], ["unknown-piece"]),
    (["--used", "back=300 g"], ["size-unsaid"]),
    (["--size", "Q"], ["size-not-made"]),
])  # fmt: skip
def test_what_is_wrong_is_told_in_words(tmp_path: Path, options: list[str], names: list[str]) -> None:
    done = command("yarn", JACKET, *options, folder=tmp_path)
    assert done.returncode == 1 and done.stdout == "" and "Traceback" not in done.stderr
    for name in names:
        assert f"{name}: " in done.stderr or f"{name}, size" in done.stderr
    assert done.stderr.splitlines()[-1] == f"{len(names)} problem{'s' if len(names) > 1 else ''}"


def test_balls_of_a_yarn_without_a_ball(tmp_path: Path) -> None:
    done = command("yarn", spec_in(tmp_path, COWL), "--have", "oat=5", folder=tmp_path)
    assert done.returncode == 1 and "--have:1:5: yarn-without-ball" in done.stderr
    assert command("yarn", spec_in(tmp_path, COWL), "--have", "oat=500 g", folder=tmp_path).returncode == 0


def test_yarn_that_nothing_tells_of(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF.replace("weight: 6, ball: {mass: 100 g, length: 58 m}", "weight: 7"))
    assert "no figure" in invoke("yarn", spec).stdout
    done = command("yarn", spec, "--have", "oat=500 g", folder=tmp_path)
    assert done.returncode == 1 and "yarn-unknown: " in done.stderr
