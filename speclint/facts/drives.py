"""What piston, rod and crosshead say of the drive of a block: masses, the rod, the room at the ends of the stroke."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Kilograms, Metres, formula
from speclint.facts.connecting_rods import small_end_in
from speclint.facts.cylinders import crossheads_on, ends_of, liners_of, pistons_in, rods_in
from speclint.facts.engine import stroke_of
from speclint.facts.moving_masses import greatest_mass
from speclint.facts.taking import Take
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Crosshead, CylinderBlock, NotStated, Pin, Piston, PistonRod, Stated

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd


@formula("m = m_p + m_r + m_c + m_s", cites=[FIRST_PRINCIPLES])
def reciprocating_mass(m_p: Kilograms, m_r: Kilograms, m_c: Kilograms, m_s: Kilograms) -> Kilograms:
    """Reciprocating mass of one cylinder.

    m = m_p + m_r + m_c + m_s

    ``m_p`` mass of the piston [kg]; ``m_r`` mass of its rod [kg]; ``m_c`` mass of the crosshead [kg]; ``m_s`` the small
    end's share of the connecting rod's mass [kg]. Returns [kg].

    >>> reciprocating_mass(m_p=112.0, m_r=84.0, m_c=70.0, m_s=34.0)
    300.0
    """
    return m_p + m_r + m_c + m_s


@formula("C = |x_2 − x_1| − S − L", cites=[FIRST_PRINCIPLES])
def room_at_ends(x_1: Metres, x_2: Metres, S: Metres, L: Metres) -> Metres:
    """Clearances of both ends together that a piston leaves between the faces of its covers.

    C = |x_2 − x_1| − S − L

    x_1, x_2: places of the two faces from one datum, m. S: stroke, m. L: length of the piston, m. Returns m, below 0
    where the piston cannot make its stroke.

    >>> round(room_at_ends(x_1=0.025, x_2=0.851, S=0.660, L=0.140) * 1e3, 6)
    26.0
    """
    return abs(x_2 - x_1) - S - L


@formula("c = C − c_o", cites=[FIRST_PRINCIPLES])
def room_left(C: Metres, c_o: Metres) -> Metres:
    """Clearance at one end of the stroke, when the other end has its own.

    C: clearances of both ends together, m. c_o: clearance of the other end, m. Returns m.

    >>> round(room_left(C=0.026, c_o=0.008) * 1e3, 6)
    18.0
    """
    return C - c_o


@formula("l = L − L_p/2", cites=[FIRST_PRINCIPLES])
def rod_beyond_piston(L: Metres, L_p: Metres) -> Metres:
    """Length of a rod from its crosshead to the nearer face of its piston.

    L: from the crosshead's centre to the piston's middle, m. L_p: length of the piston, m. Returns m.

    >>> rod_beyond_piston(L=1.45, L_p=0.14)
    1.38
    """
    return L - L_p / 2


def rods_drawn(block: CylinderBlock, sheet: Sheet) -> tuple[PistonRod, ...]:
    """The piston rods that work in any bore of a block."""
    return tuple(rod for bore in block.bores for rod in rods_in(block, bore, sheet))


def rod_diameter(block: CylinderBlock, sheet: Sheet) -> float:
    """Diameter of the piston rods of a block, m: of the thinnest that is drawn, else as the block states it."""
    drawn = [sheet.take("d_r", rod.diameter) for rod in rods_drawn(block, sheet)]
    return min(drawn) if drawn else sheet.take("d_r", block.drive.rod_diameter)


def rod_steel(block: CylinderBlock, sheet: Sheet) -> Stated[str] | NotStated:
    """The steel of the piston rods of a block: of the first that is drawn, else as the block states it."""
    return next((rod.material for rod in rods_drawn(block, sheet)), block.drive.rod_material)


def mass_of_parts(
    block: CylinderBlock, bore: str, sheet: Sheet, take: Take, *, greatest: bool = False
) -> tuple[float, Worked] | None:
    """The reciprocating mass of a bore: of the parts that state theirs, and whether that is all of it.

    Of the connecting rod it is what the crosshead states, else by the rod's centre of gravity, where any part is drawn.
    The ``greatest`` is no less than piston, rod and crosshead are by their sizes, and the small end by that centre of
    gravity.
    The second has no value where a part is missing. None where no part states its mass.
    """
    rods = tuple(rods_in(block, bore, sheet))
    heads = [head for rod in rods for head in crossheads_on(rod, sheet)]
    stated: dict[str, Measure | NotStated] = {}
    for symbol, masses in (
        ("m_p", [sheet.follow(rod.carries).mass for rod in rods]),
        ("m_r", [rod.mass for rod in rods]),
        ("m_c", [head.mass for head in heads]),
        ("m_s", [head.small_end_mass for head in heads]),
    ):
        stated.update((symbol, one) for one in masses if sheet.is_stated(f"mass {symbol}", one))
    if not stated:
        return None
    taken = {symbol: take(symbol, one) for symbol, one in stated.items()}
    places = tuple(one.where for one in stated.values())
    small = small_end_in(block, bore, sheet, take) if "m_s" not in stated else None
    if small is not None:
        taken, places = {**taken, "m_s": small.value}, (*places, *small.places)
    if greatest:
        taken |= _no_lighter(block, bore, (rods, heads, stated, taken), sheet, take)
    total = sheet.work("m_k", reciprocating_mass, **{"m_p": 0.0, "m_r": 0.0, "m_c": 0.0, "m_s": 0.0, **taken})
    return total, Worked(total if len(taken) == 4 else None, places)


def _no_lighter(
    block: CylinderBlock,
    bore: str,
    drawn: tuple[tuple[PistonRod, ...], list[Crosshead], dict[str, Measure | NotStated], dict[str, float]],
    sheet: Sheet,
    take: Take,
) -> dict[str, float]:
    """The masses of piston, rod, crosshead and small end that are stated, each no less than other places let it be."""
    rods, heads, stated, taken = drawn
    found: dict[str, float] = {}
    weighed: list[tuple[str, Piston | PistonRod | Crosshead]] = [("m_c", head) for head in heads]
    for rod in rods:
        weighed += [("m_p", sheet.follow(rod.carries)), ("m_r", rod)]
    for symbol, part in weighed:
        if symbol in stated:
            found[symbol] = greatest_mass(symbol, part, sheet, take)
    if "m_s" in stated:
        by_rod, aim = (
            small_end_in(block, bore, sheet, sheet.take_nominal),
            sheet.take_nominal("m_s", stated["m_s"]),
        )
        if by_rod is not None and by_rod.value > aim:
            found["m_s"] = taken["m_s"] + by_rod.value - aim  # with the limits of the stated one
    return found


def mass_moved(block: CylinderBlock, sheet: Sheet) -> float:
    """The reciprocating mass, kg: of the parts where all are drawn, else as stated and not less than they are.

    Each part as it states its mass, and no less than its sizes let it be; of several bores that of the heaviest.
    """
    of_bores = [
        found
        for bore in block.bores
        if (found := mass_of_parts(block, bore, sheet, sheet.take, greatest=True))
    ]
    known = [total for total, _ in of_bores]
    if (
        of_bores
        and len(of_bores) == len(block.bores)
        and all(whole.value is not None for _, whole in of_bores)
    ):
        return max(known)
    return max([sheet.take("m", block.drive.reciprocating_mass), *known])


def ends_by_side(block: CylinderBlock, bore: str, sheet: Sheet) -> dict[str, CylinderEnd]:
    """The ends of a bore that state their side, by that side."""
    return {
        sheet.read(f"side of end {name}", end.side): end
        for name, end in ends_of(block, bore, sheet).items()
        if sheet.is_stated(f"side of end {name}", end.side)
    }


def room_for_strokes(block: CylinderBlock, bore: str, sheet: Sheet, take: Take) -> Worked | None:
    """The clearances of both ends of a bore together, by faces, stroke and piston; None where one is not drawn."""
    sides = ends_by_side(block, bore, sheet)
    pistons = [piston for liner in liners_of(block, bore, sheet) for piston in pistons_in(liner, sheet)]
    if len(sides) < 2 or len(pistons) != 1:
        return None
    front, back = sides["front"].face_from_seat, sides["back"].face_from_seat
    stroke, length = stroke_of(block, sheet, bore), pistons[0].length
    if not all(sheet.is_stated("face, stroke or length", one) for one in (front, back, stroke, length)):
        return None
    faces = {"x_1": take("x_1", front), "x_2": take("x_2", back)}
    room = sheet.work("C", room_at_ends, **faces, S=take("S", stroke), L=take("L_p", length))
    return worked(room, front, back, stroke, length)


def other_end(block: CylinderBlock, end: CylinderEnd, sheet: Sheet, bore: str = "") -> CylinderEnd | None:
    """The end of the same bore on the other side; None where there is none."""
    name = bore or sheet.read("bore of end", end.of_bore)
    return next((one for one in ends_of(block, name, sheet).values() if one is not end), None)


def cold_clearance(
    block: CylinderBlock, end: CylinderEnd, sheet: Sheet, take: Take | None = None, bore: str = ""
) -> float:
    """Cold clearance from piston to cover at one end, m: the less of the stated one and of what the faces leave.

    ``take`` is how sizes are taken, with their limits where none is given; ``bore`` the bore of the end, where the
    caller knows it.
    """
    return min(_cold_clearances(block, end, sheet, take or sheet.take, bore))


def greatest_cold_clearance(block: CylinderBlock, end: CylinderEnd, sheet: Sheet) -> float:
    """Cold clearance from piston to cover at one end, m: the greater of the stated one and of what the faces leave."""
    return max(_cold_clearances(block, end, sheet, sheet.take))


def _cold_clearances(
    block: CylinderBlock, end: CylinderEnd, sheet: Sheet, take: Take, bore: str = ""
) -> tuple[float, ...]:
    """The clearance of one end as it is stated, and what the faces leave with that of the other end, each if known."""
    name = bore or sheet.read("bore of end", end.of_bore)
    room, beyond = room_for_strokes(block, name, sheet, take), other_end(block, end, sheet, name)
    if room is None or beyond is None or not sheet.is_stated("clearance of the other end", beyond.clearance):
        return (take("c", end.clearance),)
    left = sheet.work("c_w", room_left, C=room.value, c_o=take("c_o", beyond.clearance))
    if not sheet.is_stated("clearance", end.clearance):
        return (left,)
    return left, take("c", end.clearance)


def length_in_compression(rod: PistonRod, piston: Piston, block: CylinderBlock, sheet: Sheet) -> float:
    """Length over which a rod can bow, m: the greater of the stated one and of what is left beyond the piston."""
    stated = sheet.is_stated("free length", rod.free_length)
    if not (
        sheet.is_stated("rod length", block.drive.rod_length) and sheet.is_stated("length", piston.length)
    ):
        return sheet.take("L", rod.free_length)
    L, L_p = sheet.take("L_r", block.drive.rod_length), sheet.take("L_p", piston.length)
    beyond = sheet.work("L_w", rod_beyond_piston, L=L, L_p=L_p)
    return max(sheet.take("L", rod.free_length), beyond) if stated else beyond


#: The stiffest way in which the ends of a rod can be held: by the piston, and by a crosshead that turns on its pin.
STIFFEST_ENDS = "one fixed and one pinned"


def pins_of(rod: PistonRod, sheet: Sheet) -> tuple[Pin, ...]:
    """The crosshead pins on which the crosshead of a rod turns."""
    return tuple(
        pin
        for head in crossheads_on(rod, sheet)
        for pin in sheet.belonging_to(head, Pin)
        if sheet.said(f"place of {pin.id}", pin.place) == "crosshead pin"
    )


def ends_held(rod: PistonRod, sheet: Sheet) -> str:
    """How the ends of a rod are held: as stated, but with a pin at its crosshead no more than one of them is fixed."""
    said = sheet.read("ends", rod.ends)
    return STIFFEST_ENDS if said == "both fixed" and pins_of(rod, sheet) else said
