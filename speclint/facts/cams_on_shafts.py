"""Where the cams of a shaft stand on it in each notch, by the valve gears that bring them into work."""

from __future__ import annotations

import math
from collections.abc import Sequence

from msgspec import Struct

from speclint.equations import Radians
from speclint.facts.engine import cranks_of, engine_of
from speclint.facts.valve_gear import SetCam, bore_of_gear, direction_of, set_cams
from speclint.handbook.valve_events import End
from speclint.rules import Sheet
from speclint.specs import Cam, ValveGear


class PlacedCam(Struct, frozen=True):
    """A cam in a notch: the angle of the shaft at which its lift begins, in the direction of running [rad]."""

    cam: Cam
    place: Radians
    backward: bool


def placed_in_notches(cams: Sequence[Cam], sheet: Sheet) -> dict[str, tuple[PlacedCam, ...]]:
    """The cams of a shaft that work in each notch in which the engine runs; nothing where no gear names them.

    Notches of one name on several gears work together. The shaft turns with the crank: a cam at the back stands half a
    turn from one at the front, and a cylinder whose crank leads by an angle has its cams so much earlier.
    """
    ids = {cam.id for cam in cams}
    gears = {gear.id: gear for cam in cams for gear in sheet.belonging_to(cam, ValveGear)}
    found: dict[str, list[PlacedCam]] = {}
    for gear in gears.values():
        ahead = _lead(gear, sheet)
        for notch in gear.notches:
            if direction_of(gear, notch, sheet) == "mid":
                continue
            for one in set_cams(gear, notch, sheet):
                if one.cam.id in ids:
                    found.setdefault(notch, []).append(_placed(one, ahead, sheet))
    return {notch: tuple(some) for notch, some in found.items()}


def _placed(one: SetCam, ahead: Radians, sheet: Sheet) -> PlacedCam:
    foot = sheet.take_nominal(f"φ_f of {one.cam.id}", one.foot)
    turned = math.pi if one.side is End.BACK else 0.0
    lead = -ahead if one.backward else ahead
    return PlacedCam(one.cam, foot + turned - lead, one.backward)


def _lead(gear: ValveGear, sheet: Sheet) -> Radians:
    """The angle by which the crank of a gear's cylinder leads the one from which angles count, running forwards."""
    block, bore = bore_of_gear(gear, sheet)
    engine = engine_of(block, sheet)
    for name, crank in cranks_of(engine, block, sheet) if engine is not None else ():
        if name == bore and sheet.is_stated("angle of the crank", crank.angle):
            return sheet.take_nominal("θ", crank.angle)
    return 0.0
