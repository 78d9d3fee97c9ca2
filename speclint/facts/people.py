"""Names of people: whether two can be one person's, whom a text names, and whether it bears a name."""

from __future__ import annotations

import re

from speclint.repository import look

_BETWEEN_WORDS = re.compile(r"[^\w]+|_")
_INITIAL = re.compile(r"\b\w\.")
_BETWEEN_PEOPLE = re.compile(r"\s+and\s+|[&+/;]")


def _seen(words: str) -> frozenset[str]:
    """Words as they are compared."""
    return frozenset(look(word) for word in words.split())


#: Words for who designed, made or looked at a part, which name nobody.
_ROLES = _seen(
    "somebody someone anybody anyone self myself himself herself itself themselves ourselves us we house inhouse "
    "internal works workshop shop office department staff team maker manufacturer foundry designer draughtsman "
    "draftsman checker preparer tester welder examiner witness fitter foreman above before usual same required needed "
    "witnessed examined manufacturers makers hersteller herstellers herstellerwerk werk werks werksabnahme fabricant "
    "constructeur usine"
)
#: Words that stand beside those and name nobody either.
_BESIDE_ROLES = _seen(
    "the a an our own as by in of to at no not who is was and s des der du de drawing design welding test testing "
    "quality inspector inspection inspectors engineer engineers surveyor qualitatsstelle abnahme controle"
)
#: What stands in the place of a name: a cross, or "N. N." for a name that nobody knows yet.
_NO_NAME = _seen("nn x xx xxx xxxx")
_TITLES = _seen("mr mrs ms miss dr prof professor sir dipl ing ir eng ceng pe")


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
    """Whether a text names somebody who can be none of those that another text names; a role alone names nobody.

    >>> names_another("M. Coyle and B. Thorne", than="Coyle, Mary"), names_another("Mary Coyle", than="M. Coyle")
    (True, False)
    >>> names_another("M. Coyle and himself", than="Coyle, Mary")
    False
    """
    return any(not (names_only_a_role(one) or may_be_one_person(one, than)) for one in people_named(some))


def names_only_a_role(text: str) -> bool:
    """Whether a text says nothing but which of the works' own people is meant, or that nobody is.

    A single letter, figures and a cross name nobody; two initials may.

    >>> [names_only_a_role(one) for one in ("the tester", "as above", "in-house", "not required", "somebody")]
    [True, True, True, True, True]
    >>> [names_only_a_role(one) for one in ("the inspecting engineer", "works inspector M. Coyle", "A. Foreman")]
    [False, False, False]
    >>> [names_only_a_role(one) for one in ("x", "17", "xxx", "N. N.", "J.O.", "Li")]
    [True, True, True, True, False, False]
    """
    words = _words(text)
    together = "".join(words)
    if words and (sum(letter.isalpha() for letter in together) < 2 or together in _NO_NAME):
        return True
    if _INITIAL.search(text):
        return False
    return not _ROLES.isdisjoint(words) and _ROLES.union(_BESIDE_ROLES).issuperset(words)


def is_named_in(person: str, text: str) -> bool:
    """Whether a text bears the name of a person: each word of the name, first names written out or as an initial.

    Where both have initials, and none of the person's begins a word of the text, another of the same surname is meant.

    >>> is_named_in("M. Coyle", "Mary Coyle, inspecting engineer"), is_named_in("B. Thorne", "Bureau of inspection")
    (True, False)
    >>> is_named_in("Dr Mary Coyle", "M. Coyle, inspector"), is_named_in("M. Coyle", "P. Coyle, inspector")
    (True, False)
    """
    theirs = _words(text)
    own = [word for word in _words(person) if word not in _TITLES]
    whole = [word for word in own if len(word) > 1]
    if not any(word in theirs for word in whole):
        return False
    return all(word in theirs or word[0] in theirs for word in whole) and not _other_initials(own, theirs)


def _other_initials(own: list[str], theirs: list[str]) -> bool:
    initials = {word for word in own if len(word) == 1}
    if not initials or not any(len(word) == 1 for word in theirs):
        return False
    return not any(word[0] in initials for word in theirs if word not in own or word in initials)


def _all_among(some: list[str], others: list[str]) -> bool:
    return all(any(_same_word(word, other) for other in others) for word in some)


def _same_word(one: str, other: str) -> bool:
    if 1 in (len(one), len(other)):
        return one[0] == other[0]
    return one == other


def _words(name: str) -> list[str]:
    return [word for word in _BETWEEN_WORDS.split(look(name)) if word]
