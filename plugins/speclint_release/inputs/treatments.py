"""The heat treatments that a text says were done, or are asked for."""

from __future__ import annotations

import re
from collections.abc import Iterable

from speclint_release.inputs.clauses import Wording

#: Words by which heat treatments are written, English and German with and without umlauts, by the words that specs use
#: for the steps of making and for surfaces. Vibration is no heat treatment, and temperature no tempering.
_WORDING = Wording(
    {
        "stress relieve": r"(?i:(?<!vibratory )(?<!vibration )stress[-\s]*reli(?!\w* (?:by|through|with) vibrat)"
        r"|pwht|post[- ]?weld heat"
        r"|spannungs(?:(?:arm|frei)(?:[ -]ge?gl\w*)?|abbau))|\bS(?:R|AG)\b",
        "anneal": r"(?i:(?<!solution )anneal|weichgegl|weichgl|\bgegl(?:ü|ue|u)ht|\bgl(?:ü|ue|u)hen)",
        "normalize and temper": r"\bN ?[+&] ?T\b|(?<!\w)\+NT\b",
        "normalize": r"(?<!\w)\+N\b|(?i:normali|normal[ -]?(?:ge)?gl)",
        "harden and temper": r"(?i:quench\w* (?:and|&|\+) temper|verg(?:ü|ue)t|vergut(?:et|en|ung))|\bQT\b"
        r"|\b[QH] ?[&+/] ?T\b|\b[OW]QT\b",
        "case harden": r"(?i:case[- ]?h(?:arden|dn)|carburi|carbonitrid|einsatz(?:ge)?h(?:ä|ae|a)rt|aufgekohlt"
        r"|aufkohl)",
        "induction harden": r"(?i:induction|induktiv|induktions)",
        "nitride": r"(?i:nitrid|nitrocarb|nitrier)",
        "harden": r"(?i:harden|quench|\b(?:ge)?h(?:ä|ae|a)rte[nt]|abgeschreckt)",
        "temper": r"(?i:temper(?!at)|angelassen|\banlassen)",
    },
    "relie|harden|anneal|treat",
)
#: What a treatment does besides that by which it is called. Whatever is annealed is relieved of stress.
_DOES = {
    "anneal": ("stress relieve",),
    "harden and temper": ("harden", "temper"),
    "normalize and temper": ("normalize", "temper"),
    "case harden": ("harden",),
    "induction harden": ("harden",),
}
#: The steps of a heat treatment after welding, by the word that a spec says it in.
AFTER_WELDING = {
    "stress relieved": ("stress relieve",),
    "normalized": ("normalize",),
    "quenched and tempered": ("harden", "temper"),
}
#: The heat treatment of a surface, by the word that a spec says it in.
OF_SURFACE = {
    "case hardened": "case harden",
    "induction hardened": "induction harden",
    "nitrided": "nitride",
}


#: Of a part of what is treated: of a place by its burner or its mat, or of a place that is named.
_LOCAL = re.compile(
    r"(?i)\b(?:welds?|seams?|joints?) (?:nos?\.? ?)?W?\d|(?<!no )(?<!without )\bexcept|\bexcluding\b|\ball but\b"
    r"|(?<!not )\b(?:only|nur|lediglich)\b(?! (?:once|one cycle|after|before|when|if|in |nach|einmal))"
    r"|\bhalf (?:of|the)\b|\b(?:one|front|back|left|right|upper|lower) half\b|\bzur h(?:ä|ae)lfte\b|\bin places\b"
    r"|(?<!not )(?<!no )\b(?:local(?:ly|i[sz]ed)?|spot|partial(?:ly)?|partly|in part|örtlich\w*|lokal\w*|teilweise"
    r"|(?:by )?(?:torch|flame(?! harden)|ring burner"
    r"|(?:heating|resistance) (?:mat|pad|blanket|band|heater|element)s?))\b"
)
_OF_PLACE = re.compile(
    r"(?i)(?:\b(?:of|on|around|at)|[,:;]) (?:the |its |both )?"
    r"(?:steam |front |back |left |right |upper |lower |repaired )*"
    r"(?P<place>saddle|seat|liner|neck|chest|flange|branch|nozzle|stub|corner"
    r"|end|pad|foot|bracket|boss|port|passage|belt|jacket|barrel|collar|half|section|repair|area|lug)(?:e?s)?\b"
)
#: Of a treatment that was begun and not ended.
_BROKEN_OFF = re.compile(
    r"(?i)(?<!not )\b(?:interrupted|aborted|abandoned|broken off|not completed|incomplete|unterbrochen|abgebrochen)\b"
    r"(?!.*\b(?:repeat|again|anew|resum|complet|wiederhol|erneut))"
)


