"""Room between a poppet valve at its full lift and the piston, by where its seat lies and which way it lifts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.drives import cold_clearance
from speclint.facts.retention import room_at_lift
from speclint.facts.seats import bores_under
from speclint.rules import Sheet, Worked
from speclint.specs import PoppetValve

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, SeatBore


@formula("c_p = x + c − H − h", cites=[FIRST_PRINCIPLES])
def room_along_cylinder(x: Metres, c: Metres, H: Metres, h: Metres) -> Metres:
    """Room between a valve that lifts along the cylinder and the piston at its dead centre, cold.

    c_p = x + c − H − h

    ``x`` from the seat's plane to the plane of the cover's face, in the direction of lift; ``c`` from that face to the
    piston; ``H`` from the seat's plane to the end of the shut valve, ``h`` lift [m]. Returns [m], negative where they
    meet.

    Hand working: 95 + 8 − 62 − 24 = 17 mm.

    >>> round(room_along_cylinder(x=0.095, c=0.008, H=0.062, h=0.024) * 1e3, 6)
    17.0
    """
    return x + c - H - h


def bore_with_direction(valve: PoppetValve, sheet: Sheet) -> SeatBore | None:
    """The seat bore of a valve that says which way it lifts to the cylinder; None where neither does."""
    for name, _, bore in bores_under(valve, sheet):
        if sheet.is_stated(f"way in which the {name} beat lifts", bore.lifts):
            return bore
    return None


def lifts_clear_of_piston(valve: PoppetValve, sheet: Sheet) -> Worked | None:
    """That a valve cannot meet the piston, since it lifts away from the cylinder or into its chamber.

    None where it lifts towards the cylinder, or where neither of its seat bores tells.
    """
    directed = bore_with_direction(valve, sheet)
    if directed is not None:
        away = sheet.read("way of lift", directed.lifts) == "away from the cylinder"
        return Worked(False, (directed.lifts.where,)) if away else None
    for name, _, bore in bores_under(valve, sheet):
        if sheet.is_stated(f"space into which the {name} beat lifts", bore.opens_into):
            into = sheet.read(f"space into which the {name} beat lifts", bore.opens_into)
            return Worked(False, (bore.opens_into.where,)) if into == "chamber" else None
    return None


def stands_across(valve: PoppetValve, sheet: Sheet) -> bool:
    """Whether a valve lifts across the cylinder, so that the piston cannot come nearer to it than its bore."""
    directed = bore_with_direction(valve, sheet)
    return directed is not None and sheet.read("way of lift", directed.lifts) == "across the cylinder"


def room_to_piston(valve: PoppetValve, sheet: Sheet, *, nominal: bool = False) -> Worked | None:
    """The room between a valve at full lift and the piston, cold: by its seat bore, height and lift.

    Along the cylinder to the piston at its dead centre, across it to the bore in which the piston runs. None where it
    lifts another way, or where its seat bore, its height or the end of the cylinder does not tell.
    """
    bore = bore_with_direction(valve, sheet)
    if bore is None or sheet.read("way of lift", bore.lifts) == "away from the cylinder":
        return None
    sizes = bore.to_cylinder, valve.height, valve.lift
    if not all(sheet.is_stated("place, height or lift", one) for one in sizes):
        return None
    take = sheet.take_nominal if nominal else sheet.take
    x, H, h = (take(symbol, one) for symbol, one in zip(("x_c", "H", "h"), sizes, strict=True))
    places = tuple(one.where for one in sizes)
    if sheet.read("way of lift", bore.lifts) == "across the cylinder":
        return Worked(sheet.work("c_p", room_at_lift, x=x, H=H, h=h), places)
    end = _end_of(valve, bore, sheet)
    if end is None:
        return None
    block = sheet.follow(sheet.follow(valve.upper_beat.seat).pressed_into)
    if nominal and not sheet.is_stated("clearance of the end", end.clearance):
        return None
    c = sheet.take_nominal("c", end.clearance) if nominal else cold_clearance(block, end, sheet)
    return Worked(sheet.work("c_p", room_along_cylinder, x=x, c=c, H=H, h=h), (*places, end.clearance.where))


def _end_of(valve: PoppetValve, bore: SeatBore, sheet: Sheet) -> CylinderEnd | None:
    """The end of the cylinder at which a valve sits, where its seat bore names it."""
    if not sheet.is_stated("end of the seat bore", bore.end):
        return None
    block = sheet.follow(sheet.follow(valve.upper_beat.seat).pressed_into)
    return sheet.entry(block.ends, bore.end, f"ends of {block.id}")
