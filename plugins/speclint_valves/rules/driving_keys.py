"""The key by which a shaft is turned, and those by which it turns the arms of a rocker."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.facts import CRACKED, torque_of_arm, torque_of_shaft
from speclint.specs import LoadCase, Rocker, Shaft
from speclint_valves.inputs.driving_keys import KEY_LIMITS, DrivingKey, OtherArm
from speclint_valves.inputs.loads import greatest_valve_load
from speclint_valves.sources import ISO_773, ISO_3912

_LEAVES_OUT = (
    "splines, press fits and flanges, about which a query asks; what holds the part along the shaft, its hub and its "
    "wall beside the keyway; fit of the key on its sides, rounding of its edges; a seat thinner or thicker than the "
    "shaft, and keyways of another size than it states"
)


@rule(
    "shaft.drive-key",
    edition=2,
    title="A key of a standard section in a keyway of the shaft holds what turns it, half its height in the shaft, "
    "with 0.1 to 1.2 mm of room over it, and at most 60 MPa of shear and 100 MPa of pressure",
    on=Shaft,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_773, ISO_3912, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="all the torque of a shaft passes through this one key: when it goes, every valve stays where it is",
    leaves_out=_LEAVES_OUT,
    against=(),
    limits=[*KEY_LIMITS, CRACKED],
)
def drive_key(shaft: Shaft, sheet: Sheet) -> Judgement:
    """2 T/(d b L) and 2 T/(d h L), t_1 ≥ h/2, t_1 + t_2 − h within two limits, and a ± L/2 in a keyway.

    The torque is that of the cams where they need more than is stated. The key bears on the least of its sides: in the
    keyway of shaft or hub, or as it stands out of the shaft. A query where a stated h is none of the standard. What is
    held otherwise has no key, and what is forged on has no keyway beneath it.
    """
    if not sheet.is_stated("what turns it", shaft.drive.by):
        raise sheet.not_applicable(
            "nothing is said to turn it (shaft.bends-under-its-cams asks for it of a camshaft)"
        )
    key = DrivingKey(shaft.drive.key, shaft, shaft.drive.at, "the drive")
    if (wrong := key.held_without(sheet.read("held by", shaft.drive.held), sheet)) is not None:
        return wrong
    return key.judged(torque_of_shaft(shaft, sheet), sheet)


@rule(
    "rocker.arm-keys",
    edition=2,
    title="A key of a standard section in its turning shaft holds each arm of a rocker, half its height in the shaft, "
    "with 0.1 to 1.2 mm of room over it, and at most 60 MPa of shear and 100 MPa of pressure",
    on=Rocker,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[ISO_773, ISO_3912, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an arm that works on its key opens its valve late and less, and drops it where the key goes",
    leaves_out=f"{_LEAVES_OUT}; on which side of the valve arm the tappet arm stands, where a keyway is cut on both; "
    "a keyway beneath a tappet arm that is forged on",
    against=(),
    limits=[*KEY_LIMITS, CRACKED],
)
def arm_keys(rocker: Rocker, case: LoadCase, sheet: Sheet) -> Judgement:
    """As of a drive, at the torque of the greatest load of the valve on its arm, which both arms take.

    The key of the tappet arm lies in a keyway on either side of the valve arm, as far off as that is stated.
    """
    if not sheet.is_stated("shaft of its arms", rocker.on_shaft):
        raise sheet.not_applicable("it names no shaft on which its arms stand apart (gear.rocker-twist)")
    shaft = sheet.follow(rocker.on_shaft)
    key = DrivingKey(rocker.arm_key, shaft, rocker.arm_at, "the valve arm")
    other = OtherArm(rocker.arm_key, shaft, rocker.arm_at, "the tappet arm", rocker.arm_distance)
    if (wrong := key.held_without(sheet.read("arms held by", rocker.arms_held), sheet)) is not None:
        return wrong
    F, _ = greatest_valve_load(sheet.follow(sheet.follow(rocker.works).moves), case, sheet)
    T = sheet.work("T", torque_of_arm, F=F, r=sheet.take("b_v", rocker.valve_arm))
    return key.judged(T, sheet, other.lies)


RULES = (arm_keys, drive_key)
