"""What holds the cage that catches the pieces of a broken valve."""

from __future__ import annotations

from speclint import Judgement, Sheet
from speclint.facts import seats_named
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
    """A part of the chamber of the valve holds its cage: block, own seat, ring, or the cover over it or its joint."""
    holder, where = sheet.follow(cage.held_by), cage.held_by.where
    says = f"the cage is held by {holder.id}"
    if not isinstance(holder, _HOLDS):
        says = f"{says} ({holder.called}), which is no part of the chamber of its valve"
        return sheet.states(False, says, where=where)
    if isinstance(holder, BoltedJoint) and sheet.is_stated("what the joint holds", holder.holds):
        holder = sheet.follow(holder.holds)
        says = f"{says}, which holds {holder.id}"
    if isinstance(holder, ChamberCover):
        under = sheet.follow(holder.over).id
        return sheet.states(under == valve.id, f"{says}, which is over {under}", where=where)
    own = [seat.id for seat in seats_named(valve, sheet)] if isinstance(holder, ValveSeat) else []
    if own and holder.id not in own:
        return sheet.states(False, f"{says}, which is no seat of {valve.id}", where=where)
    if isinstance(holder, CylinderCover):
        over = [lid.id for lid in sheet.belonging_to(valve, ChamberCover)]
        beside = f": the cover of its chamber is {over[0]}" if over else ""
        return sheet.states(not over, f"{says}{beside}", where=where)
    return sheet.states(True, says, where=where)
