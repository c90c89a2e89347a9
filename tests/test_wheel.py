"""The wheel holds all that it needs: built, installed on its own, and used far from the checkout."""

import os
import site
import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest
from pypdf import PdfReader

from cli.running import COWL, ROOT, spec_in


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of this checkout; its build needs hatchling from the registry, as any install does."""
    out = tmp_path_factory.mktemp("wheel")
    done = _run([sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "--wheel-dir", str(out), str(ROOT)], out)
    assert done.returncode == 0, f"the wheel can't be built (is the registry out of reach?):\n{done.stderr}"
    [found] = out.glob("*.whl")
    return found


@pytest.fixture(scope="module")
def scripts(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The scripts of a fresh environment that has this wheel, and sees the libraries of the one that runs the tests.

    A copy of the project that is installed here already, or lies on the path, must not be what answers:
    the fresh environment comes first, and the test asks where the package came from.
    """
    home = tmp_path_factory.mktemp("fresh") / "env"
    assert _run([sys.executable, "-m", "venv", "--without-pip", str(home)], home.parent).returncode == 0
    paths = sysconfig.get_paths("venv", {"base": str(home), "platbase": str(home)})
    install = [sys.executable, "-m", "pip", "--python", str(Path(paths["scripts"]) / "python"), "install", "-q", "--no-deps", "--no-index", str(wheel)]
    done = _run(install, home.parent)
    assert done.returncode == 0, done.stderr
    libraries = [*site.getsitepackages(), sysconfig.get_paths()["purelib"]]
    Path(paths["purelib"], "libraries.pth").write_text("\n".join(dict.fromkeys(libraries)) + "\n", encoding="utf-8")
    return Path(paths["scripts"])


def _run(command: list[str], folder: Path) -> "subprocess.CompletedProcess[str]":
    clean = {name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "PYTHONHOME")}
    return subprocess.run(command, cwd=folder, env=clean, capture_output=True, text=True, encoding="utf-8", timeout=300, check=False)


def test_the_wheel_holds_what_is_needed_and_no_tests(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        names = set(archive.namelist())
    src = {path.relative_to(ROOT / "src").as_posix() for path in (ROOT / "src").rglob("*") if path.is_file() and "__pycache__" not in path.parts}
    templates = {f"gaugewright/templates/{path.relative_to(ROOT / 'templates').as_posix()}" for path in (ROOT / "templates").rglob("*") if path.is_file()}
    assert src | templates <= names
    assert {name for name in names if not name.startswith("gaugewright/")} == {name for name in names if ".dist-info/" in name}
    assert any(name.endswith("licenses/templates/fonts/OFL.txt") for name in names), "the fonts' licence comes with them"


def test_published_from_the_wheel_far_from_the_checkout(scripts: Path, tmp_path: Path) -> None:
    where = _run([str(scripts / "python"), "-c", "import gaugewright; print(gaugewright.__file__)"], tmp_path)
    assert Path(where.stdout.strip()).is_relative_to(scripts.parent), where.stdout + where.stderr
    spec_in(tmp_path, COWL)
    done = _run([str(scripts / "gaugewright"), "publish", "spec.yaml", "--text", "--svg"], tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.splitlines() == ["sluice-cowl.pdf: 3 sizes, 1 piece", "sluice-cowl.txt", "sluice-cowl-cowl.svg"]
    reader = PdfReader(tmp_path / "sluice-cowl.pdf")
    fonts = {str(font.get_object()["/BaseFont"]) for page in reader.pages for font in page["/Resources"]["/Font"].values()}
    assert fonts and all("SourceSans3" in font for font in fonts)


def test_the_wheel_publishes_what_the_checkout_does(scripts: Path, tmp_path: Path) -> None:
    spec = spec_in(tmp_path, COWL)
    from cli.running import invoke

    assert invoke("publish", spec, "--out", tmp_path / "checkout.pdf").exit_code == 0
    assert _run([str(scripts / "gaugewright"), "publish", "spec.yaml", "--out", "wheel.pdf"], tmp_path).returncode == 0
    assert (tmp_path / "wheel.pdf").read_bytes() == (tmp_path / "checkout.pdf").read_bytes()
