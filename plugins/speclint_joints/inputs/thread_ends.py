"""What a thread of a stud or a bolt is engaged in, the load at which either strips, and whether a nut matches it."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from speclint import COMMON_PRACTICE, Limit, Sheet
from speclint.handbook.bolted_joints import (
    inner_thread_bending_factor,
    nut_widening_factor,
    outer_thread_bending_factor,
    shear_strength,
    shear_strength_ratio,
    stripping_load_with_factors,
    thread_strength_ratio,
)
from speclint.handbook.materials import Material
from speclint.handbook.threads import external_stripping_area, internal_stripping_area
from speclint.specs import BoltedJoint, FrameFastening
from speclint_joints.formulae.holes import engaged_diameters
from speclint_joints.inputs.studs import Studs

#: The limits that a rule declares to ask ``nut_matches``, and by what a thread is to outlast its bolt.
LIMITS_OF_THREADS = (
    Limit("margin", "1.2", "ratio", COMMON_PRACTICE, "least stripping load over the load it must hold"),
    Limit("matching nut", "1", "ratio", COMMON_PRACTICE, "least height of a matching nut over the diameter"),
    Limit(
        "flats of a matching nut",
        "1.45",
        "ratio",
        COMMON_PRACTICE,
        "least width across flats over the diameter",
    ),
)
#: The group of the table of shear strengths to which a family of metals belongs.
_GROUPS = {
    "grey-iron": "grey iron",
    "ductile-iron": "spheroidal iron",
    "stainless-austenitic": "austenitic steel",
    "stainless-martensitic": "steel",
}
#: A diameter in floating-point arithmetic.
_ROUNDING = 1e-9


class ThreadEnd(Struct, frozen=True):
    """One end of a stud: what its thread is in, how much of it is engaged and how much metal stands round it, m."""

    called: str
    mark: str
    length: float
    round_it: float
    material: Material


def _group(material: Material, sheet: Sheet) -> str:
    found = _GROUPS.get(material.family, "steel" if "steel" in material.family else "")
    if not found:
        raise sheet.not_assessed(f"the handbook has no shear strength of {material.title}")
    return found


def nut_matches(
    joint: BoltedJoint | FrameFastening,
    end: ThreadEnd,
    sheet: Sheet,
    studs: Studs,
    other: float,
    strength: float,
) -> bool:
    """Whether a nut is high, wide and strong enough for its stud to break first, as standard nuts are proved to be."""
    high = end.length >= sheet.limit("matching nut") * studs.d * (1 - _ROUNDING)
    wide = end.round_it >= sheet.limit("flats of a matching nut") * studs.d * (1 - _ROUNDING)
    of_one_steel = sheet.read("material of the nut", joint.nut.material) == sheet.read(
        "material", joint.material
    )
    return high and wide and (of_one_steel or other >= strength)


def strippings(
    end: ThreadEnd, sheet: Sheet, studs: Studs, steel: Material, strength: float, other: float
) -> Iterator[tuple[str, float]]:
    """Load that strips the stud's own thread and that of the nut or hole."""
    mark, length = end.mark, end.length
    sheet.work(f"k_{mark}", engaged_diameters, L_e=length, d=studs.d)
    outer = sheet.look_up(f"A_b{mark}", external_stripping_area, designation=studs.thread, length=length)
    inner = sheet.look_up(f"A_{mark}", internal_stripping_area, designation=studs.thread, length=length)
    widens = sheet.work(f"C_1{mark}", nut_widening_factor, s=end.round_it, d=studs.d)
    ratio = sheet.work(f"R_S{mark}", thread_strength_ratio, R_n=other, A_n=inner, R_b=strength, A_b=outer)
    bends = sheet.work(f"C_3{mark}", inner_thread_bending_factor, R_S=ratio)
    own = sheet.look_up("C_2", outer_thread_bending_factor)
    for called, name, metal, R_m, area, factor in (
        ("thread of the stud", f"b{mark}", steel, strength, outer, own),
        ("thread", mark, end.material, other, inner, bends),
    ):
        share = sheet.look_up(f"r_{name}", shear_strength_ratio, material=_group(metal, sheet))
        shear = sheet.work(f"tau_{name}", shear_strength, r=share, R_m=R_m)
        load = sheet.work(f"F_{name}", stripping_load_with_factors, tau_B=shear, A=area, C_1=widens, C=factor)
        yield called, load
