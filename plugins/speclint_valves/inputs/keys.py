"""How high a key is, as its spec states it or by its width, how deep it lies in both keyways, and what of it bears."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Judgement, Limit, Sheet
from speclint.specs import Cam
from speclint_valves.formulae.keys import (
    depth_for_height,
    height_in_hub,
    height_of_parallel_key,
    is_listed_width,
    room_over_key,
)
from speclint_valves.inputs.key_sections import SECTION_LIMITS

if TYPE_CHECKING:
    from speclint.equations import Metres
    from speclint.specs import Length

#: How deep a key is to lie in its shaft, how much room its keyways leave over it, and how high it is for its width.
DEPTH_LIMITS = (
    Limit("in shaft", "0.5", "ratio", COMMON_PRACTICE, "least depth of a key in its shaft over its height"),
    Limit("room", "0.1 mm", "length", COMMON_PRACTICE, "least room over a key", "not negative"),
    Limit(
        "loose",
        "1.2 mm",
        "length",
        COMMON_PRACTICE,
        "greatest room over a key; the depths of the standard leave 0.2 to 1.2 mm with their limits",
    ),
    *SECTION_LIMITS,
)


def height_of_key(height: Length, width: Length, b: str, sheet: Sheet) -> Metres:
    """The height of a key, m: as stated, else that of the parallel key for the width, ``b``, of its keyway."""
    if sheet.is_stated("height of the key", height):
        return sheet.take("h_k", height)
    return sheet.look_up("h_k", height_of_parallel_key, b=sheet.take_nominal(b, width))


def deep_in_shaft(h: Metres, t_1: Metres, of: str, sheet: Sheet) -> Judgement:
    """Whether half of the height of a key lies in its shaft."""
    least = sheet.work("t_n", depth_for_height, k=sheet.limit("in shaft", "k"), h=h)
    return sheet.at_least(t_1, least).else_says(
        f"the key of {of} lies {{found}} deep in the shaft, {{limit}} wanted"
    )


def room_over_it(h: Metres, t_1: Metres, t_2: Metres, of: str, sheet: Sheet) -> tuple[Judgement, Judgement]:
    """Whether the keyways of shaft and hub leave some room over a key, and not too much."""
    c = sheet.work("c", room_over_key, t_1=t_1, t_2=t_2, h=h)
    return (
        sheet.at_least(c, sheet.limit("room", "c_n")).else_says(
            f"{{found}} of room over the key of {of}, {{limit}} wanted"
        ),
        sheet.at_most(c, sheet.limit("loose", "c_g")).else_says(
            f"{{found}} of room over the key of {of}, {{limit}} at most"
        ),
    )


def height_of_cam_key(cam: Cam, sheet: Sheet) -> Metres:
    """The height of the key of a cam, m."""
    return height_of_key(cam.key_height, cam.keyway_width, "b", sheet)


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
    stands_out: Metres = sheet.work("h_b", height_in_hub, h=height_of_cam_key(cam, sheet), t_1=t_1)
    return min(own, t_1, stands_out)
