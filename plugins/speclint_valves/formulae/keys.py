"""A key between a shaft and what it turns: how high it is, and how deep it lies in both."""

from __future__ import annotations

import math
from functools import cache

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, NotKnown, formula
from speclint.equations import Metres, Ratio
from speclint.handbook.tables import Reading, rows
from speclint_valves.sources import ISO_773

_KEYS = "parallel-keys-iso-773.csv"
_WOODRUFF = "woodruff-keys-iso-3912.csv"
_MILLIMETRE = 1e-3
#: Widths nearer than this are the same, m: as two drawings of one keyway may differ (shaft.key-of-its-cams).
_SAME = 1e-5


@cache
def _heights() -> tuple[tuple[Metres, Metres], ...]:
    return tuple(
        (float(row["width_mm"]) * _MILLIMETRE, float(row["height_mm"]) * _MILLIMETRE)
        for row in rows(_KEYS, "speclint_valves")
    )


def is_listed_width(b: Metres) -> bool:
    """Whether the standard has a parallel key of a width."""
    return any(math.isclose(width, b, abs_tol=_SAME) for width, _ in _heights())


@cache
def _woodruff() -> tuple[tuple[Metres, Metres], ...]:
    return tuple(
        (float(row["width_mm"]) * _MILLIMETRE, float(row["height_mm"]) * _MILLIMETRE)
        for row in rows(_WOODRUFF, "speclint_valves")
    )


def is_woodruff(b: Metres, h: Metres) -> bool:
    """Whether the standard has a Woodruff key of a width and a height.

    >>> is_woodruff(0.010, 0.013), is_woodruff(0.018, 0.013)
    (True, False)
    """
    return any(
        math.isclose(width, b, abs_tol=_SAME) and math.isclose(height, h, abs_tol=_SAME)
        for width, height in _woodruff()
    )


def height_of_parallel_key(b: Metres) -> Reading:
    """Height of the parallel key of a width ``b``, m. NotKnown for a width that the standard does not list.

    >>> round(height_of_parallel_key(0.018).nominal * 1e3, 6)
    11.0
    """
    for width, height in _heights():
        if math.isclose(width, b, abs_tol=_SAME):
            return Reading.exact("height of a parallel key of this width", height, "m", ISO_773)
    raise NotKnown("no parallel key of this width is listed: key_height is to state how high it is")


@formula("c = t_1 + t_2 − h", cites=[FIRST_PRINCIPLES])
def room_over_key(t_1: Metres, t_2: Metres, h: Metres) -> Metres:
    """Room over a key in its two keyways.

    c = t_1 + t_2 − h

    ``t_1`` depth of the keyway in the shaft, ``t_2`` depth of the keyway in the hub, beside the key, ``h`` height of
    the key [m]. Returns [m], below 0 where the hub does not go on.

    Hand working: a key 11 mm high lies 7 mm deep in a shaft and has 4.4 mm in the hub: 0.4 mm.

    >>> round(room_over_key(t_1=0.007, t_2=0.0044, h=0.011), 6)
    0.0004
    """
    return t_1 + t_2 - h


@formula("h_b = h − t_1", cites=[FIRST_PRINCIPLES])
def height_in_hub(h: Metres, t_1: Metres) -> Metres:
    """Height of a key that stands out of its shaft, and on which a hub bears at the most.

    h_b = h − t_1

    ``h`` height of the key, ``t_1`` depth of the keyway in the shaft [m]. Returns [m].

    Hand working: a key 11 mm high that lies 7 mm deep stands out by 4 mm, whatever the depth in the hub.

    >>> round(height_in_hub(h=0.011, t_1=0.007), 6)
    0.004
    """
    return h - t_1


@formula("t_n = k h", cites=[COMMON_PRACTICE])
def depth_for_height(k: Ratio, h: Metres) -> Metres:
    """The least depth of a key in its shaft.

    t_n = k h

    ``k`` least depth over height; ``h`` height of the key [m]. Returns [m].

    >>> depth_for_height(k=0.5, h=0.011)
    0.0055
    """
    return k * h
