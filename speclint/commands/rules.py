"""the rules loaded, with their sources"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for
from speclint.commands.output import show, write_data

EXAMPLE = "speclint rules liner.wall-at-last-bore"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which rule, or what is looked for in them, and whether as data."""
    parser.add_argument(
        "words",
        metavar="RULE|TEXT",
        nargs="*",
        help="one rule in full, with its formulae; or the rules with these words in name, family, statement or kinds",
    )
    parser.add_argument(
        "--family", action="append", default=[], metavar="NAME", help="only this family's rules"
    )
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")


def run(options: argparse.Namespace) -> int:
    """Print the rules; returns the exit code."""
    from speclint.checking import chosen_rules
    from speclint.reports import listings

    rules, text = chosen_rules(families_for([Path()]), options.family, []), " ".join(options.words)
    named = tuple(one for one in rules if one.name == text)
    found = named or listings.rules_holding(rules, text)
    if options.form == "json":
        write_data(listings.rules_data(found, full=bool(named)))
    else:
        show(lambda width: listings.rules_page(found, width, full=bool(named)), None)
    return 0
