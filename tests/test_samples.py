"""Every sample publishes without a problem, and what is stored beside it is what is published now."""

from pathlib import Path

import pytest
from pypdf import PdfReader

from cli.running import ROOT, files_in, invoke

SAMPLES = ROOT / "samples"
NAMES = tuple(sorted(path.name for path in SAMPLES.iterdir() if path.is_dir()))
WITH_PDF = ("saltmarsh-jacket",)


def renewing(name: str) -> str:
    """What to do where something stored is stale or isn't there."""
    return f"run: gaugewright publish samples/{name}/spec.yaml --text --svg" + ("" if name in WITH_PDF else " (and keep no PDF)")


@pytest.fixture(scope="module")
def published(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """All samples published now, a folder each."""
    out = tmp_path_factory.mktemp("samples")
    for name in NAMES:
        result = invoke("publish", SAMPLES / name / "spec.yaml", "--out", out / name, "--text", "--svg")
        assert result.exit_code == 0, f"{name}: {result.stderr}"
        assert result.stderr == "", f"{name} is told of: {result.stderr}"
    return out


def test_there_are_samples() -> None:
    assert set(WITH_PDF) <= set(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_what_is_stored_is_complete_and_nothing_else(published: Path, name: str) -> None:
    made = {file for file in files_in(published / name) if name in WITH_PDF or not file.endswith(".pdf")}
    written = {
        file for file in files_in(SAMPLES / name)
        if file in ("spec.yaml", "candidates.yaml") or file.endswith("-readings.yaml") or file.startswith("shopping.") or file.split("/")[0] == "returns"
    }
    assert set(files_in(SAMPLES / name)) == made | written and "spec.yaml" in written, renewing(name)
    assert sum(file.endswith(".txt") for file in made) == 1 and any(file.endswith(".svg") for file in made)


@pytest.mark.parametrize("name", NAMES)
def test_stored_text_and_drawings_are_current(published: Path, name: str) -> None:
    made = [file for file in files_in(published / name) if file.endswith((".txt", ".svg"))]
    stale = [file for file in made if _read(SAMPLES / name / file) != _read(published / name / file)]
    assert stale == [], renewing(name)


@pytest.mark.parametrize("name", WITH_PDF)
def test_the_stored_pdf_is_current(published: Path, name: str) -> None:
    """By words and where they stand: another version of the library that writes it may choose other bytes."""
    stored = SAMPLES / name / f"{name}.pdf"
    assert stored.exists(), renewing(name)
    now, then = (words_placed(path) for path in (published / name / f"{name}.pdf", stored))
    assert len(now) == len(then), renewing(name)
    for page, (ours, theirs) in enumerate(zip(now, then, strict=True), start=1):
        assert [text for text, _, _ in ours] == [text for text, _, _ in theirs], f"page {page}; {renewing(name)}"
        moved = [(a, b) for a, b in zip(ours, theirs, strict=True) if abs(a[1] - b[1]) > 0.05 or abs(a[2] - b[2]) > 0.05]
        assert moved == [], f"page {page}; {renewing(name)}"


def test_a_moved_word_would_be_seen(published: Path) -> None:
    pages = words_placed(published / WITH_PDF[0] / f"{WITH_PDF[0]}.pdf")
    assert len(pages) > 3 and all(len(page) > 5 for page in pages)
    assert len({(x, y) for _, x, y in pages[0]}) == len(pages[0]), "every piece of text has a place of its own"


def words_placed(path: Path) -> list[list[tuple[str, float, float]]]:
    """Each page's pieces of text with the place each begins, in points from the lower left."""
    found = []
    for page in PdfReader(path).pages:
        pieces: list[tuple[str, float, float]] = []

        def note(text: str, _: object, matrix: list[float], *__: object, pieces: list[tuple[str, float, float]] = pieces) -> None:
            if text.strip():
                pieces.append((text.strip(), float(matrix[4]), float(matrix[5])))

        page.extract_text(visitor_text=note)
        found.append(pieces)
    return found


def _read(path: Path) -> str | None:
    return path.read_text(encoding="utf-8") if path.exists() else None
