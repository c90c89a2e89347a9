"""Files come whole or not at all: what an interruption or a full disk leaves behind."""

import os
from collections.abc import Callable
from pathlib import Path
from typing import NoReturn

import pytest

from cli.running import COWL, SCARF, command, exit_of_main, files_in, invoke, spec_in
from gaugewright import output
from gaugewright.errors import UserError
from gaugewright.output import slug, write_together, write_whole


def interrupted(*_: object) -> NoReturn:
    raise KeyboardInterrupt


def at_call(number: int, real: Callable[..., object]) -> Callable[..., object]:
    """The real function, interrupted at its n-th call."""
    calls = iter(range(1, 1000))

    def counted(*arguments: object) -> object:
        if next(calls) == number:
            raise KeyboardInterrupt
        return real(*arguments)

    return counted


@pytest.mark.parametrize("call", ["fsync", "replace"])
def test_an_interrupted_publish_leaves_the_older_pattern(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str) -> None:
    spec = spec_in(tmp_path, SCARF)
    assert invoke("publish", spec, "--text").exit_code == 0
    before = {name: (tmp_path / name).read_bytes() for name in files_in(tmp_path)}
    spec.write_text(SCARF.replace("20 cm", "30 cm"), encoding="utf-8")
    before["spec.yaml"] = spec.read_bytes()
    monkeypatch.setattr(os, call, interrupted)
    assert exit_of_main(monkeypatch, "publish", spec, "--text") not in (0, 70)
    assert {name: (tmp_path / name).read_bytes() for name in files_in(tmp_path)} == before


@pytest.mark.parametrize("number", [1, 2, 3])
def test_an_interruption_while_several_files_are_written_leaves_all_older_ones(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int) -> None:
    spec = spec_in(tmp_path, COWL)
    assert invoke("publish", spec, "--text", "--svg").exit_code == 0
    before = {name: (tmp_path / name).read_bytes() for name in files_in(tmp_path)}
    monkeypatch.setattr(os, "fsync", at_call(number, os.fsync))
    assert exit_of_main(monkeypatch, "publish", spec, "--text", "--svg", "--out", str(tmp_path)) not in (0, 70)
    assert {name: (tmp_path / name).read_bytes() for name in files_in(tmp_path)} == before


def test_a_killed_publish_leaves_the_older_pattern(tmp_path: Path) -> None:
    """Killed outright nothing can be tidied: the older file stands, and what is left is hidden and named after it."""
    spec = spec_in(tmp_path, SCARF)
    assert invoke("publish", spec).exit_code == 0
    older = (tmp_path / "pier-scarf.pdf").read_bytes()
    spec.write_text(SCARF.replace("20 cm", "30 cm"), encoding="utf-8")
    (tmp_path / "sitecustomize.py").write_text("import os\nos.replace = lambda *_: os.kill(os.getpid(), 9)\n", encoding="utf-8")
    path = f"{tmp_path}{os.pathsep}{Path(output.__file__).parents[1]}"
    done = command("publish", spec, folder=tmp_path, PYTHONPATH=path, PYTHONDONTWRITEBYTECODE="1")
    assert done.returncode == -9
    assert (tmp_path / "pier-scarf.pdf").read_bytes() == older
    left = set(files_in(tmp_path)) - {"pier-scarf.pdf", "spec.yaml", "sitecustomize.py"}
    assert len(left) == 1 and left.pop().startswith(".pier-scarf.pdf.")
    (tmp_path / "sitecustomize.py").unlink()
    assert command("publish", spec, folder=tmp_path).returncode == 0
    assert (tmp_path / "pier-scarf.pdf").read_bytes() != older


@pytest.mark.parametrize("call", ["fsync", "replace"])
@pytest.mark.parametrize("fault", [KeyboardInterrupt(), MemoryError(), OSError(28, "No space left on device")])
def test_no_temporary_file_is_left(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str, fault: BaseException) -> None:
    (tmp_path / "a.pdf").write_bytes(b"old")

    def broken(*_: object) -> NoReturn:
        raise fault

    monkeypatch.setattr(os, call, broken)
    with pytest.raises(UserError if isinstance(fault, OSError) else type(fault)):
        write_whole(tmp_path / "a.pdf", b"new")
    assert files_in(tmp_path) == ["a.pdf"]
    assert (tmp_path / "a.pdf").read_bytes() == b"old"


def test_where_one_cannot_be_written_all_stay(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"old")
    (tmp_path / "b").mkdir()
    with pytest.raises(UserError) as caught:
        write_together({tmp_path / "a": b"new", tmp_path / "b": b"new"})
    assert caught.value.name == "output-unwritable" and str(tmp_path / "b") in caught.value.message
    assert (tmp_path / "a").read_bytes() == b"old" and files_in(tmp_path) == ["a", "b"]


def test_folders_are_made(tmp_path: Path) -> None:
    write_together({tmp_path / "x/y/a": b"1", tmp_path / "z/b": b"2"})
    assert ((tmp_path / "x/y/a").read_bytes(), (tmp_path / "z/b").read_bytes()) == (b"1", b"2")


def test_two_names_alike_in_their_first_letters(tmp_path: Path) -> None:
    names = ["n" * 200 + end for end in ("a", "b", "c")]
    write_together({tmp_path / name: name.encode() for name in names})
    assert files_in(tmp_path) == names
    assert [(tmp_path / name).read_bytes() for name in names] == [name.encode() for name in names]


@pytest.mark.parametrize("text", ["../../etc/passwd", "a/b\\c", "...", "", "\u202e", "con: a", "a\nb", "x" * 5000, "夏"])
def test_a_slug_is_a_plain_file_name(text: str) -> None:
    name = slug(text)
    assert name and len(name) <= 80 and set(name) <= set("abcdefghijklmnopqrstuvwxyz0123456789-")
    assert not name.startswith("-") and not name.endswith("-")
