"""How the cams of a shaft bend it and load its bearings."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Judgement,
    Limit,
    Pair,
    Rule,
    Sheet,
    agreement,
    rule,
)
from speclint.equations import Metres, Newtons
from speclint.facts import CRACKED, cams_on, loads_of_bearings, moments_needed
from speclint.handbook.members import TIMOSHENKO, projected_pressure
from speclint.specs import LoadCase, Shaft
from speclint_valves.formulae.bearings import rated_at_most
from speclint_valves.sources import DIN_31652_3, ISO_76


def _moments(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The bending moment of the shaft, at its least, against the greatest of its cams and drive, in each notch.

    The drive pushes with the greater of the torque that is stated and that which its cams need.
    """
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
    title="Each bearing of a camshaft is rated for the greatest load of its cams at their places, the blow as each "
    "takes up its clearance and its drive with them, and for no more than its size bears",
    on=Shaft,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    edition=2,
    limits=[
        CRACKED,
        Limit("bush", "25 MPa", "stress", DIN_31652_3, "greatest pressure that a bush is rated for"),
        Limit("rollers", "44 MPa", "stress", ISO_76, "factor of the static rating of radial rollers"),
        Limit(
            "raceway",
            "1.5",
            "ratio",
            COMMON_PRACTICE,
            "greatest diameter of an inner raceway over the bore; heavy roller bearings have 1.4",
        ),
    ],
    cites=[TIMOSHENKO, ISO_76, FIRST_PRINCIPLES],
    why="a bearing that is loaded beyond its rating wears, and its shaft drops from the valves it should lift",
    leaves_out="how the rating was found, oil, speed and life; a rating that its size would bear; loads along the "
    "shaft; limits of sizes, springs and pressures; bearings out of line; weight; rods of the drive, whose mass pulls "
    "too; bearings on a sleeve",
    against=("wear",),
)
def bearing_load(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Judgement:
    """R = F_d r_d + Σ F r, by statics on two bearings and by three moments on more, at the worst angle and notch.

    The drive pushes with the greater of the torque that is stated and that which its cams need. A rating above that of
    rollers as wide as the bearing, side by side round it, is none; of a bush it is asked about.
    """
    if not cams_on(shaft, sheet):
        raise sheet.not_applicable("no cam turns on it")
    items = [
        *(
            (name, partial(_loaded, shaft, name, load, sheet))
            for name, load in loads_of_bearings(shaft, case, sheet)
        ),
        *((name, partial(_by_size, shaft, name, sheet)) for name in shaft.bearings),
    ]
    return sheet.each(items, lambda item: item[1]())


def _loaded(shaft: Shaft, name: str, load: Newtons, sheet: Sheet) -> Judgement:
    rated = sheet.take(f"C_{name}", shaft.bearings[name].rated_load)
    return sheet.at_most(load, rated).else_says("bearing {item} loaded with {found}, rated for {limit}")


def _by_size(shaft: Shaft, name: str, sheet: Sheet) -> Judgement:
    """The rating against the pressure of a bush, or against rollers all round the bearing."""
    bearing = shaft.bearings[name]
    rated, b, d = (
        sheet.take(f"C_{name}", bearing.rated_load),
        sheet.take(f"b_{name}", bearing.length),
        _bore(shaft, sheet),
    )
    if sheet.said(f"{name} runs in", bearing.runs_in) != "rolling bearing":
        p = sheet.work(f"p_{name}", projected_pressure, F=rated, d=d, b=b)
        return (
            sheet.at_most(p, sheet.limit("bush", "p_b"))
            .else_says(
                "bearing {item} rated for {found}, more than {limit} of a bush, and not said to be a rolling bearing"
            )
            .graded(Grade.QUERY)
        )
    most = sheet.work(
        f"C_m {name}",
        rated_at_most,
        f_r=sheet.limit("rollers", "f_r"),
        k=sheet.limit("raceway", "k"),
        d=d,
        b=b,
    )
    return sheet.at_most(rated, most).else_says(
        "bearing {item} rated for {found}, rollers all round it bear {limit}"
    )


def _bore(shaft: Shaft, sheet: Sheet) -> Metres:
    """The diameter in the bearings, at the most: that over the largest collar or journal, where it is stated."""
    if sheet.is_stated("greatest diameter", shaft.greatest_diameter):
        return sheet.take("D", shaft.greatest_diameter)
    return sheet.take("d", shaft.diameter)


RULES = (bearing_load, bends_under_its_cams)
