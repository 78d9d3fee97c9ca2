"""the kinds of component and their keys"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for, refuse_unknown_kind
from speclint.commands.output import show, write, write_data
from speclint.errors import SettingsError

EXAMPLE = "speclint kinds valve-seat"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which kind, and in what form."""
    parser.add_argument("kind", metavar="KIND", nargs="?", default="", help="one kind with its keys")
    parser.add_argument(
        "--as",
        dest="form",
        choices=["schema", "schema-of-all", "schema-of-settings", "template"],
        help="as JSON Schema: of each kind, one for every spec by its kind, or that of speclint.toml; or as a blank "
        "spec to fill in",
    )


def run(options: argparse.Namespace) -> int:
    """Print the kinds, or one of them; returns the exit code."""
    from speclint.reports import listings

    kinds = families_for([Path()]).kinds
    if options.kind:
        refuse_unknown_kind(options.kind, kinds)
    if options.form == "schema":
        from speclint.specs import schema_of, schemas_of

        write_data(schema_of(kinds[options.kind]) if options.kind else schemas_of(kinds.values()))
    elif options.form == "schema-of-all":
        from speclint.specs import schema_of_all

        write_data(schema_of_all(kinds.values()))
    elif options.form == "schema-of-settings":
        from speclint.repository import Settings
        from speclint.specs import schema_of_table

        write_data(schema_of_table(Settings))
    elif options.form == "template":
        from speclint.specs import template_of

        if not options.kind:
            raise SettingsError("a template is of one kind: speclint kinds KIND --as template")
        write(template_of(kinds[options.kind]), None)
    elif options.kind:
        show(lambda width: listings.kind_page(kinds[options.kind], width), None)
    else:
        show(lambda width: listings.kinds_page(kinds.values(), width), None)
    return 0
