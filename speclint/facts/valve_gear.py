"""The valve gear of a cylinder: which cam works each of its valves in a notch, and the parts between the two."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from msgspec import Struct

from speclint.facts.cylinders import ends_of
from speclint.handbook.valve_events import End
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import (
    Cam,
    CylinderBlock,
    Link,
    NotStated,
    PoppetValve,
    Rocker,
    Tappet,
    ValveGear,
    ValveSpindle,
)

if TYPE_CHECKING:
    from speclint.specs import CamSetting, CylinderEnd, Notch

Serves = Literal["inlet", "exhaust"]
#: What the valves of an end serve, and the ends themselves, as the handbook has them.
SERVES: tuple[Serves, ...] = ("inlet", "exhaust")
SIDES: tuple[End, ...] = (End.FRONT, End.BACK)


class ValvesTrain(Struct, frozen=True):
    """The parts from a cam to its valve; ``rocker`` is None where the tappet drives the spindle itself."""

    cam: Cam
    tappet: Tappet
    rocker: Rocker | None
    spindle: ValveSpindle
    valve: PoppetValve


@dataclass(frozen=True, slots=True)
class SetCam:
    """A cam as a notch brings it into work: for which valve of which end, from where, and whether read backwards.

    ``foot`` is that of the front where the back states none; ``named`` is the place where the notch names the cam.
    """

    notch: str
    serves: Serves
    side: End
    cam: Cam
    foot: Measure | NotStated
    backward: bool
    named: Link[Cam] | NotStated

    @property
    def mark(self) -> str:
        """What its symbols carry: i or e for what it serves, f or b for its end."""
        return self.serves[0] + self.side.value[0]


def bore_of_gear(gear: ValveGear, sheet: Sheet) -> tuple[CylinderBlock, str]:
    """The block of a gear, and the name of the bore that it serves: as it states, or the only one of the block."""
    block = sheet.follow(gear.in_block)
    if len(block.bores) == 1 and not sheet.is_stated("bore of the cylinder", gear.cylinder_bore):
        return block, next(iter(block.bores))
    return block, sheet.read("bore of the cylinder", gear.cylinder_bore)


def gears_of(block: CylinderBlock, sheet: Sheet) -> dict[str, ValveGear]:
    """The gears of a block, by the bores that they serve; of two for one bore the first."""
    found: dict[str, ValveGear] = {}
    for gear in sheet.belonging_to(block, ValveGear):
        if len(block.bores) == 1 or sheet.is_stated(f"bore of {gear.id}", gear.cylinder_bore):
            found.setdefault(bore_of_gear(gear, sheet)[1], gear)
    return found


def end_on(block: CylinderBlock, bore: str, side: End, sheet: Sheet) -> tuple[str, CylinderEnd]:
    """The end of a bore on one side, with its name.

    :raises NotAssessed: where the block states none there.
    """
    for name, end in ends_of(block, bore, sheet).items():
        stated = sheet.is_stated(f"side of end {name}", end.side)
        if stated and sheet.read(f"side of end {name}", end.side) == side.value:
            return name, end
    raise sheet.not_assessed(f"no end of bore {bore} of {block.id} is at the {side.value}", block.where)


def notch_of(gear: ValveGear, name: str, sheet: Sheet) -> Notch:
    """A notch by its name; :raises NotAssessed: where the gear has none of it."""
    if name not in gear.notches:
        raise sheet.not_assessed(f"{gear.id} has no notch {name!r}", gear.where)
    return gear.notches[name]


def direction_of(gear: ValveGear, name: str, sheet: Sheet) -> str:
    """The direction in which a notch runs the engine: forward, backward or mid."""
    return sheet.read(f"direction of notch {name}", notch_of(gear, name, sheet).direction)


def running_notches(gear: ValveGear, sheet: Sheet) -> tuple[str, ...]:
    """The names of the notches in which the engine runs, in the order of the spec; none ends the rule."""
    found = tuple(name for name in gear.notches if direction_of(gear, name, sheet) != "mid")
    if not found:
        raise sheet.not_assessed(f"{gear.id} states no notch in which the engine runs", gear.where)
    return found


def mid_notches(gear: ValveGear, sheet: Sheet) -> tuple[str, ...]:
    """The names of the notches in mid gear."""
    return tuple(name for name in gear.notches if direction_of(gear, name, sheet) == "mid")


def _settings(notch: Notch, serves: Serves) -> tuple[CamSetting, CamSetting]:
    if serves == "inlet":
        return notch.inlet_front, notch.inlet_back
    return notch.exhaust_front, notch.exhaust_back


def set_cam(gear: ValveGear, name: str, serves: Serves, side: End, sheet: Sheet) -> SetCam | None:
    """The cam that a notch brings into work for a valve; None where a notch in mid gear leaves the valve shut."""
    notch, direction = notch_of(gear, name, sheet), direction_of(gear, name, sheet)
    front, back = _settings(notch, serves)
    setting = front if side is End.FRONT else back
    if direction == "mid" and not sheet.is_stated(f"{serves} cam of notch {name}", setting.cam):
        return None
    own = side is End.FRONT or sheet.is_stated(f"foot of the {serves} cam", setting.foot)
    cam = sheet.follow(setting.cam)
    return SetCam(
        name, serves, side, cam, (setting if own else front).foot, direction == "backward", setting.cam
    )


def set_cams(gear: ValveGear, name: str, sheet: Sheet) -> Iterator[SetCam]:
    """Every cam that a notch brings into work."""
    for side in SIDES:
        for serves in SERVES:
            found = set_cam(gear, name, serves, side, sheet)
            if found is not None:
                yield found


def train_of_cam(cam: Cam, sheet: Sheet) -> ValvesTrain:
    """The parts from a cam to the valve that it lifts, along the links."""
    tappet = sheet.follow(cam.lifts)
    driven = sheet.follow(tappet.works)
    rocker = driven if isinstance(driven, Rocker) else None
    spindle = sheet.follow(driven.works) if isinstance(driven, Rocker) else driven
    return ValvesTrain(cam, tappet, rocker, spindle, sheet.follow(spindle.moves))
