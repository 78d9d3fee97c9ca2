"""The flanges of steam pipes."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import circle_of_studs, mean_diameter
from speclint.handbook.cylinders import BORESI, bore_hoop_stress
from speclint.handbook.materials import share_of_strength
from speclint.specs import BoltedJoint, LoadCase, PipeFlange, SteamPipe
from speclint_joints.formulae.flanges import (
    greatest_throat_round,
    least_ring_of_collar,
    limit_moment_of_ring,
    moment_of_flange,
    pressure_of_collar,
    reach_of_collar,
    stress_of_weld_round,
)
from speclint_joints.formulae.holes import inside_of_holes
from speclint_joints.inputs.cover_loads import greatest_pulls, reaction_circle
from speclint_joints.inputs.flange_bores import bore_of_ring
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.sources import EN_1591_1, FILLET_WELD, LAPPED_FLANGE, LOOSE_FLANGE, SLIP_ON_FLANGE


@rule(
    "pipe-flange.strength",
    title="The greatest pull of its bolts turns a flange no harder than its ring bears at its allowable tension, 1.5 "
    "times that as tightened; steam stresses it to that at most, its weld, as can be laid, to 0.49",
    on=PipeFlange,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[EN_1591_1, LOOSE_FLANGE, SLIP_ON_FLANGE, FILLET_WELD, BORESI, FIRST_PRINCIPLES, COMMON_PRACTICE],
    edition=4,
    why="A thin flange dishes under its bolts until the joint opens, and one that leaves its pipe lets all the steam "
    "out; a throat larger than the wall of the pipe gives fillets is drawn and not laid.",
    leaves_out="hub and pipe of a flange that is welded on, which help; a hole bored wider than is stated, for a pipe "
    "that goes through one welded on; a weld through the whole wall with fillets beside it; the collar behind a loose "
    "flange; force and moment of the pipe (opening.pipe-load); heat that differs over the flange; the test (pipe.test)",
    against=("burst", "break under load"),
    limits=[
        Limit(
            "in work",
            "1",
            "ratio",
            EN_1591_1,
            "strength of the whole ring in work over its allowable tension",
        ),
        Limit(
            "tightened",
            "1.5",
            "ratio",
            COMMON_PRACTICE,
            "the same as tightened, once, cold and without steam, before the studs ease",
        ),
        Limit("weld", "0.49", "ratio", FILLET_WELD, "allowable stress of a fillet weld over tension"),
        Limit(
            "throat",
            "1.7",
            "ratio",
            SLIP_ON_FLANGE,
            "greatest throat of the fillets round a pipe over its wall: a leg of 1.4 walls outside, of one inside",
        ),
    ],
)
def strength(flange: PipeFlange, case: LoadCase, sheet: Sheet) -> Judgement:
    """Moment against the limit load of a ring without a hub, tightened and in work; Lamé at its bore; p d/(4 a).

    Its bore counts as no less than its pipe through a loose flange, the way through a pipe that it is welded on, or the
    opening of its block.
    """
    joint = _joint(flange, sheet)
    p = acting_pressure(joint, case, sheet)
    loose = _is_loose(flange, sheet)
    A, B = sheet.take("A", flange.outside_diameter), bore_of_ring(flange, joint, sheet, loose=loose)
    t, metal = sheet.take("t", flange.thickness), sheet.material_of(flange)
    T_0, T = sheet.take("T_0", joint.tightening.temperature), sheet.take("T_m", case.temperature_of(flange))
    f_0 = sheet.look_up("f_0", metal.allowable_tension, of=flange, at=T_0, wall=t)
    f = sheet.look_up("f_h", metal.allowable_tension, of=flange, at=T, wall=t)
    judged = list(_turned(flange, joint, (A, B, t, p), (f_0, f), case, sheet))
    if not loose:
        judged += _under_steam(flange, (p, A, B, f), sheet)
    return sheet.worst(*judged)


def _turned(
    flange: PipeFlange,
    joint: BoltedJoint,
    of: tuple[float, float, float, float],
    strengths: tuple[float, float],
    case: LoadCase,
    sheet: Sheet,
) -> Iterator[Judgement]:
    """The ring turned by its bolts, as tightened and with the steam on."""
    A, B, t, p = of
    pulls = greatest_pulls(joint, case, sheet)
    loose = _is_loose(flange, sheet)
    G = _collar(flange, B, sheet) if loose else max(reaction_circle(joint, sheet), B)
    circle = circle_of_studs(joint, sheet)
    ring = {"A": A, "B": B, "t": t, "D_b": circle}
    ring |= {"d": sheet.take("d_h", joint.hole), "n": float(sheet.count("n", joint.count))}
    states = (("0", pulls.tightened, 0.0, "tightened"), ("h", pulls.in_work, p, "in work"))
    for (mark, W, pressed, limit), f in zip(states, strengths, strict=True):
        inside = G if loose else B
        M = sheet.work(f"M_{mark}", moment_of_flange, W=W, D_b=circle, G=G, B=inside, p=pressed)
        f_b = sheet.work(f"f_b{mark}", share_of_strength, k=sheet.limit(limit), R=f)
        borne = sheet.work(f"M_l{mark}", limit_moment_of_ring, f=f_b, **ring)
        yield sheet.at_most(M, borne).else_says("bolts turn the flange with {found}, its ring bears {limit}")


def _joint(flange: PipeFlange, sheet: Sheet) -> BoltedJoint:
    """The one joint that holds the flange, or that it is bolted to with its pipe's lens ring between."""
    joints = [
        joint
        for joint in sheet.belonging_to(flange, BoltedJoint)
        if any(
            sheet.is_stated(f"{word} of {joint.id}", link) and sheet.follow(link) is flange
            for word, link in (("holds", joint.holds), ("bolted to", joint.bolted_to))
        )
    ]
    if len(joints) != 1:
        raise sheet.not_assessed(f"{len(joints)} bolted joints have this flange; one is needed", flange.where)
    return joints[0]


