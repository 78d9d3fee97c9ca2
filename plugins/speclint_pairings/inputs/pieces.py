"""The pieces that a component names beside its own metal: bearing, slipper, bush, pin, guide, nut."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Kelvins
from speclint.handbook.heat import hotter
from speclint.specs import (
    BoltedJoint,
    Component,
    Crosshead,
    FrameFastening,
    NotStated,
    Pin,
    Rocker,
    Stated,
    ValveSpindle,
)

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
    if isinstance(component, Crosshead):
        yield Piece(f"the slipper of {of}", component.slipper_material)
    elif isinstance(component, Pin):
        yield Piece(f"the bearing of {of}", component.bearing_material)
    elif isinstance(component, Rocker):
        yield Piece(f"the bush of {of}", component.bush_material)
        yield Piece(f"the pin of {of}", component.pin_material, carries_load=True)
    elif isinstance(component, ValveSpindle):
        yield Piece(f"the guide of {of}", component.guide_material)
    elif isinstance(component, BoltedJoint | FrameFastening):
        yield Piece(f"the nut of {of}", component.nut.material, "bolting", carries_load=True)


def temperature_of_pieces(component: Component, case: LoadCase, sheet: Sheet) -> Kelvins:
    """Metal temperature of a component's pieces: its own, and for a guide that of the block, if that is hotter."""
    own = sheet.take("T", case.temperature_of(component))
    if not isinstance(component, ValveSpindle):
        return own
    block = case.temperature_named("cylinder-block")
    if sheet.is_stated("moves", component.moves):
        valve = sheet.follow(component.moves)
        if sheet.is_stated("seat", valve.upper_beat.seat):
            seat = sheet.follow(valve.upper_beat.seat)
            if sheet.is_stated("pressed into", seat.pressed_into):
                block = case.temperature_of(sheet.follow(seat.pressed_into))
    if not sheet.is_stated("temperature of the block", block):
        return own
    return sheet.work("T_g", hotter, T_1=own, T_2=sheet.take("T_b", block))
