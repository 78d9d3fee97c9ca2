"""How much of the welds of a weldment is examined: the words of its drawing against the extent of each joint."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.specs import WeldedJoint, Weldment
from speclint_release.inputs.examinations import no_examination
from speclint_release.inputs.extents import extents
from speclint_release.sources import EN_13445_5

#: The methods whose extent a joint states.
_OF_JOINTS = {"ultrasound", "radiographs"}


@rule(
    "weldment.extent-by-words",
    title="The examination that a weldment asks for by ultrasound or radiographs is in words that limit it no further "
    "than the extent stated for each of its joints",
    on=Weldment,
    grade=Grade.HOLD,
    cites=[EN_13445_5.at("clause 6, inspection during fabrication"), COMMON_PRACTICE],
    why="the shop examines what the words say, one joint in ten, and the walls are as thin as if every weld were "
    "examined from end to end",
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
            "the most that words such as spot or random are taken for",
            "not negative",
        ),
    ],
    against=(),
)
def extent_by_words(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Words for ultrasound and radiographs count, those for different parts together, as a joint has one of them."""
    how = sheet.said("examination", weldment.examination)
    if how is None or no_examination(how):
        raise sheet.not_applicable("it asks for no examination, which release.pressure-part tells")
    asked = [share for methods, share in extents(how) if _OF_JOINTS & set(methods)]
    if not asked:
        raise sheet.not_applicable("it asks neither for ultrasound nor for radiographs")
    samples = sheet.limit("samples")
    words = sum(samples if share is None else share for share in asked)

    def judge(item: tuple[str, WeldedJoint]) -> Judgement:
        name, joint = item
        if not sheet.is_stated(f"examined share of {name}", joint.examined):
            return sheet.states(True, "no joint states more than the words ask for")
        share = sheet.take(f"e of {name}", joint.examined)
        if share <= words + sheet.limit("more"):
            return sheet.states(True, "no joint states more than the words ask for")
        says = f'{name}: examined over {share:.0%}, and the words "{how}" ask for {min(words, 1):.0%} at most'
        return sheet.states(False, says, where=weldment.examination.where)

    return sheet.each(weldment.joints.items(), judge)


RULES: tuple[Rule, ...] = (extent_by_words,)
