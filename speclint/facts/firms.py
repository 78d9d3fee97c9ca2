"""Names of firms: whether a text bears the name of one, written out, shortened, or as one of several names of it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from speclint.repository import look

from .people import is_named_in, people_named

_BETWEEN_WORDS = re.compile(r"[^\w]+|_")
_POSSESSIVE = re.compile(r"['\u2019]s\b")
_LETTERS = re.compile(r"\b(?:\w\.){2,}")
_INITIALS_AND_NAME = re.compile(r"(?:\w\.\s*)+\w{2,}")
_VOWEL_WITH_E = re.compile(r"([aou])e")
#: What parts the names that a firm goes by; after the words of the second, whatever stands there is a name of it.
_BETWEEN_NAMES = re.compile(
    r"[,;()\[\]]|\b(formerly|trading as|owned by|belonging to|(?:part|member|subsidiary|division|branch) of)\b",
    re.I,
)


def _seen(words: str) -> frozenset[str]:
    return frozenset(_stem(look(word)) for word in words.split())


def _stem(word: str) -> str:
    """A word without what is written or left out alike: the e of an umlaut, the s of a plural or a possessive."""
    return _VOWEL_WITH_E.sub(r"\1", word).removesuffix("s")


#: Words that stand in many names, or are left out as often as they are written.
_SMALL = _seen("the a an of at and und et e y d l for de du des der die das la le")
#: Words for what a firm is in law, or in a group of firms.
_IN_LAW = _seen(
    "ltd limited plc llp pty gmbh ag kg ohg se inc llc corp corporation co company cie sa sas sarl srl spa bv nv ab as "
    "aps oy group holding holdings gruppe groupe"
)
#: Words that stand in the name of a firm and not in that of a town.
_OF_A_FIRM = _IN_LAW | _seen(
    "works werk foundry forge shops factory mill usine atelier sons bros brothers partners"
)
#: Words for what a body does, which say nothing of whose it is.
_INSPECTS = _seen(
    "inspection inspector inspectors inspecting engineer engineers surveyor surveyors quality technical certification "
    "certifying testing department office service services abnahme controle"
)
_SAME = {"bro": "brother"}
_FEWEST_INITIALS = 3  # common practice: with two letters another firm's name begins by chance


def is_firm_in(firm: str, text: str) -> bool:
    """Whether a text bears the name of a firm, by any of the names that it goes by.

    What a firm is in law is left out on both sides, as are accents, possessives and where words are joined; three
    initials or more stand for a name. A name in brackets or after a comma is one of the firm's where a word says that
    it is a firm's, such as "Ltd", "Group" or "Works"; else it is taken for a town. Where it errs, it takes two firms of
    like name for one.

    >>> is_firm_in("Ness Works Ltd", "The Ness Works, inspection"), is_firm_in("Ness Works", "Corrow and Ness")
    (True, False)
    >>> is_firm_in("Ness Pipe Works", "NPW, inspection"), is_firm_in("Corrow Forge (Harl Holdings)", "Harl inspection")
    (True, True)
    """
    theirs = _words(text)
    if any(_bears(theirs, _own(name)) for name in _names_of(firm)):
        return True
    body = [word for word in _own(text) if word not in _INSPECTS]
    return (len(body) > 1 and set(body) <= set(_words(firm))) or _person_in(firm, text)


def _names_of(firm: str) -> Iterator[str]:
    """The whole of what is written, and each piece of it that is a name by itself."""
    yield firm
    first, *rest = _BETWEEN_NAMES.split(firm)
    if len(_own(first)) > 1 or _says_firm(first):
        yield first
    for phrase, piece in zip(rest[::2], rest[1::2], strict=True):
        if phrase or _says_firm(piece):
            yield piece


def _says_firm(piece: str) -> bool:
    return not _OF_A_FIRM.isdisjoint(_words(piece))


def _bears(theirs: Sequence[str], own: Sequence[str]) -> bool:
    """Whether the words of a text have those of a name: each of them, all of them joined, or their initials."""
    if not own:
        return False
    short = "".join(word[0] for word in own) if len(own) >= _FEWEST_INITIALS else ""
    joined = {"".join(run) for run in _runs(theirs)}
    if set(own) <= set(theirs) or "".join(own) in joined or short in joined - {""}:
        return True
    named = [word for word in theirs if word not in _SMALL | _IN_LAW]
    return len(own) == 1 and len(own[0]) >= _FEWEST_INITIALS and own[0] in map(_initials, _runs(named))


def _initials(run: Sequence[str]) -> str:
    return "".join(word[0] for word in run)


def _runs(words: Sequence[str]) -> Iterator[Sequence[str]]:
    """Every row of words that stand one after another."""
    for start in range(len(words)):
        for end in range(start + 1, len(words) + 1):
            yield words[start:end]


def _person_in(firm: str, text: str) -> bool:
    """Whether a firm is one person, written with initials, whom the text names."""
    return any(
        _INITIALS_AND_NAME.fullmatch(one) and not _says_firm(one) and is_named_in(one, text)
        for one in people_named(firm)
    )


def _own(name: str) -> list[str]:
    """The words by which a firm is told from others, in their order."""
    return [word for word in _words(name) if word not in _SMALL | _IN_LAW]


def _words(name: str) -> list[str]:
    plain = _LETTERS.sub(lambda found: found[0].replace(".", ""), _POSSESSIVE.sub("", look(name)))
    words = [_stem(word) for word in _BETWEEN_WORDS.split(plain) if word]
    return [_SAME.get(word, word) for word in words if word]
