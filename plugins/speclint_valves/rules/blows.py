"""What comes back in a valve at every turn: steam, and the blow on its seat."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kilograms, Metres, Pascals
from speclint.facts import ValvesTrain, beats_of, block_under, greatest_mass
from speclint.handbook.cylinders import BORESI, bore_hoop_stress_between_pressures
from speclint.handbook.fits import DRAWING_TEMPERATURE, size_of_stress
from speclint.specs import LoadCase, PoppetValve
from speclint_valves.formulae.blows import (
    amplitude_allowed,
    amplitude_at_each_turn,
    factor_of_mass_behind,
    mass_of_wall,
    stress_of_blow,
)
from speclint_valves.inputs.cylinder import greatest_in_cylinder
from speclint_valves.inputs.landed import speed_of_landing
from speclint_valves.inputs.shutting import spindle_of, supply_at_most
from speclint_valves.inputs.train import on_every_track
from speclint_valves.sources import WAVE_IN_BAR


@rule(
    "valve.fatigue",
    title="The steam that comes and goes at each turn and the blow of landing, of valve and spindle on one beat, "
    "stress the wall beside a notch of 2 to no more than 0.3 of its tensile strength over 1.5",
    wrong="the wall of the valve is stressed to ±{found} at each turn, ±{limit} allowed",
    on=PoppetValve,
    cases=("running",),
    edition=2,
    grade=Grade.NONCONFORMITY,
    cites=[BORESI, WAVE_IN_BAR, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a valve cracks where ribs meet its wall after many million blows, and its pieces go through the cylinder",
    leaves_out="bending of the wall between its ribs, and ribs, hub and windows themselves; the head of a valve of one "
    "beat under steam, and the blow on it beyond that of a plain bar; casting faults, springs; a valve that leaves its "
    "cam (valve.spring-follows-cam)",
    against=("break in fatigue",),
    limits=[
        Limit("factor", "1.5", "ratio", COMMON_PRACTICE, "least factor against fatigue"),
        Limit(
            "share",
            "0.3",
            "ratio",
            COMMON_PRACTICE,
            "endurance under alternating load over tensile strength; surface, size and heat are in it",
        ),
        Limit("share-in-iron", "0.35", "ratio", COMMON_PRACTICE, "the same of grey iron"),
        Limit("notch", "2", "ratio", COMMON_PRACTICE, "factor of a notch where ribs meet the wall"),
        Limit(
            "notch-in-iron", "1.3", "ratio", COMMON_PRACTICE, "the same in grey iron, which graphite notches"
        ),
    ],
)
def fatigue(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """σ/2 + c v √(E ρ) ≤ 0.3 R_m/(K × 1.5): hoop stress, and the wave of landing along the wall.

    Steam may be on either side; from outside it does most. Two beats never land together: one of them sends the whole
    blow through the wall.
    """
    t, T = sheet.take("t", valve.wall), sheet.take("T", case.temperature_of(valve))
    metal = sheet.material_of(valve)
    E = sheet.look_up("E", metal.modulus, of=valve, at=T)
    density = sheet.look_up("ρ", metal.density, of=valve)
    R_m = sheet.look_up("R_m", metal.tensile_strength, of=valve, at=DRAWING_TEMPERATURE, thickness=t)
    share, notch = ("share-in-iron", "notch-in-iron") if metal.family == "grey-iron" else ("share", "notch")
    allowed = sheet.work(
        "σ_n",
        amplitude_allowed,
        k=sheet.limit(share, "k"),
        R_m=R_m,
        K=sheet.limit(notch, "K"),
        x=sheet.limit("factor", "x"),
    )
    beats = beats_of(valve, sheet)
    hoop, c = 0.0, 1.0  # of one beat no shell: the blow of a plain bar
    if len(beats) > 1:
        D = max(sheet.take(f"d_{index}", beat.seat_diameter) for index, beat in beats)
        hoop = _hoop(valve, case, D, t, sheet)
        own = sheet.work("m_w", mass_of_wall, ρ=density, D=D, t=t, L=sheet.take("L", valve.beat_distance))
        c = sheet.work("c", factor_of_mass_behind, m_w=own, **_behind(valve, sheet))

    def judge(train: ValvesTrain) -> Judgement:
        v = speed_of_landing(train, case, sheet)
        blow = sheet.work("σ_v", stress_of_blow, c=c, v=v, E=E, ρ=density)
        return sheet.at_most(sheet.work("σ_a", amplitude_at_each_turn, sigma=hoop, sigma_v=blow), allowed)

    return on_every_track(valve, sheet, judge)


def _hoop(valve: PoppetValve, case: LoadCase, D: Metres, t: Metres, sheet: Sheet) -> Pascals:
    """Of the shell between two beats under the greatest pressure from outside."""
    p = max(supply_at_most(case, sheet), greatest_in_cylinder(case, block_under(valve, sheet), valve, sheet))
    hoop = sheet.work("σ_θ", bore_hoop_stress_between_pressures, p_i=0.0, p_o=p, d=D - 2 * t, D=D)
    return sheet.work("σ", size_of_stress, sigma=hoop)


def _behind(valve: PoppetValve, sheet: Sheet) -> dict[str, Kilograms]:
    """The masses that strike through the wall, by the names that the formula has for them."""
    return {
        "m_v": greatest_mass("m_v", valve, sheet, sheet.take),
        "m_s": greatest_mass("m_s", spindle_of(valve, sheet), sheet, sheet.take),
    }


RULES = (fatigue,)
