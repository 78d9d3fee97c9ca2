"""How fast the crank of a block turns, by the wheels of its engine."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, MetresPerSecond, RadiansPerSecond, Ratio, formula
from speclint.facts.engine import turns_of_crank, worn_wheel
from speclint.facts.taking import Take
from speclint.facts.valves import block_under
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, LinkTo, PoppetValve

if TYPE_CHECKING:
    from speclint.specs import LoadCase


@formula("ω = 2 v/D", cites=[FIRST_PRINCIPLES])
def wheel_speed(v: MetresPerSecond, D: Metres) -> RadiansPerSecond:
    """Speed of rotation of the driving wheels.

    ω = 2 v/D

    ``v`` speed on the track [m/s]; ``D`` wheel on the tread [m]. Returns [rad/s].

    Hand working: 5 km/h on 1750 mm: 2 × 1.388889/1.75 = 1.587302 rad/s.

    >>> round(wheel_speed(v=5 / 3.6, D=1.75), 6)
    1.587302
    """
    return 2 * v / D


@formula("ω = i ω_w", cites=[FIRST_PRINCIPLES])
def crank_speed(i: Ratio, ω_w: RadiansPerSecond) -> RadiansPerSecond:
    """Speed of a crank that is geared to the wheel.

    ω = i ω_w

    i: turns of the crank for one of the wheel, 1 where it is on the wheel's axle. ω_w: speed of the wheel, rad/s.
    Returns rad/s.

    >>> crank_speed(i=2.5, ω_w=40.0)
    100.0
    """
    return i * ω_w


def speed_of_crank(
    block: CylinderBlock, case: LoadCase, sheet: Sheet, take: Take | None = None
) -> RadiansPerSecond:
    """Speed of the crank, rad/s: as stated, and not less than that of tyres worn to their limit at the track speed.

    Where the load case states no track speed it is the stated one, where it states no other the worked one. ``take`` is
    how sizes are taken, with their limits where none is given.
    """
    return _speed(lambda: block, case, sheet, take or sheet.take)


def speed_of_gear(
    valve: PoppetValve | LinkTo[PoppetValve], case: LoadCase, sheet: Sheet, take: Take | None = None
) -> RadiansPerSecond:
    """Speed of the camshaft that works a valve, rad/s: that of the crank of its block, one to one."""

    def block() -> CylinderBlock:
        return block_under(valve if isinstance(valve, PoppetValve) else sheet.follow(valve), sheet)

    return _speed(block, case, sheet, take or sheet.take)


def _speed(block: Callable[[], CylinderBlock], case: LoadCase, sheet: Sheet, take: Take) -> RadiansPerSecond:
    """Which block it is, is asked only where the speed is that of its wheels."""
    if not sheet.is_stated("track speed", case.track_speed):
        return take("ω", case.rotational_speed)
    own = block()
    worn, v = take("D_w", worn_wheel(own, sheet)), take("v", case.track_speed)
    wheel = sheet.work("ω_w", wheel_speed, v=v, D=worn)
    fastest = sheet.work("ω_k", crank_speed, i=turns_of_crank(own, sheet, take), ω_w=wheel)
    if not sheet.is_stated("speed of the crank", case.rotational_speed):
        return fastest
    return max(take("ω", case.rotational_speed), fastest)


def states_speed(case: LoadCase, sheet: Sheet) -> bool:
    """Whether a load case states how fast crank or wheels turn."""
    return sheet.is_stated("speed", case.rotational_speed) or sheet.is_stated("track speed", case.track_speed)
