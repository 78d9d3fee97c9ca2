"""How much of the welds of a weldment is examined: the words of its drawing against the extent of each joint."""

from __future__ import annotations

import re

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.specs import WeldedJoint, Weldment
from speclint_release.inputs.choices import leaves_out_unreached
from speclint_release.inputs.examinations import no_examination
from speclint_release.inputs.extents import extents
from speclint_release.sources import EN_13445_5

#: The methods whose extent a joint states.
_OF_JOINTS = {"ultrasound", "radiographs"}
#: Words for an examination of the inside of welds by either, or for a document that may ask for it.
_OTHERWISE = re.compile(r"(?i)\bvolumetric|\bND[TE]\b|\b(?:plan|schedule|procedure|specification)\b")


@rule(
    "weldment.extent-by-words",
    title="The examination that a weldment asks for by ultrasound or radiographs is in words that limit it no further "
    "than the extent stated for each of its joints",
    on=Weldment,
    grade=Grade.HOLD,
    cites=[EN_13445_5.at("clause 6, inspection during fabrication"), COMMON_PRACTICE],
    why="the shop examines what the words say, one joint in ten, and the walls are as thin as if every weld were "
    "examined from end to end",
    edition=2,
    leaves_out="words that do not surely limit the extent; which joints are meant, where the words limit some of them; "
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
    """Words for ultrasound and radiographs count, those for different parts together, as a joint has one of them.

    Words that leave it to somebody which welds he examines are taken for samples. Where they leave out welds that
    cannot be got at, ask for other methods alone, or leave these two open, a joint that states more is a query.
    """
    how = sheet.said("examination", weldment.examination)
    if how is None or no_examination(how):
        raise sheet.not_applicable("it asks for no examination, which release.pressure-part tells")
    asked = [one for one in extents(how) if _OF_JOINTS & set(one.methods)]
    if not asked and _OTHERWISE.search(how):
        raise sheet.not_applicable(
            "how its welds are examined inside is said otherwise than by ultrasound or radiographs"
        )
    samples = sheet.limit("samples")
    words = sum(samples if one.share is None else one.share for one in asked)
    reached = [one for one in asked if leaves_out_unreached(one.words)]

    def judge(item: tuple[str, WeldedJoint]) -> Judgement:
        name, joint = item
        if not sheet.is_stated(f"examined share of {name}", joint.examined):
            return sheet.states(True, "no joint states more than the words ask for")
        share = sheet.take(f"e of {name}", joint.examined)
        says = f'{name}: examined over {share:.0%}, and the words "{how}" '
        where = weldment.examination.where
        if not asked:
            says += "ask neither for ultrasound nor for radiographs"
            return sheet.states(False, says, where=where).graded(Grade.QUERY)
        if share > words + sheet.limit("more"):
            says += f"ask for {min(words, 1):.0%} at most"
            return sheet.states(False, says, where=where)
        if reached and share > samples + sheet.limit("more"):
            says += "leave out what cannot be got at"
            return sheet.states(False, says, where=where).graded(Grade.QUERY)
        return sheet.states(True, "no joint states more than the words ask for")

    return sheet.each(weldment.joints.items(), judge)


RULES: tuple[Rule, ...] = (extent_by_words,)
