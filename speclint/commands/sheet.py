"""the full calculation of a component"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import families_for
from speclint.commands.options import FOLDER, UNITS
from speclint.commands.output import show, write
from speclint.commands.progress import progress
from speclint.commands.streams import complain

if TYPE_CHECKING:
    from speclint.checking import Assessment

EXAMPLE = "speclint sheet liner-right liner.wall-at-last-bore --in example_specs"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which component and rule, and how the sheet is written."""
    parser.add_argument("component", metavar="COMPONENT", help="the id of a component")
    parser.add_argument(
        "rule", metavar="RULE", nargs="?", default="", help="one rule; all that apply to it where not given"
    )
    parser.add_argument("--in", **FOLDER)
    parser.add_argument("--as", dest="form", choices=("markdown", "html"), help="as Markdown or HTML")
    parser.add_argument(
        "--units", default="as written", choices=UNITS, help="those of the settings where not given"
    )
    parser.add_argument("--to", type=Path, metavar="FILE", help="write the sheet to a file")


def run(options: argparse.Namespace) -> int:
    """Make the sheets, and print them; returns the exit code."""
    from speclint.checking import assess, chosen_rules, of_component
    from speclint.reports import visible

    loaded = families_for([options.folder])
    rules = chosen_rules(loaded, [], [options.rule] if options.rule else [])
    with progress("checking"):
        whole = assess([options.folder], loaded, rules, only=lambda *_: {options.component})
    assessment = of_component(whole, options.component)
    if assessment.checks:
        _print(assessment, options)
    for line in _not_on_it(assessment, options):
        complain(visible(line))
    return assessment.exit_code


def _print(assessment: Assessment, options: argparse.Namespace) -> None:
    """The sheets of the checks of an assessment, in the form that is asked for."""
    if options.form == "markdown":
        from speclint.reports import sheet_markdown

        write(sheet_markdown.write(assessment, assessment.checks, options.units), options.to)
    elif options.form == "html":
        from speclint.reports import sheet_document

        write(sheet_document(assessment, assessment.checks, options.units), options.to)
    else:
        from speclint.reports import sheet_page

        show(lambda width: sheet_page.write(assessment, assessment.checks, width, options.units), options.to)


def _not_on_it(assessment: Assessment, options: argparse.Namespace) -> Iterator[str]:
    """Why there is less on the sheet than was asked for: what could not be read, or that nothing applies."""
    yield from map(str, assessment.complaints)
    if not assessment.checks and not assessment.complaints:
        yield f"{options.rule or 'no rule'} {'does not apply' if options.rule else 'applies'} to {options.component}"
