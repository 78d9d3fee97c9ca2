"""What a text asks for, less what it denies or leaves open: methods of examination, and heat treatments.

A text is read clause by clause. In each, a thing is not asked for where a word before it or behind it says so
("no MT", "UT or RT not required", "MT: none"), where it is still to be decided ("UT, to be agreed"), and where
somebody else has to ask for it first ("MT if required", "RT where the inspector asks").
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cached_property

from msgspec import Struct

#: What parts the clauses of a text; a comma between two figures is that of a number.
_BETWEEN_CLAUSES = r"[;()\n]|(?<!\d),|(?<=\d{3}),|,(?!\d{1,2}(?!\d))|\.(?:\s|$)|\bbut\b"
#: Things one behind another; in a clause the number of each stands in these marks in its place.
_RUN = r"⟨\d+⟩(?:(?:[ /+&]|and|or|nor|to|per|EN|ISO|ASTM|DIN|BS|-\d)*⟨\d+⟩)*"
_NOT_BEFORE = (
    r"(?:no|not|never|none|without|neither|nor|un\w+ed|instead of|in lieu of|in place of|rather than|replac(?:ing|es)"
    r"|exempt\w* from|excus\w+|omit\w*|waiv\w+|skip\w*|delet\w+|dispens\w+ with|optional\w*|(?<![\d.,])0 ?%"
    r"|kein\w*|nicht|ohne)"
)
_BETWEEN = (
    r"(?:by|to|EN|ISO|ASTM|any|an?|the|(?:need|requirements?) (?:of|for)|subject to|(?:test|examin|inspect|check)ed by"
    r"|further|additional|separate|full|wet|dry|fluorescent|liquid|100 ?%)"
)
_NOT_BEHIND = (
    r"(?:(?:not|n['’]t|never|no longer|nicht)(?: to)?(?: be)? (?:required|needed|necessary|wanted|asked|appl\w+"
    r"|done|performed|carried|called|specified|planned|foreseen|ordered|requested|intended|yet|erforderlich|nötig)"
    r"|n/a\b|waived|omitted|deleted|dropped|skipped|cancelled|withdrawn|exempt|excused|excluded|excepted|unnecessary"
    r"|dispensed with|left out|replaced by|superseded by|need not|instead of which|entfällt|(?<![\d.,])0 ?%"
    r"|:? *(?:none|nil|no|-|–|—|\?)$)"
)
_UNDECIDED = (
    r"(?:\b(?:to|will|shall) be (?:decided|agreed|confirmed|advised|settled|determined|defined|arranged|chosen|named)"
    r"|\b(?:tbd|tba|tbc)\b|\bt\.b\.[acd]\b|\bundecided|\bpending)"
)
_OPEN = rf"(?:{_UNDECIDED}|\bto follow$|\bopen$)"
_ASKING = (
    r"(?:\b(?:required|needed|necessary|requested|ordered|specified|wanted|called for|agreed|directed|instructed"
    r"|possible|practicable|thought fit|(?:not |un)clear)\b(?! to\b)(?! (?:by|in|with) (?-i:(?:[a-z]+ )*[A-Z]))"
    r"|\b(?:asks?|requests?|wants?|directs?|requires? (?:it|so))\b|\bdoubt|\bsuspect)"
)
_ON_REQUEST = r"(?:(?:on|at|upon) (?:[\w'’]+ ){0,2}(?:request|demand|discretion)|by agreement|optional)"
_CONDITION = (
    rf"(?:(?:if|where|when|whenever|wherever|as|should|in case)\b.*?{_ASKING}"
    r"|(?:if|when|should|in case)\b.*?\b(?:cracks?|fails?|failed|indications?|defects?|flaws?|shows?)\b"
    rf"|where\b.*?\bshows\b|{_ON_REQUEST})"
)
_DENIED_BEFORE = rf"(?i)\b(?P<word>{_NOT_BEFORE}) (?:{_BETWEEN} )*(?P<run>⟨\d+⟩(?:(?: or | nor |/)⟨\d+⟩)*)"
_DENIED_BEHIND = rf"(?i)(?P<run>{_RUN})[^⟨]*?(?:{_NOT_BEHIND}|{_OPEN}|{_CONDITION})"
#: A clause without a thing, which says of the thing before it that it is not wanted, or is left open.
_TRAILING = (
    rf"(?i)(?:is |are |only )?(?:{_NOT_BEHIND}|{_OPEN}|{_ON_REQUEST}|(?:if|where|when|as)\b.*?{_ASKING})"
)
#: A clause that begins with what somebody has to ask or find before the thing is wanted.
_LEADING = rf"(?i)(?:only )?(?:{_CONDITION})"
_DENIED_BY_LEADING = rf"{_LEADING}[^⟨]*(?P<run>{_RUN})"
_NEGATION = r"(?i)\b(?:no|not|none|nothing|never)\b"
#: What is written where a person, a body or a document is to be named, and names none: beside the words for nothing, a
#: denial, a reference, what is still undecided, and the question itself.
_NOBODY = (
    r"(?i)\s*(?:(?:no(?! ?\.| \d)|not|none|nobody|whoever|whatever|whichever|any|kein\w*)\b.*"
    r"|(?:yes|open|later|to follow|waived|exempt|entfällt|as (?:required|agreed|usual|needed|necessary|per|before)"
    r"|if (?:required|needed|necessary)|see (?:drawing|contract|order|note|specification|above|below|code))\b.*"
    rf"|.*{_UNDECIDED}.*|(?:the |an? )?(?:local )?code|(?:the |an? )?(?:competent|notified|inspection|authori[sz]ed) "
    r"(?:body|person|authority|inspector)|(?:the )?(?:procedure|welder))\s*"
)
#: A text that leaves everything open, whatever it names after that.
_LEFT_OPEN = rf"(?i)\s*(?:(?:methods?|examination|inspection|ndt|nde) )?(?:is |are )?{_OPEN}"


class Wording(Struct, frozen=True, dict=True):
    """Things by name, each with the words by which it is written, and the nouns that may stand behind them."""

    words: Mapping[str, str]
    nouns: str

    @cached_property
    def _mention(self) -> re.Pattern[str]:
        each = (f"(?P<m{at}>(?:{words}){self._noun})" for at, words in enumerate(self.words.values()))
        return re.compile("|".join(each))

    @property
    def _noun(self) -> str:
        return rf"\w*(?:[- ](?i:{self.nouns})\w*)*"

    def asked(self, text: str) -> Iterator[list[str]]:
        """What each part of a text asks for, of those parts that ask for any."""
        yield from (found for found, _ in self.parts(text) if found)

    def parts(self, text: str) -> Iterator[tuple[list[str], str]]:
        """What each part of a text asks for, if anything, and the words of it, with each thing as a number in marks."""
        if leaves_open(text):
            return
        clauses, names = self._clauses(text)
        for clause in clauses:
            denied = {names[at] for at in _denied(clause)}
            for part in re.split(r" and | then |[+&]", clause):
                yield [names[at] for at in _numbers(part) if names[at] not in denied], part

    def denies_all(self, text: str) -> bool:
        """Whether each clause of a text names one of the things, which it denies, or leaves open."""
        return not any(self.asked(text)) and all("⟨" in clause for clause in self._clauses(text)[0])

    def _clauses(self, text: str) -> tuple[list[str], list[str]]:
        """The clauses of a text with each thing as its number in marks, and the things by their numbers.

        A clause that says only that the thing before it is not wanted, or on what the thing after it hangs, is joined
        to that of the thing.
        """
        names: list[str] = []
        called = tuple(self.words)

        def marked(found: re.Match[str]) -> str:
            names.append(called[int(str(found.lastgroup)[1:])])
            return f"⟨{len(names) - 1}⟩"

        codes = re.sub(r"\b(?:[A-Z]\.){2,}(?!\w)", lambda letters: letters.group().replace(".", ""), text)
        plain = self._mention.sub(marked, codes.replace("⟨", "(").replace("⟩", ")"))
        clauses: list[str] = []
        for piece in filter(None, (one.strip() for one in re.split(_BETWEEN_CLAUSES, plain))):
            before = clauses[-1] if clauses else ""
            trails = "⟨" in before and "⟨" not in piece and re.match(_TRAILING, piece)
            leads = before and "⟨" not in before and re.match(_LEADING, before)
            if trails or leads:
                clauses[-1] = f"{before} {piece}"
            else:
                clauses.append(piece)
        return clauses, names


def leaves_open(text: str) -> bool:
    """Whether a text leaves everything open, whatever it names after that.

    >>> leaves_open("to be agreed: UT or RT"), leaves_open("UT, to be agreed")
    (True, False)
    """
    return re.match(_LEFT_OPEN, text) is not None


def names_nobody(text: str) -> bool:
    """Whether a text where a person, a body or a document is to be named says that there is none, or none yet.

    >>> [names_nobody(one) for one in ("not required", "a notified body to be chosen", "see contract", "notified body")]
    [True, True, True, True]
    >>> [names_nobody(one) for one in ("No. 3 district office", "the railway's competent person, W. Open", "WPS-12")]
    [False, False, False]
    """
    return re.fullmatch(_NOBODY, text) is not None


def _denied(clause: str) -> Iterator[int]:
    """The numbers of what a clause says is not wanted, or not yet."""
    if found := re.match(_DENIED_BY_LEADING, clause):
        yield from _numbers(found["run"])
    for found in re.finditer(_DENIED_BEHIND, clause):
        yield from _numbers(found["run"])
    for found in re.finditer(_DENIED_BEFORE, clause):
        twice = found["word"].lower() == "without" and re.search(_NEGATION, clause[: found.start()])
        if not twice:
            yield from _numbers(found["run"])


def _numbers(marked: str) -> list[int]:
    return [int(one) for one in re.findall(r"⟨(\d+)⟩", marked)]
