"""The train of a valve as it moves: its springs, its beats, its lever ratio and its mass."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import Kilograms, Ratio
from speclint.facts.moving_masses import greatest_mass
from speclint.facts.taking import Take
from speclint.facts.train import lever_ratio
from speclint.facts.train_loads import mass_at_valve
from speclint.facts.valve_gear import ValvesTrain
from speclint.handbook.springs import coil_mass
from speclint.rules import Sheet
from speclint.specs import CompressionSpring, PoppetValve

if TYPE_CHECKING:
    from speclint.specs import Beat

#: How a size is taken from a sheet: with its limits, or as the drawing aims at it.


def springs_of(valve: PoppetValve, sheet: Sheet) -> tuple[CompressionSpring, ...]:
    """The springs that state that they close the valve."""
    springs = sheet.belonging_to(valve, CompressionSpring)
    if not springs:
        raise sheet.not_assessed(f"no spring states that it closes {valve.id}")
    return springs


def beats_of(valve: PoppetValve, sheet: Sheet) -> tuple[tuple[str, Beat], ...]:
    """The beats, each with the index that its symbols carry."""
    count = sheet.count("z", valve.beats)
    if count not in (1, 2):
        raise sheet.not_covered(f"a poppet valve of {count} beats: one or two are covered")
    both = (("u", valve.upper_beat), ("l", valve.lower_beat))
    return both[:count]


def ratio_of_train(train: ValvesTrain, sheet: Sheet, take: Take | None = None) -> Ratio:
    """Lever ratio: travel of the valve over travel of the tappet."""
    if train.rocker is None:
        return 1.0
    take = take or sheet.take
    b_v, b_t = take("b_v", train.rocker.valve_arm), take("b_t", train.rocker.tappet_arm)
    return sheet.work("i", lever_ratio, b_v=b_v, b_t=b_t)


def mass_of_train(train: ValvesTrain, i: Ratio, sheet: Sheet, take: Take | None = None) -> Kilograms:
    """Mass of the train reduced to the valve; of valve, spindle and springs no less than their sizes let it be."""
    take = take or sheet.take
    m_f = 0.0
    for number, spring in enumerate(springs_of(train.valve, sheet), start=1):
        if sheet.is_stated(f"mass of {spring.id}", spring.mass):
            m_f += greatest_mass(f"m_f{number}", spring, sheet, take)
            continue
        rho = sheet.look_up(f"ρ_{number}", sheet.material_of(spring).density, of=spring)
        d, D = take(f"d_{number}", spring.wire), take(f"D_{number}", spring.mean_diameter)
        m_f += sheet.work(
            f"m_f{number}", coil_mass, rho=rho, d=d, D=D, n=take(f"n_{number}", spring.total_coils)
        )
    J, b_v = 0.0, 1.0
    if train.rocker is not None:
        J, b_v = take("J", train.rocker.inertia), take("b_v", train.rocker.valve_arm)
    m_v = greatest_mass("m_v", train.valve, sheet, take)
    m_s = greatest_mass("m_s", train.spindle, sheet, take)
    m_t = take("m_t", train.tappet.mass)
    return sheet.work("m", mass_at_valve, m_v=m_v, m_s=m_s, m_f=m_f, m_t=m_t, i=i, J=J, b_v=b_v)
