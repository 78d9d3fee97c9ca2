"""A part with a duty of its own sees the steam of the block or the pipe that it is on, and the heat of that block."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import vessel_of
from speclint.handbook.heat import tied_temperature
from speclint.handbook.steam import excess_pressure
from speclint.specs import (
    BoltedJoint,
    CaseName,
    ChamberCover,
    Component,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    Duty,
    Gland,
    LensJoint,
    Link,
    LoadCase,
    NotStated,
    PipeFlange,
    SteamPassage,
    SteamPipe,
    StuffingBox,
    Temperature,
    ValveSeat,
    Weldment,
)

#: Load cases in which each part has a state of its own: before steam is raised, and on its own hydraulic test.
_ITS_OWN = ("cold", "test")


def _steam(part: Component, sheet: Sheet) -> Iterator[Pair]:
    """In each load case of both duties the greatest pressures, heat and speeds, the part's against the other's.

    A part that states no duty has that of the other. Where its own names no safety valves, its live steam counts.
    """
    for _, other, name, case in _cases_of_both(part, sheet):
        yield from _in_case(name, case, other, sheet)
        yield from _speeds(name, case, other.cases[name], sheet)


def _block(part: Component, sheet: Sheet) -> Iterator[Pair]:
    """In each load case of both duties the coolest and the hottest that the block is stated to be, in either.

    It is one body, which the part meets as it is. A pipe or a passage is compared where both duties name it by its id.
    """
    for beside, other, name, case in _cases_of_both(part, sheet):
        here, there = (_temperature(beside, one) for one in (case, other.cases[name]))
        called = f"{beside.id}, {name}"
        if sheet.is_stated(f"temperature of {called}, of the other duty", there) and sheet.is_stated(
            f"temperature of {called}", here
        ):
            ends = zip(sheet.take_limits("T", here), sheet.take_limits("T_0", there), strict=True)
            for end, (own, wanted) in zip(("coolest", "hottest"), ends, strict=True):
                yield Pair(worked(own, here), worked(wanted, there), name=f"{called}, {end}")


def _temperature(part: Component, case: LoadCase) -> Any:
    return case.temperature_of(part) if isinstance(part, CylinderBlock) else case.temperature_named(part.id)


def _cases_of_both(part: Component, sheet: Sheet) -> Iterator[tuple[Component, Duty, CaseName, LoadCase]]:
    """What a part with a duty of its own is on, the duty of that, and each load case that both duties state."""
    if not sheet.is_stated(f"duty of {part.id} alone", part.duty):
        return
    own = sheet.follow(part.duty)
    for beside in _beside(part, sheet):
        other = sheet.duty_of(beside)
        if other is None or other is own:
            continue
        for name, case in own.cases.items():
            if name in other.cases and name not in _ITS_OWN:
                yield beside, other, name, case


def _in_case(name: CaseName, case: LoadCase, other: Duty, sheet: Sheet) -> Iterator[Pair]:
    there, valves = other.cases[name], f"safety-valve pressure, {name}"
    pressures = {
        valves: (case.safety_valve_pressure, there.safety_valve_pressure),
        f"live pressure, {name}": (case.live_pressure, there.live_pressure),
        f"exhaust pressure, {name}": (case.exhaust_pressure, there.exhaust_pressure),
    }
    for called, (here, beside) in pressures.items():
        if not sheet.is_stated(f"{called}, of {other.id}", beside):
            continue
        own = here
        if called == valves and not sheet.is_stated(called, here):
            own = case.live_pressure
        if sheet.is_stated(called, own):
            _, p = sheet.take_limits("p", own)
            _, greatest = sheet.take_limits("p_0", beside)
            slack = sheet.limit("pressure", "Δp")
            if greatest > slack:  # else the other has no pressure to speak of
                least = sheet.work("p_1", excess_pressure, p_1=greatest, p_2=slack)
                yield Pair(worked(p, own), worked(least, beside), "at least", name=called)
    steams = {
        f"live temperature, {name}": (case.live_temperature, there.live_temperature, "cooler"),
        f"exhaust temperature, {name}": (
            case.exhaust_temperature,
            there.exhaust_temperature,
            "cooler_exhaust",
        ),
    }
    for called, (here, beside, margin) in steams.items():
        if sheet.is_stated(f"{called}, of the other duty", beside) and sheet.is_stated(called, here):
            yield _as_hot(called, here, beside, sheet.limit(margin, "ΔT"), sheet)


def _speeds(name: CaseName, case: LoadCase, there: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The greatest speeds of crank and track: what the cylinders send into a pipe, and how it shakes, go with them."""
    speeds = {
        f"speed, {name}": (case.rotational_speed, there.rotational_speed),
        f"track speed, {name}": (case.track_speed, there.track_speed),
    }
    for called, (here, beside) in speeds.items():
        if sheet.is_stated(f"{called}, of the other duty", beside) and sheet.is_stated(called, here):
            (_, own), (_, greatest) = sheet.take_limits("v", here), sheet.take_limits("v_0", beside)
            yield Pair(worked(own, here), worked(greatest, beside), "at least", name=called)


