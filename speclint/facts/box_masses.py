"""The outside of a cam box, and what it weighs at the least: its walls, and cams, shaft, tappets and rockers in it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from speclint.equations import (
    FIRST_PRINCIPLES,
    Kilograms,
    KilogramsPerCubicMetre,
    Metres,
    SquareMetres,
    formula,
)
from speclint.facts.taking import Take
from speclint.facts.weights import density_of, mass_of_part, mass_of_ring, mass_together
from speclint.handbook.members import outside_of_box, round_area, tube_area
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Cam, CamBox, NotStated, Rocker, Shaft, Tappet

if TYPE_CHECKING:
    from speclint.specs import Component


@formula("m = ρ π (r² − d²/4) b", cites=[FIRST_PRINCIPLES])
def mass_of_base_circle(rho: KilogramsPerCubicMetre, r: Metres, d: Metres, b: Metres) -> Kilograms:
    """Mass of a cam without its nose.

    m = ρ π (r² − d²/4) b

    rho: density, kg/m³. r: radius of its base circle, m. d: bore, m. b: width, m. Returns kg.

    Hand working: 7850 π (0.08² − 0.03²) × 0.03 = 4.069.

    >>> round(mass_of_base_circle(rho=7850.0, r=0.08, d=0.06, b=0.03), 3)
    4.069
    """
    return rho * math.pi * (r**2 - d**2 / 4) * b


def box_with_gear(box: CamBox, t: Metres, sheet: Sheet, take: Take) -> Worked:
    """The least mass of a cam box with walls ``t`` thick and of the gear in it, kg, with one place of each part.

    0 where neither is known. Of each cam its base circle, of a shaft that turns the cams of this box alone its least
    section, of each tappet its stated mass, of each rocker its boss round the pin. ``take`` is how sizes are taken.
    """
    tappets = sheet.belonging_to(box, Tappet)
    cams = [cam for tappet in tappets for cam in sheet.belonging_to(tappet, Cam)]
    rockers = sheet.belonging_to(box, Rocker)
    found: list[Worked | None] = [_walls(box, t, sheet, take)]
    found += [_cam(cam, sheet, take) for cam in cams]
    found += [_shaft(shaft, sheet, take) for shaft in _shafts_of(cams, sheet)]
    found += [mass_of_part(tappet, sheet, take) for tappet in tappets]
    found += [_rocker(rocker, sheet, take) for rocker in rockers]
    total = Worked(0.0)
    for one in found:
        if one is not None:
            m = sheet.work("m_g", mass_together, m_0=total.value, m_1=one.value)
            total = Worked(m, (*total.places, *one.places))
    return total


def _shafts_of(cams: list[Cam], sheet: Sheet) -> list[Shaft]:
    """The shafts that turn these cams and no other."""
    here = {cam.id for cam in cams}
    turned = [
        sheet.follow(cam.turns_on) for cam in cams if sheet.is_stated(f"shaft of {cam.id}", cam.turns_on)
    ]
    shafts = {shaft.id: shaft for shaft in turned}
    return [
        shaft for shaft in shafts.values() if all(cam.id in here for cam in sheet.belonging_to(shaft, Cam))
    ]


def _density(part: Component, sheet: Sheet, *sizes: Measure | NotStated) -> KilogramsPerCubicMetre | None:
    """The density of a part whose sizes are all stated."""
    return density_of(part, sheet) if all(sheet.is_stated("size", one) for one in sizes) else None


def plain_outside(box: CamBox, sheet: Sheet, take: Take) -> SquareMetres | None:
    """Outside of a cam box by its overall sizes, m²; None where one of them is not stated."""
    sizes = {"l": box.length, "b": box.width, "h": box.height}
    if not all(sheet.is_stated("size of the box", one) for one in sizes.values()):
        return None
    return sheet.work("A_o", outside_of_box, **{symbol: take(symbol, one) for symbol, one in sizes.items()})


def _walls(box: CamBox, t: Metres, sheet: Sheet, take: Take) -> Worked | None:
    if (A := plain_outside(box, sheet, take)) is None or (rho := density_of(box, sheet)) is None:
        return None
    return worked(sheet.work("m_o", mass_of_ring, m_0=0.0, rho=rho, A=A, l=t), box.length)


def _cam(cam: Cam, sheet: Sheet, take: Take) -> Worked | None:
    sizes = cam.base_radius, cam.bore, cam.width
    rho = _density(cam, sheet, *sizes)
    if rho is None:
        return None
    r, d, b = (take(symbol, one) for symbol, one in zip(("r", "d", "b"), sizes, strict=True))
    return worked(sheet.work(f"m of {cam.id}", mass_of_base_circle, rho=rho, r=r, d=d, b=b), cam.base_radius)


def _shaft(shaft: Shaft, sheet: Sheet, take: Take) -> Worked | None:
    rho = _density(shaft, sheet, shaft.diameter, shaft.length)
    if rho is None:
        return None
    A = sheet.work("A_w", round_area, d=take("d_w", shaft.diameter))
    m = sheet.work(f"m of {shaft.id}", mass_of_ring, m_0=0.0, rho=rho, A=A, l=take("l_w", shaft.length))
    return worked(m, shaft.diameter)


def _rocker(rocker: Rocker, sheet: Sheet, take: Take) -> Worked | None:
    """The boss round its pin, with the bush in it, as long as the bush; arms and pin are left out."""
    rho = _density(rocker, sheet, rocker.boss, rocker.pin, rocker.bush_length)
    if rho is None:
        return None
    A = sheet.work("A_b", tube_area, D=take("D_b", rocker.boss), d=take("d_p", rocker.pin))
    m = sheet.work(
        f"m of {rocker.id}", mass_of_ring, m_0=0.0, rho=rho, A=A, l=take("l_b", rocker.bush_length)
    )
    return worked(m, rocker.boss)
