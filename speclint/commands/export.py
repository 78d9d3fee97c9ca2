"""the parts of a kind as a table, one row each"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from speclint.commands.loading import families_for, refuse_unknown_kind
from speclint.commands.options import FOLDER
from speclint.commands.output import write
from speclint.errors import DesignError, SettingsError

EXAMPLE = "speclint export steam-pipe --in example_specs"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which kind, of which repository, and where the table goes."""
    parser.add_argument("kind", metavar="KIND", help="the kind of the parts, such as steam-pipe")
    parser.add_argument("--in", **FOLDER)
    parser.add_argument(
        "--to",
        type=Path,
        metavar="FILE",
        help="a file that ends in .csv or .xlsx, written anew where it is there; CSV is printed without it",
    )


def run(options: argparse.Namespace) -> int:
    """Write the table, and list every part that does not stand in it; returns the exit code."""
    from speclint.repository import (
        csv_text,
        find_root,
        load_settings,
        replace_file,
        spec_files,
        spreadsheet,
        table_of_parts,
    )

    root = find_root([options.folder])
    kinds = families_for([root]).kinds
    refuse_unknown_kind(options.kind, kinds)
    settings, complaints = load_settings(root)
    if settings is None:
        raise SettingsError("; ".join(map(str, complaints)))
    table = table_of_parts(root, spec_files(root, settings), kinds, kinds[options.kind])
    if not table.rows and not table.refused:
        raise DesignError(f"{root}: no part is a {options.kind}")
    suffix = options.to.suffix.lower() if options.to is not None else ".csv"
    if suffix == ".xlsx":
        replace_file(options.to, spreadsheet(table))
    elif suffix == ".csv":
        write(csv_text(table), options.to)
    else:
        raise SettingsError(f"{options.to}: a table is a file that ends in .csv or .xlsx")
    for why in table.refused:
        print(f"speclint: not in the table: {why}", file=sys.stderr)
    return int(bool(table.refused))
