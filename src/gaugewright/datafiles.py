"""Reads the packages' CSV tables: figures of the trade are data with a source, not code."""

import csv
from collections.abc import Mapping
from pathlib import Path


def read_table(path: Path) -> tuple[Mapping[str, str], ...]:
    """The rows of a CSV file beside the code, each as a mapping of column to text."""
    with path.open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))
