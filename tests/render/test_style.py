"""A style is checked before anything is set in it."""

from pathlib import Path

import pytest

from gaugewright.errors import UserError
from gaugewright.render.pdf import load_style
from gaugewright.render.pdf.style import TEXTS, contrast_to_white
from gaugewright.resources import find_template

QUIET = find_template("styles/quiet.toml").read_text(encoding="utf-8")


def own_style(folder: Path, old: str, new: str) -> Path:
    assert old in QUIET
    (folder / "styles").mkdir()
    (folder / "styles" / "quiet.toml").write_text(QUIET.replace(old, new, 1), encoding="utf-8")
    return folder


def test_the_shipped_style_is_for_reading() -> None:
    style = load_style()
    assert style.text("body").size >= 10 and style.text("step").size >= 10
    assert 1.35 <= style.text("body").leading / style.text("body").size <= 1.6
    for kind in TEXTS:
        assert contrast_to_white(style.text(kind).colour) >= 4.5
        assert style.text(kind).size >= 8
    assert style.page.side >= 21 * 72 / 25.4 - 0.01, "prints on A4 and Letter (RFC 2346)"
    assert style.table.least >= 7.5 and style.table.floor >= 8


def test_an_own_style_wins(tmp_path: Path) -> None:
    style = load_style(own=own_style(tmp_path, "side = 21.0", "side = 25.4"))
    assert style.page.side == pytest.approx(72)
    assert style.text("body") == load_style().text("body")


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('ink = "#1c1c1c"', 'ink = "#999999"', "too pale"),
        ('ink = "#1c1c1c"', 'ink = "black"', "#1c1c1c"),
        ("side = 21.0", "", "lacks 'side'"),
        ("side = 21.0", "side = 21.0\nsides = 2", "unknown key 'sides'"),
        ("side = 21.0", 'side = "21 mm"', "page.side must be a number"),
        ("side = 21.0", "side = -1", "page.side must be a number"),
        ('face = "bold"', 'face = "black"', "text.title.face"),
        ('rule = "left"', 'rule = "box"', "text.caution.rule"),
        ('colour = "accent"', 'colour = "pink"', "text.title.colour"),
        ("leading = 31.0", "leading = 20.0", "text.title"),
        ("[text.body]", "[text.bodies]", "unknown key 'bodies'"),
        ("[colours]", "[colours", "not TOML"),
        ('regular = "fonts/SourceSans3-Regular.ttf"', "regular = 3", "faces.regular"),
    ],
)
def test_a_bad_style_is_a_plain_problem(tmp_path: Path, old: str, new: str, words: str) -> None:
    with pytest.raises(UserError) as found:
        load_style(own=own_style(tmp_path, old, new))
    assert found.value.name == "bad-style"
    assert "styles/quiet.toml" in found.value.message and words in found.value.message


def test_a_face_that_is_not_there_is_a_missing_template(tmp_path: Path) -> None:
    with pytest.raises(UserError) as found:
        load_style(own=own_style(tmp_path, "SourceSans3-Italic", "SourceSans3-Slanted"))
    assert found.value.name == "missing-template"


def test_a_face_that_is_no_font_is_a_plain_problem(tmp_path: Path) -> None:
    from gaugewright.render.pdf.faces import load_faces

    (tmp_path / "fonts").mkdir()
    (tmp_path / "fonts" / "SourceSans3-Bold.ttf").write_text("not a font")
    with pytest.raises(UserError) as found:
        load_faces(load_style(own=tmp_path))
    assert found.value.name == "bad-style" and "SourceSans3-Bold.ttf" in found.value.message


def test_a_face_is_read_only_where_a_text_is_set_in_it(tmp_path: Path) -> None:
    from gaugewright.render.pdf.faces import load_faces

    assert set(load_faces(load_style()).fonts) == {"regular", "semibold", "bold"}
    slanted = load_style(own=own_style(tmp_path, '[text.note]\nface = "regular"', '[text.note]\nface = "italic"'))
    assert set(load_faces(slanted).fonts) == {"regular", "italic", "semibold", "bold"}


def test_there_is_no_such_style() -> None:
    with pytest.raises(UserError) as found:
        load_style("loud")
    assert (found.value.name, "loud" in found.value.message) == ("missing-template", True)
