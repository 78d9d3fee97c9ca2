"""Holes of two parts that match: on one circle from one angle, or each at its place."""

from __future__ import annotations

from speclint import (
    FIRST_PRINCIPLES,
    Grade,
    Judgement,
    Rule,
    Sheet,
    facts,  # what it works of joints is imported where there are any
    rule,
)
from speclint.equations import Metres, Radians, Ratio
from speclint.handbook.threads import nominal_diameter
from speclint.specs import BoltedJoint, Component, HolePattern, LoadCase
from speclint_fits.formulae.geometry import (
    angles_apart,
    beyond_projection,
    holes_apart,
    opening_of_zone,
    room_in_hole,
    unlike_growth,
    zone_of_coordinates,
    zones_beside,
    zones_hot,
    zones_together,
)
from speclint_fits.rules.geometry import parts_joined
from speclint_fits.sources import ASME_Y14_5


@rule(
    "holes.match",
    title="The holes of two parts that one joint fastens are as many as its studs, on its circle from the same angle "
    "or at like places, and the room of each stud takes up both zones of position and unlike growth",
    on=BoltedJoint,
    cases=("warming", "running", "cooling"),
    grade=Grade.NONCONFORMITY,
    edition=5,
    cites=[ASME_Y14_5, FIRST_PRINCIPLES],
    why="a cover that does not go over its studs is filed until it does, and then its studs bend",
    leaves_out="reamed holes, which are fits; holes of a list that lie under others than those of their number; "
    "temperatures that differ over one part",
    against=(),
    limits=[],
)
def holes_match(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """H − F ≥ T_1 (1 + 2 P/D) + T_2, the tapped zone as it is unless projected, less what first angle and heat take."""
    if sheet.read("seal", joint.seal) == "lens ring":
        raise sheet.not_applicable("its bolts pass two flanges alike, of which the lens joint says the sizes")
    parts = parts_joined(joint, sheet)
    one, other = (_pattern(part, joint, sheet) for part in parts)
    if one.x or other.x:
        return _off_circle(joint, parts, (one, other), case, sheet)
    n, m = (_count(which, joint, sheet) for which in (one, other))
    studs = sheet.count("n", joint.count)
    said = f"{parts[0].id} has {n} holes, {parts[1].id} {m}, the joint {studs} studs"
    alike = sheet.states(n == m == studs, said, where=joint.where)
    circles = [
        sheet.take(f"D_{mark}", pattern.circle if sheet.is_stated("circle", pattern.circle) else joint.circle)
        for mark, pattern in (("1", one), ("2", other))
    ]
    same = sheet.equals(circles[0], circles[1], 0.0).else_says(
        "circle of the holes {found}, of the others {limit}"
    )
    drawn = sheet.equals(circles[0], sheet.take("D", joint.circle), 0.0).else_says(
        "circle of the holes {found}, of the studs {limit}"
    )
    Δε = _unlike(parts, case, sheet)
    T_n = _taken(one, other, circles[0] / 2, n, joint, sheet)
    taken = sheet.work("T_h", zones_hot, T_n=T_n, r=circles[0] / 2, Δε=Δε)
    room = sheet.at_most(taken, _room(one, joint, sheet)).else_says(
        "zones of the holes take {found}, their room is {limit}"
    )
    return sheet.worst(alike, same, drawn, room)


def _room(pattern: HolePattern, joint: BoltedJoint, sheet: Sheet) -> Metres:
    """Room of a stud in its clearance hole."""
    H = sheet.take("H", pattern.diameter if sheet.is_stated("hole", pattern.diameter) else joint.hole)
    F = sheet.look_up("F", nominal_diameter, designation=sheet.read("thread", joint.thread))
    return sheet.work("c", room_in_hole, H=H, F=F)


def _unlike(parts: tuple[Component, Component], case: LoadCase, sheet: Sheet) -> Ratio:
    grown = (
        facts.growth_since_drawn(part, mark, case, sheet) for mark, part in zip("21", parts, strict=True)
    )
    return sheet.work("Δε", unlike_growth, ε_2=next(grown), ε_1=next(grown))


def _off_circle(
    joint: BoltedJoint,
    parts: tuple[Component, Component],
    patterns: tuple[HolePattern, HolePattern],
    case: LoadCase,
    sheet: Sheet,
) -> Judgement:
    """Holes given by their places: each against the one of the other part that comes under the same number."""
    one, other = patterns
    for part, pattern in zip(parts, patterns, strict=True):
        if not pattern.x or len(pattern.x) != len(pattern.y):
            said = f"{part.id} does not state a place along and across for each hole of {joint.id}"
            raise sheet.not_assessed(said, pattern.where)
    studs = sheet.count("n", joint.count)
    said = f"{parts[0].id} has {len(one.x)} holes, {parts[1].id} {len(other.x)}, the joint {studs} studs"
    alike = sheet.states(len(one.x) == len(other.x) == studs, said, where=joint.where)
    if not alike.holds:
        return alike
    T_2, T_1, k = _zones(one, other, joint, sheet)
    c, Δε = _room(one, joint, sheet), _unlike(parts, case, sheet)

    def judge(item: tuple[str, int]) -> Judgement:
        i, at = item[0], item[1]
        x_2, y_2 = sheet.take(f"x_2 of {i}", one.x[at]), sheet.take(f"y_2 of {i}", one.y[at])
        x_1, y_1 = sheet.take(f"x_1 of {i}", other.x[at]), sheet.take(f"y_1 of {i}", other.y[at])
        e = sheet.work(f"e of {i}", holes_apart, x_1=x_1, x_2=x_2, y_1=y_1, y_2=y_2)
        T_n = sheet.work(f"T_n of {i}", zones_beside, T_1=T_1, k=k, T_2=T_2, e=e)
        r = sheet.work(f"r of {i}", holes_apart, x_1=x_1, x_2=0.0, y_1=y_1, y_2=0.0)
        taken = sheet.work(f"T_h of {i}", zones_hot, T_n=T_n, r=r, Δε=Δε)
        return sheet.at_most(taken, c).else_says("zones of {item} take {found}, its room is {limit}")

    found = sheet.each([(f"hole {at + 1}", at) for at in range(len(one.x))], judge)
    return sheet.worst(alike, found)


def _pattern(part: Component, joint: BoltedJoint, sheet: Sheet) -> HolePattern:
    """The pattern of a part that names the joint."""
    for name, one in part.hole_patterns.items():
        if sheet.read(f"joint of {name}", one.joint) == joint.id:
            return one
    raise sheet.not_assessed(f"{part.id} states no pattern of holes for {joint.id}", part.where)


def _count(pattern: HolePattern, joint: BoltedJoint, sheet: Sheet) -> int:
    return sheet.count("z", pattern.count if sheet.is_stated("holes", pattern.count) else joint.count)


def _taken(
    one: HolePattern, other: HolePattern, r: Metres, z: int, joint: BoltedJoint, sheet: Sheet
) -> Metres:
    """What both zones and the first angle take of the room, on the diameter."""
    T_2, T_1, k = _zones(one, other, joint, sheet)
    θ_1, θ_2 = sheet.take("θ_1", one.first_angle), sheet.take("θ_2", other.first_angle)
    Δθ: Radians = sheet.work("Δθ", angles_apart, θ_1=θ_1, θ_2=θ_2, z=z)
    return sheet.work("T_n", zones_together, T_1=T_1, k=k, T_2=T_2, r=r, Δθ=Δθ)


def _zones(
    one: HolePattern, other: HolePattern, joint: BoltedJoint, sheet: Sheet
) -> tuple[Metres, Metres, Ratio]:
    """Zones of the clearance hole and of the tapped one, and by how much that opens over the plate."""
    T_2, T_1 = _position("2", one, sheet), _position("1", other, sheet)
    k = 1.0
    if sheet.read("fastener", joint.fastener) == "stud":
        k = _opened(other, joint, sheet)
    return T_2, T_1, k


def _opened(pattern: HolePattern, joint: BoltedJoint, sheet: Sheet) -> Ratio:
    """By how much the zone of a tapped hole opens at the far side of the plate, beyond thread or projection."""
    P = facts.grip_held(joint, sheet)
    if not sheet.read("projected", pattern.projected):
        return sheet.work("k", opening_of_zone, P=P, D=sheet.take("D", joint.tapped.engagement))
    if not sheet.is_stated("projection", pattern.projects):
        return 1.0
    h = sheet.take("h", pattern.projects)
    return sheet.work("k", opening_of_zone, P=sheet.work("P_x", beyond_projection, P=P, h=h), D=h)


def _position(mark: str, pattern: HolePattern, sheet: Sheet) -> Metres:
    """The zone of a hole's axis: as stated, or by the error of its coordinates; the wider where both are."""
    zones = []
    if sheet.is_stated("zone", pattern.position):
        zones.append(sheet.take(f"T_{mark}", pattern.position))
    if not zones or sheet.is_stated("coordinates", pattern.coordinates):
        zones.append(
            sheet.work(f"T_{mark}", zone_of_coordinates, x=sheet.take(f"x_{mark}", pattern.coordinates))
        )
    return max(zones)


RULES: tuple[Rule, ...] = (holes_match,)
