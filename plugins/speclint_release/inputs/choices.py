"""Words of an examination that leave it to somebody how much is examined, or leave some of it out."""

from __future__ import annotations

import re
from collections.abc import Iterable

_PERSON = (
    r"(?:inspector|surveyor|examiner|engineer|welder|operator|foreman|fitter|chargehand|shop|works|office|body"
    r"|authority|owner|railway|customer|buyer|purchaser|maker|manufacturer|supplier|contractor|he|she|they|we)"
)
_PICKS = (
    r"(?:picks?|chooses?|selects?|decides?|likes?|wish(?:es)?|wants?|(?:sees?|thinks?) fit|directs?|instructs?|asks?"
    r"|names?|marks?)"
)
#: Behind "as required" and the like, what a standard or a document requires.
_NOT_OF_A_DOCUMENT = r"(?! (?:by|in|on|to|with) (?-i:(?:[a-z]+ )*[A-Z0-9]))"
_CHOSEN = re.compile(
    rf"(?i)\b{_PERSON} (?:may |shall |will )?{_PICKS}\b"
    rf"|\b(?:picked|chosen|selected|decided|named|marked|directed) (?:on )?by (?:the |an? )?(?:\w+ )?{_PERSON}\b"
    rf"|\b{_PERSON}['’]s? (?:own )?(?:choice|choosing|discretion|option|selection|pick|judg)"
    rf"|\b(?:choice|discretion|option|selection) of (?:the |an? )?(?:\w+ )?{_PERSON}\b|\bat (?:choice|discretion)\b"
    r"|\bas (?:to be )?(?:agreed|arranged|required|needed|necessary|convenient|directed|instructed|chosen|appropriate"
    rf"|possible|practicable|thought fit)\b{_NOT_OF_A_DOCUMENT}"
)
#: Where these stand beside it, what is chosen is another thing than how much, or comes on top.
_OF_ANOTHER_MATTER = re.compile(
    r"(?i)\b(?:further|additional|more|extra|beyond|prob|angle|method|technique|procedure|sensitiv|film|screen|source"
    r"|time|date|day|order|sequence|report|record|level|class|witness|prepar|equipment)"
)
_WITHIN_REACH = re.compile(
    r"(?i)\b(?:where(?:ver)?|if|when|(?:as|so|in ?so) far as|to the extent|as much as) (?:[a-z]+ ){0,3}?"
    r"(?:accessible|possible|practicable|practical|reachable|reached|got at|permits?|allows?)\b"
    r"|\baccessible (?:[a-z]+ )?(?:weld|joint|seam|butt|fillet|part|length)"
)
#: Words that leave out one or a few, in small or large letters.
EXCEPTING = (
    r"\b(?:all|every \w+) (?:but|save)\b|(?<!without )(?<!no )\bexcept|\bother than\b|\bapart from\b|\bexcluding\b"
    r"|\b(?:almost|nearly|not) (?:all|every)\b"
)


def leaves_to_choice(clauses: Iterable[str]) -> bool:
    """Whether the clauses of an examination leave it to somebody's choice how much is examined.

    >>> [leaves_to_choice([one]) for one in ("as the inspector picks them", "at the surveyor's choice", "as agreed")]
    [True, True, True]
    >>> [leaves_to_choice([one]) for one in ("all joints", "probe chosen by the operator", "as required by EN 13445")]
    [False, False, False]
    """
    return any(_CHOSEN.search(one) and not _OF_ANOTHER_MATTER.search(one) for one in clauses)


def leaves_out_unreached(words: str) -> bool:
    """Whether words that may say "all" leave out what cannot be got at.

    >>> [leaves_out_unreached(one) for one in ("all welds where accessible", "accessible welds", "as far as possible")]
    [True, True, True]
    >>> [leaves_out_unreached(one) for one in ("all welds", "inaccessible welds too", "where the wall is thick")]
    [False, False, False]
    """
    return _WITHIN_REACH.search(words) is not None


def excepts_some(words: str) -> bool:
    """Whether words that may say "all" except some.

    >>> [excepts_some(one) for one in ("all but weld 3", "every weld except the last", "nearly all", "all butt welds")]
    [True, True, True, False]
    """
    return re.search(EXCEPTING, words, re.I) is not None
