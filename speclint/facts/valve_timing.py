"""When a valve leaves its seat and regains it, in a notch of its gear: by cam, foot, clearance, play and setting."""

from __future__ import annotations

from dataclasses import dataclass

from msgspec import Struct

from speclint.equations import FIRST_PRINCIPLES, Metres, Radians, Ratio, formula, require
from speclint.errors import OutOfRange
from speclint.facts.cam_motion import motion
from speclint.facts.engine import connecting_rod_of, stroke_of
from speclint.facts.hot_clearances import WorkingClearances, clearance_at_work, nominal_ratio
from speclint.facts.rocker_delays import STIFF, ShaftGivesWay, clearance_with_shaft, gives_way_as_it_opens
from speclint.facts.valve_gear import SetCam, ValvesTrain, train_of_cam
from speclint.handbook.cams import CamMotion, CamProfile, crank_radius, piston_travel
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import (
    Crank,
    End,
    ValveTrain,
    back_travel,
    ramp_opening_angle,
    reversed_cam,
    share_of_stroke,
)
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, NotStated, ValveGear


@formula("φ_s = φ_f + β − γ δ/h_r", cites=[FIRST_PRINCIPLES])
def ramp_shutting_angle(φ_f: Radians, β: Radians, γ: Radians, δ: Metres, h_r: Metres) -> Radians:
    """Crank angle at which a valve is back on its seat while its tappet is on the cam's closing ramp.

    φ_s = φ_f + β − γ δ/h_r

    ``φ_f`` crank angle at which the follower meets the foot of the opening ramp, ``β`` angle from there to the foot of
    the closing one [rad]; ``γ`` angle and ``h_r`` height of the ramp [rad, m], above 0; ``δ`` clearance at the tappet
    as it works [m], 0 to h_r. Returns [rad]. Raises OutOfRange outside.

    Hand working: foot −10.5°, 87.5° long, ramp of 1.1 mm over 10°, 0.5 mm: −10.5 + 87.5 − 10 × 0.5/1.1 = 72.4545°.

    >>> import math
    >>> at = {"φ_f": math.radians(-10.5), "β": math.radians(87.5), "γ": math.radians(10)}
    >>> round(math.degrees(ramp_shutting_angle(**at, δ=0.5e-3, h_r=1.1e-3)), 4)
    72.4545
    """
    require(γ > 0, "the angle of a ramp must be above 0")
    require(h_r > 0, "the height of a ramp must be above 0")
    require(0 <= δ <= h_r, f"clearance {δ * 1e3:.4g} mm lies outside 0 to the ramp's {h_r * 1e3:.4g} mm")
    return φ_f + β - γ * δ / h_r


@formula("φ = φ_0 + e + a", cites=[FIRST_PRINCIPLES])
def angle_as_set(φ_0: Radians, e: Radians, a: Radians) -> Radians:
    """Crank angle of an event on the engine.

    φ = φ_0 + e + a

    ``φ_0`` angle by the drawing, ``e`` error of the setting, ``a`` by how much the drive lags [rad]. Returns [rad].

    >>> round(angle_as_set(φ_0=1.2, e=-0.01, a=0.02), 6)
    1.21
    """
    return φ_0 + e + a


def error_of_setting(what: str, most: float) -> Reading:
    """How far a cam may be set from its drawing, as crank angle, either way [rad].

    >>> error_of_setting("the inlet", 0.01).low
    -0.01
    """
    return Reading(f"error of setting of {what}", 0.0, -most, most, "rad", FIRST_PRINCIPLES)


def lag_of_drive(most: float) -> Reading:
    """By how much the cams may lag behind the crank, as crank angle [rad].

    >>> lag_of_drive(0.01).low
    0.0
    """
    return Reading("lag of the cams by the play of their drive", 0.0, 0.0, most, "rad", FIRST_PRINCIPLES)


