"""The train of a valve: spindle, rocker, tappet and cam, found by their links, and the cam's motion."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

from speclint import Judgement, Sheet
from speclint.equations import Kilograms, Metres, Ratio
from speclint.facts import WholeLift as WholeLift, lever_ratio, motion as motion, tappet_clearance, tracks_of
from speclint.handbook.springs import coil_mass
from speclint.specs import Cam, Component, PoppetValve, Rocker, Tappet, ValveSpindle
from speclint_valves.formulae.motion import mass_at_valve
from speclint_valves.inputs.shutting import spindle_of
from speclint_valves.inputs.springs import springs_of

C = TypeVar("C", bound=Component)
#: How a size is taken from a sheet: with its limits, or as the drawing aims at it.
Take = Callable[..., float]


@dataclass(frozen=True)
class Train:
    """The parts that move a valve; without a rocker the tappet drives the spindle directly."""

    valve: PoppetValve
    spindle: ValveSpindle
    rocker: Rocker | None
    tappet: Tappet
    cam: Cam


#: Intervals of a scan over the whole lift of a cam; the scan refines between them.
SCAN = 60


def _one(parent: Component, kind: type[C], does: str, sheet: Sheet) -> C:
    found = sheet.belonging_to(parent, kind)
    if len(found) != 1:
        raise sheet.not_assessed(
            f"{len(found) or 'no'} {kind.called}s state that they {does} {parent.id}; exactly one is needed"
        )
    return found[0]


def train_of(cam: Cam, sheet: Sheet) -> Train:
    """The train by which a cam moves its valve."""
    return next(one for one in trains_of(valve_of(cam, sheet), sheet) if one.cam.id == cam.id)


def trains_of(valve: PoppetValve, sheet: Sheet) -> tuple[Train, ...]:
    """The train that moves a valve, once for each track of its cam where it has several."""
    spindle = spindle_of(valve, sheet)
    rockers = sheet.belonging_to(spindle, Rocker)
    rocker = _one(spindle, Rocker, "work", sheet) if rockers else None
    tappet = _one(rocker or spindle, Tappet, "work", sheet)
    cams = tracks_of(tappet, sheet) or (_one(tappet, Cam, "lift", sheet),)
    return tuple(Train(valve, spindle, rocker, tappet, cam) for cam in cams)


def on_every_track(valve: PoppetValve, sheet: Sheet, judge: Callable[[Train], Judgement]) -> Judgement:
    """The judgement on the train of a valve; of a cam with several tracks the worst of them."""
    trains = trains_of(valve, sheet)
    if len(trains) == 1:
        return judge(trains[0])
    return sheet.each([(one.cam.id, one) for one in trains], lambda item: judge(item[1]))


def valve_of(cam: Cam, sheet: Sheet) -> PoppetValve:
    """The valve that a cam lifts through its train."""
    worked = sheet.follow(sheet.follow(cam.lifts).works)
    spindle = sheet.follow(worked.works) if isinstance(worked, Rocker) else worked
    return sheet.follow(spindle.moves)


def ratio(train: Train, sheet: Sheet, take: Take | None = None) -> Ratio:
    """Lever ratio: travel of the valve over travel of the tappet."""
    if train.rocker is None:
        return 1.0
    take = take or sheet.take
    b_v, b_t = take("b_v", train.rocker.valve_arm), take("b_t", train.rocker.tappet_arm)
    return sheet.work("i", lever_ratio, b_v=b_v, b_t=b_t)


def mass(train: Train, i: Ratio, sheet: Sheet, take: Take | None = None) -> Kilograms:
    """Mass of the train reduced to the valve."""
    take = take or sheet.take
    m_f = 0.0
    for number, spring in enumerate(springs_of(train.valve, sheet), start=1):
        if sheet.is_stated(f"mass of {spring.id}", spring.mass):
            m_f += take(f"m_f{number}", spring.mass)
            continue
        rho = sheet.look_up(f"ρ_{number}", sheet.material_of(spring).density, of=spring)
        d, D = take(f"d_{number}", spring.wire), take(f"D_{number}", spring.mean_diameter)
        m_f += sheet.work(
            f"m_f{number}", coil_mass, rho=rho, d=d, D=D, n=take(f"n_{number}", spring.total_coils)
        )
    J, b_v = 0.0, 1.0
    if train.rocker is not None:
        J, b_v = take("J", train.rocker.inertia), take("b_v", train.rocker.valve_arm)
    m_v, m_s = take("m_v", train.valve.mass), take("m_s", train.spindle.mass)
    m_t = take("m_t", train.tappet.mass)
    return sheet.work("m", mass_at_valve, m_v=m_v, m_s=m_s, m_f=m_f, m_t=m_t, i=i, J=J, b_v=b_v)


def clearance(train: Train, sheet: Sheet) -> Metres:
    """Clearance at the tappet, cold: as it is set, or as the lengths of the train leave it."""
    return tappet_clearance(train.tappet, sheet)
