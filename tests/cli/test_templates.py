"""`--templates`: a folder of one's own that is searched first, and what is said where it doesn't serve."""

from pathlib import Path

import pytest

from cli.running import ROOT, SCARF, invoke, nothing_new, spec_in

PHRASES = ROOT / "templates/phrases/en.toml"
STYLE = ROOT / "templates/styles/quiet.toml"


def own_folder(tmp_path: Path, name: str, text: str) -> Path:
    path = tmp_path / "own" / name
    path.parent.mkdir(parents=True)
    path.write_text(text, encoding="utf-8")
    return tmp_path / "own"


def text_of(tmp_path: Path) -> str:
    return (tmp_path / "pier-scarf.txt").read_text(encoding="utf-8")


def test_an_empty_folder_changes_nothing(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF)
    (tmp_path / "own").mkdir()
    invoke("publish", spec, "--out", tmp_path / "a.pdf")
    invoke("publish", spec, "--out", tmp_path / "b.pdf", "--templates", tmp_path / "own")
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


def test_own_phrases_win(tmp_path: Path) -> None:
    phrases = PHRASES.read_text(encoding="utf-8").replace('make-one = "Make 1."', 'make-one = "Work one of these."')
    own = own_folder(tmp_path, "phrases/en.toml", phrases)
    assert invoke("publish", spec_in(tmp_path, SCARF), "--text", "--templates", own).exit_code == 0
    assert "Work one of these. Worked in rows" in text_of(tmp_path)


def test_a_language_of_ones_own(tmp_path: Path) -> None:
    phrases = PHRASES.read_text(encoding="utf-8").replace('language = "en"', 'language = "sco"').replace('"Make 1."', '"Mak ane."')
    own = own_folder(tmp_path, "phrases/sco.toml", phrases)
    spec = spec_in(tmp_path, SCARF.replace("Workshop}", "Workshop, language: sco}"))
    with nothing_new(tmp_path):
        alone = invoke("publish", spec)
    assert alone.exit_code == 1 and alone.stderr.startswith("missing-template: there is no template 'phrases/sco.toml'")
    assert invoke("publish", spec, "--text", "--templates", own).exit_code == 0
    assert "Mak ane." in text_of(tmp_path)


def test_a_tag_with_a_region_takes_its_languages_book(tmp_path: Path) -> None:
    assert invoke("publish", spec_in(tmp_path, SCARF.replace("Workshop}", "Workshop, language: en-GB}")), "--text").exit_code == 0
    assert "Make 1." in text_of(tmp_path)


def test_every_fault_of_a_phrase_book_is_told(tmp_path: Path) -> None:
    text = PHRASES.read_text(encoding="utf-8").replace('make-one = "Make 1."', 'make-1 = "Make 1."').replace("{ordinal}", "{nth}")
    own = own_folder(tmp_path, "phrases/en.toml", text)
    told = invoke("publish", spec_in(tmp_path, SCARF), "--templates", own).stderr
    assert told.endswith("\n5 problems\n")
    assert f"bad-template: {own / 'phrases/en.toml'}: [sentences] has no make-one\n" in told
    assert "make-1 in [sentences] is no phrase that is used" in told and "nothing fills {nth} of first-row in [sentences]" in told


