"""enter that a drawing was read against its spec"""

from __future__ import annotations

import argparse
import datetime as dt
from pathlib import Path

from speclint.commands.loading import loaded_families
from speclint.commands.options import FOLDER
from speclint.commands.output import show

EXAMPLE = 'speclint read nozzle-left --by "M. Coyle" --in example_specs'


def add_options(parser: argparse.ArgumentParser) -> None:
    """Of which components, and who read their drawings."""
    parser.add_argument(
        "component",
        metavar="COMPONENT",
        nargs="+",
        help="the id of a component whose drawing was read against its spec",
    )
    parser.add_argument("--by", required=True, metavar="NAME", help="who read it")
    parser.add_argument(
        "--role", default="", metavar="TEXT", help="in what role; that of speclint.toml where not given"
    )
    parser.add_argument("--key", type=Path, metavar="FILE", help="sign with this SSH key")
    parser.add_argument("--in", **FOLDER)


def run(options: argparse.Namespace) -> int:
    """Enter the readings, and print them; returns the exit code."""
    from speclint.register import Reader, enter_reading
    from speclint.reports import reading_slip

    made, file = enter_reading(
        options.component,
        Reader(options.by, options.role),
        options.folder,
        loaded_families(),
        dt.date.today(),
        options.key,
    )
    show(lambda width: reading_slip(made, file, "entered", width))
    return 0
