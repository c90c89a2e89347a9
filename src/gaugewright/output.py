"""Files written whole or not at all."""

import os
import unicodedata
from collections.abc import Mapping
from pathlib import Path

from gaugewright.errors import UserError

LONGEST_NAME = 80
"""Letters of a file name made from a title: with what is put after it, it stays below every file system's 255 bytes."""


def write_whole(path: Path, data: bytes) -> None:
    """Writes one file, as `write_together` does."""
    write_together({path: data})


def write_together(files: Mapping[Path, bytes]) -> None:
    """Writes every file beside its place first, and moves them into place when all are written.

    An interrupted run, or one file that can't be written, leaves the old files as they were. Raises
    `UserError` where a folder can't be made or written to.
    """
    staged: dict[Path, Path] = {}
    path = Path()
    try:
        for path, data in files.items():
            _make_room(path)
            staged[path] = path.with_name(f".{path.name[:LONGEST_NAME]}.{os.getpid()}-{len(staged)}")
            _write(staged[path], data)
        for path, temporary in staged.items():
            os.replace(temporary, path)
    except OSError as fault:
        raise UserError(
            "output-unwritable", f"{path} can't be written: {fault.strerror or fault}", "choose another place with --out"
        ) from None
    finally:
        for temporary in staged.values():
            temporary.unlink(missing_ok=True)


def _make_room(path: Path) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    if path.is_dir():
        raise IsADirectoryError(f"{path} is a folder")


def _write(path: Path, data: bytes) -> None:
    """Opened as any new file is, so that the user's own habit decides who may read it."""
    with open(path, "wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def slug(text: str) -> str:
    """A file name that sorts and travels: small letters, digits and hyphens.

    >>> slug("Saltmarsh Jacket"), slug("1X"), slug("Jütland Scarf")
    ('saltmarsh-jacket', '1x', 'jutland-scarf')
    """
    spelt = (c for c in unicodedata.normalize("NFKD", text.lower()) if not unicodedata.combining(c))
    kept = "".join(c if c.isalnum() and c.isascii() else "-" for c in spelt)
    return "-".join(part for part in kept.split("-") if part)[:LONGEST_NAME].strip("-") or "pattern"
