"""The rings of a piston: their gap, their grooves, and the lands beside them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Pascals
from speclint.handbook.fits import DRAWING_TEMPERATURE, diametral_clearance, share_of_diameter
from speclint.handbook.materials import share_of_strength
from speclint.specs import Component, Piston, PistonRing
from speclint_motion.formulae.pistons import (
    land_bending,
    land_shear,
    ring_gap_when_hot,
    ring_gap_when_worn,
    strength_over,
)
from speclint_motion.inputs.thrust import cylinder_of, relief_pressure

if TYPE_CHECKING:
    from speclint.specs import Groove, LoadCase

_IRON = ("grey-iron", "ductile-iron", "chilled-iron", "austenitic-iron")
#: Shear over tension at yield of a ductile metal is one over this, by distortion energy.
_DISTORTION = 3**0.5


@rule(
    "piston.ring-gap",
    title="The end gap of the hot ring in the hot bore is not below its limit, and in the bore as worn as it may be "
    "before the next size of ring or the last bore not above its share of the bore",
    on=PistonRing,
    cases=("warming", "starting", "running", "drifting"),
    edition=2,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A ring whose ends meet cannot expand further: it seizes in the bore or breaks. One whose ends stand far "
    "apart lets the steam through.",
    leaves_out="wear of the ring; wear of a bore in the block without a liner",
    against=("leak", "seize"),
    limits=[
        Limit("least", "0.2 mm", "length", COMMON_PRACTICE, "least gap hot"),
        Limit("most", "0.03", "ratio", COMMON_PRACTICE, "greatest gap over the bore, in the worn bore"),
    ],
)
def gap(ring: PistonRing, case: LoadCase, sheet: Sheet) -> Judgement:
    """Cold gap plus the growth of the bore, less that of the ring; cold gap with the wear of the bore."""
    bore, D = _bore(ring, sheet)
    at_l, at_r = sheet.take("T_l", case.temperature_of(bore)), sheet.take("T_r", case.temperature_of(ring))
    g = sheet.take("g", ring.gap)
    left = sheet.work(
        "g_h",
        ring_gap_when_hot,
        g=g,
        D=D,
        alpha_l=sheet.look_up("α_l", sheet.material_of(bore).expansion, of=bore, at=at_l),
        T_l=at_l,
        alpha_r=sheet.look_up("α_r", sheet.material_of(ring).expansion, of=ring, at=at_r),
        T_r=at_r,
        T_ref=DRAWING_TEMPERATURE,
    )
    return sheet.worst(
        sheet.at_least(left, sheet.limit("least")).else_says("ring gap {found} hot, {limit} wanted"),
        *_worn(ring, g, sheet),
    )


def _worn(ring: PistonRing, g: Metres, sheet: Sheet) -> Iterator[Judgement]:
    """The gap new, and before each change to the next size of ring."""
    sizes = _sizes(ring, sheet)
    for number, (D, D_w) in enumerate(pairwise([*sizes, sizes[-1]]), 1):
        most = sheet.work(f"g_n{number}", share_of_diameter, k=sheet.limit("most", "k"), D=D)
        yield sheet.at_most(
            sheet.work(f"g_w{number}", ring_gap_when_worn, g=g, D=D, D_w=D_w), most
        ).else_says("ring gap {found} in the worn bore, {limit} allowed")


def _sizes(ring: PistonRing, sheet: Sheet) -> list[Metres]:
    """The bores at which a ring is fitted new, from the new bore up, and of a liner its last bore."""
    made = [sheet.take(f"D_{number}", size) for number, size in enumerate(ring.made_for, 1)]
    if not sheet.is_stated("runs in", ring.runs_in):
        return sorted(made)
    liner = sheet.follow(ring.runs_in)
    new, last = sheet.take("D", liner.bore), sheet.take("D_last", liner.last_bore)
    return sorted([new, *(size for size in made if new < size < last), last])


def _bore(ring: PistonRing, sheet: Sheet) -> tuple[Component, Metres]:
    """The part that the ring runs in, and its bore; in the block itself, the least bore that the ring is made for."""
    if sheet.is_stated("runs in", ring.runs_in):
        liner = sheet.follow(ring.runs_in)
        return liner, sheet.take("D", liner.bore)
    block = sheet.follow(ring.bears_on)
    if not ring.made_for:
        raise sheet.not_assessed(f"made_for is not stated in {ring.where.file}", ring.where)
    return block, min(sheet.take("D", size) for size in ring.made_for)


@rule(
    "piston.ring-lands",
    title="With water at relief pressure the stress of the lands does not exceed that allowed for the metal as "
    "thick as made, and the clearances of the rings in their grooves are within their limits",
    on=Piston,
    cases=("starting", "running", "water"),
    edition=5,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A cracked land breaks out in pieces; a ring that bears on the bottom of its groove seizes.",
    leaves_out="notch at the corner of the groove, wear of its sides, thermal stress of the crown",
    against=("seize",),
    limits=[
        Limit("iron", "8", "ratio", COMMON_PRACTICE, "least tensile strength of iron over stress"),
        Limit("steel", "0.33", "ratio", COMMON_PRACTICE, "greatest stress over proof stress of steel"),
        Limit("back", "0.5 mm", "length", COMMON_PRACTICE, "least clearance behind a ring pushed home"),
        Limit("side_least", "0.03 mm", "length", COMMON_PRACTICE, "least clearance beside a ring"),
        Limit("side_most", "0.2 mm", "length", COMMON_PRACTICE, "greatest clearance beside a ring, new"),
    ],
)
def lands(piston: Piston, case: LoadCase, sheet: Sheet) -> Judgement:
    """A strip of the land under the cylinder's greatest pressure on one side; the groove against its ring."""
    if not piston.grooves:
        raise sheet.not_assessed(f"grooves is not stated in {piston.where.file}", piston.where)
    p = relief_pressure(cylinder_of(piston, sheet), case, sheet, sides=("front", "back"))
    allowed = _allowed(piston, case, sheet)
    return sheet.worst(
        sheet.each(
            piston.grooves.items(), lambda item: sheet.worst(*_land(*item, p, allowed, piston, sheet))
        ),
        sheet.each(piston.grooves.items(), lambda item: sheet.worst(*_groove(*item, sheet))),
    )


