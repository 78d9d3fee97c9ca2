"""Welds, their examination, the vents of cavities, and stress relief."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import FINISHING, places_of
from speclint.specs import Casting, CylinderBlock, CylinderLiner, ValveSeat, Weldment
from speclint_making.inputs.implied_steps import told_of
from speclint_making.inputs.steps import (
    DEFERS,
    RELIEF,
    TOLD,
    WELDS,
    Steps,
    by_stage,
    follow,
    listed,
    precede,
)
from speclint_making.sources import EN_1011_2, EN_13445_4, EN_13445_5

#: What heats a ring after it was turned, each by itself.
_HARDENING = (("hard face",), ("harden",), ("temper",))
#: What hides the welds that were laid before it.
_HIDING = ("weld ribs and covers", "paint", "lag")


@rule(
    "making.no-weld-after-relief",
    title="Every weld of the list, those of lugs, bosses, ribs and repairs among them, comes before its last stress "
    "relief",
    on=(Weldment, CylinderBlock, Casting),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_4.at("post weld heat treatment"), COMMON_PRACTICE],
    why="a weld laid afterwards puts back what the furnace took out",
    leaves_out=f"welds that the list does not name, and temperature and time of the relief; {DEFERS}",
    against=(),
    edition=2,
)
def no_weld_after_relief(part: Weldment | CylinderBlock | Casting, sheet: Sheet) -> Judgement:
    """The last weld against the last stress relief; a list with welds and no relief is a finding."""
    if isinstance(part, Casting) and not part.making.steps and not _welded(part, sheet):
        raise sheet.not_applicable("no weld is stated")
    steps = listed(part, sheet)
    welds, relief = places_of(WELDS, steps), places_of(RELIEF, steps)
    if not welds:
        raise sheet.not_applicable("the list has no weld")
    last = steps[welds[-1]]
    if not relief and "stress relieve" in told_of(part, sheet):
        raise sheet.not_applicable(TOLD.format("stress relieve"))
    if not relief:
        judged = sheet.states(False, f'no stress relief follows "{last.written}"', where=last.where)
    else:
        at = f'step {welds[-1] + 1}, "{last.written}", and the last stress relief is step {relief[-1] + 1}'
        judged = sheet.states(welds[-1] < relief[-1], f"the last weld is {at}", where=last.where)
    return by_stage(judged, sheet, grave=True)


def _welded(casting: Casting, sheet: Sheet) -> bool:
    return sheet.said("welded", casting.welding.welded) is True


@rule(
    "making.vented-before-furnace",
    title="The vents of closed cavities are open before the first stress relief",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_4.at("heat treatment"), COMMON_PRACTICE],
    why="shut-in air bursts its hollow in the furnace",
    leaves_out=f"cavities that nobody found, which block.closed-cavities asks for; {DEFERS}",
    against=(),
    edition=2,
)
def vented_before_furnace(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Where the weldment states cavities: "open vents" before "stress relieve"."""
    if not weldment.cavities:
        raise sheet.not_applicable("no closed cavity is stated")
    steps = listed(weldment, sheet)
    if not places_of(("open vents",), steps):  # the cavities imply the step
        raise sheet.not_applicable(TOLD.format("open vents"))
    return by_stage(precede(steps, ("open vents",), RELIEF, sheet), sheet, grave=True)


