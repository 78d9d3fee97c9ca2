"""what nobody looked at: hazards without a rule, and what the rules leave out"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for, kept_folder
from speclint.commands.options import add_afresh
from speclint.commands.output import show, write_data
from speclint.commands.progress import progress

EXAMPLE = "speclint unseen example_specs/liners"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which specs, whether of one component alone, and in what form."""
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument("--of", dest="component", default="", metavar="COMPONENT", help="one component alone")
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write it to a file")
    add_afresh(parser)


def run(options: argparse.Namespace) -> int:
    """Check the specs, and print what nobody looked at; returns the exit code."""
    from speclint.checking import Processes, assess, unseen
    from speclint.reports import unseen_data, unseen_page
    from speclint.repository import no_component_called

    loaded = families_for(options.paths)
    kept = kept_folder(options.afresh)
    with progress("checking"), Processes() as processes:
        assessment = assess(options.paths, loaded, processes=processes, kept=kept)
    known = assessment.design.part_names() if assessment.design else ()
    if options.component and options.component not in known:
        raise no_component_called(options.component, known)
    found = unseen(assessment, options.component)
    if options.form == "json":
        write_data(unseen_data(found), options.to)
    else:
        show(lambda width: unseen_page(found, width), options.to)
    return 2 if assessment.complaints else 0
