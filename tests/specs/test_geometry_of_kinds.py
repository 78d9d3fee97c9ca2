"""Which size of each kind of part can never be the greater one: written here by what the part is, and held against it.

A condition that stands the wrong way round refuses every sound part, and lets through what cannot be.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from speclint.specs import AtMost, Below, SpecTable, conditions_of, inner_table
from speclint.testing import installed_families

#: By table: a hole lies within its metal, a wall within half of what it encloses, what is machined or worn within what
#: was cast or rolled, a part of a length within the whole, and the lesser of two ends before the greater.
WRITTEN = {
    "BlockOpening": "bore < face; bore < circle; circle < face",
    "BoltedJoint": "shank ≤ hole; hole < circle; edge_distance < circle",
    "Gasket": "inside < outside; outside ≤ 5 inside",
    "GroundFace": "inside < outside; outside ≤ 5 inside",
    "Bracket": "thickness < depth",
    "Cam": "ramp_height < lift; keyway_width < bore; keyway_depth < 0.25 bore; key_length < 4 bore",
    "ChamberCover": "bore < outside_diameter; circle < outside_diameter; central_hole < outside_diameter; "
    "thickness ≤ as_made; thickness < outside_diameter",
    "CompressionSpring": "wire < mean_diameter; inside_diameter < mean_diameter; mean_diameter < outside_diameter; "
    "inside_diameter < outside_diameter; shut_length < free_length; open_length < free_length; "
    "guide_pin < mean_diameter; guide_pin < inside_diameter; mean_diameter < housing; outside_diameter < housing; "
    "guide_pin < housing",
    "Bore": "diameter < recess_diameter; wall ≤ as_made; recess_depth < length; relieved.*.ends ≤ length",
    "Division": "thickness ≤ as_made; wasting < thickness",
    "Drive": "least_wheel_diameter ≤ driving_wheel_diameter; rod_diameter < rod_length; "
    "stroke < driving_wheel_diameter; stroke < 2 connecting_rod_length",
    "RelievedLength": "starts < ends",
    "CylinderCover": "bore < outside_diameter; circle < outside_diameter; central_hole < outside_diameter; "
    "thickness ≤ as_made; thickness < outside_diameter",
    "CylinderLiner": "bore < outside_diameter; bore ≤ last_bore; last_bore < outside_diameter; "
    "pistons_for < outside_diameter; outside_diameter < 2 bore; working_from < working_to; working_to ≤ length; "
    "fit_length ≤ length; lands.*.ends ≤ length; ports.*.from_collar ≤ length",
    "LinerPort": "bar < width; opening ≤ width",
    "SealingLand": "starts < ends",
    "DimensionChain": "least ≤ greatest; least_hot ≤ greatest_hot",
    "Crank": "stroke < 2 connecting_rod_length",
    "Engine": "least_wheel_diameter ≤ driving_wheel_diameter; stroke < driving_wheel_diameter; "
    "stroke < 2 connecting_rod_length; connecting_rod_centre < connecting_rod_length; adhesive_weight ≤ mass",
    "Frame": "thickness < depth",
    "Gland": "rod < box",
    "LensJoint": "bore < contact_diameter; contact_diameter < outside_diameter; contact_diameter < 2 sphere_radius; "
    "bore < outside_diameter; contact_diameter ≤ seat_mouth",
    "Jib": "wall < 0.5 post",
    "Lug": "pin ≤ hole; hole < width; thickness < width",
    "Certificate": "proof_stress ≤ tensile_strength",
    "Partition": "short_side ≤ long_side; thickness < short_side",
    "Pin": "diameter ≤ larger_diameter; fillet < diameter",
    "PipeFlange": "bore < outside_diameter; circle < outside_diameter",
    "Piston": "stock_thickness < length; crown.hub ≤ diameter; crown.hub ≤ crown.rim; crown.rim ≤ diameter; "
    "crown.thickness < length",
    "PistonRing": "gap < free_gap",
    "PistonRod": "diameter < free_length",
    "RodSection": "diameter ≤ larger_diameter; slot_width < diameter",
    "Beat": "contact_width < seat_diameter",
    "Rocker": "pin < boss; bush_length ≤ pin_span",
    "Saddle": "wet.allowance < thickness",
    "Shaft": "keyway_width < diameter; keyway_depth < 0.5 diameter",
    "SlideBar": "depth < span; width < span; crosshead_from_end < span; web < width; flange < depth",
    "SteamPipe": "wall < 0.5 outside_diameter; anchor_distance ≤ length; corrosion_allowance < wall",
    "ValveSeat": "bore < outside_diameter; bore ≤ seat_diameter; seat_diameter < outside_diameter; "
    "seat_width < seat_diameter",
    "ValveSpindle": "least_diameter ≤ diameter; guide_bore < guide_outside; diameter < guide_bore",
    "FlatWall": "short ≤ long",
    "Plate": "thickness ≤ rolled_thickness; corrosion_allowance < thickness",
    "Ribs": "thickness < spacing",
}


def tables() -> dict[str, type[SpecTable]]:
    """Every table of our kinds with conditions of its own, by its name."""
    found: dict[str, type[SpecTable]] = {}
    for kind in installed_families().kinds.values():
        for table in _within(kind):
            if table.__dict__.get("geometry"):
                assert found.setdefault(table.__name__, table) is table
    return found


def _within(table: type[SpecTable]) -> Iterator[type[SpecTable]]:
    yield table
    for field in table.model_fields.values():
        if inner := inner_table(field.annotation)[0]:
            yield from _within(inner)


def said(condition: Below) -> str:
    times = "" if condition.times == 1 else f"{condition.times:g} "
    return f"{condition.key} {'≤' if isinstance(condition, AtMost) else '<'} {times}{condition.other}"


def test_every_table_with_conditions_is_written_here() -> None:
    assert set(tables()) == set(WRITTEN)


@pytest.mark.parametrize("name", sorted(WRITTEN))
def test_no_size_can_be_greater_than_what_holds_it(name: str) -> None:
    assert {said(one) for one in conditions_of(tables()[name])} == set(WRITTEN[name].split("; "))


#: Kinds that are no piece of metal of their own: papers, plans and whole machines; places and fits between two parts;
#: and blanks, whose metal is that of the part which is made from them.
NO_METAL = {
    "access-plan",
    "assembly",
    "casting",
    "dimension-chain",
    "driving-axle",
    "engine",
    "envelope",
    "fit",
    "known-fault",
    "lifting-plan",
    "locating-face",
    "made-part",
    "partition",
    "steam-passage",
    "valve-gear",
    "weldment",
}


def test_every_other_kind_is_a_piece_of_metal_with_hazards_of_its_own() -> None:
    kinds = installed_families().kinds
    assert {word for word, kind in kinds.items() if getattr(kind, "of_metal", None) is False} == NO_METAL
