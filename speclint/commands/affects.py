"""what rests on a value: parts, checks, drawings and concessions"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import design_at, families_for, kept_folder
from speclint.commands.options import FOLDER, add_afresh
from speclint.commands.output import show, write_data
from speclint.commands.progress import progress

EXAMPLE = "speclint affects ring-left-middle.gap --in example_specs"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which value, and in what form."""
    parser.add_argument(
        "value",
        metavar="COMPONENT.KEY",
        help="a spec and a key of it, such as liner-left.bore; or a spec alone",
    )
    parser.add_argument("--in", **FOLDER)
    parser.add_argument(
        "--full", action="store_true", help="every part with its checks, also where they are many"
    )
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write it to a file")
    add_afresh(parser)


def run(options: argparse.Namespace) -> int:
    """Check the design, and print what rests on the value; returns the exit code."""
    from speclint.checking import Processes, assess, consequences, spec_with
    from speclint.reports import consequences_data, consequences_page
    from speclint.repository import component_and_key

    loaded = families_for([options.folder])
    kept = kept_folder(options.afresh)
    design = design_at([options.folder], loaded, kept)
    component, key = component_and_key(options.value, design.specs.keys())
    spec_with(design, component, key)
    with progress("checking"), Processes() as processes:
        assessment = assess([options.folder], loaded, processes=processes, kept=kept)
        found = consequences(assessment, component, key)
    if options.form == "json":
        write_data(consequences_data(assessment, found), options.to)
    else:
        show(lambda width: consequences_page(assessment, found, width, full=options.full), options.to)
    return 2 if assessment.complaints else 0
