"""the families loaded, with versions; or a new family, written to begin with"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for, loaded_families
from speclint.commands.output import show, write
from speclint.errors import SettingsError

EXAMPLE = "speclint families --new wheel-sets"


def add_options(parser: argparse.ArgumentParser) -> None:
    """A name for a new family, and where to write it."""
    parser.add_argument(
        "--new", default="", metavar="NAME", help="write a family of that name, with tests that pass"
    )
    parser.add_argument(
        "--in",
        dest="folder",
        type=Path,
        metavar="FOLDER",
        help="where to write it, in a folder speclint-NAME; here by default",
    )


def refuse_installed(name: str) -> None:
    """Refuse the name of a family that is installed: of two of one name neither could be used.

    :raises SettingsError: for such a name.
    """
    loaded = loaded_families()
    if name in {*(one.name for one in loaded.families), *(refused for refused, _ in loaded.refused)}:
        raise SettingsError(f"a family {name} is installed already: give the new one another name")


def run(options: argparse.Namespace) -> int:
    """Print the families, or write a new one; returns the exit code."""
    if options.new:
        from speclint.commands.new_family import write_family
        from speclint.reports import visible

        refuse_installed(options.new)
        files = write_family(options.new, options.folder or Path())
        write("".join(f"wrote {visible(str(path))}\n" for path in files))
        return 0
    if options.folder:
        raise SettingsError("--in says where a new family is written: give its name with --new NAME")
    from speclint.reports import listings

    loaded = families_for([Path()])
    show(lambda width: listings.families_page(loaded, width), None)
    return 0
