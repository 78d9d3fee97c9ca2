"""What cams ask of their shaft: the torque of each at any angle, and of all together, as the drawings aim at it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from speclint.equations import (
    COMMON_PRACTICE,
    NewtonMetres,
    Newtons,
    NewtonsPerMetre,
)
from speclint.facts.cam_blows import Struck, angle_at, load_as_taken_up
from speclint.facts.cam_motion import WholeLift, motion
from speclint.facts.cams_on_shafts import placed_in_notches
from speclint.facts.moving_masses import weight_of_valve
from speclint.facts.seats import steam_inside_seal, supply_acts
from speclint.facts.speeds import speed_of_gear
from speclint.facts.springs import rate_by_sizes
from speclint.facts.train_loads import (
    holding_load,
    sense_of_push,
    spindle_load,
    torque_of_cam,
    torque_together,
)
from speclint.facts.turning_cams import Turning, angle_of_greatest
from speclint.facts.valve_gear import ValvesTrain, train_of_cam
from speclint.facts.valve_trains import beats_of, mass_of_train, ratio_of_train, springs_of
from speclint.handbook.members import sum_of_loads
from speclint.handbook.steam import excess_pressure, unbalanced_load
from speclint.handbook.valve_events import reversed_cam
from speclint.rules import Limit, Sheet, Worked, worked
from speclint.specs import Cam, Shaft

if TYPE_CHECKING:
    from speclint.specs import LoadCase

#: The lift up to which steam loads a valve; every rule that asks a fact for the load of a cam declares it.
CRACKED = Limit(
    "cracked", "2 %", "ratio", COMMON_PRACTICE, "share of the lift at which steam no longer loads the valve"
)
#: Load cases in which the cams work against steam.
_WORKING = ("starting", "running")


@lru_cache(maxsize=64)
def _backward(lift: WholeLift) -> WholeLift:
    return WholeLift(reversed_cam(lift.cam))


def turning(cam: Cam, case: LoadCase, phase: float, sheet: Sheet, *, backward: bool = False) -> Turning:
    """A cam with its train, every size, load and pressure as the drawings and the duty aim at it.

    Backwards the cam is read from its other end.
    """
    train, take = train_of_cam(cam, sheet), sheet.take_nominal
    i, lift = ratio_of_train(train, sheet, take), motion(cam, sheet, take)
    tappet, spindle = train.tappet, train.spindle
    stated = sheet.is_stated("clearance of the tappet", tappet.clearance)
    _, friction = sheet.take_limits("F_r", spindle.friction)
    whole, c = _backward(lift) if backward else lift, take("c", tappet.clearance) if stated else 0.0
    ω, springs = speed_of_gear(train.valve, case, sheet, take), loads_of_springs(train, sheet)
    steam, weight = load_of_steam(train, case, sheet), weight_that_shuts(train, sheet)
    m, taken_up = mass_of_train(train, i, sheet, take), angle_at(whole, c)
    struck = Struck(cam.id, i, m, whole.at(taken_up).slope, ω)
    held = {"F_f": springs[0], "F_st": steam, "F_r": friction, "W": weight}
    return Turning(
        name=cam.id,
        cam=whole,
        i=i,
        c=c,
        ω=ω,
        springs=springs,
        steam=steam,
        cracked=take("h", train.valve.lift) * sheet.limit("cracked", "x_c"),
        friction=friction,
        weight=weight,
        m=m,
        phase=phase,
        taken_up=taken_up,
        struck=load_as_taken_up(struck, held, train, sheet),
    )


def loads_of_springs(train: ValvesTrain, sheet: Sheet) -> tuple[Newtons, NewtonsPerMetre]:
    """Load shut and rate of all springs of a valve together, as stated; a rate that is not by the sizes."""
    shut = rate = 0.0
    for number, spring in enumerate(springs_of(train.valve, sheet), start=1):
        shut += sheet.take_nominal(f"F_U{number}", spring.shut_load)
        by_sizes = (
            None if sheet.is_stated("rate", spring.rate) else rate_by_sizes(spring, sheet, f"_{number}")
        )
        rate += sheet.take_nominal(f"R_{number}", spring.rate) if by_sizes is None else by_sizes
    return shut, rate


def load_of_steam(train: ValvesTrain, case: LoadCase, sheet: Sheet) -> Newtons:
    """Steam load that holds the valve shut as it is opened, on the small circles of its seats."""
    take, valve = sheet.take_nominal, train.valve
    supply, delivery = take("p_s", case.live_pressure), take("p_d", case.exhaust_pressure)
    circles = [take(f"d_{index}", beat.seat_diameter) for index, beat in beats_of(valve, sheet)]
    between = supply_acts(valve, sheet) == "between the beats"
    inside, outside = (supply, delivery) if between else (delivery, supply)
    on_valve = sheet.work(
        "F_v",
        unbalanced_load,
        Δp=sheet.work("Δp", excess_pressure, p_1=inside, p_2=outside),
        d_u=circles[0],
        d_l=circles[1] if len(circles) == 2 else 0.0,
    )
    leaves = steam_inside_seal(train.spindle, sheet)
    g = sheet.look_up("g_s", sense_of_push, pushed=sheet.read("spindle is pushed", train.spindle.pushed))
    d = take("d_s", train.spindle.seal_diameter)
    on_end = sheet.work("F_s", spindle_load, g=g, d=d, p=supply if leaves == "supply" else delivery)
    return sheet.work("F_st", holding_load, F=sheet.work("F_s′", sum_of_loads, F_1=on_valve, F_2=on_end))


def weight_that_shuts(train: ValvesTrain, sheet: Sheet) -> Newtons:
    """Weight of valve and spindle that shuts the valve; below 0 where it opens it."""
    return weight_of_valve(train.valve, train.spindle, sheet, sheet.take_nominal, helps=False)


def cams_on(shaft: Shaft, sheet: Sheet) -> tuple[Cam, ...]:
    """The cams that say that a shaft turns them."""
    return tuple(
        cam
        for cam in sheet.belonging_to(shaft, Cam)
        if sheet.is_stated(f"shaft of {cam.id}", cam.turns_on) and sheet.follow(cam.turns_on).id == shaft.id
    )


def torques_needed(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Iterator[tuple[str, Worked]]:
    """The greatest torque, N·m, that the cams of a shaft need in a turn, with the notch of the valve gear.

    Together in each notch of the gear that names them, or, without a gear, where every cam states its place on the
    shaft; else each at the angle at which it needs most, and the notch is "".
    """
    cams = cams_on(shaft, sheet)
    notches = placed_in_notches(cams, sheet)
    for notch, placed in notches.items():
        turned = [turning(one.cam, case, one.place, sheet, backward=one.backward) for one in placed]
        T = _together(turned, f"θ_{notch}", sheet)
        yield notch, worked(T, *(one.cam.turns_on for one in placed))
    if notches or not cams:
        return
    stated = all(sheet.is_stated(f"place of {cam.id}", cam.phase) for cam in cams)
    turned = [turning(cam, case, _phase(cam, sheet) if stated else 0.0, sheet) for cam in cams]
    T = 0.0
    for group in [turned] if stated else [[one] for one in turned]:
        T = _together(group, "θ", sheet, T)
    yield "", worked(T, *(cam.turns_on for cam in cams), *(cam.phase for cam in cams if stated))


def torque_of_cam_alone(cam: Cam, case: LoadCase, sheet: Sheet) -> NewtonMetres:
    """The greatest torque, N·m, that one cam needs in a turn of its shaft."""
    return _together([turning(cam, case, 0.0, sheet)], "θ", sheet)


def working_cases(shaft: Shaft, sheet: Sheet) -> list[LoadCase]:
    """The load cases in which the cams of a shaft work against steam; none where no cam says that it turns on it."""
    cams, duty = cams_on(shaft, sheet), sheet.duty_of(shaft)
    return [case for name, case in duty.cases.items() if name in _WORKING] if cams and duty else []


def torque_of_shaft(
    shaft: Shaft, sheet: Sheet, take: Callable[..., NewtonMetres] | None = None
) -> NewtonMetres:
    """The torque of a shaft, N·m: as stated, and no less than its cams need in starting and running.

    A shaft on which no cam says that it turns, or that sees no duty, has the stated one. ``take`` is how that is taken,
    with its limits where none is given.
    """
    take, cases = take or sheet.take, working_cases(shaft, sheet)
    if not cases:
        return take("T", shaft.torque)
    needed = sheet.once(("torque of its cams", shaft.id), lambda: _greatest(shaft, cases, sheet))
    if not sheet.is_stated("torque", shaft.torque):
        return needed
    return max(take("T", shaft.torque), needed)


def _greatest(shaft: Shaft, cases: Sequence[LoadCase], sheet: Sheet) -> NewtonMetres:
    greatest: NewtonMetres = max(
        needed.value for case in cases for _, needed in torques_needed(shaft, case, sheet)
    )
    return greatest


def _phase(cam: Cam, sheet: Sheet) -> float:
    return sheet.take_nominal(f"φ of {cam.id}", cam.phase)


def _together(cams: Sequence[Turning], symbol: str, sheet: Sheet, before: NewtonMetres = 0.0) -> NewtonMetres:
    """The torque of some cams at the angle at which they need most together, with that of others before."""
    θ, T = sheet.look_up(symbol, angle_of_greatest, cams=tuple(cams)), before
    for one in cams:
        T = sheet.work("T", torque_together, T_0=T, T_c=_at(one, θ, sheet))
    return T


def _at(one: Turning, θ: float, sheet: Sheet) -> NewtonMetres:
    """The torque of a cam at an angle of the shaft, written on the sheet; one that bears nothing needs none."""
    at = one.follower(θ)
    F = one.worked_along(θ, at, sheet)
    return sheet.work(f"T of {one.name}", torque_of_cam, F=F, s_prime=at.slope) if F else 0.0
