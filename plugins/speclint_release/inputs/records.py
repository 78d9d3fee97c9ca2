"""Which components a rule of release applies to, what a vessel states for its parts, and what is not on record."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from typing import TYPE_CHECKING, Any, TypeAlias, cast

from speclint import Grade, Judgement, Sheet
from speclint.facts import holds_pressure, hurts_by_kind, is_welded_to_flange
from speclint.handbook.tables import Reading
from speclint.specs import Component, Link, NotStated, Stated, bare_words, names_nothing

if TYPE_CHECKING:
    from speclint.specs import CylinderBlock, KnownFault, MadePart

#: A record by its name, and its day.
Record: TypeAlias = tuple[str, Stated[str] | NotStated]


def can_hurt(component: Component, sheet: Sheet) -> bool:
    """Whether a component's failure can hurt someone: by its place or its kind, else it must say.

    A known fault can where it is of hold grade. A part as made is judged by its drawing.
    """
    if component.is_one_of(("made-part",)):
        return False
    if component.is_one_of(("known-fault",)):
        return sheet.read("grade", cast("KnownFault", component).grade) == "hold"
    if holds_pressure(component, sheet) or hurts_by_kind(component):
        return True
    return sheet.read("safety part", component.safety_part)


def is_welded(component: Component, sheet: Sheet) -> bool:
    """Whether it is a weldment, a fabricated block or joined to a flange by a weld, or states that it is welded."""
    if component.is_one_of(("weldment",)):
        return True
    if sheet.said("welded", component.welding.welded):
        return True
    if component.is_one_of(("cylinder-block",)):
        return sheet.read("construction", cast("CylinderBlock", component).construction) == "fabricated"
    return is_welded_to_flange(component, sheet)


#: What is written beside the words for nothing where no examination is required or none is decided, as drawing offices
#: write it.
_NO_EXAMINATION = frozenset(
    {"yes", "not required", "not examined", "as required", "if required", "as agreed", "open", "see drawing"}
)


#: A text that leaves the examination open, whatever methods it names after that.
_LEFT_OPEN = re.compile(r"(?i)to be (?:decided|agreed|confirmed|advised|settled|determined|defined)")


def no_examination(text: str) -> bool:
    """Whether a text on a drawing names no examination: a mark, a word for none, or what is still to be decided.

    >>> [no_examination(one) for one in ("none", "-", "n/a", "To be decided", "dye penetrant, none radiographed")]
    [True, True, True, True, False]
    >>> no_examination("to be examined by ultrasound"), no_examination("to be agreed, ultrasound or film")
    (False, True)
    """
    if methods_named(text):
        return _LEFT_OPEN.match(text.strip()) is not None
    return names_nothing(text) or bare_words(text) in _NO_EXAMINATION


def names_no_method(text: str) -> bool:
    """Whether a text on a drawing names no method of examination, of which somebody could say whether it was done.

    >>> names_no_method("looked over"), names_no_method("not radiographed"), names_no_method("none")
    (True, True, True)
    >>> names_no_method("plate to EN 10160"), names_no_method("faces blued"), names_no_method("visual")
    (False, False, False)
    """
    return no_examination(text) or not (methods_named(text) or re.search(_WITHOUT_CRACKS, text))


def finds_cracks(text: str) -> bool:
    """Whether a text names a method that shows a crack before it is open to the eye.

    >>> finds_cracks("visual, and MT of the seats"), finds_cracks("visual, journals gauged")
    (True, False)
    """
    return bool(methods_named(text))


#: Inspection documents that rest on tests of the very metal delivered, EN 10204.
OF_THE_METAL = ("3.1", "3.2")
#: What is said of another: its figures are those of no test, or of other metal of the kind.
BY_NO_TEST = "inspection document {} rests on no test of the metal delivered: 3.1 or 3.2 does"


#: Words by which methods that find cracks are written: those of EN ISO 9712 with their codes, which are in capitals,
#: the standards that drawings name in their place, and common practice.
_METHODS = {
    "ultrasound": r"(?i:ultraso|phased array)|\b(?:UT|PAUT|TOFD)\b"
    r"|\b(?:10160|10228-[34]|10308|12680|17640)\b|\bA(?:388|435|578)\b",
    "radiographs": r"(?i:radiogra|radioscop|x-?ray|gamma ray|film)|\bRT\b|\b(?:12681|17636)\b",
    "magnetic particle": r"(?i:magnetic|magnaflux)|\b(?:MT|MPI|MPT)\b|\b(?:1369|9934|10228-1|17638)\b"
    r"|\bE(?:709|1444)\b",
    "penetrant": r"(?i:penetrant|oil and (?:chalk|whiting))|\b(?:PT|DPI|FPI|LPI)\b"
    r"|\b(?:1371|3452|10228-2)\b|\bE(?:165|1417)\b",
    "eddy current": r"(?i:eddy)|\bET\b|\b17643\b",
}
#: What says before or behind its word that a method is not wanted.
_DENIED = r"(?<!\bno )(?<!\bnot )(?<!\bnone )(?<!\bnone by )(?<!\bwithout )(?:{})"
_DENIED_AFTER = r"(?!\w*(?: particle| current)?(?: testing| examination)? (?:not required|not needed|waived))"
#: Methods that find no crack before it is open: by sight, by leaks, by a load, by sizes and by how faces bear.
_WITHOUT_CRACKS = (
    r"(?i:visual|borescop|endoscop|leak|hydraulic|hydrostatic|pressure test|steam test|proof|load test"
    r"|acoustic|thermogra|hardness|gaug|gage|\bblu(?:ed|e|ing)\b|hammer|sounded)|\b(?:VT|LT)\b|\b17637\b"
)
#: Beginnings of the words by which heat treatments are written, by the words that specs use for the steps.
_TREATMENTS = {
    "stress relieve": ("stress reli",),
    "normalize": ("normali",),
    "harden": ("harden", "quench"),
    "temper": ("temper",),
}


def methods_missing(asked: str, recorded: Iterable[str]) -> list[str]:
    """The methods that a text on a drawing asks for and that no record names; of "one or another" either does.

    >>> methods_missing("seams by ultrasound or film, toes by magnetic particle", ["radiographs of all seams"])
    ['magnetic particle']
    >>> methods_missing("faces lapped and blued", ["looked over"])
    []
    """
    made = set().union(*(methods_named(text) for text in recorded))
    clauses = (methods_named(clause) for clause in re.split(r"[,;]| and ", asked))
    return [" or ".join(clause) for clause in clauses if clause and not made & set(clause)]


def methods_named(text: str) -> list[str]:
    """The methods that a text names and that find cracks, by words, by codes of EN ISO 9712 or by their standards.

    >>> methods_named("RT of butts to EN ISO 17636-1, MPI of fillets"), methods_named("Not by eye, no ultrasound")
    (['radiographs', 'magnetic particle'], [])
    """
    return [
        name for name, words in _METHODS.items() if re.search(_DENIED.format(words) + _DENIED_AFTER, text)
    ]


#: The steps of a heat treatment after welding, by the word that a spec says it in.
AFTER_WELDING = {
    "stress relieved": ("stress relieve",),
    "normalized": ("normalize",),
    "quenched and tempered": ("harden", "temper"),
}


def treatments_missing(asked: Iterable[str], recorded: Iterable[str]) -> list[str]:
    """The heat treatments among the steps of a spec that no record names; one that names none counts for any one.

    >>> treatments_missing(["harden", "temper"], ["quenched and tempered in oil"])
    []
    >>> treatments_missing(["stress relieve"], ["normalized"]), treatments_missing(["harden", "temper"], [""])
    (['stress relieve'], ['temper'])
    >>> treatments_missing(["harden", "temper"], ["hardened", "tempered"]), treatments_missing(["temper"], [])
    ([], ['temper'])
    """
    named = [_treatments_named(text) for text in recorded]
    left = [one for one in dict.fromkeys(asked) if not any(one in words for words in named)]
    return left[sum(not words for words in named) :]


def names_relief(text: str) -> bool:
    """Whether the words of a heat treatment say that it relieves stress.

    >>> names_relief("Stress-relieved in the foundry"), names_relief("annealed")
    (True, False)
    """
    return "stress relieve" in _treatments_named(text)


def _treatments_named(text: str) -> list[str]:
    plain = re.sub(r"(?<=stress)[-\s]+", " ", text.lower())
    return [name for name, stems in _TREATMENTS.items() if any(stem in plain for stem in stems)]


def no_record(said: str, made: MadePart, grade: Grade, sheet: Sheet) -> Judgement:
    """What is still to be recorded of a part as made: a query, until the drawings are released."""
    released = sheet.setting("stage") == "released"
    return sheet.states(False, said, where=made.where).graded(grade if released else Grade.QUERY)


#: The links by which a part is of a vessel: what it holds or closes, what it is in or on, what it becomes.
_OF = (
    "holds",
    "of",
    "in_cover",
    "closes",
    "makes",
    "becomes",
    "housed_in",
    "pressed_into",
    "in_block",
    "screwed_into",
    "bolted_to",
)


def days_of(records: Iterable[Record], sheet: Sheet) -> Iterator[tuple[str, dt.date]]:
    """The days of records, each with its name; not assessed where one states none, or no day such as 2027-05-31."""
    for name, value in records:
        text = sheet.read(f"day of {name}", value)
        try:
            day = dt.date.fromisoformat(text)
        except ValueError:
            raise sheet.not_assessed(
                f"day of {name} is {text!r}: write it as 2027-05-31", value.where
            ) from None
        yield name, day


def of_vessel(component: Component, name: str, sheet: Sheet) -> Any:
    """A value as the component states it, or else the nearest component that it is linked to."""
    own = getattr(component, name)
    for part in linked_parts(component, sheet):
        stated = getattr(part, name)
        if sheet.is_stated(f"{name} of {part.id}", stated):
            return stated
    return own


def linked_parts(component: Component, sheet: Sheet) -> Iterator[Component]:
    """The component, and what it is part of or closes, the nearest first; not what it is merely joined to."""
    waiting = [component]
    while waiting:
        part = waiting.pop(0)
        yield part
        links = [getattr(part, name, None) for name in _OF]
        found = [sheet.follow(link) for link in links if isinstance(link, Link)]
        waiting += [one for one in found if isinstance(one, Component)]


def least_of(question: Callable[..., Reading]) -> Callable[..., Reading]:
    """A question to a material, answered by the least that its standard allows alone."""
    return _at_one_end(question, "least", lambda found: found.low)


def most_of(question: Callable[..., Reading]) -> Callable[..., Reading]:
    """A question to a material, answered by the most that its standard allows alone."""
    return _at_one_end(question, "most", lambda found: found.high)


def _at_one_end(
    question: Callable[..., Reading], called: str, end_of: Callable[[Reading], float]
) -> Callable[..., Reading]:
    def asked(**at: Any) -> Reading:
        found = question(**at)
        end = end_of(found)
        return replace(found, nominal=end, low=end, high=end)

    asked.__name__ = f"{called} {question.__name__}"
    return asked
