"""Brackets: the welds at their root, their stiffness and their natural frequency."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Newtons, Pascals
from speclint.facts import worn_wheel
from speclint.handbook.members import range_of_stress, sum_of_loads
from speclint.specs import BoltedJoint, Bracket, BracketWeld, CylinderBlock, LoadCase, LocatingFace, Rocker
from speclint_joints.formulae.brackets import (
    deflection_allowed,
    deflection_of_bracket,
    equivalent_in_plate,
    exciting_frequency,
    frequency_wanted,
    natural_frequency,
    range_beyond_counting,
    shear_beyond_counting,
    strength_across_throat,
    strength_of_weld,
)
from speclint_joints.formulae.weld_groups import across_fillet, across_root_of_fillet, equivalent_in_fillet
from speclint_joints.inputs.carried import JOLTS, Pulls, bars_of, carries_something, mass_of, pulls_on
from speclint_joints.inputs.strengths import tensile_strength_at
from speclint_joints.inputs.throats import stresses_in
from speclint_joints.sources import (
    FATIGUE_CURVE,
    FATIGUE_DETAILS,
    FATIGUE_ROOT,
    FATIGUE_SHEAR,
    PARTIAL_FACTOR,
    ROARK,
    WELD_STRENGTH,
)

_DEFERS = "the local railway code and a competent person decide"


@rule(
    "bracket.welds-hold",
    edition=4,
    title="The welds at the root of a bracket bear what it carries, with jolts, also from the side and twisted; in "
    "running no range of stress across or along them exceeds that which no number of cycles harms",
    on=Bracket,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[
        WELD_STRENGTH,
        FATIGUE_CURVE,
        FATIGUE_SHEAR,
        FATIGUE_DETAILS,
        FATIGUE_ROOT,
        PARTIAL_FACTOR,
        ROARK.at("Table 10.1, solid rectangular section"),
        FIRST_PRINCIPLES,
        COMMON_PRACTICE,
    ],
    why="A fillet weld that is strong enough ten times over still cracks from its root at the ten millionth stroke.",
    leaves_out="one fillet weld bent across its own line or twisted, the plate itself, inertia of crosshead and rods; "
    f"{_DEFERS}",
    against=("break under load", "break in fatigue"),
    limits=[
        JOLTS,
        Limit("partial factor", "1.35", "ratio", PARTIAL_FACTOR, "partial factor on fatigue strength"),
        Limit(
            "fillet",
            "36 MPa",
            "stress",
            FATIGUE_DETAILS,
            "greatest category across the root of a fillet weld",
        ),
        Limit("penetrated", "112 MPa", "stress", FATIGUE_DETAILS, "greatest category across any weld"),
        Limit("sheared", "100 MPa", "stress", FATIGUE_DETAILS, "greatest category along any weld"),
    ],
)
def welds_hold(bracket: Bracket, case: LoadCase, sheet: Sheet) -> Judgement:
    """M_x/W + P/A + M_y/W_y, and S/A with twist, on the throats; the welds of one name bear it all."""
    if not bracket.welds:
        if not sheet.belonging_to(bracket, BoltedJoint):
            raise sheet.not_assessed(
                f"neither a weld nor a bolted joint of {bracket.id} is stated", bracket.where
            )
        raise sheet.not_applicable("no weld of the bracket is stated: it is bolted")
    _loaded(bracket, sheet)
    pulls = pulls_on(bracket, case, sheet)
    judged = sheet.each(bracket.welds.items(), lambda item: _weld(*item, bracket, pulls, case, sheet))
    return judged.graded(Grade.HOLD) if pulls.grave and not judged.holds else judged


def _loaded(bracket: Bracket, sheet: Sheet) -> None:
    if not carries_something(bracket, sheet):
        raise sheet.not_assessed("what the bracket carries is not stated", bracket.where)


def _weld(
    name: str, weld: BracketWeld, bracket: Bracket, pulls: Pulls, case: LoadCase, sheet: Sheet
) -> Judgement:
    l, σ, τ_t, τ = stresses_in(name, weld, pulls, sheet)  # noqa: E741
    at = sheet.take("T", case.temperature_of(bracket))
    f_u = tensile_strength_at("f_u", bracket, at, sheet)
    fillet = sheet.read(f"weld {name}", weld.weld) == "fillet"
    if fillet:
        together = sheet.work("σ_v", equivalent_in_fillet, σ=σ, τ_t=τ_t, τ=τ)
        across = sheet.work("σ_s", across_fillet, σ=σ, τ_t=τ_t)
    else:
        together, across = sheet.work("σ_v", equivalent_in_plate, σ=σ, τ=τ), σ
    judged = [
        sheet.at_most(together, sheet.work("S_v", strength_of_weld, f_u=f_u)).else_says(
            "weld {item} stressed to {found}, {limit} allowed"
        ),
        sheet.at_most(across, sheet.work("S_s", strength_across_throat, f_u=f_u)).else_says(
            "weld {item} stressed to {found} across its throat, {limit} allowed"
        ),
    ]
    if sheet.is_stated("depth of the root", bracket.depth):
        judged.append(
            sheet.at_most(l, sheet.take("h", bracket.depth)).else_says(
                "weld {item} is {found} long on a root {limit} deep"
            )
        )
    if case.name == "running":
        σ_f = sheet.work("σ_f", across_root_of_fillet, σ=σ, τ_t=τ_t) if fillet else σ
        judged += _endures(weld, fillet, σ_f, τ, pulls, sheet)
    return sheet.worst(*judged)


def _endures(
    weld: BracketWeld, fillet: bool, σ: Pascals, τ: Pascals, pulls: Pulls, sheet: Sheet
) -> Iterator[Judgement]:
    """Ranges against the categories stated, which are no better than those of such a weld."""
    k, gamma = 2.0 if pulls.reverses else 1.0, sheet.limit("partial factor", "γ")
    across, along = sheet.take("Δσ_C", weld.detail_category), sheet.take("Δτ_C", weld.shear_category)
    allowed = sheet.work("S_R", range_beyond_counting, Δσ_C=across, gamma=gamma)
    sheared = sheet.work("S_T", shear_beyond_counting, Δτ_C=along, gamma=gamma)
    yield sheet.at_most(sheet.work("Δσ", range_of_stress, k=k, σ=σ), allowed).else_says(
        "stress range of weld {item} {found}, {limit} allowed"
    )
    yield sheet.at_most(sheet.work("Δτ", range_of_stress, k=k, σ=τ), sheared).else_says(
        "range of shear of weld {item} {found}, {limit} allowed"
    )
    for stated, most in ((across, "fillet" if fillet else "penetrated"), (along, "sheared")):
        yield sheet.at_most(stated, sheet.limit(most)).else_says(
            "weld {item} is said to be of category {found}, such a weld of {limit} at most"
        )


@rule(
    "bracket.stiff-enough",
    edition=2,
    title="What hangs on a bracket swings at twice the highest frequency that shakes the engine or above, and under a "
    "slide bar or a rocker it gives way by no more than a set share of span or lift",
    on=Bracket,
    cases=("running",),
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A lubricator on a springy plate shakes itself to pieces at one speed, and just there the engine runs.",
    leaves_out="the give of frame and bolts, resonance of pipes that hang on it, brackets that share one load",
    against=("break in fatigue",),
    limits=[
        JOLTS,
        Limit(
            "frequency",
            "2",
            "ratio",
            COMMON_PRACTICE,
            "least natural frequency over the highest exciting one",
        ),
        Limit(
            "slide bar", "0.001", "ratio", COMMON_PRACTICE, "greatest give under a slide bar over its span"
        ),
        Limit(
            "rocker",
            "0.02",
            "ratio",
            COMMON_PRACTICE,
            "greatest give under a rocker over the lift of its valve",
        ),
    ],
)
def stiff_enough(bracket: Bracket, case: LoadCase, sheet: Sheet) -> Judgement:
    """√(k/m)/2π against the turns of the wheels; F/k against span or lift."""
    _loaded(bracket, sheet)
    k = sheet.take("k", bracket.stiffness)
    judged = [*_swings(bracket, k, case, sheet), *_gives(bracket, k, case, sheet)]
    if not judged:
        raise sheet.not_applicable("no mass, slide bar or rocker is said to hang on it")
    return sheet.worst(*judged)


def _swings(bracket: Bracket, k: float, case: LoadCase, sheet: Sheet) -> list[Judgement]:
    m = 0.0
    for name, one in bracket.carries.items():
        mass = mass_of(name, one, sheet)
        m += mass if mass is not None else 0.0
    if m == 0.0:
        return []
    on = sheet.follow(bracket.on)
    block = on if isinstance(on, CylinderBlock) else _block_beside(bracket, sheet)
    f_e = sheet.work(
        "f_e",
        exciting_frequency,
        v=sheet.take("v", case.track_speed),
        D=sheet.take("D_w", worn_wheel(block, sheet)),
    )
    wanted = sheet.work("f_n", frequency_wanted, k=sheet.limit("frequency", "k_f"), f_e=f_e)
    return [
        sheet.at_least(sheet.work("f_1", natural_frequency, k=k, m=m), wanted).else_says(
            "what hangs on the bracket swings at {found}, {limit} wanted"
        )
    ]


def _block_beside(bracket: Bracket, sheet: Sheet) -> CylinderBlock:
    """The block of the engine to whose frame a bracket is fixed."""
    frame = sheet.follow(bracket.on)
    blocks = [sheet.follow(face.locks) for face in sheet.belonging_to(frame, LocatingFace)]
    if not blocks:
        raise sheet.not_assessed(f"no block is joined to {bracket.id}", bracket.where)
    return blocks[0]


def _gives(bracket: Bracket, k: float, case: LoadCase, sheet: Sheet) -> list[Judgement]:
    judged = []
    pulls = pulls_on(bracket, case, sheet)
    load: Newtons = sheet.work("F", sum_of_loads, F_1=pulls.S, F_2=pulls.P)
    y = sheet.work("y", deflection_of_bracket, F=load, k=k)
    for bar in bars_of(bracket, sheet):
        allowed = sheet.work(
            "y_n", deflection_allowed, x=sheet.limit("slide bar", "x"), L=sheet.take("L", bar.span)
        )
        judged.append(
            sheet.at_most(y, allowed).else_says("bracket gives {found} under its slide bar, {limit} allowed")
        )
    for name, one in bracket.carries.items():
        part = sheet.follow(one.of) if sheet.is_stated(f"part {name}", one.of) else None
        if isinstance(part, Rocker):
            h = sheet.take("h", sheet.follow(sheet.follow(part.works).moves).lift)
            allowed = sheet.work("y_r", deflection_allowed, x=sheet.limit("rocker", "x_r"), L=h)
            judged.append(
                sheet.at_most(y, allowed).else_says("bracket gives {found} under its rocker, {limit} allowed")
            )
    return [one if one.holds else one.graded(Grade.NONCONFORMITY) for one in judged]


RULES: tuple[Rule, ...] = (welds_hold, stiff_enough)
