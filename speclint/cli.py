"""Words on the command line, one call each. No logic lives here."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.errors import SettingsError, SpeclintError

if TYPE_CHECKING:
    from speclint.plugins import Loaded
    from speclint.reports.page import Page

_DESCRIPTION = """Checks component specs of a steam locomotive against the rules of the trade, with full working.
It supports a competent person and the local codes; it replaces neither."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code.

    0 nothing in the way; 1 findings; 2 a spec, setting or option could not be read; 3 a rule or a family
    could not be run.
    """
    from speclint.reports.page import speak_utf8

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
    _sheet_options(
        commands.add_parser("sheet", help="the full calculation of a component", allow_abbrev=False)
    )
    _rules_options(
        commands.add_parser("rules", help="the rules loaded, with their sources", allow_abbrev=False)
    )
    _kinds_options(
        commands.add_parser("kinds", help="the kinds of component and their keys", allow_abbrev=False)
    )
    families = commands.add_parser("families", help="the families loaded, with versions", allow_abbrev=False)
    families.set_defaults(command=_families)
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
        "--schema", action="store_true", help="the JSON Schema of what --as json writes; nothing is checked"
    )
    parser.set_defaults(command=_check)


def _sheet_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("component", help="the id of a component")
    parser.add_argument("rule", nargs="?", default="", help="one rule; all that concern it where not given")
    parser.add_argument(
        "--in", dest="folder", type=Path, default=Path(), metavar="FOLDER", help="the repository"
    )
    parser.set_defaults(command=_sheet)


def _rules_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("rule", nargs="?", default="", help="one rule in full")
    parser.add_argument("--as", dest="form", choices=["json"], help="as data")
    parser.set_defaults(command=_rules)


def _kinds_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("kind", nargs="?", default="", help="one kind with its keys")
    parser.add_argument("--as", dest="form", choices=["schema"], help="as JSON Schema")
    parser.set_defaults(command=_kinds)


def _check(options: argparse.Namespace) -> int:
    from speclint.assessment import assess, chosen_rules

    if options.schema:
        from speclint.reports.jsoned import schema

        _write(schema(), options.to)
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
    assessment = assess(options.paths, loaded, some)
    if writer is not None:
        _write(writer.write(assessment), options.to)
    else:
        from speclint.reports import terminal

        _show(lambda width: terminal.write(assessment, width), options.to)
    return assessment.exit_code


def _sheet(options: argparse.Namespace) -> int:
    from speclint.assessment import assess, chosen_rules, of_component
    from speclint.reports import working

    loaded = _loaded()
    rules = chosen_rules(loaded, [], [options.rule] if options.rule else [])
    assessment = of_component(assess([options.folder], loaded, rules), options.component)
    _show(lambda width: working.write(assessment, assessment.checks, width), None)
    return assessment.exit_code


def _rules(options: argparse.Namespace) -> int:
    from speclint.assessment import chosen_rules
    from speclint.reports import listings

    rules = chosen_rules(_loaded(), [], [options.rule] if options.rule else [])
    if options.form == "json":
        _write_data(listings.rules_data(rules))
    else:
        _show(lambda width: listings.rules_page(rules, width, full=bool(options.rule)), None)
    return 0


def _kinds(options: argparse.Namespace) -> int:
    from speclint.reports import listings

    kinds = _loaded().kinds
    if options.kind and options.kind not in kinds:
        from speclint.complaints import one_of

        raise SettingsError(f"no kind is called {options.kind}; {one_of(options.kind, kinds)}")
    if options.form == "schema":
        from speclint.specs.schema import schema_of, schemas_of

        _write_data(schema_of(kinds[options.kind]) if options.kind else schemas_of(kinds.values()))
    elif options.kind:
        _show(lambda width: listings.kind_page(kinds[options.kind], width), None)
    else:
        _show(lambda width: listings.kinds_page(kinds.values(), width), None)
    return 0


def _families(_: argparse.Namespace) -> int:
    from speclint.reports import listings

    loaded = _loaded()
    _show(lambda width: listings.families_page(loaded, width), None)
    return 0


def _loaded() -> Loaded:
    from speclint.plugins import load_families

    return load_families()


def _show(page_of: Callable[[int], Page], file: Path | None) -> None:
    from speclint.reports.page import put, width_of

    page = page_of(width_of(sys.stdout))
    if file is not None:
        _write(page.text(), file)
    else:
        put(page, sys.stdout)


def _write(text: str, file: Path | None) -> None:
    if file is None:
        sys.stdout.write(text)
        return
    try:
        file.write_text(text, encoding="utf-8", newline="\n")
    except OSError as problem:
        raise SettingsError(f"{file}: cannot be written: {problem.strerror or problem}") from problem


def _write_data(data: object) -> None:
    import json

    _write(json.dumps(data, ensure_ascii=False, indent=1) + "\n", None)
