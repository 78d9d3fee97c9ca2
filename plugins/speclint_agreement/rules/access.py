"""The access plan of a block states the sizes of what it reaches and draws out, and each of its chambers."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import (
    chambers_of,
    engaged_length,
    length_drawn_out,
    nuts_of,
    own_length,
    parts_drawn_out,
)
from speclint.specs import AccessPlan, BoltedJoint
from speclint_agreement.formulae.access import with_thread_beyond


def _sizes(plan: AccessPlan, sheet: Sheet) -> Iterator[Pair]:
    """The flats of each spanner against the nut of its joint, and the length of what is drawn out against its part."""
    block = sheet.follow(plan.serves)
    nuts = nuts_of(block, sheet)
    for name, room in plan.spanners.items():
        if name in nuts and sheet.is_stated(f"flats of {name}", nuts[name].nut.across_flats):
            yield Pair(room.across_flats, nuts[name].nut.across_flats, name=name)
    for name, drawn in plan.withdrawals.items():
        stated = sheet.is_stated(f"size of {name}", drawn.size) or sheet.is_stated(
            f"part of {name}", drawn.of
        )
        length = length_drawn_out(name, block, sheet, sheet.take_nominal) if stated else None
        if length is not None:
            yield Pair(sheet.dimension(drawn), length, "at least", name=name)
            if isinstance(nuts.get(name), BoltedJoint):
                e = sheet.limit("beyond", "e")
                most = sheet.work("l_g", with_thread_beyond, l=length.value, e=e)
                yield Pair(sheet.dimension(drawn), Worked(most, length.places), "at most", name=name)


def _parts(plan: AccessPlan, sheet: Sheet) -> Iterator[Pair]:
    """The length of each part that is drawn out in the frames, and over which it is held, against its own sizes."""
    for part in parts_drawn_out(sheet.follow(plan.serves), sheet):
        drawn, own = plan.withdrawals.get(part.id), own_length(part)
        if drawn is None:
            continue
        if own is not None and sheet.is_stated(f"size of {part.id}", drawn.size):
            yield Pair(drawn.size, own, "at least", name=part.id)
        if sheet.is_stated(f"engagement of {part.id}", drawn.engagement):
            held = engaged_length(part, sheet, sheet.take_nominal)
            if held is not None:
                yield Pair(drawn.engagement, held, "at least", name=f"engagement of {part.id}")


def _chambers(plan: AccessPlan, sheet: Sheet) -> Iterator[Pair]:
    """Whether the plan is said to list every chamber, against the chests, belts and pockets that it lists."""
    chambers = chambers_of(sheet.follow(plan.serves), sheet)
    listed = {
        sheet.follow(one.of).id
        for name, one in plan.chambers.items()
        if sheet.is_stated(f"passage of {name}", one.of)
    }
    if chambers:
        complete = all(passage.id in listed for passage in chambers)
        says = "the chests, belts and pockets of the block, of which it lists each"
        missing = ", ".join(passage.id for passage in chambers if passage.id not in listed)
        places = tuple(passage.place.where for passage in chambers)
        yield Pair(
            plan.chambers_complete,
            Worked(complete, places, says if complete else f"(no chamber of {missing})"),
        )


of_its_joints: Rule = agreement(
    "access.of-its-joints",
    title="Each spanner of an access plan is for the nut of its joint, and what is drawn out is as long as the liner "
    "with its collar, or the stud to its nut and little beyond",
    on=AccessPlan,
    pairs=_sizes,
    within="0.1 mm",
    limits=[
        Limit("beyond", "10 mm", "length", COMMON_PRACTICE, "greatest length of a stud beyond its nut"),
    ],
    grade=Grade.NONCONFORMITY,
    why="a spanner tried for another nut does not go on, and a stud longer than its room stays in its hole",
    leaves_out="bolts, whose length is not asked; joints whose specs leave out a size of nut or stud",
)

of_its_parts: Rule = agreement(
    "access.of-its-parts",
    title="An access plan takes no part drawn out in the frames for shorter than it is drawn, nor for free sooner: a "
    "spindle in its guide, a seat, a piston, a rod in its crosshead, a guided spring",
    on=AccessPlan,
    pairs=_parts,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a part that the plan takes for shorter or freer than it is meets what stands in its way as it is drawn",
    leaves_out="valves, whose guides in their cages have no length of their own; sizes that the plan leaves out; how "
    "far a rod enters its crosshead beyond its diameter",
)

chambers_of_block: Rule = agreement(
    "access.chambers-of-block",
    title="A plan that is said to list every chamber lists each chest, belt and valve pocket of the block",
    on=AccessPlan,
    pairs=_chambers,
    within="",
    grade=Grade.NONCONFORMITY,
    why="the chamber that nobody listed is the one whose welds nobody sees",
    leaves_out="hollows that are no passages of steam (block.closed-cavities)",
)

RULES = (chambers_of_block, of_its_joints, of_its_parts)
