"""Which size of each kind of part can never be the greater one: written here by what the part is, and held against it.

A condition that stands the wrong way round refuses every sound part, and lets through what cannot be.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from speclint.specs import AtMost, Below, SpecTable, conditions_of, inner_table
from speclint.testing import installed_families

#: By module and table: a hole lies within its metal, a wall within half of what it encloses, what is machined or worn
#: within what was cast or rolled, a part of a length within the whole, the lesser of two ends before the greater.
WRITTEN = {
    "block_bores.Bore": "diameter < recess_diameter; diameter ≤ last_bore; wall ≤ as_made; "
    "recess_depth < length; relieved.*.ends ≤ length",
    "block_bores.RelievedLength": "starts < ends",
    "block_openings.BlockOpening": "bore < face; bore < circle; circle < face",
    "block_walls.Division": "thickness ≤ as_made; wasting < thickness",
    "bolted_joint.BoltedJoint": "shank ≤ hole; hole < circle; edge_distance < circle",
    "bracket.Bracket": "thickness < depth",
    "cam.Cam": "ramp_height < lift; keyway_width < bore; keyway_depth < 0.25 bore; key_length < 4 bore",
    "chamber_cover.ChamberCover": "bore < outside_diameter; circle < outside_diameter; "
    "central_hole < outside_diameter; "
    "thickness ≤ as_made; thickness < outside_diameter",
    "compression_spring.CompressionSpring": "wire < mean_diameter; inside_diameter < mean_diameter; "
    "mean_diameter < outside_diameter; "
    "inside_diameter < outside_diameter; shut_length < free_length; open_length < free_length; "
    "guide_pin < mean_diameter; guide_pin < inside_diameter; mean_diameter < housing; outside_diameter < housing; "
    "guide_pin < housing",
    "cylinder_cover.CylinderCover": "bore < outside_diameter; circle < outside_diameter; "
    "central_hole < outside_diameter; "
    "thickness ≤ as_made; thickness < outside_diameter",
    "cylinder_liner.CylinderLiner": "bore < outside_diameter; bore ≤ last_bore; last_bore < outside_diameter; "
    "pistons_for < outside_diameter; outside_diameter < 2 bore; working_from < working_to; working_to ≤ length; "
    "fit_length ≤ length; lands.*.ends ≤ length; ports.*.from_collar ≤ length; mouth_diameter < outside_diameter",
    "cylinder_liner.LinerPort": "bar < width; opening ≤ width",
    "cylinder_liner.SealingLand": "starts < ends",
    "dimension_chain.DimensionChain": "least ≤ greatest; least_hot ≤ greatest_hot",
    "drive.Drive": "least_wheel_diameter ≤ driving_wheel_diameter; rod_diameter < rod_length; "
    "stroke < driving_wheel_diameter; stroke < 2 connecting_rod_length",
    "duty.LoadCase": "ambient_temperature ≤ hottest_ambient; coldest_ambient ≤ ambient_temperature; "
    "coldest_ambient ≤ hottest_ambient",
    "engine.Crank": "stroke < 2 connecting_rod_length",
    "engine.Engine": "least_wheel_diameter ≤ driving_wheel_diameter; stroke < driving_wheel_diameter; "
    "stroke < 2 connecting_rod_length; connecting_rod_centre < connecting_rod_length; adhesive_weight ≤ mass",
    "frame.Frame": "thickness < depth",
    "frame_fastening.FrameFastening": "friction ≤ greatest_friction",
    "gland.Gland": "rod < box",
    "lens_joint.LensJoint": "bore < contact_diameter; contact_diameter < outside_diameter; "
    "contact_diameter < 2 sphere_radius; "
    "bore < outside_diameter; contact_diameter ≤ seat_mouth",
    "lifting_plan.LiftingPlan": "bottom < weights.*.z; bottom < points.*.z",
    "lifting_plan.Jib": "wall < 0.5 post",
    "lifting_plan.Lug": "pin ≤ hole; hole < width; thickness < width",
    "made_part.Certificate": "proof_stress ≤ tensile_strength",
    "partition.Partition": "short_side ≤ long_side; thickness < short_side",
    "pin.Pin": "diameter ≤ larger_diameter; fillet < diameter",
    "pin.PinSeat": "hole < boss; diameter < boss",
    "pipe_flange.PipeFlange": "bore < outside_diameter; circle < outside_diameter",
    "piston.Piston": "stock_thickness < length; crown.hub ≤ diameter; crown.hub ≤ crown.rim; crown.rim ≤ diameter; "
    "crown.thickness < length",
    "piston_ring.PistonRing": "gap < free_gap",
    "piston_rod.PistonRod": "diameter < free_length",
    "piston_rod.RodSection": "diameter ≤ larger_diameter; slot_width < diameter",
    "poppet_valve.Beat": "contact_width < seat_diameter",
    "rocker.Rocker": "pin < boss; bush_length ≤ pin_span",
    "saddle.Saddle": "wet.allowance < thickness",
    "seals.Gasket": "inside < outside; outside ≤ 5 inside",
    "seals.GroundFace": "inside < outside; outside ≤ 5 inside",
    "shaft.Shaft": "keyway_width < diameter; keyway_depth < 0.5 diameter; diameter ≤ greatest_diameter; "
    "bearings.*.at ≤ length; bearings.*.journal ≤ greatest_diameter; keyways.*.ends ≤ length; drive.at ≤ length",
    "shaft.ShaftKeyway": "begins < ends",
    "slide_bar.SlideBar": "depth < span; width < span; crosshead_from_end < span; web < width; flange < depth",
    "steam_pipe.SteamPipe": "wall < 0.5 outside_diameter; anchor_distance ≤ length; "
    "outside_diameter ≤ 1.32 bend_radius; corrosion_allowance < wall",
    "valve_seat.ValveSeat": "bore < outside_diameter; bore ≤ seat_diameter; seat_diameter < outside_diameter; "
    "seat_width < seat_diameter",
    "valve_spindle.ValveSpindle": "least_diameter ≤ diameter; least_diameter ≤ seal_diameter; "
    "least_diameter ≤ valve_end_diameter; least_diameter ≤ gear_end_diameter; guide_bore < guide_outside; "
    "diameter < guide_bore",
    "valve_gear.Fork": "width ≤ groove",
    "weldment.FlatWall": "short ≤ long",
    "weldment.Plate": "thickness ≤ rolled_thickness; corrosion_allowance < thickness",
    "weldment.Ribs": "thickness < spacing",
}


def tables() -> dict[str, type[SpecTable]]:
    """Every table of our kinds with conditions of its own, by its module and name."""
    found: dict[str, type[SpecTable]] = {}
    for kind in installed_families().kinds.values():
        for table in _within(kind):
            if table.__dict__.get("geometry"):
                found[name_of(table)] = table
    return found


def name_of(table: type[SpecTable]) -> str:
    """Such as cam.Cam, of the modules in speclint.specs.kinds and beside them."""
    return f"{table.__module__.rpartition('.')[2]}.{table.__name__}"


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
    "access_plan.AccessPlan",
    "assembly.Assembly",
    "casting.Casting",
    "dimension_chain.DimensionChain",
    "driving_axle.DrivingAxle",
    "engine.Engine",
    "envelope.Envelope",
    "fit.Fit",
    "known_fault.KnownFault",
    "lifting_plan.LiftingPlan",
    "locating_face.LocatingFace",
    "made_part.MadePart",
    "partition.Partition",
    "steam_passage.SteamPassage",
    "valve_gear.ValveGear",
    "weldment.Weldment",
}


def test_every_other_kind_is_a_piece_of_metal_with_hazards_of_its_own() -> None:
    kinds = installed_families().kinds
    without = {name_of(kind) for kind in kinds.values() if getattr(kind, "of_metal", None) is False}
    assert without == NO_METAL


#: What must fit in a part that the kind is linked to. A liner and a seat are pressed in, with an interference of much
#: less than the fiftieth of their diameter for which there is room; a liner's length and a piston stay within.
FITS = {
    "cylinder-liner": "outside_diameter is no more than 1.02 × bores.{in_bore}.diameter of housed_in; "
    "fit_length is no more than bores.{in_bore}.length of housed_in",
    "valve-seat": "outside_diameter is no more than 1.02 × seat_bores.{in_bore}.diameter of pressed_into",
    "piston": "diameter is no more than bore of runs_in",
}


def test_no_part_is_greater_than_the_one_that_it_goes_into() -> None:
    hosts = {word: "; ".join(map(str, kind.hosts)) for word, kind in installed_families().kinds.items()}
    assert {word: said for word, said in hosts.items() if said} == FITS
