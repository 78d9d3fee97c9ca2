"""A complaint about a file: the place, what was read there, what to write instead."""

from __future__ import annotations

import re
from collections.abc import Iterable

from msgspec import Struct

from speclint.errors.location import Location


class Complaint(Struct, frozen=True):
    """One thing wrong with a file of the design repository.

    ``read`` is the value as written ("" where the fault is not in a value), ``write`` what to write instead.
    """

    where: Location
    message: str
    read: str = ""
    write: str = ""

    def __str__(self) -> str:
        line = f"{self.where}: {self.message}"
        if self.read:
            line += f"; read {self.read}"
        return f"{line}; write {self.write}" if self.write else line

    @property
    def order(self) -> tuple[str, int, str, str]:
        """Sorts complaints by file, line and key."""
        return (self.where.file, self.where.line, self.where.key, self.message)


_ENOUGH = 3  # characters that a shortened name has at the least
_MOST_NAMED = 16  # names that a complaint lists in full
_FIRST_NAMED = 8  # of more, how many it names
_SIMILAR = 0.6  # from which share of letters alike a word may be a mistyped one
_ALMOST = 0.8  # and from which it surely is
_SHOWN = 80  # characters of a value that a complaint shows: what a line of a terminal holds


def shortened(text: str) -> str:
    """A text as a complaint shows it: on one line, and cut where it is long.

    >>> shortened("9" * 5000)[-19:]
    '… (5000 characters)'
    """
    line = " ".join(text.split()) if "\n" in text or "\r" in text else text
    return line if len(line) <= _SHOWN else f"{line[: _SHOWN // 2]}… ({len(text)} characters)"


#: What tells parts alike from each other: a name with another of these is another part, and no slip of the pen.
_PLACES = frozenset(
    (
        "left",
        "middle",
        "right",
        "front",
        "back",
        "upper",
        "lower",
        "inner",
        "outer",
        "inlet",
        "exhaust",
        "live",
    )
)
_WORD = re.compile(r"[^\W_]+")


def _is_elsewhere(word: str, known: str) -> bool:
    """Whether a known name differs from a word in nothing but the place that it names.

    >>> _is_elsewhere("chain-right", "chain-left"), _is_elsewhere("chian-left", "chain-left")
    (True, False)
    """
    here, there = _WORD.findall(word.casefold()), _WORD.findall(known.casefold())
    apart = [pair for pair in zip(here, there, strict=False) if pair[0] != pair[1]]
    return len(here) == len(there) and bool(apart) and all(_PLACES.issuperset(pair) for pair in apart)


def nearest(word: str, known: Iterable[str], cutoff: float = _SIMILAR) -> str:
    """The known word most similar to a mistyped one; "" when none is similar by the cutoff, of 0 to 1."""
    from difflib import get_close_matches  # only where something was mistyped

    if len(word) > _SHOWN:
        return ""  # the comparison takes the square of the length
    candidates = sorted(one for one in known if not _is_elsewhere(word, one))
    found = get_close_matches(word, candidates, n=1, cutoff=cutoff)
    return found[0] if found else ""


def nearest_few(word: str, known: Iterable[str], cutoff: float = _SIMILAR) -> tuple[str, ...]:
    """Up to three known words that a mistyped or shortened one may stand for: those that hold it first.

    >>> nearest_few("p355gh", ["plate-P235GH", "plate-P355GH"])[0]
    'plate-P355GH'
    """
    from difflib import get_close_matches  # only where a word is not known

    if len(word) > _SHOWN:
        return ()
    words = tuple(one for one in known if not _is_elsewhere(word, one))
    holding = [one for one in words if len(word) >= _ENOUGH and word.casefold() in one.casefold()]
    close = get_close_matches(word, words, n=3, cutoff=cutoff)
    return tuple(dict.fromkeys([*holding, *close]))[:3]


def one_of(word: str, known: Iterable[str]) -> str:
    """What to write in place of an unknown word: the most similar one, those that hold it, or those possible.

    A name that holds the word stands before one that is only similar. Of more than 16 the first eight are named, and
    how many there are: a complaint is no catalogue.

    >>> one_of("fit_lenght", ["bore", "fit_length"]), one_of("depth", ["bore", "fit_length"])
    ('"fit_length"', 'one of "bore", "fit_length"')
    >>> one_of("pipe", ["steam-pipe", "tappet"])
    '"steam-pipe"'
    """
    names = sorted(known)
    if not names:
        return "nothing: there is none here"
    holding = [name for name in names if len(word) >= _ENOUGH and word.casefold() in name.casefold()]
    near = nearest(word, names)
    if near and (not holding or near in holding or nearest(word, [near], _ALMOST)):
        return f'"{shortened(near)}"'
    if near or len(names) > _MOST_NAMED:
        if len(holding) == 1:
            return f'"{shortened(holding[0])}"'
        named = holding or names
        shown = named[:_FIRST_NAMED] if len(named) > _MOST_NAMED else named
        return f"one of {_listed(shown)}; there are {len(names)}"
    return f"one of {_listed(names)}" if len(names) > 1 else _listed(names)


def _listed(names: Iterable[str]) -> str:
    return ", ".join(f'"{shortened(name)}"' for name in names)
