"""A small grammar of how much is examined: each word is known, takes some away, or is told as not understood."""

from __future__ import annotations

import re
from collections.abc import Iterable, Set
from typing import NamedTuple

from speclint_release.inputs.choices import EXCEPTING, leaves_out_unreached, leaves_to_choice
from speclint_release.inputs.extents import COUNT, EXAMINED, LIMITING, NAMING, SIZED, part_shares, share_of
from speclint_release.inputs.stages import STAGE

#: Forms that are understood, for what a rule says.
FORMS = "all, every weld, the whole length, 10 %, one in ten, 3 of 5 welds"
_CLAUSES = re.compile(r"[;()\n]|:(?= )|(?<!\d),|(?<=\d{3}),|,(?!\d{1,2}(?!\d))|\.(?:\s|$)")
_MARK = r"⟨\d*⟩"
_THING = (
    r"(?:(?:weld|joint|seam|butt|fillet|tee|toe|stud|bolt|nut|pin|part|piece|component|weldment|casting|forging)s?"
    r"|naht|nähte|(?:schweiß|stumpf|kehl)n[aä]hte?)"
)
_FLAW = r"(?:cracks?|indications?|defects?|flaws?|faults?|findings?|imperfections?|discontinuit\w+)"
_BODY = r"(?:EN|ISO|ASTM|ASME|DIN|BS|API|TR|TS|PD)"
_PAPER = (
    r"(?:class|level|grade|(?<!testing )group(?! [2-4][ab]?\b)|category|para(?:graph)?|procedures?"
    r"|technique|ITP|sheets?|steps?|pages?|drawings?|records?|reports?|plan|rev(?:ision)?"
    r"|notes?|clause|table|annex|order)"
)
_ROUND = r"(?:direction|side|pass|view|exposure|position)"
#: What limits nothing, though it holds numbers or words that might: documents, the outcome, figures of the method.
_HARMLESS = (
    r"ASME (?:BPVC |code |sec(?:tion|t)? )*[IVX]+|(?:UW|UCS|UHT|QW|PW)-\d+",
    rf"{_BODY}(?:[ -]{_BODY})*(?:[ -]?(?:[A-Z]?\d[\w.:/-]*|{_MARK}(?:-\d+)*))?(?: [A-D])?|B31\.\d+",
    r"(?:dw[ds]i|sw[ds]i|panoramic|elliptical)(?: (?:exposures?|technique))?|iqi|wfmt",
    r"(?:\d+ ?(?:°|deg(?:rees)?) )?apart|\d{1,2}[./]\d{1,2}[./]\d{2,4}",
    r"(?:[0-8]?\d|90|360) ?(?:°|deg(?:rees)?)(?! (?:of|arc|sector|segment|each|only))",
    r"(?:dwell(?: time)? )?\d+ ?min(?:utes?)?(?: dwell)?|dwell|(?:water|solvent)[- ](?:washable|removable)|developer",
    r"density(?:(?: of)? \d+(?:\.\d+)?(?: ?(?:to|-) ?\d+(?:\.\d+)?)?)?|wire|(?:acc|nach|gem(?:äß)?|ok|accept)",
    rf"{_PAPER} (?:of |nos?\.? ?)?(?:[A-Z][A-Z\d]*[-/ ]?)*(?:\d[\w./-]*|[A-D]|{_MARK}(?:-\d+)+)(?: of \d+)?",
    r"\d{4}-\d\d-\d\d",
    r"(?:no|without|free (?:of|from)|nil)(?: (?:any|recordable|relevant|reportable|rejectable|linear|surface))*"
    rf" {_FLAW}(?: (?:were |was )?(?:found|seen|detected|shown))?",
    rf"(?:without|no) exceptions?|(?:none|nothing|no {_THING}) (?:was |were )?(?:left out|omitted|excepted|missed)",
    r"(?:scann\w+ |sensitivity |level )?at \d+ ?% dac",
    rf"(?:better than|sensitivity(?: of)?(?: the)?(?: films?| {_MARK})?(?: of)?) \d+(?:\.\d+)? ?%",
    r"\d+(?:\.\d+)? ?mhz|\d+ ?kv|ir[- ]?192|se[- ]?75|co[- ]?60",
    r"taper(?: of)? \d+ in \d+|not less than 100 ?%|full[- ]penetration|heat[- ]affected zones?",
    r"(?:no|not by|without|instead of|in place of) (?:[a-z]+ )?(?:spot|random|sampl)\w*(?: checks?| films?| choice)?",
    rf"(?:all|each|every one)(?: of)?(?: the| its)? {COUNT}(?: of them| off)?|every one(?: of (?:them|these))?",
    rf"(?!(?:one|1) {_MARK} (?:per|each|every))(?!{COUNT} {_MARK} (?:per|each|every) \d){COUNT} {_MARK}"
    rf"(?! (?:in|out of)(?: (?:every|each|a))? {COUNT}(?! {_ROUND}))",
    rf"in {COUNT} (?:directions?|sides|passes|views|exposures)|(?:testing group|prüfgruppe) 1[ab]?",
    rf"{COUNT} (?:directions?|exposures)(?: each)?",
    rf"(?:before|after|at) (?:the )?(?:{_MARK}|test|repairs?|assembly|fitting|painting|cleaning)|to size",
    r"(?:single|double)[- ](?:wall|image)|(?:straight|angle)[- ]beam|circular magneti[sz]ation|(?:ac|dc) yoke",
    r"(?:all|every|each|(?:(?:the )?(?:whole|entire|complete|full))(?: of the)?)"
    r" (?:machined|turned|bored|milled|ground|polished|finished) (?:surfaces?|faces?)",
    r"(?:each|every|all) (?:pass(?:es)?|runs?|layers?)|(?:from )?end to end",
    r"(?:in the presence of|witnessed by|to the satisfaction of)(?: the| an?)? \w+",
    r"pressure[- ](?:retaining|bearing|containing)|(?:to|per|under|nach) art(?:icle)? \d+",
    r"\d+ ?% overlap(?:ping)?(?: of (?:the )?(?:films?|scans?))?|(?:with )?overlap(?:ping)?|type \(?[IVX]+\)?",
    r"(?:recording|acceptance|evaluation|reporting) level \d+(?: ?%(?: of)? dac)?|scann(?:ed|ing)|fbh",
    r"\d+ ?h(?:ours?)?|repeated(?: \d+ ?h(?:ours?)?)?",
    r"100 ?(?:%|per ?cent|pct)|black ink on white (?:contrast )?paint|phased[- ]array",
)
#: A band of plate beside a weld, which is examined too.
_BAND = re.compile(
    r"(?i)(?:\b(?:plus|with) |\+ ?|\b)\d+ ?(?:mm|cm|in)"
    r" (?:(?:of|on|to|at|the|adjacent|adjoining|parent|base|plate|metal|material) )*"
    rf"(?:each|either|both) sides?\b(?: of (?:the |each |every )?{_THING}(?!\w))?"
)
_NUMBERS = r"\d+(?: ?(?:to|-) ?\d+)"
_HARMLESS_WORDS = re.compile(
    rf"{_MARK}(?:-\d+)*(?: nos? {_NUMBERS}*| {_NUMBERS}+(?! ?%))?|"
    + "|".join(rf"(?<!\w)(?:{one})(?!\w)" for one in _HARMLESS),
    re.I,
)
#: Two sides together, which are all there are; the two ends of a weld are not the weld.
_BOTH = re.compile(
    r"(?i)\b(?:from )?both (?:sides|faces|edges)\b|\binside(?: and|;) outside\b|"
    r"\broot(?: runs?| pass)?(?: and|;) (?:cap|final|capping)(?: runs?| pass)?\b"
    rf"|\bfrom both ends\b(?! of (?:(?:the|each|every|all) )*{EXAMINED})|\bshop(?: and|;) (?:site|field)\b"
    r"|\blongitudinal(?: and|;) (?:circumferential|circular)\b|\bcircumferential(?: and|;) longitudinal\b"
)
#: Words that surely take some away, or say that it was not done.
_LESS = (
    r"(?:not|never|nicht)(?: \w+)? (?:possible|practicable|feasible|accessible|reachable|reached|examined|tested"
    r"|inspected|done|made|taken|covered|carried out|got at)|inaccessible|impossible|unexamined",
    EXCEPTING,
    r"only|just|partial(?:ly)?(?! penetr)|partly|in part|portions?|halves|half|mostly"
    rf"|(?:the |of )?repaired (?:areas?|places?|lengths?|{EXAMINED})|(?:of|on) (?:the )?repairs?"
    r"|mainly|at most|up to|some|few|several|most|majority|nearly|almost|left out|omitted|missed|skipped",
    r"(?<!the )(?<!whole )(?<!entire )(?<!this )(?<!each )(?<!every )(?<!full )(?<!complete )part(?! \d)|parts? of",
)
_SURELY_LESS = re.compile("|".join(rf"(?<!\w)(?:{one})(?!\w)" for one in _LESS), re.I)
_ZERO = re.compile(r"(?i)(?<![\d.,])0(?:\.0+)? ?(?:%|per ?cent)")
_JOINT = r"(?:(?:weld|joint|seam|butt|fillet|tee|toe)s?|naht|nähte|(?:schweiß|stumpf|kehl)n[aä]hte?)"
_KIND = r"(?:class|level|grade|group|category|type|sheet|step|page)"
_OF_KIND = r"(?:\d+[a-z]?|[A-D]|[IVX]+)"
_NO_KIND = r"(?:(?!on|of|in|for|by|all|each|every|and)[a-z]+ )?"
#: Those of one class, type or sheet, and of one category of joints: others are left out. A class to which a method
#: works, or to which its films are judged, leaves none out.
_CLASSED = re.compile(
    r"(?i)(?<!acceptance )(?<!quality )(?<!inspection )(?<!testing )(?<!test )(?<!evaluation )(?<!image )(?<!to )"
    rf"(?<!per )(?:(?:(?<!⟩ )\b{_KIND} {_OF_KIND}|(?<=⟩ ){_KIND} (?:\d+[a-z]?|[IVX]+)) {_NO_KIND}{_JOINT}(?!\w)"
    rf"|(?<!\w){_JOINT} (?:of|in|on) {_KIND} {_OF_KIND}\b|\bcategory (?:[A-D23]|I{{2,3}})\b)"
)
_ANY_END = r"(?:an?|one|1|each|every|the|either"
#: One end or a length of a weld.
_PLACE_OF_EACH = re.compile(
    rf"(?i)\b(?:{_ANY_END}|both) ends?|(?:an?|one|1) (?:length|area|place|portion|section)) (?:of|on|in|at)"
    rf" (?:(?:an?|one|the|each|every|all) )*(?:(?:[a-z]+ )?{EXAMINED}|(?:each|every)\b|$)|\bat {_ANY_END}|both) ends?\b"
)
#: All of so many, as the three welds.
_TOGETHER = re.compile(rf"(?i)\bthe {COUNT}(?= (?:[a-z]+ )?{EXAMINED})")
#: So many of them, which may be all there are, and some by their numbers.
_COUNTED = re.compile(rf"(?i)(?<!the )\b(?:(?:an?|{COUNT}) (?:[a-z]+ )?{EXAMINED}(?! ?⟨)|{COUNT} off\b)")
_NUMBERED = re.compile(
    rf"(?i)\b(?:{EXAMINED} (?:nos?\.? ?)?|W)\d+(?:(?:,| and| to| through|-| &) ?W?\d+)*|^(?:and )?\d+(?: and \d+)?$"
)
#: The sides from which a weld is scanned, which is all of it from one; not where the drawing asks for several.
_FROM_ONE_SIDE = re.compile(
    r"(?i)\bscann(?:ing|ed) from (?:the )?(?:one side|outside|inside|one (?:face|surface))\b"
)
_SEVERAL_SIDES = re.compile(
    r"(?i)\b(?:both|two|each|every|all|opposite) (?:sides|side|faces|face|surfaces|surface)\b"
)
#: What is examined too, by its place: it takes nothing away.
_ADDED = re.compile(
    r"(?i)\b(?:including|included) (?:the )?(?:[a-z]+(?: and)? ){0,3}[a-z]+|(?:^| )(?:[a-z]+ ){1,4}included\b"
    r"|\b(?:and|with|plus) (?:all )?(?:its|their) (?:[a-z]+ )?[a-z]+"
)
#: A clause of what the part named before it has besides, as "the rod; its thread".
_BESIDE = re.compile(r"(?<=[a-z]); (?=(?:all )?(?:its|their)\b)")
#: A clause of another matter than how much, of which it may stand there that somebody agrees or chooses, and of more.
_MATTER = re.compile(
    r"(?i)(?:the )?(?:probes?|angles?|techniques?|procedures?|sensitivity|films?|screens?|sources?|dates?|days?|order"
    r"|reports?|records?|levels?|class|preparation|equipment)(?: (?:and|of|by|to|the|films?|\d+(?:\.\d+)? ?"
    r"(?:%|°|mm|MHz)|as agreed|(?:chosen|picked|selected) by|operator|examiner|inspector|surveyor))*"
    r"|(?:further|additional|more|extra) (?:ones|welds|joints|⟨\d*⟩)(?: as the \w+ \w+)?"
)
#: Words that say nothing of how much, words for all and for the rest, and words of methods.
_WORD = re.compile(
    r"(?:the|of|an?|by|with|to|on|in|at|for|from|and|or|as|is|are|was|were|be|been|being|its?|their|them|they|these|those|this"
    r"|that|which|has|have|had|ones?|per|again|including|see|drawing|report|extent|lengths?|circumferences?|surfaces?"
    r"|area|volume|welded|pressure|plate|bar|tube|pipe|rod|block|parent|metal|haz"
    r"|both|whole|entire|full|fully|complete|completely|throughout|everywhere|all|every|each|any|over|along|round|around"
    r"|rest|remainder|remaining|others?|alle[nr]?|ganzen?|ganz|der|die|das|des|und|von|mit|bei|im|am"
    r"|examined|tested|inspected|checked|looked|made|done|taken|carried|out|finished|passed|accepted|acceptable|sound"
    r"|satisfactory|clear|methods?|technique|examinations?|inspection|tests?|testing|checks?|films?|probes?|volumetric|wet"
    r"|scanned|repaired|magneti[sz]ation|quality|liquid|acceptance|operators?|personnel"
    r"|dry|fluorescent|colou?r|contrast|yoke|daylight|digital|gamma|source)",
    re.I,
)
_THINGS = re.compile(_THING, re.I)
_TOKEN = re.compile(
    r"\d+(?:[.,]\d+)*(?![\w./-]*\w)(?: ?(?:mm|cm|m|µm|in|ft|bar|MPa|MHz|kV|%|°)(?!\w))?|[^\W_]+(?:[-./'’][^\W_]+)*|%"
)
_PIECES = re.compile(r"[-./]")
#: Words that deny or limit, which the words of a drawing do not make known.
_DENYING = {
    *(
        "no",
        "not",
        "none",
        "never",
        "nothing",
        "neither",
        "nor",
        "without",
        "only",
        "except",
        "excepting",
        "but",
    ),
    *("save", "unless", "until", "if", "where", "near"),
}


