"""Piston rings: opened over the piston, and shut in the bore."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Pascals
from speclint.facts import (
    TRIBOLOGY_HANDBOOK,
    change_of_gap_in_bore,
    modulus_of_ring,
    ring_bore,
    stress_of_gap_change,
)
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.specs import Piston, PistonRing
from speclint_assembly.formulae.rings import (
    bending_strength_of_iron,
    further_opened,
    ring_may_open,
    ring_opened,
)
from speclint_assembly.sources import GEOMETRY


@rule(
    "ring.opens-over-piston",
    title="A ring slips over its piston with its gap opened to no more than eight times its thickness, opened so far "
    "it does not break, and shut in its bore it is stressed to no more than half of that",
    on=PistonRing,
    grade=Grade.NONCONFORMITY,
    cites=[*GEOMETRY, TRIBOLOGY_HANDBOOK],
    why="a ring of iron that is opened further breaks, or never springs back round; one that is strained too far in "
    "its bore loses its spring or breaks in service",
    leaves_out="pistons in parts, between which a ring is laid; the notch at a stop or a slot, and heat, which lowers "
    "modulus and strength alike",
    against=("break under load",),
    limits=[
        Limit(
            "multiple", "8", "ratio", TRIBOLOGY_HANDBOOK, "gap to which a ring is opened over its thickness"
        ),
        Limit("bending", "1.5", "ratio", COMMON_PRACTICE, "bending over tensile strength of grey iron"),
        Limit(
            "shut",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "greatest stress in the bore over the strength in bending",
        ),
    ],
    edition=2,
)
def opens_over_piston(ring: PistonRing, sheet: Sheet) -> Judgement:
    """s_o = π (D_p − d + 2 t) + s against k t; the stress of the ring opened to k t, and shut, by its free gap."""
    pistons = sheet.belonging_to(ring, Piston)
    if not pistons:
        raise sheet.not_assessed(f"no piston has a groove that takes {ring.id}", ring.where)
    d, t, s = (
        sheet.take("d", ring_bore(ring, sheet)),
        sheet.take("t", ring.thickness),
        sheet.take("s", ring.gap),
    )
    most = sheet.work("s_max", ring_may_open, k=sheet.limit("multiple", "k"), t=t)

    def judge(piston: Piston) -> Judgement:
        over = sheet.take("D_p", piston.diameter)
        opened = sheet.work("s_o", ring_opened, D_p=over, d=d, t=t, s=s)
        return sheet.at_most(opened, most).else_says("ring opens to {found} over its piston, {limit} allowed")

    E, R = modulus_of_ring(ring, sheet), _strength(ring, sheet)
    delta = change_of_gap_in_bore(ring, sheet.take, sheet)
    further = sheet.work("δ_o", further_opened, s_o=most, s=s, delta=delta)
    opened = sheet.work("σ_o", stress_of_gap_change, E=E, t=t, delta=further, d=d)
    shut = sheet.work("σ_s", stress_of_gap_change, E=E, t=t, delta=delta, d=d)
    held = sheet.work("σ_all", share_of_strength, k=sheet.limit("shut", "x"), R=R)
    return sheet.worst(
        sheet.each(pistons, judge),
        sheet.at_most(opened, R).else_says(
            "ring stressed to {found} as it goes over its piston, {limit} allowed"
        ),
        sheet.at_most(shut, held).else_says("ring stressed to {found} in its bore, {limit} allowed"),
    )


def _strength(ring: PistonRing, sheet: Sheet) -> Pascals:
    """In bending, as thick as the ring: of grey iron by its tensile strength, of another metal its proof stress."""
    material, t = sheet.material_of(ring), sheet.take("t", ring.thickness)
    if material.family != "grey-iron":
        return sheet.look_up("R_p", material.proof_stress, of=ring, at=DRAWING_TEMPERATURE, thickness=t)
    R_m = sheet.look_up("R_m", material.tensile_strength, of=ring, at=DRAWING_TEMPERATURE, thickness=t)
    return sheet.work("R_b", bending_strength_of_iron, k=sheet.limit("bending", "k_b"), R_m=R_m)


RULES = (opens_over_piston,)
