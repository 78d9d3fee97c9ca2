"""A place that states nothing: no gap where its fact is worked from the other, and a gap where it is the other.

Each row takes passages out of a design that agrees. What an agreement is declared to compare says what is left: a first
place need not be stated, a part or a link that is not drawn leaves nothing to compare, and a second place that is drawn
without its size leaves the rule not assessed.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest

from speclint.testing import DesignFolder, changed
from tests.plugins.agreement import (
    test_blanks as blanks,
    test_covers as covers,
    test_cylinders as cylinders,
    test_dividing_walls as dividing_walls,
    test_one_cylinder as one_cylinder,
    test_walls as walls,
)
from tests.plugins.agreement.test_access import FILES as ACCESS
from tests.plugins.agreement.test_crank_pins import FILES as CRANK_PINS
from tests.plugins.agreement.test_ends import of_one_end
from tests.plugins.agreement.test_heating import FILES as HEATED
from tests.plugins.agreement.test_laggings import FILES as LAGGED
from tests.plugins.agreement.test_lifted_parts import FILES as LIFTED
from tests.plugins.agreement.test_nozzle import with_engine
from tests.plugins.agreement.test_oil import FILES as OILED
from tests.plugins.agreement.test_part_duties import FILES as PART_DUTIES
from tests.plugins.agreement.test_partitions import FILES as PARTITIONS
from tests.plugins.agreement.test_path_blocks import FILES as PATHS
from tests.plugins.agreement.test_pipes import FILES as PIPED
from tests.plugins.agreement.test_seats import seated
from tests.plugins.agreement.test_vessels import FILES as VESSEL
from tests.plugins.liners.bench import bench as cylinder
from tests.plugins.springs.test_room import nest

Files = dict[str, str]
Gone = tuple[tuple[str, str], ...]
FINE, SILENT, ASKED = "conforms", "not applicable", "not assessed"


class Row(NamedTuple):
    """A rule, the part judged, a design that agrees, what is taken out of its files, and what is then to be said."""

    rule: str
    part: str
    files: Files
    gone: Gone
    outcome: str


def rows(rule: str, part: str, files: Files, *left_out: tuple[str, *Gone]) -> list[Row]:
    """A row for each outcome and what is taken out for it."""
    return [Row(rule, part, files, tuple(gone), outcome) for outcome, *gone in left_out]


_CYLINDER = {**cylinder(), **cylinders.DRAWN}
_WALLS = {"block.toml": walls.BLOCK, "weldment.toml": walls.WELDMENT}
_SPIGOT = {
    **covers.FILES,
    "cover.toml": f'{covers.COVER}spigot_diameter = "499.5 mm"\nspigot_enters = "bore of the liner"\n',
}
_ENDS = ("block.toml", covers.BLOCK[covers.BLOCK.index("[ends.front]") :])
_BORE = ("block.toml", '[bores.main]\ndiameter = "560 mm"\n')

#: Flat lagging on a cover, without the pipe, whose metal is of a table of its own.
_FLAT = {name: LAGGED[name] for name in ("duty.toml", "cover.toml", "flat.toml")}
#: A bore that takes no liner, and a cover bored as it is.
_UNLINED = {
    **{name: text for name, text in covers.FILES.items() if name != "liner.toml"},
    "block.toml": changed(covers.BLOCK, ('diameter = "560 mm"\n', 'diameter = "560 mm"\nlined = false\n')),
    "cover.toml": changed(covers.COVER, ('bore = "500 mm"', 'bore = "560 mm"')),
}
#: A pipe that follows a pipe which ends at another block: the pipes may meet between the two.
_PIPE_AFTER_PIPE = {
    **PATHS,
    "exhaust.toml": 'kind = "steam-pipe"\nfollows = "supply"\nstarts_at.part = "two"',
}

ROWS = [
    *rows(
        "access.chambers-of-block",
        "plan",
        ACCESS,
        (SILENT, ("plan.toml", "chambers_complete = true\n")),
        (SILENT, ("chest.toml", 'place = "chest"\n')),  # a passage of no place is no chamber
        (SILENT, ("chest.toml", 'in_block = "block"\n')),
        (ASKED, ("plan.toml", 'serves = "block"\n')),
    ),
    *rows(
        "access.of-its-joints",
        "plan",
        ACCESS,
        (FINE, ("plan.toml", 'across_flats = "36 mm"\n')),
        (FINE, ("studs.toml", 'nut.across_flats = "36 mm"\n')),
        (FINE, ("plan.toml", '[withdrawals.studs]\nsize = "118 mm"\n')),
        (FINE, ("plan.toml", 'size = "118 mm"\n')),
        (FINE, ("plan.toml", 'size = "926 mm"\n')),
        (ASKED, ("plan.toml", 'serves = "block"\n')),
    ),
    *rows(
        "axle.pins-of-its-cranks",
        "axle",
        CRANK_PINS,
        (SILENT, ("axle.toml", 'engine = "engine"\n')),
    ),
    *rows(
        "blank.faces-of-part",
        "casting",
        blanks.FILES,
        (SILENT, ("casting.toml", 'dimension = "578 mm"\n')),
        (SILENT, ("casting.toml", 'of_key = "outside_diameter"\n')),
        (ASKED, ("casting.toml", 'becomes = "liner"\n')),
        (ASKED, ("liner.toml", 'outside_diameter = "578 mm s6"\n')),
    ),
    *rows(
        "blank.faces-of-part",
        "weldment",
        blanks.FILES,
        (SILENT, ("weldment.toml", 'dimension = "350 mm"\n')),
        (SILENT, ("weldment.toml", 'of_key = "bores.main.axis_from_frame"\n')),
        (ASKED, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "blank.of-its-part",
        "casting",
        blanks.FILES,
        (SILENT, ("casting.toml", 'material = "grey-iron-300-stress-relieved"\n')),
        (ASKED, ("liner.toml", 'material = "grey-iron-300-stress-relieved"\n')),
        (ASKED, ("casting.toml", 'becomes = "liner"\n')),
    ),
    *rows(
        "blast-pipe.of-its-cylinders",
        "nozzle",
        with_engine(),
        (ASKED, ("other.toml", 'diameter = "500 mm"\n')),
        (ASKED, ("liner.toml", 'bore = "500 mm"\n')),
    ),
    *rows(
        "block.axis-of-motion",
        "block",
        one_cylinder.FILES,
        (SILENT, ("block.toml", 'axis_from_frame = "350 mm"\n')),
        (SILENT, ("engine.toml", 'block = "block"\n')),
        (SILENT, ("engine.toml", 'axis_from_centre = "950 mm"\n')),
        (SILENT, ("engine.toml", 'frame_from_centre = "600 mm"\n')),
        (ASKED, ("engine.toml", 'bore = "left"\n')),  # of two bores one must be named
    ),
    *rows(
        "block.division-of-plate",
        "block",
        dividing_walls.walled(),
        (SILENT, ("block.toml", 'thickness = "25 mm"\n')),
        (SILENT, ("block.toml", 'thickness = "25 mm"\nplate = "chest"\n')),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "block.metal-of-plates",
        "weldment",
        dividing_walls.walled(),
        (SILENT, ("block.toml", 'material = "plate-P355GH"\n')),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "block.wall-of-plate",
        "block",
        _WALLS,
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
        (FINE, ("block.toml", 'wall = "38 mm"\n')),
        (FINE, ("block.toml", 'plate = "barrel"\n')),
        (FINE, ("block.toml", 'wall = "22 mm"\n')),
        (SILENT, ("block.toml", 'wall = "38 mm"\n'), ("block.toml", 'wall = "22 mm"\n')),
        (ASKED, ("weldment.toml", 'thickness = "40 mm +1/-0.5"\n')),
        (ASKED, ("weldment.toml", 'thickness = "22 mm"\n')),
    ),
    *rows(
        "opening.plate-of-wall",
        "weldment",
        _WALLS,
        (FINE, ("block.toml", 'plate = "chest", ')),
        (FINE, ("block.toml", ', flat_wall = "side"')),
        (FINE, ("weldment.toml", 'flat_wall = "apron"\n')),
        (FINE, ("weldment.toml", 'makes = "block"\n')),
        (ASKED, ("weldment.toml", 'plate = "chest"\none_side = "live steam"\n')),
    ),
    *rows(
        "weld.pressure-by-wall",
        "weldment",
        _WALLS,
        (SILENT, ("weldment.toml", "on_pressure = true\n")),
        (SILENT, ("weldment.toml", 'wall = "side"\n')),
        (SILENT, ("weldment.toml", 'one_side = "live steam"\n')),
    ),
    *rows(
        "cam.bore-of-shaft",
        "cam",
        of_one_end(),
        (SILENT, ("cam.toml", 'turns_on = "shaft"\n')),
        (SILENT, ("cam.toml", 'bore = "60 mm H7"\n')),
        (SILENT, ("shaft.toml", 'diameter = "60 mm"\n')),
    ),
    *rows(
        "cam.under-its-tappet",
        "cam",
        of_one_end(),
        (SILENT, ("cam.toml", 'lifts = "tappet"\n')),
        (SILENT, ("cam.toml", 'width = "25 mm"\n')),
        (SILENT, ("tappet.toml", 'face_width = "30 mm"\n')),
    ),
    *rows(
        "cambox.valves-of-its-end",
        "box",
        of_one_end(),
        (SILENT, ("box.toml", 'mounted_on = "block"\n')),
        (SILENT, ("box.toml", 'of_end = "front"\n')),
        (SILENT, ("box.toml", "tappets = 1\n")),
    ),
    *rows(
        "block.heated-once",
        "block",
        of_one_end(),
        (SILENT, ("seat.toml", 'block_heated_to = "120 °C"\n')),
        (SILENT, ("lower.toml", 'block_heated_to = "120 °C"\n')),
        (SILENT, ("lower.toml", 'pressed_into = "block"\n')),
    ),
    *rows(
        "cover.hole-for-box",
        "cover",
        covers.FILES,
        (SILENT, ("cover.toml", 'central_hole = "150 mm"\n')),
        (SILENT, ("box.toml", 'in_cover = "cover"\n')),
        (FINE, ("box.toml", 'seals = "rod"\n')),
        (FINE, ("box.toml", 'outside_diameter = "149 mm"\n')),
        (SILENT, ("box.toml", 'outside_diameter = "149 mm"\n'), ("box.toml", 'seals = "rod"\n')),
        (ASKED, ("box.toml", 'outside_diameter = "149 mm"\n'), ("rod.toml", 'diameter = "90 mm"\n')),
    ),
    *rows(
        "cover.of-its-end",
        "cover",
        covers.FILES,
        (FINE, ("cover.toml", '\nend = "back"')),
        (FINE, ("cover.toml", 'bore = "500 mm"\n')),
        (FINE, _BORE),
        (SILENT, _ENDS),
        (ASKED, ("liner.toml", 'bore = "500 mm"\n')),
        (ASKED, ("liner.toml", 'in_bore = "main"\n')),
        (ASKED, ("cover.toml", 'closes = "block"\n')),
    ),
    *rows(
        "cover.spigot-of-its-opening",
        "cover",
        _SPIGOT,
        (SILENT, ("cover.toml", 'spigot_diameter = "499.5 mm"\n')),
        (SILENT, ("cover.toml", 'spigot_enters = "bore of the liner"\n')),
        (SILENT, _ENDS),
        (ASKED, ("cover.toml", 'closes = "block"\n')),
    ),
    *rows(
        "gland.of-the-rod",
        "gland",
        covers.FILES,
        (FINE, ("gland.toml", 'rod = "90 mm"\n')),
        (FINE, ("gland.toml", 'box = "130 mm"\n')),
        (FINE, ("gland.toml", 'packing = "soft"\n')),
        (FINE, ("box.toml", 'seals = "rod"\n')),
        (FINE, ("box.toml", '\nbore = "130 mm"')),
        (FINE, ("box.toml", 'packing = "braided graphite"\n')),
        (SILENT, ("box.toml", 'in_cover = "cover"\n')),
        (ASKED, ("rod.toml", 'diameter = "90 mm"\n')),
    ),
    *rows(
        "cylinder.tested-together",
        "block",
        covers.FILES,
        (SILENT, ("block.toml", 'test_pressure = "29 bar gauge"\n')),
        (FINE, ("block.toml", 'duty = "duty"\n')),
        (FINE, ("duty.toml", '[cases.test]\ncylinder_pressure = "29 bar gauge"\n')),
        (FINE, ("duty.toml", 'cylinder_pressure = "29 bar gauge"\n')),
        (FINE, ("cover.toml", 'test_pressure = "29 bar gauge"\n')),
    ),
    *rows(
        "cylinder.stroke-fits",
        "block",
        _CYLINDER,
        (SILENT, ("liner.toml", 'housed_in = "block"\n')),
        (SILENT, ("piston.toml", 'runs_in = "liner"\n')),
        (SILENT, ("piston.toml", 'length = "149 mm"\n')),
        (ASKED, ("liner.toml", 'in_bore = "main"\n')),
    ),
    *rows(
        "motion.one-cylinder",
        "box",
        one_cylinder.FILES,
        (SILENT, ("box.toml", 'seals = "rod"\n')),
        (SILENT, ("box.toml", 'in_cover = "cover"\n')),
        # without its cylinder the rod, which has no tail, still leaves at the back
        (FINE, ("rod.toml", 'carries = "piston"\n')),
        (FINE, ("piston.toml", 'runs_in = "liner"\n')),
        (FINE, ("liner.toml", 'housed_in = "block"\n')),
    ),
    *rows(
        "duty.one-life",
        "weldment",
        one_cylinder.FILES,
        (FINE, ("weldment.toml", 'life_distance = "2000000 km"\n')),
        (FINE, ("weldment.toml", "starts = 12000\n")),
        (FINE, ("base.toml", 'distance = "2000000 km"\n')),
        (FINE, ("base.toml", "starts = 12000\n")),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "block.heated-once",
        "block",
        HEATED,
        (FINE, ("liner.toml", 'block_heated_to = "160 °C"\n')),
        (FINE, ("weldment.toml", 'treatment.temperature = "580 °C"\n')),
        (FINE, ("block.toml", 'heated_to = "160 °C"\n'), ("liner.toml", 'block_heated_to = "160 °C"\n')),
    ),
    *rows(
        "lagging.of-its-part",
        "flat",
        _FLAT,
        (FINE, ("flat.toml", 'height = "0.7 m"\n')),
        (FINE, ("flat.toml", 'area = "0.4 m²"\n')),
        (ASKED, ("flat.toml", 'form = "flat"\n')),
        (ASKED, ("flat.toml", 'covers = "cover"\n')),
        (ASKED, ("cover.toml", 'outside_diameter = "750 mm"\n')),
    ),
    *rows(
        "lifting.parts-of-its-block",
        "plan",
        LIFTED,
        (SILENT, ("plan.toml", 'lifts = "one"\n')),
        (FINE, ("weldment.toml", 'makes = "one"')),
        (FINE, ("liner.toml", 'housed_in = "one"')),
        (FINE, ("cover.toml", 'closes = "one"')),
        (FINE, ("box.toml", 'mounted_on = "one"')),
    ),
    *rows(
        "lubrication.one-feed",
        "block",
        OILED,
        (FINE, ("ring.toml", 'lubrication.lubricant = "cylinder oil"\n')),
        (FINE, ("ring.toml", 'lubrication.viscosity_class = "ISO VG 1000"\n')),
        (ASKED, ("liner.toml", 'lubrication.lubricant = "cylinder oil"\n')),
        (ASKED, ("liner.toml", 'lubrication.viscosity_class = "ISO VG 1000"\n')),
        (FINE, ("spindle.toml", 'lubrication.feed = "mechanical lubricator, feed 3"\n')),
        (SILENT, ("ring.toml", 'runs_in = "liner"\n')),
    ),
    *rows(
        "partition.within-passage",
        "wall",
        PARTITIONS,
        (SILENT, ("wall.toml", 'area = "0.38 m²"\n')),
        (FINE, ("belt.toml", 'perimeter = "0.8 m"\n')),
        (FINE, ("chest.toml", 'perimeter = "0.95 m"\n')),
        (SILENT, ("belt.toml", 'perimeter = "0.8 m"\n'), ("chest.toml", 'length = "0.4 m"\n')),
        (ASKED, ("wall.toml", 'live_side = "chest"\n')),
    ),
    *rows(
        "path.of-one-block",
        "chest",
        PATHS,
        (SILENT, ("chest.toml", 'in_block = "one"\n')),
        (SILENT, ("supply.toml", 'ends_at.part = "one"')),
        (SILENT, ("chest.toml", 'follows = "supply"')),
    ),
    *rows(
        "path.of-one-block",
        "pocket",
        PATHS,
        (FINE, ("chest.toml", 'in_block = "one"\n')),
        (FINE, ("pocket.toml", 'follows = "chest"\n')),
        (FINE, ("pocket.toml", 'valve = "valve"')),
        (FINE, ("valve.toml", 'upper_beat.seat = "upper"\n')),
        (FINE, ("upper.toml", 'pressed_into = "one"')),
        (SILENT, ("pocket.toml", 'in_block = "one"\n')),
        (SILENT, ("pocket.toml", 'follows = "chest"\nvalve = "valve"')),
    ),
    *rows(
        "path.of-one-block",
        "exhaust",
        PATHS,
        (SILENT, ("exhaust.toml", 'starts_at.part = "one"')),
        (SILENT, ("exhaust.toml", 'follows = "chest"\n')),
    ),
    *rows(
        "flange.of-its-pipe",
        "flange",
        PIPED,
        (SILENT, ("flange.toml", 'bore = "157 mm"\n')),
        (ASKED, ("flange.toml", 'of = "pipe"\n')),
        (ASKED, ("pipe.toml", 'wall = "5.6 mm"\n')),
        (ASKED, ("pipe.toml", 'outside_diameter = "168.3 mm"\n')),
    ),
    *rows(
        "lens-joint.of-its-pipe",
        "lens",
        PIPED,
        (SILENT, ("lens.toml", '\nbore = "157 mm"')),
        (ASKED, ("lens.toml", 'of = "pipe"\n')),
        (ASKED, ("pipe.toml", 'wall = "5.6 mm"\n')),
    ),
    *rows(
        "steamway.same-steam",
        "pipe",
        PIPED,
        (SILENT, ("chest.toml", 'carries = "live steam"\n')),
        (SILENT, ("pipe.toml", 'carries = "live steam"\n')),
        (SILENT, ("chest.toml", 'follows = "pipe"\n')),
    ),
    *rows(
        "seat.as-long-as-bore",
        "lower",
        seated(),
        (SILENT, ("lower.toml", '\nlength = "30 mm"')),
        (SILENT, ("block.toml", 'depth = "30 mm"\nserves = "inlet"\nend = "front"\nbeat = "lower"\n')),
    ),
    *rows(
        "valve.meets-seat",
        "valve",
        seated(),
        (FINE, ("seat.toml", 'seat_width = "3 mm"\n')),
        (SILENT, ("seat.toml", 'seat_width = "3 mm"\n'), ("lower.toml", 'seat_width = "3 mm"\n')),
    ),
    *rows(
        "valve.angle-of-seat",
        "valve",
        seated(),
        (FINE, ("seat.toml", 'seat_angle = "0 °"\n')),
        (SILENT, ("seat.toml", 'seat_angle = "0 °"\n'), ("lower.toml", 'seat_angle = "0 °"\n')),
    ),
    *rows(
        "seat.face-in-ring",
        "seat",
        seated(),
        (SILENT, ("seat.toml", 'seat_width = "3 mm"\n')),
        (SILENT, ("seat.toml", 'seat_angle = "0 °"\n')),
        (SILENT, ("seat.toml", 'seat_diameter = "150 mm"\n')),
        (ASKED, ("seat.toml", '\nbore = "130 mm"')),
        (ASKED, ("seat.toml", 'outside_diameter = "200.2 mm"\n')),
    ),
    *rows(
        "valve.seats-apart",
        "valve",
        seated(),
        (SILENT, ("block.toml", 'at = "110 mm"\n')),
        (SILENT, ("block.toml", 'at = "0 mm"\n')),
        (SILENT, ("valve.toml", 'beat_distance = "110 mm"\n')),
    ),
    *rows(
        "release.one-vessel",
        "cover",
        VESSEL,
        (SILENT, ("cover.toml", 'design_pressure = "17 bar gauge"\n')),
        (SILENT, ("block.toml", 'design_pressure = "17 bar gauge"\n')),
        (SILENT, ("cover.toml", 'closes = "block"\n')),
    ),
    *rows(
        "release.one-vessel",
        "weldment",
        VESSEL,
        (FINE, ("weldment.toml", 'design_pressure = "17 bar gauge"\n')),
        (FINE, ("weldment.toml", 'design_temperature = "400 °C"\n')),
        (FINE, ("block.toml", 'design_temperature = "400 °C"\n')),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "duty.no-milder-for-a-part",
        "liner",
        PART_DUTIES,
        (SILENT, ("liner.toml", 'duty = "own"\n')),
        (SILENT, ("liner.toml", 'housed_in = "block"')),
        (SILENT, ("block.toml", 'duty = "engine"')),
        # its live steam of 15.5 bar counts, against the valves of the engine at 16.6
        ("finding", ("own.toml", 'safety_valve_pressure = "16.6 bar gauge"\n')),
        (FINE, ("engine.toml", 'safety_valve_pressure = "16.6 bar gauge"\n')),
    ),
    *rows(
        "cover.of-its-end",
        "cover",
        _UNLINED,
        (FINE, ("cover.toml", 'bore = "560 mm"\n')),
        (ASKED, ("block.toml", 'diameter = "560 mm"\n')),
    ),
    *rows(
        "duty.back-pressure-by-nozzle",
        "block",
        with_engine(),
        (SILENT, ("engine.toml", 'nozzle = "nozzle"\n')),
        (SILENT, ("engine.toml", 'block = "block"\n')),
        (SILENT, ("duty.toml", 'exhaust_pressure = "0.35 bar gauge"\n')),
        (SILENT, ("duty.toml", 'steam_flow = "1.7 kg/s"\n')),
        (ASKED, ("nozzle.toml", 'follows = "out"\n')),
    ),
    *rows("path.of-one-block", "exhaust", _PIPE_AFTER_PIPE, (SILENT,)),
    *rows(
        "spring.nest-agrees",
        "inner",
        nest(),
        (SILENT, ("inner.toml", 'closes = "valve"\n')),
        (SILENT, ("spring.toml", 'closes = "valve"\n')),
        (SILENT, ("inner.toml", 'nested_in = "spring"\n')),
    ),
]


def _named(row: Row) -> str:
    return f"{row.rule} {' '.join(text.split(' =')[0].strip() for _, text in row.gone)}"


@pytest.mark.parametrize("row", ROWS, ids=_named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    files = dict(row.files)
    for file, text in row.gone:
        files[file] = changed(files[file], (text, ""), of=file)
    check = workshop.write(files).only(row.rule, row.part)
    assert check.outcome == row.outcome, check.says