#: Words that do not tell which end or category; a letter of a category is a large one.
_SMALL = {"a", "an", "at", "both", "each", "either", "every", "in", "of", "on", "one", "the"}


class Words(NamedTuple):
    """The words of an examination that surely take some away, those that may, and those that are not understood.

    ``numbered`` are welds by their numbers, which may be all there are.
    """

    less: list[str]
    perhaps: list[str]
    strange: list[str]
    numbered: list[str]


def says_strange(words: Iterable[str]) -> str:
    """That words are not understood, for a sentence.

    >>> says_strange(["hub", "rim", "hub"]), says_strange(["hub"])
    ('the words "hub" and "rim" are not understood', 'the word "hub" is not understood')
    """
    *before, last = [f'"{one}"' for one in dict.fromkeys(words)]
    if not before:
        return f"the word {last} is not understood"
    return f"the words {', '.join(before)} and {last} are not understood"


def understood(words: str, beside: str = "") -> Words:
    """What the words of an examination, each method a number in marks, take away, and what of them is not understood.

    A clause that stands ``beside`` it word for word, on the drawing, takes nothing away, and each word there is known.

    >>> any(understood("⟨0⟩ of the whole part")), understood("the front half; the back was not accessible").less
    (False, ['the front half', 'the back was not accessible'])
    >>> understood("all welds where accessible").perhaps, understood("⟨0⟩ at crossings").strange
    (['all welds where accessible'], ['crossings'])
    >>> any(understood("⟨0⟩ at crossings", beside="crossings by ⟨0⟩")), understood("not ⟨0⟩ nor looked at").strange
    (False, ['not', 'nor'])
    """
    drawn = {_plain(one) for one in _clauses(beside)}
    known = {
        piece.casefold() for clause in drawn for one in _TOKEN.findall(clause) for piece in _PIECES.split(one)
    } - _DENYING
    if re.search(r"(?i)\bboth ends\b", beside):
        known.add("end")
    found = Words([], [], [], [])
    words = _BESIDE.sub(" and ", words)
    if not _SEVERAL_SIDES.search(beside):
        words = _FROM_ONE_SIDE.sub(" ⟨⟩ ", words)
    for clause in _clauses(words):
        if _plain(clause) not in drawn and not _MATTER.fullmatch(clause):
            _read(clause, known, found)
    if share_of(words) == 1 and part_shares(_without_harmless(words)):
        found.strange.append(_plain(words))
    return found


