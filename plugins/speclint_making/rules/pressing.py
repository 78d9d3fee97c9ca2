"""Liners and seats that are put into the block, the heat for it, and what is finished afterwards."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import MakingStep, heat_asked_of_block, places_of
from speclint.handbook.fits import DRAWING_TEMPERATURE, hot_interference, interference
from speclint.specs import CylinderBlock, CylinderLiner, ValveSeat, Weldment
from speclint_making.formulae.heat import hottest_after
from speclint_making.inputs.fitted_parts import FittedPart, fitted_parts, goes_in_at
from speclint_making.inputs.steps import (
    DEFERS,
    TOLD,
    Steps,
    by_stage,
    follow,
    goes_in_before,
    left_to_the_list,
    listed,
    place_of,
    precede,
)
from speclint_making.sources import EN_13445_4


@rule(
    "making.pressed-before-finished",
    title="A liner whose bore is finished in its place is in before finish boring and honing, and ports that "
    "are matched are matched before the bore is finished, and their edges chamfered after that",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="pressing closes the bore, and an edge left sharp catches the rings",
    leaves_out="how much the bore closes, which liner.bore-after-pressing judges",
    against=(),
    edition=4,
)
def pressed_before_finished(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The step of each liner before "finish bore" and "hone"; "match ports" before both, and "chamfer ports" after."""
    steps = listed(block, sheet)
    liners = sheet.belonging_to(block, CylinderLiner)
    bored = [one for one in liners if sheet.read(f"{one.id} bored in its place", one.finish_bored_after)]
    judged = [_bored_after(one, steps, sheet) for one in bored]
    judged.extend(_matched(steps, sheet))
    if not judged:
        raise sheet.not_applicable("no liner is finished in its place, and no port is matched")
    return by_stage(sheet.worst(*judged), sheet)


def _matched(steps: Steps, sheet: Sheet) -> Iterator[Judgement]:
    """Ports that are matched: before the bore is finished, and their edges chamfered after that."""
    matched = places_of(("match ports",), steps)
    if not matched:
        return
    if places_of(("finish bore",), steps):
        yield follow(steps, ("match ports",), ("finish bore",), sheet)
    if places_of(("chamfer ports",), steps):
        yield follow(steps, ("match ports",), ("chamfer ports",), sheet)
    else:
        yield sheet.states(False, 'no "chamfer ports" after "match ports"', where=steps[matched[-1]].where)


def _bored_after(liner: CylinderLiner, steps: Steps, sheet: Sheet) -> Judgement:
    if not places_of(("finish bore", "hone"), steps):  # a liner that is bored in its place implies the first
        return left_to_the_list("finish bore", sheet)
    return goes_in_before(goes_in_at(liner, sheet), ("finish bore", "hone"), steps, sheet)


