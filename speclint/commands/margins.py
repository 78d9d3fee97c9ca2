"""how much of each limit is used, the least to spare first, and by which tolerances and temperatures"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for, kept_folder
from speclint.commands.options import FOLDER, add_afresh
from speclint.commands.output import show, write, write_data
from speclint.commands.progress import progress
from speclint.errors import SettingsError

EXAMPLE = "speclint margins ring-left-middle --in example_specs"
#: Checks of a whole design whose values are varied where nothing else is said: those with the least to spare.
_FIRST = 20
_MOST = 100_000


def add_options(parser: argparse.ArgumentParser) -> None:
    """Of which component, how many checks in detail, and in what form."""
    parser.add_argument(
        "component", nargs="?", default="", metavar="COMPONENT", help="the id of a component; all by default"
    )
    parser.add_argument("--in", **FOLDER)
    parser.add_argument(
        "--vary",
        type=int,
        metavar="N",
        help="vary the values of the first N checks; of one component all by default, of all 20",
    )
    parser.add_argument("--as", dest="form", choices=["csv", "json"], help="as a table, or as data")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write it to a file")
    add_afresh(parser)
    parser.add_argument(
        "--schema", action="store_true", help="the JSON Schema of what --as json writes; nothing is checked"
    )


def run(options: argparse.Namespace) -> int:
    """Check the design, vary what its checks took, and print the margins; returns the exit code."""
    from speclint.checking import Processes, assess, margins
    from speclint.reports import margins_csv, margins_data, margins_page, margins_schema

    if options.schema:
        write(margins_schema(), options.to)
        return 0
    most = options.vary if options.vary is not None else (_MOST if options.component else _FIRST)
    if not 0 <= most <= _MOST:
        raise SettingsError(f"--vary is a number of checks from 0 to {_MOST}, not {most}")
    loaded = families_for([options.folder])
    kept = kept_folder(options.afresh)
    with progress("checking") as shown, Processes(on_part=shown.part) as processes:
        assessment = assess(
            [options.folder],
            loaded,
            processes=processes,
            only=(lambda *_: {options.component}) if options.component else None,
            kept=kept,
        )
        shown("varying values")
        found = margins(assessment, options.component, most, shown.part)
    if options.form == "json":
        write_data(margins_data(assessment, found), options.to)
    elif options.form == "csv":
        write(margins_csv(found), options.to)
    else:
        show(lambda width: margins_page(assessment, found, width), options.to)
    return 2 if assessment.complaints else 0
