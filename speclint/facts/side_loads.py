"""What presses a spindle to the side of its guide: the swing of its rocker, and its own weight."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, Newtons, Ratio, formula, require
from speclint.facts.moving_masses import greatest_mass, weight_shutting
from speclint.facts.springs import rate_by_sizes, rates, shut_loads
from speclint.facts.train_loads import share_across
from speclint.handbook.members import sum_of_loads
from speclint.handbook.springs import spring_load_at_lift
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CompressionSpring, Length, PoppetValve, Rocker, ValveSpindle

if TYPE_CHECKING:
    from collections.abc import Callable


#: Ways of opening in which the weight lies along the spindle.
_UPRIGHT = ("upwards", "downwards")


@formula("F_a = F h/√(4 b² − h²)", cites=[FIRST_PRINCIPLES])
def load_aslant(F: Newtons, h: Metres, b: Metres) -> Newtons:
    """Load across a spindle from an arm that is square to it at half lift, and so stands aslant at full lift.

    F_a = F h/√(4 b² − h²)

    ``F`` load along the spindle [N]; ``h`` lift, ``b`` the arm [m]. The tangent of the angle whose sine is h/(2 b):
    no arm with that lift and length swings through less. Returns [N]. OutOfRange unless h is 0 or more and below 2 b.

    Hand working, 1800 N, 24 mm on an arm of 80 mm: sine 0.15, tangent 0.151717.

    >>> round(load_aslant(F=1800.0, h=0.024, b=0.080), 2)
    273.09
    """
    require(h >= 0 * h, f"the lift of an arm, {h * 1e3:.4g} mm, is below 0")
    require(h < 2 * b, "the lift of an arm must be less than twice its length")
    beside: float = (4 * b**2 - h**2) ** 0.5
    return F * h / beside


@formula("F_q = F + W", cites=[FIRST_PRINCIPLES])
def side_loads_together(F: Newtons, W: Newtons) -> Newtons:
    """Load across a spindle from its arm and its weight, which act in one line where the arm swings upright.

    F_q = F + W

    ``F`` load of the arm, ``W`` weight that lies on the guide [N]. Returns [N].

    >>> side_loads_together(F=300.0, W=40.0)
    340.0
    """
    return F + W


@formula("F_q = k F", cites=[FIRST_PRINCIPLES])
def share_across_spindle(k: Ratio, F: Newtons) -> Newtons:
    """Load across a spindle as a share of that along it.

    F_q = k F

    ``k`` share, whose source stands at the limit that gives it; ``F`` load along the spindle [N]. Returns [N].

    >>> share_across_spindle(k=0.25, F=1800.0)
    450.0
    """
    return k * F


def side_load_worked(spindle: ValveSpindle, sheet: Sheet) -> Worked | None:
    """The load across a spindle, N: of its arm's swing under the open springs, and of its weight where it lies.

    The springs are as drawn and cold, when they are strongest. None without a valve, and without arm and weight; an arm
    counts only where the springs of the valve are drawn.
    """
    if not sheet.is_stated("valve", spindle.moves):
        return None
    valve = sheet.follow(spindle.moves)
    springs = sheet.belonging_to(valve, CompressionSpring)
    rockers = sheet.belonging_to(spindle, Rocker) if springs else ()
    arms = [one.valve_arm for one in rockers if sheet.is_stated("arm", one.valve_arm)]
    lies = sheet.is_stated("opens", valve.opens) and sheet.read("opens", valve.opens) not in _UPRIGHT
    if not (arms or lies):
        return None
    F, W, places = 0.0, 0.0, []
    for arm in arms:
        F = max(F, _aslant(valve, springs, arm, sheet))
        places += [arm, valve.lift]
    if lies:
        weighed = (("m_v", valve), ("m_s", spindle))
        masses = {symbol: greatest_mass(symbol, part, sheet, sheet.take) for symbol, part in weighed}
        g = sheet.look_up("g_q", share_across, opens=sheet.read("opens", valve.opens))
        W = sheet.work("W", weight_shutting, g=g, **masses)
        places += [valve.mass, spindle.mass]
    return worked(sheet.work("F_q", side_loads_together, F=F, W=W), *places)


def side_load(spindle: ValveSpindle, sheet: Sheet) -> Newtons:
    """The load across a spindle, N: as stated, and no less than that of its rocker and its weight."""
    by_rocker = side_load_worked(spindle, sheet)
    if by_rocker is None:
        return sheet.take("F_s", spindle.side_load)
    load: Newtons = by_rocker.value
    stated = sheet.is_stated("side load", spindle.side_load)
    return max(load, sheet.take("F_s", spindle.side_load)) if stated else load


def side_load_by_springs(spindle: ValveSpindle, sheet: Sheet, share: Callable[[], Ratio]) -> Worked | None:
    """The load across a spindle, N, as a share of that of its open springs, whose ends are never quite square.

    ``share`` gives it, and is asked only where the springs are. None without a valve, with a rocker, whose swing is
    worked instead, and where no springs of the valve are drawn.
    """
    if not sheet.is_stated("valve", spindle.moves) or sheet.belonging_to(spindle, Rocker):
        return None
    valve = sheet.follow(spindle.moves)
    springs = sheet.belonging_to(valve, CompressionSpring)
    if not springs:
        return None
    F = _opened(valve, springs, sheet)
    return worked(sheet.work("F_q", share_across_spindle, k=share(), F=F), valve.lift)


def _aslant(valve: PoppetValve, springs: tuple[CompressionSpring, ...], arm: Length, sheet: Sheet) -> Newtons:
    """What the springs, at full lift, press across the spindle through an arm that swings by that lift."""
    opened = _opened(valve, springs, sheet)
    h = sheet.take("h", valve.lift)
    return sheet.work("F_a", load_aslant, F=opened, h=h, b=sheet.take("b_v", arm))


def _opened(valve: PoppetValve, springs: tuple[CompressionSpring, ...], sheet: Sheet) -> Newtons:
    """What the springs of a valve press with along the spindle at full lift."""
    h, opened = sheet.take("h", valve.lift), 0.0
    for number, spring in enumerate(springs, start=1):
        index = f"_{number}"
        by_sizes = rate_by_sizes(spring, sheet, index)
        _, R = rates(spring, sheet, by_sizes, index)
        _, F = shut_loads(spring, sheet, sheet.take(f"F_U{number}", spring.shut_load), by_sizes, index)
        load = sheet.work(f"F_O{number}", spring_load_at_lift, F_U=F, R=R, h=h)
        opened = sheet.work(f"F_f{number}", sum_of_loads, F_1=opened, F_2=load) if number > 1 else load
    return opened
