"""What is wrong with a file is told in plain words at its place, nothing is written, and the hint works."""

import os
import re
import subprocess
import sys
import time
from pathlib import Path

import pytest

from cli.running import COWL, ROOT, SCARF, command, environment, files_in, invoke, nothing_new, spec_in
from gaugewright.problem_names import PROBLEM_NAMES

MADE = "yarns:"
"""Where sizes are put into the scarf: before its yarns."""

WRONG: tuple[tuple[str, str, str, str, str], ...] = (
    # What is written instead of what, the problem's name, the words at its place, and the hint applied.
    ("weight: 6", "wieght: 6", "unknown-key", "wieght", "weight: 6"),
    ("    start: {chain: 20 cm}\n", "", "missing-key", "scarf:", "    start: {chain: 20 cm}\n"),
    ("title: Pier Scarf, ", "", "missing-key", "pattern:", "title: Saltmarsh Jacket, "),
    ("gaugewright: 1\n", "", "missing-key", "pattern:", "gaugewright: 1\n"),
    ("gaugewright: 1", "gaugewright: 2", "unknown-word", "2", "gaugewright: 1"),
    ("20 cm", "20 kg", "formula", "20 kg", "20 cm"),
    ("20 cm", "20 cmm", "formula", "cmm", "20 mm"),
    ("20 cm", "20", "number-without-unit", "20", "20 cm"),
    ("20 cm", "20,5 cm", "decimal-comma", "20,5", "20.5 cm"),
    ("20 cm", "20 cm / 0", "formula-fault", "/ 0", "20 cm / 2"),
    ("20 cm", "20 cm - 30 cm", "multiple-does-not-fit", "20 cm - 30", "20 cm - 18 cm"),
    ("9 sts", "0 sts", "not-positive", "0 sts", "8 sts"),
    ("9 sts", "-9 sts", "not-positive", "-9 sts", "8 sts"),
    ("9 sts, 7 rows", "9 sts", "gauge-without-rows", "9 sts", "9 sts, 7 rows"),
    ("9 sts, 7 rows", "7 rows", "gauge-without-stitches", "7 rows", "8 sts, 7 rows"),
    ("7 rows /", "0 rows /", "not-positive", "0 rows", "8 rows /"),
    ("/ 10 cm", "/ 0 cm", "not-positive", " 0 cm", "/ 10 cm"),
    ('"9 sts, 7 rows / 10 cm"', "9 sts, 7 rows / 10 cm", "gauge-text", "9 sts", '"9 sts, 7 rows / 10 cm"'),
    ('"#d9c9a8"', "#d9c9a8", "yaml-syntax", "#d9c9a8", '"#d9c9a8"'),
    ('"#d9c9a8"', '"oatmeal"', "colour-text", '"oatmeal"', '"#d9c9a8"'),
    (MADE, "sizes: {table: women, make: [S, M, S]}\nyarns:", "duplicate-size", "S]", "sizes: {table: women, make: [S, M]}\nyarns:"),
    (MADE, "sizes: {table: women, make: [S, 9X]}\nyarns:", "unknown-size", "9X", "sizes: {table: women, make: [S, 5X]}\nyarns:"),
    (MADE, "sizes: {make: [S]}\nyarns:", "unknown-size", "S]", "sizes: {make: [S], own: {S: {bust: 90 cm}}}\nyarns:"),
    (MADE, "sizes: {table: women, make: [S, M], ease: {bust: [3 cm]}}\nyarns:", "ease-list", "[3 cm]", "sizes: {table: women, make: [S, M], ease: {bust: [3 cm, 4 cm]}}\nyarns:"),
    (MADE, "lengths: {a: b + 1 cm, b: a + 1 cm}\nyarns:", "formula-cycle", "b + 1", "lengths: {a: 20 cm, b: a + 1 cm}\nyarns:"),
    (MADE, "lengths: {width: 20 cm, b: widht}\nyarns:", "unknown-name", "widht", "lengths: {width: 20 cm, b: width}\nyarns:"),
    ("length: 150 cm", "to: shoulder", "unknown-name", "shoulder", "to: 150 cm"),
    ("length: 150 cm", "length: 0 cm", "too-short", "even:", "length: 2 cm"),
    ("length: 150 cm", "length: 150 km", "too-many-rows", "even:", "length: 150 cm"),
    ("length: 150 cm", "length: 150 cm, rows: 20", "two-extents", "20}", "length: 150 cm"),
    ("hdc", "hcd", "unknown-word", "hcd", "hdc"),
    ("start: {chain: 20 cm}", "fabric: plian\n    start: {chain: 20 cm}", "unknown-fabric", "plian", "fabric: plain\n    start: {chain: 20 cm}"),
    ("tool: 10 mm", "tool: 10 mm, multiple: {of: 48}", "multiple-does-not-fit", "20 cm", "tool: 10 mm, multiple: {of: 6}"),
    ("tool: 10 mm", "tool: 10 mm, multiple: {of: 48, plus: 2}", "multiple-does-not-fit", "20 cm", "tool: 10 mm, multiple: {of: 8, plus: 2}"),
    ("tool: 10 mm", "tool: 10 mm, minimum: 30", "multiple-does-not-fit", "20 cm", "tool: 10 mm, minimum: 18"),
    ("tool: 10 mm", "tool: 10 mm, multiple: {of: 4, plus: 1}, parity: even", "count-impossible", "20 cm", "tool: 10 mm, multiple: {of: 4, plus: 2}, parity: even"),
    ("even: {length: 150 cm}", "taper: {length: 5 cm, target: 80 cm}", "taper-too-steep", "taper:", "taper: {rows: 10, target: 80 cm}"),
    ("even: {length: 150 cm}", "taper: {rows: 2, target: 40 cm}", "taper-too-steep", "taper:", "taper: {rows: 4, target: 40 cm}"),
    ("even: {length: 150 cm}", "taper: {length: 5 cm}", "taper-understated", "{length: 5 cm}", "taper: {length: 5 cm, target: 24 cm}"),
    ("even: {length: 150 cm}", "taper: {rows: 1, each: 2}", "nothing-to-shape", "taper:", "taper: {rows: 2, each: 2}"),
    ("150 cm}", "150 cm}\n      - shoulders: {neck: 30 cm}", "neck-too-wide", "shoulders:", "150 cm}\n      - shoulders: {neck: 17.7 cm}"),
    ("150 cm}", "150 cm}\n      - even: {length: rest}\n    total: 40 cm", "no-room", "even: {length: rest}", "150 cm}\n      - even: {length: rest}\n    total: 160 cm"),
    ("150 cm}", "150 cm}\n    edges: {both: [side]}\nseams:\n  - {join: scarf.side, to: hood.side}", "unknown-piece", "hood.side", "150 cm}\n    edges: {both: [side]}\nseams:\n  - {join: scarf.side, to: scarf.side}"),
    ("150 cm}", "150 cm}\n    edges: {both: [side]}\nseams:\n  - {join: scarf.side, to: scarf.sied}", "unknown-edge", "sied", "150 cm}\n    edges: {both: [side]}\nseams:\n  - {join: scarf.side, to: scarf.side}"),
    ("weight: 6", "weight: 6, weight: 6", "duplicate-key", "weight: 6, ball", "weight: 6"),
    ("weight: 6", "weight: 9", "out-of-range", "9", "weight: 7"),
    ("workshop: Ferry", "date: 2026-02-30, workshop: Ferry", "date-text", "2026-02-30", "date: 2026-11-25, workshop: Ferry"),
)  # fmt: skip


