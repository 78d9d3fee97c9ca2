"""The scheme of the pads of a block: what takes its forces on each frame, and how its growth is taken up."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Rule, Sheet, rule
from speclint.facts import pads_by_frame, taken_by
from speclint.specs import CylinderBlock, NotStated

_LOCKED = {"one locked": 1, "two locked": 2, "locked at the middle": 1}


@rule(
    "frame.scheme-of-pads",
    edition=3,
    title="On each frame pads take the thrust, the forces crosswise and the weight of the block, and as many pads take "
    "the thrust as its scheme says: one, two, or one between two that slide",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="A block that nothing holds lengthwise hammers its bolts, and one held twice unawares cracks the frame.",
    leaves_out="what two locked pads do to block and frame (frame.locked-force, frame.grip-kept, "
    "frame.true-interference), and room for the others to slide (fit.growth-room); the local railway code and a "
    "competent person decide",
    against=(),
)
def scheme_of_pads(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """By what each pad says that it takes, frame by frame; two that take the thrust without a scheme are a hold."""
    if not block.pads:
        raise sheet.not_applicable("it states no pads")
    items = [
        (f"{said} at {' and '.join(names)}", judge)
        for names in pads_by_frame(block, sheet)
        for said, judge in _of_frame(names, block, sheet)
    ]
    items += list(_nothing_else(block, sheet))
    return sheet.each(items, lambda item: item[1]())


def _of_frame(
    names: list[str], block: CylinderBlock, sheet: Sheet
) -> Iterator[tuple[str, Callable[[], Judgement]]]:
    """The thrust, and the number of pads that take it; then what acts crosswise, and the weight."""
    yield "thrust", lambda: _locked(names, block, sheet)
    for force in ("crosswise", "weight"):
        yield force, lambda one=force: _taken(one, names, block, sheet)  # type: ignore[misc]


def _nothing_else(block: CylinderBlock, sheet: Sheet) -> Iterator[tuple[str, Callable[[], Judgement]]]:
    """A pad that is said to take nothing is said to take nothing else."""
    for name, pad in block.pads.items():
        takes = taken_by(name, pad, sheet) if pad.takes else ()
        if "nothing" in takes and len(takes) > 1:
            said = f"pad {name} is said to take {' and '.join(takes)}"
            yield f"what {name} takes", lambda said=said: sheet.states(False, said, where=block.where)  # type: ignore[misc]


def _locked(names: list[str], block: CylinderBlock, sheet: Sheet) -> Judgement:
    locked = [name for name in names if "lengthwise" in taken_by(name, block.pads[name], sheet)]
    if not locked:
        said = f"none of {', '.join(names)} takes the thrust"
        return sheet.states(False, said, where=block.where).graded(Grade.HOLD)
    if not sheet.is_stated("scheme", block.scheme):
        if len(locked) == 1:
            return sheet.states(True, f"{locked[0]} alone locks the block")
        said = f"{' and '.join(locked)} each take the thrust, and no scheme says that more than one pad is locked"
        return sheet.states(False, said, where=block.where).graded(Grade.HOLD)
    scheme = sheet.read("scheme", block.scheme)
    if len(locked) != _LOCKED[scheme]:
        said = f"{' and '.join(locked)} lock the block, whose scheme is {scheme}"
        return sheet.states(False, said, where=block.scheme.where)
    if scheme != "locked at the middle":
        return sheet.states(True, f"{' and '.join(locked)} lock the block")
    middle = sheet.take(f"x_{locked[0]}", block.pads[locked[0]].at)
    others = [sheet.take(f"x_{name}", block.pads[name].at) for name in names if name not in locked]
    between = any(one < middle for one in others) and any(one > middle for one in others)
    said = "stands between two that slide" if between else "does not stand between two that slide"
    return sheet.states(between, f"{locked[0]} {said}", where=block.scheme.where)


def _taken(force: str, names: list[str], block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Whether a pad takes a force; a pad that says only whether it locates says nothing of it."""
    lists = {name: block.pads[name].takes for name in names}
    taking = [
        name for name, takes in lists.items() if takes and force in taken_by(name, block.pads[name], sheet)
    ]
    if taking:
        return sheet.states(True, f"{' and '.join(taking)} take {force}")
    unsaid = next((name for name, takes in lists.items() if not takes), "")
    if unsaid:
        sheet.read(f"what pad {unsaid} takes", NotStated(block.pads[unsaid].where.at(f"pads.{unsaid}.takes")))
    return sheet.states(False, f"none of {', '.join(names)} takes {force}", where=block.where)


RULES: tuple[Rule, ...] = (scheme_of_pads,)
