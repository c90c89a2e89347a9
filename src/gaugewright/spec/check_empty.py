"""Checks that no key is left empty: a key without a value is more often a slip than a wish."""

import re
from collections.abc import Iterator

from gaugewright.errors import Problem
from gaugewright.spec.walk import Path
from gaugewright.yaml_reader import Source


def check_empty(source: Source, unknown: frozenset[Path]) -> Iterator[Problem]:
    """Keys and entries that hold nothing; a colour without quotes is a comment to YAML.

    Keys that are `unknown` are told as such, and not again here.
    """
    waiting: list[tuple[Path, object]] = [((), source.data)]
    while waiting:
        path, value = waiting.pop()
        if isinstance(value, dict):
            waiting.extend(((*path, key), held) for key, held in value.items())
        elif isinstance(value, list):
            waiting.extend(((*path, index), held) for index, held in enumerate(value))
        elif value is None and path not in unknown:
            yield _empty(path, source)


def _empty(path: Path, source: Source) -> Problem:
    origin, key = source.origin_at(path), path[-1]
    comment = re.search(r"(#[0-9A-Fa-f]{6})\b", origin.line_text)
    if key == "colour" and comment:
        return Problem(
            "colour-text", "a colour without quotes is read as a comment", origin, f'write colour: "{comment[1]}"'
        )
    if isinstance(key, int):
        return Problem(
            "empty-value",
            f"entry {key + 1} of {path[-2]} is left empty",
            origin,
            "write what belongs there, or take the entry out",
        )
    return Problem("empty-value", f"{key} is left empty", origin, f"write what belongs to {key}, or take {key} out")
