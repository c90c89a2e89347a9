"""`publish`: what is written, where, under which name, and what is said about it."""

import os
import re
import stat
from pathlib import Path

import pytest
from pypdf import PdfReader

from cli.running import COWL, SCARF, command, files_in, invoke, nothing_new, spec_in
from gaugewright.pipeline import Edition, publish


def words_of(path: Path) -> str:
    return " ".join(" ".join(page.extract_text() for page in PdfReader(path).pages).split())


def test_the_pdf_lies_beside_the_spec(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF)
    done = command("publish", spec, folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == f"{tmp_path / 'pier-scarf.pdf'}: 1 size, 1 piece\n"
    assert files_in(tmp_path) == ["pier-scarf.pdf", "spec.yaml"]
    assert "Foundation: With Oat, ch 20." in words_of(tmp_path / "pier-scarf.pdf").replace("\u00a0", " ")


def test_a_relative_spec_is_found_from_where_the_command_is_given(tmp_path: Path) -> None:
    (tmp_path / "designs").mkdir()
    spec_in(tmp_path / "designs", SCARF, "scarf.yaml")
    done = command("publish", "designs/scarf.yaml", folder=tmp_path)
    assert done.stdout == f"{Path('designs/pier-scarf.pdf')}: 1 size, 1 piece\n"


@pytest.mark.parametrize(
    ("out", "written"),
    [("new/folder", "new/folder/pier-scarf.pdf"), ("new/one.pdf", "new/one.pdf"), ("ONE.PDF", "ONE.PDF"), (".", "pier-scarf.pdf")],
)
def test_out_is_a_folder_or_a_pdf(tmp_path: Path, out: str, written: str) -> None:
    spec = spec_in(tmp_path, SCARF)
    assert invoke("publish", spec, "--out", tmp_path / out).exit_code == 0
    assert (tmp_path / written).read_bytes().startswith(b"%PDF")


def test_text_and_drawings_lie_beside_the_pdf(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    result = invoke("publish", spec, "--out", tmp_path / "here" / "cowl.pdf", "--text", "--svg")
    names = ["cowl-cowl.svg", "cowl.pdf", "cowl.txt"]
    assert files_in(tmp_path / "here") == names
    assert [line.split(":")[0] for line in result.stdout.splitlines()] == [str(tmp_path / "here" / n) for n in ("cowl.pdf", "cowl.txt", "cowl-cowl.svg")]
    assert (tmp_path / "here/cowl.txt").read_text(encoding="utf-8").startswith("Sluice Cowl\n===")
    assert (tmp_path / "here/cowl-cowl.svg").read_text(encoding="utf-8").lstrip().startswith(("<?xml", "<svg"))


def test_a_sheet_is_a_file_of_its_own_and_only_if_asked_for(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    invoke("publish", spec, "--out", tmp_path / "plain")
    asked = invoke("publish", spec, "--sheet", "--text", "--out", tmp_path / "asked")
    assert files_in(tmp_path / "plain") == ["sluice-cowl.pdf"]
    assert files_in(tmp_path / "asked") == [f"sluice-cowl{end}" for end in ("-test-sheet.pdf", "-test-sheet.txt", ".pdf", ".txt")]
    assert (tmp_path / "plain/sluice-cowl.pdf").read_bytes() == (tmp_path / "asked/sluice-cowl.pdf").read_bytes()
    assert "sluice-cowl-test-sheet.pdf" in asked.stdout
    (sheet,) = PdfReader(tmp_path / "asked/sluice-cowl-test-sheet.pdf").pages
    assert "☐ M" in sheet.extract_text().replace("\u00a0", " ")
    edition = invoke("publish", spec, "--sheet", "--size", "M", "--paper", "letter", "--out", tmp_path / "m")
    assert edition.exit_code == 0 and "sluice-cowl-m-letter-test-sheet.pdf" in files_in(tmp_path / "m")


def test_letter_paper(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF)
    assert invoke("publish", spec, "--paper", "letter").exit_code == 0
    assert invoke("publish", spec).exit_code == 0
    letter, a4 = (PdfReader(tmp_path / f"pier-scarf{end}.pdf").pages[0].mediabox for end in ("-letter", ""))
    assert (float(letter.width), float(letter.height)) == (612, 792)
    assert (float(a4.width), float(a4.height)) == pytest.approx((595.28, 841.89), abs=0.01)


def test_uk_terms(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF)
    assert invoke("publish", spec, "--terms", "uk").exit_code == 0
    words = words_of(tmp_path / "pier-scarf-uk.pdf")
    assert "htr" in words and "Tension" in words
    assert not re.search(r"\bhdc\b|\bGauge\b", words)


@pytest.mark.parametrize(("asked", "name", "sizes"), [("L", "-l", 1), ("S,M", "-s-m", 2), (" M , S,S", "-s-m", 2)])
def test_some_sizes(tmp_path: Path, asked: str, name: str, sizes: int) -> None:
    spec = spec_in(tmp_path, COWL)
    result = invoke("publish", spec, "--size", asked)
    said = f"{sizes} size{'s' if sizes > 1 else ''}, 1 piece"
    assert result.stdout == f"{tmp_path / f'sluice-cowl{name}.pdf'}: {said}\n"


def test_one_size_prints_no_other_sizes_numbers(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    invoke("publish", spec, "--size", "L")
    words = words_of(tmp_path / "sluice-cowl-l.pdf").replace("\u00a0", " ")
    assert "63 cm" in words and not re.search(r"(?<![.\d])5[48] (sts|cm)", words)


def test_a_size_that_is_not_made(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    with nothing_new(tmp_path):
        result = invoke("publish", spec, "--size", "M,XL")
    assert (result.exit_code, result.stdout) == (1, "")
    assert result.stderr == "size-not-made: this pattern has no size XL\n    hint: its sizes are S, M, L\n1 problem\n"


def test_another_gauge_goes_into_a_file_of_its_own(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF)
    invoke("publish", spec)
    before = (tmp_path / "pier-scarf.pdf").read_bytes()
    assert invoke("publish", spec, "--gauge", "8 sts, 6.5 rows / 10 cm").exit_code == 0
    assert (tmp_path / "pier-scarf.pdf").read_bytes() == before
    words = words_of(tmp_path / "pier-scarf-own-gauge.pdf").replace("\u00a0", " ")
    assert "8 sts, 6.5 rows / 10 cm" in words and "With Oat, ch 18." in words


@pytest.mark.parametrize(
    ("gauge", "name"),
    [("8 sts", "gauge-text"), ("8 sts / 10 cm", "gauge-without-rows"), ("7 rows / 10 cm", "gauge-without-stitches"), ("0 sts, 7 rows / 10 cm", "not-positive"), ("8 sts, 7 rows / 10", "gauge-text")],
)
def test_a_gauge_that_cannot_be_read(tmp_path: Path, gauge: str, name: str) -> None:
    spec = spec_in(tmp_path, SCARF)
    with nothing_new(tmp_path):
        result = invoke("publish", spec, "--gauge", gauge)
    assert (result.exit_code, result.stdout) == (1, "")
    assert result.stderr.startswith(f"{name}: --gauge {gauge!r}: ") and "\n    hint: " in result.stderr


def test_every_edition_has_a_name_of_its_own(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    for options in ([], ["--size", "S"], ["--size", "S,L"], ["--terms", "uk"], ["--gauge", "9 sts, 5 rows / 10 cm"], ["--paper", "letter"], ["--terms", "us"]):
        assert invoke("publish", spec, *options).exit_code == 0
    # US terms are the spec's own: that is the same edition.
    assert len(files_in(tmp_path)) == 1 + 6


def test_warnings_are_told_and_the_pattern_is_written(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL.replace("of: neck", "of: upper_arm").replace("neck: 34 cm", "neck: 34 cm, upper_arm: 51.5 cm"))
    result = invoke("publish", spec)
    assert result.exit_code == 0 and (tmp_path / "sluice-cowl.pdf").exists()
    assert f"{spec}:18:3: warning upper-arm-tight, size S: " in result.stderr and result.stderr.endswith("1 problem\n")


@pytest.mark.parametrize(("extra", "name"), [("--text", "cowl.txt"), ("--svg", "cowl-cowl.svg")])
def test_where_one_file_cannot_be_written_none_is(tmp_path: Path, extra: str, name: str) -> None:
    spec = spec_in(tmp_path, COWL)
    (tmp_path / name).mkdir()
    with nothing_new(tmp_path / name):
        result = invoke("publish", spec, "--out", tmp_path / "cowl.pdf", extra)
    assert result.exit_code == 1 and result.stderr.startswith(f"output-unwritable: {tmp_path / name} ")
    assert files_in(tmp_path) == sorted([name, "spec.yaml"])


def test_the_spec_is_never_written_over(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF, "pier-scarf.txt")
    with nothing_new(tmp_path):
        result = invoke("publish", spec, "--text")
    assert result.exit_code == 1 and result.stderr.startswith(f"output-unwritable: {spec} ")


@pytest.mark.skipif(os.name != "posix", reason="there is no umask elsewhere")
@pytest.mark.parametrize("mask", [0o022, 0o077, 0o002])
def test_the_users_own_habit_decides_who_may_read_it(tmp_path: Path, mask: int) -> None:
    spec = spec_in(tmp_path, SCARF)
    before = os.umask(mask)
    try:
        assert invoke("publish", spec).exit_code == 0
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "pier-scarf.pdf").stat().st_mode) == 0o666 & ~mask


def test_pieces_with_one_title_have_a_drawing_each(tmp_path: Path) -> None:
    piece = SCARF[SCARF.index("  scarf:") :].replace("scarf:", "scarf:\n    title: Pier Scarf")
    spec = spec_in(tmp_path, SCARF[: SCARF.index("  scarf:")] + piece + piece.replace("scarf:", "cover:") + piece.replace("scarf:", "COVER:"))
    assert invoke("publish", spec, "--svg").exit_code == 0
    drawings = [name for name in files_in(tmp_path) if name.endswith(".svg")]
    assert len(drawings) == 3


def test_a_title_in_other_letters_makes_a_file_name(tmp_path: Path) -> None:
    for title, name in (("Écharpe d'été", "echarpe-d-ete"), ("!?", "pattern"), ("Aa " * 1000, ("aa-" * 27)[:80])):
        spec = spec_in(tmp_path, SCARF.replace("Pier Scarf", f'"{title}"'))
        assert invoke("publish", spec).exit_code == 0
        assert (tmp_path / f"{name}.pdf").exists()


def test_the_pipeline_publishes_the_same_bytes(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    invoke("publish", spec, "--size", "M", "--paper", "letter")
    publish(spec, tmp_path / "direct.pdf", "letter", Edition(("M",)))
    assert (tmp_path / "direct.pdf").read_bytes() == (tmp_path / "sluice-cowl-m-letter.pdf").read_bytes()
