"""Where the steam that passes the seal of a spindle is led, as its leak-off says in words."""

from __future__ import annotations

from itertools import takewhile

from speclint import Grade, Judgement, Sheet
from speclint.specs import ValveSpindle, bare_words

#: Where people stand or hold on.
_PEOPLE = frozenset(
    {
        "cab",
        "cabs",
        "footplate",
        "crew",
        "driver",
        "drivers",
        "fireman",
        "firemans",
        "firemen",
        "gangway",
        "walkway",
    }
    | {"steps", "handrail", "handrails", "platform", "passengers", "führerhaus", "führerstand"}
)
#: What a leak-off may be beside or below, and where nobody stands then.
_AWAY = frozenset(
    {"under", "below", "beneath", "outside", "beyond", "from", "off", "of", "clear", "underneath"}
)
#: Small words between such a word and the place.
_SMALL = frozenset({"the", "a", "its", "drivers", "firemans", "crews", "level"})
#: Words that say that there is one, and not where it leads.
_NO_PLACE = frozenset(
    {"yes", "fitted", "provided", "piped", "drained", "led away", "leak off", "leakoff", "pipe"}
)


def leads_to_people(text: str) -> str:
    """The place with people into which a leak-off leads by its words; nothing where it leads to none, or below it.

    >>> leads_to_people("into the cab"), leads_to_people("below the driver's footplate")
    ('cab', '')
    """
    for clause in text.replace(";", ",").split(","):
        words = bare_words(clause).split()
        for number, word in enumerate(words):
            if word in _PEOPLE:
                between = list(takewhile(lambda one: one in _SMALL | _PEOPLE, reversed(words[:number])))
                before = words[: number - len(between)]
                if not before or before[-1] not in _AWAY:
                    return word
    return ""


def leads_away(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """The leak-off says where it leads, and that is no place where somebody stands."""
    said = sheet.read("leak-off", spindle.leak_off)
    where = spindle.leak_off.where
    if bare_words(said) in _NO_PLACE:
        says = f"the leak-off does not say where it leads: {said}"
        return sheet.states(False, says, where=where).graded(Grade.NONCONFORMITY)
    people = leads_to_people(said)
    to = f", where people are ({people})" if people else ""
    says = f"the leak-off leads: {said}{to}"
    judged = sheet.states(not people, says, where=where)
    return judged.graded(Grade.HOLD) if people else judged
