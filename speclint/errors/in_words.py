"""An exception of somebody else's code in one line, whatever the exception does when it is asked for its text."""

from __future__ import annotations


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
