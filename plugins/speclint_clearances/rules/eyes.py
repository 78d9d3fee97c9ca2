"""The eyes by which a part is lifted: their marks and what of them is screwed in, against eye bolts of their thread."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.specs import LiftingPlan, LiftingPoint
from speclint_clearances.formulae.eyes import borne_by_eye, is_held, load_of_eye, shank_of_eye
from speclint_clearances.sources import DIN_580


@rule(
    "lifting.eyes-as-marked",
    title="An eye is taken for no more than a forged eye bolt of its thread bears at 45°, and no more of its thread "
    "engages than its shank is long",
    on=LiftingPlan,
    grade=Grade.HOLD,
    cites=[DIN_580, COMMON_PRACTICE],
    why="an eye of a smaller thread bends and breaks at the load of a larger one, whatever the plan says is marked",
    leaves_out="eyes of a stronger make, such as those that swivel, for which the limit is set by their certificate; "
    "eyes pulled along their thread alone; threads of which the table has no eye; the local code and a competent "
    "person decide",
    against=("break under load", "fall"),
    limits=[
        Limit(
            "make",
            "1",
            "ratio",
            COMMON_PRACTICE,
            "load of the eyes that are used over that of forged eye bolts",
        )
    ],
)
def eyes_as_marked(plan: LiftingPlan, sheet: Sheet) -> Judgement:
    """The stated load and engagement of each eye against the load and shank of the table; a lug has neither."""
    eyes = []
    for name, point in plan.points.items():
        if sheet.read(f"{name} is", point.form) != "lug":
            thread = sheet.read(f"thread of {name}", point.thread)
            if is_held(thread):
                eyes.append((name, (thread, point)))
    if not eyes:
        raise sheet.not_applicable("it has no eye bolt with a thread of the table")
    return sheet.each(eyes, lambda item: _eye(item[0], *item[1], sheet))


def _eye(name: str, thread: str, point: LiftingPoint, sheet: Sheet) -> Judgement:
    table = sheet.look_up(f"m_t {name}", load_of_eye, thread=thread)
    borne = sheet.work(f"m_b {name}", borne_by_eye, k=sheet.limit("make", "k"), m_t=table)
    marked = sheet.at_most(sheet.take(f"m_w {name}", point.working_load), borne).else_says(
        f"eye {{item}} taken for {{found}}, an eye bolt {thread} bears {{limit}}"
    )
    shank = _shank(name, thread, point, sheet)
    engaged = sheet.at_most(sheet.take(f"L_e {name}", point.engagement), shank).else_says(
        "eye {item} engages {found}, its shank is {limit} long"
    )
    return sheet.worst(marked, engaged)


def _shank(name: str, thread: str, point: LiftingPoint, sheet: Sheet) -> Metres:
    if sheet.is_stated(f"shank of {name}", point.shank):
        return sheet.take(f"L_s {name}", point.shank)
    return sheet.look_up(f"L_s {name}", shank_of_eye, thread=thread)


RULES = (eyes_as_marked,)
