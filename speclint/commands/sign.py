"""sign an entry of the register"""

from __future__ import annotations

import argparse
import datetime as dt
from pathlib import Path

from speclint.commands.loading import loaded_families
from speclint.commands.options import FOLDER
from speclint.commands.output import show

EXAMPLE = "speclint sign C-001 --key coyle_key --in example_specs"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which entry, and with which key."""
    parser.add_argument("number", metavar="NUMBER", help="the number of the entry: C-001 or R-001")
    parser.add_argument("--key", required=True, type=Path, metavar="FILE", help="the SSH key to sign with")
    parser.add_argument("--in", **FOLDER)


def run(options: argparse.Namespace) -> int:
    """Sign the entry, and print it; returns the exit code."""
    from speclint.register import sign_entry
    from speclint.reports import reading_slip, slip
    from speclint.repository import Concession

    signed, file = sign_entry(options.number, options.folder, loaded_families(), dt.date.today(), options.key)
    if isinstance(signed, Concession):
        concession = signed
        show(lambda width: slip(concession, file, "signed", width))
    else:
        reading = signed
        show(lambda width: reading_slip([reading], file, "signed", width))
    return 0
