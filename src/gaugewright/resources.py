"""Templates and data by relative name: the user's folder, then the wheel, then the checkout.

In: a name such as `styles/quiet.toml`. Out: the path of the file that wins. A wheel holds the
templates inside the package, a checkout beside `src/`; an editable install has only the latter,
so both are looked up.
"""

from pathlib import Path, PurePosixPath

from gaugewright.errors import UserError

PACKAGE = Path(__file__).resolve().parent


def template_folders(own: Path | None = None) -> tuple[Path, ...]:
    """The folders that are searched, in order."""
    shipped = (PACKAGE / "templates", PACKAGE.parent.parent / "templates")
    return shipped if own is None else (own, *shipped)


def find_template(name: str, own: Path | None = None) -> Path:
    """The file of this name in the first folder that has it.

    Why the names are checked: a style or phrase book names other files, and those names come
    from the user; they may not reach outside the folders.
    """
    parts = PurePosixPath(name).parts
    if not parts or PurePosixPath(name).is_absolute() or ".." in parts or "\\" in name:
        raise UserError(
            "missing-template",
            f"{name!r} is not the name of a template",
            "write a name inside the folder, such as styles/quiet.toml",
        )
    folders = template_folders(own)
    for folder in folders:
        path = folder.joinpath(*parts)
        if path.is_file():
            return path
    looked = ", ".join(str(folder) for folder in folders if folder.is_dir()) or "no folder at all"
    raise UserError(
        "missing-template",
        f"there is no template {name!r} (looked in {looked})",
        "check the spelling, or put a file of that name into your own templates folder",
    )


def template_names(folder: str, suffix: str, own: Path | None = None) -> tuple[str, ...]:
    """The names, without their suffix, of the templates in a folder, in alphabetical order; each once."""
    found = {path.stem for base in template_folders(own) for path in (base / folder).glob(f"*{suffix}") if path.is_file()}
    return tuple(sorted(found))


def read_template(name: str, own: Path | None = None) -> str:
    """The text of a template; it must be UTF-8."""
    path = find_template(name, own)
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError as fault:
        raise UserError(
            "missing-template",
            f"{path} is not UTF-8 text (byte {fault.start + 1})",
            "save the file as UTF-8",
        ) from None
    except OSError as fault:
        raise UserError("missing-template", f"{path} can't be read: {fault.strerror}") from None
