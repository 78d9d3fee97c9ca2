"""What holds lagging and the sheet over it on the engine."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kilograms, Metres, Newtons, Pascals, SquareMetres
from speclint.facts import inside_of_lagging
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import sum_of_loads
from speclint.handbook.threads import nominal_diameter, stress_area
from speclint.specs import Lagging, LoadCase, SheetFixing
from speclint_steamways.formulae.lagging_fixings import (
    area_of_one_screw,
    edge_in_diameters,
    half_of_head,
    head_in_diameters,
    jolted_weight,
    load_of_band,
    load_of_one_fixing,
    load_of_screw,
    load_over_head,
    mass_of_flat_lagging,
    mass_of_round_lagging,
    pull_of_air,
    side_of_round_lagging,
)
from speclint_steamways.sources import EN_1991_1_4, PULLED_THROUGH

#: These turn back under jolts, as Junker's tests show of a spring washer: common practice.
_NO_LOCK = ("spring washer", "nothing")


@rule(
    "lagging.held",
    edition=2,
    title="Half of the screws, 4 at least, or bands, 2, hold lagging and its sheet, jolted by 2 g and in the air of "
    "full speed, by EN 1993-1-3 and a quarter of their strength; all locked, no head off the edge",
    on=Lagging,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE, EN_1991_1_4, PULLED_THROUGH],
    why="a sheet that the air tears off at speed is thrown at people beside the line or under the train",
    leaves_out="flutter and fatigue of the sheet, gusts of passing trains, the frame into which the screws go, sheets "
    "that overlap; corrosion of either: the local railway code and a competent person decide",
    against=("fall",),
    limits=[
        Limit("jolts", "2", "ratio", COMMON_PRACTICE, "greatest acceleration by the track, in times gravity"),
        Limit(
            "air",
            "1",
            "ratio",
            COMMON_PRACTICE,
            "greatest pull of the air, in times the pressure of the speed",
        ),
        Limit("screws", "4", "ratio", COMMON_PRACTICE, "least number of screws: one at each corner"),
        Limit("bands", "2", "ratio", COMMON_PRACTICE, "least number of bands"),
        Limit("area", "0.25 m²", "area", COMMON_PRACTICE, "greatest area of flat sheet for each screw"),
        Limit("head", "1.4", "ratio", COMMON_PRACTICE, "least head of a screw, in diameters of the screw"),
        Limit(
            "share", "0.5", "ratio", COMMON_PRACTICE, "share of the screws or bands that is taken to carry"
        ),
        Limit(
            "strength", "0.25", "ratio", COMMON_PRACTICE, "greatest stress over tensile strength of a fixing"
        ),
        Limit("sheet", "1.25", "ratio", PULLED_THROUGH, "partial factor on the strength of the sheet"),
        Limit(
            "edge", "1.5", "ratio", PULLED_THROUGH, "least distance from the edge, in diameters of the screw"
        ),
    ],
)
def held(lagging: Lagging, case: LoadCase, sheet: Sheet) -> Judgement:
    """F_1 = F/(s n), of jolts and air together as if both pulled the sheet outward, on a screw or a band.

    A sheet torn at its edge bears more than one pulled over the head, where the screw is 1.5 diameters from it and the
    whole head, or its washer, lies on the sheet.
    """
    fixing = lagging.fixing
    by, lock = sheet.read("fixed by", fixing.by), sheet.read("locked by", fixing.locked_by)
    locked = sheet.states(lock not in _NO_LOCK, f"{by} locked by: {lock}", where=fixing.locked_by.where)
    flat = sheet.read("form", lagging.form) == "flat"
    if flat and by == "bands":
        return sheet.states(False, "bands hold nothing flat: they go round", where=fixing.by.where)
    n = sheet.count("n", fixing.count)
    if n < 1:
        return sheet.states(False, f"no {by} hold the sheet", where=fixing.count.where)
    enough = sheet.at_least(float(n), sheet.limit(by)).else_says(
        f"{by}: {{found}} hold the sheet, {{limit}} wanted"
    )
    together = _load(lagging, case, sheet, flat=flat)
    F_1 = sheet.work("F_1", load_of_one_fixing, F=together, s=sheet.limit("share", "s"), n=float(n))
    borne = _screw(lagging, F_1, sheet) if by == "screws" else [_band(fixing, F_1, sheet)]
    if flat:
        each = sheet.work("A_1", area_of_one_screw, A=sheet.take("A", lagging.area), n=float(n))
        borne.append(
            sheet.at_most(each, sheet.limit("area")).else_says(
                "a screw for each {found} of sheet, {limit} at the most wanted"
            )
        )
    return sheet.worst(locked, enough, *borne)


def _load(lagging: Lagging, case: LoadCase, sheet: Sheet, *, flat: bool) -> Newtons:
    M, A = _mass(lagging, sheet, flat=flat)
    F_j = sheet.work("F_j", jolted_weight, M=M, n=sheet.limit("jolts", "n_j"))
    v = sheet.take("v", case.track_speed)
    F_a = sheet.work("F_a", pull_of_air, c=sheet.limit("air", "c"), v=v, A=A)
    return sheet.work("F", sum_of_loads, F_1=F_j, F_2=F_a)


def _mass(lagging: Lagging, sheet: Sheet, *, flat: bool) -> tuple[Kilograms, SquareMetres]:
    """Mass of lagging and sheet, and the area on which the air pulls."""
    sizes: dict[str, Metres] = {
        "t": sheet.take("t", lagging.thickness),
        "t_s": sheet.take("t_s", lagging.sheet_thickness),
    }
    given = {
        **sizes,
        "ρ": sheet.take("ρ", lagging.density),
        "ρ_s": sheet.look_up("ρ_s", sheet.material_of(lagging).density, of=lagging),
    }
    if flat:
        A = sheet.take("A", lagging.area)
        return sheet.work("M", mass_of_flat_lagging, A=A, **given), A
    around = {"L": sheet.take("L", lagging.length), "d": inside_of_lagging(lagging, sheet)}
    A = sheet.work("A", side_of_round_lagging, **around, **sizes)
    return sheet.work("M", mass_of_round_lagging, **around, **given), A


def _screw(lagging: Lagging, F_1: Newtons, sheet: Sheet) -> list[Judgement]:
    """By itself, by the sheet under its head, and by its distance from the edge."""
    fixing = lagging.fixing
    thread = sheet.read("thread", fixing.thread)
    d = sheet.look_up("d_s", nominal_diameter, designation=thread)
    A_s = sheet.look_up("A_s", stress_area, designation=thread)
    k, R_m = sheet.limit("strength", "k"), _strength(fixing, d, sheet)
    bears = sheet.work("F_s", load_of_screw, k=k, R_m=R_m, A_s=A_s)
    t_s = sheet.take("t_s", lagging.sheet_thickness)
    metal = sheet.material_of(lagging)
    f_u = sheet.look_up("f_u", metal.tensile_strength, of=lagging, at=DRAWING_TEMPERATURE, thickness=t_s)
    over = {"d_w": sheet.take("d_w", fixing.head), "t_s": t_s, "f_u": f_u}
    torn = sheet.work("F_p", load_over_head, gamma=sheet.limit("sheet", "γ"), **over)
    apart = sheet.work("k_e", edge_in_diameters, e=sheet.take("e", fixing.edge), d=d)
    half = sheet.work("r_w", half_of_head, d_w=over["d_w"])
    wide = sheet.work("k_w", head_in_diameters, d_w=over["d_w"], d=d)
    return [
        sheet.at_most(F_1, torn).else_says("a screw pulls on the sheet with {found}, {limit} allowed"),
        sheet.at_most(F_1, bears).else_says("a screw is pulled with {found}, {limit} allowed"),
        sheet.at_least(wide, sheet.limit("head")).else_says(
            "the head of a screw has {found} times its diameter, {limit} wanted"
        ),
        sheet.at_least(apart, sheet.limit("edge")).else_says(
            "a screw stands {found} diameters from the edge of the sheet, {limit} wanted"
        ),
        sheet.at_most(half, sheet.take("e", fixing.edge)).else_says(
            "head or washer reaches {found} to each side, the edge of the sheet is at {limit}"
        ),
    ]


def _band(fixing: SheetFixing, F_1: Newtons, sheet: Sheet) -> Judgement:
    b, t_b = sheet.take("b", fixing.width), sheet.take("t_b", fixing.thickness)
    k, R_m = sheet.limit("strength", "k"), _strength(fixing, t_b, sheet)
    bears = sheet.work("F_b", load_of_band, k=k, R_m=R_m, b=b, t_b=t_b)
    return sheet.at_most(F_1, bears).else_says("a band is pulled with {found}, {limit} allowed")


def _strength(fixing: SheetFixing, thickness: Metres, sheet: Sheet) -> Pascals:
    metal = sheet.material_named("the fixing", fixing.material)
    return sheet.look_up("R_m", metal.tensile_strength, at=DRAWING_TEMPERATURE, thickness=thickness)


RULES = (held,)
