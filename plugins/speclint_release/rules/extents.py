"""How much of the welds of a weldment is examined: the words of its drawing against the extent of each joint."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.specs import WeldedJoint, Weldment
from speclint_release.inputs.choices import excepts_some, leaves_out_unreached
from speclint_release.inputs.examinations import NON_DESTRUCTIVE, no_examination
from speclint_release.inputs.extents import COUNT, SHOT, Extent, extents, in_per_cent, says_all
from speclint_release.inputs.known_words import FORMS, says_strange, understood
from speclint_release.inputs.marks import marks_in_words
from speclint_release.sources import EN_13445_5

#: The methods whose extent a joint states.
_OF_JOINTS = {"ultrasound", "radiographs"}
#: Words for an examination of the inside of welds by either, or for a document that may ask for it.
_OTHERWISE = re.compile(r"(?i)\bND[TE]\b|\b(?:plan|schedule|procedure|specification)\b")

#: Of the volume of a weld: by ultrasound or radiographs, EN ISO 17635 (from memory).
_EITHER = "by ultrasound or radiographs"
#: By any method, which limits those that show the inside too where it is of a part.
_NDT = re.compile(rf"(?i)\b(?:by )?{NON_DESTRUCTIVE}")
_VOLUMETRIC = re.compile(r"(?i)\b(?:by )?volumetric(?:ally)?\b(?: (?:methods?|testing|tests?|examination))?")

#: So many films of each weld, which may be all of it or a part; and so many of all that are not said to be of all.
_FILMS = re.compile(
    rf"(?i)\b{COUNT} {SHOT} (?:(?:per|(?:of|for|in|on|at) (?:each|every)) [a-z]+|each|every [a-z]+)\b"
)
_FILMS_OF_ALL = re.compile(rf"(?i)(?:^|[;(⟩]) ?{COUNT} (?:⟨\d*⟩|films?|exposures?|shots?)(?= ?(?:$|[;)]))")
#: Where it may stand how much.
_ELSEWHERE = re.compile(
    r"(?i)\b(?:see|per|as|to|by) (?:the )?"
    r"(?:drawing|notes?|table|annex|(?:test |inspection |NDT )?plan|schedule|ITP)\b(?: \d[\w.-]*)?"
)
#: Films round a pipe, which show all of its weld.
_ROUND_A_PIPE = re.compile(r"(?i)\bapart\b|\belliptical|\bdw[ds]i\b|\bdouble[- ]wall")
_WHOLE_LENGTH = re.compile(r"(?i)\b100 ?(?:%|per ?cent)|\b(?:whole|full|entire) length\b")


@rule(
    "weldment.extent-by-words",
    title="The examination that a weldment asks for by ultrasound or radiographs is in words that are understood, and "
    "that limit it no further than the extent stated for each of its joints",
    on=Weldment,
    grade=Grade.HOLD,
    cites=[EN_13445_5.at("clause 6, inspection during fabrication"), COMMON_PRACTICE],
    why="the shop examines what the words say, one joint in ten, and the walls are as thin as if every weld were "
    "examined from end to end",
    edition=7,
    leaves_out="which joints are meant, where the words limit some of them; words for other methods; "
    "whether the extent is enough (block.weld-record): the local code and a competent person decide",
    limits=[
        Limit(
            "more",
            "1 %",
            "ratio",
            COMMON_PRACTICE,
            "what a joint may state above the words, which are rounded",
            "not negative",
        ),
        Limit(
            "samples",
            "50 %",
            "ratio",
            COMMON_PRACTICE,
            "the most that words such as spot, random or as the inspector picks are taken for",
            "not negative",
        ),
    ],
    against=(),
)
def extent_by_words(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Words for ultrasound and radiographs count, and volumetric is either; those for different parts count together.

    Non-destructive testing of a part of the welds, by no method, limits these as well.
    Words that leave it to somebody which welds he examines, or take some away and do not say how many, are taken for
    samples. Where they leave out welds that cannot be got at, ask for other methods alone, leave these two open, or are
    not understood, a joint that states more is a query.
    """
    how = sheet.said("examination", weldment.examination)
    if how is None:
        _without_words(weldment, sheet)
    if how is None or no_examination(how):
        raise sheet.not_applicable("it asks for no examination, which release.pressure-part tells")
    inside = _VOLUMETRIC.sub(_EITHER, how)
    asked = _of_joints(inside) or [one for one in _of_joints(_NDT.sub(_EITHER, inside)) if one.share != 1]
    if not asked and _OTHERWISE.search(how):
        raise sheet.not_applicable(
            "how its welds are examined inside is said otherwise than by ultrasound or radiographs"
        )
    words = _read(asked, sheet.limit("samples"))
    reached = [one for one in asked if leaves_out_unreached(one.words)]

    def judge(item: tuple[str, WeldedJoint]) -> Judgement:
        name, joint = item
        if not sheet.is_stated(f"examined share of {name}", joint.examined):
            return sheet.states(True, "no joint states more than the words ask for")
        share = sheet.take(f"e of {name}", joint.examined)
        says = f'{name}: examined over {in_per_cent(share)}, and the words "{how}" '
        where = weldment.examination.where
        more = sheet.limit("more")
        if not asked:
            says += "ask neither for ultrasound nor for radiographs"
            return sheet.states(False, says, where=where).graded(Grade.QUERY)
        if share > words.most + more:
            says += f"ask for {in_per_cent(min(words.most, 1))} at most"
            return sheet.states(False, says, where=where)
        if reached and share > sheet.limit("samples") + more:
            says += "leave out what cannot be got at"
            return sheet.states(False, says, where=where).graded(Grade.QUERY)
        if words.strange and share > words.understood + more:
            says = f'{name}: examined over {in_per_cent(share)}, and in "{how}" {says_strange(words.strange)}'
            says += f". Write {FORMS}"
            return sheet.states(False, says, where=where).graded(Grade.QUERY)
        return sheet.states(True, "no joint states more than the words ask for")

    return sheet.each(weldment.joints.items(), judge)


