"""Each state in which a part is lifted, and the cranes and jibs that lift it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import STANDARD_GRAVITY, Kilograms, Metres
from speclint.facts import goes_up, mass_lifted, mass_together, mass_weighed, share_of_mass
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import CamBox, Crane, Jib, LiftedState, LiftingPlan, LiftingPoint, Weight, Weldment
from speclint_clearances.formulae.cranes import (
    hook_wanted,
    least_reach,
    mass_on_crane,
    mean_with,
    moment_of_jib,
    pressure_in_socket,
    proof_over,
    share_of_crane,
    stress_of_post,
    stress_of_ring_weld,
    tilt_of_load,
    weld_over,
)
from speclint_clearances.formulae.lifting import (
    distance,
    force_of_mass,
)
from speclint_clearances.inputs.counted import ROUNDING
from speclint_clearances.inputs.legs import Load, leg_at, load_of
from speclint_clearances.inputs.lowest import lowest_place
from speclint_clearances.sources import EN_818_4

_DEFERS = "the rules for lifting at work, the local code and a competent person decide; nobody stands under the load"


@rule(
    "lifting.each-state",
    title="In each state in which the part is lifted its centre of gravity hangs at most 5° aslant, and no leg is "
    "pulled harder than its point is marked for; one state has all pieces on",
    on=LiftingPlan,
    edition=5,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[
        EN_818_4.at("angles of legs, as reproduced in the tables of makers of slings", memory=False),
        FIRST_PRINCIPLES,
        COMMON_PRACTICE,
    ],
    why="a block that hangs true when bare tips when its boxes are on, and then one leg carries nearly all",
    leaves_out="eyes, threads, lugs and welds, which lifting.points judges under all pieces; pieces of which one takes "
    f"the place of another, and want a plan each; {_DEFERS}",
    against=("fall",),
    limits=[
        Limit("tilt", "5 °", "angle", COMMON_PRACTICE, "greatest angle at which a load hangs"),
        Limit("dynamic", "1.5", "ratio", COMMON_PRACTICE, "dynamic factor of the crane"),
    ],
)
def each_state(plan: LiftingPlan, sheet: Sheet) -> Judgement:
    """Centre of each state's pieces against the middle of the points, and the pull of each leg by its true share.

    The hook counts as its height above the lowest of the points, as in lifting.points.
    """
    if not plan.states or not plan.points:
        raise sheet.not_assessed(
            f"neither states nor points may be left out in {plan.where.file}", plan.where
        )
    x, y, z = _of_points(plan, sheet)

    def judge(item: tuple[str, LiftedState]) -> Judgement:
        name, state = item
        of = f"weights of {plan.id}"
        on = {sheet.read(f"on in {name}", one): sheet.entry(plan.weights, one, of) for one in state.on}
        late = [piece for piece, weight in on.items() if not goes_up(weight, sheet)]
        if late:
            says = f"{', '.join(late)} is on in {name}, and said to be put in after the lift"
            return sheet.states(False, says, where=plan.where)
        load = load_of(on, sheet)
        e = sheet.work("e", distance, x_1=load.x, y_1=load.y, x_2=x, y_2=y)
        β = sheet.work("β", tilt_of_load, e=e, z_p=z, h=sheet.take("h", plan.hook_height), z_c=load.z)
        hangs = sheet.at_most(β, sheet.limit("tilt")).else_says(
            "{item}: hangs {found} aslant, {limit} allowed"
        )
        legs = [_leg(one, point, plan, load, sheet) for one, point in plan.points.items()]
        return sheet.worst(hangs, *legs)

    return sheet.worst(_all_on(plan, sheet), sheet.each(plan.states.items(), judge))


def _of_points(plan: LiftingPlan, sheet: Sheet) -> tuple[Metres, Metres, Metres]:
    """The middle of the lifting points in plan, and the height of the lowest, above which that of the hook counts."""
    x = y = 0.0
    n = float(len(plan.points))
    for name, point in plan.points.items():
        x = sheet.work("x_p", mean_with, x_0=x, x_1=sheet.take(f"x {name}", point.x), n=n)
        y = sheet.work("y_p", mean_with, x_0=y, x_1=sheet.take(f"y {name}", point.y), n=n)
    return x, y, min(sheet.take(f"z {name}", point.z) for name, point in plan.points.items())


def _all_on(plan: LiftingPlan, sheet: Sheet) -> Judgement:
    """In one of the states, the heaviest, every piece that goes up is on."""
    up = [name for name, weight in plan.weights.items() if goes_up(weight, sheet)]
    lacks = {}
    for name, state in plan.states.items():
        on = {sheet.read(f"on in {name}", one) for one in state.on}
        lacks[name] = [piece for piece in up if piece not in on]
    fewest = min(len(pieces) for pieces in lacks.values())
    nearest = [f"{name} lacks {', '.join(pieces)}" for name, pieces in lacks.items() if len(pieces) == fewest]
    says = (
        f"in no state are all pieces on: {'; '.join(nearest)}" if fewest else "all pieces are on in one state"
    )
    return sheet.states(not fewest, says, where=plan.where)


def _leg(name: str, point: LiftingPoint, plan: LiftingPlan, load: Load, sheet: Sheet) -> Judgement:
    """The pull of one leg with its opposite, against what the eye is marked for; of a lug against all pieces."""
    pull = leg_at(name, plan, load, sheet).F
    if sheet.read(f"{name} is", point.form) == "lug":
        marked = leg_at(name, plan, load_of(plan.weights, sheet), sheet, f"{name}, all").F
    else:
        m_w = sheet.take(f"m_w {name}", point.working_load)
        marked = sheet.work(f"F_w {name}", force_of_mass, m=m_w, g=STANDARD_GRAVITY)
    judged = sheet.at_most(pull, marked).else_says(
        f"{{item}}: leg at {name} pulled by {{found}}, {{limit}} allowed"
    )
    return judged.graded(Grade.HOLD)


@rule(
    "lifting.crane",
    title="The greatest load with its tackle, not less than 0.25 % of it, and 5 % of unstated weld takes at most 0.9 "
    "of each crane's capacity, whose hook is high enough to lift it over what stands in the way",
    on=LiftingPlan,
    grade=Grade.HOLD,
    edition=5,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a crane that is asked for more than it is made for tips, or drops its load",
    leaves_out="two cranes together, which want an analysis of their own; what hangs below barrel and end faces, such "
    "as feet and cocks, and a block of which no weight is a liner, whose axis no plan states; wind; state of crane and "
    f"slings; {_DEFERS}",
    against=("fall",),
    limits=[
        Limit("share", "0.9", "ratio", COMMON_PRACTICE, "greatest share of the capacity"),
        Limit("weld", "5 %", "ratio", COMMON_PRACTICE, "weld of a fabrication that no drawing states"),
        Limit(
            "tackle",
            "0.25 %",
            "ratio",
            COMMON_PRACTICE,
            "least mass of hook block, slings and shackles over the load",
        ),
        Limit(
            "clearance", "100 mm", "length", COMMON_PRACTICE, "least clearance over what it is lifted over"
        ),
        ROUNDING,
    ],
)
def crane(plan: LiftingPlan, sheet: Sheet) -> Judgement:
    """All pieces at their greatest, against the capacity at the radius at which the part is put down.

    Tackle that is said to weigh less than slings for such a load can, and a lowest place above the barrel or the end
    faces of the block that is lifted, are told, and counted at the worse.
    """
    if not plan.cranes:
        raise sheet.not_assessed(f"cranes is not stated in {plan.where.file}", plan.where)
    m = welded = 0.0
    for name, weight in plan.weights.items():
        if goes_up(weight, sheet):
            piece = mass_weighed(name, weight, sheet)
            m = sheet.work("m_0", mass_together, m_0=m, m_1=piece)
            if _is_welded(weight, sheet):
                welded = sheet.work("m_w", mass_together, m_0=welded, m_1=piece)
    tackle = sheet.take("m_t", plan.tackle)
    least = sheet.work("m_l", share_of_mass, s=sheet.limit("tackle", "s_t"), M=m)
    m = sheet.work("m", mass_on_crane, m_0=m, k=sheet.limit("weld", "k"), m_w=welded, m_t=max(tackle, least))
    low = lowest_place(plan, sheet)
    return sheet.worst(
        *low.told,
        sheet.at_least(tackle, least)
        .else_says(
            "hook block, slings and shackles are said to weigh {found}, {limit} at least for this load"
        )
        .graded(Grade.NONCONFORMITY),
        sheet.each(
            plan.cranes.items(), lambda item: sheet.worst(*_by_crane(*item, (m, low.counted), plan, sheet))
        ),
    )


def _is_welded(weight: Weight, sheet: Sheet) -> bool:
    """Whether a piece is a weldment; one that names no part counts as one."""
    return not sheet.is_stated("part", weight.of) or isinstance(sheet.follow(weight.of), Weldment)


def _by_crane(
    name: str, one: Crane, load: tuple[Kilograms, Metres], plan: LiftingPlan, sheet: Sheet
) -> list[Judgement]:
    m, z_b = load
    share = sheet.work(f"x {name}", share_of_crane, m=m, m_c=sheet.take(f"m_c {name}", one.capacity))
    z_p = max(sheet.take(f"z {point}", at.z) for point, at in plan.points.items())
    wanted = sheet.work(
        f"H {name}",
        hook_wanted,
        a=sheet.take(f"a {name}", one.lifts_over),
        c=sheet.limit("clearance", "c"),
        z_p=z_p,
        z_b=z_b,
        h=sheet.take("h", plan.hook_height),
    )
    return [
        sheet.at_most(share, sheet.limit("share")).else_says(
            "crane {item}: load takes {found} of its capacity, {limit} allowed"
        ),
        sheet.at_least(sheet.take(f"H_0 {name}", one.hook_above_floor), wanted).else_says(
            "crane {item}: hook {found} above the floor, {limit} wanted"
        ),
    ]


@rule(
    "lifting.jib",
    edition=4,
    title="The load of each jib is no less than the mass of what it lifts, nor its reach than a cam box needs; under "
    "1.25 times that its post bends at most to proof stress over 1.5, as do socket or weld",
    on=LiftingPlan,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a post that bends lets a box or a cover down on whoever guides it",
    leaves_out=f"deflection, the arm of the jib and its chain block, and the part under socket or weld; {_DEFERS}",
    against=("break under load", "fall"),
    limits=[
        Limit("jerk", "1.25", "ratio", COMMON_PRACTICE, "factor of the load for jerks"),
        Limit("shared", "0.75", "ratio", COMMON_PRACTICE, "share of the load on each of two posts"),
        Limit("factor", "1.5", "ratio", COMMON_PRACTICE, "least proof stress over stress"),
        Limit("heavy", "50 kg", "mass", COMMON_PRACTICE, "load above which a jib that is too weak is a hold"),
    ],
)
def jib(plan: LiftingPlan, sheet: Sheet) -> Judgement:
    """M = 1.25 m g r in the post, and in its socket or in the weld round it.

    A reach at which a cam box would hang in the post is told, and counted at the least.
    """
    if not plan.jibs:
        raise sheet.not_applicable("no jib is stated")
    return sheet.each(plan.jibs.items(), lambda item: _jib(*item, sheet))


def _jib(name: str, one: Jib, sheet: Sheet) -> Judgement:
    load, lifted = sheet.take(f"m_0 {name}", one.load), _hanging_on(name, one, sheet)
    made_for = sheet.at_least(load, lifted).else_says("jib {item} is made for {found} and lifts {limit}")
    m, D = max(load, lifted), sheet.take(f"D {name}", one.post)
    s = sheet.limit("shared", "s") if sheet.read(f"posts of {name}", one.posts) == "two" else 1.0
    r, k = sheet.take(f"r {name}", one.reach), sheet.limit("jerk", "k")
    far_enough = []
    for least in _least_reaches(one, D, sheet):
        far_enough.append(
            sheet.at_least(r, least).else_says("jib {item} reaches {found}, its box hangs clear at {limit}")
        )
        r = max(r, least)
    M = sheet.work(f"M {name}", moment_of_jib, s=s, k=k, m=m, g=STANDARD_GRAVITY, r=r)
    t, n = sheet.take(f"t {name}", one.wall), sheet.limit("factor", "n")
    metal = sheet.material_named(f"the post of {name}", one.material)
    R = sheet.look_up(f"R_p {name}", metal.proof_stress, at=DRAWING_TEMPERATURE, thickness=t)
    allowed = sheet.work(f"S {name}", proof_over, R=R, n=n)
    bent = sheet.at_most(sheet.work(f"σ {name}", stress_of_post, M=M, D=D, t=t), allowed).else_says(
        "post of jib {item} bent to {found}, {limit} allowed"
    )
    if sheet.is_stated(f"throat of {name}", one.throat):
        a = sheet.take(f"a {name}", one.throat)
        τ = sheet.work(f"τ {name}", stress_of_ring_weld, M=M, D=D, a=a)
        foot = sheet.at_most(τ, sheet.work(f"S_w {name}", weld_over, R=R, n=n)).else_says(
            "weld of jib {item} stressed to {found}, {limit} allowed"
        )
    else:
        p = sheet.work(f"p {name}", pressure_in_socket, M=M, D=D, l=sheet.take(f"l {name}", one.socket))
        foot = sheet.at_most(p, allowed).else_says("socket of jib {item} pressed by {found}, {limit} allowed")
    judged = sheet.worst(made_for, bent, foot, *far_enough)
    return judged.graded(Grade.HOLD) if m > sheet.limit("heavy") and not judged.holds else judged


def _least_reaches(one: Jib, D: Metres, sheet: Sheet) -> Iterator[Metres]:
    """Half of the shorter side of each cam box that hangs on a jib, and half of the post."""
    for part in (sheet.follow(link) for link in one.lifts):
        if isinstance(part, CamBox):
            sides = [
                sheet.take(f"b_{number} {part.id}", side)
                for number, side in enumerate((part.length, part.width))
                if sheet.is_stated(f"side of {part.id}", side)
            ]
            if sides:
                yield sheet.work(f"r_0 {part.id}", least_reach, b=min(sides), D=D)


def _hanging_on(name: str, one: Jib, sheet: Sheet) -> Kilograms:
    """The mass of the parts that hang on a jib at once, as their own specs state it and no less than by their sizes."""
    if not one.lifts:
        raise sheet.not_assessed(f"lifts of jib {name} is not stated in {one.where.file}", one.where)
    m = 0.0
    for link in one.lifts:
        part = sheet.follow(link)
        by_part = mass_lifted(part, sheet)
        if by_part is None:
            raise sheet.not_assessed(f"no mass of {part.id}, which jib {name} lifts, is known", part.where)
        m = sheet.work(f"m_l {name}", mass_together, m_0=m, m_1=by_part)
    return m


RULES: tuple[Rule, ...] = (each_state, crane, jib)
