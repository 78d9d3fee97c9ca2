"""What turns and what reciprocates, at the greatest speed: hammer blow and what is left along the track."""

from __future__ import annotations

import math
from functools import partial

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import STANDARD_GRAVITY, KilogramMetres, Newtons, RadiansPerSecond, Ratio
from speclint.facts import (
    Planes,
    axles_of,
    driven_by,
    half_of_planes,
    speed_of_crank,
    to_and_fro_of,
    together,
    turning_in_planes,
    turning_of,
    unbalanced_in_planes,
)
from speclint.handbook.balance import (
    angle_of_balance,
    mass_of_balance,
    out_of_balance,
    rotating_force,
    share_balanced,
    sum_in_plane,
    swaying_couple,
)
from speclint.handbook.cams import crank_radius
from speclint.specs import DrivingAxle, Engine, Force, Line, LoadCase, Moment, Wheel
from speclint_motion.formulae.balance import (
    moment_amiss,
    moment_with_share,
    part_of_engine,
    share_of_load,
    shares_apart,
)
from speclint_motion.sources import BRIDGE_STRESS, MASTER_MECHANICS

_LEFT_OUT = (
    "thrust of the slide bars, unround tyres, springs and uneven track; wheels that slip; the railway's code and a "
    "competent person decide"
)


@rule(
    "wheel.stays-on-rail",
    title="At the greatest speed, on tyres worn to their limit, the hammer blow of each driven wheel is less than its "
    "load at rest",
    on=DrivingAxle,
    cases=("running", "drifting"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, BRIDGE_STRESS, COMMON_PRACTICE],
    why="a wheel whose hammer blow is more than its load leaves the rail at every turn and comes down on it",
    leaves_out=_LEFT_OUT,
    limits=[
        Limit(
            "lift", "1", "ratio", COMMON_PRACTICE, "greatest hammer blow over the load of the wheel at rest"
        )
    ],
    against=(),
    edition=2,
)
def stays_on_rail(axle: DrivingAxle, case: LoadCase, sheet: Sheet) -> Judgement:
    """What is left out of balance in the plane of each wheel, times the square of its speed, against its load."""
    left, right = _blows(axle, case, sheet)
    k = sheet.limit("lift", "k")

    def judge(item: tuple[str, Wheel, Newtons]) -> Judgement:
        name, wheel, blow = item
        rests = _share_of_load(f"F_w {name}", name, wheel, k, sheet)
        return sheet.at_most(blow, rests).else_says(f"{name} wheel: hammer blow {{found}}, {{limit}} allowed")

    return sheet.each((("left", axle.left, left), ("right", axle.right, right)), judge)


