"""Which TOML files of a repository hold specs, and which are passed over: each of those is named with the reason."""

from __future__ import annotations

import os
import stat
from collections.abc import Collection, Iterator
from fnmatch import fnmatch
from pathlib import Path

from msgspec import Struct

from speclint.repository.regular_files import not_regular
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.settings import Settings
from speclint.repository.toml_files import SUFFIX, toml_files

_LINK = "the folder is a link, and none is followed"


class PassedOver(Struct, frozen=True):
    """A TOML file that was not read as a spec, or a folder not looked into: relative to the root, and why.

    ``unknown`` where nobody can tell what a folder holds: its specs, if it has any, are not checked.
    """

    file: str
    why: str
    unknown: bool = False


def spec_files(root: Path, settings: Settings) -> Iterator[str]:
    """The TOML files of a repository that hold specs, relative to its root with forward slashes."""
    return iter(sorted_out(root, settings)[0])


def passed_over(root: Path, settings: Settings) -> tuple[PassedOver, ...]:
    """The TOML files of a repository that are not read as specs, the folders not looked into, and why."""
    return sorted_out(root, settings)[1]


def sorted_out(root: Path, settings: Settings) -> tuple[tuple[str, ...], tuple[PassedOver, ...]]:
    """Of all TOML files of a repository those that hold specs, and those that are passed over.

    Neither are the settings, the register, the files of materials and the mappings of tables, which are read as what
    they are.
    """
    specs: list[str] = []
    passed_over: list[PassedOver] = []
    links: list[str] = []
    unreadable: list[tuple[str, str]] = []
    files = tuple(toml_files(root, links, unreadable))
    closed = [PassedOver(f"{folder}/", _LINK) for folder in links]
    closed += [
        PassedOver(f"{folder}/", f"the folder cannot be read: {why}", unknown=True)
        for folder, why in unreadable
    ]
    mappings = (*settings.made.mappings, *settings.tables.mappings)
    own = {FILE_NAME, settings.register_file, *settings.materials, *mappings}
    nested = {file.rpartition("/")[0] for file in files if file.rpartition("/")[2] == FILE_NAME} - {""}
    for folder in closed:  # what is hidden or left out anyway hides nothing
        why = _why_passed_over(f"{folder.file}any{SUFFIX}", nested, settings)
        passed_over.append(PassedOver(folder.file, why) if folder.unknown and why else folder)
    for file in files:
        if file in own or file.rpartition("/")[2] == FILE_NAME:
            continue
        why = _why_passed_over(file, nested, settings) or _why_not_read(root, file)
        if why:
            passed_over.append(PassedOver(file, why))
        else:
            specs.append(file)
    return tuple(specs), tuple(sorted(passed_over, key=lambda one: one.file))


def _why_not_read(root: Path, file: str) -> str:
    """The reason why a file is not read at all; "" for a regular file, and for a link to one inside the repository."""
    try:
        regular = stat.S_ISREG(os.lstat(f"{root}/{file}").st_mode)
    except OSError:
        return ""  # whoever reads it says what is wrong
    what = "" if regular else not_regular(root, file)
    return f"it is {what}" if what else ""


def _why_passed_over(file: str, nested: Collection[str], settings: Settings) -> str:
    """The reason why a file is not read as a spec; "" where it is."""
    *folders, name = file.split("/")
    within = ("/".join(folders[:depth]) for depth in range(1, len(folders) + 1))
    if nested and (outermost := next((folder for folder in within if folder in nested), "")):
        return f"{outermost}/{FILE_NAME} makes its folder a repository of its own"
    if hidden := next((folder for folder in folders if folder.startswith(".")), ""):
        return f"its folder {hidden} is hidden: the name begins with a dot"
    if name.startswith("."):
        return "its name begins with a dot"
    suffix = os.path.splitext(name)[1]
    if suffix != SUFFIX:
        return f"its name ends in {suffix}, not in {SUFFIX}"
    pattern = next((one for one in settings.leave_out if fnmatch(file, one)), "")
    return f'{FILE_NAME} leaves out "{pattern}"' if pattern else ""
