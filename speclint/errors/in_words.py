"""An exception of somebody else's code in one line, whatever the exception does when it is asked for its text."""

from __future__ import annotations

from traceback import walk_tb


def in_words(problem: BaseException) -> str:
    """What was raised, with its text where it has one that can be read.

    >>> in_words(ValueError("no such gauge"))
    'ValueError: no such gauge'
    >>> in_words(SystemExit(0))
    'it ended the program: SystemExit: 0'
    """
    kind = type(problem).__name__
    try:
        text = " ".join(str(problem).split())
    except KeyboardInterrupt:
        raise
    except BaseException as worse:  # a text that cannot be had says nothing about what was raised
        text = f"its text cannot be read, since reading it raises {type(worse).__name__}"
    said = f"{kind}: {text}"
    return f"it ended the program: {said}" if isinstance(problem, SystemExit) else said


def raised_at(problem: BaseException, module: str) -> str:
    """The last place of the package of a module that an exception came through, ``module, line 12``; "" where it came
    through none."""
    package, found = module.partition(".")[0], ""
    for frame, line in walk_tb(problem.__traceback__):
        name = str(frame.f_globals.get("__name__", ""))
        if name.partition(".")[0] == package:
            found = f"{name}, line {line}"
    return found
