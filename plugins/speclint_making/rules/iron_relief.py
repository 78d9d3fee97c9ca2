"""The temperature at which a list of steps relieves cast iron."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import steps_of
from speclint.specs import Casting, CylinderBlock, CylinderLiner, StepDetail, ValveSeat
from speclint_making.inputs.steps import RELIEF


@rule(
    "making.iron-relieved-hot",
    title="A list of steps relieves grey iron between 500 and 600 °C",
    wrong='"{item}" at {found}, where the nearer limit is {limit}',
    on=(Casting, CylinderBlock, CylinderLiner, ValveSeat),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="iron that is warmed less keeps the stresses of its mould, and moves when it is bored and in steam; hotter, "
    "its pearlite breaks down and it wears",
    leaves_out="a step that states no temperature, alloyed grey iron that is relieved hotter, other iron; how long it "
    "is held, which no step states",
    against=(),
    limits=[
        Limit("coolest", "500 °C", "temperature", COMMON_PRACTICE, "coolest stress relief of grey iron"),
        Limit("hottest", "600 °C", "temperature", COMMON_PRACTICE, "hottest stress relief of grey iron"),
    ],
)
def iron_relieved_hot(part: Casting | CylinderBlock | CylinderLiner | ValveSeat, sheet: Sheet) -> Judgement:
    """Both limits of the temperature of each step that relieves, with its number too."""
    relief = {step.written for step in steps_of(part, sheet) if step.word in RELIEF}
    details = {name: one for name, one in part.making.details.items() if name in relief}
    stated = {
        name: one
        for name, one in details.items()
        if sheet.is_stated(f"temperature of {name}", one.temperature)
    }
    if not stated:
        raise sheet.not_applicable("no step of stress relief states its temperature")
    if sheet.material_of(part).family != "grey-iron":
        raise sheet.not_applicable("it is not of grey iron")
    return sheet.each(stated.items(), lambda item: _hot(*item, sheet))


def _hot(name: str, detail: StepDetail, sheet: Sheet) -> Judgement:
    T = sheet.take(f"T {name}", detail.temperature)
    return sheet.within(T, sheet.limit("coolest"), sheet.limit("hottest"))


RULES = (iron_relieved_hot,)
