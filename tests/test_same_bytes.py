"""The same spec gives the same bytes, on whatever machine, day and folder it is published."""

import hashlib
import os
import subprocess
import sys
from pathlib import Path

import pytest

from cli.running import COWL, ROOT, SCARF, environment, spec_in

BANDED = COWL.replace("yarns:\n", 'yarns:\n  kelp: {colour: "#3f5d4e", like: oat}\n').replace(
    "    start: {ring", "    colours: {bands: {to: total, heights: [40 %, rest]}, order: [kelp, oat]}\n    total: 24 cm\n    start: {ring"
)
SPECS = {"scarf": SCARF, "cowl": BANDED}

RUN = """
import os, sys, time, datetime
later, mask = float(sys.argv.pop(1)), int(sys.argv.pop(1), 8)
os.umask(mask)
real = time.time

class Later(datetime.datetime):
    @classmethod
    def now(cls, tz=None):
        return cls.fromtimestamp(real() + later, tz)
    @classmethod
    def utcnow(cls):
        return cls.fromtimestamp(real() + later)

time.time = lambda: real() + later
clocks = time.gmtime, time.localtime
time.gmtime = lambda seconds=None: clocks[0](time.time() if seconds is None else seconds)
time.localtime = lambda seconds=None: clocks[1](time.time() if seconds is None else seconds)
datetime.datetime = Later
assert abs(time.time() - real() - later) < 5 and time.gmtime().tm_year == datetime.datetime.now().year
from gaugewright.cli import main
main()
"""

PLACES: tuple[tuple[str, str, str, dict[str, str]], ...] = (
    # How much later it is there (seconds), the umask, the folder worked in, and the variables.
    ("0", "022", ".", {"PYTHONHASHSEED": "0", "TZ": "UTC", "LC_ALL": "C", "SOURCE_DATE_EPOCH": ""}),
    ("400000000", "077", "elsewhere", {"PYTHONHASHSEED": "1234", "TZ": "Pacific/Auckland", "LC_ALL": "C.UTF-8", "SOURCE_DATE_EPOCH": "1000000000"}),
    ("86000", "002", "elsewhere", {"PYTHONHASHSEED": "99", "TZ": "America/Bogota", "LC_ALL": "tr_TR.UTF-8", "LANG": "de_DE.UTF-8", "SOURCE_DATE_EPOCH": "", "PYTHONOPTIMIZE": "1"}),
)  # fmt: skip


def published(folder: Path, text: str, later: str, mask: str, where: str, variables: dict[str, str]) -> dict[str, str]:
    """A digest of every file that one run writes."""
    folder.mkdir()
    (folder / "elsewhere").mkdir()
    out = folder / "out"
    spec_in(folder, text)
    spec = os.path.relpath(folder / "spec.yaml", folder / where)
    done = subprocess.run(
        [sys.executable, "-c", RUN, later, mask, "publish", spec, "--out", str(out), "--text", "--svg"],
        capture_output=True, text=True, encoding="utf-8", cwd=folder / where, env=environment(**variables), check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    return {path.name: hashlib.sha256(path.read_bytes()).hexdigest() for path in out.iterdir()}


@pytest.mark.parametrize("name", SPECS)
def test_the_same_bytes_everywhere(tmp_path: Path, name: str) -> None:
    runs = [published(tmp_path / str(number), SPECS[name], *place) for number, place in enumerate(PLACES)]
    assert {path.rsplit(".")[-1] for path in runs[0]} == {"pdf", "txt", "svg"}
    assert runs[0] == runs[1] == runs[2]


def test_another_spec_gives_other_bytes(tmp_path: Path) -> None:
    one = published(tmp_path / "a", SCARF, *PLACES[0])
    two = published(tmp_path / "b", SCARF.replace("150 cm", "152 cm"), *PLACES[0])
    assert one.keys() == two.keys() and all(one[name] != two[name] for name in one)


def test_the_sample_twice_in_unlike_places(tmp_path: Path) -> None:
    sample = (ROOT / "samples/saltmarsh-jacket/spec.yaml").read_text(encoding="utf-8")
    assert published(tmp_path / "a", sample, *PLACES[0]) == published(tmp_path / "b", sample, *PLACES[1])
