"""The command line: one module for each command, and what all share. No logic lives here."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Sequence

from speclint.commands import check, concede, families, gate, kinds, register, review, rules, sheet, sign
from speclint.errors import SpeclintError

_DESCRIPTION = """Checks component specs of a steam locomotive against the rules of the trade, with full working.
It supports a competent person and the local codes; it replaces neither."""

#: Every command by its word, in the order of the help.
COMMANDS = {
    "check": check,
    "sheet": sheet,
    "review": review,
    "rules": rules,
    "kinds": kinds,
    "families": families,
    "concede": concede,
    "sign": sign,
    "register": register,
    "gate": gate,
}


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
        # the reader of a pipe has closed it: give the interpreter's last flush a valid target
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="speclint", description=_DESCRIPTION, allow_abbrev=False)
    parser.add_argument("--version", action=_Version, help="print the version and end")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    for word, module in COMMANDS.items():
        says = (module.__doc__ or "").strip()
        command = commands.add_parser(
            word,
            help=says,
            description=f"{says[:1].upper()}{says[1:]}.",
            epilog=f"example: {module.EXAMPLE}",
            allow_abbrev=False,
        )
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