@rule(
    "making.examined-in-time",
    title="Welds are examined after they are laid and before ribs, covers, paint or lagging hide them, again after the "
    "stress relief that follows the last of them, and by ultrasound only after the last relief",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_5.at("non-destructive testing of welds"), EN_1011_2.at("cold cracks"), COMMON_PRACTICE],
    why="a root that is covered cannot be seen again, and a crack may open in the furnace",
    leaves_out=f"the welds of ribs and covers themselves; which welds an examination takes, which block.weld-record "
    f"asks; reliefs after the first that follows the last weld; a list in "
    f"which no step tests the welds (making.steps-complete); the time to wait for cracks; {DEFERS}",
    against=(),
    edition=4,
)
def examined_in_time(weldment: Weldment, sheet: Sheet) -> Judgement:
    """A step "test welds" after the last weld, one before what hides, and ultrasound after relief.

    That nothing looks at the welds after their relief is a nonconformity of what is released, by common practice.
    """
    steps = listed(weldment, sheet)
    laid = places_of(("weld", "weld lugs and bosses", "weld repair"), steps)
    if not laid:
        raise sheet.not_applicable("the list has no weld")
    if not places_of(("test welds",), steps) and "test welds" in told_of(weldment, sheet):
        raise sheet.not_applicable(TOLD.format("test welds"))
    judged = [_tested(steps, laid, hidden, sheet) for hidden in places_of(_HIDING, steps)]
    judged.append(_tested(steps, laid, len(steps), sheet))
    if places_of(("test welds by ultrasound",), steps) and places_of(RELIEF, steps):
        judged.append(follow(steps, RELIEF, ("test welds by ultrasound",), sheet))
    in_time = by_stage(sheet.worst(*judged), sheet, grave=True)
    return sheet.worst(in_time, *(by_stage(one, sheet) for one in _after_relief(steps, sheet)))


def _after_relief(steps: Steps, sheet: Sheet) -> Iterator[Judgement]:
    """That a test follows the first relief after the last weld; where none follows it, another rule tells."""
    last = places_of(WELDS, steps)[-1]
    relief = next((place for place in places_of(RELIEF, steps) if place > last), None)
    if relief is not None:
        tested = places_of(("test welds", "test welds by ultrasound"), steps)
        holds = bool(tested) and tested[-1] > relief
        says = f'the welds are {"" if holds else "not "}examined after step {relief + 1}, "{steps[relief].written}"'
        yield sheet.states(holds, says, where=steps[relief].where)


def _tested(steps: Steps, laid: list[int], until: int, sheet: Sheet) -> Judgement:
    """That the last weld before a step is examined before it."""
    before = [place for place in laid if place < until]
    tests = [place for place in places_of(("test welds",), steps) if place < until]
    hides = f'"{steps[until].written}"' if until < len(steps) else "the end of the list"
    if not before:
        return sheet.states(True, f"no weld before {hides}")
    last = steps[before[-1]]
    holds = bool(tests) and tests[-1] > before[-1]
    says = f'"{last.written}" is {"" if holds else "not "}examined before {hides}'
    return sheet.states(holds, says, where=last.where)


@rule(
    "making.finished-after-relief",
    title="Bores, faces, guides and seats, and the outsides of liners and seats, are finished after the last stress "
    "relief, rough machining and hardening",
    on=(Weldment, CylinderBlock, CylinderLiner, ValveSeat),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_4.at("post weld heat treatment"), COMMON_PRACTICE],
    why="what is finished before the furnace comes out oval",
    leaves_out=f"the metal left for finishing, which block.stress-relief judges; {DEFERS}",
    against=(),
    edition=3,
)
def finished_after_relief(
    part: Weldment | CylinderBlock | CylinderLiner | ValveSeat, sheet: Sheet
) -> Judgement:
    """The last relief, the last rough machining, and of rings all hard facing, against the first step that finishes."""
    pressed_in = isinstance(part, CylinderLiner | ValveSeat)
    if pressed_in and not part.making.steps:
        raise sheet.not_applicable("no steps are stated; making.steps-complete asks for them")
    steps = listed(part, sheet)
    firsts = (RELIEF, ("rough machine",), *_HARDENING)
    judged = sheet.each(firsts, lambda first: follow(steps, first, FINISHING, sheet))
    return by_stage(judged, sheet, grave=not pressed_in)


RULES = (no_weld_after_relief, vented_before_furnace, examined_in_time, finished_after_relief)
