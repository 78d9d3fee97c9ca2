"""The torque of a camshaft, by the cams that turn on it, and the key between them."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Judgement,
    Limit,
    Pair,
    Rule,
    Sheet,
    agreement,
    rule,
)
from speclint.facts import CRACKED, cams_on, torques_needed
from speclint.specs import Cam, LoadCase, Shaft
from speclint_valves.formulae.keys import depth_for_width, depth_together


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
    title="The keyways of a camshaft and of each cam on it are together at least half as deep as their key is wide, "
    "whose width is that of the keyway in the cam",
    on=Shaft,
    grade=Grade.QUERY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a key that is as high as one of its size should be does not let the cam onto the shaft, and one planed down "
    "to go in shears",
    leaves_out="the height of the key itself, which nothing states: a low one, 0.36 to 0.45 of its width, is told too; "
    "clearance over it; a keyway of the shaft of another width (shaft.key-of-its-cams); cams that are forged on",
    against=(),
    limits=[
        Limit(
            "height",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "least height over width of a key that is not a low one",
        )
    ],
)
def key_deep_in_both(shaft: Shaft, sheet: Sheet) -> Judgement:
    """The depth of both keyways together against a share of the width of the key, cam by cam."""
    keyed = _keyed(shaft, sheet)
    if not keyed:
        raise sheet.not_applicable("no cam with a keyway turns on it")
    t_1 = sheet.take("t_1", shaft.keyway_depth)

    def judge(cam: Cam) -> Judgement:
        t = sheet.work("t", depth_together, t_1=t_1, t_2=sheet.take("t_2", cam.keyway_depth))
        b = sheet.take("b", cam.keyway_width)
        least = sheet.work("t_n", depth_for_width, k=sheet.limit("height", "k"), b=b)
        return sheet.at_least(t, least).else_says(
            "keyways of shaft and {item} are together {found} deep, a key of their width wants {limit}"
        )

    return sheet.each([(cam.id, cam) for cam in keyed], lambda item: judge(item[1]))


RULES = (key_deep_in_both, one_key, turns_its_cams)
