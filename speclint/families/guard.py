"""Code of a family while it runs: it cannot end the program, and what it prints never stands in a report.

A family is installed code, and can do whatever Python can. This guards against mishaps: a call of ``sys.exit`` that
was meant for a script, a line printed to look at a value.
"""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Callable
from contextlib import suppress
from functools import cache
from types import TracebackType
from typing import NoReturn, TypeVar

from speclint.errors import in_words

R = TypeVar("R")
#: Ends the process at once, also where ``os._exit`` is refused to a family: for the core.
end_process = os._exit
#: So many different lines of what a family prints are shown, and one more that says so: one in a rule is printed for
#: each component and corner.
_LINES = 10


class FamilyFailed(Exception):
    """What code of a family raised, in one line; whoever called it says whose it is, and what it was."""


def call(family: str, work: Callable[[], R]) -> R:
    """Run code of a family.

    :raises FamilyFailed: whatever it raised, also to end the program.
    """
    with Guard(family):
        try:
            return work()
        except KeyboardInterrupt:
            raise
        except BaseException as problem:  # whatever is raised, the family has not done its work
            raise FamilyFailed(in_words(problem)) from problem


class Guard:
    """Within it, standard output is taken for the family and ``os._exit`` raises, so that it is told."""

    __slots__ = ("_ended", "_family", "_out")

    def __init__(self, family: str) -> None:
        self._family = family

    def __enter__(self) -> None:
        self._out, self._ended = sys.stdout, os._exit
        sys.stdout, os._exit = _printed_by(self._family), _refuse

    def __exit__(
        self, _: type[BaseException] | None, __: BaseException | None, ___: TracebackType | None
    ) -> None:
        sys.stdout, os._exit = self._out, self._ended
        _printed_by(self._family).tell_rest()


def _refuse(status: int = 0) -> NoReturn:
    raise SystemExit(f"os._exit({status})")


class Printed(io.TextIOBase):
    """Takes what a family prints, and tells it on the error stream under the name of the family."""

    def __init__(self, family: str) -> None:
        self._family = family
        self._begun = ""
        self._told: set[str] = set()

    def writable(self) -> bool:
        """As of any stream that is written to."""
        return True

    def write(self, text: str) -> int:
        """Take some text, and tell each line that is whole."""
        *lines, self._begun = f"{self._begun}{text}".split("\n")
        for line in lines:
            self._tell(line)
        return len(text)

    def tell_rest(self) -> None:
        """Tell a last line that was not ended."""
        if self._begun:
            self._tell(self._begun)
            self._begun = ""

    def _tell(self, line: str) -> None:
        if line in self._told or len(self._told) > _LINES:
            return
        self._told.add(line)
        shown = line if line.isprintable() else ascii(line)[1:-1]
        more = "; what else it prints is not shown" if len(self._told) == _LINES + 1 else ""
        _on_error_stream(f"speclint: the family {self._family} printed: {shown}{more}")


@cache
def _printed_by(family: str) -> Printed:
    return Printed(family)


def _on_error_stream(line: str) -> None:
    with suppress(OSError, ValueError):  # where nobody reads the error stream, or it is closed
        print(line, file=sys.stderr)
