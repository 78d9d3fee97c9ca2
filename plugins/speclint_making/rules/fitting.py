"""From the hydraulic test to the first steam: what is fitted, set, lifted in, tightened and lagged in which order."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import places_of
from speclint.specs import BoltedJoint, CamBox, CylinderBlock, CylinderCover
from speclint_making.inputs.fitted_parts import goes_in_at
from speclint_making.inputs.implied_steps import told_of
from speclint_making.inputs.steps import (
    DEFERS,
    TOLD,
    WELDS,
    Steps,
    Words,
    by_stage,
    follow,
    goes_in_after,
    goes_in_before,
    in_chain,
    listed,
    precede,
)
from speclint_making.sources import EN_13445_5

#: Steps that take metal off the walls which the hydraulic test is to prove.
_BORINGS = ("rough machine", "finish bore")
#: Pairs of steps that are judged where a list has both.
_OF_THE_GEAR = (
    (("finish seats in line",), ("lap valves",)),
    (("fit gear",), ("set tappets",)),
    (("set tappets",), ("measure cold clearance",)),
)
_OF_THE_PIPES = ((("fit pipes",), ("steam test",)),)
_OF_THE_PADS = ((("grind last link",), ("lift in",)),)


@rule(
    "making.tapped-before-test",
    title="Holes are tapped before studs are set and the block is tested, and studs set before the covers are fitted",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a hole that is drilled through into a chamber after the test leaks in steam",
    leaves_out="holes that do not come near a chamber",
    against=(),
    edition=5,
)
def tapped_before_test(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The step "tap holes" before the test and that of all studs; that of each cover's studs before "fit covers"."""
    steps, told = listed(block, sheet), told_of(block, sheet)
    joints = sheet.belonging_to(block, BoltedJoint)
    studs = [one for one in joints if sheet.read(f"fastener of {one.id}", one.fastener) == "stud"]
    covers = sheet.belonging_to(block, CylinderCover)
    of_covers = {joint.id for cover in covers for joint in sheet.belonging_to(cover, BoltedJoint)}
    judged = []
    if places_of(("hydraulic test",), steps):
        judged.append(precede(steps, ("tap holes",), ("hydraulic test",), sheet, told))
    if places_of(("tap holes",), steps) and places_of(("set studs",), steps):
        judged.append(follow(steps, ("tap holes",), ("set studs",), sheet))
    judged += _after(studs, ("tap holes",), steps, sheet)
    if places_of(("fit covers",), steps):
        judged += [
            goes_in_before(goes_in_at(one, sheet), ("fit covers",), steps, sheet)
            for one in studs
            if one.id in of_covers
        ]
    if not judged:
        raise sheet.not_applicable("the list neither tests the block nor fits covers over studs")
    return by_stage(sheet.worst(*judged), sheet)