def told(stderr: str, spec: Path) -> list[tuple[str, int, int]]:
    """The names of the problems and their places; each has all the parts it should have."""
    found = re.findall(rf"^{re.escape(str(spec))}:(\d+):(\d+): ([a-z-]+)(?:, size [^:]+)?: \S", stderr, re.MULTILINE)
    number = len(found)
    assert stderr.endswith(f"\n{number} problem{'' if number == 1 else 's'}\n"), stderr
    assert stderr.count("\n    hint: ") == number
    assert "Traceback" not in stderr
    return [(name, int(line), int(column)) for line, column, name in found]


@pytest.mark.parametrize(("right", "wrong", "name", "place", "applied"), WRONG, ids=[f"{case[2]}-{number}" for number, case in enumerate(WRONG)])
def test_what_is_wrong_is_told_and_the_hint_works(tmp_path: Path, right: str, wrong: str, name: str, place: str, applied: str) -> None:
    assert SCARF.count(right) == 1
    spec = spec_in(tmp_path, SCARF.replace(right, wrong))
    with nothing_new(tmp_path):
        result = invoke("publish", spec, "--text", "--svg")
    assert (result.exit_code, result.stdout) == (1, "")
    [(first, line, column)] = told(result.stderr, spec)
    assert first == name and name in PROBLEM_NAMES
    assert SCARF.replace(right, wrong).splitlines()[line - 1][column - 1 :].startswith(place.rstrip("\n"))

    spec.write_text(SCARF.replace(right, applied), encoding="utf-8")
    followed = invoke("publish", spec)
    assert followed.exit_code == 0, followed.stderr
    assert any(name.endswith(".pdf") for name in files_in(tmp_path))


def test_all_problems_are_told_at_once(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF.replace("weight: 6", "wieght: 6").replace("hdc", "hcd").replace("20 cm", "widht").replace("150 cm", "1,5 m"))
    names = [name for name, _, _ in told(invoke("publish", spec).stderr, spec)]
    assert names == ["unknown-key", "unknown-word", "unknown-name", "decimal-comma"]


