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
    | {"backhead", "faceplate", "firedoor", "firehole", "ladder"}
)
#: What is inside such a place, with whatever is under it.
_INSIDE = frozenset({"seat", "seats", "feet", "roof", "ceiling"})
#: What a leak-off may be beside or below, and where nobody stands then.
_BELOW = frozenset({"under", "below", "beneath", "underneath", "unter", "unterhalb"})
_AWAY = _BELOW | {"outside", "beyond", "from", "off", "clear", "außerhalb", "vom"}
#: After which words "of" leads away; the floor of a place is in it.
_AWAY_OF = frozenset({"clear", "outside", "front", "forward", "ahead", "underside"})
#: Small words between such a word and the place.
_SMALL = frozenset({"the", "a", "its", "drivers", "firemans", "crews", "level", "dem", "des", "der"})
#: Words that say that there is one, and not where it leads.
_NO_PLACE = frozenset(
    {"yes", "fitted", "provided", "piped", "drained", "led away", "leak off", "leakoff", "pipe"}
)


def leads_to_people(text: str) -> str:
    """The place with people into which a leak-off leads by its words; nothing where it leads to none, or below it.

    >>> leads_to_people("into the cab"), leads_to_people("below the driver's footplate")
    ('cab', '')
    >>> leads_to_people("below the cab roof"), leads_to_people("at the cab floor"), leads_to_people("clear of the cab")
    ('cab', 'cab', '')
    """
    for clause in text.replace(";", ",").split(","):
        words = bare_words(clause).replace("fire door", "firedoor").split()
        for number, word in enumerate(words):
            if word in _PEOPLE and not _is_away(words, number):
                return word
    return ""


def _is_away(words: list[str], number: int) -> bool:
    """Whether the words before a place say that the leak-off leads beside it or below it."""
    between = list(takewhile(lambda one: one in _SMALL | _PEOPLE, reversed(words[:number])))
    before = words[: number - len(between)]
    if before and before[-1] == "of":
        return not _AWAY_OF.isdisjoint(before[-2:-1])
    after = next((one for one in words[number + 1 :] if one not in _PEOPLE), "")
    last = "".join(before[-1:])
    return last in _AWAY and not (last in _BELOW and after in _INSIDE)


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
