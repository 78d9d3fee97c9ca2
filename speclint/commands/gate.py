"""may this be released? withheld unless all is in order"""

from __future__ import annotations

import argparse
import datetime as dt
from functools import partial
from pathlib import Path

from speclint.commands.loading import kept_folder, loaded_families
from speclint.commands.output import show, write_data
from speclint.commands.progress import progress

EXAMPLE = "speclint gate example_specs/liners"


def add_options(parser: argparse.ArgumentParser) -> None:
    """What is to be released, and against which revision."""
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument(
        "--against", metavar="REV", help="judge the change since this git revision by what judged it then"
    )
    parser.add_argument(
        "--kept",
        action="store_true",
        help="take checks of earlier runs that still hold; else all are made anew",
    )
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write the decision to a file")


def run(options: argparse.Namespace) -> int:
    """Decide, and print the decision; returns the exit code."""
    from speclint.checking import Processes
    from speclint.register import judge
    from speclint.reports import gate_data, gate_page

    kept = kept_folder(not options.kept)
    with progress("checking") as shown:
        workers = partial(Processes, on_part=shown.part)
        decision = judge(options.paths, loaded_families, dt.date.today(), options.against, kept, workers)
    if options.form == "json":
        write_data(gate_data(decision), options.to)
    else:
        show(lambda width: gate_page(decision, width), options.to)
    return decision.exit_code
