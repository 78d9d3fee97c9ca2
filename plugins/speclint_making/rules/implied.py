"""What the specs imply of the list: each weld, press, heat treatment, test and inspection point has its step."""

from __future__ import annotations

from collections.abc import Iterable

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import MakingStep, block_of_ring, steps_of
from speclint.specs import Casting, CylinderBlock, CylinderLiner, ValveSeat, Weldment
from speclint_making.inputs.fitted_parts import goes_in_at
from speclint_making.inputs.implied_steps import implied_steps, is_grave, told_of
from speclint_making.inputs.steps import DEFERS, by_stage, listed, place_of


@rule(
    "making.steps-complete",
    title="Each weld, press, heat treatment and test that the specs imply, and each part that goes on or in, "
    "has its step in the list",
    on=(Weldment, CylinderBlock, Casting, CylinderLiner),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="a step that nobody wrote down is done when it is too late",
    leaves_out=f"parts that have no spec; steps of a maker from whom a part is bought; {DEFERS}",
    against=(),
    edition=4,
)
def steps_complete(part: Weldment | CylinderBlock | Casting | CylinderLiner, sheet: Sheet) -> Judgement:
    """The words that the specs imply against those of the whole list; of a block less those of its weldment."""
    implied = implied_steps(part, sheet)
    if not implied:
        raise sheet.not_applicable("nothing that is stated implies a step")
    written = {word for step in listed(part, sheet) for word in (step.word, step.written)}
    lacking = [word for word in implied if word not in written]
    says = "; ".join(f'no "{word}", although {implied[word]}' for word in lacking)
    judged = sheet.states(
        not lacking, says or f"{len(implied)} steps that the specs imply", where=part.making.where
    )
    return by_stage(judged, sheet, grave=any(is_grave(word) for word in lacking))


#: The steps of which each inspection point needs one.
_POINTS = {
    "welding": ("weld", "weld 2", "weld lugs and bosses", "test welds", "test welds 2"),
    "pressing": ("press liners", "press liners 2", "press seats", "press seats 2"),  # of a block: any of them
    "pressure_test": ("hydraulic test", "hydraulic test 2"),
    "lift_in": ("lift in",),
}


@rule(
    "making.points-in-the-list",
    title="Each inspection point that stops the work or calls the inspector has a step in the list",
    on=(CylinderBlock, Weldment, CylinderLiner, ValveSeat),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="an inspector who is called at a step that nobody wrote down comes too late",
    leaves_out="which points a part needs, which release.inspection-points asks; a step that making.steps-complete "
    "misses",
    against=(),
    edition=5,
)
def points_in_the_list(part: CylinderBlock | Weldment | CylinderLiner | ValveSeat, sheet: Sheet) -> Judgement:
    """Hold and witness points by name against the words of the list; of liner and seat those of their block too."""
    points = part.inspection_points
    called = [name for name in _POINTS if sheet.said(name, getattr(points, name)) in ("hold", "witness")]
    if not called:
        raise sheet.not_applicable("no point of inspection is stated")
    wanted = dict(_POINTS)
    if isinstance(part, CylinderLiner | ValveSeat):
        wanted["pressing"] = (goes_in_at(part, sheet),)
        has = _had_from_where_it_goes_in(part, sheet).union(_written(steps_of(part, sheet)))
    else:
        has = _written(listed(part, sheet)) | told_of(part, sheet)
    wrong = [f"{name.replace('_', ' ')} has no step" for name in called if has.isdisjoint(wanted[name])]
    says = "; ".join(wrong) or f"{len(called)} points, each at a step"
    return by_stage(sheet.states(not wrong, says, where=points.where), sheet)


def _had_from_where_it_goes_in(part: CylinderLiner | ValveSeat, sheet: Sheet) -> frozenset[str]:
    """The steps of its block that are done to a part: of those listed and those wanted, none before it goes in."""
    block: CylinderBlock = sheet.follow(block_of_ring(part))
    steps = listed(block, sheet)
    at = place_of(goes_in_at(part, sheet), steps) or 0
    return (told_of(block, sheet) - _written(steps[:at])) | _written(steps[at:])


def _written(steps: Iterable[MakingStep]) -> frozenset[str]:
    return frozenset(step.written for step in steps)


RULES = (steps_complete, points_in_the_list)
