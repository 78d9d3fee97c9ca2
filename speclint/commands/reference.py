"""all that is loaded as pages to read and to search: rules, formulae, kinds, materials, tables, names"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for
from speclint.commands.output import write

EXAMPLE = "speclint reference --to reference"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Where the pages go."""
    parser.add_argument(
        "--to",
        type=Path,
        required=True,
        metavar="FOLDER",
        help="where the pages go; those of an earlier run are written anew, and no other file is touched",
    )


def run(options: argparse.Namespace) -> int:
    """Write the reference; returns the exit code."""
    from speclint.commands.made_files import write_made
    from speclint.families import rule_examples
    from speclint.reports import REFERENCE_FRONT, REFERENCE_MARK, reference_files, visible

    loaded = families_for([Path()])
    files = reference_files(loaded, rule_examples(loaded.families))
    write_made(options.to, files, REFERENCE_MARK)
    write(f"{visible(str(options.to / REFERENCE_FRONT))}\n")
    return 0
