"""the concessions and the readings of drawings, and the state of each"""

from __future__ import annotations

import argparse
import datetime as dt

from speclint.commands.loading import loaded_families
from speclint.commands.options import FOLDER
from speclint.commands.output import show, write_data

EXAMPLE = "speclint register --in example_specs"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Of which repository, and in what form."""
    parser.add_argument("--in", **FOLDER)
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")


def run(options: argparse.Namespace) -> int:
    """Print the register; returns the exit code."""
    from speclint.register import stand_of
    from speclint.reports import exit_code, register_data, register_page

    register, stand, read = stand_of(options.folder, loaded_families(), dt.date.today())
    if options.form == "json":
        write_data(register_data(register, stand, read))
    else:
        show(lambda width: register_page(register, stand, read, width))
    return exit_code(register, stand, read)
