"""Studs and bolts that are put together dry."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import BoltedJoint, LoadCase, bare_words, names_nothing
from speclint_joints.sources import TORQUE_TABLE

#: Words that say a thread has no lubricant, and those beside which they still do.
_DRY = frozenset(
    [
        "dry",
        "bare",
        "degreased",
        "unlubricated",
        "ungreased",
        "unoiled",
        "no",
        "none",
        "not",
        "without",
        "delivered",
        "received",
    ]
)
_BESIDE = frozenset(
    [
        "as",
        "and",
        "the",
        "of",
        "clean",
        "put",
        "together",
        "assembled",
        "fitted",
        "bolt",
        "bolts",
        "stud",
        "studs",
        "nut",
        "nuts",
        "thread",
        "threads",
        "face",
        "faces",
        "lubricant",
        "lubricants",
        "lubrication",
        "lubricated",
        "oil",
        "oiled",
        "grease",
        "greased",
        "paste",
    ]
)


@rule(
    "joint.nuts-come-off",
    title="Studs and bolts that are put together dry stay below the heat at which dry nuts seize, and are not "
    "reckoned to turn as easily as greased ones",
    on=BoltedJoint,
    cases=("starting", "running", "drifting", "standing-hot"),
    grade=Grade.NONCONFORMITY,
    cites=[TORQUE_TABLE, COMMON_PRACTICE],
    why="A nut that went on dry and was hot for a year comes off with half of its stud, or with the torch; and a dry "
    "thread takes up so much of the torque that the joint is not tight.",
    leaves_out="Which lubricant bears the heat: oil and common grease burn off; stainless steels, which seize cold; "
    "nuts that are coated with what lubricates them, which the drawing must say.",
    against=(),
    limits=[
        Limit("dry", "250 °C", "temperature", COMMON_PRACTICE, "hottest metal of a joint put together dry"),
        Limit(
            "dry coefficient",
            "0.18",
            "ratio",
            TORQUE_TABLE,
            "least torque coefficient of dry threads and faces",
        ),
    ],
)
def nuts_come_off(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """The lubrication as stated; of a dry joint its heat in service and its torque coefficient."""
    stated = sheet.read("lubrication", joint.tightening.lubrication)
    if not is_dry(stated):
        return sheet.states(True, f"put together with: {stated}", where=joint.tightening.lubrication.where)
    return sheet.worst(*_dry(joint, case, sheet))


def _dry(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    at = sheet.take("T_b", case.temperature_of(joint))
    yield sheet.no_hotter(at, sheet.limit("dry", "T_0")).else_says(
        "nuts put on dry run at {found}, {limit} at most"
    )
    if sheet.is_stated("torque coefficient", joint.tightening.torque_coefficient):
        coefficient = sheet.take("K", joint.tightening.torque_coefficient)
        least = sheet.limit("dry coefficient", "K_0")
        yield sheet.at_least(coefficient, least).else_says(
            "torque coefficient {found} of dry threads, {limit} or more"
        )


def is_dry(stated: str) -> bool:
    """Whether words for the lubrication of a thread say that it has none.

    >>> [is_dry(one) for one in ("none", "dry", "no grease", "as delivered", "dry graphite", "oil")]
    [True, True, True, True, False, False]
    """
    words = set(bare_words(stated).split())
    return names_nothing(stated) or (bool(words & _DRY) and words <= _DRY | _BESIDE)


RULES = (nuts_come_off,)
