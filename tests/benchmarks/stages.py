"""Timings of publishing, by stage and as a whole; printed, never asserted.

    python tests/benchmarks/stages.py [SPEC ...]

Without a spec the sample jacket is measured. Each stage is the best of several runs in one process;
the whole commands are the best of five, each in a process of its own, as a user waits for them: with the
bytecode that an installation has, whatever the shell says of it. Seconds of work (user) are told beside those
waited, since others may be at work on the machine.
"""

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SAMPLE = ROOT / "samples/saltmarsh-jacket/spec.yaml"
RUNS = 5
PEAK = "import resource, sys; from gaugewright.cli import main\ntry: main()\nfinally: print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss, file=sys.stderr)"


def best_of(run: Callable[[], object], runs: int = RUNS) -> tuple[float, object]:
    """The shortest time, in ms, and what came of the last run."""
    best, found = float("inf"), None
    for _ in range(runs):
        began = time.perf_counter()
        found = run()
        best = min(best, time.perf_counter() - began)
    return best * 1000, found


def stages(spec: Path) -> None:
    """Each stage on what the stage before it made."""
    from gaugewright import pipeline
    from gaugewright.render.pdf import load_style, render_pdf
    from gaugewright.render.svg import render_svg
    from gaugewright.render.text import render_text

    design = pipeline.load(spec)
    graded = pipeline.grade(design)
    document = pipeline.document(graded, pipeline.Edition())
    style = load_style("quiet")
    drawings = pipeline.drawings_of(document)
    steps: dict[str, Callable[[], object]] = {
        "load": lambda: pipeline.load(spec),
        "grade": lambda: pipeline.grade(design),
        "check": lambda: pipeline.check(graded),
        "document": lambda: pipeline.document(graded, pipeline.Edition()),
        "style": lambda: load_style("quiet"),
        "pdf": lambda: render_pdf(document, "a4", style),
        "text": lambda: render_text(document),
        "svg": lambda: [render_svg(drawing) for _, drawing in drawings],
    }
    total = 0.0
    for name, step in steps.items():
        spent, _ = best_of(step)
        total += spent
        print(f"  {name:<10} {spent:8.1f} ms")
    print(f"  {'together':<10} {total:8.1f} ms, imports done")


def command(*arguments: str, bytecode: str, script: str = "") -> "subprocess.CompletedProcess[str]":
    """The command in a process of its own; `bytecode` is the folder for what Python compiles."""
    start = ["-c", script] if script else ["-m", "gaugewright.cli"]
    variables = {**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONDONTWRITEBYTECODE": "", "PYTHONPYCACHEPREFIX": bytecode}
    return subprocess.run([sys.executable, *start, *arguments], capture_output=True, text=True, env=variables, check=True)


def worked_of(run: Callable[[], object], runs: int) -> float:
    """The fewest seconds of work (user) that a process of its own takes, in ms."""

    def spent() -> float:
        before = os.times().children_user
        run()
        return os.times().children_user - before

    return min(spent() for _ in range(runs)) * 1000


def commands(spec: Path) -> None:
    """Whole commands, cold, and the most memory that a publish takes."""
    with tempfile.TemporaryDirectory() as folder:
        whole = ("publish", str(spec), "--out", folder)
        run = partial(command, bytecode=str(Path(folder) / "bytecode"))
        run(*whole, "--text", "--svg")
        lines = {
            "python alone": lambda: run(script="pass"),
            "--help": lambda: run("--help"),
            "publish": lambda: run(*whole),
            "publish --text --svg": lambda: run(*whole, "--text", "--svg"),
            "publish --size": lambda: run(*whole, "--size", _first_size(spec)),
            "check": lambda: run("check", str(spec)),
        }
        for name, line in lines.items():
            print(f"  {name:<22} {best_of(line)[0]:8.0f} ms, of work {worked_of(line, RUNS):6.0f} ms")
        peak = int(run(*whole, script=PEAK).stderr.split()[-1])
    print(f"  {'peak memory':<22} {peak / 1024:8.0f} MB")


def _first_size(spec: Path) -> str:
    from gaugewright import pipeline

    return pipeline.grade(pipeline.load(spec)).bodies.labels[0]


def main() -> None:
    """Measures each spec that is named."""
    sys.path.insert(0, str(ROOT / "src"))
    for spec in [Path(name) for name in sys.argv[1:]] or [SAMPLE]:
        print(f"{spec}, best of {RUNS}: stages")
        stages(spec)
        print("commands in processes of their own")
        commands(spec)


if __name__ == "__main__":
    main()
