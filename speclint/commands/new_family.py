"""A new family of rules, written from the files in ``family_template``: a distribution of its own, with tests."""

from __future__ import annotations

import re
from pathlib import Path
from string import Template

from speclint.commands.new_files import write_new
from speclint.errors import SettingsError
from speclint.repository import refuse_target

_TEMPLATE = Path(__file__).parent / "family_template"
_OUTSIDE = "name a folder outside of it with --in"
_NAME = re.compile(r"[a-z]+(-[a-z]+)*")


def write_family(name: str, folder: Path) -> tuple[Path, ...]:
    """Write the distribution ``speclint-NAME`` into a folder; returns its files. Nothing that is there is touched.

    :raises SettingsError: for a name that is not small letters and hyphens, a folder that is not there, and files
        that are there already. Nothing is written then.
    :raises OutputError: for a folder in a design repository, and where they cannot be written: none of them is left
        then.
    """
    if not _NAME.fullmatch(name):
        raise SettingsError(
            f'"{name}" is no name of a family: write small letters and hyphens, such as wheel-sets'
        )
    if not folder.is_dir():
        raise SettingsError(f"{folder}: there is no such folder")
    root = folder / f"speclint-{name}"
    files = {root / place: text for place, text in family_files(name).items()}
    for path in files:
        refuse_target(path, _OUTSIDE)  # in a design each of its TOML files would be read as a spec
    write_new(files)
    return tuple(files)


def family_files(name: str) -> dict[str, str]:
    """The files of a new family by their place in its distribution."""
    package = f"speclint_{name.replace('-', '_')}"
    words = {"family": name, "package": package, "distribution": f"speclint-{name}"}
    found = {}
    for path in sorted(_TEMPLATE.rglob("*.txt")):
        place = (
            path.relative_to(_TEMPLATE).as_posix().removesuffix(".txt").replace("package/", f"{package}/", 1)
        )
        found[place] = Template(path.read_text(encoding="utf-8")).substitute(words)
    return found
