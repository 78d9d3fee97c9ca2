"""write a new design repository, with its first blanks, to begin with"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import loaded_families
from speclint.commands.options import UNITS
from speclint.commands.output import write

if TYPE_CHECKING:
    from speclint.commands.new_repository import Answers, NewReviewer

EXAMPLE = 'speclint begin new-engine --works "Corrow and Ness Railway" --cylinders 3'
_STAGES = ("draft", "for-review", "released")
_LAYOUTS = ("separate", "one-block")
_COUNTS, _USUAL_COUNT = ("1", "2", "3", "4"), "2"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Where the repository goes, and what is known of the design."""
    parser.add_argument(
        "folder",
        nargs="?",
        type=Path,
        default=Path(),
        metavar="FOLDER",
        help="where it goes; here by default",
    )
    parser.add_argument("--works", metavar="NAME", help="the works and the engine, as reports name them")
    parser.add_argument("--stage", choices=_STAGES, help="how far the design has come")
    parser.add_argument(
        "--pressure-code", action="append", metavar="CODE", help="the local code for pressure parts"
    )
    parser.add_argument("--railway-code", action="append", metavar="CODE", help="the code of the railway")
    parser.add_argument(
        "--reviewer",
        action="append",
        metavar="NAME,ROLE:FAMILY,…",
        help='who may accept holds, in what role, and of which families: "M. Coyle, chief draughtsman: liners, joints"',
    )
    parser.add_argument("--units", choices=UNITS, help="of what is printed; specs may mix them")
    parser.add_argument("--cylinders", type=int, metavar="N", help="how many, from 1 to 4")
    parser.add_argument(
        "--layout", choices=_LAYOUTS, help="a block for each cylinder, or all of them in one block"
    )


def run(options: argparse.Namespace) -> int:
    """Ask for what was not given, where somebody can answer, and write the repository; returns the exit code."""
    from speclint.commands.new_repository import begin, refuse_nested
    from speclint.reports import visible

    refuse_nested(options.folder)  # before anything is asked
    loaded = loaded_families().sound()
    begun = begin(options.folder, _answers(options, sorted(one.name for one in loaded.families)), loaded)
    lines = [f"wrote {visible(str(path))}" for path in begun.files]
    here = visible(str(options.folder))
    lines += ["", "Next:", f"  speclint check {here}", "    what is still to be stated and drawn"]
    lines += ["  fill in the duty, then the block and its parts: take the mark # from the front of a key"]
    if not begun.in_git:
        lines += [f"  git init {here}"]
    lines += [f"  {begun.turns_on}", "    has each commit checked before it is made"]
    lines += ["    blanks do not pass: git commit --no-verify keeps a state that is not finished"]
    write("".join(f"{line}\n" for line in lines))
    return 0


def _answers(options: argparse.Namespace, families: Sequence[str]) -> Answers:
    """What was given, what is answered on a terminal, and for the rest what a new design usually has."""
    from speclint.commands.new_repository import Answers, fault_of_reviewer

    name = options.folder.resolve().name
    ask = _Questions(at_terminal())
    works = ask.text(options.works, "The works and the engine", name)
    stage = ask.word(options.stage, "How far the design has come", _STAGES)
    pressure = ask.several(options.pressure_code, "Local code for pressure parts", "not known yet")
    railway = ask.several(options.railway_code, "Code of the railway", "not known yet")
    said = ask.several(
        options.reviewer,
        'Who may accept holds, with role and families, as "M. Coyle, chief draughtsman: liners, joints"',
        "nobody yet",
        lambda one, before: fault_of_reviewer(_reviewer(one), map(_reviewer, before), families),
    )
    units = ask.word(options.units, "Units of what is printed", UNITS)
    cylinders = ask.word(_number(options.cylinders), "How many cylinders", _COUNTS, _USUAL_COUNT)
    layout = ask.word(options.layout, "A block for each cylinder, or one block for all", _LAYOUTS)
    return Answers(
        works, stage, pressure, railway, [_reviewer(one) for one in said], units, int(cylinders), layout
    )


def at_terminal() -> bool:
    """Whether somebody can be asked."""
    return all(stream is not None and stream.isatty() for stream in (sys.stdin, sys.stderr))


def _number(given: int | None) -> str | None:
    return None if given is None else str(given)


def _reviewer(said: str) -> NewReviewer:
    """A reviewer's name, the role behind a comma, and the families behind the colon."""
    from speclint.commands.new_repository import NewReviewer

    person, _, families = said.partition(":")
    name, _, role = (one.strip() for one in person.partition(","))
    return NewReviewer(name, role, tuple(one.strip() for one in families.split(",") if one.strip()))


class _Questions:
    """Asks on the terminal for what was not given; where nobody can answer, takes what is usual."""

    def __init__(self, can_ask: bool) -> None:
        self._can_ask = can_ask

    def text(self, given: str | None, question: str, usual: str) -> str:
        """One text."""
        return given if given is not None else (self._asked(question, usual) or usual)

    def several(
        self,
        given: Sequence[str] | None,
        question: str,
        none: str,
        fault_of: Callable[[str, Sequence[str]], str] = lambda *_: "",
    ) -> tuple[str, ...]:
        """Any number of texts: on the terminal one a line, until an empty one; one with a fault is asked for again."""
        if given is not None:
            return tuple(given)
        found: list[str] = []
        while said := self._asked(question, "no more" if found else none):
            if fault := fault_of(said, found):
                print(f"  {fault}", file=sys.stderr)
            else:
                found.append(said)
        return tuple(found)

    def word(self, given: str | None, question: str, words: Sequence[str], usual: str = "") -> str:
        """One of some words; where nothing is answered the usual one, or else the first of them."""
        if given is not None:
            return given
        *first, last = words
        while said := self._asked(f"{question}: {', '.join(first)} or {last}", usual or words[0]):
            if said in words:
                return said
            print(f"  that is none of {', '.join(words)}", file=sys.stderr)
        return usual or words[0]

    def _asked(self, question: str, usual: str) -> str | None:
        """The answer, "" where nothing is answered; None where nobody can be asked."""
        if not self._can_ask:
            return None
        print(f"{question} [{usual}]: ", end="", file=sys.stderr, flush=True)
        return sys.stdin.readline().strip()
