"""What a list of steps must be in itself: each step once, after what it needs, from a datum that is there."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import Made, MakingStep, own_steps, places_of, steps_of
from speclint.specs import Casting, CylinderBlock, CylinderLiner, StepDetail, ValveSeat, Weldment
from speclint_making.inputs.steps import by_stage

KINDS = (Weldment, Casting, CylinderLiner, ValveSeat, CylinderBlock)
TREATMENTS = ("stress relieve", "normalize", "harden", "temper", "hard face", "weld repair")


def _own(part: Made, sheet: Sheet) -> tuple[MakingStep, ...]:
    steps = own_steps(part, sheet)
    if not steps and not part.making.details:
        raise sheet.not_applicable("no steps are stated; making.steps-complete asks for them")
    return steps


@rule(
    "making.each-step-once",
    title="No step stands twice in the list without a number, and what is stated of a step names one of the list",
    on=KINDS,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="of two steps with one name nobody knows which has been done",
    leaves_out="whether a step that comes again is needed",
    against=(),
)
def each_step_once(part: Made, sheet: Sheet) -> Judgement:
    """The words as written, of a block with those of its weldment or casting, and the names under making.details."""
    own = [step.written for step in _own(part, sheet)]
    written = [step.written for step in steps_of(part, sheet)] if isinstance(part, CylinderBlock) else own
    wrong = [f'"{word}" stands {times} times' for word, times in Counter(written).items() if times != 1]
    wrong += [f'"{name}" is no step of the list' for name in part.making.details if name not in own]
    return by_stage(
        sheet.states(not wrong, "; ".join(wrong) or f"{len(written)} steps", where=part.making.where), sheet
    )


@rule(
    "making.needs-met",
    title="Every step that a step needs is in the list before it",
    on=KINDS,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a step that waits for a later one is left half done",
    leaves_out="steps of which no needs are stated",
    against=(),
    edition=2,
)
def needs_met(part: Made, sheet: Sheet) -> Judgement:
    """Each of the needs against the whole list, with that of the weldment or casting before."""
    if not any(detail.needs for detail in part.making.details.values()):
        raise sheet.not_applicable("no step states what it needs")
    steps, own = steps_of(part, sheet), {step.written: step for step in own_steps(part, sheet)}
    wrong = []
    for name, detail in part.making.details.items():
        before = steps[: steps.index(own[name])] if name in own else steps
        for need in detail.needs:
            wanted = sheet.read(f"needed by {name}", need)
            if wanted not in [step.written for step in before]:
                wrong.append(f'"{wanted}", which "{name}" needs, is not before it')
    return by_stage(
        sheet.states(not wrong, "; ".join(wrong) or "every need is met", where=part.making.where), sheet
    )


@rule(
    "making.datum-kept",
    title="Every datum is there when a step is set up from it, as blank or cut by an earlier step, and no later "
    "step cuts it",
    on=KINDS,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a size measured from a face that has since been cut is measured from nothing",
    leaves_out="how true a datum is, and faces that a step cuts without its being stated",
    against=(),
)
def datum_kept(part: Made, sheet: Sheet) -> Judgement:
    """Each datum against what earlier and later steps say that they cut, and against the faces of the blank."""
    steps = _own(part, sheet)
    details = [(step.written, part.making.details.get(step.written)) for step in steps]
    if not any(detail and sheet.is_stated(f"datum of {name}", detail.datum) for name, detail in details):
        raise sheet.not_applicable("no step states its datum")
    blank = {sheet.read("face of the blank", face) for face in part.making.as_blank}
    cuts = [
        {sheet.read(f"cut by {name}", face) for face in detail.cuts} if detail else set()
        for name, detail in details
    ]
    wrong: list[str] = []
    for place, (name, detail) in enumerate(details):
        if detail is None or not sheet.is_stated(f"datum of {name}", detail.datum):
            continue
        datum = sheet.read(f"datum of {name}", detail.datum)
        wrong += _faults(name, datum, blank.union(*cuts[:place]), details[place:], cuts[place:])
    return by_stage(
        sheet.states(not wrong, "; ".join(wrong) or "every datum is kept", where=part.making.where), sheet
    )


def _faults(
    name: str, datum: str, there: set[str], later: list[tuple[str, StepDetail | None]], cuts: list[set[str]]
) -> Iterator[str]:
    if datum not in there:
        yield f'"{datum}", the datum of "{name}", is neither of the blank nor cut before'
    for (other, _), cut in zip(later, cuts, strict=True):
        if datum in cut:
            yield f'"{datum}", the datum of "{name}", is cut by "{other}"'


@rule(
    "making.hardness-after-treatment",
    title="Hardness is measured after the last heat treatment",
    on=(Weldment, Casting, CylinderLiner, ValveSeat),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="hardness measured before the furnace is not that of the part",
    leaves_out="where on the part it is measured; a hardness that no step measures, which making.steps-complete tells",
    against=(),
    edition=2,
)
def hardness_after_treatment(part: Weldment | Casting | CylinderLiner | ValveSeat, sheet: Sheet) -> Judgement:
    """The step "measure hardness" after the last treatment, in one list with the blank or what becomes of it."""
    steps = steps_of(part, sheet)
    measured, treated = places_of(("measure hardness",), steps), places_of(TREATMENTS, steps)
    if not measured or not treated:
        raise sheet.not_applicable("the list has not both a heat treatment and the measuring of hardness")
    at, last = measured[-1], treated[-1]
    says = f'step {at + 1}, "measure hardness", and the last treatment is step {last + 1}, "{steps[last].written}"'
    return by_stage(sheet.states(last < at, says, where=steps[at].where), sheet)


RULES = (each_step_once, needs_met, datum_kept, hardness_after_treatment)
