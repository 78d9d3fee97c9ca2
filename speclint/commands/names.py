"""what may be written: materials, gaskets, load cases, threads, units, and whatever else a key accepts"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import families_for
from speclint.commands.options import FOLDER
from speclint.commands.output import show, write_data
from speclint.errors import DesignError, SettingsError, one_of

if TYPE_CHECKING:
    from speclint.families import NameList, NameLists

EXAMPLE = "speclint names materials P355GH"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which list or key, what is looked for in it, and in what form."""
    parser.add_argument(
        "word",
        nargs="?",
        default="",
        metavar="LIST",
        help="a list, such as materials; or what a key accepts, as KIND.KEY or COMPONENT.KEY",
    )
    parser.add_argument("text", nargs="*", metavar="TEXT", help="only names with this in them or beside them")
    parser.add_argument("--in", **FOLDER)
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")


def run(options: argparse.Namespace) -> int:
    """Print the lists, or one of them; returns the exit code."""
    from speclint.reports import lists_page, names_data, names_page

    lists = _lists(options.folder)
    if options.word:
        found = _holding(lists.of(options.word), " ".join(options.text))
    else:
        found = tuple(one for word in lists.called() for one in lists.of(word))
    if options.form == "json":
        write_data(names_data(found))
    elif options.word:
        show(lambda width: names_page(found, width))
    else:
        show(lambda width: lists_page(found, width))
    return 0


def _lists(folder: Path) -> NameLists:
    """The lists of what is loaded, and of the design repository where there is one."""
    from speclint.families import NameLists
    from speclint.repository import find_root, open_repository

    loaded = families_for([folder])
    try:
        root = find_root([folder])
    except DesignError:
        return NameLists(loaded.kinds, loaded.materials)
    opened = open_repository([root], loaded.kinds, of_families=tuple(loaded.materials))
    if opened.complaints:
        number = len(opened.complaints)
        print(
            f"speclint: {number} line{'s' if number > 1 else ''} of the repository could not be read, and names "
            "that stand there are wanting: speclint check says which",
            file=sys.stderr,
        )
    return NameLists(loaded.kinds, {**loaded.materials, **opened.materials}, opened.design)


def _holding(lists: tuple[NameList, ...], text: str) -> tuple[NameList, ...]:
    """The lists with only the names in which a text is found.

    :raises SettingsError: where it is found in none.
    """
    some = tuple(found for one in lists if (found := one.holding(text)).names or not text)
    if text and not some:
        known = [name.name for one in lists for name in one.names]
        near = one_of(text, known)
        instead = f"; write {near}" if near.startswith('"') else ""
        raise SettingsError(f'{lists[0].called}: no name has "{text}" in it or beside it{instead}')
    return some
