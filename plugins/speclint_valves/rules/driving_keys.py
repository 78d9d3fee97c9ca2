"""The key by which a shaft is turned, and those by which it turns the arms of a rocker."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.facts import CRACKED, torque_of_arm, torque_of_shaft
from speclint.specs import LoadCase, Rocker, Shaft, ShaftKey
from speclint_valves.inputs.driving_keys import KEY_LIMITS, DrivingKey
from speclint_valves.inputs.loads import greatest_valve_load
from speclint_valves.sources import ISO_773

_LEAVES_OUT = (
    "splines, press fits and flanges, about which a query asks; what holds the part along the shaft, its hub and its "
    "wall beside the keyway; fit of the key on its sides, rounding of its edges; a seat thinner or thicker than the "
    "shaft, and keyways of another size than it states"
)


def _without(how: str, of: str, key: ShaftKey, sheet: Sheet) -> Judgement | None:
    """That no key is stated for what is held without one; None of what a key holds. Ends the rule where none is."""
    if how == "key":
        return None
    sizes = {"length": key.length, "height": key.height, "keyway": key.hub_depth}
    stated = {name: size for name, size in sizes.items() if sheet.is_stated(f"{name} of the key", size)}
    if stated:
        name, size = next(iter(stated.items()))
        says = f"{of} is said to be held by {how}, and a key is stated with its {name}"
        return sheet.states(False, says, where=size.where)
    if how == "forged on":
        raise sheet.not_applicable(f"{of} is of one piece with its shaft")
    raise sheet.not_covered(f"{of} is held by {how}, which no rule works: the torque it holds is to be shown")


@rule(
    "shaft.drive-key",
    edition=2,
    title="A key of a standard section in a keyway of the shaft holds what turns it, half its height in the shaft, "
    "with 0.1 to 1.2 mm of room over it, and at most 60 MPa of shear and 100 MPa of pressure",
    on=Shaft,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_773, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="all the torque of a shaft passes through this one key: when it goes, every valve stays where it is",
    leaves_out=_LEAVES_OUT,
    against=(),
    limits=[*KEY_LIMITS, CRACKED],
)
def drive_key(shaft: Shaft, sheet: Sheet) -> Judgement:
    """2 T/(d b L) and 2 T/(d h L), t_1 ≥ h/2, t_1 + t_2 − h within two limits, and a ± L/2 in a keyway.

    The torque is that of the cams where they need more than is stated. The key bears on the least of its sides: in the
    keyway of shaft or hub, or as it stands out of the shaft.
    """
    if not sheet.is_stated("what turns it", shaft.drive.by):
        raise sheet.not_applicable(
            "nothing is said to turn it (shaft.bends-under-its-cams asks for it of a camshaft)"
        )
    key, how = shaft.drive.key, sheet.read("held by", shaft.drive.held)
    if contradicted := _without(how, "what turns the shaft", key, sheet):
        return contradicted
    T = torque_of_shaft(shaft, sheet)
    return DrivingKey(key, shaft, shaft.drive.at, "the drive").judged(T, sheet)


@rule(
    "rocker.arm-keys",
    edition=2,
    title="A key of a standard section in its turning shaft holds each arm of a rocker, half its height in the shaft, "
    "with 0.1 to 1.2 mm of room over it, and at most 60 MPa of shear and 100 MPa of pressure",
    on=Rocker,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[ISO_773, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an arm that works on its key opens its valve late and less, and drops it where the key goes",
    leaves_out=f"{_LEAVES_OUT}; where the key of the tappet arm lies along the shaft",
    against=(),
    limits=[*KEY_LIMITS, CRACKED],
)
def arm_keys(rocker: Rocker, case: LoadCase, sheet: Sheet) -> Judgement:
    """As of a drive, at the torque of the greatest load of the valve on its arm, which both arms take."""
    if not sheet.is_stated("shaft of its arms", rocker.on_shaft):
        raise sheet.not_applicable("it names no shaft on which its arms stand apart (gear.rocker-twist)")
    how = sheet.read("arms held by", rocker.arms_held)
    if contradicted := _without(how, "an arm of the rocker", rocker.arm_key, sheet):
        return contradicted
    F, _ = greatest_valve_load(sheet.follow(sheet.follow(rocker.works).moves), case, sheet)
    T = sheet.work("T", torque_of_arm, F=F, r=sheet.take("b_v", rocker.valve_arm))
    shaft = sheet.follow(rocker.on_shaft)
    return DrivingKey(rocker.arm_key, shaft, rocker.arm_at, "the arm").judged(T, sheet)


RULES = (arm_keys, drive_key)
