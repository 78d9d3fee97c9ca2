"""The pairs that meet in a design, found from the links its specs state."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from speclint import Sheet
from speclint.specs import Component, PistonRing, PoppetValve, ValveSpindle
from speclint_pairings.tables import surface_class


@dataclass(frozen=True, slots=True)
class Surface:
    """One of two surfaces that meet: what it is called, what it counts as, the component that carries it."""

    called: str
    counts_as: str
    of: Component


@dataclass(frozen=True, slots=True)
class Pair:
    """Two surfaces, and how they meet: one slides on the other or strikes it."""

    contact: str
    one: Surface
    other: Surface


def pairs_of(component: Component, sheet: Sheet) -> Iterator[Pair]:
    """The pairs in which a component is the moving part."""
    if isinstance(component, PistonRing):
        yield Pair("slides", _surface(component, sheet), _bore_of(component, sheet))
    elif isinstance(component, ValveSpindle):
        yield Pair("slides", _surface(component, sheet), _guide_of(component, sheet))
    elif isinstance(component, PoppetValve):
        for seat in _seats_of(component, sheet):
            yield Pair("strikes", _surface(component, sheet), _surface(seat, sheet))


def _bore_of(ring: PistonRing, sheet: Sheet) -> Surface:
    """The liner, or the block's own bore where there is none."""
    if sheet.is_stated("bears on", ring.bears_on):
        block = sheet.follow(ring.bears_on)
        return _surface(block, sheet, f"the bore of {block.id} itself")
    return _surface(sheet.follow(ring.runs_in), sheet)


def _guide_of(spindle: ValveSpindle, sheet: Sheet) -> Surface:
    material = sheet.material_named(f"the guide of {spindle.id}", spindle.guide_material)
    return Surface(f"the guide of {spindle.id}", surface_class(material), spindle)


def _seats_of(valve: PoppetValve, sheet: Sheet) -> Iterator[Component]:
    beats = [valve.upper_beat]
    if sheet.count("n", valve.beats) > 1:
        beats.append(valve.lower_beat)
    return (sheet.follow(beat.seat) for beat in beats)


def _surface(component: Component, sheet: Sheet, called: str = "") -> Surface:
    material, treatment = sheet.material_of(component), ""
    if sheet.is_stated(f"surface of {component.id}", component.surface):
        treatment = str(sheet.read(f"surface of {component.id}", component.surface))
    return Surface(called or component.id, surface_class(material, treatment), component)
