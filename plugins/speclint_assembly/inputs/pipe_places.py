"""How much the place of a pipe and the pipe with its seals differ in length, and what its joint gives of that."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Judgement, Limit, Sheet
from speclint.equations import Metres
from speclint.facts import growth_of_pipe, movement_in_service
from speclint.handbook.steam import movement_to_take_up
from speclint.specs import BoltedJoint, LensJoint, PipeFlange, SteamPipe
from speclint_assembly.formulae.sizes import beyond_place, beyond_seals, filled_together, left_of_joint

NOT_DRAWN = Limit(
    "not drawn",
    "3 mm",
    "length",
    COMMON_PRACTICE,
    "thickness counted for the gasket at an end of a pipe whose joint is not drawn",
    "not negative",
)
DRAWN_TOGETHER = Limit(
    "drawn together",
    "1 mm",
    "length",
    COMMON_PRACTICE,
    "what bolts may draw the faces of a pipe together, or the pipe be sprung, where no sliding joint or bellows gives",
    "not negative",
)
_ENDS = 2


def reaches(pipe: SteamPipe, gap: Metres, length: Metres, sheet: Sheet) -> Judgement:
    """What is left between the faces beyond the seals, or lacks there, against what the joint of the pipe gives."""
    filled, seals = 0.0, list(_seals(pipe, sheet))
    undrawn = max(0, _ENDS - len(seals)) * [sheet.limit(NOT_DRAWN.name, "t_n")]
    for thickness in (*seals, *undrawn):
        filled = sheet.work("f", filled_together, f_0=filled, t=thickness)
    left = sheet.work("e", beyond_seals, G=gap, L=length, f=filled)
    given = _given(pipe, sheet)
    if left >= 0:
        return sheet.at_most(left, given).else_says(
            "too short for its place: {found} are left between the faces beyond its seals, {limit} at most"
        )
    return sheet.at_most(sheet.work("u", beyond_place, e=left), given).else_says(
        "too long for its place: with its seals {found} longer than the gap of the faces, {limit} at most"
    )


def _seals(pipe: SteamPipe, sheet: Sheet) -> Iterator[Metres]:
    """The thickness of each lens ring of the pipe and of what seals each joint that holds it or its flanges."""
    for lens in sheet.belonging_to(pipe, LensJoint):
        yield sheet.take(f"t of {lens.id}", lens.thickness)
    held = (pipe, *sheet.belonging_to(pipe, PipeFlange))
    joints = {joint.id: joint for part in held for joint in sheet.belonging_to(part, BoltedJoint)}
    for joint in joints.values():
        seal = sheet.said(f"seal of {joint.id}", joint.seal)
        if seal == "gasket":
            yield sheet.take(f"t of {joint.id}", joint.gasket.thickness)
        elif seal == "ground face":
            yield 0.0


def _given(pipe: SteamPipe, sheet: Sheet) -> Metres:
    """What a sliding joint or bellows gives either way beyond what the hot pipe takes of it; else what bolts draw."""
    by = sheet.said("taken up by", pipe.takes_up_by)
    if by != "sliding joint" and by != "bellows":
        return sheet.limit(DRAWN_TOGETHER.name, "e_a")
    growth = growth_of_pipe(pipe, sheet.take("T", pipe.design_temperature), sheet)
    moves = sheet.work("Y", movement_to_take_up, Δ=growth, s=movement_in_service(pipe, sheet))
    return sheet.work("e_a", left_of_joint, Y_j=sheet.take("Y_j", pipe.joint_movement), Y=moves)
