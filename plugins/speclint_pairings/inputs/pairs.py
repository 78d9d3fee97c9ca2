"""The pairs that meet in a design, found from the links its specs state."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from speclint import Sheet
from speclint.specs import NOT_STATED, Component, NotStated, PistonRing, PoppetValve, Stated, ValveSpindle
from speclint_pairings.formulae.tables import surface_class


class Surface(Struct, frozen=True):
    """One of two surfaces in contact: its name, its class, the component that carries it."""

    called: str
    counts_as: str
    of: Component


class Pair(Struct, frozen=True):
    """Two surfaces, and how they meet: one slides on the other or strikes it."""

    contact: str
    one: Surface
    other: Surface


def pairs_of(component: Component, sheet: Sheet) -> Iterator[Pair]:
    """The pairs in which a component is the moving part."""
    if isinstance(component, PistonRing):
        yield Pair("slides", surface_of(component, sheet), bore_of(component, sheet))
    elif isinstance(component, ValveSpindle):
        yield Pair("slides", surface_of(component, sheet), guide_of(component, sheet))
    elif isinstance(component, PoppetValve):
        for seat in _seats_of(component, sheet):
            yield Pair("strikes", surface_of(component, sheet), surface_of(seat, sheet))


def bore_of(ring: PistonRing, sheet: Sheet) -> Surface:
    """What a ring runs on: the liner, or the block's own bore where there is none."""
    if sheet.is_stated("bears on", ring.bears_on):
        block = sheet.follow(ring.bears_on)
        return surface_of(block, sheet, f"the bore of {block.id} itself")
    return surface_of(sheet.follow(ring.runs_in), sheet)


def guide_of(spindle: ValveSpindle, sheet: Sheet) -> Surface:
    """The guide of a spindle."""
    return named_surface(f"the guide of {spindle.id}", spindle, spindle.guide_material, sheet)


def named_surface(
    called: str,
    of: Component,
    material: Stated[str] | NotStated,
    sheet: Sheet,
    *,
    treated: Stated[Any] | NotStated = NOT_STATED,
) -> Surface:
    """A surface of a piece that has no spec of its own: a guide, a bush, a bearing."""
    metal, treatment = sheet.material_named(called, material), ""
    if sheet.is_stated(f"surface of {called}", treated):
        treatment = str(sheet.read(f"surface of {called}", treated))
    return Surface(called, surface_class(metal, treatment), of)


def _seats_of(valve: PoppetValve, sheet: Sheet) -> Iterator[Component]:
    beats = [valve.upper_beat]
    if sheet.count("n", valve.beats) > 1:
        beats.append(valve.lower_beat)
    return (sheet.follow(beat.seat) for beat in beats)


def surface_of(component: Component, sheet: Sheet, called: str = "") -> Surface:
    """The surface of a component, of its own metal and treatment."""
    material, treatment = sheet.material_of(component), ""
    if sheet.is_stated(f"surface of {component.id}", component.surface):
        treatment = str(sheet.read(f"surface of {component.id}", component.surface))
    return Surface(called or component.id, surface_class(material, treatment), component)
