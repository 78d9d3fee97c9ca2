"""Records of the welds, and closed cavities that nobody can reach afterwards."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.facts import build_of, partitions_in
from speclint.specs import WeldedJoint, Weldment
from speclint_fabrication.formulae.tables import steel_group
from speclint_fabrication.inputs.plates import metal_of
from speclint_fabrication.inputs.welds import holds_pressure
from speclint_fabrication.sources import (
    EN_13445_3,
    EN_13445_4,
    ISO_5817,
    ISO_9606_1,
    ISO_15614_1,
    ISO_TR_15608,
    JOINT_FACTOR,
)

DEFERS = "the local code for pressure parts and a competent person decide"


@rule(
    "block.weld-record",
    title="Every pressure weld is full penetration of level B, has its procedure and welder stated and is examined as "
    "its joint factor requires, and every plate is of a known group of weldable steels",
    on=Weldment,
    grade=Grade.HOLD,
    cites=[
        ISO_15614_1.at("scope"),
        ISO_9606_1.at("scope"),
        ISO_5817.at("level B"),
        JOINT_FACTOR,
        ISO_TR_15608.at("Table 1"),
        COMMON_PRACTICE,
    ],
    why="A sound weld and a defective one can look alike: what a weld may carry rests on how it was made "
    "and examined.",
    leaves_out="whether the records are true, and whether the range of qualification covers the joint; "
    f"{DEFERS}",
    against=(),
    edition=5,
    limits=[
        Limit(
            "examined_for_full_factor",
            "100 %",
            "ratio",
            JOINT_FACTOR,
            "least extent of examination for a joint factor of 1",
        ),
        Limit(
            "examined_for_less",
            "10 %",
            "ratio",
            EN_13445_3.at("Table 5.6-1, testing group 3"),
            "least extent of examination for a joint factor above 0.7",
        ),
    ],
)
def weld_record(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Each pressure weld: penetration, procedure, welder, level B, and the extent of examination for its factor."""
    if not weldment.joints:
        raise sheet.not_assessed("no welded joint is stated", weldment.where)

    def judge(item: tuple[str, WeldedJoint]) -> Judgement:
        name, joint = item
        if not holds_pressure(name, joint, weldment, sheet):
            return sheet.states(True, "every weld on pressure is on record")
        wrong = [f"{name}: {fault}" for fault in _faults(name, joint, sheet)]
        return sheet.states(not wrong, "; ".join(wrong) or "every weld on pressure is on record")

    judged = sheet.each(weldment.joints.items(), judge)
    if judged.holds:
        for name, plate in weldment.plates.items():
            sheet.look_up(f"group of {name}", steel_group, metal=metal_of(name, plate, sheet))
    return judged


def _faults(name: str, joint: WeldedJoint, sheet: Sheet) -> list[str]:
    wrong = []
    if (weld := sheet.read(f"weld of {name}", joint.weld)) != "full penetration":
        wrong.append(f"{weld} weld under pressure, not full penetration")
    elif sheet.read(f"shape of {name}", joint.shape) == "lap":
        wrong.append("a lap joint under pressure, which no weld goes through")
    sheet.read(f"procedure of {name}", joint.procedure)
    sheet.read(f"welder of {name}", joint.welder)
    if (level := sheet.read(f"quality of {name}", joint.quality)) != "B":
        wrong.append(f"quality level {level}, not B")
    factor, examined = (
        sheet.take(f"z of {name}", joint.joint_factor),
        sheet.take(f"e of {name}", joint.examined),
    )
    if examined < (wanted := _extent(factor, sheet)):
        wrong.append(
            f"examined over {examined:.0%}, where a joint factor of {factor:g} requires {wanted:.0%}"
        )
    if factor > 1:
        wrong.append(f"a joint factor of {factor:g}, above 1")
    return wrong


def _extent(factor: float, sheet: Sheet) -> float:
    """Extent of examination that a joint factor requires; 0.7 requires none (EN 13445-3, Table 5.6-1)."""
    if factor > 0.85:
        return sheet.limit("examined_for_full_factor")
    return sheet.limit("examined_for_less") if factor > 0.7 else 0.0


@rule(
    "block.closed-cavities",
    title="The drawing was searched for closed cavities, with a report where it found none, and each cavity is vented "
    "during heat treatment and in service",
    on=Weldment,
    grade=Grade.HOLD,
    cites=[EN_13445_4.at("heat treatment"), COMMON_PRACTICE],
    why="Trapped air bursts a closed cavity in the furnace, and water that has leaked into one bursts it in "
    "service.",
    leaves_out=f"whether a vent stays clear of dirt and paint; {DEFERS}",
    against=("burst",),
    against_on={"cylinder-block": ("burst",)},
    reached_by="makes",
    edition=3,
)
def closed_cavities(weldment: Weldment, sheet: Sheet) -> Judgement:
    """The drawing was searched for closed cavities, and each is vented in the furnace and in service.

    A partition of two walls names the cavity between them.
    """
    if not sheet.read("sought", weldment.cavities_sought):
        return sheet.states(False, "the drawing was not searched for closed cavities")
    if not weldment.cavities:
        sheet.read("report of the search that found none", weldment.cavities_record)
    _ask_for_hollows(weldment, sheet)
    wrong = []
    for name, cavity in weldment.cavities.items():
        if not sheet.read(f"{name} vented for treatment", cavity.vented_for_treatment):
            wrong.append(f"{name} is closed in the furnace")
        if not sheet.read(f"{name} vented in service", cavity.vented_in_service):
            wrong.append(f"{name} is closed in service")
    return sheet.states(not wrong, "; ".join(wrong) or f"{len(weldment.cavities)} cavities, each vented")


def _ask_for_hollows(weldment: Weldment, sheet: Sheet) -> None:
    """The cavity between two walls with a gap between live and exhaust steam is listed, whatever the search found."""
    block = sheet.follow(weldment.makes)
    for partition in partitions_in(block, sheet):
        said = sheet.is_stated(f"build of {partition.id}", partition.build)
        two = said and sheet.read(f"build of {partition.id}", partition.build) == "two walls"
        if two or build_of(partition, sheet) == "two walls":
            sheet.entry(weldment.cavities, partition.cavity, f"cavities of {weldment.id}")


RULES: tuple[Rule, ...] = (weld_record, closed_cavities)