def treatments_missing(asked: Iterable[str], recorded: Iterable[str]) -> list[str]:
    """The heat treatments that a spec asks for and that no record names.

    >>> treatments_missing(["harden", "temper"], ["quenched and tempered in oil"])
    []
    >>> treatments_missing(["stress relieve"], ["normalized"]), treatments_missing(["harden", "temper"], ["hardened"])
    (['stress relieve'], ['temper'])
    >>> treatments_missing(["stress relieve"], ["not stress relieved"]), treatments_missing(["temper"], [])
    (['stress relieve'], ['temper'])
    >>> treatments_missing(["normalize", "temper"], ["N+T"]), treatments_missing(["harden", "temper"], ["OQT"])
    ([], [])
    """
    done = {does for text in recorded for one in _named(text) for does in (one, *_DOES.get(one, ()))}
    return [one for one in dict.fromkeys(asked) if one not in done]


def is_of_a_part(text: str, called: str) -> bool:
    """Whether the words of a heat treatment say that it was of a part of what it is called, or local, or not ended.

    >>> [is_of_a_part(one, "cylinder block") for one in ("local stress relief", "stress relief of the chest", "PWHT")]
    [True, True, False]
    >>> [is_of_a_part(one, "steam chest") for one in ("relieved, not locally", "stress relief of the chest")]
    [False, False]
    >>> [is_of_a_part(f"stress relief {one}", "block") for one in (", only the front", "interrupted", "only once")]
    [True, True, False]
    """
    if _LOCAL.search(text) or _BROKEN_OFF.search(text):
        return True
    return any(one["place"].casefold() not in called.casefold() for one in _OF_PLACE.finditer(text))


def names_relief(text: str) -> bool:
    """Whether the words of a heat treatment say that it relieves stress.

    >>> names_relief("Stress-relieved in the foundry"), names_relief("annealed"), names_relief("PWHT")
    (True, False, True)
    >>> [names_relief(one) for one in ("spannungsarm geglüht", "nicht spannungsarmgeglüht", "normalgeglueht")]
    [True, False, False]
    """
    return "stress relieve" in _named(text)


def is_understood(text: str) -> bool:
    """Whether the words of a heat treatment name one that is known, or deny it.

    >>> [is_understood(one) for one in ("PWHT", "not stress relieved", "spannungsarmgeglüht", "heated through")]
    [True, True, True, False]
    """
    return bool(_named(text)) or _WORDING.denies_all(text)


def relieves(text: str) -> bool:
    """Whether the words of a heat treatment name one that relieves stress.

    >>> relieves("PWHT"), relieves("annealed"), relieves("furnace"), relieves("normalized")
    (True, True, False, False)
    """
    return not treatments_missing(["stress relieve"], [text])


def may_relieve(text: str) -> bool:
    """Whether a heat treatment may be one that relieves stress: it says so, or names no other.

    >>> may_relieve(""), may_relieve("annealed"), may_relieve("normalized")
    (True, True, False)
    """
    named = _named(text)
    return not named or not treatments_missing(["stress relieve"], [text])


def _named(text: str) -> list[str]:
    return [one for part in _WORDING.asked(text) for one in part]
