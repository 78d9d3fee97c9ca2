"""The command line: one module for each command, and what all share. No logic lives here."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from importlib import import_module
from types import ModuleType

from speclint.errors import SpeclintError

_DESCRIPTION = """Checks component specs of a steam locomotive against the rules of the trade, with full working.
It supports a competent person and the local codes; it replaces neither."""

#: Every command by its word with what it does, in the order of the help; the module of the same name is imported when
#: the command is given.
COMMANDS = {
    "check": "check specs and print the findings",
    "sheet": "the full calculation of a component",
    "review": "the review pack: one page of HTML for a design review",
    "rules": "the rules loaded, with their sources",
    "kinds": "the kinds of component and their keys",
    "families": "the families loaded, with versions; or a new family, written to begin with",
    "concede": "enter a concession in the register",
    "sign": "sign an entry of the register",
    "register": "the concessions, and the state of each",
    "gate": "may this be released? withheld unless all is in order",
}


def module_of(word: str) -> ModuleType:
    """The module of a command: its options, its example and its run."""
    return import_module(f"speclint.commands.{word}")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code.

    0 nothing in the way; 1 findings; 2 a spec, setting or option could not be read, or a file not be written; 3 a
    rule or a family could not be run.
    """
    from speclint.reports import speak_utf8

    speak_utf8()
    given = sys.argv[1:] if arguments is None else arguments
    options = _parser(given).parse_args(given)
    command: Callable[[argparse.Namespace], int] = options.command
    try:
        if (to := getattr(options, "to", None)) is not None:
            from speclint.repository import refuse_target

            refuse_target(to)  # before the work that it would spoil
        return command(options)
    except SpeclintError as problem:
        print(f"speclint: {problem}", file=sys.stderr)
        return problem.exit_code
    except BrokenPipeError:
        # the reader of a pipe has closed it: give the interpreter's last flush a valid target
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1


def _parser(given: Sequence[str]) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="speclint", description=_DESCRIPTION, allow_abbrev=False)
    parser.add_argument("--version", action=_Version, help="print the version and end")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    for word, says in COMMANDS.items():
        command = commands.add_parser(
            word, help=says, description=f"{says[:1].upper()}{says[1:]}.", allow_abbrev=False
        )
        if word in given:
            module = module_of(word)
            command.epilog = f"example: {module.EXAMPLE}"
            module.add_options(command)
            command.set_defaults(command=module.run)
    return parser


class _Version(argparse.Action):
    """Prints the version, which is read only then."""

    def __init__(self, option_strings: Sequence[str], dest: str, help: str | None = None) -> None:
        super().__init__(option_strings, dest, nargs=0, help=help)

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        from importlib.metadata import version

        print(f"{parser.prog} {version('speclint')}")
        parser.exit()
