"""A pipe between what carries it."""

from __future__ import annotations

from collections.abc import Callable

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kilograms, Metres, NewtonMetres, NewtonsPerMetre, Ratio
from speclint.facts import mass_of_part, wall_left
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import (
    section_modulus,
    tube_second_moment,
)
from speclint.specs import Bracket, Carried, LoadCase, SteamPipe
from speclint_steamways.formulae.pipe_spans import (
    jolted_load,
    moment_beside_sliding_joint,
    moment_of_free_end,
    moment_of_span,
    sag_of_free_end,
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

#: How a pipe is bent by its weight and sags, by what takes up its growth.
_HUNG: dict[str, tuple[Callable[..., NewtonMetres], Callable[..., Metres]]] = {
    "bends": (moment_of_span, sag_of_span),
    "lens joints": (moment_of_span, sag_of_span),
    "sliding joint": (moment_beside_sliding_joint, sag_of_span),
    "bellows": (moment_of_free_end, sag_of_free_end),
}
#: A bracket that carries less than this of an even share of the pipe is no place that carries it: common practice.
_LEAST_SHARE = 0.5


@rule(
    "pipe.span",
    title="Between its ends, and brackets that carry it, a pipe bears its pressure and its weight, full of water, "
    "within the design stress hot, 1.2 times that with 2 g more of jolts, and sags by 2.5 mm at most",
    on=SteamPipe,
    cases=("starting", "running"),
    edition=2,
    grade=Grade.NONCONFORMITY,
    cites=[SUSTAINED, OCCASIONAL, SUSTAINED_BEND, KELLOGG, SPANS, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a long pipe that nothing carries but its flanges works them loose, cracks at a bend and falls",
    leaves_out="brackets that are not evenly apart, and where a bracket stands; lagging, for which the water stands; "
    "flanges and valves on the pipe; a sliding joint that does not carry the pipe across; the mill's tolerance on the "
    "wall; the code's own table of spans, which is shorter; heat (pipe.flexibility), sway and resonance: the code in "
    "force and a competent person decide",
    against=("fall",),
    limits=[
        Limit("jolts", "2", "ratio", COMMON_PRACTICE, "greatest acceleration by the track, in times gravity"),
        Limit("occasional", "1.2", "ratio", OCCASIONAL, "share of the design stress with jolts"),
        Limit("sag", "2.5 mm", "length", SPANS, "greatest sag between two places that carry the pipe"),
    ],
)
def span(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Judgement:
    """p D/(4 t) + max(1, 0.75 i) M/Z ≤ f at rest, and ≤ 1.2 f as it is jolted; M = w l²/10, as for pipes.

    A sliding joint bends freely, where it does most harm; on bellows hangs nothing, so that the pipe hangs from one end
    or the last bracket. The wall is that ordered, by the code, less what corrodes; a bend counts with its factor i,
    wherever it is.
    """
    t = sheet.take("t", pipe.wall)
    left = sheet.work("t_a", wall_left, t=t, a=sheet.take("A", pipe.corrosion_allowance))
    at = design_temperature(pipe, case, sheet)
    D, mass = sheet.take("D", pipe.outside_diameter), _mass(pipe, sheet)
    apart = _span(pipe, mass, sheet)
    w = _weight(pipe, mass, sheet)
    second = sheet.work("I", tube_second_moment, D=D, d=D - 2 * left)
    E = sheet.look_up("E", sheet.material_of(pipe).modulus, of=pipe, at=at)
    given = {
        "p": design_pressure(pipe, case, sheet),
        "D": D,
        "t": left,
        "i": _factor(pipe, sheet, left),
        "Z": sheet.work("Z", section_modulus, I=second, c=D / 2),
    }
    bent, sinks = _HUNG[sheet.read("growth taken up by", pipe.takes_up_by)]
    M = sheet.work("M", bent, w=w, l=apart)
    load = sheet.work("w_j", jolted_load, w=w, n=sheet.limit("jolts", "n_j"))
    M_j = sheet.work("M_j", bent, w=load, l=apart)
    f = european_allowable(pipe, sheet, at, t)
    jolted = sheet.work("f_j", share_of_strength, k=sheet.limit("occasional", "k_j"), R=f)
    sag = sheet.work("y", sinks, w=w, l=apart, E=E, I=second)
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


def _mass(pipe: SteamPipe, sheet: Sheet) -> Kilograms:
    mass = mass_of_part(pipe, sheet, sheet.take)
    if mass is None:
        sizes = {"outside_diameter": pipe.outside_diameter, "wall": pipe.wall, "length": pipe.length}
        wanting = [name for name, one in sizes.items() if not sheet.is_stated(name, one)]
        named = ", ".join(wanting) or "density of its material"
        raise sheet.not_assessed(f"the weight of the pipe cannot be worked: {named} not stated", pipe.where)
    found: Kilograms = mass.value
    return found


def _weight(pipe: SteamPipe, mass: Kilograms, sheet: Sheet) -> NewtonsPerMetre:
    """Of one metre of the pipe as ordered, full of cold water."""
    bore = sheet.take("D", pipe.outside_diameter) - 2 * sheet.take("t", pipe.wall)
    return sheet.work("w", weight_full_of_water, M=mass, L=sheet.take("L", pipe.length), d=bore)


def _span(pipe: SteamPipe, mass: Kilograms, sheet: Sheet) -> Metres:
    """Between two places that carry the pipe: its ends, and the brackets on which it hangs."""
    brackets = sheet.belonging_to(pipe, Bracket)
    even = 1 / (len(brackets) + 1)
    carrying = [one for one in brackets if _share(one, pipe, mass, sheet) >= _LEAST_SHARE * even]
    return sheet.work("l", span_between, L=sheet.take("L", pipe.length), n=float(len(carrying)))


def _share(bracket: Bracket, pipe: SteamPipe, mass: Kilograms, sheet: Sheet) -> Ratio:
    """The greatest share of the pipe that a bracket is said to carry, by share or by mass: all where neither is."""
    return max(
        (_share_of(name, one, bracket, pipe, mass, sheet) for name, one in bracket.carries.items()),
        default=0.0,
    )


def _share_of(
    name: str, one: Carried, bracket: Bracket, pipe: SteamPipe, mass: Kilograms, sheet: Sheet
) -> Ratio:
    if not sheet.is_stated(f"part of {name}", one.of) or sheet.follow(one.of).id != pipe.id:
        return 0.0
    stated = sheet.is_stated(f"share of {bracket.id}", one.share)
    share = sheet.take(f"share of {bracket.id}", one.share) if stated else 1.0
    if not sheet.is_stated(f"mass on {bracket.id}", one.mass):
        return share
    carried: Kilograms = share * sheet.take(f"m {bracket.id}", one.mass)
    return carried / mass


def _factor(pipe: SteamPipe, sheet: Sheet, wall: Metres) -> Ratio:
    if sheet.count("n", pipe.bends) == 0:
        return 1.0
    D, R = sheet.take("D", pipe.outside_diameter), sheet.take("R", pipe.bend_radius)
    return sheet.work("i", stress_factor_of_bend, t=wall, R=R, D=D)


RULES = (span,)
