"""A valve gear in a load case: every cam in its notch, worked once for a rule, and the events that it gives."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from speclint.equations import Radians, Ratio
from speclint.facts.hot_clearances import (
    WorkingClearances,
    cold_clearances,
    nominal_ratio,
    working_clearances,
)
from speclint.facts.rocker_delays import shaft_gives_way
from speclint.facts.valve_gear import (
    SERVES,
    SIDES,
    Serves,
    bore_of_gear,
    direction_of,
    running_notches,
    set_cam,
    train_of_cam,
)
from speclint.facts.valve_timing import (
    CamAtWork,
    DriveOfGear,
    cam_at_work,
    crank_of,
    drive_of,
    event_angle,
    share_at,
)
from speclint.handbook.valve_events import Crank, End
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, ValveGear

if TYPE_CHECKING:
    from speclint.specs import LoadCase


class GearAtWork:
    """The gear of one cylinder in a load case; what several notches and ends have alike is taken once.

    With ``cold`` every clearance is that of the cold engine, and no temperature is asked for.
    """

    def __init__(self, gear: ValveGear, case: LoadCase, sheet: Sheet, *, cold: bool = False) -> None:
        self.gear, self.case, self._sheet, self.cold = gear, case, sheet, cold
        self._cams: dict[tuple[str, Serves, End], CamAtWork | None] = {}
        self._clearances: dict[str, WorkingClearances] = {}

    @cached_property
    def place(self) -> tuple[CylinderBlock, str]:
        """The block, and the name of the bore that the gear serves."""
        return bore_of_gear(self.gear, self._sheet)

    @cached_property
    def crank(self) -> Crank:
        """Crank and connecting rod of the cylinder."""
        return crank_of(*self.place, self._sheet)

    @cached_property
    def drive(self) -> DriveOfGear:
        """Play of the drive and error of setting."""
        return drive_of(self.gear, self._sheet)

    @cached_property
    def running(self) -> tuple[str, ...]:
        """The notches in which the engine runs."""
        return running_notches(self.gear, self._sheet)

    def direction(self, notch: str) -> str:
        """forward, backward or mid."""
        return direction_of(self.gear, notch, self._sheet)

    def cam(self, notch: str, serves: Serves, side: End) -> CamAtWork | None:
        """The cam that a notch brings into work for a valve; None where mid gear leaves the valve shut."""
        key = notch, serves, side
        if key not in self._cams:
            whole = "cam at work", self.gear.id, self.case.where, self.cold, *key
            self._cams[key] = self._sheet.once(whole, lambda: self._cam(notch, serves, side))
        return self._cams[key]

    def _cam(self, notch: str, serves: Serves, side: End) -> CamAtWork | None:
        found = set_cam(self.gear, notch, serves, side, self._sheet)
        if found is None:
            return None
        train = train_of_cam(found.cam, self._sheet)
        known = self._clearances.get(train.tappet.id)
        if known is None:
            of_train = cold_clearances if self.cold else working_clearances
            known = of_train(train, self.case, found.mark, self._sheet)
            self._clearances[train.tappet.id] = known
        shaft = shaft_gives_way(
            train, nominal_ratio(train, found.mark, self._sheet), self.case, self._sheet, cold=self.cold
        )
        return cam_at_work(found, known, self._sheet, shaft)

    def cams(self, notch: str) -> Iterator[CamAtWork]:
        """Every cam that a notch brings into work."""
        for side in SIDES:
            for serves in SERVES:
                found = self.cam(notch, serves, side)
                if found is not None:
                    yield found

    def end(self, notch: str, side: End) -> EndAtWork:
        """One end in a notch that runs the engine: both its valves have cams."""
        inlet, exhaust = self.cam(notch, "inlet", side), self.cam(notch, "exhaust", side)
        assert inlet is not None  # as only mid gear leaves a valve without a cam
        assert exhaust is not None
        return EndAtWork(self, notch, side, inlet, exhaust)

    def ends(self) -> Iterator[EndAtWork]:
        """Both ends in every notch that runs the engine."""
        for notch in self.running:
            for side in SIDES:
                yield self.end(notch, side)

    def angle(self, cam: CamAtWork, *, opens: bool) -> Radians:
        """Crank angle at which a valve leaves its seat or regains it, every error of the gear a corner."""
        return event_angle(cam, self.drive, opens=opens, sheet=self._sheet)

    def share(self, cam: CamAtWork, *, opens: bool) -> Ratio:
        """Share of the stroke made when a valve leaves its seat or regains it; on the return that left."""
        event = "o" if opens else "s"
        angle = self.angle(cam, opens=opens)
        return share_at(angle, self.crank, cam.at.side, event + cam.mark, self._sheet)


@dataclass(frozen=True, slots=True)
class EndAtWork:
    """One end of a cylinder in a notch, with the cams of both its valves."""

    gear: GearAtWork
    notch: str
    side: End
    inlet: CamAtWork
    exhaust: CamAtWork

    @property
    def id(self) -> str:
        """What a report calls it."""
        return f"notch {self.notch}, {self.side.value}"