def test_a_problem_of_some_sizes_names_them(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL.replace("body.neck + 20 cm", "body.neck - 39 cm"))
    result = invoke("publish", spec)
    assert result.exit_code == 1
    assert {name for name, _, _ in told(result.stderr, spec)} == {"multiple-does-not-fit"}
    assert ", size S, M: " in result.stderr


def alias_bomb() -> bytes:
    lines = ['a0: &a0 "lol"'] + [f"a{i}: &a{i} [{', '.join([f'*a{i - 1}'] * 10)}]" for i in range(1, 12)]
    return "\n".join(lines).encode()


FILES: dict[str, tuple[bytes, tuple[str, ...]]] = {
    "empty": (b"", ("file-empty",)),
    "remarks only": (b"# a hat\n", ("file-empty",)),
    "a list": (b"- a\n- b\n", ("yaml-not-keys",)),
    "plain text": (b"a scarf, please", ("yaml-not-keys",)),
    "zeros": (bytes(4000), ("file-not-text",)),
    "random bytes": (bytes(range(256)) * 40, ("file-not-text",)),
    "a PDF": (b"%PDF-1.4\n%\xe2\xe3\xcf\xd3\n1 0 obj", ("file-not-text",)),
    "other coding": (SCARF.replace("Pier", "Pièr").encode("latin-1"), ("file-not-text",)),
    "utf-16": (SCARF.encode("utf-16"), ("file-not-text",)),
    "two documents": (SCARF.encode() + b"---\n" + SCARF.encode(), ("yaml-documents",)),
    "tag": (SCARF.replace("20 cm", "!!python/object/apply:os.system [ls]").encode(), ("yaml-tag",)),
    "50 MB": (SCARF.encode() + b"# " + b"x" * 50_000_000, ("file-too-large",)),
    "alias bomb": (alias_bomb(), ("yaml-alias",)),
    "deep lists": (b"a: " + b"[" * 200_000, ("yaml-too-deep", "yaml-syntax")),
    "deep keys": ("".join(f"{' ' * i}a:\n" for i in range(1300)).encode(), ("yaml-too-deep",)),
    "deep formula": (SCARF.replace("20 cm", "(" * 3000 + "20 cm" + ")" * 3000).encode(), ("formula", "out-of-range")),
    "long formula": (SCARF.replace("20 cm", "20 cm" + " + 1 cm" * 100_000).encode(), ("formula", "out-of-range")),
    "long chain of lengths": (
        SCARF.replace("pieces:", "lengths:\n  a0: 20 cm\n" + "".join(f"  a{i}: a{i - 1} + a{i - 1}\n" for i in range(1, 5000)) + "pieces:").replace("chain: 20 cm", "chain: a4999").encode(),
        ("too-many-stitches", "formula-fault", "multiple-does-not-fit"),
    ),
    "huge number": (SCARF.replace("20 cm", "9" * 3000 + " cm").encode(), ("formula", "out-of-range", "too-many-stitches", "formula-fault")),
    "huge count": (SCARF.replace("length: 150 cm", "rows: " + "9" * 30).encode(), ("out-of-range",)),
    "many wrong keys": (SCARF.encode() + b"".join(b"x%d: 1\n" % i for i in range(20_000)), ("unknown-key",)),
    "control signs": (SCARF.replace("Pier", "Pi\x01er").encode(), ("yaml-syntax",)),
}  # fmt: skip


LIMITED = """
import resource, sys

def peak_kib():
    # The process's own peak: what getrusage gives is never less than what its parent held when it began.
    try:
        with open("/proc/self/status") as status:
            return next(int(line.split()[1]) for line in status if line.startswith("VmHWM:"))
    except (OSError, StopIteration):
        return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss

resource.setrlimit(resource.RLIMIT_AS, (600_000_000,) * 2)
peak = sys.argv.pop(1)
from gaugewright.cli import main
try:
    main()
finally:
    # VmHWM begins anew with this program; ru_maxrss would still hold what the caller had before it.
    status = dict(line.split(":", 1) for line in open("/proc/self/status"))
    open(peak, "w").write(status["VmHWM"].split()[0])
"""


