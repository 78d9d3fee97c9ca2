"""How steeply a floor falls that is inclined with the axis of what stands on it."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, NotKnown, require
from speclint.handbook.tables import Reading
from speclint.specs import axis_in_words

#: The way to which a floor falls when the line square to it leans to a side, and the way opposite.
_FALLS = {
    "outwards": ("outer", "inner"),
    "inwards": ("inner", "outer"),
    "forward": ("front", "back"),
    "back": ("back", "front"),
}


def fall_towards(stands: str, way: str) -> Reading:
    """Fall of a floor towards its "front", "back", "outer" or "inner" edge, by how the line square to it stands.

    Below 0 where it rises that way, 0 where it is level along it. NotKnown for words that say no inclination,
    OutOfRange for one of 90° or more.

    >>> round(fall_towards("30 ° from upright, outwards", "outer").nominal, 4)
    0.5774
    >>> fall_towards("30 ° from upright, outwards", "front").nominal
    0.0
    """
    axis = axis_in_words(stands)
    if axis is None:
        raise NotKnown(f"{stands!r} does not say how a floor stands")
    require(axis.angle < math.radians(89.9), "a floor that stands upright is none")
    lower, upper = _FALLS.get(axis.side, ("", ""))
    sense = {lower: 1.0, upper: -1.0}.get(way, 0.0)
    return Reading.exact(f"fall towards the {way} edge", sense * math.tan(axis.angle), "", FIRST_PRINCIPLES)