@rule(
    "making.seats-finished-in-line",
    title="Seats are finished in line after every seat is in and the guides are reamed, and guides are reamed "
    "after they are pressed in",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="two seats out of line never stop leaking, and the guide is the datum of both",
    leaves_out="the tool by which both beats are cut from one setting",
    against=(),
    edition=4,
)
def seats_finished_in_line(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The step of each seat, every "press seats" and "ream guides" before the finishing; guides are pressed first."""
    seats = sheet.belonging_to(block, ValveSeat)
    if not seats:
        raise sheet.not_applicable("no seat is pressed into the block")
    steps = listed(block, sheet)
    in_line = ("finish seats in line",)
    if not places_of(in_line, steps):  # each seat implies the step
        raise sheet.not_applicable(TOLD.format(*in_line))
    pressed = sheet.each(seats, lambda seat: goes_in_before(goes_in_at(seat, sheet), in_line, steps, sheet))
    judged = sheet.worst(pressed, precede(steps, ("ream guides",), in_line, sheet))
    if places_of(("press seats",), steps):
        judged = sheet.worst(judged, follow(steps, ("press seats",), in_line, sheet))
    if places_of(("press guides",), steps) and places_of(("ream guides",), steps):
        judged = sheet.worst(judged, follow(steps, ("press guides",), ("ream guides",), sheet))
    return by_stage(judged, sheet)


@rule(
    "making.heated-once",
    title="The block is heated before what goes in hot, as hot as each part needs; what is in before a "
    "heating stays tight in it; and of one heating the part that needs the hottest block goes in first",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a ring already in drops out at the second heating",
    leaves_out=f"the order of parts that go in at one step, how fast the block cools, and whether the heat that "
    f"a part asks for lets it in, which liner.entering and seat.entering judge; {DEFERS}",
    against=(),
    edition=3,
)
def heated_once(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Each part at its step after a heating; the fit of earlier ones at the temperature of a later heating."""
    parts = fitted_parts(block, sheet)
    if not parts:
        raise sheet.not_applicable("neither a liner nor a seat goes into the block")
    steps = listed(block, sheet)
    heats = places_of(("heat block",), steps)
    found = [(place_of(part.at_step, steps), part) for part in parts]
    placed = [(at, part) for at, part in found if at is not None]  # of the others making.steps-complete tells
    judged = [_heated_for(at, part, heats, steps, block, sheet) for at, part in placed if part.hot]
    for heat, after in zip(heats, [*heats, len(steps)][1:], strict=True):
        judged += _hottest_first(
            [(at, part) for at, part in placed if part.hot and heat < at < after], block, sheet
        )
        judged += [
            _stays(part, block, _heat(block, steps, heat, sheet), sheet) for at, part in placed if at < heat
        ]
    if not judged:
        raise sheet.not_applicable(
            "no step puts anything into a hot block, and none heats it after a part is in"
        )
    return by_stage(sheet.worst(*judged), sheet, grave=True)


def _heated_for(
    at: int, part: FittedPart, heats: list[int], steps: Steps, block: CylinderBlock, sheet: Sheet
) -> Judgement:
    """The last heating before a part goes in, against the temperature that it asks for."""
    before = [heat for heat in heats if heat < at]
    if not heats:  # a part that goes in hot implies the step
        return left_to_the_list("heat block", sheet)
    if not before:
        says = f'{part.part.id} goes into a hot block at step {at + 1}, with no "heat block" before'
        return sheet.states(False, says, where=block.making.where)
    return sheet.at_least(
        _heat(block, steps, before[-1], sheet),
        sheet.take(f"T_b of {part.part.id}", heat_asked_of_block(part.part, block, sheet)),
    ).else_says(f"block at {{found}} as {part.part.id} goes in, {{limit}} asked")


def _heat(block: CylinderBlock, steps: Steps, heat: int, sheet: Sheet) -> float:
    """The temperature of one heating, K: of its own step, else that of the block's heating."""
    detail = block.making.details.get(steps[heat].written)
    if detail is not None and sheet.is_stated(f"temperature of {steps[heat].written}", detail.temperature):
        return sheet.take(f"T of {steps[heat].written}", detail.temperature)
    return sheet.take("T_h", block.heated_to)


def _hottest_first(
    group: list[tuple[int, FittedPart]], block: CylinderBlock, sheet: Sheet
) -> Iterator[Judgement]:
    """Of parts that go in at different steps of one heating, each against all after it."""
    in_turn = sorted(group, key=lambda one: (one[0], one[1].part.id))
    for (at, part), (after, then) in combinations(in_turn, 2):
        if at < after:
            yield sheet.at_least(_asked(part, block, sheet), _asked(then, block, sheet)).else_says(
                f"{part.part.id} goes in first at {{found}}, {then.part.id} after it at {{limit}}"
            )


def _asked(part: FittedPart, block: CylinderBlock, sheet: Sheet) -> float:
    """The temperature of the block that the spec of a part aims at, K."""
    return sheet.take_nominal(f"T_0 of {part.part.id}", heat_asked_of_block(part.part, block, sheet))


def _stays(part: FittedPart, block: CylinderBlock, T: float, sheet: Sheet) -> Judgement:
    """The interference of a part at a later heating, ring and block alike hot."""
    name = part.part.id
    D = sheet.take(f"D {name}", part.bore)
    cold = sheet.work(f"δ {name}", interference, d=sheet.take(f"d {name}", part.outside), D=D)
    inner = sheet.look_up(f"α {name}", sheet.material_of(part.part).expansion, of=part.part, at=T)
    outer = sheet.look_up("α_b", sheet.material_of(block).expansion, of=block, at=T)
    both = {"alpha_in": inner, "T_in": T, "alpha_out": outer, "T_out": T, "T_ref": DRAWING_TEMPERATURE}
    hot = sheet.work(f"δ_h {name}", hot_interference, delta=cold, D=D, **both)
    return sheet.stays(hot, cold, strictly=True).else_says(
        f"{name} loose as the block is heated again: {{left}} of interference left"
    )


@rule(
    "making.later-steps-cooler",
    title="No step after the stress relief heats the block to more than 50 K below it, nor does paint or "
    "lagging to more than its design temperature",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[EN_13445_4.at("post weld heat treatment"), COMMON_PRACTICE],
    why="a second heat as high as the first undoes what the first was for",
    leaves_out="the tempering temperature of a tempered plate; steps whose temperature is not stated",
    against=(),
    limits=[
        Limit(
            "below_relief",
            "50 K",
            "temperature difference",
            COMMON_PRACTICE,
            "distance below the stress relief",
        ),
    ],
)
def later_steps_cooler(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The heating of the block and every stated temperature of a step after the relief, against both limits."""
    weldments = sheet.belonging_to(block, Weldment)
    steps = listed(block, sheet)
    relief = places_of(("stress relieve",), steps)
    if not weldments or not relief:
        raise sheet.not_applicable("the block is not stress relieved after welding")
    held = min(sheet.take(f"T_r of {one.id}", one.treatment.temperature) for one in weldments)
    limit = sheet.work("T_max", hottest_after, T_r=held, ΔT=sheet.limit("below_relief", "ΔT"))
    judged = []
    for step in steps[relief[-1] + 1 :]:
        for temperature in _heats_of(step, block, sheet):
            judged.append(
                sheet.no_hotter(temperature, limit).else_says(
                    f"{step.written} heats the block to {{found}}, {{limit}} allowed"
                )
            )
            if step.word in ("paint", "lag"):
                judged.append(
                    sheet.no_hotter(temperature, sheet.take("T_d", block.design_temperature)).else_says(
                        f"{step.written} at {{found}}, the block is made for {{limit}}"
                    )
                )
    if not judged:
        raise sheet.not_applicable("no step after the stress relief is hot")
    return by_stage(sheet.worst(*judged), sheet)


def _heats_of(step: MakingStep, block: CylinderBlock, sheet: Sheet) -> Iterator[float]:
    """The temperature of a step where it states one; that of the block's heating for one that heats it."""
    detail = block.making.details.get(step.written)
    if detail is not None and sheet.is_stated(f"temperature of {step.written}", detail.temperature):
        yield sheet.take(f"T of {step.written}", detail.temperature)
    elif step.word == "heat block":
        yield sheet.take("T_h", block.heated_to)


RULES = (pressed_before_finished, seats_finished_in_line, heated_once, later_steps_cooler)
