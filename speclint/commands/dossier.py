"""the record for whoever certifies: safety parts as made, papers, concessions, sheets, what is open"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import families_for, kept_folder
from speclint.commands.options import add_afresh, add_schema
from speclint.commands.output import write, write_data
from speclint.commands.progress import progress

if TYPE_CHECKING:
    from speclint.families import Loaded
    from speclint.repository import Design

EXAMPLE = "speclint dossier example_specs/covers"


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
    from speclint.repository import find_root

    if options.schema:
        from speclint.reports import published_schema

        write(published_schema("speclint.dossier/1"), options.to)
        return 0
    root = find_root(options.paths)
    only = partial(_chosen, root, [path.resolve() for path in options.paths])
    kept = kept_folder(options.afresh)
    with progress("checking") as shown, Processes(on_part=shown.part) as processes:
        drawn = assess([root], families_for([root]), processes=processes, only=only, kept=kept)
    if options.form == "json":
        write_data(dossier_data(drawn), options.to)
    elif options.form == "html":
        write(dossier_html(drawn), options.to)
    else:
        write(dossier_markdown(drawn), options.to)
    return dossier_exit_code(drawn)


def _chosen(root: Path, places: Sequence[Path], design: Design, _: Loaded) -> frozenset[str]:
    """The components whose spec lies at one of some places, and the parts as made of them, wherever these lie."""
    from speclint.made import made_parts, made_to

    own = {
        name
        for name in design.part_names()
        if any((root / design.files[name]).resolve().is_relative_to(place) for place in places)
    }
    specs = ((one.id, made_to(one, design)) for one in made_parts(design))
    return frozenset(own | {name for name, spec in specs if spec is not None and spec.id in own})