def angle_by_table(cam: CamMotion, foot: float, hot: float, low: float, high: float, opens: bool) -> Reading:
    """Crank angle of an event on a cam of which only a table of lifts is known [rad]: the root of its curve."""

    def at(clearance: float) -> float:
        train = ValveTrain(cam, foot, clearance)
        return train.opening if opens else train.closing

    ends = sorted((at(low), at(high)))
    says = f"crank angle at which the lift of the table {'passes' if opens else 'regains'} the clearance"
    return Reading(says, at(hot), ends[0], ends[1], "rad", FIRST_PRINCIPLES)


@dataclass(frozen=True)
class CamAtWork:
    """A cam in its notch with its train: its motion in the direction of running, and what its foot and clearance are.

    ``ramp`` is angle and height of its ramps [rad, m], None for a table of lifts; ``shaft`` what the shaft of its
    rocker gives way.
    """

    at: SetCam
    train: ValvesTrain
    cam: CamMotion
    foot: Radians
    ratio: Ratio
    ramp: tuple[Radians, Metres] | None
    clearances: WorkingClearances
    shaft: ShaftGivesWay = STIFF

    @property
    def mark(self) -> str:
        """What its symbols carry."""
        return self.at.mark

    def with_clearance(self, clearance: Metres) -> ValveTrain:
        """The train of the handbook with one clearance at its tappet, play and setting left out.

        The springs wind the shaft of its rocker up for as long as the valve is off its seat.
        """
        return ValveTrain(self.cam, self.foot, clearance + self.shaft.shuts, self.ratio)


#: Symbols of a cam that mean something else where events are worked: δ is the clearance there.
_SYMBOLS = {"δ": "β_0"}


def cam_at_work(
    at: SetCam, clearances: WorkingClearances, sheet: Sheet, shaft: ShaftGivesWay = STIFF
) -> CamAtWork:
    """A cam as a notch brings it into work, sizes as the drawing aims at them."""
    mark, cam = at.mark, at.cam

    def take(symbol: str, value: Measure | NotStated) -> float:
        return sheet.take_nominal(f"{_SYMBOLS.get(symbol, symbol)}_{mark}", value)

    train = train_of_cam(cam, sheet)
    plain = motion(cam, sheet, take).cam
    ramp = plain.opening.ramp if isinstance(plain, CamProfile) else None
    return CamAtWork(
        at=at,
        train=train,
        cam=reversed_cam(plain) if at.backward else plain,
        foot=take("φ_f", at.foot),
        ratio=nominal_ratio(train, mark, sheet),
        ramp=(ramp.angle, ramp.height) if ramp is not None else None,
        clearances=clearances,
        shaft=shaft,
    )


class DriveOfGear(Struct, frozen=True):
    """What a gear says of the error of its cams: lost motion of the drive and error of setting, crank angles [rad]."""

    play: Radians
    setting: Radians


def drive_of(gear: ValveGear, sheet: Sheet) -> DriveOfGear:
    """The errors of a gear's cams at their greatest; a gear that has none says so."""
    ends = [
        sheet.take_limits(symbol, value)[1]
        for symbol, value in (("a_d", gear.drive_play), ("e_d", gear.setting))
    ]
    return DriveOfGear(*ends)


def angle_at_clearance(cam: CamAtWork, δ: Metres, symbol: str, *, opens: bool, sheet: Sheet) -> Radians:
    """Crank angle of an event by the drawing with one clearance at the tappet; play and setting left out."""
    if cam.ramp is None:
        at = {"hot": δ, "low": δ, "high": δ, "opens": opens}
        return sheet.look_up(symbol, angle_by_table, of=cam.at.cam, cam=cam.cam, foot=cam.foot, **at)
    (γ, h_r), φ_f = cam.ramp, cam.foot
    if opens:
        return sheet.work(symbol, ramp_opening_angle, φ_f=φ_f, γ=γ, δ=δ, h_r=h_r)
    return sheet.work(symbol, ramp_shutting_angle, φ_f=φ_f, β=cam.cam.duration, γ=γ, δ=δ, h_r=h_r)


