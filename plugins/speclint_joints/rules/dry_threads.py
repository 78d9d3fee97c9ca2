"""Studs and bolts that are put together dry."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import BoltedJoint, LoadCase, bare_words, names_nothing
from speclint_joints.sources import TORQUE_TABLE

#: What parts the clauses of a text.
_BETWEEN_CLAUSES = re.compile(r"[;:,()\n]|\.(?:\s|$)|\bbut\b")
#: Words by which a lubricant is named, those that say there is none, and those that deny what stands behind them.
_LUBRICANT = re.compile(
    r"lub|oil|greas|paste|compound|graphit|moly|mos2|copper|nickel|wax|ptfe|soap|tallow|film|coat"
)
_DRY = re.compile(
    r"dry|bare|degreas\w*|un(?:lubricat|greas|oil)ed|(?:oil|grease)free|delivered|received|none|nil"
)
_DENIES = frozenset(["no", "not", "without", "wo", "never", "nor"])
#: Words of a heading, which says neither before what is said behind it.
_HEADING = frozenset(
    ["lubricant", "lubricants", "lubrication", "of", "the", "and", "thread", "threads", "nut", "face"]
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
    edition=2,
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
    """Whether words for the lubrication of a thread say that it has none, and in no clause that it has one.

    >>> [is_dry(one) for one in ("none", "dry", "no grease", "as delivered", "dry graphite", "oil", "no oil: graphite")]
    [True, True, True, True, False, False, False]
    """
    said = [_has_lubricant(bare_words(one).split()) for one in _BETWEEN_CLAUSES.split(stated)]
    return names_nothing(stated) or (False in said and True not in said)


def _has_lubricant(words: Sequence[str]) -> bool | None:
    """Whether a clause says that there is a lubricant; None where it says neither.

    One that is named is denied by a word before it, or behind it by a "not" that does not deny another.
    """
    if _HEADING.issuperset(words):
        return None
    denials = [at for at, word in enumerate(words) if word in _DENIES]
    first = min(denials, default=len(words))
    last = "not" in words[:-1] and not _LUBRICANT.match(words[words.index("not") + 1])
    named = [at for at, word in enumerate(words) if _LUBRICANT.match(word) and not _DRY.fullmatch(word)]
    if named:
        return named[0] < first and not last
    return False if any(_DRY.fullmatch(word) for word in words[:first]) else None


RULES = (nuts_come_off,)
