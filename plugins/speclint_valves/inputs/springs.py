"""The springs of a valve as they act: new and strong, or old, hot and relaxed."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Kelvins, Newtons, NewtonsPerMetre, Ratio
from speclint.facts import furthest_lift, rate_by_sizes, rates, shut_loads, springs_of
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import sum_of_loads
from speclint.handbook.springs import load_deviation, relaxation_loss, shear_stress, spring_load_at_lift
from speclint.specs import CompressionSpring, Duty, LoadCase, PoppetValve
from speclint_valves.formulae.regrinding import load_when_shortened
from speclint_valves.formulae.shutting import hot_load, hot_rate, load_after_set


class Springs(Struct, frozen=True):
    """All springs of a valve together: load shut and rate."""

    shut: Newtons
    rate: NewtonsPerMetre


def springs_relaxed(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Springs:
    """The springs hot and with the set that the hottest case of all leaves: what they have at the least."""
    return _together(valve, case, sheet, relaxed=True)


def springs_worn(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Springs:
    """The same, and as short as their limit of wear allows, where that takes more of their load."""
    return _together(valve, case, sheet, relaxed=True, worn=True)


def springs_new(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Springs:
    """The springs hot, before they have taken any set: what they have at the most."""
    return _together(valve, case, sheet, relaxed=False)


def _together(
    valve: PoppetValve, case: LoadCase, sheet: Sheet, *, relaxed: bool, worn: bool = False
) -> Springs:
    shut = rate = 0.0
    for number, spring in enumerate(springs_of(valve, sheet), start=1):
        one = _hot(valve, spring, case, sheet, str(number), relaxed=relaxed, worn=worn)
        shut = sheet.work(f"F_f{number}", sum_of_loads, F_1=shut, F_2=one.shut) if number > 1 else one.shut
        rate += one.rate
    return Springs(shut, rate)


def _hot(
    valve: PoppetValve,
    spring: CompressionSpring,
    case: LoadCase,
    sheet: Sheet,
    index: str,
    *,
    relaxed: bool,
    worn: bool,
) -> Springs:
    by_sizes = rate_by_sizes(spring, sheet, f"_{index}")
    least, greatest = rates(spring, sheet, by_sizes, f"_{index}")
    loads = shut_loads(spring, sheet, _shut_load(spring, sheet, index), by_sizes, f"_{index}")
    F, R = (loads[0], least) if relaxed else (loads[1], greatest)
    if relaxed:
        h = furthest_lift(valve, sheet)
        lifted = sheet.take("h", valve.lift) if h is None else h
        opened = sheet.work(f"F_O{index}", spring_load_at_lift, F_U=F, R=greatest, h=lifted)
        r = _loss(valve, spring, sheet, opened, index)
        set_hot = sheet.work(f"F_r{index}", load_after_set, F_U=F, F_O=opened, r=r)
        F = min(set_hot, _shortened(spring, F, R, sheet, index)) if worn else set_hot
    wire, T = sheet.material_of(spring), sheet.take(f"T_f{index}", case.temperature_of(spring))
    moduli = {
        "G_T": sheet.look_up(f"G_T{index}", wire.shear_modulus, of=spring, at=T),
        "G_20": sheet.look_up(f"G_20{index}", wire.shear_modulus, of=spring, at=DRAWING_TEMPERATURE),
    }
    shut = sheet.work(f"F_{index}", hot_load, F_20=F, **moduli)
    return Springs(shut, sheet.work(f"R_T{index}", hot_rate, R_20=R, **moduli))


def _shortened(
    spring: CompressionSpring, F: Newtons, R: NewtonsPerMetre, sheet: Sheet, index: str
) -> Newtons:
    """The load shut of a spring whose free length is at its limit of wear."""
    return sheet.work(
        f"F_w{index}",
        load_when_shortened,
        F_U=F,
        R=R,
        L_0=sheet.take(f"L_0{index}", spring.free_length),
        L=sheet.take(f"L_{index}", spring.wear.limit),
    )


def _shut_load(spring: CompressionSpring, sheet: Sheet, index: str) -> Newtons:
    """The load shut, within its own limits, or else within those of the spring's standard."""
    F = sheet.take(f"F_U{index}", spring.shut_load)
    if sheet.tolerance(f"ΔF_U{index}", spring.shut_load) > 0:
        return F
    if sheet.read(f"process of {spring.id}", spring.process) == "hot":
        raise sheet.not_assessed(
            f"shut_load of {spring.id} states no limits, and EN 15800 gives them for cold coiled springs only"
        )
    deviation = sheet.look_up(
        f"ΔF_{index}",
        load_deviation,
        of=spring,
        grade=sheet.read(f"quality grade of {spring.id}", spring.quality_grade),
        F=F,
        d=sheet.take_nominal(f"d_{index}", spring.wire),
        D=sheet.take_nominal(f"D_{index}", spring.mean_diameter),
        n=sheet.take_nominal(f"n_{index}", spring.working_coils),
    )
    return sheet.work(f"F_U{index}′", sum_of_loads, F_1=F, F_2=deviation)


def _loss(valve: PoppetValve, spring: CompressionSpring, sheet: Sheet, opened: Newtons, index: str) -> Ratio:
    """Relaxation as the maker warrants it, or by wire, hottest temperature of all cases and stress when open."""
    if sheet.is_stated("relaxation", spring.relaxation):
        return sheet.take(f"r_{index}", spring.relaxation)
    D, d = sheet.take(f"D_{index}", spring.mean_diameter), sheet.take(f"d_{index}", spring.wire)
    stress = sheet.work(f"τ_O{index}", shear_stress, F=opened, D=D, d=d)
    grade = sheet.read(f"wire of {spring.id}", spring.wire_grade)
    hottest = _hottest(valve, spring, sheet, index)
    return sheet.look_up(f"r_{index}", relaxation_loss, of=spring, wire=grade, T=hottest, tau=stress)


def _hottest(valve: PoppetValve, spring: CompressionSpring, sheet: Sheet, index: str) -> Kelvins:
    """The highest temperature that the duty states for the spring in any case: set is permanent."""
    highest = [
        sheet.take_limits(f"T_{index},{name}", temperature)[1]
        for name, case in _cases(valve, sheet)
        if sheet.is_stated(f"temperature of {spring.id}", temperature := case.temperature_of(spring))
    ]
    if not highest:
        raise sheet.not_assessed(f"the duty states no temperature of {spring.id} in any case")
    return max(highest)


def _cases(valve: PoppetValve, sheet: Sheet) -> Iterator[tuple[str, LoadCase]]:
    """Every load case of the valve's duty."""
    yield from sorted(_duty(valve, sheet).cases.items())


def _duty(valve: PoppetValve, sheet: Sheet) -> Duty:
    """The duty that the valve states, or else its seat or its block."""
    if sheet.is_stated("duty of the valve", valve.duty):
        return sheet.follow(valve.duty)
    seat = sheet.follow(valve.upper_beat.seat)
    if sheet.is_stated("duty of the seat", seat.duty):
        return sheet.follow(seat.duty)
    return sheet.follow(sheet.follow(seat.pressed_into).duty)
