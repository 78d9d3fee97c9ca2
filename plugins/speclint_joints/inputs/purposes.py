"""What a joint is for: by the part that it holds, else as it says."""

from __future__ import annotations

from speclint import Sheet
from speclint.facts import pressure_by_part_held
from speclint.specs import BoltedJoint


def steam_beside(joint: BoltedJoint, sheet: Sheet) -> bool:
    """Whether steam is found beside a joint: by the part that it holds, a stated pressure, or a seal of its face."""
    if pressure_by_part_held(joint, sheet) is not None:
        return True
    return sheet.is_stated("pressure", joint.pressure) or sheet.is_stated("seal", joint.seal)


def is_steam_tight(joint: BoltedJoint, sheet: Sheet) -> bool:
    """Whether a joint has to hold steam: it has steam beside it, or does not say that it is for something else."""
    if steam_beside(joint, sheet) or not sheet.is_stated("purpose", joint.purpose):
        return True
    return sheet.read("purpose", joint.purpose) == "steam-tight"


def keeps_steam(joint: BoltedJoint, sheet: Sheet) -> None:
    """End a rule of steam-tight joints on one that holds none."""
    if not is_steam_tight(joint, sheet):
        raise sheet.not_applicable(
            f"the joint is {sheet.read('purpose', joint.purpose)}, and no steam is beside it"
        )


def seal_of(joint: BoltedJoint, sheet: Sheet) -> str:
    """What keeps the steam in; "none" in a joint that holds none."""
    return sheet.read("seal", joint.seal) if is_steam_tight(joint, sheet) else "none"
