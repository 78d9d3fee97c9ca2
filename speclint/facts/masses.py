"""What a part weighs by its sizes and the density of its metal: the least and the most that they let it be."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from speclint.equations import (
    FIRST_PRINCIPLES,
    Kilograms,
    KilogramsPerCubicMetre,
    Metres,
    SquareMetres,
    formula,
)
from speclint.errors import Location
from speclint.facts.crosshead_body import bosses_with_pin
from speclint.facts.piston_body import both_faces, inside_of_rim, with_walls
from speclint.facts.springs import mean_diameter
from speclint.facts.taking import Take
from speclint.facts.weights import density_of, inside_of_wall, mass_of_ring
from speclint.handbook.members import rectangle_area, round_area, tube_area
from speclint.handbook.springs import coil_mass
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    Component,
    CompressionSpring,
    Crosshead,
    NotStated,
    Pin,
    Piston,
    PistonRod,
    PoppetValve,
    ValveSpindle,
    Weldment,
)

#: What states a mass and is described by its sizes, but for a cam box, which is weighed with its gear.
Weighed = CompressionSpring | Crosshead | Piston | PistonRod | PoppetValve | ValveSpindle | Weldment


@formula("m = m_0 − ρ A l", cites=[FIRST_PRINCIPLES])
def mass_without_ring(m_0: Kilograms, rho: KilogramsPerCubicMetre, A: SquareMetres, l: Metres) -> Kilograms:  # noqa: E741
    """Mass of a piece in which a ring is cut.

    m_0: of the piece before, kg. rho: density, kg/m³. A: area of the ring across the axis, m². l: its length, m.
    Returns kg.

    >>> mass_without_ring(m_0=380.0, rho=7200.0, A=0.05, l=0.5)
    200.0
    """
    return m_0 - rho * A * l


@formula("l = l_0 + l_1", cites=[FIRST_PRINCIPLES])
def length_together(l_0: Metres, l_1: Metres) -> Metres:
    """Length of two pieces of one bar.

    l_0, l_1: of the pieces, m. Returns m.

    >>> length_together(l_0=0.2, l_1=0.1) == 0.2 + 0.1
    True
    """
    return l_0 + l_1


class BySizes(Struct, frozen=True):
    """The least and the most that a part weighs by its sizes, kg, with their places; None where they do not say."""

    least: Kilograms | None
    most: Kilograms | None
    places: tuple[Location, ...]


def mass_by_sizes(part: Component, sheet: Sheet, take: Take) -> BySizes | None:
    """What the sizes of a part let it weigh; None where they are not stated, or do not describe its kind.

    A spring is its wire. A piston is between its rim, grooves cut, with hub and walls where it states them, and a solid
    cylinder; a valve between the shell that joins its beats and a solid cylinder of its outside. Of a rod and a pin the
    sizes give what they are at their thinnest: the least; of a crosshead its bosses, filled by the pin, and the bearing
    of the pin between them. A spindle is between that and a bar of its diameter in the
    guide, from the valve's seat to the gear; a weldment between its flat walls and a solid piece as long, wide and high
    as the block that it becomes.
    ``take`` is how sizes are taken.
    """
    work = next((work for kind, work in _WORKED if isinstance(part, kind)), None)
    return work(part, sheet, take) if work is not None else None


def _stated(sheet: Sheet, *sizes: Measure | NotStated) -> bool:
    return all(sheet.is_stated("size", one) for one in sizes)


def _places(*sizes: Measure | NotStated) -> tuple[Location, ...]:
    return tuple(one.where for one in sizes if isinstance(one, Measure))


def _bar(symbol: str, d: Metres, length: Metres, rho: KilogramsPerCubicMetre, sheet: Sheet) -> Kilograms:
    """A round solid."""
    A = sheet.work(f"A_{symbol}", round_area, d=d)
    return sheet.work(f"m_{symbol}", mass_of_ring, m_0=0.0, rho=rho, A=A, l=length)


def _spring(spring: CompressionSpring, sheet: Sheet, take: Take) -> BySizes | None:
    rho = density_of(spring, sheet)
    if rho is None or not _stated(sheet, spring.wire, spring.total_coils):
        return None
    d = take("d", spring.wire)
    D = mean_diameter(spring, sheet, d, "")
    if D is None:
        return None
    m = sheet.work("m_w", coil_mass, rho=rho, d=d, D=D, n=take("n_t", spring.total_coils))
    return BySizes(m, m, _places(spring.wire, spring.mean_diameter, spring.total_coils))


def _piston(piston: Piston, sheet: Sheet, take: Take) -> BySizes | None:
    rho = density_of(piston, sheet)
    if rho is None or not _stated(sheet, piston.diameter, piston.length):
        return None
    D, length = take("D", piston.diameter), take("L", piston.length)
    most = _bar("solid", D, length, rho, sheet)
    of = piston.crown
    places = _places(piston.diameter, piston.length, piston.stock_thickness, of.thickness, of.hub, of.rim)
    inside = inside_of_rim(piston, D, sheet, take)
    if inside is None:
        return BySizes(None, most, places)
    A = sheet.work("A_r", tube_area, D=D, d=inside)
    rim = sheet.work("m_rim", mass_of_ring, m_0=0.0, rho=rho, A=A, l=length)
    least = with_walls(piston, _cut(piston, rim, rho, sheet, take), rho, inside, sheet, take)
    return BySizes(least, most, places)


def _cut(piston: Piston, m: Kilograms, rho: KilogramsPerCubicMetre, sheet: Sheet, take: Take) -> Kilograms:
    """The rim of a piston, once its grooves are cut and its faces cut back, at the most as deep as its grooves are."""
    D, deepest = take("D", piston.diameter), 0.0
    for name, groove in piston.grooves.items():
        if _stated(sheet, groove.depth, groove.width):
            h, b = take(f"h {name}", groove.depth), take(f"b {name}", groove.width)
            deepest = max(deepest, h)
            A = sheet.work(
                f"A_g {name}", tube_area, D=D, d=sheet.work(f"d_g {name}", inside_of_wall, D=D, t=h)
            )
            m = sheet.work(f"m_rim less {name}", mass_without_ring, m_0=m, rho=rho, A=A, l=b)
    if deepest and _stated(sheet, piston.crown_chamfer):
        A = sheet.work("A_c", tube_area, D=D, d=sheet.work("d_c", inside_of_wall, D=D, t=deepest))
        both = sheet.work("l_c", both_faces, c=take("c", piston.crown_chamfer))
        m = sheet.work("m_rim less its faces", mass_without_ring, m_0=m, rho=rho, A=A, l=both)
    return m


def _crosshead(crosshead: Crosshead, sheet: Sheet, take: Take) -> BySizes | None:
    rho = density_of(crosshead, sheet)
    known = None if rho is None else bosses_with_pin(crosshead, rho, sheet, take)
    return None if known is None else BySizes(known.value, None, known.places)


def _rod(rod: PistonRod, sheet: Sheet, take: Take) -> BySizes | None:
    return _thinnest(rod, rod.diameter, rod.free_length, sheet, take)


def _pin(pin: Pin, sheet: Sheet, take: Take) -> BySizes | None:
    return _thinnest(pin, pin.diameter, pin.length, sheet, take)


def _spindle(spindle: ValveSpindle, sheet: Sheet, take: Take) -> BySizes | None:
    thin = _thinnest(spindle, spindle.least_diameter, spindle.free_length, sheet, take)
    rho, length = density_of(spindle, sheet), _whole_length(spindle, sheet, take)
    if rho is None or length is None or not _stated(sheet, spindle.diameter):
        return thin
    most = _bar("whole", take("D", spindle.diameter), length.value, rho, sheet)
    places = (*(thin.places if thin else ()), *_places(spindle.diameter), *length.places)
    return BySizes(thin.least if thin else None, most, places)


def _whole_length(spindle: ValveSpindle, sheet: Sheet, take: Take) -> Worked | None:
    """From the valve's seat to the gear, else through the guide and beyond it, m."""
    if _stated(sheet, spindle.heated_length):
        return worked(take("l_h", spindle.heated_length), spindle.heated_length)
    if not _stated(sheet, spindle.free_length, spindle.guide_length):
        return None
    l_f, l_g = take("l_f", spindle.free_length), take("l_g", spindle.guide_length)
    both = sheet.work("l_w", length_together, l_0=l_f, l_1=l_g)
    return worked(both, spindle.free_length, spindle.guide_length)


