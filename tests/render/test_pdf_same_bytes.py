"""The same document gives the same file, whatever the machine's clock, language or folder."""

import hashlib
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

from gaugewright.instructions.nodes import Document
from gaugewright.render.pdf import Style, render_pdf
from render.pdf_reading import TaggedPdf

ROOT = Path(__file__).resolve().parents[2]
SCRIPT = """
import hashlib
from gaugewright.render.pdf import load_style, render_pdf
from render.harbour_coat import document
for paper in ("a4", "letter"):
    print(hashlib.sha256(render_pdf(document(), paper, load_style())).hexdigest())
"""


def digests(folder: Path, **variables: str) -> list[str]:
    path = os.pathsep.join([str(ROOT / "src"), str(ROOT / "tests")])
    environment = {**os.environ, "PYTHONPATH": path, **variables}
    run = subprocess.run([sys.executable, "-c", SCRIPT], cwd=folder, env=environment, capture_output=True, check=True, text=True)
    return run.stdout.split()


def test_two_runs_give_the_same_bytes(tmp_path: Path) -> None:
    one = digests(ROOT, PYTHONHASHSEED="1", TZ="Pacific/Auckland", LC_ALL="C", SOURCE_DATE_EPOCH="1000000000")
    two = digests(tmp_path, PYTHONHASHSEED="4242", TZ="America/Bogota", LC_ALL="C.UTF-8")
    assert one == two
    assert len(set(one)) == 2


def test_a_second_run_in_the_same_process_too(coat: Document, style: Style, pdf_bytes: bytes) -> None:
    again = {hashlib.sha256(render_pdf(coat, paper, style)).digest() for paper in ("a4", "letter")}  # type: ignore[arg-type]
    assert hashlib.sha256(pdf_bytes).digest() in again


def test_a_document_without_a_date_has_none(coat: Document, style: Style) -> None:
    pdf = TaggedPdf(render_pdf(replace(coat, date=""), "a4", style))
    assert "/CreationDate" not in (pdf.reader.metadata or {})
    assert b"CreateDate" not in pdf.catalog["/Metadata"].get_data()


def test_the_identifier_follows_the_contents(coat: Document, style: Style) -> None:
    names = [
        TaggedPdf(render_pdf(document, "a4", style)).reader.trailer["/ID"][0]
        for document in (coat, coat, replace(coat, subject="Another"))
    ]
    assert names[0] == names[1] != names[2]
