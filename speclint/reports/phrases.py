"""Phrases that all reports share: cautions, counts, the verdict, to whom a hold is referred."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from speclint.checking import (
    Assessment,
    Remedy,
    Sought,
    drawings_checked,
    known_faults,
    made_to_old_revision,
    named,
)
from speclint.quantities import System, amount_in
from speclint.rules import Judgement

CAUTIONS = (
    "These checks support a competent person; they do not replace one. "
    "What is not checked here is not thereby safe.",
    "Pressure parts, and whatever runs near people, need the review, examination and test that the local codes "
    "and licensed practice require.",
)
#: The same in two lines, for a page that has no room.
CAUTION = (
    "These checks support a competent person and replace none. Pressure parts, and what runs near people, "
    "need the review, examination and test of the local codes."
)
NO_MARGIN = "no margin left"
#: The phrase where the repository names no code.
NO_CODES = "the local codes (none is named in speclint.toml)"


def units_of(assessment: Assessment) -> System:
    """The units that the works chose for whatever is printed."""
    return assessment.settings.units if assessment.settings else "as written"


def units_asked(assessment: Assessment, system: System) -> System:
    """The units of a report: those that its reader asks for, else those that the works chose."""
    return units_of(assessment) if system == "as written" else system


def said_of_remedy(assessment: Assessment, remedy: Remedy) -> str:
    """What would clear a finding: as the spec would state it, and beside it in the units that the works chose."""
    return remedy.said(partial(amount_in, units_of(assessment)))


def said_of_none(sought: Sought) -> str:
    """That no remedy was found, and in which values one was sought; "" where one was, or none was sought.

    >>> said_of_none(Sought((), ("wall", "bore"), ("lift",)))
    'none found; tried one at a time: wall; bore. Not tried, as that repeats a long calculation: lift'
    """
    said = []
    if sought.in_vain:
        said.append(f"none found; tried one at a time: {_first_of(sought.in_vain)}")
    if sought.not_tried:
        said.append(f"Not tried, as that repeats a long calculation: {_first_of(sought.not_tried)}")
    return ". ".join(said)


def _first_of(names: Sequence[str]) -> str:
    """The first of some names, which may have commas, and how many more there are."""
    more = len(names) - _NAMES_SHOWN
    return "; ".join((*names[:_NAMES_SHOWN], *([f"and {more} more"] if more > 0 else ())))


#: So many values that were tried for a remedy are named.
_NAMES_SHOWN = 8
_PLURALS = {
    "query": "queries",
    "nonconformity": "nonconformities",
    "family": "families",
    "formula": "formulae",
}


def count(number: int, word: str) -> str:
    """A number of things: ``1 query``, ``2 queries``."""
    return f"{number} {word if number == 1 else _PLURALS.get(word, f'{word}s')}"


def share_used(utilisation: float) -> str:
    """What is used of a limit, in two decimals.

    >>> share_used(1.125), share_used(float("inf"))
    ('1.12', 'no margin left')
    """
    return NO_MARGIN if utilisation == float("inf") else f"{utilisation:.2f}"


def share_of_limit(utilisation: float) -> str:
    """The same with what it is a share of.

    >>> share_of_limit(0.5), share_of_limit(float("inf"))
    ('0.50 of the limit', 'no margin left')
    """
    said = share_used(utilisation)
    return said if said == NO_MARGIN else f"{said} of the limit"


def said_of_item(judged: Judgement) -> str:
    """One of several comparisons in words, with the item that it is of."""
    told = not judged.of or judged.says.startswith(judged.of)
    return judged.says if told else f"{judged.of}: {judged.says}"


def tally(assessment: Assessment) -> str:
    """How many findings of each grade, how the other checks came out, and which families made none."""
    counted, graded, once = assessment.counted(), assessment.graded(), assessment.graded_once()
    findings = ", ".join(_graded(once[word], number, word) for word, number in graded.items() if number)
    return (
        f"{findings or 'no findings'}; {counted['conforms']} conform, {counted['not assessed']} not assessed, "
        f"{counted['not applicable']} not applicable.{_left_out(assessment)}"
    )


def _graded(once: int, each: int, word: str) -> str:
    """How many findings of a grade: those of parts alike once, and how many they are on each part."""
    return count(once, word) if once == each else f"{count(once, word)} ({each} with those of parts alike)"


def _left_out(assessment: Assessment) -> str:
    said = left_out(assessment)
    return f" {said}" if said else ""


def left_out(assessment: Assessment) -> str:
    """Which families the settings leave out, and which of them are not installed; nothing where they leave out none."""
    absent = assessment.loaded.absent
    names = [name for name in assessment.loaded.left_out if name not in absent]
    who, whose = ("family", "its") if len(names) == 1 else ("families", "their")
    said = f"LEFT OUT by speclint.toml: the {who} {', '.join(names)}; none of {whose} rules was applied."
    more = f"speclint.toml leaves out {', '.join(absent)}: no family of that name is installed."
    return " ".join(one for one, told in ((said, names), (more, absent)) if told)


def known_faults_said(assessment: Assessment) -> str:
    """How many known faults are settled, which wait and which are open; "" where there are none."""
    faults = known_faults(assessment)
    if not faults.count:
        return ""
    said = [f"{len(faults.settled)} settled"]
    said += [
        f"{len(names)} {word}: {named(names)}"
        for word, names in (("waiting", faults.waiting), ("open", faults.open))
        if names
    ]
    return f"{count(faults.count, 'known fault')} of the old design, {'; '.join(said)}."


def drawings_said(assessment: Assessment) -> str:
    """How many drawings changed since they were read, or were never read; "" where all are read, or none is named."""
    files: dict[str, dict[str, None]] = {}
    for one in drawings_checked(assessment):
        files.setdefault(one.word, {})[one.file] = None
    said = [
        f"{count(len(named_there), 'drawing')} {(alone, several)[len(named_there) > 1]}: {named(list(named_there))}"
        for word, (alone, several) in _DRAWINGS.items()
        if (named_there := files.get(word))
    ]
    return f"{'; '.join(said)}." if said else ""


_DRAWINGS = {
    "changed": ("changed since it was read", "changed since they were read"),
    "other revision": ("was read at another revision", "were read at another revision"),
    "never read": ("was never read", "were never read"),
    "cannot be read": ("cannot be read", "cannot be read"),
    "read in future": ("has a reading of a day to come", "have readings of a day to come"),
}


def old_revisions_said(assessment: Assessment) -> str:
    """How many parts were made to an old revision of their drawing, and which; "" where none was."""
    if not (old := made_to_old_revision(assessment)):
        return ""
    were = "was" if len(old) == 1 else "were"
    return f"{count(len(old), 'part')} {were} made to an old revision: {named(old)}."


def verdict(assessment: Assessment) -> str:
    """The whole run in one sentence."""
    if assessment.exit_code == 3:
        return "NOT TO BE RELIED ON: a rule could not be run."
    if assessment.settings is None:
        return "NOT CHECKED: the settings could not be read."
    if assessment.complaints:
        first, *others = assessment.complaints
        more = f" and {count(len(others), 'other line')}" if others else ""
        return f"NOT COMPLETE: {first.where}{more} could not be read; what could be was checked."
    if assessment.nothing_checked:
        return f"NOTHING WAS CHECKED: {assessment.why_nothing}."
    if not assessment.touched:
        return "NOTHING TO CHECK: what is staged touches no spec."
    if assessment.exit_code:
        return f"NOT IN ORDER: {assessment.exit_at.word} or above, or safety checks not assessed."
    return "IN ORDER as far as these rules go."


def passed_over(assessment: Assessment) -> list[tuple[str, str]]:
    """The TOML files that were passed over, by the reason: the reason and the files in words."""
    by_reason: dict[str, list[str]] = {}
    for one in assessment.passed_over:
        by_reason.setdefault(one.why, []).append(one.file)
    return [(why, named(files)) for why, files in sorted(by_reason.items())]


def referred_to(assessment: Assessment) -> str:
    """Whom a hold is referred to: the codes that the repository names, and a competent person."""
    codes = assessment.settings.local_codes if assessment.settings else None
    named = [*codes.pressure, *codes.railway] if codes else []
    return f"{'; '.join(named) or NO_CODES}; and a competent person"
