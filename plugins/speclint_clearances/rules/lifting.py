"""The points by which a heavy part is lifted."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import STANDARD_GRAVITY, Metres, Newtons, Pascals, Ratio
from speclint.handbook.bolted_joints import FED_STD_H28, shear_strength, shear_strength_ratio, stripping_load
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import Material, share_of_strength
from speclint.handbook.members import projected_pressure
from speclint.handbook.threads import internal_stripping_area
from speclint.specs import LiftingPlan, LiftingPoint, Lug
from speclint_clearances.formulae.lifting import (
    angle_leaning,
    angle_of_slope,
    beside_line,
    distance,
    dynamic_pull,
    engagement_wanted,
    force_of_mass,
    leg_slope,
    net_section_stress,
    tear_out_stress,
)
from speclint_clearances.formulae.lugs import (
    fillet_stress,
    hook_along_plane,
    hook_beside_plane,
    part_across,
    root_stress,
)
from speclint_clearances.formulae.tables import thread_diameter
from speclint_clearances.inputs.legs import Leg, Load, leg_at, load_of
from speclint_clearances.sources import EN_818_4, EN_1993_1_8, EN_13155, ISO_3266, MACHINERY

#: Families of materials whose threads shear as another group of the handbook's table.
_GROUPS = {
    "grey-iron": "grey iron",
    "ductile-iron": "spheroidal iron",
    "stainless-austenitic": "austenitic steel",
}


@rule(
    "lifting.points",
    title="Each two points that name each other across the others, above the load's centre of gravity, carry it alone "
    "with the dynamic factor: eye, thread, lug and weld, bent both ways where the sling leans most",
    on=LiftingPlan,
    edition=10,
    grade=Grade.HOLD,
    cites=[
        EN_13155.at("structural strength"),
        ISO_3266.at("working load limits"),
        MACHINERY,
        EN_818_4.at("angles of legs, as reproduced in the tables of makers of slings", memory=False),
        FED_STD_H28,
        EN_1993_1_8.at("4.5.3.3, the simplified method for fillet welds"),
        FIRST_PRINCIPLES,
        COMMON_PRACTICE,
    ],
    why="A rigid load on four legs is carried by two of them while two are slack: an eye sized for a "
    "quarter of it carries half.",
    leaves_out="slings and shackles, an eye not turned to its sling, bending of the part; "
    "the rules for lifting at work, the local code and a competent person decide; nobody stands under the load",
    against=("break under load", "fall"),
    limits=[
        Limit(
            "least_share",
            "0.1",
            "ratio",
            COMMON_PRACTICE,
            "least share of the weight on either leg of a pair, and of the distance beside it at which others stand",
        ),
        Limit(
            "engagement",
            "1",
            "ratio",
            COMMON_PRACTICE,
            "least engagement in steel over the thread's diameter",
        ),
        Limit("engagement_iron", "1.5", "ratio", COMMON_PRACTICE, "the same in cast iron and light metal"),
        Limit("dynamic", "1.5", "ratio", COMMON_PRACTICE, "dynamic factor of the crane"),
        Limit(
            "stripping",
            "3",
            "ratio",
            COMMON_PRACTICE,
            "least stripping load of a tapped thread over the dynamic pull, more than 4 over the static pull",
        ),
        Limit(
            "slope",
            "1",
            "ratio",
            EN_818_4.at("legs to 45 degrees, as reproduced in the tables of makers of slings", memory=False),
            "greatest slope of a leg from the vertical, the tangent of 45°",
        ),
        Limit(
            "tension_share",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "share of proof stress in tension across the hole of a lug, and in tension and bending at its weld",
        ),
        Limit(
            "shear_share",
            "0.29",
            "ratio",
            COMMON_PRACTICE,
            "share of proof stress in shear, 0.58 of that in tension, also in the throat of a fillet weld",
        ),
        Limit(
            "bearing_share", "0.8", "ratio", COMMON_PRACTICE, "share of proof stress in bearing under the pin"
        ),
    ],
)
def points(plan: LiftingPlan, sheet: Sheet) -> Judgement:
    """Mass and centre of gravity, the pull of each leg of a pair, and the load or stress of its eye or lug.

    An eye is within its angle where its sling leans most, if the plan states how far. Threads and welds are of the
    metal of the part that is lifted. The hook counts as its height above the lowest of the points: a higher one is
    nearer to it, so that its sling lies flatter, and takes less of the weight.
    """
    if not plan.weights or not plan.points:
        raise sheet.not_assessed("neither weights nor points may be left out", plan.where)
    load = load_of(plan.weights, sheet)
    return sheet.each(plan.points.items(), lambda item: sheet.worst(*_point(*item, plan, load, sheet)))


def _point(name: str, point: LiftingPoint, plan: LiftingPlan, load: Load, sheet: Sheet) -> list[Judgement]:
    across = sheet.entry(plan.points, point.opposite, f"points of {plan.id}")
    back = sheet.read(f"opposite of the point across {name}", across.opposite)
    named = sheet.read(f"opposite of {name}", point.opposite)
    paired = sheet.states(
        back == name, f"{name} has {named} opposite, and {named} has {back}", where=point.where
    )
    leg = leg_at(name, plan, load, sheet)
    slope = sheet.work(f"s {name}", leg_slope, r=leg.r, h=leg.h)
    hangs = sheet.at_least(sheet.take(f"z {name}", point.z), load.z).else_says(
        "point {item} at {found}, below the centre of gravity at {limit}"
    )
    shared = sheet.at_least(leg.k, sheet.limit("least_share")).else_says(
        "point {item} carries a share of {found}, {limit} wanted"
    )
    judged = [
        paired,
        *_crossed(name, point, across, plan, sheet),
        hangs,
        shared,
        sheet.at_most(slope, sheet.limit("slope")).else_says(
            "sling at {item} has a slope of {found}, {limit} allowed"
        ),
    ]
    if sheet.read(f"{name} is", point.form) == "lug":
        bent = _bent(name, point.lug, plan, load, leg, sheet)
        return [*judged, *_lug(name, point.lug, leg.F, sheet), *bent]
    return [*judged, *_eye(name, point, plan, leg.F, sheet), *_leans(name, slope, plan, sheet)]


def _leans(name: str, slope: Ratio, plan: LiftingPlan, sheet: Sheet) -> Iterator[Judgement]:
    """An eye within the angle for which it is marked, as its sling leans the most, where that is stated."""
    if not sheet.is_stated("lean of the slings", plan.sling_leans):
        return
    β = sheet.work(f"β {name}", angle_leaning, s=slope, δ=sheet.take("δ", plan.sling_leans))
    allowed = sheet.work("β_z", angle_of_slope, s=sheet.limit("slope"))
    yield sheet.at_most(β, allowed).else_says(
        "sling at eye {item} leans to {found} from the vertical, {limit} allowed"
    )


def _crossed(
    name: str, point: LiftingPoint, across: LiftingPoint, plan: LiftingPlan, sheet: Sheet
) -> Iterator[Judgement]:
    """That of more points than a pair some stand on either side of its line: what it carries alone hangs under it.

    Those on one side stand a tenth as far from the line as those on the other, or more: an eye that is drawn on the
    wrong side, right beside the one that is meant to be across, makes no pair.
    """
    ends = {}
    for mark, one in (("1", point), ("2", across)):
        ends[f"x_{mark}"] = sheet.take_nominal(f"x_{mark} {name}", one.x)
        ends[f"y_{mark}"] = sheet.take_nominal(f"y_{mark} {name}", one.y)
    L = sheet.work(f"L_p {name}", distance, **ends)
    aside = []
    for other, one in plan.points.items():
        if one is not point and one is not across:
            x, y = sheet.take_nominal(f"x_o {other}", one.x), sheet.take_nominal(f"y_o {other}", one.y)
            aside.append(sheet.work(f"e {other}", beside_line, x=x, y=y, L=L, **ends))
    if aside:
        named = sheet.read(f"opposite of {name}", point.opposite)
        says = f"{name} and {named}, its opposite, have points on either side"
        wrong = f"{name} and {named}, its opposite, stand on one side of the other points, and the load beside them"
        near, far = sorted((-min(aside), max(aside)))
        crossed = near > sheet.limit("least_share") * far
        yield sheet.states(crossed, says if crossed else wrong, where=point.where)


def _eye(name: str, point: LiftingPoint, plan: LiftingPlan, pull: Newtons, sheet: Sheet) -> list[Judgement]:
    marked = sheet.work(
        f"F_w {name}", force_of_mass, m=sheet.take(f"m_w {name}", point.working_load), g=STANDARD_GRAVITY
    )
    thread = sheet.read(f"thread of {name}", point.thread)
    engaged = sheet.take(f"L_e {name}", point.engagement)
    area = sheet.look_up(f"A {name}", internal_stripping_area, designation=thread, length=engaged)
    metal = sheet.material_of(sheet.follow(plan.lifts))
    ratio = sheet.look_up("r_s", shear_strength_ratio, material=_group(metal, sheet))
    strength = sheet.look_up("R_m", metal.tensile_strength, at=DRAWING_TEMPERATURE)
    shear = sheet.work("τ", shear_strength, r=ratio, R_m=strength)
    strips = sheet.work(f"F_s {name}", stripping_load, tau_B=shear, A=area)
    wanted = sheet.work(f"F_n {name}", dynamic_pull, x=sheet.limit("stripping", "x_s"), F=pull)
    least = "engagement" if "steel" in metal.family else "engagement_iron"
    diameter = sheet.look_up(f"d {name}", thread_diameter, designation=thread)
    deep = sheet.work(f"L_n {name}", engagement_wanted, k=sheet.limit(least, "k_e"), d=diameter)
    return [
        sheet.at_least(marked, pull).else_says("eye {item} marked for {found}, pulled by {limit}"),
        sheet.at_least(strips, wanted).else_says("thread of eye {item} strips at {found}, {limit} wanted"),
        sheet.at_least(engaged, deep).else_says("thread of eye {item} engages {found}, {limit} wanted"),
    ]


def _group(metal: Material, sheet: Sheet) -> str:
    found = _GROUPS.get(metal.family, "steel" if "steel" in metal.family else "")
    if not found:
        raise sheet.not_covered(f"the handbook has no shear strength of a thread in {metal.family}")
    return found


def _lug(name: str, lug: Lug, pull: Newtons, sheet: Sheet) -> list[Judgement]:
    t, d = sheet.take(f"t {name}", lug.thickness), sheet.take(f"d {name}", lug.hole)
    metal = sheet.material_named(f"lug {name}", lug.material)
    proof = sheet.look_up(f"R_p {name}", metal.proof_stress, at=DRAWING_TEMPERATURE, thickness=t)
    stresses = {
        "tension_share": sheet.work(
            f"σ {name}", net_section_stress, F=pull, w=sheet.take(f"w {name}", lug.width), d=d, t=t
        ),
        "shear_share": sheet.work(
            f"τ {name}", tear_out_stress, F=pull, e=sheet.take(f"e {name}", lug.edge), d=d, t=t
        ),
        "bearing_share": sheet.work(
            f"σ_b {name}", projected_pressure, F=pull, d=sheet.take(f"d_p {name}", lug.pin), b=t
        ),
    }
    return [
        sheet.at_most(
            stress, sheet.work(f"S {name}", share_of_strength, k=sheet.limit(share), R=proof)
        ).else_says("lug {item} stressed to {found} at its hole, {limit} allowed")
        for share, stress in stresses.items()
    ]


def _bent(name: str, lug: Lug, plan: LiftingPlan, load: Load, leg: Leg, sheet: Sheet) -> list[Judgement]:
    """Stress of the plate where the lug is welded on, and of its weld: pulled, bent along its plate and across it."""
    plan_view = {
        "x": leg.x,
        "y": leg.y,
        "x_c": load.x,
        "y_c": load.y,
        "φ": sheet.take(f"φ {name}", lug.plane),
    }
    δ = sheet.take("δ", plan.sling_leans)
    U, V = (
        sheet.work(
            f"{symbol} {name}",
            part_across,
            F=leg.F,
            c=sheet.work(f"{aside} {name}", formula, **plan_view),
            r=leg.r,
            h=leg.h,
            δ=δ,
        )
        for symbol, aside, formula in (("U", "a", hook_along_plane), ("V", "c", hook_beside_plane))
    )
    t = sheet.take(f"t {name}", lug.thickness)
    e, b = sheet.take(f"e_w {name}", lug.height), sheet.take(f"b {name}", lug.root_width)
    stress = sheet.work(f"σ_w {name}", root_stress, F=leg.F, U=U, V=V, e=e, b=b, t=t)
    metal = sheet.material_named(f"lug {name}", lug.material)
    proof = sheet.look_up(f"R_p {name}", metal.proof_stress, at=DRAWING_TEMPERATURE, thickness=t)
    allowed = sheet.work(f"S_w {name}", share_of_strength, k=sheet.limit("tension_share"), R=proof)
    bent = sheet.at_most(stress, allowed).else_says(
        "lug {item} stressed to {found} at its root, {limit} allowed"
    )
    if sheet.read(f"weld of {name}", lug.weld) == "full penetration":
        own = _of_part(name, plan, t, "tension_share", sheet)
        part = sheet.at_most(stress, own).else_says("part under lug {item} takes {found}, {limit} allowed")
        return [bent, part]
    a = sheet.take(f"a {name}", lug.throat)
    in_weld = sheet.work(f"τ_w {name}", fillet_stress, F=leg.F, U=U, V=V, e=e, b=b, t=t, a=a)
    weakest = min(
        _of_part(name, plan, t, "shear_share", sheet),
        sheet.work(f"S_a {name}", share_of_strength, k=sheet.limit("shear_share"), R=proof),
    )
    return [
        bent,
        sheet.at_most(in_weld, weakest).else_says("weld of lug {item} stressed to {found}, {limit} allowed"),
    ]


def _of_part(name: str, plan: LiftingPlan, t: Metres, share: str, sheet: Sheet) -> Pascals:
    """What the metal of the part may bear beside the weld, at the thickness of the lug."""
    metal = sheet.material_of(sheet.follow(plan.lifts))
    proof = sheet.look_up(f"R_p beside {name}", metal.proof_stress, at=DRAWING_TEMPERATURE, thickness=t)
    return sheet.work(f"S_p {name}", share_of_strength, k=sheet.limit(share), R=proof)


RULES: tuple[Rule, ...] = (points,)