def _as_hot(called: str, here: Temperature, there: Temperature, cooler: float, sheet: Sheet) -> Pair:
    _, hot = sheet.take_limits("T", here)
    _, hottest = sheet.take_limits("T_0", there)
    least = sheet.work("T_1", tied_temperature, T_b=hottest, ΔT=-cooler)
    return Pair(worked(hot, here), worked(least, there), "at least", name=called)


def _beside(part: Component, sheet: Sheet) -> Iterator[Component]:
    """The block, the pipe or the passage whose steam a part has."""
    if not isinstance(part, SteamPipe | CylinderLiner | ValveSeat | SteamPassage):
        vessel = vessel_of(part, sheet)
        if vessel is not None:
            yield vessel
        return
    for link in _links(part):
        if sheet.is_stated(f"what {part.id} is joined to", link):
            yield sheet.follow(link)


def _links(
    part: SteamPipe | CylinderLiner | ValveSeat | SteamPassage,
) -> Iterator[Link[Any] | NotStated]:
    if isinstance(part, SteamPipe):
        yield from (part.follows, part.starts_at.part, part.ends_at.part)
    elif isinstance(part, CylinderLiner):
        yield part.housed_in
    else:
        yield part.pressed_into if isinstance(part, ValveSeat) else part.in_block


_PARTS = (
    BoltedJoint,
    ChamberCover,
    CylinderCover,
    CylinderLiner,
    Gland,
    LensJoint,
    PipeFlange,
    SteamPassage,
    SteamPipe,
    StuffingBox,
    ValveSeat,
    Weldment,
)

no_milder: Rule = agreement(
    "duty.no-milder-for-a-part",
    title="But cold and on test a part with a duty of its own sees no less pressure of safety valves, live and exhaust "
    "steam, no cooler steam and no lower speed than the block or the pipe that it is on",
    on=_PARTS,
    pairs=_steam,
    within="",
    limits=[
        Limit(
            "pressure",
            "0.1 bar",
            "pressure",
            COMMON_PRACTICE,
            "what the pressures may differ by",
            "not negative",
        ),
        Limit(
            "cooler",
            "5 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what live steam may be cooler by",
            "not negative",
        ),
        Limit(
            "cooler_exhaust",
            "40 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what exhaust steam may be cooler by, as it cools on its way",
            "not negative",
        ),
    ],
    grade=Grade.HOLD,
    why="a pipe that is judged at the pressure of a duty of its own is as thin as that lets it be, and the boiler's "
    "steam is in it all the same",
    leaves_out="parts of the motion and of the valve gear with a duty of their own; a load case or a speed that only "
    "one of the two duties states; how much exhaust steam cools on its way, which its flow and its lagging decide",
    edition=3,
)

one_temperature: Rule = agreement(
    "duty.one-temperature-of-block",
    title="A part with a duty of its own, but cold and on test, takes its block to be as hot as the duty of the block "
    "does, and so a pipe or a passage that both duties name by its id",
    on=_PARTS,
    pairs=_block,
    within="5 K",
    dimension="temperature difference",
    grade=Grade.HOLD,
    why="a pipe and its studs are judged by the growth of a block a hundred degrees cooler than that block ever is",
    leaves_out="temperatures that one duty alone states; those of a kind of which there are many, such as bolts, which "
    "differ from place to place; the cold state and the test, which each part has of its own",
)

RULES = (no_milder, one_temperature)