def _land(
    name: str, groove: Groove, p: Pascals, allowed: Pascals, piston: Piston, sheet: Sheet
) -> list[Judgement]:
    h, b = sheet.take(f"h_{name}", groove.depth), sheet.take(f"b_{name}", groove.land)
    bending = sheet.work(f"σ_{name}", land_bending, p=p, h=h, b=b)
    shear = sheet.work(f"τ_{name}", land_shear, p=p, h=h, b=b)
    sheared = (
        allowed if _is_iron(piston, sheet) else sheet.work("τ_all", strength_over, R=allowed, n=_DISTORTION)
    )
    return [
        sheet.at_most(bending, allowed).else_says("land of groove {item} bent to {found}, {limit} allowed"),
        sheet.at_most(shear, sheared).else_says("land of groove {item} sheared by {found}, {limit} allowed"),
    ]


def _is_iron(piston: Piston, sheet: Sheet) -> bool:
    return sheet.material_of(piston).family in _IRON


def _allowed(piston: Piston, case: LoadCase, sheet: Sheet) -> Pascals:
    """Allowable stress of the metal, hot, as thick as made: an eighth of iron's strength, a third of steel's yield."""
    made = sheet.take("t_m", piston.stock_thickness)
    material, at = sheet.material_of(piston), sheet.take("T_p", case.temperature_of(piston))
    if _is_iron(piston, sheet):
        R_m = sheet.look_up("R_m", material.tensile_strength, of=piston, at=at, thickness=made)
        return sheet.work("S", strength_over, R=R_m, n=sheet.limit("iron", "n"))
    R_p = sheet.look_up("R_p", material.proof_stress, of=piston, at=at, thickness=made)
    return sheet.work("S", share_of_strength, k=sheet.limit("steel", "x"), R=R_p)


def _groove(name: str, groove: Groove, sheet: Sheet) -> list[Judgement]:
    """Clearance behind the ring when it is pushed home, and beside it."""
    ring = sheet.follow(groove.takes)
    behind = sheet.work(
        f"c_b,{name}",
        diametral_clearance,
        D=sheet.take(f"h_{name}", groove.depth),
        d=sheet.take(f"t_{name}", ring.thickness),
    )
    beside = sheet.work(
        f"c_s,{name}",
        diametral_clearance,
        D=sheet.take(f"w_{name}", groove.width),
        d=sheet.take(f"b_r{name}", ring.width),
    )
    side = sheet.within(beside, sheet.limit("side_least"), sheet.limit("side_most")).else_says(
        "ring in groove {item} has {found} beside it, the nearer limit is {limit}"
    )
    return [
        sheet.at_least(behind, sheet.limit("back")).else_says(
            "ring in groove {item} has {found} behind it, {limit} wanted"
        ),
        side,
    ]


RULES = (gap, lands)