def _thinnest(
    part: Component, diameter: Measure | NotStated, length: Measure | NotStated, sheet: Sheet, take: Take
) -> BySizes | None:
    rho = density_of(part, sheet)
    if rho is None or not _stated(sheet, diameter, length):
        return None
    m = _bar("thin", take("d", diameter), take("l", length), rho, sheet)
    return BySizes(m, None, _places(diameter, length))


def _valve(valve: PoppetValve, sheet: Sheet, take: Take) -> BySizes | None:
    rho = density_of(valve, sheet)
    if rho is None or not _stated(sheet, valve.outside_diameter, valve.height):
        return None
    D = take("D", valve.outside_diameter)
    most = _bar("solid", D, take("h", valve.height), rho, sheet)
    inner, shell = valve.lower_beat.seat_diameter, valve.beat_distance
    places = _places(valve.outside_diameter, valve.height, valve.wall, inner, shell)
    if not _stated(sheet, valve.wall, inner, shell):
        return BySizes(None, most, places)
    d_s, t = take("d_s", inner), take("t", valve.wall)
    A = sheet.work("A_s", tube_area, D=d_s, d=sheet.work("d_i", inside_of_wall, D=d_s, t=t))
    least = sheet.work("m_shell", mass_of_ring, m_0=0.0, rho=rho, A=A, l=take("l", shell))
    return BySizes(least, most, places)


