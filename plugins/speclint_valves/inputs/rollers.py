"""How a roller follows its cam: on a line that may pass beside the axis, or on an arm of its own."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import Sheet
from speclint.equations import Metres, Radians, Ratio
from speclint.handbook.cams import Follower
from speclint.specs import Tappet
from speclint_valves.formulae.cam_shape import (
    height_of_roller,
    pressure_angle_of_roller,
    roller_over_offset_path,
)
from speclint_valves.formulae.rocking import angle_of_arm, pressure_angle_of_arm, roller_over_path_of_arm

#: Which way the angle of the cam counts at the pivot, by where its track runs under the roller.
_SENSE = {"towards the pivot": 1.0, "away from the pivot": -1.0}


def rocks(tappet: Tappet, sheet: Sheet) -> bool:
    """Whether a follower rocks on an arm of its own: it states the arm, or the pivot."""
    arm = tappet.rocks
    return sheet.is_stated("arm", arm.arm) or sheet.is_stated("pivot", arm.from_cam)


@dataclass(frozen=True)
class OnALine:
    """A roller that slides along a line beside the axis of its cam, or through it."""

    base: Metres
    radius: Metres
    offset: Metres

    def aslant(self, at: Follower) -> Radians:
        """The pressure angle at a place of the cam."""
        return pressure_angle_of_roller(s_prime=at.slope, e=self.offset, y=self._height(at))

    def bent(self, at: Follower) -> Ratio:
        """The radius of the roller over that of its path at a place of the cam."""
        return roller_over_offset_path(
            r=self.radius, y=self._height(at), s_prime=at.slope, κ=at.curvature, e=self.offset
        )

    def worked_angle(self, at: Follower, sheet: Sheet) -> Radians:
        """The pressure angle, written on the sheet."""
        y = self._worked_height(at, sheet)
        return sheet.work("α", pressure_angle_of_roller, s_prime=at.slope, e=self.offset, y=y)

    def worked_bend(self, at: Follower, sheet: Sheet) -> Ratio:
        """The radius of the roller over that of its path, written on the sheet."""
        y = self._worked_height(at, sheet)
        return sheet.work(
            "k",
            roller_over_offset_path,
            r=self.radius,
            y=y,
            s_prime=at.slope,
            κ=at.curvature,
            e=self.offset,
        )

    def _height(self, at: Follower) -> Metres:
        return height_of_roller(R_b=self.base, r=self.radius, e=self.offset, s=at.lift)

    def _worked_height(self, at: Follower, sheet: Sheet) -> Metres:
        return sheet.work("y", height_of_roller, R_b=self.base, r=self.radius, e=self.offset, s=at.lift)


@dataclass(frozen=True)
class OnAnArm:
    """A roller on an arm that turns about a pivot of its own; ``sense`` is that of the cam's angle at the pivot."""

    base: Metres
    radius: Metres
    arm: Metres
    distance: Metres
    sense: float

    def aslant(self, at: Follower) -> Radians:
        """The pressure angle at a place of the cam."""
        return pressure_angle_of_arm(ψ=angle_of_arm(**self._sizes(at)), s_prime=at.slope, **self._place())

    def bent(self, at: Follower) -> Ratio:
        """The radius of the roller over that of its path at a place of the cam."""
        return roller_over_path_of_arm(
            r=self.radius,
            ψ=angle_of_arm(**self._sizes(at)),
            s_prime=at.slope,
            κ=at.curvature,
            **self._place(),
        )

    def worked_angle(self, at: Follower, sheet: Sheet) -> Radians:
        """The pressure angle, written on the sheet."""
        ψ = sheet.work("ψ", angle_of_arm, **self._sizes(at))
        return sheet.work("α", pressure_angle_of_arm, ψ=ψ, s_prime=at.slope, **self._place())

    def worked_bend(self, at: Follower, sheet: Sheet) -> Ratio:
        """The radius of the roller over that of its path, written on the sheet."""
        ψ = sheet.work("ψ", angle_of_arm, **self._sizes(at))
        return sheet.work(
            "k",
            roller_over_path_of_arm,
            r=self.radius,
            ψ=ψ,
            s_prime=at.slope,
            κ=at.curvature,
            **self._place(),
        )

    def _place(self) -> dict[str, float]:
        return {"b": self.arm, "c": self.distance, "n": self.sense}

    def _sizes(self, at: Follower) -> dict[str, Metres]:
        return {"b": self.arm, "c": self.distance, "R_b": self.base, "r": self.radius, "s": at.lift}


def roller_of(tappet: Tappet, base: Metres, sheet: Sheet) -> OnALine | OnAnArm:
    """How the roller of a tappet follows a cam of a base circle."""
    if not rocks(tappet, sheet):
        radius = sheet.take("r", tappet.follower_radius)
        offset = sheet.take("e", tappet.offset) if sheet.is_stated("offset", tappet.offset) else 0.0
        return OnALine(base, radius, offset)
    if sheet.read("follower", tappet.follower) != "roller":
        raise sheet.not_covered("a foot that rocks is not covered: where it touches its cam is to be drawn")
    return OnAnArm(
        base,
        radius=sheet.take("r", tappet.follower_radius),
        arm=sheet.take("b", tappet.rocks.arm),
        distance=sheet.take("c", tappet.rocks.from_cam),
        sense=_SENSE[sheet.read("how the track runs", tappet.rocks.track_runs)],
    )
