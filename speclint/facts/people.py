"""Names of people: whether two can be one person's, whom a text names, and whether it bears a name."""

from __future__ import annotations

import re

from speclint.repository import look

_BETWEEN_WORDS = re.compile(r"[^\w]+|_")
_BETWEEN_PEOPLE = re.compile(r"\s+and\s+|[&+/;]")


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


def people_named(text: str) -> list[str]:
    """The people whom a text names, each as it is written; a comma parts them where each has two words or more.

    >>> people_named("M. Coyle and B. Thorne"), people_named("M. Coyle, B. Thorne"), people_named("Coyle, Mary")
    (['M. Coyle', 'B. Thorne'], ['M. Coyle', 'B. Thorne'], ['Coyle, Mary'])
    """
    found: list[str] = []
    for one in _BETWEEN_PEOPLE.split(text):
        pieces = one.split(",")
        found += pieces if all(len(_words(piece)) > 1 for piece in pieces) else [one]
    return [one.strip() for one in found if one.strip()]


def names_another(some: str, than: str) -> bool:
    """Whether a text names somebody who can be none of those that another text names.

    >>> names_another("M. Coyle and B. Thorne", than="Coyle, Mary"), names_another("Mary Coyle", than="M. Coyle")
    (True, False)
    """
    return any(not may_be_one_person(one, than) for one in people_named(some))


def is_named_in(person: str, text: str) -> bool:
    """Whether a text bears the name of a person: each word of the name that is longer than an initial.

    >>> is_named_in("M. Coyle", "Mary Coyle, inspecting engineer"), is_named_in("B. Thorne", "Bureau of inspection")
    (True, False)
    """
    whole = [word for word in _words(person) if len(word) > 1]
    return bool(whole) and all(word in _words(text) for word in whole)


def _all_among(some: list[str], others: list[str]) -> bool:
    return all(any(_same_word(word, other) for other in others) for word in some)


def _same_word(one: str, other: str) -> bool:
    if 1 in (len(one), len(other)):
        return one[0] == other[0]
    return one == other


def _words(name: str) -> list[str]:
    return [word for word in _BETWEEN_WORDS.split(look(name)) if word]
