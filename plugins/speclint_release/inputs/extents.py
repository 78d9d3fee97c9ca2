"""How much of a part, or how many of its welds, the words of an examination ask for, where they surely limit it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from speclint_release.inputs.examinations import worded

_NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9}
_NUMBERS |= {"ten": 10, "twelve": 12, "fifteen": 15, "twenty": 20, "fifty": 50, "hundred": 100}
_ORDINALS = {
    "second": 2,
    "other": 2,
    "third": 3,
    "fourth": 4,
    "quarter": 4,
    "fifth": 5,
    "sixth": 6,
    "seventh": 7,
}
_ORDINALS |= {"eighth": 8, "ninth": 9, "tenth": 10, "twelfth": 12, "twentieth": 20, "hundredth": 100}
_COUNT = rf"(?:{'|'.join(_NUMBERS)}|\d+)"
_ORDINAL = rf"(?:{'|'.join(_ORDINALS)}|\d+(?:st|nd|rd|th))"
#: One in so many; not a taper, nor work done in several directions, runs or places.
_IN_SO_MANY = re.compile(
    rf"(?i)(?<!taper )(?<!taper of )(?<!slope )(?<!slope of )\b(?P<n>{_COUNT}) (?:[a-z]+ ){{0,2}}(?:in|out of)"
    rf"(?: (?:every|each|a))? (?P<of>{_COUNT})\b"
    r"(?![.,]\d| ?(?:mm|cm|m|in|µm|pass|run|layer|direction|plane|position|stage|step|side|day|hour|minute|place)\w*\b)"
)
_EVERY_SO_MANY = re.compile(
    rf"(?i)\bevery (?P<of>{_ORDINAL})\b(?! (?:year|month|week|day|overhaul|wash|lift|run|pass|layer|trip|km)\w*)"
)
_OF_SIZE = r"(?:an? |(?:the )?(?:wall|thickness|depth|allow|limit|radius|diameter|skip))"
_FRACTION = re.compile(rf"(?i)\b(?:an?|one)[ -](?P<of>{_ORDINAL})(?: part)? of (?!{_OF_SIZE})")
_HALF = re.compile(rf"(?i)\bhalf (?:of )?(?=(?:the|them|all)\b)(?!{_OF_SIZE})")
#: A share in per cent; not a sensitivity, a level of the screen, or a share of the wall.
_PER_CENT = re.compile(
    r"(?i)(?<!sensitivity )(?<!sensitivity of )(?<!than )(?<!within )(?<!level )(?<!at )(?<!to )(?<![\d.,±])"
    r"(?P<share>\d{1,2}(?:\.\d+)?) ?(?:%|per ?cent\b)(?= ?(?:$|;|⟨|(?:(?:of|by) )?(?:the |all |them|each |its |every )*"
    r"(?:[a-z]+ )?(?:⟨|weld|joint|seam|butt|fillet|length|stud|bolt|pin|part|piece|exam|inspect|tested|them)))"
)
#: Words that say that it is less than the whole, and not how much.
_LIMITING = re.compile(
    r"(?i)(?<!hot )(?<!focal )\bspot\b(?![- ]?(?:fac|weld|drill|size|heat))|\brandom(?:ly)?\b(?! orient)"
    r"|(?<!test )\bsampl(?:ed|ing|es?(?! (?:plate|piece|coupon|weld|of (?:the )?(?:metal|plate|heat|cast))))\b"
    r"|\b(?:a few|some)(?: of the)? (?:welds?|joints?|seams?|butts?|parts?|pieces?)\b"
    r"|\bpart(?:ly|ially)(?= (?:⟨|exam|inspect|tested|by ⟨)|$|;)|\bpartial (?=⟨|exam|inspect|test)"
)
#: Words that say that it is the whole.
_WHOLE = re.compile(
    rf"(?i)\b100 ?(?:%|per ?cent)|(?<!of )\ball\b|(?<!in )(?<!of )\bevery\b(?! {_ORDINAL})|(?<!of the )\bwhole\b"
    r"|\bfull(?:y)?\b(?! penetr)|\bentire"
    r"|\b(?:not?|never|without|nor|instead of|in place of) (?:[a-z]+ )?(?:spot|random|sampl|part)"
)
#: A method and nothing that says of what: it shares the extent of what stands before it.
_BARE = re.compile(r"(?i)(?:(?:by|with|or|the|/) ?)*⟨\d+⟩(?: (?:or )?⟨\d+⟩)*")
_WHOLLY = 1.0
#: What two shares that are written otherwise may differ by, as one third and 33 %.
_ROUNDED = 0.01


class Extent(NamedTuple):
    """Methods, any of which will do, and the share that they are asked for; None where nothing says how large it is."""

    methods: list[str]
    share: float | None


def extents(text: str) -> list[Extent]:
    """What each part of a text asks for, and how much of it.

    >>> extents("one joint in ten by ultrasound or film, toes by magnetic particle")
    [Extent(methods=['ultrasound', 'radiographs'], share=0.1), Extent(methods=['magnetic particle'], share=1.0)]
    >>> [one.share for one in extents("UT 100 %, RT by random sampling")]
    [1.0, None]
    """
    found: list[tuple[list[str], list[str]]] = []
    before: list[str] = []
    for methods, words in worded(text):
        if methods and found and _BARE.fullmatch(words.strip()):
            found.append((methods, found[-1][1]))
        elif methods:
            found.append((methods, [*before, words]))
            before = []
        elif "⟨" not in words:
            (found[-1][1] if found else before).append(words)
    return [Extent(methods, share_of("; ".join(words))) for methods, words in found]


def share_of(words: str) -> float | None:
    """The share that some words limit an examination to: 1 unless they surely do, None where they do not say how much.

    >>> [share_of(one) for one in ("1 in 10", "a tenth of the seams", "every fifth weld", "25 % of the length")]
    [0.1, 0.1, 0.2, 0.25]
    >>> [share_of(one) for one in ("all of them", "every one", "2 % sensitivity", "spot faces", "spot checks")]
    [1.0, 1.0, 1.0, 1.0, None]
    """
    if _WHOLE.search(words):
        return _WHOLLY
    if shares := [one for one in _shares(words) if 0 < one < 1]:
        return max(shares)
    return None if _LIMITING.search(words) else _WHOLLY


def _shares(words: str) -> Iterator[float]:
    for found in _IN_SO_MANY.finditer(words):
        of = _number(found["of"])
        yield _number(found["n"]) / of if of else _WHOLLY
    for pattern in (_EVERY_SO_MANY, _FRACTION):
        yield from (1 / _number(found["of"]) for found in pattern.finditer(words) if _number(found["of"]))
    if _HALF.search(words):
        yield 0.5
    yield from (float(found["share"]) / 100 for found in _PER_CENT.finditer(words))


def _number(word: str) -> int:
    known = _NUMBERS.get(word.lower()) or _ORDINALS.get(word.lower())
    return known or int(re.sub(r"\D", "", word))


def too_little(asked: str, records: Iterable[tuple[str, str]]) -> list[str]:
    """What records, each a method and an extent, cover less of than a text asks for: "radiographs of 10%".

    >>> too_little("butt welds radiographed, all of them", [("film", "one weld in ten")])
    ['radiographs of 10%']
    >>> too_little("one stud in ten by MT", [("MT", "every tenth")]), too_little("UT", [("UT", "the whole part")])
    ([], [])
    >>> too_little("UT of the seams", [("UT", "50 %"), ("UT", "the other 50 %")])
    []
    """
    made = [one for method, extent in records for one in _of_record(method, extent)]
    short = []
    for methods, share in extents(asked):
        covered = {
            name: _covered(name, made, share) for name in methods if any(name in one for one, _ in made)
        }
        if share is not None and covered and max(covered.values()) + _ROUNDED < share:
            best = max(covered, key=lambda name: covered[name])
            short.append(f"{best} of {covered[best]:.0%}" if covered[best] else f"{best} of samples")
    return short


def _of_record(method: str, extent: str) -> list[Extent]:
    """The methods of a record, each with the least share that its method and its extent let it have."""
    named = extents(extent)
    whole = share_of(extent)
    made = []
    for methods, share in extents(method):
        own = [one.share for one in named if set(one.methods) & set(methods)]
        of_extent = own[0] if own else _WHOLLY if named else whole
        both = (share, of_extent)
        made.append(Extent(methods, None if None in both else min(one for one in both if one is not None)))
    return made


def _covered(name: str, made: Iterable[Extent], wanted: float | None) -> float:
    """The share that all records of a method cover together; samples are enough where no more than a part is asked."""
    shares = [share for methods, share in made if name in methods]
    if wanted is not None and wanted < _WHOLLY and None in shares:
        return wanted
    return sum(share or 0.0 for share in shares)
