"""Words on the command line, one call each. No logic lives here."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.output import show, write, write_data
from speclint.commands.progress import progress
from speclint.commands.register import add_register_commands
from speclint.commands.review import add_review_commands
from speclint.errors import SettingsError, SpeclintError

if TYPE_CHECKING:
    from speclint.families import Loaded, ReportWriter
    from speclint.rules import Rule

_DESCRIPTION = """Checks component specs of a steam locomotive against the rules of the trade, with full working.
It supports a competent person and the local codes; it replaces neither."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code.

    0 nothing in the way; 1 findings; 2 a spec, setting or option could not be read; 3 a rule or a family
    could not be run.
    """
    from speclint.reports import speak_utf8

    speak_utf8()
    options = _parser().parse_args(arguments)
    command: Callable[[argparse.Namespace], int] = options.command
    try:
        return command(options)
    except SpeclintError as problem:
        print(f"speclint: {problem}", file=sys.stderr)
        return problem.exit_code
    except BrokenPipeError:
        # the reader of a pipe has left: let the interpreter's last flush find a place to go
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="speclint", description=_DESCRIPTION, allow_abbrev=False)
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    _check_options(
        commands.add_parser("check", help="check specs and print the findings", allow_abbrev=False)
    )
    add_review_commands(commands)
    _rules_options(
        commands.add_parser("rules", help="the rules loaded, with their sources", allow_abbrev=False)
    )
    _kinds_options(
        commands.add_parser("kinds", help="the kinds of component and their keys", allow_abbrev=False)
    )
    families = commands.add_parser("families", help="the families loaded, with versions", allow_abbrev=False)
    families.set_defaults(command=_families)
    add_register_commands(commands)
    return parser


def _check_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "paths", nargs="*", type=Path, default=[Path()], metavar="PATH", help="specs or folders"
    )
    parser.add_argument("--as", dest="form", default="", metavar="FORM", help="a report writer, such as json")
    parser.add_argument("--to", type=Path, metavar="FILE", help="write the report to a file")
    parser.add_argument(
        "--family", action="append", default=[], metavar="NAME", help="only this family's rules"
    )
    parser.add_argument("--rule", action="append", default=[], metavar="RULE", help="only this rule")
    parser.add_argument(
        "--staged", action="store_true", help="what is staged in git, and only what it can have changed"
    )
    parser.add_argument(
        "--schema", action="store_true", help="the JSON Schema of what --as json writes; nothing is checked"
    )
    parser.set_defaults(command=_check)


def _rules_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("rule", nargs="?", default="", help="one rule in full")
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")
    parser.set_defaults(command=_rules)


def _kinds_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("kind", nargs="?", default="", help="one kind with its keys")
    parser.add_argument(
        "--as",
        dest="form",
        choices=["schema", "template"],
        help="as JSON Schema, or as a blank spec to fill in",
    )
    parser.set_defaults(command=_kinds)


def _check(options: argparse.Namespace) -> int:
    from speclint.checking import Processes, assess, chosen_rules, find_remedies

    if options.schema:
        from speclint.reports import schema

        write(schema(), options.to)
        return 0
    loaded = _loaded()
    writer = None
    if options.form:
        if options.form not in loaded.writers:
            raise SettingsError(
                f"no report is called {options.form}; there is {', '.join(sorted(loaded.writers))}"
            )
        writer = loaded.writers[options.form]
    some = chosen_rules(loaded, options.family, options.rule) if options.family or options.rule else None
    if options.staged:
        return _check_staged(options, loaded, some, writer)
    with progress("checking") as told, Processes() as processes:
        assessment = assess(options.paths, loaded, some, processes=processes)
        if writer is None:
            told("looking for remedies")
            find_remedies(assessment, processes)
    if writer is not None:
        write(writer.write(assessment), options.to)
    else:
        from speclint.reports import terminal_page as terminal

        show(lambda width: terminal.write(assessment, width), options.to)
    return assessment.exit_code


def _check_staged(
    options: argparse.Namespace,
    loaded: Loaded,
    rules: Sequence[Rule] | None,
    writer: ReportWriter | None,
) -> int:
    from datetime import date

    from speclint.register import assess_staged

    found = assess_staged(options.paths, loaded, date.today(), rules)
    if writer is not None:
        write(writer.write(found.assessment), options.to)
    else:
        from speclint.reports import staged_page

        show(lambda width: staged_page(found, width), options.to)
    return found.assessment.exit_code


def _rules(options: argparse.Namespace) -> int:
    from speclint.checking import chosen_rules
    from speclint.reports import listings

    rules = chosen_rules(_loaded(), [], [options.rule] if options.rule else [])
    if options.form == "json":
        write_data(listings.rules_data(rules))
    else:
        show(lambda width: listings.rules_page(rules, width, full=bool(options.rule)), None)
    return 0


def _kinds(options: argparse.Namespace) -> int:
    from speclint.reports import listings

    kinds = _loaded().kinds
    if options.kind and options.kind not in kinds:
        from speclint.errors import one_of

        raise SettingsError(f"no kind is called {options.kind}; {one_of(options.kind, kinds)}")
    if options.form == "schema":
        from speclint.specs import schema_of, schemas_of

        write_data(schema_of(kinds[options.kind]) if options.kind else schemas_of(kinds.values()))
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


def _families(_: argparse.Namespace) -> int:
    from speclint.reports import listings

    loaded = _loaded()
    show(lambda width: listings.families_page(loaded, width), None)
    return 0


def _loaded() -> Loaded:
    from speclint.commands.loading import loaded_families

    return loaded_families()
