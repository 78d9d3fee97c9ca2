"""What holds the cage that catches the pieces of a broken valve."""

from __future__ import annotations

from speclint import Judgement, Sheet
from speclint.specs import (
    BoltedJoint,
    Casting,
    ChamberCover,
    CylinderBlock,
    CylinderCover,
    PoppetValve,
    RetainingRing,
    ValveCage,
    ValveSeat,
    Weldment,
)

#: What stands fast round the chamber of a valve, and what fastens a part there.
_HOLDS = (
    BoltedJoint,
    Casting,
    ChamberCover,
    CylinderBlock,
    CylinderCover,
    RetainingRing,
    ValveSeat,
    Weldment,
)


def held_where_it_stands(cage: ValveCage, valve: PoppetValve, sheet: Sheet) -> Judgement:
    """A part of the chamber of the valve holds its cage: block, seat, ring, joint, or the cover over this valve."""
    holder, where = sheet.follow(cage.held_by), cage.held_by.where
    if not isinstance(holder, _HOLDS):
        says = (
            f"the cage is held by {holder.id} ({holder.called}), which is no part of the chamber of its valve"
        )
        return sheet.states(False, says, where=where)
    if isinstance(holder, ChamberCover):
        under = sheet.follow(holder.over).id
        says = f"the cage is held by {holder.id}, which is over {under}"
        return sheet.states(under == valve.id, says, where=where)
    return sheet.states(True, f"the cage is held by {holder.id}", where=where)
