"""The order in which parts go in: as their sizes force it, as a spec states it, and backwards for an overhaul."""

from __future__ import annotations

from collections import Counter

from speclint import Grade, Judgement, Sheet, rule
from speclint.facts import graded_as_assembly, pressure_by_place
from speclint.specs import Assembly, Component, CylinderBlock, Overhaul
from speclint_assembly.inputs.implied_order import after_all, forces_among, in_order, loop_in, parts_of
from speclint_assembly.inputs.known import Force, Known
from speclint_assembly.inputs.room import DEFERS
from speclint_assembly.sources import GEOMETRY

#: What is left out wherever an order is worked from sizes.
UNKNOWN = f"sizes and places that are not stated, which force nothing; {DEFERS}"
#: Kinds that wear, or are ground in, and come out while the engine is in service. Common practice.
_WORN = (
    *("cam-box", "compression-spring", "cylinder-liner", "piston-ring", "poppet-valve"),
    *("stuffing-box", "valve-seat"),
)


@rule(
    "block.order-of-assembly",
    edition=6,
    title="The parts of a block can go in one after the other: no two of them must each be in before the other, by the "
    "sizes that are stated",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="two parts that each must go in first are made, and then one of them is cut",
    leaves_out=UNKNOWN,
    against=(),
)
def order_of_assembly(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Lists the parts, earliest first, each with the parts that go in after it and the two sizes that force it."""
    known = Known(sheet)
    parts = parts_of(block, known)
    forces = forces_among(parts, known)
    if not forces:
        raise sheet.not_assessed(
            f"no size that is stated forces an order on the parts of {block.id}", block.where
        )
    if loop := loop_in(forces):
        said = "; ".join(f"{one.first} before {one.then}: {one.says}" for one in loop)
        judged = sheet.states(
            False, f"each must be in before the next: {said}", where=parts[loop[0].first].where
        )
        return graded_as_assembly(judged, _gravest([parts[one.first] for one in loop], sheet), sheet)
    order = in_order(parts, forces)
    for number, name in enumerate(order, start=1):
        before = [f"before {one.then}, since {one.says}" for one in forces if one.first == name]
        sheet.list_item(f"{number}. {name}", "; ".join(before).replace(",,", ",") or "after those above")
    return sheet.states(True, f"{len(order)} parts go in, {order[0]} first and {order[-1]} last")


def _gravest(parts: list[Component], sheet: Sheet) -> Component:
    """A part that holds pressure, by its place or as it says, where there is one among some."""

    def holds(part: Component) -> bool:
        return pressure_by_place(part, sheet) or sheet.said("pressure part", part.pressure_part) is True

    return max(parts, key=holds)


@rule(
    "assembly.order",
    edition=6,
    title="No step of the stated order puts a part in after one that by its sizes must follow it",
    on=Assembly,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="the step that cannot be done is met when everything before it is in its place",
    leaves_out=UNKNOWN,
    against=(),
)
def stated_order(assembly: Assembly, sheet: Sheet) -> Judgement:
    """Each two parts that the sizes of the block force into an order, against the order of the steps."""
    block = sheet.follow(assembly.of)
    steps = [sheet.follow(link) for link in assembly.steps]
    if not steps:
        raise sheet.not_assessed(f"steps are not stated in {assembly.id}", assembly.where)
    known = Known(sheet)
    parts = parts_of(block, known)
    ids = [part.id for part in steps]
    forces = [one for one in forces_among(parts, known) if one.first in ids and one.then in ids]
    if not forces:
        raise sheet.not_assessed(
            "no size that is stated forces an order on the parts of its steps", assembly.where
        )

    def judge(item: tuple[str, Force]) -> Judgement:
        force = item[1]
        first, then = ids.index(force.first), ids.index(force.then)
        late = force.then in ids[:first]
        says = f"step {first + 1}, {force.first}, cannot be done after step {then + 1}, {force.then}: {force.says}"
        judged = sheet.states(
            not late,
            says if late else f"{len(steps)} steps, and {len(forces)} sizes that force their order",
            where=assembly.steps[first].where,
        )
        return graded_as_assembly(judged, parts[force.first], sheet)

    return sheet.each([(one.first, one) for one in forces], judge)


@rule(
    "assembly.steps-complete",
    edition=3,
    title="The stated order names each part of the block that sizes force into an order, once, and no other block's",
    on=Assembly,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a part that the list forgets is in the fitter's hand when the cover is on",
    leaves_out="parts whose stated sizes force no order, which the list may name or not",
    against=(),
)
def steps_complete(assembly: Assembly, sheet: Sheet) -> Judgement:
    """The parts of the implied order against the steps."""
    block = sheet.follow(assembly.of)
    known = Known(sheet)
    parts = parts_of(block, known)
    forces = forces_among(parts, known)
    wanted = {name for one in forces for name in (one.first, one.then)}
    named = [sheet.follow(link).id for link in assembly.steps]
    times = Counter(named)
    wrong = [f"{name} is in no step" for name in sorted(wanted - set(named))]
    wrong += [f"{name} is in {times[name]} steps" for name in sorted(times) if times[name] != 1]
    wrong += [f"{name} is no part of {block.id}" for name in sorted(set(named) - set(parts) - {block.id})]
    return sheet.states(
        not wrong, "; ".join(wrong) or f"{len(named)} steps name every part", where=assembly.where
    )


@rule(
    "assembly.overhauls",
    edition=4,
    title="Each seat, valve, valve spring, ring, liner, stuffing box and cam box has an overhaul that takes it out, "
    "and each overhaul names every part that by its sizes must come out before",
    on=Assembly,
    grade=Grade.OBSERVATION,
    cites=GEOMETRY,
    why="an engine whose rings come out only with its crosshead stands a week for a day's work",
    leaves_out="sizes that are not stated, which force nothing; nuts and pins that are undone on the way",
    against=(),
)
def overhauls(assembly: Assembly, sheet: Sheet) -> Judgement:
    """The order of assembly backwards: all that goes in after the parts of an overhaul, against what it takes down."""
    known = Known(sheet)
    parts = parts_of(sheet.follow(assembly.of), known)
    forces = forces_among(parts, known)
    taken = {sheet.follow(link).id for one in assembly.overhauls.values() for link in one.parts}
    worn = [name for name, part in parts.items() if part.is_one_of(_WORN) and name not in taken]
    said = f"no overhaul takes out: {', '.join(worn)}" if worn else "every part that wears has its overhaul"
    covered = sheet.states(not worn, said, where=assembly.where)

    def judge(item: tuple[str, Overhaul]) -> Judgement:
        name, overhaul = item
        out = {sheet.follow(link).id for link in overhaul.parts}
        down = {sheet.follow(link).id for link in overhaul.takes_down}
        missing = {id_: force for id_, force in after_all(out, forces).items() if id_ not in down}
        because = [f"{id_}, since {force.says}" for id_, force in sorted(missing.items())]
        return sheet.states(
            not missing,
            f"{name} must take down {'; '.join(because)}"
            if missing
            else "each overhaul takes down what it must",
            where=overhaul.where,
        )

    if not assembly.overhauls:
        return covered
    return sheet.worst(covered, sheet.each(assembly.overhauls.items(), judge))


RULES = (order_of_assembly, stated_order, steps_complete, overhauls)
