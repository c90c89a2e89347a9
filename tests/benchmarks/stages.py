"""Timings by stage, in fresh processes: `python tests/benchmarks/stages.py [spec] [runs]`.

Prints the best of some runs in milliseconds against the budgets, since whatever else a machine does
only ever makes a run slower. Nothing here is asserted by the suite: time is no property of the code
alone. Bytecode goes to a folder of its own, so that no run pays for compiling and the tree stays clean.
"""

import json
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SPEC = ROOT / "samples" / "saltmarsh-jacket" / "spec.yaml"
BUDGETS = {"cold publish": 450.0, "--help": 80.0, "own work": 150.0, "memory (MB)": 200.0}
OWN_WORK = ("load", "grade", "check", "document")

STAGES = """
import importlib, json, sys, time
took, start = {}, time.perf_counter()

def stage(name):
    global start
    now = time.perf_counter()
    took[name] = (now - start) * 1000
    start = time.perf_counter()

for name in ("cli.app", "cli.publishing", "pipeline", "spec", "design.resolve", "grading.grade", "sizing.bodies", "checks",
             "instructions.build", "instructions.phrase_book", "drawings.cover", "drawings.piece_figure",
             "drawings.schematic", "yarn.amounts", "render.pdf"):
    importlib.import_module("gaugewright." + name)
from gaugewright import pipeline
from gaugewright.render.pdf import load_style, render_pdf
stage("imports")
design = pipeline.load(sys.argv[1])
stage("load")
graded = pipeline.grade(design)
stage("grade")
pipeline.check(graded)
stage("check")
document = pipeline.document(graded, pipeline.Edition())
stage("document")
render_pdf(document, "a4", load_style("quiet"))
stage("pdf")
print(json.dumps(took))
"""


def run(bytecode: Path, *arguments: str) -> tuple[float, str]:
    """Milliseconds that a fresh interpreter takes from start to end, and what it printed."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONPYCACHEPREFIX": str(bytecode)}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    start = time.perf_counter()
    done = subprocess.run([sys.executable, *arguments], env=environment, check=True, capture_output=True, text=True)
    return (time.perf_counter() - start) * 1000, done.stdout


def peak_memory() -> float:
    """The largest child so far, in MB; nothing where the system doesn't tell."""
    try:
        import resource
    except ImportError:
        return float("nan")
    return resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / (1024 if sys.platform != "darwin" else 1024**2)


def best(spec: Path, runs: int) -> dict[str, float]:
    """The least of each timing; the first run only warms up."""
    found: dict[str, float] = {}
    with tempfile.TemporaryDirectory() as folder:
        out, bytecode = Path(folder) / "pattern.pdf", Path(folder) / "bytecode"
        for attempt in range(runs + 1):
            took = dict(json.loads(run(bytecode, "-c", STAGES, str(spec))[1]))
            took["own work"] = sum(took[stage] for stage in OWN_WORK)
            took["cold publish"] = run(bytecode, "-m", "gaugewright.cli", "publish", str(spec), "--out", str(out))[0]
            took["--help"] = run(bytecode, "-m", "gaugewright.cli", "--help")[0]
            if attempt:
                found = {name: min(value, found.get(name, value)) for name, value in took.items()}
    return {**found, "memory (MB)": peak_memory()}


def main() -> None:
    spec = Path(sys.argv[1]) if len(sys.argv) > 1 else SPEC
    runs = int(sys.argv[2]) if len(sys.argv) > 2 else 7
    for name, value in best(spec, runs).items():
        budget = f"   of {BUDGETS[name]:4.0f}" if name in BUDGETS else ""
        print(f"{name:14} {value:6.0f}{budget}")


if __name__ == "__main__":
    main()
