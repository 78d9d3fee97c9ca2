"""How much of a part was examined by its records, against how much its drawing asks for."""

from __future__ import annotations

import re
from collections.abc import Iterable

from speclint_release.inputs.choices import excepts_some, leaves_out_unreached, leaves_to_choice
from speclint_release.inputs.extents import Extent, extents, names_some, says_all, share_of

#: Words for what other records leave.
_REMAINDER = re.compile(r"(?i)\b(?:the rest|remain(?:der|ing)|others?)\b")
_WHOLLY = 1.0
#: What two shares that are written otherwise may differ by, as one third and 33 %.
_ROUNDED = 0.01


def too_little(asked: str, records: Iterable[tuple[str, str]]) -> list[str]:
    """What records, each a method and an extent, surely cover less of than a text asks for: "radiographs of 10%".

    A record without an extent, or with one that no words limit, counts as of all.

    >>> too_little("butt welds radiographed, all of them", [("film", "one weld in ten")])
    ['radiographs of 10%']
    >>> too_little("one stud in ten by MT", [("MT", "every tenth")]), too_little("UT", [("UT", "the whole part")])
    ([], [])
    >>> too_little("UT of the seams", [("UT", "50 %"), ("UT", "the other 50 %")])
    []
    """
    made = [one for method, extent in records for one in _of_record(method, extent)]
    short = []
    for methods, share, _ in extents(asked):
        covered = {
            name: _covered(name, made, share) for name in methods if any(name in one.methods for one in made)
        }
        if share is not None and covered and max(covered.values()) + _ROUNDED < share:
            best = max(covered, key=lambda name: covered[name])
            short.append(f"{best} of {covered[best]:.0%}" if covered[best] else f"{best} of samples")
    return short


def not_shown(asked: str, records: Iterable[tuple[str, str]]) -> list[str]:
    """The methods by which a text asks that all is examined, in so many words, where no record says that all was.

    >>> not_shown("all butt welds by RT", [("RT", "")]), not_shown("butt welds by RT", [("RT", "")])
    (['radiographs'], [])
    >>> not_shown("all butt welds by RT", [("RT", "welds 1 to 3")]), not_shown("all welds by RT", [("RT", "every one")])
    (['radiographs'], [])
    >>> not_shown("all butt welds by RT", [("RT", "where accessible"), ("UT", "all")])
    ['radiographs']
    """
    made = [one for method, extent in records for one in _of_record(method, extent)]
    missing = []
    for methods, share, words in extents(asked):
        if share != _WHOLLY or not _is_of_all(words):
            continue
        of_each = [[one for one in made if name in one.methods] for name in methods]
        if any(of_each) and not any(_shows_all(of_one) for of_one in of_each):
            missing.append(" or ".join(methods))
    return missing


def _shows_all(records: list[Extent]) -> bool:
    """Whether a record of one method says that all was examined, or the shares of several make up all.

    So do words for the rest, beside another record.
    """
    if any(_is_of_all(one.words) for one in records):
        return True
    if len(records) > 1 and any(_REMAINDER.search(one.words) for one in records):
        return True
    shares = [one.share for one in records if one.share is not None and one.share < _WHOLLY]
    return sum(shares) + _ROUNDED >= _WHOLLY


def _is_of_all(words: str) -> bool:
    takes_some_away = excepts_some(words) or leaves_out_unreached(words) or leaves_to_choice([words])
    return says_all(words) and not takes_some_away


def _of_record(method: str, extent: str) -> list[Extent]:
    """The methods of a record, each with the least share that its method and its extent let it have, and the words."""
    named = extents(extent)
    made = []
    for methods, _, words in extents(method):
        own = [one.words for one in named if set(one.methods) & set(methods)]
        of_extent = own[0] if own else "" if named else extent
        shares = [share_of(words), share_of(of_extent)]
        least = None if None in shares else min(one for one in shares if one is not None)
        made.append(Extent(methods, least, f"{words}; {of_extent}"))
    return made


def _covered(name: str, made: Iterable[Extent], wanted: float | None) -> float:
    """The share that all records of a method cover together; samples are enough where no more than a part is asked.

    Records of some welds each, by their names, may be of all together.
    """
    of_name = [one for one in made if name in one.methods]
    shares = [one.share for one in of_name]
    if wanted is not None and wanted < _WHOLLY and None in shares:
        return wanted
    if len(of_name) > 1 and any(names_some(one.words) for one in of_name):
        return _WHOLLY
    return sum(share or 0.0 for share in shares)