def _collar(flange: PipeFlange, B: Metres, sheet: Sheet) -> Metres:
    """The middle of the ring on which a loose flange bears on the collar of its pipe."""
    pipe = _pipe_with_collar(flange, sheet)
    return sheet.work("G", mean_diameter, D_o=sheet.take("D_c", pipe.collar_diameter), D_i=B)


def _pipe_with_collar(flange: PipeFlange, sheet: Sheet) -> SteamPipe:
    pipe = sheet.follow(flange.of)
    if not isinstance(pipe, SteamPipe):
        raise sheet.not_assessed(f"{pipe.id} is no pipe with a collar", flange.of.where)
    return pipe


def _is_loose(flange: PipeFlange, sheet: Sheet) -> bool:
    return sheet.read("held", flange.held) == "loose behind a collar"


def _under_steam(flange: PipeFlange, of: tuple[float, float, float, float], sheet: Sheet) -> list[Judgement]:
    """The ring as a thick cylinder, and the weld that holds it on the end of its pipe."""
    p, A, B, f = of
    hoop = sheet.work("σ_p", bore_hoop_stress, p=p, d=B, D=A)
    pipe = sheet.follow(flange.of)
    a = sheet.take("a", flange.weld_throat)
    d = sheet.take("d", pipe.outside_diameter) if isinstance(pipe, SteamPipe) else B
    τ = sheet.work("τ", stress_of_weld_round, p=p, d=d, a=a)
    f_w = sheet.work("f_w", share_of_strength, k=sheet.limit("weld"), R=f)
    return [
        *(_laid(a, pipe, sheet) if isinstance(pipe, SteamPipe) else ()),
        sheet.at_most(hoop, f).else_says("steam stresses the flange to {found}, {limit} allowed"),
        sheet.at_most(τ, f_w).else_says("weld of the flange stressed to {found}, {limit} allowed"),
    ]


def _laid(a: Metres, pipe: SteamPipe, sheet: Sheet) -> Iterator[Judgement]:
    """The throat against that of two fillets on the wall of the pipe; a wall that is not stated, pipe.wall asks for."""
    if sheet.is_stated(f"wall of {pipe.id}", pipe.wall):
        most = sheet.work(
            "a_m", greatest_throat_round, k=sheet.limit("throat"), t=sheet.take("t_p", pipe.wall)
        )
        yield sheet.at_most(a, most).else_says(
            "welds of the flange have a throat of {found}, two fillets on the wall of its pipe {limit} at most"
        )


