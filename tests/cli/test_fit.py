"""The command `fit`: what it says, what it publishes and what it keeps to itself, and every way to go wrong."""

import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from advice.test_fit import SMOCK
from cli.running import files_in, invoke, nothing_new, spec_in

HOME = """\
people:
  Ada: {bust: 90 cm, upper_arm: 13 1/2 in, back_waist_length: 0.47 m}
  Bea: {bust: 102 cm}
"""


def files(folder: Path, home: str = HOME) -> tuple[Path, Path]:
    return spec_in(folder, SMOCK), spec_in(folder, home, "home.yaml")


def test_everybody_of_the_household_is_told(tmp_path: Path) -> None:
    spec, home = files(tmp_path)
    with nothing_new(tmp_path):
        done = invoke("fit", spec, "--body", home)
    assert done.exit_code == 0 and "Ada: make M" in done.stdout and "Bea: make L" in done.stdout
    assert "upper arm 38 cm: ease 3.5 cm where 8 cm is intended, tight by 4.5 cm, 4 sts; an own size has 42 cm" in done.stdout
    assert "Back: work 5 rows more in a part without shaping, 57 in all instead of 52" in done.stdout
    assert "the hip was not measured" in done.stdout


def test_one_person_as_json(tmp_path: Path) -> None:
    spec, home = files(tmp_path)
    (found,) = json.loads(invoke("fit", spec, "--body", home, "--person", "Bea", "--json").stdout)
    assert (found["person"], found["size"], found["lead"]["ease"], found["own_mends"]) == ("Bea", "L", pytest.approx(80), [])


def test_an_own_size_holds_no_name(tmp_path: Path) -> None:
    """90 cm and 10 of ease: 50 sts a piece; 34.3 cm and 8 for the sleeve: 42."""
    spec, home = files(tmp_path)
    before = home.read_bytes()
    done = invoke("fit", spec, "--body", home, "--person", "Ada", "--own")
    assert done.exit_code == 0 and files_in(tmp_path) == ["home.yaml", "quay-smock-own-size.pdf", "spec.yaml"]
    words = " ".join(page.extract_text() for page in PdfReader(tmp_path / "quay-smock-own-size.pdf").pages).replace("\u00a0", " ")
    assert "— 50 sts" in words and "— 42 sts" in words and "Ada" not in words
    assert home.read_bytes() == before


def test_a_standard_size_with_own_lengths(tmp_path: Path) -> None:
    """M is 50 sts a piece and 38 for the sleeve, whatever Ada's arm; her back is 47 cm and 10 more: 57 rows in place of 52."""
    spec, home = files(tmp_path)
    assert "--own-lengths publishes M with these lengths" in invoke("fit", spec, "--body", home, "--person", "Ada").stdout
    done = invoke("fit", spec, "--body", home, "--person", "Ada", "--own-lengths")
    assert done.exit_code == 0 and files_in(tmp_path) == ["home.yaml", "quay-smock-m-own-lengths.pdf", "spec.yaml"], done.stderr
    words = " ".join(page.extract_text() for page in PdfReader(tmp_path / "quay-smock-m-own-lengths.pdf").pages).replace("\u00a0", " ")
    assert "— 50 sts" in words and "— 38 sts" in words and "— 42 sts" not in words
    assert "To the end of Row 57" in words and "Row 52" not in words
    assert "Ada" not in words and "M own lengths" in words
    both = invoke("fit", spec, "--body", home, "--person", "Ada", "--own", "--own-lengths")
    assert both.exit_code == 2 and files_in(tmp_path) == ["home.yaml", "quay-smock-m-own-lengths.pdf", "spec.yaml"]


def test_without_own_nothing_of_the_file_is_published(tmp_path: Path) -> None:
    spec, home = files(tmp_path)
    invoke("publish", spec, "--out", tmp_path / "a.pdf")
    invoke("fit", spec, "--body", home)
    invoke("publish", spec, "--out", tmp_path / "b.pdf")
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


@pytest.mark.parametrize(("home", "arguments", "name"), [
    ("people: {}\n", [], "out-of-range"),
    ("people: {Ada: {}}\n", [], "empty-value"),
    ("people: {Ada: ~}\n", [], "empty-value"),
    ("Ada: {bust: 90 cm}\n", [], "unknown-key"),
    ("people: {Ada: {bust: 90}}\n", [], "number-without-unit"),
    ("people: {Ada: {burst: 90 cm}}\n", [], "unknown-measure"),
    ("people: {Ada: {bust: 9 cm}}\n", [], "out-of-range"),
    ("people: {Ada: {bust: -90 cm}}\n", [], "not-positive"),
    ("people: {Ada: {bust: 90 cm}, Ada: {bust: 91 cm}}\n", [], "duplicate-key"),
    ("people: {Ada: {wrist: 16 cm}}\n", [], "nothing-to-fit"),
    ("people: {Ada: {hip: 98 cm}}\n", [], "formula-fault"),
    (HOME, ["--person", "Cora"], "unknown-person"),
    (HOME, ["--own"], "unknown-person"),
    (HOME, ["--own-lengths"], "unknown-person"),
])
def test_every_way_to_go_wrong_is_told(tmp_path: Path, home: str, arguments: list[str], name: str) -> None:
    spec, body = files(tmp_path, home)
    with nothing_new(tmp_path):
        done = invoke("fit", spec, "--body", body, *arguments)
    assert (done.exit_code, done.stdout) == (1, "") and name in done.stderr and "hint: " in done.stderr, done.stderr


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    spec, _ = files(tmp_path)
    done = invoke("fit", spec, "--body", tmp_path / "nowhere.yaml")
    assert done.exit_code == 1 and "file-missing" in done.stderr
