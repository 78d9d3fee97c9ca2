"""the record for whoever certifies: safety parts as made, papers, concessions, sheets, what is open"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for, kept_folder
from speclint.commands.options import add_afresh, add_schema
from speclint.commands.output import write, write_data
from speclint.commands.progress import progress

EXAMPLE = "speclint dossier example_specs --as html --to record.html"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Of which repository, and in what form."""
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument(
        "--as",
        dest="form",
        choices=("html", "json", "markdown"),
        default="markdown",
        help="as Markdown where not given",
    )
    parser.add_argument("--to", type=Path, metavar="FILE", help="write it to a file")
    add_afresh(parser)
    add_schema(parser)


def run(options: argparse.Namespace) -> int:
    """Check the design, and write the record; returns the exit code."""
    from speclint.checking import Processes, assess
    from speclint.reports import dossier_data, dossier_exit_code, dossier_html, dossier_markdown

    if options.schema:
        from speclint.reports import published_schema

        write(published_schema("speclint.dossier/1"), options.to)
        return 0
    kept = None if options.afresh else kept_folder()
    with progress("checking") as shown, Processes(on_part=shown.part) as processes:
        drawn = assess(options.paths, families_for(options.paths), processes=processes, kept=kept)
    if options.form == "json":
        write_data(dossier_data(drawn), options.to)
    elif options.form == "html":
        write(dossier_html(drawn), options.to)
    else:
        write(dossier_markdown(drawn), options.to)
    return dossier_exit_code(drawn)