def event_angle(cam: CamAtWork, drive: DriveOfGear, *, opens: bool, sheet: Sheet) -> Radians:
    """Crank angle at which a valve leaves its seat, or regains it; clearance, setting and lag each a corner."""
    event = "o" if opens else "s"
    by_drawing = _by_ramp if cam.ramp is not None else _by_table
    angle = by_drawing(cam, opens, event, sheet)
    what = f"{cam.at.serves} {cam.at.side.value}"
    e = sheet.look_up(f"e_{cam.mark}", error_of_setting, of=cam.at.cam, what=what, most=drive.setting)
    a = sheet.look_up("a", lag_of_drive, most=drive.play)
    return sheet.work(f"φ_{event}{cam.mark}", angle_as_set, φ_0=angle, e=e, a=a)


def _by_ramp(cam: CamAtWork, opens: bool, event: str, sheet: Sheet) -> Radians:
    c, what = cam.clearances, f"{cam.at.serves} {cam.at.side.value}"
    band = {"hot": c.hot, "low": c.low, "high": c.high}
    δ = sheet.look_up(f"δ_{cam.mark}", clearance_at_work, of=cam.train.tappet, what=what, **band)
    if cam.shaft != STIFF:
        δ = sheet.work(f"δ_t{cam.mark}", clearance_with_shaft, δ=δ, δ_s=_given_way(cam, opens, sheet))
    return angle_at_clearance(cam, δ, f"φ_{event}0{cam.mark}", opens=opens, sheet=sheet)


def _given_way(cam: CamAtWork, opens: bool, sheet: Sheet) -> Metres:
    """What the shaft of the rocker gives way at an event: as the valve opens, with steam or without it."""
    if not opens:
        return cam.shaft.shuts
    what = f"{cam.at.serves} {cam.at.side.value}"
    given = {"held": cam.shaft.held, "free": cam.shaft.free}
    return sheet.look_up(f"δ_s{cam.mark}", gives_way_as_it_opens, of=cam.train.rocker, what=what, **given)


def _by_table(cam: CamAtWork, opens: bool, event: str, sheet: Sheet) -> Radians:
    c, least, most = cam.clearances, cam.shaft.shuts, cam.shaft.shuts
    if opens:
        least, most = cam.shaft.free, cam.shaft.held
    at = {"cam": cam.cam, "foot": cam.foot, "opens": opens}
    at |= {"hot": c.hot + most, "low": c.low + least, "high": c.high + most}
    return sheet.look_up(f"φ_{event}0{cam.mark}", angle_by_table, of=cam.train.tappet, **at)


def crank_of(block: CylinderBlock, bore: str, sheet: Sheet) -> Crank:
    """The crank of a bore: its radius, half the stroke, and its connecting rod, as they are drawn."""
    stroke = sheet.take_nominal("S", stroke_of(block, sheet, bore))
    rod = sheet.take_nominal("l", connecting_rod_of(block, sheet, bore))
    try:
        return Crank(sheet.work("r", crank_radius, S=stroke), rod)
    except OutOfRange as problem:
        raise sheet.not_covered(str(problem)) from problem


def share_at(angle: Radians, crank: Crank, side: End, symbol: str, sheet: Sheet) -> Ratio:
    """Share of the stroke that the piston has made at a crank angle of an end; on its return the share left."""
    r, l = crank.radius, crank.rod  # noqa: E741 - the symbol of the trade
    if side is End.FRONT:
        s = sheet.work(f"s_{symbol}", piston_travel, r=r, l=l, θ=angle)
    else:
        s = sheet.work(f"s_{symbol}", back_travel, r=r, l=l, φ=angle)
    return sheet.work(f"x_{symbol}", share_of_stroke, s=s, r=r)