def _weldment(weldment: Weldment, sheet: Sheet, take: Take) -> BySizes | None:
    m, places, densities = 0.0, list[Location](), [0.0]
    for name, wall in weldment.walls.items():
        if not (sheet.is_stated(f"plate of {name}", wall.plate) and _stated(sheet, wall.short, wall.long)):
            continue
        plate = sheet.entry(weldment.plates, wall.plate, f"plates of {weldment.id}")
        if not (_stated(sheet, plate.thickness) and sheet.is_stated(f"material of {name}", plate.material)):
            continue
        metal = sheet.material_named(f"plate of {name}", plate.material)
        if metal.holds("density"):
            rho = sheet.look_up(f"ρ {name}", metal.density)
            densities.append(rho)
            sides = take(f"a {name}", wall.short), take(f"b {name}", wall.long)
            A = sheet.work(f"A {name}", rectangle_area, b=sides[0], h=sides[1])
            t = take(f"t {name}", plate.thickness)
            m = sheet.work(f"m with {name}", mass_of_ring, m_0=m, rho=rho, A=A, l=t)
            places += _places(wall.short, wall.long, plate.thickness)
    if not places:
        return None
    solid = _solid_block(weldment, max(densities), sheet, take)
    return BySizes(m, solid.value, (*places, *solid.places)) if solid else BySizes(m, None, tuple(places))


def _solid_block(weldment: Weldment, rho: KilogramsPerCubicMetre, sheet: Sheet, take: Take) -> Worked | None:
    """A solid piece as wide and high as the block that a weldment becomes, and as long as its bores together, kg."""
    if not sheet.is_stated("block", weldment.makes):
        return None
    block = sheet.follow(weldment.makes)
    lengths = [bore.length for bore in block.bores.values()]
    if not lengths or not _stated(sheet, block.entering_width, block.entering_height, *lengths):
        return None
    b, h = take("b", block.entering_width), take("h", block.entering_height)
    A, m = sheet.work("A", rectangle_area, b=b, h=h), 0.0
    for name, bore in block.bores.items():
        m = sheet.work(f"m solid {name}", mass_of_ring, m_0=m, rho=rho, A=A, l=take(f"l {name}", bore.length))
    return worked(m, block.entering_width, block.entering_height, *lengths)


_WORKED: tuple[tuple[type[Component], Callable[..., BySizes | None]], ...] = (
    (CompressionSpring, _spring),
    (Crosshead, _crosshead),
    (Piston, _piston),
    (PistonRod, _rod),
    (Pin, _pin),
    (ValveSpindle, _spindle),
    (PoppetValve, _valve),
    (Weldment, _weldment),
)
