"""what is inspected on a part: dimensions ranked by the margin they carry, points, certificates"""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import families_for, kept_folder
from speclint.commands.options import FOLDER, add_afresh, add_schema
from speclint.commands.output import show, write, write_data
from speclint.commands.progress import progress
from speclint.errors import SettingsError

if TYPE_CHECKING:
    from speclint.checking import Assessment
    from speclint.made import InspectionList

EXAMPLE = "speclint inspect ring-left-middle --in example_specs"
#: Rows of one dimension on a sheet: common practice, four places round and eight along a bore.
_MOST_VALUES = 32


def add_options(parser: argparse.ArgumentParser) -> None:
    """Of which component, and in what form."""
    parser.add_argument("component", metavar="COMPONENT", help="the id of a component")
    parser.add_argument("--in", **FOLDER)
    parser.add_argument(
        "--as",
        dest="form",
        choices=("csv", "html", "json", "markdown"),
        help="a sheet to be filled in, as a table or printed; as data; as Markdown",
    )
    parser.add_argument(
        "--values", type=int, default=1, metavar="N", help="empty rows for each dimension of a sheet"
    )
    parser.add_argument("--to", type=Path, metavar="FILE", help="write it to a file")
    add_afresh(parser)
    add_schema(parser)


def run(options: argparse.Namespace) -> int:
    """Check the design, vary what its checks took of the component, and print the list; returns the exit code."""
    from speclint.checking import Processes, assess
    from speclint.made import checked_for, inspection_list

    if options.schema:
        from speclint.reports import published_schema

        write(published_schema("speclint.inspection/1"), options.to)
        return 0
    if not 1 <= options.values <= _MOST_VALUES:
        raise SettingsError(f"--values is a number from 1 to {_MOST_VALUES}, not {options.values}")
    if options.values > 1 and options.form not in ("csv", "html"):
        raise SettingsError("--values is for a sheet to be filled in: --as csv or --as html")
    loaded = families_for([options.folder])
    kept = kept_folder(options.afresh)
    with progress("checking") as shown, Processes(on_part=shown.part) as processes:
        drawn = assess(
            [options.folder],
            loaded,
            processes=processes,
            only=lambda design, _: checked_for(options.component, design),
            kept=kept,
        )
        found = inspection_list(drawn, options.component, lambda name: shown(f"varying what {name} rests on"))
    _show(drawn, found, options)
    return 2 if drawn.complaints else 0


def _show(drawn: Assessment, found: InspectionList, options: argparse.Namespace) -> None:
    from speclint.reports import (
        inspection_csv,
        inspection_data,
        inspection_document,
        inspection_markdown,
        inspection_page,
    )

    if options.form == "json":
        write_data(inspection_data(drawn, found), options.to)
    elif options.form == "csv":
        write(inspection_csv(found, options.values), options.to)
    elif options.form == "html":
        write(inspection_document(drawn, found, options.values), options.to)
    elif options.form == "markdown":
        write(inspection_markdown(drawn, found), options.to)
    else:
        show(lambda width: inspection_page(drawn, found, width), options.to)
