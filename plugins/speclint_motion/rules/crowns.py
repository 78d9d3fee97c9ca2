"""The walls of a piston between its hub and its rim."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Pascals
from speclint.handbook.fits import DRAWING_TEMPERATURE, share_of_size
from speclint.handbook.materials import share_of_strength
from speclint.handbook.plates import rings
from speclint.handbook.tables import ROARK
from speclint.specs import LoadCase, Piston, PistonRod
from speclint_motion.formulae.bodies import both_walls, rim_behind_groove, stress_of_two_walls
from speclint_motion.formulae.pistons import strength_over
from speclint_motion.formulae.sections import fatigue_factor
from speclint_motion.inputs.thrust import boiler_pressure, cylinder_of, relief_pressure
from speclint_motion.sources import SHIGLEY_GOODMAN

DEFERS = "the local code and a competent person decide"
_IRON = ("grey-iron", "ductile-iron", "chilled-iron", "austenitic-iron")
#: Of every rule on the bodies of the motion: what is left of a polished bar's endurance in a cast or forged body.
ENDURANCE = Limit(
    "endurance",
    "0.25",
    "ratio",
    COMMON_PRACTICE,
    "endurance of a rough body, reversed, over its tensile strength",
)
FACTOR = Limit("factor", "1.5", "ratio", COMMON_PRACTICE, "least factor against fatigue")


@rule(
    "piston.crown",
    title="Steam or water at relief pressure bends the walls of a piston to at most 0.5 of their proof stress, or a "
    "sixth of the strength of iron; pressed from side to side their factor is at least 1.5",
    on=Piston,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    edition=3,
    cites=[ROARK.at("Table 11.2, general relations for annular plates"), SHIGLEY_GOODMAN, COMMON_PRACTICE],
    why="A piston that cracks round its hub comes off its rod in pieces, and they go through the cover.",
    leaves_out="ribs between two walls, which help; holes through a wall; heat that differs over the piston; a dished "
    f"piston, which wants finite elements; {DEFERS}",
    against=("break under load", "break in fatigue"),
    limits=[
        Limit("iron", "6", "ratio", COMMON_PRACTICE, "least tensile strength of iron over stress"),
        Limit("steel", "0.5", "ratio", COMMON_PRACTICE, "greatest stress over proof stress of steel"),
        ENDURANCE,
        FACTOR,
        Limit(
            "rim",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "least thickness of the rim behind a groove over that of a wall that it stiffens",
        ),
    ],
)
def crown(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """A plate round the hub, one wall free at the liner's last bore; of two walls the rim is free.

    Half of the pressure on two walls acts with the rim and half without it. The hub is thicker than the rod; two walls
    have room in the length of the piston, and a rim at least half as thick behind its grooves as a wall.
    """
    cylinder = cylinder_of(piston, sheet)
    p = relief_pressure(cylinder, case, sheet, sides=("front", "back"))
    bent = sheet.at_most(_bent("σ", p, piston, cylinder.D, sheet), _allowed(piston, case, sheet)).else_says(
        "walls of the piston bent to {found}, {limit} allowed"
    )
    strong = sheet.worst(bent, *_one_body(piston, sheet))
    if case.name != "running":
        return strong
    σ_a = _bent("σ_a", boiler_pressure(case, sheet), piston, cylinder.D, sheet)
    R_m = _tensile(piston, sheet)
    S_e = sheet.work("S_e", share_of_strength, k=sheet.limit("endurance", "x_e"), R=R_m)
    n = sheet.work("n", fatigue_factor, σ_a=σ_a, σ_m=0.0, K_f=1.0, k=1.0, S_f=S_e, R_m=R_m)
    lasts = sheet.at_least(n, sheet.limit("factor", "n_a")).else_says(
        "factor of the piston's walls against fatigue {found}, {limit} wanted"
    )
    return sheet.worst(strong, lasts)


def _one_body(piston: Piston, sheet: Sheet) -> Iterator[Judgement]:
    """A hub thicker than its rod; room for both of two walls, and metal behind the grooves of the rim between them."""
    of = piston.crown
    for rod in sheet.belonging_to(piston, PistonRod):
        hub, d_r = sheet.take("d", of.hub), sheet.take("d_r", rod.diameter)
        yield sheet.states(hub > d_r, "the hub of the piston is no thicker than its rod", where=of.hub.where)
    if sheet.read("form of the crown", of.form) != "two walls":
        return
    t, D_r = sheet.take("t", of.thickness), sheet.take("D_r", of.rim)
    yield sheet.at_most(sheet.work("t_2", both_walls, t=t), sheet.take("L_p", piston.length)).else_says(
        "two walls of together {found} in a piston {limit} long"
    )
    least = sheet.work("s_n", share_of_size, k=sheet.limit("rim", "k_r"), t=t)
    for name, groove in piston.grooves.items():
        h = sheet.take(f"h_{name}", groove.depth)
        left = sheet.work(f"s_{name}", rim_behind_groove, D=sheet.take("D_p", piston.diameter), D_r=D_r, h=h)
        yield sheet.at_least(left, least).else_says(
            f"rim of the piston {{found}} thick behind groove {name}, {{limit}} wanted"
        )


def _bent(symbol: str, p: Pascals, piston: Piston, B: Metres, sheet: Sheet) -> Pascals:
    """Greatest bending stress, at the hub, by a pressure on one side over all of the bore ``B``, the last one.

    The piston for that bore is taken to have the walls of this one.
    """
    of, form = piston.crown, sheet.read("form of the crown", piston.crown.form)
    if form == "dished":
        raise sheet.not_covered("a dished piston wants an analysis by finite elements")
    t, d = sheet.take("t", of.thickness), sheet.take("d", of.hub)
    nu = sheet.look_up("ν", sheet.material_of(piston).poisson, of=piston)
    if form == "one wall":
        D = max(B, sheet.take("D_p", piston.diameter))
        k = sheet.look_up(
            "k_f", rings.ring_plate_stress_factor, outer="free", inner="clamped", d=d, D=D, nu=nu
        )
        return sheet.work(symbol, rings.ring_plate_stress, k=k, p=p, D=D, t=t)
    D = sheet.take("D_r", of.rim)
    k_g, k_c = (
        sheet.look_up(mark, rings.ring_plate_stress_factor, outer=edge, inner="clamped", d=d, D=D, nu=nu)
        for mark, edge in (("k_g", "guided"), ("k_c", "clamped"))
    )
    return sheet.work(symbol, stress_of_two_walls, k_g=k_g, k_c=k_c, p=p, B=B, D=D, d=d, t=t)


def _allowed(piston: Piston, case: LoadCase, sheet: Sheet) -> Pascals:
    metal, at = sheet.material_of(piston), sheet.take("T_p", case.temperature_of(piston))
    made = sheet.take("t_m", piston.stock_thickness)
    if metal.family in _IRON:
        R = sheet.look_up("R", metal.tensile_strength, of=piston, at=at, thickness=made)
        return sheet.work("S", strength_over, R=R, n=sheet.limit("iron", "n_i"))
    R_p = sheet.look_up("R_p", metal.proof_stress, of=piston, at=at, thickness=made)
    return sheet.work("S", share_of_strength, k=sheet.limit("steel", "x"), R=R_p)


def _tensile(piston: Piston, sheet: Sheet) -> Pascals:
    made = sheet.take("t_m", piston.stock_thickness)
    metal = sheet.material_of(piston)
    return sheet.look_up("R_m", metal.tensile_strength, of=piston, at=DRAWING_TEMPERATURE, thickness=made)


RULES = (crown,)
