"""A pipe between what carries it."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, NewtonsPerMetre, Ratio
from speclint.facts import mass_of_part, wall_left
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import (
    section_modulus,
    tube_second_moment,
)
from speclint.specs import Bracket, LoadCase, SteamPipe, by_word
from speclint_steamways.formulae.pipe_spans import (
    jolted_load,
    moment_of_span,
    sag_of_span,
    span_between,
    stress_factor_of_bend,
    sustained_stress,
    weight_full_of_water,
)
from speclint_steamways.inputs.pipes import (
    design_pressure,
    design_temperature,
    european_allowable,
)
from speclint_steamways.sources import KELLOGG, OCCASIONAL, SPANS, SUSTAINED, SUSTAINED_BEND

#: A bracket that carries less than this of an even share of the pipe is no place that carries it: common practice.
_LEAST_SHARE = 0.5


@rule(
    "pipe.span",
    title="Between its ends, and brackets that carry it, a pipe bears its pressure and its weight, full of water, "
    "within the design stress hot, 1.2 times that with 2 g more of jolts, and sags by 2.5 mm at most",
    on=SteamPipe,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[SUSTAINED, OCCASIONAL, SUSTAINED_BEND, KELLOGG, SPANS, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a long pipe that nothing carries but its flanges works them loose, cracks at a bend and falls",
    leaves_out="brackets that are not evenly apart; lagging, for which the water stands; flanges and valves on the "
    "pipe; a sliding joint or bellows between its ends, which carries no moment; heat (pipe.flexibility), sway and "
    "resonance: the code in force and a competent person decide",
    against=("fall",),
    limits=[
        Limit("jolts", "2", "ratio", COMMON_PRACTICE, "greatest acceleration by the track, in times gravity"),
        Limit("occasional", "1.2", "ratio", OCCASIONAL, "share of the design stress with jolts"),
        Limit("sag", "2.5 mm", "length", SPANS, "greatest sag between two places that carry the pipe"),
    ],
)
def span(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Judgement:
    """p D/(4 t) + max(1, 0.75 i) M/Z ≤ f at rest, and ≤ 1.2 f as it is jolted; M = w l²/10, as for pipes.

    The wall is that ordered, by the code, less what corrodes; a bend counts with its factor i, wherever it is.
    """
    t = sheet.take("t", pipe.wall)
    left = sheet.work("t_a", wall_left, t=t, a=sheet.take("A", pipe.corrosion_allowance))
    at = design_temperature(pipe, case, sheet)
    D, w, apart = sheet.take("D", pipe.outside_diameter), _weight(pipe, sheet), _span(pipe, sheet)
    second = sheet.work("I", tube_second_moment, D=D, d=D - 2 * left)
    E = sheet.look_up("E", sheet.material_of(pipe).modulus, of=pipe, at=at)
    given = {
        "p": design_pressure(pipe, case, sheet),
        "D": D,
        "t": left,
        "i": _factor(pipe, sheet, left),
        "Z": sheet.work("Z", section_modulus, I=second, c=D / 2),
    }
    M = sheet.work("M", moment_of_span, w=w, l=apart)
    load = sheet.work("w_j", jolted_load, w=w, n=sheet.limit("jolts", "n_j"))
    M_j = sheet.work("M_j", moment_of_span, w=load, l=apart)
    f = european_allowable(pipe, sheet, at, t)
    jolted = sheet.work("f_j", share_of_strength, k=sheet.limit("occasional", "k_j"), R=f)
    sag = sheet.work("y", sag_of_span, w=w, l=apart, E=E, I=second)
    return sheet.worst(
        sheet.at_most(sheet.work("S_L", sustained_stress, M=M, **given), f).else_says(
            "its weight and its pressure stress the pipe to {found} between what carries it, {limit} allowed"
        ),
        sheet.at_most(sheet.work("S_j", sustained_stress, M=M_j, **given), jolted).else_says(
            "jolts stress the pipe to {found} between what carries it, {limit} allowed"
        ),
        sheet.at_most(sag, sheet.limit("sag")).else_says(
            "pipe sags by {found} between what carries it, {limit} allowed"
        ),
    )


def _weight(pipe: SteamPipe, sheet: Sheet) -> NewtonsPerMetre:
    """Of one metre of the pipe as ordered, full of cold water."""
    mass = mass_of_part(pipe, sheet, sheet.take)
    if mass is None:
        raise sheet.not_assessed(
            "the weight of the pipe cannot be worked: outside_diameter, wall, length or its material is wanting"
        )
    bore = sheet.take("D", pipe.outside_diameter) - 2 * sheet.take("t", pipe.wall)
    return sheet.work("w", weight_full_of_water, M=mass.value, L=sheet.take("L", pipe.length), d=bore)


def _span(pipe: SteamPipe, sheet: Sheet) -> Metres:
    """Between two places that carry the pipe: its ends, and the brackets on which it hangs."""
    brackets = sheet.belonging_to(pipe, by_word.Bracket)
    even = 1 / (len(brackets) + 1)
    carrying = [one for one in brackets if _share(one, pipe, sheet) >= _LEAST_SHARE * even]
    return sheet.work("l", span_between, L=sheet.take("L", pipe.length), n=float(len(carrying)))


def _share(bracket: Bracket, pipe: SteamPipe, sheet: Sheet) -> Ratio:
    """The greatest share of the pipe that a bracket is said to carry: all of it where none is stated."""
    shares = [
        sheet.take(f"share of {bracket.id}", one.share)
        if sheet.is_stated(f"share of {bracket.id}", one.share)
        else 1.0
        for name, one in bracket.carries.items()
        if sheet.is_stated(f"part of {name}", one.of) and sheet.follow(one.of).id == pipe.id
    ]
    return max(shares, default=0.0)


def _factor(pipe: SteamPipe, sheet: Sheet, wall: Metres) -> Ratio:
    if sheet.count("n", pipe.bends) == 0:
        return 1.0
    D, R = sheet.take("D", pipe.outside_diameter), sheet.take("R", pipe.bend_radius)
    return sheet.work("i", stress_factor_of_bend, t=wall, R=R, D=D)


RULES = (span,)
