"""What several rules share of a shut valve: steam on both sides, weight, friction."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Metres, Newtons, Pascals
from speclint.facts import (
    beats_of,
    block_under,
    circle_on_contact,
    contact_of,
    event_pressure,
    greatest_live_pressure,
    sense_of_push,
    spindle_load,
    steam_inside_seal,
    supply_acts,
    weight_of_valve,
)
from speclint.handbook.steam import excess_pressure, unbalanced_load
from speclint.specs import Beat, LoadCase, PoppetValve, ValveSpindle
from speclint_valves.formulae.shutting import lifting_load
from speclint_valves.formulae.tables import place_of_seal
from speclint_valves.inputs.cylinder import greatest_in_cylinder, least_in_cylinder, steam_beside


def spindle_of(valve: PoppetValve, sheet: Sheet) -> ValveSpindle:
    """The one spindle that states that it moves the valve."""
    spindles = sheet.belonging_to(valve, ValveSpindle)
    if len(spindles) != 1:
        raise sheet.not_assessed(
            f"{len(spindles) or 'no'} spindles state that they move {valve.id}; exactly one is needed"
        )
    return spindles[0]


def _sealing(beat: Beat, index: str, sheet: Sheet) -> Metres:
    """The circle on which a beat seals: anywhere on what its face has in common with that of its seat."""
    d, D = contact_of(beat, index, sheet)
    x = sheet.look_up(f"x_{index}", place_of_seal)
    return sheet.work(f"d_c{index}", circle_on_contact, d=d, D=D, x=x)


def unbalanced(valve: PoppetValve, sheet: Sheet, supply: Pascals, delivery: Pascals) -> Newtons:
    """Steam load on the shut valve, positive for lifting, with its sealing circles anywhere on the contacts."""
    circles = [_sealing(beat, index, sheet) for index, beat in beats_of(valve, sheet)]
    between = supply_acts(valve, sheet) == "between the beats"
    inside, outside = (supply, delivery) if between else (delivery, supply)
    excess = sheet.work("Δp", excess_pressure, p_1=inside, p_2=outside)
    lower = circles[1] if len(circles) == 2 else 0.0
    return sheet.work("F_v", unbalanced_load, Δp=excess, d_u=circles[0], d_l=lower)


def on_spindle(
    spindle: ValveSpindle, sheet: Sheet, supply: Pascals, delivery: Pascals, *, helps: bool = True
) -> Newtons:
    """Steam load on the end of the spindle, positive for lifting.

    Where a load that shuts the valve ``helps``, the circle that it acts on is taken to be no larger than the spindle.
    """
    inside = supply if steam_inside_seal(spindle, sheet) == "supply" else delivery
    pushed = sheet.read("spindle is pushed", spindle.pushed)
    g, d = sheet.look_up("g_s", sense_of_push, pushed=pushed), sheet.take("d_s", spindle.seal_diameter)
    if helps and pushed == "shut" and sheet.is_stated("diameter of the spindle", spindle.diameter):
        d = min(d, sheet.take("d_sp", spindle.diameter))
    return sheet.work("F_s", spindle_load, g=g, d=d, p=inside)


def supply_at_most(case: LoadCase, sheet: Sheet) -> Pascals:
    """The most that the boiler gives in a case: what its safety valves hold."""
    return sheet.take("p_s", greatest_live_pressure(case, sheet))


def lifting_pressures(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> tuple[Pascals, Pascals]:
    """Supply and delivery pressure of the case that give the greatest lifting load on the shut valve."""
    supply_lifts = supply_acts(valve, sheet) == "between the beats"
    cylinder_high = supply_lifts == (sheet.read("serves", valve.serves) == "exhaust")
    if cylinder_high:
        cylinder = greatest_in_cylinder(case, block_under(valve, sheet), valve, sheet)
    else:
        cylinder = least_in_cylinder(case, valve, sheet)
    if sheet.read("serves", valve.serves) == "inlet":
        return (
            sheet.take("p_s", case.live_pressure) if cylinder_high else supply_at_most(case, sheet)
        ), cylinder
    return cylinder, sheet.take("p_d", case.exhaust_pressure)


def pressures_at_shutting(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> tuple[Pascals, Pascals]:
    """Supply and delivery pressure of the case as the valve shuts.

    Running, an exhaust valve has let out its steam by then: by the cycle where it is known. Otherwise those that lift
    the shut valve most.
    """
    if case.name == "running" and sheet.read("serves", valve.serves) == "exhaust":
        steam = steam_beside(valve, case, sheet)
        if steam is not None:
            p = event_pressure(steam, "shutting", "p_y", case, sheet)
            return p, sheet.take("p_d", case.exhaust_pressure)
    return lifting_pressures(valve, case, sheet)


def greatest_lifting(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Newtons:
    """Load with which steam lifts the shut valve; zero where it holds it shut."""
    supply, delivery = lifting_pressures(valve, case, sheet)
    on_valve = unbalanced(valve, sheet, supply, delivery)
    spindle = on_spindle(spindle_of(valve, sheet), sheet, supply, delivery)
    return sheet.work("F_l", lifting_load, F_v=on_valve, F_s=spindle)


def weight(valve: PoppetValve, sheet: Sheet, *, helps: bool = True) -> Newtons:
    """Weight of valve and spindle that shuts: the least of what is stated and worked where it helps, else the most."""
    return weight_of_valve(valve, spindle_of(valve, sheet), sheet, sheet.take, helps=helps)


def least_friction(spindle: ValveSpindle, sheet: Sheet) -> Newtons:
    """Friction that can be counted on to help: the low end of the band stated; a single figure is the most there is."""
    if sheet.tolerance("ΔF_r", spindle.friction) > 0:
        return sheet.take("F_r", spindle.friction)
    return 0.0
