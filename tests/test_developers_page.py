"""DEVELOPERS.md lists every problem name; `python tests/test_developers_page.py` writes the list anew."""

from pathlib import Path

from gaugewright.problem_names import PROBLEM_NAMES

PAGE = Path(__file__).parents[1] / "DEVELOPERS.md"
BEGIN, END = "<!-- problem names: begin -->", "<!-- problem names: end -->"


def listing() -> str:
    rows = "\n".join(f"| `{name}` | {meaning} |" for name, meaning in PROBLEM_NAMES.items())
    return f"{BEGIN}\n| name | what it means |\n| --- | --- |\n{rows}\n{END}"


def renewed(text: str) -> str:
    return text[: text.index(BEGIN)] + listing() + text[text.index(END) + len(END) :]


def test_every_problem_name_is_listed() -> None:
    text = PAGE.read_text("utf-8")
    assert renewed(text) == text, "run: python tests/test_developers_page.py"


def test_the_folder_map_names_every_package() -> None:
    packages = sorted(p.name for p in (Path(__file__).parents[1] / "src" / "gaugewright").iterdir() if (p / "__init__.py").exists())
    text = PAGE.read_text("utf-8")
    assert [name for name in packages if f"`{name}/`" not in text] == []


if __name__ == "__main__":
    PAGE.write_text(renewed(PAGE.read_text("utf-8")), "utf-8")
