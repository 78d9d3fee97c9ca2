"""What carries the ends of a slide bar."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Newtons
from speclint.facts import end_closed_by, is_locked
from speclint.handbook.members import load_with_factor
from speclint.specs import BarSupport, CylinderCover, LoadCase, SlideBar
from speclint_motion.inputs.thrust import cylinder_of, greatest_on_one, piston_of
from speclint_motion.inputs.tightening import (
    BOLT,
    CLOSE,
    FACTORS,
    WIDE,
    by_some_method,
    tightened,
)
from speclint_motion.rules.crowns import DEFERS

#: What stands still and is stiff enough; of other parts, such as a motion plate, the drawing is named.
_CARRIERS = ("cylinder-cover", "cylinder-block", "bracket")


@rule(
    "slidebar.held-by",
    title="Both ends of a slide bar name what carries them: a block, a bracket, the cover at the back of its own "
    "cylinder for its front end, or a drawing that no spec has",
    on=SlideBar,
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    edition=4,
    cites=[COMMON_PRACTICE],
    why="A bar that no drawn part carries is straight on paper only: its deflection is judged between supports that "
    "nobody provides.",
    leaves_out="strength and stiffness of the supports, and a bar that one end alone carries",
    against=(),
)
def held_by(bar: SlideBar, sheet: Sheet) -> Judgement:
    """Two supports, each a part of the design or the number of a drawing; a cover that cannot be there is graver."""
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
                yield _cannot_be(said, support, sheet)


def _carried(name: str, support: BarSupport, bar: SlideBar, sheet: Sheet) -> Judgement:
    if not sheet.is_stated(f"part at {name}", support.part):
        if not sheet.is_stated(f"drawing of the part at {name}", support.drawing):
            says = f"supports.{name} states neither part nor drawing in {support.where.file}"
            raise sheet.not_assessed(says, support.where)
        return _by_drawing(name, support, sheet)
    part = sheet.follow(support.part)
    if not part.is_one_of(_CARRIERS):
        said = f"{name}: {part.id} is a {part.called}, which carries no slide bar: name a cover, a block or a bracket"
        return _cannot_be(said, support, sheet)
    if not isinstance(part, CylinderCover):
        return sheet.states(True, f"{name}: carried by {part.id}")
    if name == "back":
        said = f"back: {part.id} closes the cylinder in front of the bar, and carries its front end alone"
        return _cannot_be(said, support, sheet)
    closes = sheet.follow(part.closes)
    liner = sheet.follow(piston_of(sheet.follow(bar.guides), sheet).runs_in)
    own = sheet.follow(liner.housed_in)
    if closes.id != own.id:
        said = f"{name}: {part.id} is a cover of {closes.id}, but the crosshead on the bar is one of {own.id}"
        return _cannot_be(said, support, sheet)
    _, end = end_closed_by(part, sheet)
    if sheet.said("side", end.side) == "front":
        said = f"{name}: {part.id} is at the front of the cylinder, and the crosshead is behind it"
        return _cannot_be(said, support, sheet)
    return sheet.states(True, f"{name}: carried by {part.id}")


def _by_drawing(name: str, support: BarSupport, sheet: Sheet) -> Judgement:
    """A part without a spec here, such as a motion plate: its number has a figure, and is that of no spec."""
    number = sheet.read(f"drawing of the part at {name}", support.drawing)
    if not any(sign.isdecimal() for sign in number):
        wrong = f'"{number}" is no drawing number'
    elif found := sheet.on_drawing(number):
        wrong = f"drawing {number} is that of {found[0].id}, which has a spec here: name it by part"
    else:
        return sheet.states(True, f"{name}: carried by the part of drawing {number}")
    return sheet.states(False, f"{name}: {wrong}", where=support.drawing.where).graded(Grade.NONCONFORMITY)


def _cannot_be(said: str, support: BarSupport, sheet: Sheet) -> Judgement:
    """A bar that does not reach the part which is named for it."""
    return sheet.states(False, said, where=support.part.where).graded(Grade.NONCONFORMITY)


@rule(
    "slidebar.bolted",
    title="Two bolts or more at each end, locked by split pin, plate or tab washer, press a slide bar on with 1.2 "
    "times its thrust at least, and are stressed to 0.7 of their proof stress at most",
    on=SlideBar,
    edition=3,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, FACTORS, COMMON_PRACTICE],
    why="A bar that works loose at one end lets the crosshead down on the track, and bends the rod in its packing.",
    leaves_out="water in the cylinder; what the other end takes of the thrust while the crosshead is far from this "
    "one; what is lost of the preload after tightening, prying, fatigue of the bolts, the part that carries the bar, "
    f"and a bar forged in one with it; the greater mass of pistons for later bores; {DEFERS}",
    against=("loosen",),
    limits=[
        Limit("held", "1.2", "ratio", COMMON_PRACTICE, "least force of the bolts of an end over the thrust"),
        BOLT,
        Limit("several", "2", "ratio", COMMON_PRACTICE, "least number of bolts of an end"),
        CLOSE,
        WIDE,
    ],
)
def bolted(bar: SlideBar, case: LoadCase, sheet: Sheet) -> Judgement:
    """n F_0 against the whole thrust on the bar with its factor, which pulls it from its supports in one sense.

    The thrust is that at the last bore of the liner.
    """
    if not bar.supports:
        raise sheet.not_assessed(f"supports is not stated in {bar.where.file}", bar.where)
    if len(bar.supports) < 2:
        raise sheet.not_assessed(f"{bar.id} states one support: a bar is held at both of its ends", bar.where)
    cylinder = cylinder_of(piston_of(sheet.follow(bar.guides), sheet), sheet)
    one = greatest_on_one(bar, cylinder, case, sheet)
    wanted = sheet.work("F_w", load_with_factor, x=sheet.limit("held", "k"), F=one)
    return sheet.each(bar.supports.items(), lambda item: _bolted(*item, wanted, sheet))


def _bolted(name: str, support: BarSupport, wanted: Newtons, sheet: Sheet) -> Judgement:
    lock = sheet.read(f"lock at {name}", support.locked_by)
    n = sheet.count(f"n {name}", support.bolts)
    bolts = tightened(support, float(n), f"the bolts at {name}", sheet, at=f" {name}")
    return sheet.worst(
        sheet.states(
            is_locked("nut", lock), f"bolts at {name} locked by: {lock}", where=support.locked_by.where
        ),
        sheet.states(
            n >= sheet.limit("several", f"n_b {name}"),
            f"bolts at {name}: {n}",
            where=support.bolts.where,
        ),
        by_some_method(support, sheet, name),
        sheet.at_least(bolts.holds, wanted).else_says("bar held at {item} with {found}, {limit} wanted"),
        sheet.at_most(bolts.F_0, bolts.bears).else_says(
            "bolt at {item} tightened to {found}, {limit} allowed"
        ),
    )


RULES = (held_by, bolted)
