"""What is not known within limits, as readings with a low and a high."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES
from speclint.handbook.reading import Reading

_SENSE_OF_WEIGHT = {"upwards": 1.0, "sideways": 0.0, "downwards": -1.0}
_SENSE_OF_STEAM = {"lifts": 1.0, "holds shut": -1.0}
_SENSE_OF_PUSH = {"open": 1.0, "shut": -1.0}


def place_of_seal() -> Reading:
    """Where across the ring of contact a beat seals: anywhere from its smaller to its larger edge.

    >>> place_of_seal().high
    1.0
    """
    return Reading("place of the sealing circle on the contact", 0.5, 0.0, 1.0, "", FIRST_PRINCIPLES)


def sense_of_weight(opens: str) -> Reading:
    """1 where weight shuts a valve that opens upwards, −1 where it opens one that opens downwards.

    >>> sense_of_weight("downwards").nominal
    -1.0
    """
    return Reading.exact(f"sense of weight, opening {opens}", _SENSE_OF_WEIGHT[opens], "", FIRST_PRINCIPLES)


def sense_of_push(pushed: str) -> Reading:
    """1 where steam on the end of the spindle pushes the valve open, −1 where shut.

    >>> sense_of_push("shut").nominal
    -1.0
    """
    return Reading.exact(
        f"sense of the spindle's load, pushed {pushed}", _SENSE_OF_PUSH[pushed], "", FIRST_PRINCIPLES
    )


def sense_of_steam(steam_load: str) -> Reading:
    """1 where the drawing says that steam lifts the shut valve, −1 where it holds it.

    >>> sense_of_steam("holds shut").nominal
    -1.0
    """
    return Reading.exact(
        f"sense in which steam {steam_load}", _SENSE_OF_STEAM[steam_load], "", FIRST_PRINCIPLES
    )
