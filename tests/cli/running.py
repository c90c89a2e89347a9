"""Running the command line: in a process of its own, or in this one."""

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from gaugewright.cli.app import app, main

ROOT = Path(__file__).parents[2]

SCARF = """\
gaugewright: 1
pattern: {title: Pier Scarf, workshop: Ferry Lane Workshop}
yarns:
  oat: {colour: "#d9c9a8", weight: 6, ball: {mass: 100 g, length: 58 m}}
fabrics:
  plain: {stitch: hdc, tool: 10 mm, gauge: "9 sts, 7 rows / 10 cm"}
pieces:
  scarf:
    start: {chain: 20 cm}
    sections:
      - even: {length: 150 cm}
"""

COWL = """\
gaugewright: 1
pattern: {title: Sluice Cowl, workshop: Ferry Lane Workshop, date: 2026-02-03}
sizes: {own: {S: {bust: 78 cm, neck: 34 cm}, M: {bust: 86 cm, neck: 38 cm}, L: {bust: 96 cm, neck: 43 cm}}}
yarns:
  oat: {colour: "#d9c9a8"}
fabrics:
  plain:
    stitch: dc
    worked: joined rounds
    tool: 8 mm
    swatch: {stitches: 20, rows: 10, width: 20 cm, height: 20 cm, mass: 30 g, thickness: 6 mm}
pieces:
  cowl:
    start: {ring: body.neck + 20 cm}
    sections:
      - even: {length: 24 cm}
finished:
  around: {measure: finished(cowl.width), of: neck}
"""


def environment(**changes: str) -> dict[str, str]:
    """The variables of this process with the project on the path, and some changed; an empty one is taken out."""
    found = {**os.environ, "PYTHONPATH": str(ROOT / "src"), **changes}
    return {name: value for name, value in found.items() if value}


def command(*arguments: object, folder: Path, **changes: str) -> subprocess.CompletedProcess[str]:
    """The command in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "gaugewright.cli", *map(str, arguments)],
        capture_output=True, text=True, encoding="utf-8", cwd=folder, env=environment(**changes), timeout=120, check=False,
    )


def invoke(*arguments: object) -> Result:
    """The command in this process, whatever it raises let through."""
    return CliRunner().invoke(app, [str(one) for one in arguments], catch_exceptions=False)


def exit_of_main(monkeypatch: pytest.MonkeyPatch, *arguments: object) -> int:
    """The exit code of the whole program, run in this process so that a stage can be replaced."""
    monkeypatch.setattr(sys, "argv", ["gaugewright", *map(str, arguments)])
    with pytest.raises(SystemExit) as left:
        main()
    return int(left.value.code or 0)


def spec_in(folder: Path, text: str, name: str = "spec.yaml") -> Path:
    """A spec file with this text."""
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def files_in(folder: Path) -> list[str]:
    """Everything in a folder and below it, by relative name."""
    return sorted(str(path.relative_to(folder)) for path in folder.rglob("*"))


@contextmanager
def nothing_new(folder: Path) -> Iterator[None]:
    """Nothing may be written, changed or left behind in a folder meanwhile."""
    before = {path: path.stat().st_mtime_ns for path in folder.rglob("*")}
    yield
    assert {path: path.stat().st_mtime_ns for path in folder.rglob("*")} == before