def _of_joints(words: str) -> list[Extent]:
    """The extents that words ask for by a method whose extent a joint states."""
    return [one for one in extents(marks_in_words(words)) if _OF_JOINTS & set(one.methods)]


class _Asked(NamedTuple):
    """The most that words ask for, the share of those that are understood, and what is not."""

    most: float
    understood: float
    strange: list[str]


def _read(asked: Iterable[Extent], samples: float) -> _Asked:
    most = sure = 0.0
    strange: list[str] = []
    for one in asked:
        words = understood(one.words)
        excepted = words.less if excepts_some(one.words) else []
        share = samples if one.share is None else one.share
        if words.less and not excepted:
            share = min(share, samples)
        most += share
        doubtful = [*words.strange, *words.numbered, *excepted, *_left_open(one)]
        sure += 0 if doubtful else share
        strange += doubtful
    return _Asked(most, sure, strange)


def _left_open(extent: Extent) -> list[str]:
    """Words for so many films, which may be all of a weld or a part of it, and for a paper that may say how much."""
    words = extent.words
    if extent.share is None or _WHOLE_LENGTH.search(words) or _ROUND_A_PIPE.search(words):
        return []
    unsaid = () if says_all(words) else (_FILMS_OF_ALL, _ELSEWHERE)
    told = [found for pattern in (_FILMS, *unsaid) for found in pattern.findall(words)]
    return [re.sub(r"⟨\d+⟩", "films", one).strip("; (⟩") for one in told]


def _without_words(weldment: Weldment, sheet: Sheet) -> None:
    """Ends the rule where nothing is said of the examination of joints that are stated to hold pressure.

    :raises NotAssessed: where one is.
    """
    for name, joint in weldment.joints.items():
        if sheet.said(f"{name} holds pressure", joint.on_pressure):
            says = f"{name} holds pressure, and examination is not stated"
            raise sheet.not_assessed(says, weldment.examination.where)


RULES: tuple[Rule, ...] = (extent_by_words,)
