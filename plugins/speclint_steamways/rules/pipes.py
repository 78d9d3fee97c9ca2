"""Steam pipes: wall, test and flexibility."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, Metres, Pascals, Ratio
from speclint.facts import movement_of_pipe, starts_of_life
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.steam import (
    B31_1,
    BENT,
    EN_13480_3,
    FLEXIBILITY,
    RANGE,
    STRAIGHT,
    allowable_stress_range,
    bend_factor_inside,
    bend_factor_outside,
    bend_wall,
    bend_wall_of_european_code,
    cycle_factor,
    end_thrust,
    flexibility_used,
    pipe_wall,
    pipe_wall_of_european_code,
    restrained_stress,
    rise_from_cold,
)
from speclint.specs import HOT_CASES, LensJoint, LoadCase, SteamPipe
from speclint_steamways.formulae.pipes import (
    hoop_stress_in_bend,
    hoop_stress_of_pipe,
    wall_outside_bend,
    wanted_pipe_test,
    with_allowance,
)
from speclint_steamways.inputs.pipes import (
    american_allowable,
    design_pressure,
    design_temperature,
    european_allowable,
    factor_y,
    thinnest,
)
from speclint_steamways.sources import EN_13480_5, PIPE_TEST


class _Taken(NamedTuple):
    """The values that both codes use."""

    p: Pascals
    D: Metres
    S: Pascals
    f: Pascals
    E: Ratio
    y: Ratio
    A: Metres


@rule(
    "pipe.wall",
    title="The thinnest wall within the mill tolerance, straight and at the sharpest bend, is at least "
    "that of ASME B31.1 and EN 13480-3",
    on=SteamPipe,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[STRAIGHT, BENT, EN_13480_3.at("6.1 and 6.2")],
    why="the wall on the drawing is not the wall on the engine: mill tolerance, bending and rust each "
    "take a share",
    leaves_out="loads from weight, thermal expansion and water, branches and ends: the local code named "
    "in the settings and a competent person decide, and the edition of the code in force takes "
    "precedence",
    against=("burst", "corrode"),
    edition=5,
)
def wall(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Judgement:
    """Straight pipe, and inside and outside of the sharpest bend, each by ASME B31.1 and by EN 13480-3.

    Pressure and temperature are the greater of duty and design figure. The inside of a bend counts with
    no more than the wall of the straight pipe.
    """
    t, t_l = thinnest(pipe, sheet)
    at = design_temperature(pipe, case, sheet)
    D = sheet.take("D", pipe.outside_diameter)
    taken = _Taken(
        p=design_pressure(pipe, case, sheet),
        D=D,
        S=american_allowable(pipe, sheet, at, t),
        f=european_allowable(pipe, sheet, at, t),
        E=sheet.take("E", pipe.joint_factor),
        y=factor_y(pipe, sheet, D, t_l, at),
        A=sheet.take("A", pipe.corrosion_allowance),
    )
    found = list(_straight(sheet, taken, t_l))
    bends = sheet.count("n", pipe.bends)
    if bends > 0:
        found += _bent(pipe, sheet, taken, t_l)
    return sheet.worst(*found)


def _straight(sheet: Sheet, of: _Taken, t_l: Metres) -> Iterator[Judgement]:
    american = sheet.work("t_m", pipe_wall, p=of.p, D=of.D, S=of.S, E=of.E, y=of.y, A=of.A)
    yield sheet.at_least(t_l, american).else_says("wall {found}, ASME B31.1 requires {limit}")
    e = sheet.work("e", pipe_wall_of_european_code, p=of.p, D=of.D, f=of.f, z=of.E)
    yield sheet.at_least(t_l, sheet.work("t_e", with_allowance, e=e, c=of.A)).else_says(
        "wall {found}, EN 13480-3 requires {limit}"
    )


def _bent(pipe: SteamPipe, sheet: Sheet, of: _Taken, t_l: Metres) -> Iterator[Judgement]:
    R = sheet.take("R", pipe.bend_radius)
    outside = sheet.work("t_b", wall_outside_bend, t=t_l, k=sheet.take("k", pipe.bend_thinning))
    e = sheet.work("e", pipe_wall_of_european_code, p=of.p, D=of.D, f=of.f, z=of.E)
    for side, factor, there in (("i", bend_factor_inside, t_l), ("o", bend_factor_outside, outside)):
        bend = sheet.work(f"I_{side}", factor, R=R, D=of.D)
        american = sheet.work(f"t_m{side}", bend_wall, p=of.p, D=of.D, S=of.S, E=of.E, I=bend, y=of.y, A=of.A)
        yield sheet.at_least(there, american).else_says(
            "wall at the bend {found}, ASME B31.1 requires {limit}"
        )
        e_b = sheet.work(f"e_{side}", bend_wall_of_european_code, e=e, B=bend)
        yield sheet.at_least(there, sheet.work(f"t_e{side}", with_allowance, e=e_b, c=of.A)).else_says(
            "wall at the bend {found}, EN 13480-3 requires {limit}"
        )


@rule(
    "pipe.test",
    title="The hydraulic test is at least 1.5 times the design pressure, more where the hot metal is much weaker, "
    "and stresses the wall, straight and at the sharpest bend, to at most 0.9 of proof stress",
    on=SteamPipe,
    cases=("starting", "running"),
    edition=6,
    grade=Grade.HOLD,
    cites=[
        EN_13480_5.at("9.3.2.2"),
        B31_1.at("137.4.5 and 102.3.3(B), as reproduced in a public test plan for piping", memory=False),
        BENT,
    ],
    why="cold steel is stronger than hot: a test at little more than the working pressure proves "
    "nothing about the hot pipe",
    leaves_out="safety during the test, and which regulation requires it: the local code and a "
    "competent person decide",
    against=("burst",),
    limits=[
        Limit(
            "factor",
            "1.5",
            "ratio",
            PIPE_TEST,
            "least test pressure over design pressure",
        ),
        Limit(
            "share-of-proof-stress",
            "0.9",
            "ratio",
            B31_1.at("102.3.3(B), as reproduced in a public test plan for piping", memory=False),
            "share of proof stress allowed at the test",
        ),
    ],
)
def hydraulic_test(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Judgement:
    """Test against 1.5 times the design pressure, and 1.25 times it for strength lost hot; stress at the test."""
    p_t = sheet.take("p_t", pipe.test_pressure)
    t, t_l = thinnest(pipe, sheet)
    at = design_temperature(pipe, case, sheet)
    wanted = sheet.work(
        "p_w",
        wanted_pipe_test,
        p=design_pressure(pipe, case, sheet),
        k=sheet.limit("factor", "k"),
        f_20=european_allowable(pipe, sheet, DRAWING_TEMPERATURE, t, "f_20"),
        f_T=european_allowable(pipe, sheet, at, t, "f_T"),
    )
    proof = sheet.look_up(
        "R_p", sheet.material_of(pipe).proof_stress, of=pipe, at=DRAWING_TEMPERATURE, thickness=t
    )
    allowed = sheet.work("S_a", share_of_strength, k=sheet.limit("share-of-proof-stress", "x"), R=proof)
    stresses = _stresses_at_test(pipe, sheet, p_t, t_l)
    return sheet.worst(
        sheet.at_least(p_t, wanted).else_says("pipe tested at {found}, {limit} wanted"),
        *(
            sheet.at_most(stress, allowed).else_says("test stresses the pipe to {found}, {limit} allowed")
            for stress in stresses
        ),
    )


def _stresses_at_test(pipe: SteamPipe, sheet: Sheet, p_t: Pascals, t_l: Metres) -> Iterator[Pascals]:
    """Hoop stress of the straight pipe, and at the inside and the outside of the sharpest bend."""
    D, E = sheet.take("D", pipe.outside_diameter), sheet.take("E", pipe.joint_factor)
    y = factor_y(pipe, sheet, D, t_l, DRAWING_TEMPERATURE)
    straight = sheet.work("S_t", hoop_stress_of_pipe, p=p_t, D=D, t=t_l, E=E, y=y)
    yield straight
    if sheet.count("n", pipe.bends) == 0:
        return
    R = sheet.take("R", pipe.bend_radius)
    inside = sheet.work("I_i", bend_factor_inside, R=R, D=D)
    yield sheet.work("S_ti", hoop_stress_in_bend, I=inside, S=straight)
    thinned = sheet.work("t_b", wall_outside_bend, t=t_l, k=sheet.take("k", pipe.bend_thinning))
    there = sheet.work("S_b", hoop_stress_of_pipe, p=p_t, D=D, t=thinned, E=E, y=y)
    outside = sheet.work("I_o", bend_factor_outside, R=R, D=D)
    yield sheet.work("S_to", hoop_stress_in_bend, I=outside, S=there)


@rule(
    "pipe.flexibility",
    title="The pipe takes up its expansion by a joint, or two lens joints, of enough movement, straight within the "
    "stress range, or by bends within the simple criterion, beyond which a query asks for an analysis",
    on=SteamPipe,
    cases=HOT_CASES,
    edition=5,
    grade=Grade.NONCONFORMITY,
    cites=[FLEXIBILITY, RANGE, COMMON_PRACTICE],
    why="a hot pipe that cannot flex pushes until a flange leaks, a stud stretches or a casting cracks",
    leaves_out="forces on anchors, pressure thrust on a sliding joint or bellows, weight and vibration; "
    "a nearly straight or saw-tooth run, to which the criterion does not apply",
    against=("break in fatigue",),
    limits=[
        Limit(
            "share",
            "1",
            "ratio",
            FLEXIBILITY,
            "share of the simple criterion that may be used without a flexibility analysis",
        )
    ],
)
def flexibility(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Judgement:
    """Bends by the simple criterion, a joint by its rated movement, a straight run by its stress.

    The simple criterion is far on the safe side: a sound pipe may use it several times over, as an analysis shows.
    """
    D, T = sheet.take("D", pipe.outside_diameter), sheet.take("T", case.temperature_of(pipe))
    material = sheet.material_of(pipe)
    ΔT = sheet.work("ΔT", rise_from_cold, T=T, T_0=DRAWING_TEMPERATURE)
    alpha = sheet.look_up("α", material.expansion, of=pipe, at=T)
    U, Y = sheet.take("U", pipe.anchor_distance), movement_of_pipe(pipe, case, sheet)
    by = sheet.read("taken up by", pipe.takes_up_by)
    if by != "bends":
        rated = sheet.at_most(Y, sheet.take("Y_j", pipe.joint_movement)).else_says(
            "pipe moves by {found}, its joint is rated for {limit}"
        )
        return sheet.worst(rated, *_turns(pipe, sheet)) if by == "lens joints" else rated
    E = sheet.look_up("E", material.modulus, of=pipe, at=DRAWING_TEMPERATURE)
    S_A = _stress_range(pipe, sheet, T)
    if sheet.count("n", pipe.bends) == 0:
        return _straight_run(pipe, sheet, (E, alpha, ΔT, D), S_A)
    L = sheet.take("L", pipe.length)
    used = sheet.work("u", flexibility_used, D=D, Y=Y, L=L, U=U, S_A=S_A, E=E)
    return (
        sheet.at_most(used, sheet.limit("share", "u_a"))
        .else_says("bends use {found} times the simple criterion, {limit} allowed")
        .graded(Grade.QUERY)
    )


def _turns(pipe: SteamPipe, sheet: Sheet) -> Iterator[Judgement]:
    """A pipe turns between two lens joints; with one it bends at its other end."""
    rings = [lens.id for lens in sheet.belonging_to(pipe, LensJoint)]
    both = len(rings) > 1
    drawn = f"with {' and '.join(rings)}" if both else f"of which {rings[0] if rings else 'none'} is drawn"
    yield sheet.states(
        both, f"{pipe.id} turns in lens joints at both ends, {drawn}", where=pipe.takes_up_by.where
    )


def _stress_range(pipe: SteamPipe, sheet: Sheet, T: Kelvins) -> Pascals:
    t = sheet.take("t", pipe.wall)
    f = sheet.work("f", cycle_factor, N=float(sheet.count("N", starts_of_life(pipe, pipe.cycles, sheet))))
    S_c = american_allowable(pipe, sheet, DRAWING_TEMPERATURE, t)
    S_h = american_allowable(pipe, sheet, T, t)
    return sheet.work("S_A", allowable_stress_range, f=f, S_c=S_c, S_h=S_h)


def _straight_run(
    pipe: SteamPipe, sheet: Sheet, of: tuple[Pascals, Ratio, Ratio, Metres], S_A: Pascals
) -> Judgement:
    """A straight run between anchors: its stress is judged, its thrust is written on the sheet."""
    E, alpha, ΔT, D = of
    bore = D - 2 * sheet.take("t", pipe.wall)
    sheet.work("F", end_thrust, E=E, alpha=alpha, ΔT=ΔT, D=D, d=bore)
    return sheet.at_most(sheet.work("σ", restrained_stress, E=E, alpha=alpha, ΔT=ΔT), S_A).else_says(
        "heat stresses the straight run to {found}, {limit} allowed"
    )


RULES = (wall, hydraulic_test, flexibility)
