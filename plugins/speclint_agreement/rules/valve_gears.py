"""A valve gear and its cams on their shafts, the cylinders of its engine and the notches of its duty."""

from __future__ import annotations

import math
from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Pair, Rule, Sheet, Worked, agreement, rule, worked
from speclint.facts import (
    SetCam,
    block_under,
    bore_of_gear,
    bore_served,
    ends_of_valve,
    engine_of,
    set_cams,
    train_of_cam,
)
from speclint.specs import ValveGear
from speclint_agreement.formulae.gears import foot_by_place


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
                if end.value in under.ends:
                    side = under.ends[end.value].side
                    yield Pair(side, worked(one.side.value, one.named), name=f"{name}, end")


def _cylinders(gear: ValveGear, sheet: Sheet) -> Iterator[Pair]:
    """The cylinders alike that a gear states against the cranks of the engine."""
    block, _ = bore_of_gear(gear, sheet)
    engine = engine_of(block, sheet)
    if engine is not None:
        cranks = sheet.names_under(engine, "cranks")
        yield Pair(gear.cylinders, Worked(len(cranks), (engine.where,), f"the {len(cranks)} cranks"))


def _feet(gear: ValveGear, sheet: Sheet) -> Iterator[Pair]:
    """In each notch that runs forward, the foot of a cam against that which its place beside another cam gives."""
    for notch, table in gear.notches.items():
        if sheet.read(f"direction of {notch}", table.direction) != "forward":
            continue
        first: dict[str, SetCam] = {}
        for one in set_cams(gear, notch, sheet):
            if not _placed(one, sheet):
                continue
            other = first.setdefault(sheet.follow(one.cam.turns_on).id, one)
            if other is not one:
                yield _beside(other, one, sheet)


def _placed(one: SetCam, sheet: Sheet) -> bool:
    """Whether a cam says on which shaft it is and at which angle of it, and its notch at which angle of the crank."""
    said = {"shaft": one.cam.turns_on, "place on it": one.cam.phase, "foot": one.foot}
    return all(sheet.is_stated(f"{name} of {one.cam.id}", value) for name, value in said.items())


def _beside(other: SetCam, one: SetCam, sheet: Sheet) -> Pair:
    m_1, m = f"{other.notch},{other.mark}", f"{one.notch},{one.mark}"
    α_1, φ_1 = sheet.take_nominal(f"α_{m_1}", other.foot), sheet.take_nominal(f"φ_{m_1}", other.cam.phase)
    α, φ = sheet.take_nominal(f"α_{m}", one.foot), sheet.take_nominal(f"φ_{m}", one.cam.phase)
    between = 0.0 if one.side is other.side else 0.5
    k = between + round((α - α_1 - φ + φ_1) / (2 * math.pi) - between)
    by_place = sheet.work(f"α_s,{m}", foot_by_place, α_1=α_1, φ=φ, φ_1=φ_1, k=k)
    name = f"{one.notch}, {one.serves} {one.side.value}"
    return Pair(one.foot, worked(by_place, other.foot, other.cam.phase, one.cam.phase), name=name)


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

feet_by_place: Rule = agreement(
    "gear.feet-by-place",
    title="In a notch that runs forward, cams on one shaft begin to lift as far apart as they stand on the shaft",
    on=ValveGear,
    pairs=_feet,
    within="0.5 °",
    dimension="angle",
    grade=Grade.NONCONFORMITY,
    why="a cam that is keyed otherwise than its notch says opens its valve at another time than was worked",
    leaves_out="cams that do not say where they stand on their shaft; running backward, for which they stand as well",
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


RULES = (cams_of_its_valves, cylinders_of_engine, feet_by_place, notches_of_duty)
