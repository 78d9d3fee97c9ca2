"""How a crosshead holds the piston rod."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Pascals
from speclint.facts import is_locked
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import load_with_factor
from speclint.specs import Crosshead, LoadCase, PistonRod
from speclint_motion.formulae.bodies import pressure_of_cotter, shear_of_cotter
from speclint_motion.inputs.rod_ends import at_crosshead
from speclint_motion.inputs.thrust import ALONG_STROKE, cylinder_of, greatest, piston_of, relief_pressure
from speclint_motion.inputs.tightening import (
    BOLT,
    CLOSE,
    FACTORS,
    WIDE,
    by_some_method,
    tightened,
)
from speclint_motion.rules.crowns import DEFERS


@rule(
    "crosshead.holds-its-rod",
    edition=3,
    title="A locked cotter, or a nut or bolts locked by more than a set screw, hold the rod in its crosshead with 1.5 "
    "times its pull; bolts take 0.7 of proof stress, a cotter 0.2 of its strength in shear",
    on=Crosshead,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, FACTORS, COMMON_PRACTICE],
    why="A rod that works loose hammers its cotter or its bolts to pieces, and then the piston goes through the cover.",
    leaves_out="fit of the rod's taper, the slot in the rod (rod.tension), bending of a cotter, how it bears in the "
    "crosshead; fatigue of bolts that stay tight; fit and height of a nut; a heavier piston for a later bore; "
    f"{DEFERS}",
    against=("loosen",),
    limits=[
        Limit("held", "1.5", "ratio", COMMON_PRACTICE, "least force that holds the rod over its pull"),
        BOLT,
        Limit(
            "cotter", "0.2", "ratio", COMMON_PRACTICE, "greatest shear of a cotter over its tensile strength"
        ),
        Limit(
            "bearing",
            "0.4",
            "ratio",
            COMMON_PRACTICE,
            "greatest pressure of a cotter in its rod over the lesser tensile strength of the two",
        ),
        CLOSE,
        WIDE,
    ],
)
def holds_its_rod(crosshead: Crosshead, case: LoadCase, sheet: Sheet) -> Judgement:
    """n F_0 of bolts or nut against the pull at the last bore with its factor; F/(2 b h), F/(b d) of a cotter; a lock.

    The preload has a least and a greatest, as some method of tightening leaves them. A nut pulls on the metal of its
    rod.
    """
    held = crosshead.rod_held
    by, lock = sheet.read("rod held by", held.by), sheet.read("locked by", held.locked_by)
    holds = is_locked("cotter" if by == "cotter" else "nut", lock)
    locked = sheet.states(holds, f"{by} locked by: {lock}", where=held.locked_by.where)
    cylinder = cylinder_of(piston_of(crosshead, sheet), sheet)
    pull = sheet.work("F", pressure_load, p=relief_pressure(cylinder, case, sheet), D=cylinder.D)
    if case.name == "running":
        pull = max(pull, greatest("F_θ", "force along the stroke", ALONG_STROKE, cylinder, case, sheet))
    if by == "cotter":
        return sheet.worst(locked, _cottered(crosshead, pull, sheet))
    wanted = sheet.work("F_w", load_with_factor, x=sheet.limit("held", "k"), F=pull)
    n = float(sheet.count("n", held.bolts)) if by == "flange bolts" else 1.0
    bolts = tightened(held, n, "the bolts of the rod", sheet)
    return sheet.worst(
        locked,
        by_some_method(held, sheet),
        *((_of_the_rod(crosshead, sheet),) if by == "nut" else ()),
        sheet.at_least(bolts.holds, wanted).else_says("rod held with {found}, {limit} wanted"),
        sheet.at_most(bolts.F_0, bolts.bears).else_says(
            "bolt of the rod tightened to {found}, {limit} allowed"
        ),
    )


def _of_the_rod(crosshead: Crosshead, sheet: Sheet) -> Judgement:
    """That the metal stated of the rod's end under its nut is that of the rod."""
    rod, held = sheet.follow(crosshead.on_rod), crosshead.rod_held
    own = sheet.read("metal of the rod", rod.material)
    said = sheet.read("metal under the nut", held.bolt_material)
    says = f"under its nut the rod is said to be of {said}, and {rod.id} is of {own}"
    return sheet.states(own == said, says, where=held.bolt_material.where)


def _cottered(crosshead: Crosshead, pull: Newtons, sheet: Sheet) -> Judgement:
    held = crosshead.rod_held
    b, h = sheet.take("b", held.cotter_thickness), sheet.take("h", held.cotter_depth)
    metal = sheet.material_named("the cotter", held.cotter_material)
    R_m = sheet.look_up("R_c", metal.tensile_strength, at=DRAWING_TEMPERATURE, thickness=b)
    τ = sheet.work("τ", shear_of_cotter, F=pull, b=b, h=h)
    S = sheet.work("S_c", share_of_strength, k=sheet.limit("cotter", "x_c"), R=R_m)
    return sheet.worst(
        sheet.at_most(τ, S).else_says("cotter sheared with {found}, {limit} allowed"),
        _bearing(crosshead, pull, b, R_m, sheet),
    )


def _bearing(crosshead: Crosshead, pull: Newtons, b: Metres, R_m: Pascals, sheet: Sheet) -> Judgement:
    """A cotter on the length of it that lies in the rod, of which the weaker of the two is crushed."""
    rod = sheet.follow(crosshead.on_rod)
    d = _slotted(rod, sheet)
    R_r = sheet.look_up(
        "R_r", sheet.material_of(rod).tensile_strength, of=rod, at=DRAWING_TEMPERATURE, thickness=d
    )
    p = sheet.work("p_c", pressure_of_cotter, F=pull, b=b, d=d)
    S = sheet.work("S_p", share_of_strength, k=sheet.limit("bearing", "x_p"), R=min(R_m, R_r))
    return sheet.at_most(p, S).else_says("cotter bears in its rod with {found}, {limit} allowed")


def _slotted(rod: PistonRod, sheet: Sheet) -> Metres:
    """The diameter of a rod where the slot of its cotter is drawn, else of the rod."""
    slotted = next((section for _, section in at_crosshead(rod, "cotter slot", sheet)), rod)
    return sheet.take("d", slotted.diameter)


RULES = (holds_its_rod,)
