"""A problem as text: the place first, the line quoted with a caret, the hint."""

from gaugewright.errors import Problem

ONLY_SIZE = "One size"
"""The label of a pattern without sizes: there it tells nothing."""

WIDEST = 120  # characters of a quoted line


def count_of(number: int, one: str, many: str = "") -> str:
    """A number with its noun.

    >>> count_of(1, "row"), count_of(3, "stitch", "stitches")
    ('1 row', '3 stitches')
    """
    return f"{number} {one if number == 1 else many or one + 's'}"


def problem_text(problem: Problem) -> str:
    """Words for one problem.

    >>> from gaugewright.errors import Location, Origin
    >>> origin = Origin(Location("hat.yaml", 3, 8), "weight: 9")
    >>> print(problem_text(Problem("out-of-range", "weight is 9; at most 7 is expected", origin, "write a number up to 7")))
    hat.yaml:3:8: out-of-range: weight is 9; at most 7 is expected
        3 | weight: 9
          |        ^
        hint: write a number up to 7
    """
    what = problem.name if problem.severity == "error" else f"{problem.severity} {problem.name}"
    size = f", size {problem.size}" if problem.size not in ("", ONLY_SIZE) else ""
    lines = [f"{what}{size}: {problem.message}"]
    if problem.origin is not None:
        location = problem.origin.location
        lines[0] = f"{location}: {lines[0]}"
        if problem.origin.line_text:
            lines += _quoted(location.line, location.column, problem.origin.line_text)
    if problem.hint:
        lines.append(f"    hint: {problem.hint}")
    return "\n".join(lines)


def _quoted(line: int, column: int, text: str) -> list[str]:
    """The line, cut round the column where it is very long, and a caret under the column."""
    start = max(0, column - WIDEST // 2) if len(text) > WIDEST else 0
    shown = "".join(c if c.isprintable() else " " for c in text[start : start + WIDEST]).rstrip()
    number = f"    {line} | "
    return [f"{number}{shown}", f"{' ' * (len(number) - 2)}| {' ' * (column - 1 - start)}^"]
