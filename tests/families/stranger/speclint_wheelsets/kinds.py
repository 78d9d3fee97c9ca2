"""Wheels and crank axles, and what a shaft states that carries wheels."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from speclint.specs import (
    NOT_STATED,
    Below,
    Component,
    Conditions,
    Force,
    Hazards,
    Length,
    LinkTo,
    Mass,
    Shaft,
    Span,
    SpecTable,
    Word,
)


class Seats(SpecTable):
    """What a shaft states that carries wheels.

    Fields:
        seat: diameter where a wheel is pressed on, alike at both ends
        seat_length: of the hub on it
        load: that the journals of the axle carry together, standing
        overhang: from the middle of a journal to the middle of the tread
    """

    seat: Annotated[Length, Span("40 mm", "400 mm")] = NOT_STATED
    seat_length: Length = NOT_STATED
    load: Force = NOT_STATED
    overhang: Length = NOT_STATED


class Wheel(Component):
    """A wheel pressed on an axle.

    Fields:
        bore: of the hub
        hub: outside diameter of the hub
        carried_by: the axle that it is pressed on
    """

    kind: ClassVar[str] = "wheel"
    called: ClassVar[str] = "wheel"
    hazards: ClassVar[Hazards] = ("loosen", "break in fatigue")
    geometry: ClassVar[Conditions] = (Below("bore", "hub"),)

    bore: Length = NOT_STATED
    hub: Length = NOT_STATED
    carried_by: LinkTo[Shaft] = NOT_STATED


class CrankAxle(Shaft):
    """A driving axle with cranks between its wheels.

    Fields:
        throw: of each crank, from the middle of the axle to the middle of the pin
        cranks: whether weights balance them
        unbalanced: mass at the crank pin that no weight balances
    """

    kind: ClassVar[str] = "crank-axle"
    called: ClassVar[str] = "crank axle"

    throw: Length = NOT_STATED
    cranks: Word[Literal["balanced", "unbalanced"]] = NOT_STATED
    unbalanced: Mass = NOT_STATED
