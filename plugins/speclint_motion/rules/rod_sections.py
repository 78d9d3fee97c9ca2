"""The piston rod: mean stress and fatigue of its ends and of every section between."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals, Ratio, SquareMetres
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import (
    direct_stress,
    fatigue_notch_factor,
    hole_in_strip,
    notch_sensitivity,
    round_area,
    share_of_bore,
    shoulder_in_tension,
    size_ratio,
    thread_notch_factor,
)
from speclint.handbook.tables import PETERSON
from speclint.specs import LoadCase, Piston, PistonRod, RodSection
from speclint_motion.formulae.sections import (
    bourne_rod,
    fatigue_factor,
    mean_stress,
    slotted_area,
    stress_amplitude,
)
from speclint_motion.formulae.tables import (
    proportion_of_bore,
    root_area_of_thread,
)
from speclint_motion.inputs.thrust import (
    ALONG_STROKE,
    PULL,
    Cylinder,
    boiler_pressure,
    cylinder_of,
    greatest,
    piston_of,
    relief_pressure,
    turns,
)
from speclint_motion.sources import BOURNE, PERIOD_PROPORTIONS, SHIGLEY_GOODMAN

DEFERS = "the local code and a competent person decide"
#: Threads of strength classes from 6.6 upwards have the notch factor "high" in the handbook's table [Pa].
_HIGH_STRENGTH = 600e6


#: Sections that are judged whether or not the rod's spec names them.
_PLAIN, _UNDER_NUT = "plain length", "under nut"
#: Where a rod is held, by the words of its spec.
_PISTON_END, _CROSSHEAD_END = "piston end", "crosshead end"


class _Weak(NamedTuple):
    """A weakened section: its area, its notch and surface factors in fatigue, and whether it carries the push."""

    A: SquareMetres
    K_f: Ratio
    k: Ratio
    pushed: bool


@rule(
    "rod.tension",
    title="Mean stress of both ends, of every weakened section between and of the plain rod, pulled or pushed, does "
    "not exceed its limit, and its factor for infinite life is not below the least factor",
    on=PistonRod,
    cases=("starting", "running", "water"),
    edition=8,
    grade=Grade.HOLD,
    cites=[
        COMMON_PRACTICE,
        SHIGLEY_GOODMAN,
        PETERSON.at("chart 3.4, as reproduced in a public calculation of shafts", memory=False),
        PETERSON.at("eq. 1.31, notch sensitivity"),
        BOURNE.at("Q. 358"),
        PERIOD_PROPORTIONS,
    ],
    why="A rod breaks at its thread or cotter slot without warning, and the piston goes through the front "
    "cover.",
    leaves_out="preload of the nut in the thread, bending by a crosshead out of line, corrosion at the "
    f"packing; the greater mass of pistons for later bores; {DEFERS}",
    against=("break under load", "break in fatigue"),
    limits=[
        Limit("stress", "80 MPa", "stress", COMMON_PRACTICE, "greatest mean stress of a section"),
        Limit("fatigue", "1.5", "ratio", COMMON_PRACTICE, "least factor against fatigue"),
        Limit(
            "surface",
            "0.85",
            "ratio",
            COMMON_PRACTICE,
            "surface factor of a turned rod on the fatigue strength of a polished bar",
        ),
    ],
)
def tension(rod: PistonRod, case: LoadCase, sheet: Sheet) -> Judgement:
    """Load at relief pressure on the last bore, or of steam and inertia where that is more; every weakened section.

    An end of which no section is listed is not assessed, but for the thread of the piston's nut, which is judged by
    what the piston states. The relief valves behind the piston set the pull, those before it the push.

    The thread of the piston's fastening is judged as a cut one where no section has it, and the rod's least diameter
    in its packing always. Bourne's rule and the 0.16 D of the pocket-book are reported and not judged.
    """
    piston = piston_of(rod, sheet)
    cylinder = cylinder_of(piston, sheet)
    _period_rules(rod, cylinder, case, sheet)
    pull, push = _greatest_loads(cylinder, case, sheet)
    if not rod.sections:
        raise sheet.not_assessed(f"sections is not stated in {rod.where.file}", rod.where)
    sections: list[tuple[str, RodSection | None]] = [
        *rod.sections.items(),
        *((name, None) for name in (_PLAIN, _UNDER_NUT, *_ends_not_listed(rod, piston, sheet))),
    ]
    return sheet.each(sections, lambda item: sheet.worst(*_judged(*item, piston, rod, pull, push, sheet)))


def _ends_not_listed(rod: PistonRod, piston: Piston, sheet: Sheet) -> list[str]:
    """The ends by which the rod is held and of which no section is listed; the nut's thread is judged in any case."""
    listed = [
        sheet.read(f"place of {name}", section.at)
        for name, section in rod.sections.items()
        if sheet.is_stated(f"place of {name}", section.at)
    ]
    wanted = [_CROSSHEAD_END]
    if sheet.read("piston fastened by", piston.fastening.by) == "forged in one":
        wanted.append(_PISTON_END)
    return [end for end in wanted if end not in listed]


