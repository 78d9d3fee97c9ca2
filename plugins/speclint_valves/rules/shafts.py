"""The torque of a camshaft, by the cams that turn on it, and the key between them."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import FIRST_PRINCIPLES, Grade, Pair, Rule, Sheet, agreement
from speclint.facts import CRACKED, cams_on, torques_needed
from speclint.specs import LoadCase, Shaft


def _torques(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The torque of the shaft, at its least, against the greatest of its cams in a turn, in each notch."""
    if not (cams_on(shaft, sheet) and sheet.is_stated("torque", shaft.torque)):
        return
    for notch, needed in torques_needed(shaft, case, sheet):
        yield Pair(shaft.torque, needed, "at least", name=f"notch {notch}" if notch else "")


def _keyways(shaft: Shaft, sheet: Sheet) -> Iterator[Pair]:
    """The keyway of the shaft against that of each cam on it: one key sits in both."""
    for cam in cams_on(shaft, sheet):
        if sheet.is_stated(f"keyway of {cam.id}", cam.keyway_width):
            yield Pair(shaft.keyway_width, cam.keyway_width, name=cam.id)


turns_its_cams: Rule = agreement(
    "shaft.turns-its-cams",
    edition=3,
    title="The torque stated for a camshaft is at least that of its cams: together over a turn in each notch of their "
    "valve gear, or where all state their place on it, else each at its greatest",
    on=Shaft,
    pairs=_torques,
    within="",
    cases=("starting", "running"),
    limits=[CRACKED],
    cites=[FIRST_PRINCIPLES],
    grade=Grade.NONCONFORMITY,
    why="a shaft judged for less torque than its cams need twists, and opens its valves late",
    leaves_out="limits of sizes, springs and pressures, which are taken as the drawings aim at them; the blow as the "
    "clearance is taken up; friction of followers and bearings",
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

RULES = (one_key, turns_its_cams)
