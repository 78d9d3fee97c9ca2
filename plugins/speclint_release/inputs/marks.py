"""Marks and paragraphs of codes that say how much is examined, in the words for it."""

from __future__ import annotations

import re

#: Behind a document or a level of whoever examines, RT-3 is no mark of a vessel; nor where it runs from one to another.
_OF_A_PAPER = "".join(
    rf"(?<!{one} )"
    for one in (
        "report",
        "record",
        "film",
        "films",
        "procedure",
        "technique",
        "sheet",
        "no",
        "no.",
        r"RT-\d to",
    )
)
_BY_WHOM = (
    r"(?! ?(?:to|and|,|-) RT-\d)"
    r"(?! (?:level|certified|qualified|operator|personnel|examiner|inspector|technician))"
)
#: How much was radiographed, as a vessel is marked by ASME VIII-1, UG-116(e): RT 3 is spot films, RT 2 the welds of
#: category A and spots of others, RT 4 anything less than RT 1 that is none of these (from memory).
_SPOT = rf"(?i){_OF_A_PAPER}(?<![-\w])RT-3\b{_BY_WHOM}"
_OF_SOME = rf"(?i){_OF_A_PAPER}(?<![-\w])RT-(?P<mark>[24])\b{_BY_WHOM}"
#: Paragraphs of the same code: all of category A and spots of the others; spot films (from memory).
_PARAGRAPHS = (
    (r"\bUW-11 ?\(a\) ?\(5\) ?\(b\)", "mark-2"),
    (r"\bUW-(?:11 ?\(b\)|52\b)", "spot"),
)
#: The four categories of the joints of a vessel, ASME VIII-1, UW-3, which together are all.
_CATEGORIES = (
    r"\b[Cc]ategor(?:y|ies) (?:A(?: ?- ?| to | through )D|A, ?B, ?C,? (?:and|or|&) D|A ?/ ?B ?/ ?C ?/ ?D)\b"
)
#: An article or a division of a code, which is no number of anything else.
_ARTICLE = (
    r"(?P<code>\bASME (?:BPVC |[Cc]ode |[Ss]ec(?:tion|t)?\.? )*[IVX]+)"
    r"(?:[ ,]+(?:[Dd]iv(?:ision)?|[Aa]rt(?:icle)?|[Aa]pp(?:endix)?)\.? \d+)+"
)


def without_articles(text: str) -> str:
    """A text with a code in the place of its articles, spot films for their paragraph, and four categories left out.

    >>> without_articles("RT to ASME V, Art. 2"), without_articles("RT per UW-11(b)"), without_articles("UW-11(a)")
    ('RT to ASME V', 'RT per spot', 'UW-11(a)')
    >>> without_articles("RT of category A, B, C and D joints"), without_articles("RT of category A and B joints")
    ('RT of  joints', 'RT of category A and B joints')
    """
    for paragraph, words in _PARAGRAPHS:
        text = re.sub(paragraph, words, text)
    text = re.sub(r"(?i)\b(art|sec|div)\. (?=[\dIVX])", r"\1 ", text)
    return re.sub(_CATEGORIES, "", re.sub(_ARTICLE, lambda found: found["code"], text))


def marks_in_words(text: str) -> str:
    """A text with the marks of what was radiographed of a vessel in words.

    >>> [marks_in_words(one) for one in ("RT-1", "RT-2", "RT-3 of seams", "RT-4")]
    ['RT-1', 'RT of mark-2', 'spot RT of seams', 'RT of mark-4']
    >>> [marks_in_words(one) for one in ("report RT-3", "RT-2 operator", "films RT-3 to RT-4", "RT-30")]
    ['report RT-3', 'RT-2 operator', 'films RT-3 to RT-4', 'RT-30']
    """
    return re.sub(_OF_SOME, lambda found: f"RT of mark-{found['mark']}", re.sub(_SPOT, "spot RT", text))
