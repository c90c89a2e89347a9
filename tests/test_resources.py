"""Templates are found in the user's folder first, and nowhere outside the folders."""

from pathlib import Path

import pytest

from gaugewright.errors import UserError
from gaugewright.resources import find_template, read_template, template_folders


def test_the_users_folder_wins_and_the_shipped_one_serves_the_rest(tmp_path: Path) -> None:
    (tmp_path / "styles").mkdir()
    own = tmp_path / "styles" / "quiet.toml"
    own.write_text("mine", encoding="utf-8")
    assert find_template("styles/quiet.toml", tmp_path) == own
    assert read_template("styles/quiet.toml", tmp_path) == "mine"
    shipped = find_template("fonts/OFL.txt", tmp_path)
    assert shipped == find_template("fonts/OFL.txt") and tmp_path not in shipped.parents


def test_the_wheel_comes_before_the_checkout() -> None:
    wheel, checkout = template_folders()
    assert wheel.parent.name == "gaugewright" and checkout.parent == wheel.parents[2]
    assert template_folders(Path("mine"))[0] == Path("mine")


@pytest.mark.parametrize("name", ["", "/etc/passwd", "../pyproject.toml", "styles/../../pyproject.toml", "styles\\quiet.toml"])
def test_names_that_leave_the_folders_are_refused(name: str, tmp_path: Path) -> None:
    with pytest.raises(UserError) as found:
        find_template(name, tmp_path)
    assert found.value.name == "missing-template" and repr(name) in found.value.message


def test_a_missing_template_says_where_was_looked(tmp_path: Path) -> None:
    with pytest.raises(UserError) as found:
        find_template("styles/loud.toml", tmp_path)
    assert found.value.name == "missing-template"
    assert "styles/loud.toml" in found.value.message and str(tmp_path) in found.value.message
    assert found.value.hint


def test_a_folder_is_not_a_template(tmp_path: Path) -> None:
    (tmp_path / "terms").mkdir()
    with pytest.raises(UserError):
        find_template("terms", tmp_path)


def test_a_template_must_be_utf_8(tmp_path: Path) -> None:
    (tmp_path / "odd.toml").write_bytes(b"caf\xe9")
    with pytest.raises(UserError) as found:
        read_template("odd.toml", tmp_path)
    assert found.value.name == "missing-template" and "UTF-8" in found.value.message
