"""the rules loaded, with their sources"""

from __future__ import annotations

import argparse
from pathlib import Path

from speclint.commands.loading import families_for
from speclint.commands.output import show, write_data

EXAMPLE = "speclint rules liner.wall-at-last-bore"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which rule, and whether as data."""
    parser.add_argument("rule", metavar="RULE", nargs="?", default="", help="one rule in full")
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")


def run(options: argparse.Namespace) -> int:
    """Print the rules; returns the exit code."""
    from speclint.checking import chosen_rules
    from speclint.reports import listings

    rules = chosen_rules(families_for([Path()]), [], [options.rule] if options.rule else [])
    if options.form == "json":
        write_data(listings.rules_data(rules))
    else:
        show(lambda width: listings.rules_page(rules, width, full=bool(options.rule)), None)
    return 0
