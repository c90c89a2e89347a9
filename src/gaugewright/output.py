"""Files written whole or not at all."""

import os
import tempfile
from pathlib import Path

from gaugewright.errors import UserError


def write_whole(path: Path, data: bytes) -> None:
    """Writes to a temporary file beside the target and moves it into place.

    An interrupted run leaves the old file as it was. Raises `UserError` where the folder can't be
    made or written to.
    """
    temporary = ""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        if path.is_dir():
            raise IsADirectoryError(f"{path} is a folder")
        handle, temporary = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(temporary, 0o644)
        os.replace(temporary, path)
    except OSError as fault:
        raise UserError(
            "output-unwritable", f"{path} can't be written: {fault.strerror or fault}", "choose another folder with --out"
        ) from None
    finally:
        if temporary and os.path.exists(temporary):
            os.unlink(temporary)


def slug(text: str) -> str:
    """A file name that sorts and travels: small letters, digits and hyphens.

    >>> slug("Saltmarsh Jacket"), slug("1X")
    ('saltmarsh-jacket', '1x')
    """
    kept = "".join(c if c.isalnum() and c.isascii() else "-" for c in text.lower())
    return "-".join(part for part in kept.split("-") if part) or "pattern"
