"""Every fact on whose stated value a hold rule once rested alone: told where another place contradicts it, else not.

One row for each, by the number of the fact: the rule that keeps it, a small design in which all places agree, and one
planted change that makes one drawing contradict another. Limits from both sides stand in the tests of each subject.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, installed_families
from tests.plugins.agreement import (
    test_covers as covers,
    test_cylinders as cylinders,
    test_joints as joints,
    test_pipes as pipes,
    test_walls as walls,
)
from tests.plugins.agreement.test_concern import COVER
from tests.plugins.agreement.test_dividing_walls import walled
from tests.plugins.agreement.test_ends import of_one_end
from tests.plugins.agreement.test_frames import reamed, weighed
from tests.plugins.agreement.test_gear import trained
from tests.plugins.agreement.test_lifting import loaded
from tests.plugins.agreement.test_retention import caged
from tests.plugins.agreement.test_seats import seated
from tests.plugins.joints.bench import bench as joint
from tests.plugins.joints.test_frames import fastened
from tests.plugins.liners.bench import bench as cylinder
from tests.plugins.motion.train import files as train
from tests.plugins.pairings.bench import files as pairing
from tests.plugins.release.part import files as part, settings
from tests.plugins.steamways.test_partitions import files as partition

Made = Callable[[DesignFolder], DesignFolder]
Change = tuple[str, str, str]
RULES = {rule.name: rule for rule in installed_families().rules}
#: The numbers of the facts on which a hold rule rested alone; 32 is no longer among them.
STARRED = {number for number in range(1, 43) if number != 32}


class Row(NamedTuple):
    """A fact: its number, the rule that keeps it, the part judged, an agreeing design, and what contradicts it."""

    number: int
    rule: str
    part: str
    made: Made
    planted: tuple[Change, ...]
    grade: Grade = Grade.HOLD


def wrote(files: Callable[[], dict[str, str]], *changes: Change) -> Made:
    """The design of some files, with changes."""

    def made(folder: DesignFolder) -> DesignFolder:
        folder.write(files())
        for change in changes:
            folder.replace(*change)
        return folder

    return made


def _of_a_cylinder() -> dict[str, str]:
    return {**cylinder(), **cylinders.DRAWN}


def _of_walls() -> dict[str, str]:
    return {"block.toml": walls.BLOCK, "weldment.toml": walls.WELDMENT}


def _lens(folder: DesignFolder) -> DesignFolder:
    joints.with_lens(joint(folder))
    return folder


def _flange(folder: DesignFolder) -> DesignFolder:
    """A cover bolted to a flange of 50 mm, which its bolts clamp with it."""
    joints.piped(joint(folder), "live steam")
    folder.replace("studs.toml", 'screwed_into = "block"', 'bolted_to = "flange"')
    return folder.replace("studs.toml", 'grip = "50 mm"', 'grip = "50 mm"\nfar_grip = "50 mm"')


def _sided(folder: DesignFolder) -> DesignFolder:
    sides = 'width = "250 mm"\nheight = "280 mm"\narea = "55273 mm²"'
    return fastened(folder).replace("block.toml", 'area = "62000 mm²"', sides)


def _reviewed(folder: DesignFolder) -> DesignFolder:
    return folder.write(part(), settings=settings())


def _iron() -> dict[str, str]:
    found = pairing(block=(("structural-S355", "grey-iron-250"), ('"fabricated"', '"cast"')))
    found["block.toml"] += "[welding]\nwelded = false\n"
    return found


ROWS = (
    Row(
        1,
        "joint.pressure-of-part",
        "studs",
        joint,
        (("studs.toml", 'pressure = "cylinder"', 'pressure = "exhaust"'),),
    ),
    Row(
        2,
        "steamway.same-steam",
        "pipe",
        wrote(lambda: pipes.FILES),
        (("pipe.toml", "live steam", "exhaust steam"),),
    ),
    Row(
        3,
        "joint.ring-outside-bore",
        "studs",
        lambda folder: joints.lined(joint(folder)),
        (("studs.toml", 'inside = "604 mm"', 'inside = "300 mm"'),),
    ),
    Row(
        4,
        "joint.pressure-circle",
        "lens-studs",
        _lens,
        (("lens-studs.toml", 'pressure_circle = "150 mm"', 'pressure_circle = "60 mm"'),),
    ),
    # the duty says 16 bar of water; relief valves at 60 bar hold back 66
    Row(
        5,
        "joint.separation",
        "studs",
        joint,
        (("block.toml", 'side = "front"\nrelief_set = "0.5 bar', 'side = "front"\nrelief_set = "60 bar'),),
    ),
    Row(
        6,
        "cylinder.tested-together",
        "",
        wrote(lambda: covers.FILES),
        (("block.toml", "29 bar gauge", "40 bar gauge"),),
    ),
    Row(
        7,
        "cylinder.stroke-fits",
        "block",
        wrote(_of_a_cylinder),
        (("block.toml", 'stroke = "660 mm"', 'stroke = "700 mm"'),),
    ),
    # the thread under the nut is the piston's: M60 on a rod whose drawing lists one of M85
    Row(8, "rod.tension", "", wrote(train), (("piston.toml", "M85x4", "M60"),)),
    Row(
        9,
        "retention.has-a-part",
        "valve",
        wrote(caged),
        (("valve.toml", 'retained = "cage"', 'retained = "none"'),),
    ),
    Row(
        10,
        "duty.metal-follows-steam",
        "pipe",
        wrote(lambda: pipes.FILES),
        (("duty.toml", "390 °C ±10", "450 °C ±10"),),
    ),
    Row(
        11,
        "release.pressure-by-place",
        "cover",
        wrote(lambda: {"cover.toml": f"{COVER}pressure_part = true\n"}),
        (("cover.toml", "pressure_part = true", "pressure_part = false"),),
        Grade.QUERY,
    ),
    Row(
        12,
        "weld.pressure-by-wall",
        "weldment",
        wrote(_of_walls),
        (("weldment.toml", "on_pressure = true", "on_pressure = false"),),
    ),
    Row(
        13,
        "wall.drawn-once",
        "partition",
        wrote(walled),
        (("partition.toml", '"two walls"', '"single wall"'),),
    ),
    Row(
        14,
        "seat.as-long-as-bore",
        "seat",
        wrote(seated),
        (("block.toml", 'depth = "30 mm"\nwall', 'depth = "8 mm"\nwall'),),
    ),
    Row(
        15,
        "valve.meets-seat",
        "valve",
        wrote(seated),
        (("seat.toml", 'seat_diameter = "150 mm"', 'seat_diameter = "151 mm"'),),
    ),
    Row(
        16,
        "valve.cam-gives-lift",
        "valve",
        wrote(trained),
        (("cam.toml", 'lift = "19.6 mm"', 'lift = "15 mm"'),),
    ),
    Row(
        17,
        "frame.thrust-of-all",
        "fastening",
        fastened,
        (("block.toml", "[pads.back]", '[bores.inside]\naxis_from_frame = "500 mm"\n[pads.back]'),),
    ),
    Row(
        18,
        "frame.mass-adds-up",
        "fastening",
        weighed,
        (("fastening.toml", 'carried_mass = "2000 kg"', 'carried_mass = "20 kg"'),),
    ),
    Row(19, "lifting.mass-complete", "plan", loaded, (("plan.toml", '"462.3 kg"', '"46.23 kg"'),)),
    Row(
        20,
        "joint.grip-of-flange",
        "studs",
        joint,
        (("studs.toml", 'grip = "50 mm"', 'grip = "33 mm"'),),
    ),
    Row(
        21,
        "block.wall-of-plate",
        "block",
        wrote(_of_walls),
        (("block.toml", 'wall = "38 mm"', 'wall = "90 mm"'),),
    ),
    Row(
        22,
        "joint.grip-of-flange",
        "studs",
        _flange,
        (("studs.toml", 'far_grip = "50 mm"', 'far_grip = "40 mm"'),),
    ),
    Row(
        23,
        "coil-spring.rate",
        "spring",
        wrote(trained),
        (("spring.toml", "1100 N ±5 %", "1600 N ±5 %"),),
        Grade.NONCONFORMITY,
    ),
    Row(
        24,
        "drive.mass-adds-up",
        "block",
        wrote(_of_a_cylinder),
        (("block.toml", 'reciprocating_mass = "300 kg"', 'reciprocating_mass = "30 kg"'),),
    ),
    Row(
        25,
        "tappet.lengths-close",
        "tappet",
        wrote(
            trained,
            ("tappet.toml", 'clearance_setting = "0 mm"\n', ""),
            ("spindle.toml", 'heated_length = "400 mm"', 'heated_length = "379.6 mm"'),
        ),
        (("spindle.toml", 'heated_length = "379.6 mm"', 'heated_length = "379 mm"'),),
    ),
    Row(
        26,
        "pipe.length-agrees",
        "pipe",
        wrote(
            lambda: pipes.FILES,
            ("pipe.toml", "bends = 2", "bends = 0"),
            ("pipe.toml", 'length = "2.7 m"', 'length = "2.1 m"'),
        ),
        (("pipe.toml", 'length = "2.1 m"', 'length = "2.7 m"'),),
    ),
    # a flow that is left out is not taken as none: without what the cylinder could use it is not assessed
    Row(
        27,
        "partition.stress",
        "wall",
        wrote(partition),
        (
            ("duty.toml", 'steam_flow = "0.3 kg/s"\n', ""),
            ("duty.toml", 'steam_flow = "1.7 kg/s"\n', ""),
        ),
    ),
    Row(
        28,
        "block.wall-of-plate",
        "block",
        wrote(_of_walls),
        (("block.toml", 'wall = "22 mm"', 'wall = "40 mm"'),),
    ),
    Row(
        29,
        "spring.works-the-lift",
        "spring",
        wrote(trained),
        (("spring.toml", 'open_length = "96 mm"', 'open_length = "106 mm"'),),
    ),
    Row(
        30,
        "frame.bolt-fits-hole",
        "fastening",
        lambda folder: reamed(folder, "25 mm H7", "25 mm H7"),
        (("fastening.toml", 'hole = "25 mm H7"', 'hole = "26 mm"'),),
    ),
    Row(
        31,
        "drive.of-the-rod",
        "block",
        wrote(_of_a_cylinder),
        (("block.toml", 'rod_diameter = "90 mm"', 'rod_diameter = "200 mm"'),),
    ),
    # from the seat 860 − 35 = 825 mm: 700 mm forward of the fixed point and 125 mm behind it
    Row(
        33,
        "cylinder.faces-agree",
        "block",
        wrote(_of_a_cylinder, ("block.toml", 'face_at = "-100 mm"', 'face_at = "-125 mm"')),
        (("block.toml", 'face_at = "-125 mm"', 'face_at = "-100 mm"'),),
    ),
    Row(
        34,
        "rod.length-agrees",
        "rod",
        wrote(_of_a_cylinder),
        (("rod.toml", 'free_length = "1450 mm"', 'free_length = "700 mm"'),),
    ),
    Row(
        35,
        "valve.room-by-lift",
        "valve",
        wrote(caged),
        (("valve.toml", 'lift = "20 mm"', 'lift = "24 mm"'),),
    ),
    Row(
        36,
        "pad.area-of-sides",
        "block",
        _sided,
        (("block.toml", 'area = "55273 mm²"', 'area = "620000 mm²"'),),
    ),
    # the collar is at the front, so that the back cover stops the liner: 860 mm from the seat
    Row(
        37,
        "liner.stop-is-the-cover",
        "",
        wrote(
            _of_a_cylinder,
            ("liner.toml", '"shoulder"', '"cover"'),
            ("block.toml", 'length = "902 mm"', 'length = "860 mm"'),
        ),
        (("block.toml", 'length = "860 mm"', 'length = "960 mm"'),),
    ),
    Row(
        38,
        "release.pressure-part",
        "cover",
        _reviewed,
        (("cover.toml", 'test_pressure = "28 bar gauge"', 'test_pressure = "2 bar gauge"'),),
    ),
    Row(
        39,
        "seat.chamber-by-valve",
        "block",
        wrote(seated),
        (("block.toml", 'chamber = "live steam"', 'chamber = "exhaust steam"'),),
    ),
    Row(
        40,
        "rod.ends-as-drawn",
        "rod",
        wrote(_of_a_cylinder),
        (("rod.toml", '"one fixed and one pinned"', '"both fixed"'),),
    ),
    Row(
        41,
        "material.iron-weld",
        "block",
        wrote(_iron),
        (("block.toml", "welded = false", "welded = true"),),
    ),
    Row(
        42,
        "valve.room-to-piston",
        "valve",
        wrote(of_one_end),
        (("valve.toml", "meets_piston = false", "meets_piston = true"),),
    ),
)


def test_every_such_fact_has_a_row() -> None:
    assert [row.number for row in ROWS] == sorted(STARRED)
    assert not [row.rule for row in ROWS if row.rule not in RULES]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row.number}-{row.rule}")
def test_what_agrees_is_not_told_and_what_is_contradicted_is(workshop: DesignFolder, row: Row) -> None:
    design = row.made(workshop)
    agreed = design.only(row.rule, row.part)
    assert (agreed.outcome, agreed.grade) == ("conforms", None), agreed.says
    for change in row.planted:
        design.replace(*change)
    told = design.only(row.rule, row.part)
    assert told.outcome in ("finding", "not assessed")
    assert told.grade is row.grade, told.says