def _read(clause: str, known: Set[str], found: Words) -> None:
    """Adds what a clause takes away, and what is left of it that is not known."""
    if leaves_out_unreached(clause) or leaves_to_choice([clause]):
        found.perhaps.append(_plain(clause))
        return
    for pattern in (_CLASSED, _PLACE_OF_EACH):
        found.strange.extend(
            one.group() for one in pattern.finditer(clause) if not _is_drawn(one.group(), known)
        )
        clause = pattern.sub(" ⟨⟩ ", clause)
    left = _ADDED.sub(_unless_limited, _without_harmless(clause))
    for pattern, told in (
        (_ZERO, found.less),
        *((one, []) for one in SIZED),
        *((one, found.less) for one in (_SURELY_LESS, NAMING, LIMITING)),
        (_TOGETHER, []),
        (_NUMBERED, found.numbered),
        (_COUNTED, found.strange),
    ):
        if pattern.search(left):
            told.append(_plain(clause))
            left = pattern.sub(" ⟨⟩ ", left)
    found.strange.extend(one for one in _TOKEN.findall(left) if not _is_known(one, known))


def _unless_limited(found: re.Match[str]) -> str:
    """Words that add a place, which are left as they stand where a word among them denies or limits."""
    added = found.group()
    limiting = (_SURELY_LESS, LIMITING, NAMING, *SIZED)
    denied = any(one.casefold() in _DENYING for one in _TOKEN.findall(added))
    return added if denied or any(one.search(added) for one in limiting) else " ⟨⟩ "


def _without_harmless(text: str) -> str:
    return " ".join(_HARMLESS_WORDS.sub(" ⟨⟩ ", text).split())


def _clauses(text: str) -> list[str]:
    return [one.strip() for one in _CLAUSES.split(_BOTH.sub(" ", STAGE.sub(" ", _BAND.sub(" ⟨⟩ ", text))))]


def _is_drawn(words: str, known: Set[str]) -> bool:
    """Whether each word that tells which stands on the drawing, in the singular or the plural."""
    telling = (one for one in _TOKEN.findall(words) if one not in _SMALL and not _THINGS.fullmatch(one))
    return all(
        {one.casefold(), one.casefold().removesuffix("s"), f"{one.casefold()}s"} & known for one in telling
    )


def _is_known(word: str, known: Set[str]) -> bool:
    """Whether a word is known, or each piece of one that is joined by hyphens or strokes."""
    return all(
        one.casefold() in known or _WORD.fullmatch(one) or _THINGS.fullmatch(one)
        for one in _PIECES.split(word)
    )


def _plain(clause: str) -> str:
    """A clause without its methods and its marks, in small letters."""
    return " ".join(re.sub(_MARK, " ", clause).casefold().split())
