"""The torque of a camshaft, by the cams that turn on it, and the key between them."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Judgement,
    Pair,
    Rule,
    Sheet,
    agreement,
    rule,
)
from speclint.facts import CRACKED, cams_on, torques_needed
from speclint.specs import Cam, LoadCase, Shaft
from speclint_valves.inputs.key_sections import section_of
from speclint_valves.inputs.keys import DEPTH_LIMITS, deep_in_shaft, height_of_cam_key, room_over_it
from speclint_valves.sources import ISO_773, ISO_3912


def _torques(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The torque of the shaft, at its least, against the greatest of its cams in a turn, in each notch."""
    if not (cams_on(shaft, sheet) and sheet.is_stated("torque", shaft.torque)):
        return
    for notch, needed in torques_needed(shaft, case, sheet):
        yield Pair(shaft.torque, needed, "at least", name=f"notch {notch}" if notch else "")


def _keyways(shaft: Shaft, sheet: Sheet) -> Iterator[Pair]:
    """The keyway of the shaft against that of each cam on it: one key sits in both."""
    for cam in _keyed(shaft, sheet):
        yield Pair(shaft.keyway_width, cam.keyway_width, name=cam.id)


def _keyed(shaft: Shaft, sheet: Sheet) -> list[Cam]:
    """The cams on a shaft that state a keyway."""
    return [cam for cam in cams_on(shaft, sheet) if sheet.is_stated(f"keyway of {cam.id}", cam.keyway_width)]


turns_its_cams: Rule = agreement(
    "shaft.turns-its-cams",
    edition=4,
    title="The torque stated for a camshaft is at least that of its cams, their blow as clearance is taken up with it: "
    "together in each notch of their gear, or where all state their place on it, else each alone",
    on=Shaft,
    pairs=_torques,
    within="",
    cases=("starting", "running"),
    limits=[CRACKED],
    cites=[FIRST_PRINCIPLES],
    grade=Grade.NONCONFORMITY,
    why="a shaft judged for less torque than its cams need twists, and opens its valves late",
    leaves_out="limits of sizes, springs and pressures, which are taken as the drawings aim at them; "
    "friction of followers and bearings",
)

one_key: Rule = agreement(
    "shaft.key-of-its-cams",
    title="The keyway of a camshaft has the nominal width of the keyways in the cams that it turns",
    on=Shaft,
    pairs=_keyways,
    grade=Grade.NONCONFORMITY,
    why="a key that is narrower than one of its two seats lets the cam turn on the shaft, and the valve opens late",
    leaves_out="depth, place and fit of the keyways; cams that are keyed elsewhere on a shaft of several keyways, or "
    "forged on",
)


@rule(
    "shaft.key-deep-in-both",
    edition=3,
    title="The key between a camshaft and each cam on it is as high as the standard has it for its width, lies at "
    "least half of that in the shaft, and both keyways leave 0.1 to 1.2 mm of room over it",
    on=Shaft,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_773, ISO_3912, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a key that is higher than its keyways are deep does not let the cam onto the shaft, and one that lies shallow "
    "tips in its seat and works loose",
    leaves_out="fit of the key on its sides; rounding of its edges and of the keyways; limits of a key whose height is "
    "not stated, which is asked about as that of a parallel key of its width; a keyway of the shaft of another width "
    "(shaft.key-of-its-cams); cams that are forged on",
    against=(),
    limits=DEPTH_LIMITS,
)
def key_deep_in_both(shaft: Shaft, sheet: Sheet) -> Judgement:
    """t_1 ≥ h/2, and t_1 + t_2 − h within two limits, cam by cam; a query where h is by the width alone.

    A query too where a stated h is none of the sections of the standard.
    """
    keyed = _keyed(shaft, sheet)
    if not keyed:
        raise sheet.not_applicable("no cam with a keyway turns on it")
    t_1 = sheet.take("t_1", shaft.keyway_depth)

    def judge(cam: Cam) -> Judgement:
        h, t_2 = height_of_cam_key(cam, sheet), sheet.take("t_2", cam.keyway_depth)
        judged = deep_in_shaft(h, t_1, cam.id, sheet), *room_over_it(h, t_1, t_2, cam.id, sheet)
        if sheet.is_stated("height of the key", cam.key_height):
            return sheet.worst(*judged, section_of(cam.keyway_width, cam.key_height, sheet))
        return sheet.worst(*(one.graded(Grade.QUERY) for one in judged))

    return sheet.each([(cam.id, cam) for cam in keyed], lambda item: judge(item[1]))


RULES = (key_deep_in_both, one_key, turns_its_cams)
