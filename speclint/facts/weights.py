"""What the pieces of a load weigh: by what their own specs state, or by their sizes and the density of their metal."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from speclint.equations import (
    FIRST_PRINCIPLES,
    Kilograms,
    KilogramsPerCubicMetre,
    Metres,
    Ratio,
    SquareMetres,
    formula,
    require,
)
from speclint.facts.taking import Take
from speclint.handbook.members import tube_area
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    NOT_STATED,
    CamBox,
    ChamberCover,
    Component,
    CompressionSpring,
    Crosshead,
    CylinderCover,
    CylinderLiner,
    LensJoint,
    LiftingPlan,
    NotStated,
    PipeFlange,
    Piston,
    PistonRing,
    PistonRod,
    PoppetValve,
    SteamPipe,
    Tappet,
    ValveSeat,
    ValveSpindle,
    Weldment,
)

if TYPE_CHECKING:
    from speclint.specs import Weight

_StatesItsMass = (
    CamBox,
    CompressionSpring,
    Crosshead,
    Piston,
    PistonRod,
    PoppetValve,
    Tappet,
    ValveSpindle,
    Weldment,
)


@formula("m = m_0 + ρ A l", cites=[FIRST_PRINCIPLES])
def mass_of_ring(
    m_0: Kilograms,
    rho: KilogramsPerCubicMetre,
    A: SquareMetres,
    l: Metres,  # noqa: E741 - the letter of the equation
) -> Kilograms:
    """Mass of a piece made of rings, added up ring by ring.

    m_0: of the rings before, kg. rho: density, kg/m³. A: area of one more across the axis, m². l: its length, m.
    Returns kg.

    >>> mass_of_ring(m_0=20.0, rho=7200.0, A=0.05, l=1.0)
    380.0
    """
    return m_0 + rho * A * l


@formula("d = D − 2 t", cites=[FIRST_PRINCIPLES])
def inside_of_wall(D: Metres, t: Metres) -> Metres:
    """Inside of a round wall.

    d = D − 2 t

    D: outside, m. t: thickness, m. Returns m.

    >>> round(inside_of_wall(D=0.5, t=0.04), 9)
    0.42
    """
    return D - 2 * t


@formula("m = m_0 + m_1", cites=[FIRST_PRINCIPLES])
def mass_together(m_0: Kilograms, m_1: Kilograms) -> Kilograms:
    """Mass of several pieces, added up piece by piece.

    m_0: of the pieces before, kg. m_1: of one more, kg. Returns kg.

    >>> mass_together(m_0=1500.0, m_1=600.0)
    2100.0
    """
    return m_0 + m_1


@formula("x = (m_0 x_0 + m_1 x_1)/(m_0 + m_1)", cites=[FIRST_PRINCIPLES])
def centre_together(m_0: Kilograms, x_0: Metres, m_1: Kilograms, x_1: Metres) -> Metres:
    """Centre of gravity of several pieces along one axis, added up piece by piece.

    ``m_0`` mass of the pieces before [kg]; ``x_0`` place of their centre of gravity [m]; ``m_1`` mass of one piece more
    [kg]; ``x_1`` place of its centre of gravity [m]. Returns [m]. OutOfRange without mass.

    >>> round(centre_together(m_0=1500.0, x_0=0.4, m_1=500.0, x_1=0.8), 6)
    0.5
    """
    require(m_0 + m_1 > 0 * m_0, "the mass on the hook is not above 0")
    return (m_0 * x_0 + m_1 * x_1) / (m_0 + m_1)


@formula("m = s M", cites=[FIRST_PRINCIPLES])
def share_of_mass(s: Ratio, M: Kilograms) -> Kilograms:
    """A share of a mass.

    s: share. M: mass, kg. Returns kg.

    >>> share_of_mass(s=0.9, M=1000.0)
    900.0
    """
    return s * M


def _bore_under(cover: CylinderCover | ChamberCover, sheet: Sheet) -> Measure | NotStated:
    if isinstance(cover, ChamberCover):
        return cover.bore
    from speclint.facts.cylinders import bore_closed  # only where a cover of a cylinder is weighed

    return bore_closed(cover, sheet)


def _least_outside(cover: CylinderCover | ChamberCover, sheet: Sheet) -> Metres:
    if isinstance(cover, ChamberCover):
        return 0.0
    from speclint.facts.cylinders import least_outside  # only where a cover of a cylinder is weighed

    return least_outside(cover, sheet)


def mass_of_part(part: Component, sheet: Sheet, take: Take) -> Worked | None:
    """The mass of a part: that which its own spec states, or by its sizes that of a part made of rings, kg.

    Of rings are a liner, a flat cover, a piston ring, a valve seat, a pipe, its flanges and a lens ring. None where the
    part states neither, or where the density of its metal is not known. Openings, holes, gaps and cones are not taken
    off; ports and ribs are left out, and of a cover what it has beyond flange and plate.
    """
    if isinstance(part, _StatesItsMass):
        known = sheet.is_stated(f"mass of {part.id}", part.mass)
        return worked(take("m_1", part.mass), part.mass) if known else None
    if isinstance(part, CylinderLiner):
        barrel = (part.outside_diameter, part.bore, part.length)
        return _of_rings(
            part, (barrel, (part.collar.diameter, part.bore, part.collar.thickness)), sheet, take
        )
    if isinstance(part, CylinderCover | ChamberCover) and sheet.is_stated("form", part.form):
        bore = _bore_under(part, sheet)
        plate = (bore, part.central_hole, part.thickness)
        rings = ((part.outside_diameter, bore, part.flange_thickness), plate)
        if sheet.read("form", part.form) != "flat":
            return None
        return _of_rings(part, rings, sheet, take, _least_outside(part, sheet))
    if isinstance(part, ValveSeat):
        return _of_rings(part, ((part.outside_diameter, part.bore, part.length),), sheet, take)
    if isinstance(part, PipeFlange | LensJoint):
        return _of_rings(part, ((part.outside_diameter, part.bore, part.thickness),), sheet, take)
    if isinstance(part, PistonRing | SteamPipe):
        return _of_wall(part, sheet, take)
    return None


def _of_wall(part: PistonRing | SteamPipe, sheet: Sheet, take: Take) -> Worked | None:
    """Mass of a piston ring in its bore, or of a pipe, by outside and wall; None where a size is not stated."""
    if isinstance(part, PistonRing):
        in_liner = sheet.is_stated(f"liner of {part.id}", part.runs_in)
        outside = sheet.follow(part.runs_in).bore if in_liner else NOT_STATED
        sizes = (outside, part.thickness, part.width)
    else:
        sizes = (part.outside_diameter, part.wall, part.length)
    rho = density_of(part, sheet)
    if rho is None or not all(sheet.is_stated("size", one) for one in sizes):
        return None
    D, t, length = (take(symbol, one) for symbol, one in zip(("D", "t", "l"), sizes, strict=True))
    area = sheet.work("A", tube_area, D=D, d=sheet.work("d", inside_of_wall, D=D, t=t))
    return worked(sheet.work("m_1", mass_of_ring, m_0=0.0, rho=rho, A=area, l=length), *sizes)


def density_of(part: Component, sheet: Sheet) -> KilogramsPerCubicMetre | None:
    """Density of the metal of a part, kg/m³; None where metal or density is not known."""
    if not sheet.is_stated(f"material of {part.id}", part.material):
        return None
    metal = sheet.material_of(part)
    return sheet.look_up("ρ", metal.density, of=part) if metal.holds("density") else None


_Size = Measure | NotStated


def _of_rings(
    part: Component,
    rings: Iterable[tuple[_Size, _Size, _Size]],
    sheet: Sheet,
    take: Take,
    least: Metres = 0.0,
) -> Worked | None:
    """Mass of the rings, each of outside, inside and length, whose sizes are all stated; None without the first.

    The first is no smaller outside than the ``least``.
    """
    if not sheet.is_stated(f"material of {part.id}", part.material):
        return None
    metal = sheet.material_of(part)
    if not metal.holds("density"):
        return None
    mass, sizes = 0.0, list[Measure]()
    for ring in rings:
        stated = [one for one in ring if sheet.is_stated("size", one) and isinstance(one, Measure)]
        if len(stated) == len(ring):
            D, d, length = (take(symbol, one) for symbol, one in zip(("D", "d", "l"), stated, strict=True))
            rho = sheet.look_up("ρ", metal.density, of=part)
            area = sheet.work("A", tube_area, D=D if sizes else max(D, least), d=d)
            mass = sheet.work("m_1", mass_of_ring, m_0=mass, rho=rho, A=area, l=length)
            sizes.extend(one for one in stated if one not in sizes)
        elif not sizes:
            return None
    return Worked(mass, tuple(one.where for one in sizes))


def part_weighed(weight: Weight, sheet: Sheet, take: Take) -> Worked | None:
    """The mass of the part that a piece of a load names; None where it names none, or none is known of it."""
    if not sheet.is_stated("part", weight.of):
        return None
    return mass_of_part(sheet.follow(weight.of), sheet, take)


def goes_up(weight: Weight, sheet: Sheet) -> bool:
    """Whether a piece is part of the load that is lifted; it is, unless its plan says that it is put in afterwards."""
    return not sheet.is_stated("in place", weight.in_place) or sheet.read("in place", weight.in_place)


def parts_named(plan: LiftingPlan, sheet: Sheet) -> set[str]:
    """The ids of the parts that the weights of a lifting plan name."""
    return {
        sheet.follow(weight.of).id for weight in plan.weights.values() if sheet.is_stated("part", weight.of)
    }
