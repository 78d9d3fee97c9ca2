"""A cam shaft is turned as its valve gear says: by the rods of the drive pins, at the arm on which they act."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import cams_on
from speclint.specs import Cam, DrivePin, Shaft, ValveGear

_BY_RODS = "cranks and rods"
_VALVES = ("inlet_front", "inlet_back", "exhaust_front", "exhaust_back")


def _driven(shaft: Shaft, sheet: Sheet) -> Iterator[Pair]:
    """The radius of a drive by rods against the nearest arm; what turns a shaft, where rods turn none of the gear."""
    gears = {gear.id: gear for cam in cams_on(shaft, sheet) for gear in sheet.belonging_to(cam, ValveGear)}
    pins = [(f"{name} of {gear.id}", pin) for gear in gears.values() for name, pin in gear.drive_pins.items()]
    if not pins or not sheet.is_stated("turned by", shaft.drive.by):
        return
    if sheet.read("turned by", shaft.drive.by) == _BY_RODS:
        yield from _at_an_arm(shaft, pins, sheet)
    elif not any(_is_by_rods(one, sheet) for gear in gears.values() for one in _shafts_of(gear, sheet)):
        rods = Worked(_BY_RODS, (pins[0][1].where,), f"the rods of the drive pins of {', '.join(gears)},")
        yield Pair(worked(sheet.read("turned by", shaft.drive.by), shaft.drive.by), rods, name="by")


def _at_an_arm(shaft: Shaft, pins: list[tuple[str, DrivePin]], sheet: Sheet) -> Iterator[Pair]:
    """The arm nearest to the radius: of several pins along the drive one acts on this shaft."""
    arms = {name: pin.arm for name, pin in pins if sheet.is_stated(f"arm at {name}", pin.arm)}
    if arms and sheet.is_stated("radius of the drive", shaft.drive.radius):
        r = sheet.take_nominal("r_n", shaft.drive.radius)
        nearest = min(arms, key=lambda name: abs(sheet.take_nominal(f"r of {name}", arms[name]) - r))
        yield Pair(shaft.drive.radius, arms[nearest], name="radius")


def _shafts_of(gear: ValveGear, sheet: Sheet) -> Iterator[Shaft]:
    """The shafts on which the cams of a gear turn."""
    cams: dict[str, Cam] = {}
    for name, notch in gear.notches.items():
        for valve in _VALVES:
            cam = getattr(notch, valve).cam
            if sheet.is_stated(f"cam of {valve} in {name}", cam):
                found = sheet.follow(cam)
                cams[found.id] = found
    for cam in cams.values():
        if sheet.is_stated(f"shaft of {cam.id}", cam.turns_on):
            yield sheet.follow(cam.turns_on)


def _is_by_rods(shaft: Shaft, sheet: Sheet) -> bool:
    return sheet.said(f"what turns {shaft.id}", shaft.drive.by) == _BY_RODS


driven_as_its_gear: Rule = agreement(
    "shaft.driven-as-its-gear",
    title="A cam shaft that rods turn is turned at the arm that a drive pin of its valve gear states, and rods turn "
    "one of the shafts of a gear with such pins",
    on=Shaft,
    pairs=_driven,
    within="0.1 mm",
    grade=Grade.NONCONFORMITY,
    why="the load of the drive, which bends a shaft and loads its bearings, is worked from what turns it, and at which "
    "radius",
    leaves_out="gears that state no drive pins, and arms of pins that act on another shaft of the gear",
)

RULES = (driven_as_its_gear,)
