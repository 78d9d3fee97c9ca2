"""The pieces that a component names beside its own metal: bearing, slipper, bush, pin, guide, nut."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, cast

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Kelvins
from speclint.handbook.heat import hotter
from speclint.specs import BoltedJoint, Component, Crosshead, NotStated, Pin, Rocker, Stated, ValveSpindle

if TYPE_CHECKING:
    from speclint.specs import LoadCase


class Piece(Struct, frozen=True):
    """A piece without a spec of its own: what it is called, its material, its use, and whether a load breaks it."""

    called: str
    material: Stated[str] | NotStated
    use: str = "running-part"
    carries_load: bool = False


def pieces_of(component: Component) -> Iterator[Piece]:
    """The pieces that a component has; each may be stated or not."""
    of = component.id
    if component.is_one_of(("crosshead",)):
        yield Piece(f"the slipper of {of}", cast("Crosshead", component).slipper_material)
    elif component.is_one_of(("pin",)):
        yield Piece(f"the bearing of {of}", cast("Pin", component).bearing_material)
    elif component.is_one_of(("rocker",)):
        rocker = cast("Rocker", component)
        yield Piece(f"the bush of {of}", rocker.bush_material)
        yield Piece(f"the pin of {of}", rocker.pin_material, carries_load=True)
    elif component.is_one_of(("valve-spindle",)):
        yield Piece(f"the guide of {of}", cast("ValveSpindle", component).guide_material)
    elif component.is_one_of(("bolted-joint", "frame-fastening")):
        nut = cast("BoltedJoint", component).nut
        yield Piece(f"the nut of {of}", nut.material, "bolting", carries_load=True)


def temperature_of_pieces(component: Component, case: LoadCase, sheet: Sheet) -> Kelvins:
    """Metal temperature of a component's pieces: its own, and for a guide that of the block, if that is hotter."""
    own = sheet.take("T", case.temperature_of(component))
    if not component.is_one_of(("valve-spindle",)):
        return own
    spindle = cast("ValveSpindle", component)
    block = case.temperature_named("cylinder-block")
    if sheet.is_stated("moves", spindle.moves):
        valve = sheet.follow(spindle.moves)
        if sheet.is_stated("seat", valve.upper_beat.seat):
            seat = sheet.follow(valve.upper_beat.seat)
            if sheet.is_stated("pressed into", seat.pressed_into):
                block = case.temperature_of(sheet.follow(seat.pressed_into))
    if not sheet.is_stated("temperature of the block", block):
        return own
    return sheet.work("T_g", hotter, T_1=own, T_2=sheet.take("T_b", block))