def _under_nut(piston: Piston, rod: PistonRod, sheet: Sheet) -> _Weak:
    """The thread of the piston's nut, as a cut one; not applicable where a section of the rod has it, or no nut is."""
    if sheet.read("piston fastened by", piston.fastening.by) != "nut":
        raise sheet.not_applicable("the piston is forged in one with its rod")
    thread = sheet.read("thread of the piston's nut", piston.fastening.thread)
    area = sheet.look_up("A_under nut", root_area_of_thread, designation=thread)
    if any(_root(name, section, sheet) == area for name, section in rod.sections.items()):
        raise sheet.not_applicable("a section of the rod has the thread of the piston's nut")
    return _of_thread(_UNDER_NUT, thread, "cut", False, rod, sheet)


def _root(name: str, section: RodSection, sheet: Sheet) -> SquareMetres | None:
    """Root area of a section that says it is a thread, and which."""
    if not (
        sheet.is_stated(f"form of {name}", section.form)
        and sheet.is_stated(f"thread of {name}", section.thread)
    ):
        return None
    if sheet.read(f"form of {name}", section.form) != "thread":
        return None
    return sheet.look_up(f"A_{name}", root_area_of_thread, designation=_thread(name, section, sheet))


def _thread(name: str, section: RodSection, sheet: Sheet) -> str:
    return sheet.read(f"thread of {name}", section.thread)


