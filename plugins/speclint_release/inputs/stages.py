"""When an examination is made: before or after a step of the work, as a drawing asks and a record says."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import NamedTuple

#: Steps of the work by the words for them, from the first to the last; what comes later is done on what came before.
_STEPS = {
    "welding": r"weld(?:ing|ed)|fabricat(?:ion|ed)|schwei(?:ß|ss)en",
    "heat treatment": r"stress[- ]?reli(?:ef|eved|eving)|heat[- ]treat(?:ment|ed|ing)|pwht|normali[sz](?:ed|ing)"
    r"|(?:anneal|harden|temper|quench)(?:ed|ing)"
    r"|(?:spannungsarm|spannungsfrei|normal)?gl(?:ü|ue|u)hen|verg(?:ü|ue|u)ten|w(?:ä|ae|a)rmebehandlung",
    "rough machining": r"rough(?:ed|ing|[- ](?:machin|turn|bor|mill)(?:ed|ing))|vor(?:gedreht|bearbeitet)",
    "machining": r"(?:machin|turn|bor|mill|drill|plan|shap|thread)(?:ed|ing)|(?:ge|be)(?:dreht|arbeitet)",
    "grinding": r"ground|grinding|geschliffen",
    "finishing": r"(?:finish|lapp|hon|polish)(?:ed|ing)|final machining"
    r"|finish[- ](?:(?:machin|turn|bor|mill)(?:ed|ing)|ground|grind(?:ing)?)|fertig ?(?:bearbeitet|gedreht)",
}
_STEP = "(?:" + "|".join(f"(?:{words})" for words in _STEPS.values()) + ")"
_EACH_STEP = re.compile(
    "(?i)" + "|".join(rf"(?P<s{at}>\b(?:{one})\b)" for at, one in enumerate(_STEPS.values()))
)
#: The numbers of steps among all.
WELDING, HEAT_TREATMENT, MACHINING = (
    list(_STEPS).index(one) for one in ("welding", "heat treatment", "machining")
)
_BEFORE = ("before", "prior to", "vor dem", "vor der")
#: Before any machining.
_ROUGH = (
    r"in the (?:rough|black)|as (?:cast|forged|rolled|drawn|delivered|received|supplied)|rough state"
    r"|(?:in (?:the )?)?black (?:condition|state)|im (?:schmiede|guss|walz|roh)zustand"
)
_CUT = r"(?:machin|turn|bor|mill|plan|drill)ed|ground"
_CUT_IN_GERMAN = r"(?:vor|fertig ?)?(?:gedreht|bearbeitet|geschliffen)"
_STATE = r"(?: all over)?(?: (?:condition|state))?"
#: A step that was done, said of the piece: rough turned, in the finish-machined condition; by itself: machined.
_DONE = (
    rf"(?:(?:in |in the )?(?:rough|finish(?:ed)?)[- ](?:{_CUT}){_STATE}(?! (?:surface|face|bore)))"
    rf"|(?:(?:^|(?<=[;,(⟩])|(?<=[;,(⟩] )|in |in the )(?:{_CUT}|{_CUT_IN_GERMAN}|finished){_STATE}(?= ?(?:$|[;,.)])))"
)
#: A stage in words: a step with what says before or after, several steps together, the rough piece, or one so far done.
STAGE = re.compile(
    rf"(?i)(?P<done>(?<![\w-])(?:{_DONE})(?!\w))|\b(?:(?P<rough>{_ROUGH})|(?P<both>before(?: and|;| ⟨⟩)? after)"
    r"|(?P<when>before|prior to|vor de[mr]|nach de[mr]|after|following|when|once|as|since"
    r"|(?:on|upon|after) completion of))"
    r"(?(rough)| (?:being |it (?:was|is) |final )?"
    rf"(?P<steps>{_STEP}(?:(?:,|;|/| and| or)? ?(?:{_STEP}))*))\b"
)


class Stage(NamedTuple):
    """Before a step or after it, the number of the step in the order of work, and the words."""

    before: bool
    step: int
    words: str


def stages(words: str) -> list[Stage]:
    """The stages that some words name.

    >>> [one.words for one in stages("in the rough; when ground")], stages("of the turned bore")
    (['in the rough', 'when ground'], [])
    >>> [one.words for one in stages("⟨0⟩ rough turned; machined all over")], stages("machined faces")
    (['rough turned', 'machined all over'], [])
    >>> [(one.before, one.step) for one in stages("before; after turning")]
    [(True, 3), (False, 3)]
    """
    return [one for found in STAGE.finditer(words) for one in _of(found)]


def _of(found: re.Match[str]) -> Iterator[Stage]:
    if found["rough"]:
        yield Stage(True, MACHINING, found.group())
        return
    steps = [int(str(one.lastgroup)[1:]) for one in _EACH_STEP.finditer(found["done"] or found["steps"])]
    if found["done"]:
        yield Stage(False, max(steps), found.group().strip())
        return
    if found["both"] or found["when"].lower() in _BEFORE:
        yield Stage(True, min(steps), f"before {found['steps']}" if found["both"] else found.group())
    if found["both"] or found["when"].lower() not in _BEFORE:
        yield Stage(False, max(steps), f"after {found['steps']}" if found["both"] else found.group())


def shown_at(asked: Stage, made: Iterable[Stage]) -> bool | None:
    """Whether an examination made at some stages was made at the one asked for; None where the words leave it open.

    What was made later than after a step is after it, what was made earlier than before a step is before it.
    """
    ends = [_agrees(asked, one) for one in made]
    if True in ends:
        return True
    return None if None in ends else False


def _agrees(asked: Stage, made: Stage) -> bool | None:
    if asked.before:
        if made.before:
            return True if made.step <= asked.step else None
        return made.step < asked.step
    if made.before:
        return False if made.step <= asked.step else None
    return True if made.step >= asked.step else None