@pytest.mark.parametrize("kind", FILES)
def test_hostile_files_are_refused_soon_and_small(tmp_path: Path, kind: str) -> None:
    """Twenty seconds (on a busy machine) and 300 MB are ample: what can’t be a spec is refused before it is built up."""
    raw, names = FILES[kind]
    spec = tmp_path / "spec.yaml"
    spec.write_bytes(raw)
    peak = tmp_path / "peak"
    peak.touch()
    began = time.monotonic()
    done = subprocess.run(
        [sys.executable, "-c", LIMITED, str(peak), "publish", str(spec)],
        capture_output=True, text=True, encoding="utf-8", env=environment(), timeout=60, check=False,
    )
    spent = time.monotonic() - began
    assert done.returncode == 1, done.stderr[-2000:]
    found = told(done.stderr, spec)
    assert {name for name, _, _ in found} <= set(names) <= set(PROBLEM_NAMES), done.stderr[-2000:]
    assert found and max(len(line) for line in done.stderr.splitlines()) < 2000
    assert files_in(tmp_path) == ["peak", "spec.yaml"]
    assert spent < 20
    assert int(peak.read_text()) / 1024 < 300


def test_the_limit_of_the_test_above_bites() -> None:
    script = "import resource; resource.setrlimit(resource.RLIMIT_AS, (600_000_000,) * 2); bytearray(700_000_000)"
    assert subprocess.run([sys.executable, "-c", script], capture_output=True, check=False).returncode == 1


@pytest.mark.parametrize("make", ["missing", "folder", "folder of specs", "below a file", "name too long", "pipe", "device"])
def test_what_is_no_file(tmp_path: Path, make: str) -> None:
    spec = tmp_path / "spec.yaml"
    name = "file-missing"
    match make:
        case "missing":
            spec_in(tmp_path, SCARF, "specs.yaml")
        case "folder":
            spec.mkdir()
            name = "file-is-folder"
        case "folder of specs":
            spec.mkdir()
            spec_in(spec, SCARF, "hat.yaml")
            name = "file-is-folder"
        case "below a file":
            spec_in(tmp_path, SCARF)
            spec = spec / "spec.yaml"
        case "name too long":
            spec, name = tmp_path / ("n" * 300), "file-unreadable"
        case "pipe":
            os.mkfifo(spec)
            name = "file-unreadable"
        case "device":
            spec, name = Path("/dev/zero"), "file-unreadable"
    with nothing_new(tmp_path):
        result = invoke("publish", spec)
    assert (result.exit_code, result.stdout) == (1, "")
    [(found, line, column)] = told(result.stderr, spec)
    assert (found, line, column) == (name, 1, 1)
    if make == "missing":
        assert f"did you mean {tmp_path / 'specs.yaml'}?" in result.stderr
    if make == "folder of specs":
        assert f"such as {spec / 'hat.yaml'}" in result.stderr


@pytest.mark.parametrize("out", ["spec.yaml/new", "spec.yaml/new/x.pdf", "full.pdf", "n" * 300])
def test_where_nothing_can_be_written(tmp_path: Path, out: str) -> None:
    spec = spec_in(tmp_path, SCARF)
    (tmp_path / "full.pdf").mkdir()
    with nothing_new(tmp_path):
        result = invoke("publish", spec, "--out", tmp_path / out)
    assert (result.exit_code, result.stdout) == (1, "")
    assert result.stderr.startswith("output-unwritable: ") and "\n    hint: " in result.stderr
    assert invoke("publish", spec, "--out", tmp_path / "elsewhere").exit_code == 0


@pytest.mark.skipif(not Path("/proc/self").is_dir(), reason="this system has no place where not even root may write")
def test_where_nobody_may_write(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF)
    done = command("publish", spec, "--out", "/proc/gaugewright", folder=tmp_path)
    assert (done.returncode, done.stdout) == (1, "")
    assert done.stderr.startswith("output-unwritable: /proc/gaugewright/pier-scarf.pdf can't be written: ")


@pytest.mark.parametrize("call", ["os.replace", "os.fsync"])
def test_a_full_disk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str) -> None:
    spec = spec_in(tmp_path, SCARF)

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(call, full)
    with nothing_new(tmp_path):
        result = invoke("publish", spec)
    assert result.exit_code == 1
    assert result.stderr.startswith(f"output-unwritable: {tmp_path / 'pier-scarf.pdf'} can't be written: No space left on device\n")


@pytest.mark.parametrize("title", ['"\\ud800"', '"Scarf \U0001f9f6"'])
def test_a_sign_that_cannot_be_printed(tmp_path: Path, title: str) -> None:
    spec = spec_in(tmp_path, SCARF.replace("title: Pier Scarf", f"title: {title}"))
    with nothing_new(tmp_path):
        done = command("publish", spec, "--text", folder=tmp_path)
    assert (done.returncode, done.stdout) == (1, "")
    assert done.stderr.startswith("missing-glyph: the typeface has no sign for ") and "\n    hint: " in done.stderr


def test_no_name_is_told_that_is_not_listed() -> None:
    assert {case[2] for case in WRONG} | {name for _, names in FILES.values() for name in names} <= set(PROBLEM_NAMES)
    assert (ROOT / "src").is_dir()
