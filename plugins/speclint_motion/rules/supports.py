"""What carries the ends of a slide bar."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import end_closed_by
from speclint.specs import BarSupport, CylinderCover, SlideBar
from speclint_motion.inputs import piston_of


@rule(
    "slidebar.held-by",
    title="Both ends of a slide bar name the part that carries them, and a cover that does carries one of them, at the "
    "back of its own cylinder",
    on=SlideBar,
    grade=Grade.OBSERVATION,
    edition=2,
    cites=[COMMON_PRACTICE],
    why="A bar that no drawn part carries is straight on paper only: its deflection is judged between supports that "
    "nobody provides.",
    leaves_out="strength and stiffness of the supports, and a bar that one end alone carries",
    against=(),
)
def held_by(bar: SlideBar, sheet: Sheet) -> Judgement:
    """Two supports, each a part of the design or the number of a drawing."""
    if not bar.supports:
        raise sheet.not_assessed(f"supports is not stated in {bar.where.file}", bar.where)
    both = len(bar.supports) > 1
    says = "two supports are named" if both else "one support is named: the span has two"
    return sheet.worst(
        sheet.states(both, says),
        *_twice(bar, sheet),
        sheet.each(bar.supports.items(), lambda item: _carried(*item, bar, sheet)),
    )


def _twice(bar: SlideBar, sheet: Sheet) -> Iterator[Judgement]:
    """A cover that is named for more than one end: the other end of the bar is a stroke and more away from it."""
    covers: dict[str, str] = {}
    for name, support in bar.supports.items():
        if sheet.is_stated(f"part at {name}", support.part):
            part = sheet.follow(support.part)
            other = covers.setdefault(part.id, name)
            if isinstance(part, CylinderCover) and other != name:
                said = f"{part.id} is named for both {other} and {name}: it carries one end"
                yield sheet.states(False, said, where=support.part.where)


def _carried(name: str, support: BarSupport, bar: SlideBar, sheet: Sheet) -> Judgement:
    if not sheet.is_stated(f"part at {name}", support.part):
        drawing = sheet.read(f"drawing of the part at {name}", support.drawing)
        return sheet.states(True, f"{name}: carried by the part of drawing {drawing}")
    part = sheet.follow(support.part)
    if not isinstance(part, CylinderCover):
        return sheet.states(True, f"{name}: carried by {part.id}")
    closes = sheet.follow(part.closes)
    liner = sheet.follow(piston_of(sheet.follow(bar.guides), sheet).runs_in)
    own = sheet.follow(liner.housed_in)
    if closes.id != own.id:
        said = f"{name}: {part.id} is a cover of {closes.id}, but the crosshead on the bar is one of {own.id}"
        return sheet.states(False, said, where=support.part.where)
    _, end = end_closed_by(part, sheet)
    if sheet.said("side", end.side) == "front":
        said = f"{name}: {part.id} is at the front of the cylinder, and the crosshead is behind it"
        return sheet.states(False, said, where=support.part.where)
    return sheet.states(True, f"{name}: carried by {part.id}")


RULES = (held_by,)
