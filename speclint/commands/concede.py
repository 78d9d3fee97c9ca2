"""enter a concession in the register"""

from __future__ import annotations

import argparse
import datetime as dt
from pathlib import Path

from speclint.commands.loading import loaded_families
from speclint.commands.options import FOLDER, day
from speclint.commands.output import show

EXAMPLE = (
    'speclint concede pipe-live-right pipe.wall --by "B. Thorne" --grounds "gauged each year" '
    "--until 2030-05-31 --in example_specs"
)


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which finding or withdrawal, and who accepts it on what grounds until when."""
    parser.add_argument(
        "component",
        metavar="COMPONENT",
        help="the id of the component with the finding, or that is withdrawn",
    )
    parser.add_argument(
        "rule", metavar="RULE", help='the rule that found it; "withdrawal" where a change takes the part away'
    )
    parser.add_argument(
        "--alike", action="store_true", help="accept it on every part on which it is the same"
    )
    parser.add_argument("--by", required=True, metavar="NAME", help="who accepts the finding")
    parser.add_argument("--grounds", required=True, metavar="TEXT", help="why it can be accepted")
    parser.add_argument("--until", required=True, type=day, metavar="DATE", help="its last day: 2027-05-31")
    parser.add_argument(
        "--role", default="", metavar="TEXT", help="in what role; that of speclint.toml where not given"
    )
    parser.add_argument("--reference", default="", metavar="TEXT", help="a report, a drawing, a minute")
    parser.add_argument(
        "--against",
        metavar="REV",
        help="accept it as a change since this git revision, on the design basis of then",
    )
    parser.add_argument("--key", type=Path, metavar="FILE", help="sign with this SSH key")
    parser.add_argument("--in", **FOLDER)


def run(options: argparse.Namespace) -> int:
    """Enter the concession, and print the entry; returns the exit code."""
    from speclint.register import Acceptance, concede
    from speclint.reports import slip

    acceptance = Acceptance(
        component=options.component,
        rule=options.rule,
        accepted_by=options.by,
        grounds=options.grounds,
        until=options.until,
        role=options.role,
        reference=options.reference,
        alike=options.alike,
    )
    made, file = concede(
        acceptance, options.folder, loaded_families(), dt.date.today(), options.key, options.against
    )
    show(lambda width: slip(made, file, "entered", width))
    return 0
