"""Unequal expansion of two joined parts: whether studs, seam or press fit can take it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import combinations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import block_of_ring
from speclint.handbook.fits import DRAWING_TEMPERATURE, room_in_hole
from speclint.handbook.materials import Material
from speclint.handbook.tables import Reading
from speclint.handbook.threads import thread
from speclint.specs import HOT_CASES, BoltedJoint, Component, CylinderLiner, LoadCase, ValveSeat, Weldment
from speclint_pairings.formulae.expansion import (
    range_allowed,
    share_of_room,
    shift_at_studs,
    stress_of_unlike_plates,
)
from speclint_pairings.sources import EN_13445_3

#: The rules of liners and of valves that assess a hot fit, by the kind of the part that is pressed in.
_ASSESSING_RULES = {
    "cylinder-liner": ("liner.fit-hot", "liner.fit-warming"),
    "valve-seat": ("seat.retained-hot", "seat.fit-warming"),
}


@rule(
    "pairing.expansion",
    title="Unequal expansion of two joined parts uses at most half the clearance of their studs, "
    "stresses a seam to at most twice the proof stress, or is assessed for their press fit",
    on=(BoltedJoint, CylinderLiner, ValveSeat, Weldment),
    cases=HOT_CASES,
    grade=Grade.NONCONFORMITY,
    cites=[
        FIRST_PRINCIPLES,
        EN_13445_3.at("annex C, primary and secondary stress together"),
        COMMON_PRACTICE,
    ],
    why="Expansion that is restrained bends the studs, tears the seam or loosens the ring, a little "
    "more at every heating.",
    leaves_out="stud load and tightness of the joint (joint.thermal and joint.separation), how tight a "
    "press fit stays (the rules of liners, seats and fits), studs that are off centre in their holes by "
    "more than half the clearance",
    against=("break under load",),
    limits=[
        Limit(
            "share_of_room",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "share of the clearance round a stud that expansion may use",
        ),
        Limit(
            "ranges_of_proof",
            "2",
            "ratio",
            EN_13445_3.at("annex C, primary and secondary stress together"),
            "stress range over the proof stress of the plate",
        ),
    ],
    reviews=True,
)
def expansion(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Clamped: the shift at the studs against the room in their holes. Welded: the stress of unlike plates.

    Pressed: the rules of the fit must have worked out what is left of it.
    """
    if isinstance(component, BoltedJoint):
        return _clamped(component, case, sheet)
    if isinstance(component, Weldment):
        return _welded(component, case, sheet)
    assert isinstance(component, CylinderLiner | ValveSeat)
    return _pressed(component, sheet)


def _clamped(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """The part held slides on the part below it by the difference in expansion, and must not touch its studs."""
    held = sheet.follow(joint.holds)
    stud = sheet.read("fastener", joint.fastener) == "stud"
    below = sheet.follow(joint.screwed_into if stud else joint.bolted_to)
    T_1, T_2 = sheet.take("T_1", case.temperature_of(held)), sheet.take("T_2", case.temperature_of(below))
    shift = sheet.work(
        "s",
        shift_at_studs,
        C=sheet.take("C", joint.circle),
        alpha_1=sheet.look_up("α_1", sheet.material_of(held).expansion, of=held, at=T_1),
        T_1=T_1,
        alpha_2=sheet.look_up("α_2", sheet.material_of(below).expansion, of=below, at=T_2),
        T_2=T_2,
        T_ref=DRAWING_TEMPERATURE,
    )
    d = sheet.look_up("d", stud_diameter, designation=sheet.read("thread", joint.thread))
    room = sheet.work("r", room_in_hole, D=sheet.take("D", joint.hole), d=d)
    return sheet.at_most(
        shift, sheet.work("r_n", share_of_room, x=sheet.limit("share_of_room", "x"), r=room)
    ).else_says("heat moves the part {found} at its studs, {limit} allowed")


@cache
def stud_diameter(designation: str) -> Reading:
    """Nominal diameter of a thread, m; NotKnown for one that no standard lists.

    >>> stud_diameter("M24").nominal
    0.024
    """
    found = thread(designation)
    return Reading.exact(f"nominal diameter of {found.name}", found.nominal, "m", found.source)


def _welded(weldment: Weldment, case: LoadCase, sheet: Sheet) -> Judgement:
    """Every two unlike metals among the plates, as if they met in a seam."""
    metals = dict(_metals(weldment, sheet))
    if not metals:
        raise sheet.not_assessed("no plate is stated", weldment.where)
    if len(metals) == 1:
        raise sheet.not_applicable("its plates are all of one metal")
    T = sheet.take("T", case.temperature_of(sheet.follow(weldment.makes)))
    return sheet.each(combinations(metals.values(), 2), lambda two: _seam(*two, T, sheet))


def _metals(weldment: Weldment, sheet: Sheet) -> Iterator[tuple[str, Material]]:
    for name, plate in weldment.plates.items():
        metal = sheet.material_named(f"plate {name}", plate.material)
        yield metal.name, metal


def _seam(one: Material, other: Material, T: float, sheet: Sheet) -> Judgement:
    """Worst for the plate with the less proof stress for its modulus: each is judged."""
    alphas = {
        f"alpha_{number}": sheet.look_up(f"α of {metal.name}", metal.expansion, at=T)
        for number, metal in enumerate((one, other), start=1)
    }
    judged = []
    for metal in (one, other):
        E = sheet.look_up(f"E of {metal.name}", metal.modulus, at=T)
        sigma = sheet.work(
            f"σ in {metal.name}", stress_of_unlike_plates, E=E, T=T, T_ref=DRAWING_TEMPERATURE, **alphas
        )
        R_p = sheet.look_up(f"R_p of {metal.name}", metal.proof_stress, at=T)
        allowed = sheet.work("S", range_allowed, k=sheet.limit("ranges_of_proof", "k"), R_p=R_p)
        judged.append(
            sheet.at_most(sigma, allowed).else_says(
                f"seam of {one.name} and {other.name} stressed to {{found}}, {{limit}} allowed"
            )
        )
    return sheet.worst(*judged)


def _pressed(part: CylinderLiner | ValveSeat, sheet: Sheet) -> Judgement:
    """A press fit of two metals: its family has assessed what is left of it hot, or nobody has."""
    block = sheet.follow(block_of_ring(part))
    inner, outer = sheet.material_of(part), sheet.material_of(block)
    if inner.family.endswith("iron") and outer.family.endswith("steel"):
        raise sheet.not_applicable("iron in steel: pairing.iron-on-steel-seat checks this and more")
    outcomes = sheet.outcomes()
    rules = part.by_kind(_ASSESSING_RULES)
    missing = [name for name in rules if outcomes.get(name) not in ("conforms", "finding")]
    pair = f"{inner.title} in {outer.title}"
    if missing:
        return sheet.states(False, f"{pair}: not assessed: {', '.join(missing)}", where=part.material.where)
    return sheet.states(True, f"{pair}: assessed: {', '.join(rules)}")


RULES = (expansion,)