def _greatest_loads(cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> tuple[Newtons, Newtons]:
    """Tensile and compressive load: steam at relief pressure; where the case states a speed, also steam and inertia."""
    steam = sheet.work("F_t", pressure_load, p=relief_pressure(cylinder, case, sheet), D=cylinder.D)
    before = relief_pressure(cylinder, case, sheet, sides=("front",))
    push = sheet.work("F_c", pressure_load, p=before, D=cylinder.D)
    if not turns(case, sheet):
        return steam, push
    pull = greatest("F_θ", "tensile load", ALONG_STROKE, cylinder, case, sheet, sense=PULL)
    return max(steam, pull), push


def _period_rules(rod: PistonRod, cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> None:
    d, D = sheet.take("d", rod.diameter), sheet.take("D", cylinder.liner.bore)
    bourne = sheet.work("d_B", bourne_rod, D=D, p=boiler_pressure(case, sheet))
    sheet.work("d/d_B", size_ratio, d=d, d_0=bourne)
    k = sheet.look_up("k_0", proportion_of_bore, part="piston rod")
    sheet.work("d/d_0", size_ratio, d=d, d_0=sheet.work("d_0", share_of_bore, D=D, k=k))


def _judged(
    name: str,
    section: RodSection | None,
    piston: Piston,
    rod: PistonRod,
    pull: Newtons,
    push: Newtons,
    sheet: Sheet,
) -> list[Judgement]:
    """Mean stress and fatigue of one section."""
    weak = _weak(name, section, piston, rod, sheet)
    σ_t = sheet.work(f"σ_{name}", direct_stress, F=pull, A=weak.A)
    σ_c = sheet.work(f"σ_c,{name}", direct_stress, F=push if weak.pushed else 0.0, A=weak.A)
    material, d = sheet.material_of(rod), sheet.take("d", rod.diameter)
    n = sheet.work(
        f"n_{name}",
        fatigue_factor,
        σ_a=sheet.work(f"σ_a,{name}", stress_amplitude, σ_t=σ_t, σ_c=σ_c),
        σ_m=sheet.work(f"σ_m,{name}", mean_stress, σ_t=σ_t, σ_c=σ_c),
        K_f=weak.K_f,
        k=weak.k,
        S_f=sheet.look_up("S_f", material.fatigue_strength, of=rod, loading="axial", diameter=d),
        R_m=_tensile(rod, d, sheet),
    )
    judged = [
        sheet.at_most(σ_t, sheet.limit("stress")).else_says(
            "pull stresses section {item} to {found}, {limit} allowed"
        ),
        sheet.at_least(n, sheet.limit("fatigue")).else_says(
            "factor of section {item} against fatigue {found}, {limit} wanted"
        ),
    ]
    return (
        [
            *judged,
            sheet.at_most(σ_c, sheet.limit("stress")).else_says(
                "push stresses section {item} to {found}, {limit} allowed"
            ),
        ]
        if weak.pushed
        else judged
    )


def _tensile(rod: PistonRod, d: Metres, sheet: Sheet) -> Pascals:
    material = sheet.material_of(rod)
    return sheet.look_up("R_m", material.tensile_strength, of=rod, at=DRAWING_TEMPERATURE, thickness=d)


def _weak(name: str, section: RodSection | None, piston: Piston, rod: PistonRod, sheet: Sheet) -> _Weak:
    if section is not None:
        return _weakened(name, section, rod, sheet)
    if name == _UNDER_NUT:
        return _under_nut(piston, rod, sheet)
    if name != _PLAIN:
        raise sheet.not_assessed(f"no section at the {name} is stated in {rod.where.file}", rod.where)
    d = sheet.take("d", rod.diameter)
    return _Weak(sheet.work(f"A_{name}", round_area, d=d), 1.0, sheet.limit("surface", "k"), True)


def _weakened(name: str, section: RodSection, rod: PistonRod, sheet: Sheet) -> _Weak:
    form = sheet.read(f"form of {name}", section.form)
    pushed = sheet.read(f"{name} carries the push", section.pushed) or _must_push(name, section, sheet)
    if form == "thread":
        cut = "rolled" if sheet.read(f"{name} rolled", section.rolled) else "cut"
        return _of_thread(name, _thread(name, section, sheet), cut, pushed, rod, sheet)
    R_m = _tensile(rod, sheet.take("d", rod.diameter), sheet)
    d, k = sheet.take(f"d_{name}", section.diameter), sheet.limit("surface", "k")
    if form == "cotter slot":
        w = sheet.take(f"w_{name}", section.slot_width)
        A = sheet.work(f"A_{name}", slotted_area, d=d, w=w)
        K_t, notch = sheet.work(f"K_t,{name}", hole_in_strip, d=w, w=d), w / 2
    elif form == "shoulder":
        A, notch = sheet.work(f"A_{name}", round_area, d=d), sheet.take(f"r_{name}", section.fillet)
        larger = sheet.take(f"D_{name}", section.larger_diameter)
        K_t = sheet.work(f"K_t,{name}", shoulder_in_tension, D=larger, d=d, r=notch)
    else:
        _refuse_plain_end(name, section, sheet)
        return _Weak(sheet.work(f"A_{name}", round_area, d=d), 1.0, k, pushed)
    q = sheet.work(f"q_{name}", notch_sensitivity, R_m=R_m, r=notch)
    return _Weak(A, sheet.work(f"K_f,{name}", fatigue_notch_factor, K_t=K_t, q=q), k, pushed)


def _must_push(name: str, section: RodSection, sheet: Sheet) -> bool:
    """Whether a section carries the push whatever it says: all do, but for a thread away from the crosshead."""
    if sheet.read(f"form of {name}", section.form) != "thread":
        return True
    return sheet.read(f"place of {name}", section.at) == _CROSSHEAD_END


def _refuse_plain_end(name: str, section: RodSection, sheet: Sheet) -> None:
    """Nothing holds a rod by a plain length of it."""
    end = sheet.read(f"place of {name}", section.at)
    if end in (_PISTON_END, _CROSSHEAD_END):
        said = f"{name} is stated to be plain at the {end}: its thread, slot or shoulder there is not stated"
        raise sheet.not_assessed(said, section.form.where)


def _of_thread(name: str, thread: str, cut: str, pushed: bool, rod: PistonRod, sheet: Sheet) -> _Weak:
    """The thread's notch factor includes its finish, so that no surface factor is taken."""
    R_m = _tensile(rod, sheet.take("d", rod.diameter), sheet)
    strength = "high" if R_m >= _HIGH_STRENGTH else "low"
    A = sheet.look_up(f"A_{name}", root_area_of_thread, designation=thread)
    K_f = sheet.look_up(f"K_f,{name}", thread_notch_factor, strength=strength, thread=cut)
    return _Weak(A, K_f, 1.0, pushed)


RULES = (tension,)
