"""`check`, `show`, `schema`, the options of the whole, and exit codes."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

from cli.running import COWL, SCARF, command, environment, exit_of_main, files_in, invoke, nothing_new, spec_in
from gaugewright import __version__
from gaugewright.spec import json_schema

TIGHT = COWL.replace("finished:", "openings:\n  - {name: brim, around: [cowl.bottom], passes: head}\nfinished:")
"""A cowl that a head has to pass."""


def test_check_lists_every_check(tmp_path: Path) -> None:
    from gaugewright.checks import CHECKS

    spec = spec_in(tmp_path, COWL)
    with nothing_new(tmp_path):
        done = command("check", spec, folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    lines = done.stdout.splitlines()
    assert len([line for line in lines if re.match(r"(ok|note|warning|error) ", line)]) == len(CHECKS)
    assert re.fullmatch(r"0 errors, 0 warnings, \d+ notes?", lines[-1])


def test_check_leaves_with_1_where_there_is_an_error(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, TIGHT.replace("neck: 34 cm", "neck: 34 cm, head: 90 cm").replace("neck: 38 cm", "neck: 38 cm, head: 56 cm").replace("neck: 43 cm", "neck: 43 cm, head: 57 cm"))
    listed = invoke("check", spec)
    assert listed.exit_code == 1 and "opening-tight" in listed.stdout and "1 error, " in listed.stdout
    as_json = invoke("check", spec, "--json")
    assert as_json.exit_code == 1 and json.loads(as_json.stdout)["counts"]["error"] == 1
    with nothing_new(tmp_path):
        published = invoke("publish", spec)
    assert published.exit_code == 1 and "opening-tight, size S" in published.stderr and published.stdout == ""


def test_check_as_json(tmp_path: Path) -> None:
    data = json.loads(command("check", spec_in(tmp_path, COWL), "--json", folder=tmp_path).stdout)
    assert set(data) == {"counts", "checks"}
    assert all({"name", "title", "outcome", "figures", "problems"} == set(one) for one in data["checks"])


@pytest.mark.parametrize("text", [SCARF.replace("hdc", "hcd").replace("scarf:", "scarf:\n    colour: oat"), ""])
def test_json_holds_the_problems_of_a_spec_that_cannot_be_graded(tmp_path: Path, text: str) -> None:
    spec = spec_in(tmp_path, text)
    told = command("check", spec, folder=tmp_path)
    done = command("check", spec, "--json", folder=tmp_path)
    assert (told.returncode, done.returncode, done.stderr) == (1, 1, "")
    problems = [problem for one in json.loads(done.stdout)["checks"] for problem in one["problems"]]
    assert len(problems) == int(told.stderr.splitlines()[-1].split()[0])
    for problem in problems:
        assert f"{problem['file']}:{problem['line']}:{problem['column']}: {problem['name']}: {problem['message']}" in told.stderr


def test_check_at_another_gauge(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    assert invoke("check", spec).stdout != invoke("check", spec, "--gauge", "7 sts, 4 rows / 10 cm").stdout
    assert invoke("check", spec, "--gauge", "7 sts").exit_code == 1


SHOWN = {
    "design": "cowl: Cowl, make 1, plain, from a ring\n  even: length 24 cm, fabric plain\n",
    "targets": "",
    "plans": "cowl S: 54 -> 54 sts in 12 rows\ncowl M: 58 -> 58 sts in 12 rows\ncowl L: 63 -> 63 sts in 12 rows\n",
}


@pytest.mark.parametrize("stage", SHOWN)
def test_show_a_stage(tmp_path: Path, stage: str) -> None:
    assert command("show", spec_in(tmp_path, COWL), stage, folder=tmp_path).stdout == SHOWN[stage]


CAP = """\
gaugewright: 1
pattern: {title: Cap, workshop: Ferry Lane Workshop}
yarns: {oat: {colour: "#d9c9a8"}}
fabrics: {plain: {stitch: sc, worked: joined rounds, gauge: "9 sts, 9 rows / 10 cm"}}
pieces: {cap: {start: {centre: 6}, sections: [crown: {stitches: 30, each: 6}, even: {rounds: 4}, crown: {close: true}]}}
"""


def test_show_a_crown_as_it_is_stated(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, CAP)
    assert invoke("show", spec, "design").stdout == (
        "cap: Cap, make 1, plain, from a centre\n  crown: stitches 30, each 6, direction nearest, fabric plain\n"
        "  even: rows 4, fabric plain\n  crown: close yes, direction nearest, fabric plain\n"
    )


def test_show_rows(tmp_path: Path) -> None:
    lines = invoke("show", spec_in(tmp_path, COWL), "rows").stdout.splitlines()
    assert len(lines) == 3 * 12
    assert [line.split()[1] for line in lines[::12]] == ["S", "M", "L"]
    assert all(re.search(r"= (54|58|63)$", line) for line in lines)


def test_show_yarn(tmp_path: Path) -> None:
    lines = invoke("show", spec_in(tmp_path, COWL), "yarn").stdout.splitlines()
    assert [line.split(":")[0] for line in lines if not line.startswith(" ")] == ["S oat", "M oat", "L oat"]
    # 12 rounds of 54 stitches, at 30 g for 20 x 10 stitches.
    assert lines[1] == f"  stitches: {12 * 54 * 30 / 200:.1f} g (plain dc {12 * 54})"
    jumbo = SCARF.replace("weight: 6, ball: {mass: 100 g, length: 58 m}", "weight: 7")
    assert invoke("show", spec_in(tmp_path, jumbo), "yarn").stdout == "One size: no figure, since no swatch was weighed and nothing is published by which to estimate\n"
    assert "(an estimate)" in invoke("show", spec_in(tmp_path, SCARF), "yarn").stdout.splitlines()[0]


def test_show_targets(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL.replace("pieces:", "lengths:\n  around: body.neck + 20 cm\npieces:"))
    assert invoke("show", spec, "targets").stdout == "around (cm): S 54.00, M 58.00, L 63.00\n"


def test_show_text_is_what_publish_writes(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    invoke("publish", spec, "--text", "--out", tmp_path / "a.pdf")
    assert invoke("show", spec, "text").stdout == (tmp_path / "a.txt").read_text(encoding="utf-8")
    invoke("publish", spec, "--text", "--out", tmp_path / "b.pdf", "--gauge", "9 sts, 6 rows / 10 cm")
    assert invoke("show", spec, "text", "--gauge", "9 sts, 6 rows / 10 cm").stdout == (tmp_path / "b.txt").read_text(encoding="utf-8")


def test_an_unknown_stage(tmp_path: Path) -> None:
    result = invoke("show", spec_in(tmp_path, COWL), "stitches")
    assert (result.exit_code, result.stdout) == (1, "")
    assert result.stderr == "unknown-stage: there is no stage 'stitches'\n    hint: the stages are design, targets, plans, rows, yarn, text\n1 problem\n"


def test_schema(tmp_path: Path) -> None:
    done = command("schema", folder=tmp_path)
    assert done.returncode == 0 and json.loads(done.stdout) == json_schema()


def test_version(tmp_path: Path) -> None:
    done = command("--version", folder=tmp_path)
    assert (done.returncode, done.stdout) == (0, f"gaugewright {__version__}\n")


@pytest.mark.parametrize("arguments", [["--help"], ["publish", "--help"], ["check", "--help"], ["show", "--help"], ["swatch", "--help"], ["schema", "--help"]])
def test_help(tmp_path: Path, arguments: list[str]) -> None:
    done = command(*arguments, folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert "Usage:" in done.stdout and "..." not in done.stdout.split("\n", 1)[1].replace("[ARGS]...", "")


@pytest.mark.parametrize(
    "arguments",
    [
        [], ["publish"], ["publish", "spec.yaml", "--paper", "a5"], ["publish", "spec.yaml", "--colour"], ["publish", "spec.yaml", "more.yaml"],
        ["publish", "spec.yaml", "--terms", "au"], ["publish", "spec.yaml", "--size"], ["show", "spec.yaml"], ["knit"], ["check"], ["schema", "x"],
    ],
)  # fmt: skip
def test_wrong_use_leaves_with_2(tmp_path: Path, arguments: list[str]) -> None:
    spec_in(tmp_path, SCARF)
    with nothing_new(tmp_path):
        done = command(*arguments, folder=tmp_path)
    assert done.returncode == 2
    told = done.stderr + done.stdout
    assert "Traceback" not in told and ("Usage:" in told or "Error: " in told)


@pytest.mark.parametrize(
    ("stage", "arguments"),
    [
        ("gaugewright.pipeline.grade", ["publish"]), ("gaugewright.render.pdf.render_pdf", ["publish"]),
        ("gaugewright.pipeline.check", ["check"]), ("gaugewright.pipeline.load", ["show"]),
    ],
)  # fmt: skip
@pytest.mark.parametrize("fault", [ValueError("seventeen"), KeyError("x"), RecursionError(), MemoryError()])
def test_our_own_fault_leaves_with_70(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], stage: str, arguments: list[str], fault: Exception
) -> None:
    spec = spec_in(tmp_path, SCARF)

    def broken(*_: object, **__: object) -> None:
        raise fault

    monkeypatch.setattr(stage, broken)
    more = ["text"] if arguments == ["show"] else []
    with nothing_new(tmp_path):
        assert exit_of_main(monkeypatch, *arguments, spec, *more) == 70
    out, err = capsys.readouterr()
    assert out == ""
    assert "This is a bug in gaugewright, not in your file." in err
    assert type(fault).__name__ in err


def test_problems_go_to_stderr_and_results_to_stdout(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF.replace("hdc", "hcd"))
    for arguments in (["publish", spec], ["check", spec], ["show", spec, "text"]):
        done = command(*arguments, folder=tmp_path)
        assert (done.returncode, done.stdout) == (1, "")
        assert done.stderr.startswith(f"{spec}:6:19: unknown-word: ") and done.stderr.endswith("1 problem\n")


def test_a_pipe_closed_early_is_no_fault(tmp_path: Path) -> None:
    spec = spec_in(tmp_path, SCARF.replace("150 cm", "9000 cm"))
    with subprocess.Popen(
        [sys.executable, "-m", "gaugewright.cli", "show", str(spec), "rows"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=environment(), text=True
    ) as running:
        assert running.stdout is not None and running.stderr is not None
        running.stdout.readline()
        running.stdout.close()
        assert "Traceback" not in running.stderr.read() and "bug in gaugewright" not in running.stderr.read()
        assert running.wait() in (0, 1)


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp1252"])
def test_a_terminal_of_few_signs_is_no_fault(tmp_path: Path, encoding: str) -> None:
    spec = spec_in(tmp_path, SCARF.replace("Pier Scarf", "Ø⅜ Пирс"))
    done = subprocess.run(
        [sys.executable, "-m", "gaugewright.cli", "show", str(spec), "text"],
        capture_output=True, env=environment(PYTHONIOENCODING=encoding), check=False,
    )
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"Foundation: With Oat, ch 20." in done.stdout


IMPORTS = """
import sys
from gaugewright.cli.app import app
from typer.testing import CliRunner
before = {name.split(".")[0] for name in sys.modules}
result = CliRunner().invoke(app, sys.argv[1:], catch_exceptions=False)
assert result.exit_code == 0, result.stderr
loaded = {name.split(".")[0] for name in sys.modules}
print(*sorted(loaded))
"""


def loaded_by(*arguments: object, folder: Path) -> set[str]:
    done = subprocess.run(
        [sys.executable, "-c", IMPORTS, *map(str, arguments)], capture_output=True, text=True, cwd=folder, env=environment(), check=False
    )
    assert (done.returncode, done.stderr) == (0, "")
    return set(done.stdout.split())


def test_help_loads_nothing_heavy(tmp_path: Path) -> None:
    loaded = loaded_by("--help", folder=tmp_path)
    assert "typer" in loaded
    assert not loaded & {"rich", "pint", "pydantic", "reportlab", "svgwrite", "pypdf", "ruamel", "numpy", "PIL"}


def test_publish_loads_only_what_it_needs(tmp_path: Path) -> None:
    loaded = loaded_by("publish", spec_in(tmp_path, SCARF), folder=tmp_path)
    assert {"pydantic", "reportlab", "ruamel"} <= loaded
    assert not loaded & {"rich", "pint", "svgwrite", "pypdf", "numpy"}
    assert "pier-scarf.pdf" in files_in(tmp_path)
