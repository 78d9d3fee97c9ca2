"""what a change did: specs, findings and every margin, between two states of a design"""

from __future__ import annotations

import argparse
from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import families_for, kept_folder
from speclint.commands.options import add_afresh
from speclint.commands.output import show, write, write_data
from speclint.commands.progress import progress

if TYPE_CHECKING:
    from speclint.register import Comparison

EXAMPLE = "speclint compare HEAD --in example_specs/pipes --rule pipe.wall"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which two states, by which rules, and in what form."""
    parser.add_argument(
        "old",
        metavar="OLD",
        help="a git revision, a folder, or a report of speclint check --as json, which also has the editions of rules",
    )
    parser.add_argument(
        "new",
        nargs="?",
        default="",
        metavar="NEW",
        help="the same; without it the repository as it lies there",
    )
    parser.add_argument(
        "--in",
        dest="folder",
        type=Path,
        default=Path(),
        metavar="FOLDER",
        help="the repository whose revisions are meant, or a part of it",
    )
    parser.add_argument(
        "--family", action="append", default=[], metavar="NAME", help="only this family's rules"
    )
    parser.add_argument("--rule", action="append", default=[], metavar="RULE", help="only this rule")
    parser.add_argument(
        "--full", action="store_true", help="every value and every margin, also those that stayed"
    )
    parser.add_argument("--as", dest="form", choices=["markdown", "json"], help="a change note, or as data")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write it to a file")
    add_afresh(parser)
    parser.add_argument(
        "--schema", action="store_true", help="the JSON Schema of what --as json writes; nothing is compared"
    )


def run(options: argparse.Namespace) -> int:
    """Check both states, and print what differs; returns the exit code."""
    from speclint.checking import Processes, rules_asked_for
    from speclint.register import Checking, compare, place_of, state_at
    from speclint.repository import scratch_folder

    if options.schema:
        from speclint.reports import comparison_schema

        write(comparison_schema(), options.to)
        return 0
    new = options.new or str(options.folder)
    loaded = families_for([Path(one) for one in (new, options.folder) if Path(one).is_dir()][:1])
    some = rules_asked_for(loaded, options.family, options.rule)
    kept = kept_folder(options.afresh)
    words = {"old": options.old, "new": new}
    places = {name: place_of(word, options.folder) for name, word in words.items()}
    with progress("checking") as shown, scratch_folder() as scratch:
        how = Checking(loaded, date.today(), partial(Processes, on_part=shown.part), some, kept)
        states = []
        for name, word in words.items():
            shown(f"checking {word}")
            states.append(state_at(places[name], word, options.folder, scratch / name, how))
        found = compare(*states)
    _print(options, found)
    return found.exit_code


def _print(options: argparse.Namespace, found: Comparison) -> None:
    if options.form == "json":
        from speclint.reports import comparison_data

        write_data(comparison_data(found), options.to)
    elif options.form == "markdown":
        from speclint.reports import comparison_markdown

        write(comparison_markdown(found), options.to)
    else:
        from speclint.reports import comparison_page

        show(lambda width: comparison_page(found, width, full=options.full), options.to)
