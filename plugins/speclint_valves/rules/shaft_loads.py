"""How the cams of a shaft bend it and load its bearings."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Pair, Rule, Sheet, agreement, rule
from speclint.equations import Newtons
from speclint.facts import CRACKED, cams_on, loads_of_bearings, moments_needed
from speclint.handbook.members import TIMOSHENKO
from speclint.specs import LoadCase, Shaft


def _moments(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The bending moment of the shaft, at its least, against the greatest of its cams and drive, in each notch."""
    if not (cams_on(shaft, sheet) and sheet.is_stated("bending moment", shaft.bending_moment)):
        return
    for notch, needed in moments_needed(shaft, case, sheet):
        yield Pair(shaft.bending_moment, needed, "at least", name=f"notch {notch}" if notch else "")


bends_under_its_cams: Rule = agreement(
    "shaft.bends-under-its-cams",
    edition=2,
    title="The bending moment stated for a camshaft is at least that of its cams at their places between its bearings, "
    "the blow as each takes up its clearance and the load of its drive with them",
    on=Shaft,
    pairs=_moments,
    within="",
    cases=("starting", "running"),
    limits=[CRACKED],
    cites=[TIMOSHENKO, FIRST_PRINCIPLES],
    grade=Grade.NONCONFORMITY,
    why="a shaft judged for less bending than its cams ask breaks at a key long before its time",
    leaves_out="limits of sizes, springs and pressures, which are taken as the drawings aim at them; bearings out of "
    "line or with play; a shaft thicker where it is bent most than at its most stressed section, for which a "
    "concession says so; weight; rods of the drive, whose mass pulls too; torque handed on to other shafts "
    "beyond what is stated",
)


@rule(
    "shaft.bearing-load",
    edition=2,
    title="Each bearing of a camshaft is rated for the greatest load of its cams at their places, with the blow as "
    "each takes up its clearance, and of its drive",
    on=Shaft,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    limits=[CRACKED],
    cites=[TIMOSHENKO, FIRST_PRINCIPLES],
    why="a bearing that is loaded beyond its rating wears, and its shaft drops from the valves it should lift",
    leaves_out="how the rating was found, oil, speed and life; loads along the shaft; limits of sizes, springs and "
    "pressures; bearings out of line; weight; rods of the drive, whose mass pulls too",
    against=("wear",),
)
def bearing_load(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Judgement:
    """R = F_d r_d + Σ F r, by statics on two bearings and by three moments on more, at the worst angle and notch."""
    if not cams_on(shaft, sheet):
        raise sheet.not_applicable("no cam turns on it")
    loads = list(loads_of_bearings(shaft, case, sheet))

    def judge(item: tuple[str, Newtons]) -> Judgement:
        name, load = item
        rated = sheet.take(f"C_{name}", shaft.bearings[name].rated_load)
        return sheet.at_most(load, rated).else_says("bearing {item} loaded with {found}, rated for {limit}")

    return sheet.each(loads, judge)


RULES = (bearing_load, bends_under_its_cams)