@pytest.mark.parametrize(
    ("change", "name"),
    [
        (("[sentences]", "[sentences"), "bad-template"),
        (("[sentences]", "[phrases]"), "bad-template"),
        (('make-one = "Make 1."\n', ""), "bad-template"),
        (('make-one = "Make 1."', 'make-one = "Make {many}."'), "bad-template"),
        (('make-one = "Make 1."', 'make-one = "Make {1."'), "bad-template"),
        (('make-one = "Make 1."', "make-one = 1"), "bad-template"),
        (('make-many = "Make {make}', 'make-many = "Make {make!r}'), "bad-template"),
        (('make-many = "Make {make}', 'make-many = "Make {make:>3}'), "bad-template"),
        (('make-one = "Make 1."', 'make-one = "Make {}."'), "bad-template"),
        (('notions-line = "{markers} stitch', 'notions-line = "{marker} stitch'), "bad-template"),
        (('make-one = "Make 1."', 'make-one = "Make 1 \U0001f9f6."'), "missing-glyph"),
        (('assembly-heading = "Making up"\n', ""), "bad-template"),
        (("[words]", '[words]\nstray = "Stray"'), "bad-template"),
    ],
)
def test_a_broken_phrase_book(tmp_path: Path, change: tuple[str, str], name: str) -> None:
    text = PHRASES.read_text(encoding="utf-8")
    assert change[0] in text
    own = own_folder(tmp_path, "phrases/en.toml", text.replace(*change, 1))
    spec = spec_in(tmp_path, SCARF)
    with nothing_new(tmp_path):
        result = invoke("publish", spec, "--templates", own)
    assert (result.exit_code, result.stdout) == (1, "")
    assert result.stderr.startswith(f"{name}: ") and "\n    hint: " in result.stderr


@pytest.mark.parametrize("raw", [b"\xff\xfe\x00a", b"", b"\x00" * 40])
def test_a_phrase_book_that_is_no_text(tmp_path: Path, raw: bytes) -> None:
    own = own_folder(tmp_path, "phrases/en.toml", "")
    (own / "phrases/en.toml").write_bytes(raw)
    spec = spec_in(tmp_path, SCARF)
    with nothing_new(tmp_path):
        result = invoke("publish", spec, "--templates", own)
    assert result.exit_code == 1 and result.stderr.startswith(("bad-template: ", "missing-template: "))


def test_own_style_wins(tmp_path: Path) -> None:
    own = own_folder(tmp_path, "styles/quiet.toml", STYLE.read_text(encoding="utf-8").replace('accent = "#24504a"', 'accent = "#502424"'))
    spec = spec_in(tmp_path, SCARF)
    invoke("publish", spec, "--out", tmp_path / "a.pdf")
    assert invoke("publish", spec, "--out", tmp_path / "b.pdf", "--templates", own).exit_code == 0
    assert (tmp_path / "a.pdf").read_bytes() != (tmp_path / "b.pdf").read_bytes()


@pytest.mark.parametrize(
    "change",
    [
        ("[colours]", "[colours"),
        ('accent = "#24504a"', 'accent = "#dddddd"'),
        ("side = 21.0", "side = -1"),
        ("side = 21.0", 'side = "wide"'),
        ("side = 21.0", "margin = 21.0"),
        ("fonts/SourceSans3-Bold.ttf", "fonts/None.ttf"),
        ("fonts/SourceSans3-Bold.ttf", "../../fonts/SourceSans3-Bold.ttf"),
        ("fonts/SourceSans3-Bold.ttf", "fonts/OFL.txt"),
    ],
)
def test_a_broken_style(tmp_path: Path, change: tuple[str, str]) -> None:
    text = STYLE.read_text(encoding="utf-8")
    assert change[0] in text
    own = own_folder(tmp_path, "styles/quiet.toml", text.replace(*change))
    spec = spec_in(tmp_path, SCARF)
    with nothing_new(tmp_path):
        result = invoke("publish", spec, "--templates", own)
    assert (result.exit_code, result.stdout) == (1, "")
    assert result.stderr.startswith(("bad-style: ", "missing-template: ")) and "\n    hint: " in result.stderr


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF)
    with nothing_new(tmp_path):
        for folder in (tmp_path / "none", spec):
            result = invoke("publish", spec, "--templates", folder)
            assert result.exit_code == 1 and result.stderr.startswith(f"missing-template: there is no folder {folder}")


def test_no_templates_at_all(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("gaugewright.resources.PACKAGE", tmp_path / "a" / "b" / "c")
    spec = spec_in(tmp_path, SCARF)
    with nothing_new(tmp_path):
        result = invoke("publish", spec)
    assert result.exit_code == 1 and result.stderr.startswith("missing-template: there is no template")
