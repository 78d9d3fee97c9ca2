"""The key of a cam: how high it is, as its spec states it or by its width, and how much of it bears."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Metres
from speclint.specs import Cam
from speclint_valves.formulae.keys import height_in_hub, height_of_parallel_key, is_listed_width


def height_of_key(cam: Cam, sheet: Sheet) -> Metres:
    """The height of the key of a cam, m: as stated, else that of the parallel key of the width of its keyway."""
    if sheet.is_stated("height of the key", cam.key_height):
        return sheet.take("h_k", cam.key_height)
    return sheet.look_up("h_k", height_of_parallel_key, b=sheet.take_nominal("b", cam.keyway_width))


def depth_that_bears(cam: Cam, sheet: Sheet) -> Metres:
    """The height of the side on which the key of a cam bears, m, where that is least.

    The shallower of the keyways in cam and shaft, and no more than stands out of the shaft. Of a width that no standard
    lists, whose height nothing states, the keyways alone count.
    """
    own = sheet.take("h", cam.keyway_depth)
    if not sheet.is_stated("shaft", cam.turns_on):
        return own
    shaft = sheet.follow(cam.turns_on)
    if not sheet.is_stated(f"keyway of {shaft.id}", shaft.keyway_depth):
        return own
    t_1 = sheet.take("h_s", shaft.keyway_depth)
    known = sheet.is_stated("height of the key", cam.key_height)
    if not known and not is_listed_width(sheet.take_nominal("b", cam.keyway_width)):
        return min(own, t_1)
    stands_out: Metres = sheet.work("h_b", height_in_hub, h=height_of_key(cam, sheet), t_1=t_1)
    return min(own, t_1, stands_out)
