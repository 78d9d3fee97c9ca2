"""The methods of examination that a text asks for: by words, by codes and by standards."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from speclint.specs import bare_words, names_nothing
from speclint_release.inputs.clauses import Wording, leaves_open
from speclint_release.inputs.marks import without_articles
from speclint_release.inputs.translations import in_plain_english

#: A number of a standard, which is no part of the number of a drawing.
_STANDARD = r"(?:(?<![-\w./])(?<!drawing )|(?<=EN-)|(?<=ISO-))(?:{})\b"
#: A code, which is no part of the number of a drawing or of a procedure either.
_CODE = r"(?<![-\w])(?:{})\b"
#: Words by which methods that find cracks are written, English and German: those of EN ISO 9712 with their codes, which
#: are in capitals, the standards that drawings name in their place, and common practice.
_METHODS = {
    "ultrasound": r"(?i:ultra-?so(?:ni|un)(?!\w*[- ](?:wall[- ])?(?:thickness|gaug|clean|hardness|peen))|ultraschall"
    rf"|phased array)|{_CODE.format('UT|PAUT|TOFD')}|\bA(?:388|435|578)\b"
    rf"|{_STANDARD.format('10160|10228-[34]|10308|12680|17640')}",
    "radiographs": r"(?i:radiogra|radioscop|x-?ray(?![- ](?:fluoresc|diffract))|gamma[- ]ray|röntgen|durchstrahl"
    rf"|(?<!oil )\bfilm(?:s|ed)?\b)|(?<!\bat ){_CODE.format('RT')}|{_STANDARD.format('12681|17636')}",
    "magnetic particle": r"(?i:(?<!non)(?<!non-)(?<!non )magnetic(?!\w*[- ](?:base|chuck|stand|plug|permeab|propert))"
    r"|\bmag[. -]+particle|magnetpulver|magnaflux)"
    rf"|{_CODE.format('MT|MPI|MPT')}|\bE(?:709|1444)\b|{_STANDARD.format('1369|9934|10228-1|17638')}",
    "penetrant": r"(?i:(?:dye[- ])?penetrant|\bdye[- ](?:pen\b|check|test)|\bred dye|eindring"
    r"|oil and (?:chalk|whiting))"
    rf"|{_CODE.format('PT|DPI|FPI|LPI')}|\bE(?:165|1417)\b|{_STANDARD.format('1371|3452|10228-2')}",
    "eddy current": rf"(?i:\beddy|wirbelstrom)|{_CODE.format('ET')}|{_STANDARD.format('17643')}",
}
#: Methods that find no crack before it is open, by what they go by.
_OTHERS = {
    "sight": rf"(?i:visual|borescop|endoscop|sichtprüf)|{_CODE.format('VT')}|{_STANDARD.format('17637')}",
    "size": r"(?i:gaug|gage|\bblu(?:ed|e|ing)\b)",
    "sound or heat": r"(?i:acoustic|hammer|sounded|thermogra)",
    "a figure": r"(?i:hardness)",
    "a load": r"(?i:leak|hydraulic|hydrostatic|pressure test|steam test|proof|load test)"
    rf"|{_CODE.format('LT')}",
}
_NOUNS = (
    "particle|current|penetrant|array|powder|ink|crack|test(?!ing[- ]group)|exam|inspect|detect|check|method"
)
_WORDING = Wording({**_METHODS, **_OTHERS}, _NOUNS)
#: Any method at all, where a text names none, and the words for it; not those for a paper or a person.
ANY_METHOD = "non-destructive testing"
NON_DESTRUCTIVE = (
    r"(?i:\b(?:ND[TE]|ZfP|non-?destructive(?:ly)?(?: (?:test|exam|inspect)\w*)?|zerst(?:ö|oe)rungsfrei\w*"
    r"(?: (?:Pr(?:ü|ue)f|gepr(?:ü|ue)f)\w*)?)\b"
    r"(?![- ](?:plan|procedure|schedule|specification|reports?|personnel|operators?|level|company|contractor)\b))"
)
_OF_ANY_METHOD = Wording({ANY_METHOD: NON_DESTRUCTIVE, **_OTHERS}, _NOUNS)
#: What is written, beside the words for nothing, where no examination is required or none is decided.
_NO_EXAMINATION = re.compile(
    r"yes|open|see drawing|(?:as|if) (?:required|agreed)|(?:none|not|no (?:ndt|nde|examination|inspection|tests?))"
    r"(?: (?:is |are )?(?:required|needed|wanted|necessary|examined))?"
)


def no_examination(text: str) -> bool:
    """Whether a text on a drawing asks for no examination: by a mark or a word for none, or as it denies all.

    >>> [no_examination(one) for one in ("none", "-", "n/a", "To be decided", "dye penetrant, none radiographed")]
    [True, True, True, True, False]
    >>> no_examination("to be examined by ultrasound"), no_examination("to be agreed, ultrasound or film")
    (False, True)
    >>> no_examination("UT and MT not required"), no_examination("looked over")
    (True, False)
    """
    if any(_WORDING.asked(text)):
        return False
    none = names_nothing(text) or _NO_EXAMINATION.fullmatch(bare_words(text)) is not None
    return none or leaves_open(text) or _WORDING.denies_all(text)


def names_no_method(text: str) -> bool:
    """Whether a text on a drawing asks for no method of examination, of which somebody could say whether it was done.

    >>> names_no_method("looked over"), names_no_method("not radiographed"), names_no_method("none")
    (True, True, True)
    >>> names_no_method("plate to EN 10160"), names_no_method("faces blued"), names_no_method("visual")
    (False, False, False)
    """
    return not any(_WORDING.asked(text))


def finds_cracks(text: str) -> bool:
    """Whether a text asks for a method that shows a crack before it is open to the eye.

    >>> finds_cracks("visual, and MT of the seats"), finds_cracks("visual, journals gauged")
    (True, False)
    """
    return bool(methods_named(text))


def only_tests(text: str) -> bool:
    """Whether a text asks for tests by a load, a leak or a figure alone, at which nobody examines faces or welds.

    >>> only_tests("hydraulic test"), only_tests("hydraulic test and visual"), only_tests("looked over")
    (True, False, False)
    """
    asked = [one for clause in _WORDING.asked(text) for one in clause]
    return bool(asked) and all(one in ("a figure", "a load") for one in asked)


def worded(text: str) -> Iterator[tuple[list[str], str]]:
    """The methods that each part of a text asks for, if any, and its words, with each method as a number in marks.

    >>> list(worded("NDT, 10 %")), list(worded("NDT: UT"))
    ([(['non-destructive testing'], '⟨0⟩'), ([], '10 %')], [(['ultrasound'], 'NDT: ⟨0⟩')])
    """
    plain = without_articles(in_plain_english(text))
    named = any(re.search(words, plain) for words in _METHODS.values())
    for found, words in (_WORDING if named else _OF_ANY_METHOD).parts(plain):
        yield [name for name in (*_METHODS, ANY_METHOD) if name in found], words


def methods_named(text: str) -> list[str]:
    """The methods that a text asks for and that find cracks, by words, by codes of EN ISO 9712 or by their standards.

    >>> methods_named("RT of butts to EN ISO 17636-1, MPI of fillets"), methods_named("Not by eye, no ultrasound")
    (['radiographs', 'magnetic particle'], [])
    >>> methods_named("UT (MT omitted: no yoke at hand)"), methods_named("PT instead of MT")
    (['ultrasound'], ['penetrant'])
    >>> methods_named("MT if required; UT where the inspector asks"), methods_named("no weld without RT")
    ([], ['radiographs'])
    """
    asked = {one for clause in _WORDING.asked(text) for one in clause}
    return [name for name in _METHODS if name in asked]


def is_by(methods: Iterable[str], text: str) -> bool:
    """Whether a text names one of some methods that are asked for.

    >>> is_by(["ultrasound"], "UT"), is_by(["ultrasound"], "MT"), is_by([ANY_METHOD], "MT"), is_by([ANY_METHOD], "VT")
    (True, False, True, False)
    """
    asked, named = set(methods), {name for found, _ in worded(text) for name in found}
    return bool(named if ANY_METHOD in asked else asked & named)


def methods_missing(asked: str, recorded: Iterable[str]) -> list[str]:
    """The methods that a text on a drawing asks for and that no record names; of "one or another" either does.

    >>> methods_missing("seams by ultrasound or film, toes by magnetic particle", ["radiographs of all seams"])
    ['magnetic particle']
    >>> methods_missing("faces lapped and blued", ["looked over"])
    []
    """
    made = set().union(*(methods_named(text) for text in recorded))
    clauses = ([name for name in _METHODS if name in clause] for clause in _WORDING.asked(asked))
    return [" or ".join(clause) for clause in clauses if clause and not made & set(clause)]
