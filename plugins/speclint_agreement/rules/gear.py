"""Cam, rocker, tappet, spindle, box and valve state one lift and one clearance."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import beyond_full_lift, clearance_by_lengths, greatest_lift, least_lift, tracks_of
from speclint.specs import Cam, PoppetValve, Rocker, Tappet


def _lifts(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """What the gear gives with the cold clearance at its tappet, and with none, against lift, stop and overtravel."""
    least, greatest = least_lift(valve, sheet, sheet.take), greatest_lift(valve, sheet, sheet.take)
    if least is not None and sheet.is_stated("lift", valve.lift):
        low, _ = sheet.take_limits("h", valve.lift)
        yield Pair(least, Worked(low, (valve.lift.where,)), "at least", name="lift")
    if greatest is None:
        return
    if sheet.is_stated("lift at the stop", valve.lift_stop):
        yield Pair(valve.lift_stop, greatest, "at least", name="lift_stop")
    aimed = greatest_lift(valve, sheet, sheet.take_nominal)
    if aimed is not None and sheet.is_stated("lift", valve.lift):
        o = sheet.work("o", beyond_full_lift, h_o=aimed.value, h=sheet.take_nominal("h", valve.lift))
        places = (*aimed.places, valve.lift.where)
        yield Pair(valve.overtravel, Worked(o, places), "at least", name="overtravel")


def _clearances(tappet: Tappet, sheet: Sheet) -> Iterator[Pair]:
    """The stated clearance against that which the lengths leave, unless a screw sets it."""
    if not sheet.is_stated("what the tappet works", tappet.works):
        return
    driven = sheet.follow(tappet.works)
    rocker = driven if isinstance(driven, Rocker) else None
    spindle = sheet.follow(driven.works) if isinstance(driven, Rocker) else driven
    by_screw = sheet.is_stated("accuracy of setting", tappet.clearance_setting)
    if by_screw and not sheet.is_stated("ground off the cap", spindle.cap_ground_off):
        return
    left = clearance_by_lengths(tappet, spindle, rocker, sheet, sheet.take_nominal)
    if left is not None:
        yield Pair(tappet.clearance, left)


def _widths(cam: Cam, sheet: Sheet) -> Iterator[Pair]:
    """The width of the cam's track against that of the tappet's face."""
    if not sheet.is_stated("tappet", cam.lifts):
        return
    tappet = sheet.follow(cam.lifts)
    if sheet.is_stated("width of the track", cam.width) and sheet.is_stated("face", tappet.face_width):
        yield Pair(cam.width, tappet.face_width, "at most")


def _base_circles(cam: Cam, sheet: Sheet) -> Iterator[Pair]:
    """The base circle of a track against that of the first other track that lifts the same tappet."""
    if not sheet.is_stated("tappet", cam.lifts):
        return
    tracks = tracks_of(sheet.follow(cam.lifts), sheet)
    other = next((one for one in tracks if one.id != cam.id), None)
    if other is not None:
        yield Pair(cam.base_radius, other.base_radius, name=other.id)


cam_gives_lift: Rule = agreement(
    "valve.cam-gives-lift",
    title="Cam, clearance and rocker give a valve its full lift, and at the most its lift at the stop and the "
    "overtravel that is stated",
    on=PoppetValve,
    pairs=_lifts,
    within="",
    grade=Grade.HOLD,
    why="too little lift throttles the steam; too much drives the valve onto its stop, cage or piston",
    leaves_out="heat and wear, which change the clearance (tappet.clearance-hot), and bending of the gear",
    against=("foul",),
)

lengths_close: Rule = agreement(
    "tappet.lengths-close",
    title="The lengths of block, cam box and spindle leave the clearance of the tappet, unless a screw sets it",
    on=Tappet,
    pairs=_clearances,
    within="0.01 mm",
    grade=Grade.HOLD,
    why="the clearance on the engine is whatever the lengths leave, and a valve without clearance never shuts",
    leaves_out="the reach of a setting screw, which no spec states",
)

under_its_tappet: Rule = agreement(
    "cam.under-its-tappet",
    title="The face of the tappet is at least as wide as the track of its cam",
    on=Cam,
    pairs=_widths,
    within="",
    grade=Grade.NONCONFORMITY,
    why="the edge of a narrower face cuts into the track, and the contact is less wide than the cam",
    leaves_out="play of the shaft and of the tappet along it",
    against=("wear",),
    against_on={"tappet": ("wear",)},
)

one_base_circle: Rule = agreement(
    "cam.one-base-circle",
    title="All tracks of a cam that lift one tappet have one base circle",
    on=Cam,
    pairs=_base_circles,
    within="0.01 mm",
    grade=Grade.HOLD,
    why="the clearance is set on one track: on a larger base circle the valve never shuts, on a smaller one it is "
    "struck open",
    leaves_out="tracks that are worn or reground by unlike depths",
)

RULES = (cam_gives_lift, lengths_close, one_base_circle, under_its_tappet)
