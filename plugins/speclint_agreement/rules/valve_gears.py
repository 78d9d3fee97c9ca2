"""A valve gear names cams of its own cylinder, and has the cylinders of the engine and the notches of the duty."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Pair, Rule, Sheet, Worked, agreement, rule, worked
from speclint.facts import (
    block_under,
    bore_of_gear,
    bore_served,
    ends_of_valve,
    engine_of,
    set_cams,
    train_of_cam,
)
from speclint.specs import ValveGear


def _cams(gear: ValveGear, sheet: Sheet) -> Iterator[Pair]:
    """The valve that each named cam lifts against that for which the notch names it: block, bore, end and use."""
    block, bore = bore_of_gear(gear, sheet)
    for notch in gear.notches:
        for one in set_cams(gear, notch, sheet):
            valve, place = train_of_cam(one.cam, sheet).valve, one.cam.lifts
            name = f"{notch}, {one.serves} {one.side.value}"
            yield Pair(valve.serves, worked(one.serves, one.named), name=f"{name}, serves")
            under = block_under(valve, sheet)
            yield Pair(worked(under.id, place), worked(block.id, gear.in_block), name=f"{name}, block")
            yield Pair(
                worked(bore_served(valve, sheet), place), worked(bore, one.named), name=f"{name}, bore"
            )
            for end in ends_of_valve(valve, sheet)[:1]:
                side = under.ends[end.value].side if end.value in under.ends else None
                if side is not None and sheet.is_stated(f"side of end {end.value}", side):
                    yield Pair(side, worked(one.side.value, one.named), name=f"{name}, end")


def _cylinders(gear: ValveGear, sheet: Sheet) -> Iterator[Pair]:
    """The cylinders alike that a gear states against the cranks of the engine."""
    block, _ = bore_of_gear(gear, sheet)
    engine = engine_of(block, sheet)
    if engine is not None:
        cranks = sheet.names_under(engine, "cranks")
        yield Pair(gear.cylinders, Worked(len(cranks), (engine.where,), f"the {len(cranks)} cranks"))


cams_of_its_valves: Rule = agreement(
    "gear.cams-of-its-valves",
    title="Every cam that a notch names lifts the valve of that cylinder, end and use for which it is named",
    on=ValveGear,
    pairs=_cams,
    within="",
    grade=Grade.HOLD,
    why="events worked from the cam of another valve are those of no valve on the engine",
    leaves_out="the shape of the cams (cam.acceleration and the rules of events)",
)

cylinders_of_engine: Rule = agreement(
    "gear.cylinders-of-engine",
    title="A valve gear counts as many cylinders as the engine has cranks",
    on=ValveGear,
    pairs=_cylinders,
    within="",
    grade=Grade.NONCONFORMITY,
    why="steam and tractive effort of the engine are those of one cylinder times their number",
    leaves_out="cylinders that are not alike",
)


@rule(
    "gear.notches-of-duty",
    title="Every notch that a load case of its duty names is one of the gear's in which the engine runs",
    on=ValveGear,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a load case run in a notch that the gear has not is worked for no engine",
    leaves_out="whether that notch suits the case",
    against=(),
)
def notches_of_duty(gear: ValveGear, sheet: Sheet) -> Judgement:
    """Each notch that a load case names is looked up in the gear."""
    duty = sheet.duty_of(gear)
    named = [] if duty is None else [(name, case.notch) for name, case in duty.cases.items()]
    asked = [(name, notch) for name, notch in named if sheet.is_stated(f"notch of case {name}", notch)]
    if not asked:
        raise sheet.not_applicable("no load case of its duty names a notch")
    runs = {
        name
        for name, one in gear.notches.items()
        if sheet.read(f"direction of {name}", one.direction) != "mid"
    }
    judged = []
    for name, notch in asked:
        called = sheet.read(f"notch of case {name}", notch)
        how = "runs in" if called in runs else "names a notch in which the gear does not run the engine:"
        judged.append(sheet.states(called in runs, f"load case {name} {how} {called}", where=notch.where))
    return sheet.worst(*judged)


RULES = (cams_of_its_valves, cylinders_of_engine, notches_of_duty)
