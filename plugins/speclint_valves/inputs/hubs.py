"""What a cam takes of the length of its shaft, and which cams stand in one box."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from speclint import Sheet, Worked
from speclint.specs import Cam, CamBox
from speclint_valves.formulae.room import room_together

if TYPE_CHECKING:
    from speclint.specs import Length


def hub_of(cam: Cam, sheet: Sheet) -> Length:
    """The length of the hub of a cam, where that is stated, else the width of its track."""
    return cam.hub_length if sheet.is_stated(f"hub of {cam.id}", cam.hub_length) else cam.width


def longest_of(cam: Cam, sheet: Sheet) -> Length:
    """The longer of hub and track of a cam as they are drawn; the track where no hub is stated."""
    hub = hub_of(cam, sheet)
    if hub is cam.width or not sheet.is_stated(f"track of {cam.id}", cam.width):
        return hub
    longer = sheet.take_nominal(f"b of {cam.id}", hub) >= sheet.take_nominal(f"b_t of {cam.id}", cam.width)
    return hub if longer else cam.width


def together(cams: Sequence[Cam], sheet: Sheet) -> Worked:
    """What cams take along their shaft, m, of each the longer of hub and track; one that states neither takes none."""
    taken, places = 0.0, []
    for cam in cams:
        sizes = {"hub": cam.hub_length, "track": cam.width}
        stated = [(name, one) for name, one in sizes.items() if sheet.is_stated(f"{name} of {cam.id}", one)]
        if stated:
            b = max(sheet.take(f"b {name} {cam.id}", one) for name, one in stated)
            taken = sheet.work("b_c", room_together, b_0=taken, b=b)
            places += [one.where for _, one in stated]
    return Worked(taken, tuple(places))


def in_boxes(cams: Sequence[Cam], sheet: Sheet) -> list[tuple[CamBox, list[Cam]]]:
    """The cam boxes that carry the tappets of some cams, each with its cams."""
    found: dict[str, tuple[CamBox, list[Cam]]] = {}
    for cam in cams:
        if sheet.is_stated(f"tappet of {cam.id}", cam.lifts):
            tappet = sheet.follow(cam.lifts)
            if sheet.is_stated(f"box of {tappet.id}", tappet.carried_in):
                box = sheet.follow(tappet.carried_in)
                found.setdefault(box.id, (box, []))[1].append(cam)
    return list(found.values())
