"""How much of a part, or how many of its welds, the words of an examination ask for, where they surely limit it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from speclint_release.inputs.choices import leaves_to_choice
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
#: Units of lengths in millimetres.
_LENGTHS: dict[str, float] = {
    "mm": 1,
    "cm": 10,
    "m": 1000,
    "met(?:re|er)s?": 1000,
    "in": 25.4,
    "inch(?:es)?": 25.4,
    "ft|foot|feet": 304.8,
}
COUNT = rf"(?:{'|'.join(_NUMBERS)}|\d+)"
_ORDINAL = rf"(?:{'|'.join(_ORDINALS)}|\d+(?:st|nd|rd|th))"
#: One in so many; not a taper, nor work done in several directions, runs or places.
_IN_SO_MANY = re.compile(
    rf"(?i)(?<!taper )(?<!taper of )(?<!slope )(?<!slope of )\b(?P<n>{COUNT}) (?:(?:[a-z]+|⟨\d*⟩) ){{0,2}}(?:in|out of)"
    rf"(?: (?:every|each|a))? (?P<of>{COUNT})\b"
    r"(?![.,]\d| ?(?:mm|cm|m|in|µm|pass|run|layer|direction|plane|position|stage|step|side|day|hour|minute|place)\w*\b)"
)
_EVERY_SO_MANY = re.compile(
    rf"(?i)\b(?:every|each) (?P<of>{_ORDINAL})\b(?! (?:part(?:y|ies)|year|month|week|day|overhaul|wash|lift|run|pass"
    r"|layer|trip|km)\w*)"
)
_JOINED = r"(?:weld|joint|seam|butt|fillet)s?\b"
EXAMINED = r"(?:weld|joint|seam|butt|fillet|stud|bolt|pin|part|piece)s?\b"
#: What a share may be of, beside the number of welds.
_WHOLES = "length|circumference|surface|area|volume"
#: So many of them all, as 3 of 5 welds or 3/5 of the welds; not a sheet of several.
_OF_SO_MANY = re.compile(
    rf"(?i)(?<!sheet )(?<!page )(?<!record )(?<!report )(?<!drawing )(?<!step )\b(?P<n>{COUNT})"
    rf"(?: (?:[a-z]+ )?{EXAMINED})? of (?:the |its )?(?P<of>{COUNT})(?= (?:[a-z]+ )?{EXAMINED}| ?(?:$|;))"
)
_OVER_SO_MANY = re.compile(
    rf"(?i)(?<![\d./])(?P<n>\d+)/(?P<of>\d+) (?=(?:of (?:the )?)?(?:[a-z]+ )?(?:{EXAMINED}|(?:{_WHOLES})\b))"
)
_OF_SIZE = r"(?:an? |(?:the )?(?:wall|thickness|depth|allow|limit|radius|diameter|skip))"
_FRACTION = re.compile(rf"(?i)\b(?:an?|one)[ -](?P<of>{_ORDINAL})(?: part)? of (?!{_OF_SIZE})")
#: Two thirds, three quarters.
_PARTS = re.compile(rf"(?i)\b(?P<n>{COUNT})[ -](?P<of>{'|'.join(_ORDINALS)})s\b(?! of {_OF_SIZE})")
_HALF = re.compile(rf"(?i)\bhalf (?:of )?(?=(?:the|them|all|{_WHOLES})\b)(?!{_OF_SIZE})")
#: A share in per cent; not a sensitivity, a level of the screen, or a share of the wall.
_PER_CENT = re.compile(
    r"(?i)(?<!sensitivity )(?<!sensitivity of )(?<!than )(?<!within )(?<!level )(?<!at )(?<!to )(?<![\d.,±])"
    r"(?P<share>\d{1,2}(?:[.,]\d+)?) ?(?:%|per ?cent\b)"
    r"(?= ?(?:$|;|⟨|(?:(?:of|by|der|aller) )?(?:the |all |them|each |its |every )*(?:[a-z]+ )?"
    r"(?:⟨|weld|joint|seam|butt|fillet|length|volume|surface|area|circumf|stud|bolt|pin|part|piece|exam"
    r"|inspect|tested|them|\w*n[aä]ht)))"
)
#: So much of each length, as 200 mm of each metre; not of a wall.
_OF_LENGTH = re.compile(
    rf"(?i)(?<![\d.])(?P<n>\d+(?:\.\d+)?) ?(?P<unit>{'|'.join(_LENGTHS)})\b (?:of|in|per|from|on|out of|for)"
    rf"(?: (?:each|every|an?|one))? ?(?P<of>\d+(?:\.\d+)?)? ?(?P<unit_of>{'|'.join(_LENGTHS)})\b"
    r"(?! (?:wall|thick|deep|depth|plate|bore|radius|diameter))"
)
SHOT = r"(?:[a-z]+ )?(?:⟨\d*⟩|films?|shots?|spots?|exposures?)"
#: The testing groups of EN 13445-5 in which a part of the welds is examined, with the most of that: of butt welds along
#: a shell (from memory).
_OF_GROUP = {"3": 0.25, "3a": 0.25, "3b": 0.1}
_GROUP = re.compile(r"(?i)\b(?:testing group|prüfgruppe) (?P<group>3[ab]?)\b")
#: One film or shot of each weld, or so many of each length of it.
_ONE_OF_EACH = (
    rf"\b(?:an?|one|1|single) {SHOT} (?:(?:per|for|of|in|on|at)(?: each| every)?|each|every) (?:[a-z]+ )?"
    r"(?:weld|joint|seam|butt|fillet)s?\b"
    rf"|\b{COUNT} {SHOT} (?:per|each|every|in every|for every|in each) (?:\d+(?:\.\d+)? ?)?(?:{'|'.join(_LENGTHS)})\b"
)
_OF_EACH = re.compile(_ONE_OF_EACH, re.I)
#: A length of each weld.
_LENGTH_OF_EACH = (
    rf"\b\d+(?:\.\d+)? ?(?:{'|'.join(_LENGTHS)}) (?:per|(?:(?:of|on|in|from) )?(?:each|every)) (?:[a-z]+ )?"
    r"(?:weld|joint|seam|butt|fillet)s?\b"
)
#: Words that say that it is less than the whole, and not how much.
LIMITING = re.compile(
    rf"(?i)\b(?:testing group|prüfgruppe) (?:2[ab]?|4)\b|\bstichprobe\w*|{_ONE_OF_EACH}"
    r"|(?<!hot )(?<!focal )\bspot\b(?![- ]?(?:fac|weld|drill|size|heat))|\brandom(?:ly)?\b(?! orient)"
    r"|(?<!test )\bsampl(?:ed|ing|es?(?! (?:plate|piece|coupon|weld|of (?:the )?(?:metal|plate|heat|cast))))\b"
    rf"|\b(?:a few|some|several|selected|chosen)(?: of the)? (?:[a-z]+ )?{EXAMINED}"
    rf"|\b(?:{COUNT}|an?) (?:[a-z]+ )?(?:per|(?:from|of|in|for|out of) (?:each|every))"
    r" (?:batch|lot|heat|cast|furnace load)\b|\bAQL\b"
    rf"|{_LENGTH_OF_EACH}|\b(?:limited|reduced)\b(?! (?:to|by|access))"
    r"|\bpart(?:ly|ially)(?= (?:⟨|exam|inspect|tested|by ⟨)|$|;)|\bpartial\b(?! (?:joint )?penetr)"
    rf"|(?<!all )(?<!each )(?<!every )\b{COUNT} of (?:them|these|those|(?:the|its) (?:[a-z]+ )?{EXAMINED})"
)
#: Words that name one weld or a few of them.
NAMING = re.compile(
    rf"(?i)\b(?:first|last)(?: (?:and|or) (?:the )?(?:first|last))?(?: {COUNT})? (?:[a-z]+ )?{_JOINED}"
    rf"(?! (?:pass|run|layer|bead))|\b{_JOINED} (?:nos?\.? ?)?\d+(?:(?:,| and| to| through|-| &) ?\d+)* only\b"
    rf"|\bonly (?:the )?{_JOINED} (?:nos?\.? ?)?\d"
)
#: Words that say that it is the whole.
_SO_MANY = rf"(?:{_ORDINAL}|\d|(?:two|three|four|five|ten)\b)"
_WHOLE = re.compile(
    rf"(?i)\b100 ?(?:%|per ?cent)|(?<!of )\ball\b|(?<!in )(?<!of )\bevery\b(?! {_SO_MANY})|(?<!of the )\bwhole\b"
    r"|\bfull(?:y)?\b(?! penetr)|\bentire"
    r"|\b(?:not?|never|without|nor|instead of|in place of) (?:[a-z]+ )?(?:spot|random|sampl|part)"
)
#: More such words, which limit nothing but do not outweigh a limit either.
_COMPLETE = re.compile(r"(?i)\b(?:all|every|whole|each|both|complete(?:ly)?|throughout|alle[rn]?)\b")
#: A method and nothing that says of what: it shares the extent of what stands before it.
_BARE = re.compile(r"(?i)(?:(?:by|with|or|the|/) ?)*⟨\d+⟩(?: (?:or )?⟨\d+⟩)*")
_WHOLLY = 1.0
#: Words for a share.
SIZED = (
    _IN_SO_MANY,
    _OF_SO_MANY,
    _OVER_SO_MANY,
    _EVERY_SO_MANY,
    _FRACTION,
    _PARTS,
    _HALF,
    _PER_CENT,
    _OF_LENGTH,
    _GROUP,
)


class Extent(NamedTuple):
    """Methods, any of which will do, the share they are asked for, None where nothing says how large, and the words."""

    methods: list[str]
    share: float | None
    words: str


def extents(text: str) -> list[Extent]:
    """What each part of a text asks for, and how much of it; words that leave it to somebody's choice do not say.

    >>> [one[:2] for one in extents("one joint in ten by ultrasound or film, toes by magnetic particle")]
    [(['ultrasound', 'radiographs'], 0.1), (['magnetic particle'], 1.0)]
    >>> [one.share for one in extents("UT 100 %, RT by random sampling")]
    [1.0, None]
    >>> [one.share for one in extents("all joints by ultrasound, as the inspector picks them")]
    [None]
    """
    found: list[tuple[list[str], list[str]]] = []
    before: list[str] = []
    for methods, words in worded(text):
        if methods and found and _BARE.fullmatch(words.strip()):
            found.append((methods, found[-1][1]))
        elif found and methods == found[-1][0] and all(_BARE.fullmatch(one.strip()) for one in found[-1][1]):
            found[-1][1].append(words)  # of one method named twice, as "RT, one film in four"
        elif methods:
            found.append((methods, [*before, words]))
            before = []
        elif "⟨" not in words:
            (found[-1][1] if found else before).append(words)
    return [
        Extent(methods, None if leaves_to_choice(words) else share_of("; ".join(words)), "; ".join(words))
        for methods, words in found
    ]


def share_of(words: str) -> float | None:
    """The share that some words limit an examination to: 1 unless they surely do, None where they do not say how much.

    >>> [share_of(one) for one in ("1 in 10", "a tenth of the seams", "every fifth weld", "25 % of the length")]
    [0.1, 0.1, 0.2, 0.25]
    >>> [share_of(one) for one in ("all of them", "every one", "2 % sensitivity", "spot faces", "spot checks")]
    [1.0, 1.0, 1.0, 1.0, None]
    """
    if _WHOLE.search(_OF_EACH.sub("", words)):
        return _WHOLLY
    if shares := part_shares(words):
        return max(shares)
    return None if LIMITING.search(words) or names_some(words) else _WHOLLY


def names_some(words: str) -> bool:
    """Whether some words name one weld or a few, beside which others may be named elsewhere.

    >>> names_some("butt weld 1 only"), names_some("first and last weld"), names_some("one weld in ten")
    (True, True, False)
    """
    return NAMING.search(words) is not None


def says_all(words: str) -> bool:
    """Whether some words say that an examination is of all, and do not only say nothing that limits it.

    >>> [says_all(one) for one in ("every butt weld", "8 of 8 welds", "the whole part", "both seams", "butt welds")]
    [True, True, True, True, False]
    >>> [says_all(one) for one in ("10 % of each weld", "one film of each of 3 of 5 welds")]
    [False, False]
    """
    whole = _WHOLE.search(words) or _COMPLETE.search(words) or _WHOLLY in _shares(words)
    return bool(whole) and share_of(words) == _WHOLLY


def part_shares(words: str) -> list[float]:
    """The shares of less than the whole that some words name.

    >>> part_shares("one weld in ten, 5 % of the length"), part_shares("all joints, 5 of 5 welds")
    ([0.1, 0.05], [])
    """
    return [one for one in _shares(words) if 0 < one < 1]


def in_per_cent(share: float) -> str:
    """A share in per cent, to a hundredth of one where it is not round.

    >>> in_per_cent(0.1), in_per_cent(0.985), in_per_cent(1), in_per_cent(1 / 3)
    ('10%', '98.5%', '100%', '33.33%')
    """
    return re.sub(r"\.?0+%", "%", f"{share:.2%}")


def _shares(words: str) -> Iterator[float]:
    for pattern in (_IN_SO_MANY, _OF_SO_MANY, _OVER_SO_MANY, _PARTS):
        for found in pattern.finditer(words):
            of = _number(found["of"])
            yield _number(found["n"]) / of if of else _WHOLLY
    for pattern in (_EVERY_SO_MANY, _FRACTION):
        yield from (1 / _number(found["of"]) for found in pattern.finditer(words) if _number(found["of"]))
    if _HALF.search(words):
        yield 0.5
    yield from (float(found["share"].replace(",", ".")) / 100 for found in _PER_CENT.finditer(words))
    yield from (_OF_GROUP[found["group"].lower()] for found in _GROUP.finditer(words))
    for found in _OF_LENGTH.finditer(words):
        length = float(found["of"] or 1) * _millimetres(found["unit_of"])
        yield float(found["n"]) * _millimetres(found["unit"]) / length if length else _WHOLLY


def _millimetres(unit: str) -> float:
    return next(of for called, of in _LENGTHS.items() if re.fullmatch(called, unit, re.I))


def _number(word: str) -> int:
    known = _NUMBERS.get(word.lower()) or _ORDINALS.get(word.lower())
    return known or int(re.sub(r"\D", "", word))
