"""Names of people in settings, specs and the register: who is meant, and whether two names can be one person's."""

from __future__ import annotations

import re
import unicodedata

from speclint.repository import Reviewer, Settings, look

_BETWEEN_WORDS = re.compile(r"[^\w]+|_")


def reviewer_called(name: str, settings: Settings) -> Reviewer | None:
    """A reviewer of the settings by name; case, dots and spaces do not matter."""
    return next(
        (one for called, one in settings.reviewers.items() if _letters(called) == _letters(name)), None
    )


def may_be_one_person(one: str, other: str) -> bool:
    """Whether two names can be those of one person, or one of them names several people of whom the other is one.

    Letters are compared as the eye takes them (:func:`speclint.repository.look`); the order of the words does not
    matter, and an initial stands for every name that begins with it. Where it errs, it takes two people for one.

    >>> may_be_one_person("M. Coyle", "Coyle, Mary")
    True
    >>> may_be_one_person("M. Coyle", "A. Render and m coyle")
    True
    >>> may_be_one_person("M. Coyle", "B. Thorne")
    False
    """
    ours, theirs = _words(one), _words(other)
    if not ours or not theirs:
        return False
    return "".join(ours) == "".join(theirs) or _all_among(ours, theirs) or _all_among(theirs, ours)


def _all_among(some: list[str], others: list[str]) -> bool:
    return all(any(_same_word(word, other) for other in others) for word in some)


def _same_word(one: str, other: str) -> bool:
    if 1 in (len(one), len(other)):
        return one[0] == other[0]
    return one == other


def _words(name: str) -> list[str]:
    return [word for word in _BETWEEN_WORDS.split(look(name)) if word]


def _letters(name: str) -> str:
    plain = unicodedata.normalize("NFKC", name).casefold()
    return "".join(letter for letter in plain if letter.isalnum())