@rule(
    "pipe-flange.collar-bears",
    edition=3,
    title="A loose flange bears all round on the collar of its pipe, inside its bolts and with the pipe against its "
    "bore too; all bolts press them no harder than 1.5 times the design stress of the weaker metal",
    on=PipeFlange,
    cases=("starting", "running", "test"),
    grade=Grade.HOLD,
    cites=[LAPPED_FLANGE, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A collar that bears on the edge of its flange crushes it or is pulled through, and the pipe leaves its joint "
    "under full steam.",
    leaves_out="the collar's own thickness and weld, which no spec states: it is taken to be of the metal of its pipe; "
    "chamfer of the bore and fillet of the collar; force and moment of the pipe (opening.pipe-load). The local code "
    "and a competent person decide.",
    against=("burst", "break under load"),
    limits=[
        Limit(
            "width",
            "3 mm",
            "length",
            COMMON_PRACTICE,
            "least width of the collar on its flange where the pipe lies against the bore",
            "not negative",
        ),
        Limit(
            "bearing", "1.5", "ratio", LAPPED_FLANGE, "pressure of a collar on its flange over design stress"
        ),
    ],
)
def collar_bears(flange: PipeFlange, case: LoadCase, sheet: Sheet) -> Judgement:
    """The ring on which both touch: its width at the worst place, and all bolts over its area, cold and in the case.

    A collar as far to one side as the bore lets it go reaches no farther than to the holes of the bolts.
    A loose flange is round its pipe: however narrow its bore is said to be, it is no narrower than the pipe.
    """
    if not _is_loose(flange, sheet):
        raise sheet.not_applicable("a flange that is welded on has no collar")
    pipe = _pipe_with_collar(flange, sheet)
    D, d = sheet.take("D_c", pipe.collar_diameter), sheet.take("d", pipe.outside_diameter)
    B = max(sheet.take("B", flange.bore), d)

    def wide_enough() -> Judgement:
        width = sheet.work("w", least_ring_of_collar, D_c=D, d=d, B=B)
        return sheet.at_least(width, sheet.limit("width", "w_0")).else_says(
            "collar bears on its flange by {found} where the pipe lies against the bore, {limit} wanted"
        )

    def inside_its_bolts() -> Judgement:
        joint = _joint(flange, sheet)
        D_b, d_h = circle_of_studs(joint, sheet), sheet.take("d_h", joint.hole)
        reach = sheet.work("D_r", reach_of_collar, D_c=D, d=d, B=B)
        free = sheet.work("D_in", inside_of_holes, D_b=D_b, d_h=d_h)
        return sheet.at_most(reach, free).else_says(
            "collar reaches to a circle of {found}, the holes of the bolts begin at {limit}"
        )

    def pressed_softly() -> Judgement:
        return _pressed(flange, pipe, (D, B), case, sheet)

    judges: tuple[Callable[[], Judgement], ...] = (wide_enough, inside_its_bolts, pressed_softly)
    return sheet.each(judges, lambda judge: judge())


def _pressed(
    flange: PipeFlange, pipe: SteamPipe, ring: tuple[float, float], case: LoadCase, sheet: Sheet
) -> Judgement:
    """The pressure between collar and flange, as tightened and with the steam on."""
    joint = _joint(flange, sheet)
    pulls = greatest_pulls(joint, case, sheet)
    cold = sheet.take("T_0", joint.tightening.temperature)
    metals = []
    for part, symbol, wall in ((flange, "t", flange.thickness), (pipe, "t_p", pipe.wall)):
        hot, t = sheet.take(f"T of {part.id}", case.temperature_of(part)), sheet.take(symbol, wall)
        metals.append((part, t, hot))
    judged = []
    for mark, W in (("0", pulls.tightened), ("h", pulls.in_work)):
        f = min(
            sheet.look_up(
                f"f_{mark} of {part.id}",
                sheet.material_of(part).allowable_tension,
                of=part,
                at=cold if mark == "0" else hot,
                wall=t,
            )
            for part, t, hot in metals
        )
        pressed = sheet.work(f"q_{mark}", pressure_of_collar, W=W, D_c=ring[0], B=ring[1])
        borne = sheet.work(f"q_a{mark}", share_of_strength, k=sheet.limit("bearing"), R=f)
        judged.append(
            sheet.at_most(pressed, borne).else_says(
                "bolts press collar and flange with {found}, {limit} allowed"
            )
        )
    return sheet.worst(*judged)


RULES = (strength, collar_bears)
