"""The load with which a valve strikes its stop when its spring has broken."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import (
    FIRST_PRINCIPLES,
    Kilograms,
    MetresPerSecond,
    Newtons,
    NewtonsPerMetre,
    formula,
    require,
)
from speclint.facts.cam_motion import motion
from speclint.facts.gear import Gear, gear_of, tracks_of
from speclint.facts.moving_masses import greatest_mass
from speclint.facts.speeds import speed_of_gear
from speclint.facts.train_loads import valve_speed
from speclint.facts.valve_gear import ValvesTrain
from speclint.facts.valve_trains import ratio_of_train
from speclint.rules import Sheet
from speclint.specs import Cam, PoppetValve

if TYPE_CHECKING:
    from speclint.specs import LoadCase

#: Intervals of the scan over the rise of a cam.
_SCAN = 60


@formula("F = v √(k (m_v + m_s))", cites=[FIRST_PRINCIPLES])
def stop_load(v: MetresPerSecond, k: NewtonsPerMetre, m_v: Kilograms, m_s: Kilograms) -> Newtons:
    """Greatest load on a stop that brings a valve to rest.

    F = v √(k (m_v + m_s))

    ``v`` speed of the valve [m/s]; ``k`` stiffness of the stop [N/m]; ``m_v`` mass of the valve, ``m_s`` of its spindle
    [kg]. Returns [N]: all of the energy goes into the stop. Raises OutOfRange where ``k`` or the masses are below 0.

    Hand working: 1 m/s, 2·10⁸ N/m and 7 kg: √(1.4·10⁹) = 37.42 kN.

    >>> round(stop_load(v=1.0, k=2e8, m_v=5.0, m_s=2.0) / 1e3, 2)
    37.42
    """
    require(k >= 0 and m_v + m_s >= 0, "neither the stiffness nor the masses can be below 0")
    root: float = (k * (m_v + m_s)) ** 0.5
    return v * root


def load_on_stop(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Newtons:
    """Load on the stop of a valve that nothing holds on its cam any more, at the greatest speed that the cam gives it.

    :raises NotAssessed: where its gear is not drawn.
    """
    gear = gear_of(valve, sheet)
    if gear is None:
        raise sheet.not_assessed(f"the gear that lifts {valve.id} against its stop is not drawn", valve.where)
    k = sheet.take("k", valve.stop_stiffness)
    m_v = greatest_mass("m_v", valve, sheet, sheet.take)
    m_s = greatest_mass("m_s", gear.spindle, sheet, sheet.take)
    speeds = [_thrown(gear, cam, valve, case, sheet) for cam in tracks_of(gear.tappet, sheet)]
    return sheet.work("F_k", stop_load, v=max(speeds), k=k, m_v=m_v, m_s=m_s)


def _thrown(gear: Gear, cam: Cam, valve: PoppetValve, case: LoadCase, sheet: Sheet) -> MetresPerSecond:
    """The greatest speed of a valve on the rise of a cam."""
    train = ValvesTrain(cam, gear.tappet, gear.rocker, gear.spindle, valve)
    i, moved, ω = ratio_of_train(train, sheet), motion(cam, sheet), speed_of_gear(valve, case, sheet)

    def rising(angle: float) -> float:
        return valve_speed(i=i, s_prime=moved.at(angle).slope, ω=ω)

    angle = sheet.scan(
        "φ", "cam angle of the greatest speed", rising, 0.0, moved.top, unit="rad", steps=_SCAN
    )
    return sheet.work("v", valve_speed, i=i, s_prime=moved.at(angle).slope, ω=ω)
