"""The command line: one module for each command, and what all share. No logic lives here."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from importlib import import_module
from keyword import iskeyword
from types import ModuleType
from typing import Any

from speclint.commands.streams import complain, standard_output
from speclint.errors import DesignError, FamilyError, ReaderLeft, SettingsError, SpeclintError, in_words

_INTERRUPTED = 130  # as shells have it: 128 and the number of the signal
_DESCRIPTION = """Checks component specs of a steam locomotive against the rules of the trade, with full working.
It supports a competent person and the local codes; it replaces neither."""

#: Every command by its word with what it does, in the order of the help; the module of the same name is imported when
#: the command is given.
COMMANDS = {
    "begin": "write a new design repository, with its first blanks, to begin with",
    "check": "check specs and print the findings",
    "margins": "how much of each limit is used, the least to spare first, and by which tolerances and temperatures",
    "sheet": "the full calculation of a component",
    "affects": "what rests on a value: parts, checks, drawings and concessions",
    "compare": "what a change did: specs, findings and every margin, between two states of a design",
    "unseen": "what nobody looked at: hazards without a rule, and what the rules leave out",
    "inspect": "what is inspected on a part: dimensions ranked by the margin they carry, points, certificates",
    "record": "the record of a part as made, from the table of sizes that a shop sent",
    "import": "specs from a table, one row a part",
    "export": "the parts of a kind as a table, one row each",
    "pair": "which measured part goes with which measured mate, and the finish size of the last part to be machined",
    "dossier": "the record for whoever certifies: safety parts as made, papers, concessions, sheets, what is open",
    "review": "the review pack: the document of a design review, one page of HTML to read and to print",
    "serve": "findings, completions and meanings in an editor while a spec is written, by the Language Server Protocol",
    "rules": "the rules loaded, with their sources",
    "kinds": "the kinds of component and their keys",
    "names": "what may be written: materials, gaskets, load cases, threads, units, and whatever else a key accepts",
    "families": "the families loaded, with versions; or a new family, written to begin with",
    "reference": "all that is loaded as pages to read and to search: rules, formulae, kinds, materials, tables, names",
    "concede": "enter a concession in the register",
    "sign": "sign an entry of the register",
    "read": "enter that a drawing was read against its spec",
    "register": "the concessions and the readings of drawings, and the state of each",
    "gate": "may this be released? withheld unless all is in order",
}


def module_of(word: str) -> ModuleType:
    """The module of a command: its options, its example and its run."""
    return import_module(f"speclint.commands.{word}{'_' if iskeyword(word) else ''}")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code.

    0 nothing in the way; 1 findings; 2 a spec, setting or option could not be read, or a file not be written; 3 a
    rule or a family could not be run; 130 interrupted; 141 the reader of the output has left.
    """
    from speclint.reports import speak_utf8

    speak_utf8()
    try:
        return _run(sys.argv[1:] if arguments is None else arguments)
    except ReaderLeft as problem:
        return problem.exit_code
    except SpeclintError as problem:
        complain(problem)
        return problem.exit_code
    except KeyboardInterrupt:
        complain("interrupted")
        return _INTERRUPTED


def _run(given: Sequence[str]) -> int:
    _refuse_what_is_empty(given)
    options = _parser(given).parse_args(given)
    _refuse_what_is_no_text(options)
    with standard_output():
        pass  # nothing is done whose result could not be told
    _refuse_no_folder()
    command: Callable[[argparse.Namespace], int] = options.command
    try:
        if (to := getattr(options, "to", None)) is not None:
            from speclint.repository import refuse_target

            refuse_target(to)  # before the work that it would spoil
        return command(options)
    except SystemExit as problem:  # no command does that: code of a family does, where nothing else caught it
        raise FamilyError(
            f"{_last_module(problem)} did not finish its work: {in_words(problem)}"
        ) from problem


def _refuse_no_folder() -> None:
    """A folder may be removed while a shell stands in it: no path can then be told from it.

    :raises DesignError: where the current folder is gone, or cannot be reached.
    """
    try:
        os.getcwd()
    except OSError as problem:
        raise DesignError(
            f"the current folder cannot be reached: {problem.strerror}; go to another"
        ) from problem


def _last_module(problem: BaseException) -> str:
    """The module, not of Python's or of speclint's own, in whose code something was raised; of several the last."""
    found, trace = "code of a family", problem.__traceback__
    while trace is not None:
        name = str(trace.tb_frame.f_globals.get("__name__", ""))
        top = name.partition(".")[0]
        if top and top != "speclint" and top not in sys.stdlib_module_names:
            found = f"code of the module {name}"
        trace = trace.tb_next
    return found


def _refuse_what_is_empty(given: Sequence[str]) -> None:
    """An empty word, as a shell makes it of a variable that is not set, would be taken for this folder, or for nothing.

    :raises SettingsError: with the option that it is given to, where it is one's.
    """
    for before, word in zip(("", *given), given, strict=False):
        option, equals, value = word.partition("=") if word.startswith("--") else (before, "=", word)
        if equals and not value.strip():
            named = option if option.startswith("-") else "a word of the command line"
            raise SettingsError(f"{named} is empty: give it a value, or leave it out")


def _refuse_what_is_no_text(options: argparse.Namespace) -> None:
    """Words on the command line that are no text cannot be written down; names of files may be anything."""
    for name, value in vars(options).items():
        for word in value if isinstance(value, list) else [value]:
            if isinstance(word, str) and any(0xD800 <= ord(letter) <= 0xDFFF for letter in word):
                raise SettingsError(f"{name}: {word!a} is not UTF-8 text")


def _parser(given: Sequence[str]) -> argparse.ArgumentParser:
    """The parser of the command that is given, or of all where the first word is none."""
    parser = _Parser(prog="speclint", description=_DESCRIPTION, allow_abbrev=False)
    parser.add_argument("--version", action=_Version, help="print the version and end")
    commands = parser.add_subparsers(required=True, metavar="COMMAND", prog=parser.prog)
    known = [word for word in given[:1] if word in COMMANDS]
    for word in known or COMMANDS:
        says = COMMANDS[word]
        command = commands.add_parser(
            word, help=says, description=f"{says[:1].upper()}{says[1:]}.", allow_abbrev=False
        )
        if word in given:
            module = module_of(word)
            command.epilog = f"example: {module.EXAMPLE}"
            module.add_options(command)
            command.set_defaults(command=module.run)
    return parser


class _Parser(argparse.ArgumentParser):
    """A parser whose help is written as all else is: argparse would pass over a stream that does not take it."""

    def print_help(self, file: Any = None) -> None:
        with standard_output() as stream:
            (file or stream).write(self.format_help())


class _Version(argparse.Action):
    """Prints the version, which is read only then."""

    def __init__(self, option_strings: Sequence[str], dest: str, help: str | None = None) -> None:
        super().__init__(option_strings, dest, nargs=0, help=help)

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        from importlib.metadata import version

        with standard_output() as stream:
            stream.write(f"{parser.prog} {version('speclint')}\n")
        parser.exit()