@rule(
    "axle.hammer-blow",
    title="At the greatest speed the hammer blow of each wheel and of both wheels of an axle does not exceed what the "
    "railway's code allows, and that of a wheel its share of the load at rest",
    on=DrivingAxle,
    cases=("running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, BRIDGE_STRESS, COMMON_PRACTICE],
    why="bridges and rails bear the hammer blow beside the load, as often in a second as the wheel turns",
    leaves_out=_LEFT_OUT,
    limits=[
        Limit(
            "share", "0.5", "ratio", COMMON_PRACTICE, "greatest hammer blow of a wheel over its load at rest"
        )
    ],
    against=(),
    edition=2,
)
def hammer_blow(axle: DrivingAxle, case: LoadCase, sheet: Sheet) -> Judgement:
    """Each wheel by its own plane; the axle by what both planes leave together."""
    line = sheet.follow(axle.engine).line
    planes = turning_in_planes(axle, half_of_planes(axle, sheet), sheet)
    ω = _speed(sheet.follow(axle.engine), case, sheet)
    left, right = _of_wheels(planes, ω, sheet)
    both = _force("F_a", *_sums(planes, sheet), ω, sheet)
    k = sheet.limit("share", "k")

    judged = [
        ("left wheel", left, partial(_allowed_by, line, "F_c", line.wheel_blow, sheet)),
        ("right wheel", right, partial(_allowed_by, line, "F_c", line.wheel_blow, sheet)),
        ("axle", both, partial(_allowed_by, line, "F_ca", line.axle_blow, sheet)),
        ("left wheel by its load", left, partial(_share_of_load, "F_s left", "left", axle.left, k, sheet)),
        (
            "right wheel by its load",
            right,
            partial(_share_of_load, "F_s right", "right", axle.right, k, sheet),
        ),
    ]
    return sheet.each(
        judged,
        lambda item: sheet.at_most(item[1], item[2]()).else_says(
            f"{item[0]}: hammer blow {{found}}, {{limit}} allowed"
        ),
    )


@rule(
    "engine.hammer-blow",
    title="At the greatest speed the hammer blow of all driven wheels together does not exceed what the railway's code "
    "allows the engine",
    wrong="hammer blow of the whole engine {found}, {limit} allowed",
    on=Engine,
    cases=("running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, BRIDGE_STRESS],
    why="a bridge as long as the engine bears the blows of all its wheels at once, up and down in its own time",
    leaves_out=f"masses that turn on the tender and on axles that are not driven; {_LEFT_OUT}",
    against=(),
    edition=2,
)
def whole_blow(engine: Engine, case: LoadCase, sheet: Sheet) -> Judgement:
    """The wheels are coupled: what each axle leaves is added up by its direction, then turned at the speed."""
    allowed = _allowed_by(engine.line, "F_c", engine.line.engine_blow, sheet)
    b = half_of_planes(axles_of(engine, sheet)[0], sheet)
    sums = _sums(turning_of(engine, b, sheet), sheet)
    return sheet.at_most(_force("F", *sums, _speed(engine, case, sheet), sheet), allowed)


@rule(
    "engine.share-balanced",
    title="The wheels balance all that turns and the stated share of what reciprocates, and the rod of each crank "
    "turns one axle",
    on=Engine,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="balance weights made for other masses beat the rail, or leave the engine to shuttle and sway",
    leaves_out="how the share is divided between the axles; the railway's code and a competent person decide",
    limits=[
        Limit(
            "apart", "0.05", "ratio", COMMON_PRACTICE, "greatest difference of the share from the stated one"
        )
    ],
    against=(),
    edition=2,
)
def balanced(engine: Engine, sheet: Sheet) -> Judgement:
    """The share that fits best what all wheels have beyond the balance of what turns."""
    axles = axles_of(engine, sheet)
    named = sorted(name for axle in axles for name, _ in driven_by(axle, engine, sheet))
    each_once = named == sorted(engine.cranks)
    says = (
        "the rod of each crank turns one axle"
        if each_once
        else f"cranks {', '.join(sorted(engine.cranks))}, and axles driven by {', '.join(named) or 'none'}"
    )
    b = half_of_planes(axles[0], sheet)
    turning, moving = turning_of(engine, b, sheet), to_and_fro_of(engine, b, sheet)
    c = sheet.work(
        "c",
        share_balanced,
        **turning._asdict(),
        U_l=moving.X_l,
        V_l=moving.Y_l,
        U_r=moving.X_r,
        V_r=moving.Y_r,
    )
    asked = sheet.take("c_0", engine.balanced_share)
    apart = sheet.work("δ", shares_apart, c=c, c_0=asked)
    return sheet.worst(
        sheet.states(each_once, says, where=engine.where),
        sheet.at_most(apart, sheet.limit("apart")).else_says(
            "share {found} off the stated one, {limit} allowed"
        ),
    )


@rule(
    "engine.unbalanced-masses",
    title="What is left unbalanced along the track on either side is at most 1/400 of the engine's mass, and tractive "
    "effort and swaying couple vary no more than the railway's code allows",
    on=Engine,
    cases=("running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[MASTER_MECHANICS, FIRST_PRINCIPLES],
    why="what is not balanced shakes the engine along the track and from side to side, and with it train and crew",
    leaves_out="forces of the second order, of twice the speed; hunting by the tyres' cones; springs and drawgear; the "
    "railway's code and a competent person decide",
    limits=[
        Limit(
            "times",
            "400",
            "ratio",
            MASTER_MECHANICS,
            "least mass of the engine over what is left unbalanced on one side",
        )
    ],
    against=(),
    edition=2,
)
def unbalanced(engine: Engine, case: LoadCase, sheet: Sheet) -> Judgement:
    """What turns and what reciprocates together, in the planes of the wheels, as a mass at the crank."""
    b = half_of_planes(axles_of(engine, sheet)[0], sheet)
    left = together(turning_of(engine, b, sheet), to_and_fro_of(engine, b, sheet), "_u", sheet)
    ω, line = _speed(engine, case, sheet), engine.line
    X, Y = _sums(left, sheet)
    force = _force("F", X, Y, ω, sheet)
    couple = sheet.work("M", swaying_couple, **left._asdict(), b=b, ω=ω)
    sides = _sides(left, sheet)

    def by_mass(name: str, R: KilogramMetres) -> Judgement:
        r = sheet.work("r", crank_radius, S=sheet.take("S", engine.stroke))
        m = sheet.work(f"m_u {name}", mass_of_balance, R=R, r=r)
        M = sheet.take("M_e", engine.mass)
        most = sheet.work("m_n", part_of_engine, M=M, n=sheet.limit("times", "n"))
        return sheet.at_most(m, most).else_says(f"{name}: {{found}} unbalanced, {{limit}} allowed")

    def by_code(what: str, found: float, symbol: str, allowed: Force | Moment) -> Judgement:
        return sheet.at_most(found, _allowed_by(line, symbol, allowed, sheet)).else_says(
            f"{what} {{found}}, {{limit}} allowed"
        )

    return sheet.each(
        (
            partial(by_mass, "left", sides[0]),
            partial(by_mass, "right", sides[1]),
            partial(by_code, "variation of the tractive effort", force, "F_c", line.tractive_variation),
            partial(by_code, "swaying couple", couple, "M_c", line.swaying_couple),
        ),
        lambda judge: judge(),
    )


@rule(
    "axle.balance-weights",
    title="Each balance weight is what balances all that turns with its axle and the stated share of what "
    "reciprocates, in the plane of its wheel",
    on=DrivingAxle,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a weight of another mass or at another angle adds to the hammer blow of its wheel",
    leaves_out="holes and lead pockets of the weight; the railway's code and a competent person decide",
    limits=[
        Limit(
            "apart",
            "0.05",
            "ratio",
            COMMON_PRACTICE,
            "greatest moment amiss over that which is to be balanced",
        )
    ],
    against=(),
    edition=2,
)
def weights(axle: DrivingAxle, sheet: Sheet) -> Judgement:
    """The mass that is wanted at the radius drawn, its angle, and what the weight that is drawn leaves amiss."""
    b, engine = half_of_planes(axle, sheet), sheet.follow(axle.engine)
    c = sheet.take("c", axle.balanced_share)
    moves = to_and_fro_of(engine, b, sheet)
    wanted = _with_share(unbalanced_in_planes(axle, b, sheet), c, moves, "_n", sheet)
    amiss = _with_share(turning_in_planes(axle, b, sheet), c, moves, "_d", sheet)

    def judge(item: tuple[str, Wheel, tuple[KilogramMetres, ...], tuple[KilogramMetres, ...]]) -> Judgement:
        name, wheel, (X, Y), (X_d, Y_d) = item
        R = sheet.work(f"R_n {name}", out_of_balance, X=X, Y=Y)
        m = sheet.work(f"m_n {name}", mass_of_balance, R=R, r=sheet.take(f"r_b {name}", wheel.balance_radius))
        α = sheet.work(f"α_n {name}", angle_of_balance, R=R, X=X, Y=Y)
        R_d = sheet.work(f"R_d {name}", out_of_balance, X=X_d, Y=Y_d)
        x = sheet.work(f"x {name}", moment_amiss, R=R_d, R_0=R)
        return sheet.at_most(x, sheet.limit("apart")).else_says(
            f"{name} wheel: weight {{found}} amiss, {{limit}} allowed; {m:.4g} kg wanted at {math.degrees(α):.4g}°"
        )

    wheels = (("left", axle.left, wanted[:2], amiss[:2]), ("right", axle.right, wanted[2:], amiss[2:]))
    return sheet.each(wheels, judge)


def _share_of_load(symbol: str, name: str, wheel: Wheel, k: Ratio, sheet: Sheet) -> Newtons:
    return sheet.work(symbol, share_of_load, k=k, m=sheet.take(f"m_w {name}", wheel.load), g=STANDARD_GRAVITY)


def _allowed_by(line: Line, symbol: str, value: Force | Moment, sheet: Sheet) -> float:
    """What the railway's code allows, which is to be named with it."""
    sheet.read("code of the line", line.code)
    return sheet.take(symbol, value)


def _speed(engine: Engine, case: LoadCase, sheet: Sheet) -> RadiansPerSecond:
    """Speed of the cranks, which turn with the wheels: the greatest by the duties of axle, engine and blocks.

    :raises NotCovered: of an engine with gear between cranks and wheels.
    """
    if sheet.is_stated("gear", engine.gear_ratio):
        raise sheet.not_covered("cranks that are geared to the wheels do not turn with them")
    if not engine.cranks:
        raise sheet.not_assessed(f"cranks is not stated in {engine.where.file}", engine.where)
    blocks = [sheet.follow(crank.block) for crank in engine.cranks.values()]
    cases = {case.where: (blocks[0], case)}
    for block, part in ((blocks[0], engine), *((block, block) for block in blocks)):
        duty = sheet.duty_of(part)
        if duty is not None and case.name in duty.cases:
            other = duty.cases[case.name]
            cases.setdefault(other.where, (block, other))
    return max(speed_of_crank(block, one, sheet) for block, one in cases.values())


def _blows(axle: DrivingAxle, case: LoadCase, sheet: Sheet) -> tuple[Newtons, Newtons]:
    ω = _speed(sheet.follow(axle.engine), case, sheet)
    return _of_wheels(turning_in_planes(axle, half_of_planes(axle, sheet), sheet), ω, sheet)


def _of_wheels(planes: Planes, ω: RadiansPerSecond, sheet: Sheet) -> tuple[Newtons, Newtons]:
    left, right = _sides(planes, sheet)
    return (
        sheet.work("F left", rotating_force, R=left, ω=ω),
        sheet.work("F right", rotating_force, R=right, ω=ω),
    )


def _sides(planes: Planes, sheet: Sheet) -> tuple[KilogramMetres, KilogramMetres]:
    """What each plane is out of balance by."""
    return (
        sheet.work("R left", out_of_balance, X=planes.X_l, Y=planes.Y_l),
        sheet.work("R right", out_of_balance, X=planes.X_r, Y=planes.Y_r),
    )


def _sums(planes: Planes, sheet: Sheet) -> tuple[KilogramMetres, KilogramMetres]:
    """Both planes together, along and across."""
    return (
        sheet.work("X", sum_in_plane, X_1=planes.X_l, X_2=planes.X_r),
        sheet.work("Y", sum_in_plane, X_1=planes.Y_l, X_2=planes.Y_r),
    )


def _force(symbol: str, X: KilogramMetres, Y: KilogramMetres, ω: RadiansPerSecond, sheet: Sheet) -> Newtons:
    R = sheet.work("R", out_of_balance, X=X, Y=Y)
    return sheet.work(symbol, rotating_force, R=R, ω=ω)


def _with_share(turns: Planes, c: Ratio, moves: Planes, mark: str, sheet: Sheet) -> Planes:
    """What turns, with a share of what reciprocates."""
    names = ("X_l", "Y_l", "X_r", "Y_r")
    return Planes(
        *(
            sheet.work(f"{name}{mark}", moment_with_share, X_0=X, c=c, U=U)
            for name, X, U in zip(names, turns, moves, strict=True)
        )
    )


RULES = (stays_on_rail, hammer_blow, whole_blow, balanced, unbalanced, weights)