@rule(
    "making.tested-uncovered",
    title="The hydraulic test comes after the last weld, the last boring of a wall and the fitting of the covers, and "
    "before gear, paint, lagging and the lift into the frames",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_5.at("standard hydraulic test"), COMMON_PRACTICE],
    why="a leak under a cover is not seen, and neither a weld laid after the test nor a wall made thinner is tested",
    leaves_out="pressure and time of the test, which cylinder.test-pressure judges; what is taken off joint faces, "
    f"pads and seats, and by honing; {DEFERS}",
    against=(),
    edition=5,
)
def tested_uncovered(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The last test after every weld and boring; every test after "fit covers", and before what would hide a leak."""
    steps = listed(block, sheet)
    tests = places_of(("hydraulic test",), steps)
    if not tests and "hydraulic test" in told_of(block, sheet):
        raise sheet.not_applicable(TOLD.format("hydraulic test"))
    if not tests:
        judged = sheet.states(False, 'the list has no "hydraulic test"', where=block.making.where)
        return by_stage(judged, sheet, grave=True)
    judged_all = [sheet.states(True, "the block is tested")]
    for called, words in (("weld", WELDS), ("boring", _BORINGS)):
        done = places_of(words, steps)
        if done:
            last = steps[done[-1]]
            says = f'step {done[-1] + 1}, "{last.written}", and the last test is step {tests[-1] + 1}'
            judged_all.append(
                sheet.states(done[-1] < tests[-1], f"the last {called} is {says}", where=last.where)
            )
    if places_of(("fit covers",), steps):
        judged_all.append(precede(steps, ("fit covers",), ("hydraulic test",), sheet))
    judged_all += _after(sheet.belonging_to(block, CamBox), ("hydraulic test",), steps, sheet)
    for hides in ("fit gear", "paint", "lift in", "lag"):
        if places_of((hides,), steps):
            judged_all.append(precede(steps, ("hydraulic test",), (hides,), sheet))
    return by_stage(sheet.worst(*judged_all), sheet, grave=True)


@rule(
    "making.lapped-before-set",
    title="Valves are lapped after their seats are finished in line and before the tappets are set, the gear fitted "
    "before that; the cold clearance is measured last, with the spindle caps ground",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="every lapping lets the valve down and takes the clearance, a seat that is cut after it leaks again, and a "
    "clearance that is measured before it is set is not that of the engine",
    leaves_out="the temperature at which valves are lapped, which valve.beat-growth takes",
    against=(),
    edition=2,
)
def lapped_before_set(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The step "lap valves" before "set tappets", "grind caps" before "measure cold clearance"; more where listed."""
    steps = listed(block, sheet)
    ways = ((("lap valves",), ("set tappets",)), (("grind caps",), ("measure cold clearance",)))
    judged = sheet.each(ways, lambda way: precede(steps, *way, sheet))
    return by_stage(sheet.worst(judged, *_each_listed(_OF_THE_GEAR, steps, sheet)), sheet)


@rule(
    "making.measured-before-ground",
    title="Pads and cut-outs of the frames are measured before the last link of their chain is ground, and that is "
    "done before the block is lifted in",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="the last link takes up what the others came out at, and must know it; in the frames it cannot be ground",
    leaves_out="the measured sizes, which chain.measured judges",
    against=(),
    edition=2,
)
def measured_before_ground(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The step "face pads", then "measure pads", before "grind last link", and this before "lift in"."""
    steps = listed(block, sheet)
    ways = ((("measure pads",), ("grind last link",)), (("face pads",), ("measure pads",)))
    judged = sheet.each(ways, lambda way: precede(steps, *way, sheet))
    return by_stage(sheet.worst(judged, *_each_listed(_OF_THE_PADS, steps, sheet)), sheet)


@rule(
    "making.in-frames-before-pipes",
    title="The block is lifted in, its pads bolted and its room for growth measured before pipes are fitted",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a pipe drawn to the block holds it where it is not to be",
    leaves_out="the room for growth itself, which fit.growth-room judges",
    against=(),
    edition=2,
)
def in_frames_before_pipes(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Each of the three steps before "fit pipes", and of these each before those after it."""
    steps, told = listed(block, sheet), told_of(block, sheet)
    chain = (("lift in",), ("bolt pads",), ("measure growth room",), ("fit pipes",))
    judged = sheet.each(chain[:-1], lambda first: precede(steps, first, ("fit pipes",), sheet, told))
    return by_stage(sheet.worst(judged, in_chain(steps, chain, sheet)), sheet)


@rule(
    "making.tightened-before-lagged",
    title="The steam test comes after the fitting of the pipes; after it nuts are retightened hot, and only then is "
    "lagging closed over them",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a nut under lagging is not tightened again, and a joint of a pipe that is fitted after the test is not tested",
    leaves_out="lagging that leaves every nut free; how far nuts are retightened",
    against=(),
    edition=2,
)
def tightened_before_lagged(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """The step "fit pipes", where it is listed, then "steam test", then "retighten hot", before "lag"."""
    steps = listed(block, sheet)
    ways = (
        (("steam test",), ("retighten hot",)),
        (("retighten hot",), ("lag",)),
    )
    judged = sheet.each(ways, lambda way: precede(steps, *way, sheet))
    return by_stage(sheet.worst(judged, *_each_listed(_OF_THE_PIPES, steps, sheet)), sheet)


def _after(
    parts: Sequence[BoltedJoint | CamBox], first: Words, steps: Steps, sheet: Sheet
) -> list[Judgement]:
    """That parts which name a step of their own go in after the last step of some words."""
    own = [one for one in parts if sheet.is_stated(f"step of {one.id}", one.making.at_step)]
    judged = (goes_in_after(one.id, goes_in_at(one, sheet), first, steps, sheet) for one in own)
    return [one for one in judged if one is not None]


def _each_listed(ways: Sequence[tuple[Words, Words]], steps: Steps, sheet: Sheet) -> list[Judgement]:
    """That of several pairs of steps, each that the list has both of, the first comes before the second."""
    both = (way for way in ways if all(places_of(words, steps) for words in way))
    return [follow(steps, *way, sheet) for way in both]


RULES = (
    tapped_before_test,
    tested_uncovered,
    lapped_before_set,
    measured_before_ground,
    in_frames_before_pipes,
    tightened_before_lagged,
)
