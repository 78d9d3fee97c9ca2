"""The words of the commands that set out working: sheet and review. One call each, as in the others."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from speclint.commands.output import show, write
from speclint.commands.progress import progress

_FORMS = ("markdown", "html")
_UNITS = ("metric", "imperial")


def add_review_commands(commands: Any) -> None:
    """Add the commands to those of the command line."""
    sheet = commands.add_parser("sheet", help="the full calculation of a component", allow_abbrev=False)
    _sheet_words(sheet)
    review = commands.add_parser(
        "review", help="the review pack: one page of HTML for a design review", allow_abbrev=False
    )
    _review_words(review)


def _sheet_words(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("component", help="the id of a component")
    parser.add_argument("rule", nargs="?", default="", help="one rule; all that concern it where not given")
    parser.add_argument(
        "--in", dest="folder", type=Path, default=Path(), metavar="FOLDER", help="the repository"
    )
    parser.add_argument("--as", dest="form", choices=_FORMS, help="as Markdown or HTML")
    parser.add_argument(
        "--units", default="as written", choices=_UNITS, help="as the spec wrote them where not given"
    )
    parser.add_argument("--to", type=Path, metavar="FILE", help="write the sheet to a file")
    parser.set_defaults(command=_sheet)


def _review_words(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument("--to", type=Path, required=True, metavar="FOLDER", help="where review.html goes")
    parser.add_argument(
        "--units", default="as written", choices=_UNITS, help="as the spec wrote them where not given"
    )
    parser.set_defaults(command=_review)


def _review(options: argparse.Namespace) -> int:
    from speclint.checking import Processes, assess, find_remedies
    from speclint.commands.loading import loaded_families
    from speclint.errors import SettingsError
    from speclint.reports import REVIEW_FILE, review_page

    with progress("checking") as told, Processes() as processes:
        assessment = assess(options.paths, loaded_families(), processes=processes)
        told("looking for remedies")
        find_remedies(assessment, processes)
        page = review_page(assessment, options.units, told, processes)
    try:
        options.to.mkdir(parents=True, exist_ok=True)
    except OSError as problem:
        raise SettingsError(f"{options.to}: cannot be made: {problem.strerror or problem}") from problem
    write(page, options.to / REVIEW_FILE)
    write(f"{options.to / REVIEW_FILE}\n")
    return assessment.exit_code


def _sheet(options: argparse.Namespace) -> int:
    from speclint.checking import assess, chosen_rules, of_component
    from speclint.commands.loading import loaded_families

    loaded = loaded_families()
    rules = chosen_rules(loaded, [], [options.rule] if options.rule else [])
    with progress("checking"):
        whole = assess([options.folder], loaded, rules, only=options.component)
    assessment = of_component(whole, options.component)
    if options.form == "markdown":
        from speclint.reports import sheet_markdown

        write(sheet_markdown.write(assessment, assessment.checks, options.units), options.to)
    elif options.form == "html":
        from speclint.reports import sheet_document

        write(sheet_document(assessment, assessment.checks, options.units), options.to)
    else:
        from speclint.reports import sheet_page as working

        show(lambda width: working.write(assessment, assessment.checks, width, options.units), options.to)
    return assessment.exit_code
