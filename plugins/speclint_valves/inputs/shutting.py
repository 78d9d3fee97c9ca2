"""What several rules share of a shut valve: steam on both sides, springs, weight, friction."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Metres, Newtons, Pascals
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.springs import relaxation_loss, shear_stress
from speclint.handbook.steam import unbalanced_load
from speclint.specs import Beat, CompressionSpring, LoadCase, PoppetValve, ValveSpindle
from speclint_valves.formulae.shutting import (
    excess_pressure,
    hot_spring_load,
    lifting_load,
    sealing_diameter,
    spindle_load,
    sum_of_loads,
    weight_shutting,
)
from speclint_valves.formulae.tables import place_of_seal, sense_of_push, sense_of_weight
from speclint_valves.inputs.opening import beats_of


def spindle_of(valve: PoppetValve, sheet: Sheet) -> ValveSpindle:
    """The one spindle that states that it moves the valve."""
    spindles = sheet.belonging_to(valve, ValveSpindle)
    if len(spindles) != 1:
        raise sheet.not_assessed(
            f"{len(spindles) or 'no'} spindles state that they move {valve.id}; exactly one is needed"
        )
    return spindles[0]


def springs_of(valve: PoppetValve, sheet: Sheet) -> tuple[CompressionSpring, ...]:
    """The springs that state that they close the valve."""
    springs = sheet.belonging_to(valve, CompressionSpring)
    if not springs:
        raise sheet.not_assessed(f"no spring states that it closes {valve.id}")
    return springs


def _sealing(beat: Beat, index: str, sheet: Sheet) -> Metres:
    return sheet.work(
        f"d_s{index}",
        sealing_diameter,
        d=sheet.take(f"d_{index}", beat.seat_diameter),
        x=sheet.look_up(f"x_{index}", place_of_seal),
        w=sheet.take(f"w_{index}", beat.contact_width),
        β=sheet.take(f"β_{index}", beat.seat_angle),
    )


def unbalanced(valve: PoppetValve, sheet: Sheet, supply: Pascals, delivery: Pascals) -> Newtons:
    """Steam load on the shut valve, positive for lifting, with its sealing circles anywhere on the contacts."""
    circles = [_sealing(beat, index, sheet) for index, beat in beats_of(valve, sheet)]
    between = sheet.read("supply acts", valve.supply_acts) == "between the beats"
    inside, outside = (supply, delivery) if between else (delivery, supply)
    excess = sheet.work("Δp", excess_pressure, p_1=inside, p_2=outside)
    lower = circles[1] if len(circles) == 2 else 0.0
    return sheet.work("F_v", unbalanced_load, Δp=excess, d_u=circles[0], d_l=lower)


def on_spindle(spindle: ValveSpindle, sheet: Sheet, supply: Pascals, delivery: Pascals) -> Newtons:
    """Steam load on the end of the spindle, positive for lifting."""
    inside = supply if sheet.read("steam inside the seal", spindle.leaves) == "supply" else delivery
    g = sheet.look_up("g_s", sense_of_push, pushed=sheet.read("spindle is pushed", spindle.pushed))
    return sheet.work("F_s", spindle_load, g=g, d=sheet.take("d_s", spindle.seal_diameter), p=inside)


def lifting_pressures(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> tuple[Pascals, Pascals]:
    """Supply and delivery pressure of the case that give the greatest lifting load on the shut valve."""
    supply_lifts = sheet.read("supply acts", valve.supply_acts) == "between the beats"
    cylinder_high = supply_lifts == (sheet.read("serves", valve.serves) == "exhaust")
    cylinder = _cylinder(case, sheet, high=cylinder_high)
    if sheet.read("serves", valve.serves) == "inlet":
        return sheet.take("p_s", case.live_pressure), cylinder
    return cylinder, sheet.take("p_d", case.exhaust_pressure)


def _cylinder(case: LoadCase, sheet: Sheet, *, high: bool) -> Pascals:
    if high:
        stated = sheet.is_stated("cylinder pressure", case.cylinder_pressure)
        return sheet.take("p_c", case.cylinder_pressure if stated else case.live_pressure)
    stated = sheet.is_stated("least cylinder pressure", case.least_cylinder_pressure)
    return sheet.take("p_c", case.least_cylinder_pressure if stated else case.exhaust_pressure)


def greatest_lifting(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Newtons:
    """Load with which steam lifts the shut valve; zero where it holds it shut."""
    supply, delivery = lifting_pressures(valve, case, sheet)
    on_valve = unbalanced(valve, sheet, supply, delivery)
    spindle = on_spindle(spindle_of(valve, sheet), sheet, supply, delivery)
    return sheet.work("F_l", lifting_load, F_v=on_valve, F_s=spindle)


def weight(valve: PoppetValve, sheet: Sheet) -> Newtons:
    """Weight of valve and spindle that helps to shut."""
    g = sheet.look_up("g_w", sense_of_weight, opens=sheet.read("opens", valve.opens))
    spindle = spindle_of(valve, sheet)
    m_v, m_s = sheet.take("m_v", valve.mass), sheet.take("m_s", spindle.mass)
    return sheet.work("W", weight_shutting, g=g, m_v=m_v, m_s=m_s)


def springs_shut(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Newtons:
    """Load of all springs on the shut valve, hot and relaxed."""
    total = 0.0
    for number, spring in enumerate(springs_of(valve, sheet), start=1):
        index = str(number)
        F = hot(spring, case, sheet, sheet.take(f"F_U{index}", spring.shut_load), index)
        total = sheet.work(f"F_f{index}", sum_of_loads, F_1=total, F_2=F) if total else F
    return total


def hot(spring: CompressionSpring, case: LoadCase, sheet: Sheet, F_20: Newtons, index: str) -> Newtons:
    """Load of a spring, hot and relaxed, from its load at 20 °C."""
    T = sheet.take(f"T_f{index}", case.temperature_of(spring))
    wire = sheet.material_of(spring)
    cold = sheet.look_up(f"G_20{index}", wire.shear_modulus, of=spring, at=DRAWING_TEMPERATURE)
    warm = sheet.look_up(f"G_T{index}", wire.shear_modulus, of=spring, at=T)
    r = _loss(spring, sheet, T, F_20, index)
    return sheet.work(f"F_{index}", hot_spring_load, F_20=F_20, G_T=warm, G_20=cold, r=r)


def _loss(spring: CompressionSpring, sheet: Sheet, T: float, F_20: Newtons, index: str) -> float:
    """Relaxation as the maker guarantees it, or by wire, temperature and stress."""
    if sheet.is_stated("relaxation", spring.relaxation):
        return sheet.take(f"r_{index}", spring.relaxation)
    D, d = sheet.take(f"D_{index}", spring.mean_diameter), sheet.take(f"d_{index}", spring.wire)
    stress = sheet.work(f"τ_{index}", shear_stress, F=F_20, D=D, d=d)
    grade = sheet.read(f"wire of {spring.id}", spring.wire_grade)
    return sheet.look_up(f"r_{index}", relaxation_loss, of=spring, wire=grade, T=T, tau=stress)
