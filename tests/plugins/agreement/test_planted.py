"""Bad parts drawn from what a rule says of itself, without its code at hand: each is told, and nothing else was wrong.

None of them is a value beside a limit, as in the tests of each subject: a wrong part is put in, a line is left behind
at a revision, or another drawing is taken.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest

from speclint.testing import DesignFolder
from tests.plugins.agreement import test_one_cylinder as one_cylinder
from tests.plugins.agreement.test_access import FILES as REACHED
from tests.plugins.agreement.test_covers import FILES as COVERED
from tests.plugins.agreement.test_cylinders import DRAWN
from tests.plugins.agreement.test_dividing_walls import walled
from tests.plugins.agreement.test_ends import of_one_end
from tests.plugins.agreement.test_envelopes import FILES as ROOM
from tests.plugins.agreement.test_gear import trained
from tests.plugins.agreement.test_pipes import FILES as PIPED
from tests.plugins.agreement.test_seats import seated
from tests.plugins.agreement.test_vessels import FILES as VESSEL
from tests.plugins.agreement.test_walls import BLOCK, WELDMENT
from tests.plugins.liners.bench import bench as cylinder
from tests.plugins.motion.train import files as train

Files = dict[str, str]


class Plant(NamedTuple):
    """A bad part: the rule that should tell it, the part judged, a sound design, and what is drawn instead."""

    says: str
    rule: str
    part: str
    files: Files
    changes: tuple[tuple[str, str, str], ...]


def _with_duty() -> Files:
    duty = (
        'kind = "duty"\nid = "duty"\n[cases.starting]\nlive_pressure = "10 bar gauge"\n'
        'safety_valve_pressure = "16 bar gauge"\nexhaust_pressure = "0.3 bar gauge"\n'
    )
    block = 'kind = "cylinder-block"\nid = "block"\nduty = "duty"\ndesign_pressure = "17 bar gauge"\n'
    return {"block.toml": block, "duty.toml": duty}


_WALLS = {"block.toml": BLOCK, "weldment.toml": WELDMENT}
_CYLINDER = {**cylinder(), **DRAWN}
PLANTS = (
    Plant(
        "the box of a rod without a tail is in the front cover",
        "motion.one-cylinder",
        "box",
        one_cylinder.FILES,
        (("cover.toml", 'of_end = "left-back"', 'of_end = "left-front"'),),
    ),
    Plant(
        "the weld of a wall that bounds the cylinder on its far side alone is said to hold nothing",
        "weld.pressure-by-wall",
        "weldment",
        _WALLS,
        (
            (
                "weldment.toml",
                'one_side = "live steam"\nother_side = "atmosphere"',
                'one_side = "atmosphere"\nother_side = "cylinder"',
            ),
            ("weldment.toml", "on_pressure = true", "on_pressure = false"),
        ),
    ),
    Plant(
        "one plate of three is bought in another grade",
        "block.metal-of-plates",
        "weldment",
        _WALLS,
        (
            (
                "weldment.toml",
                'plates.boss]\nmaterial = "plate-P355GH"',
                'plates.boss]\nmaterial = "plate-P265GH"',
            ),
        ),
    ),
    Plant(
        "the wall is drawn to a limit that the plate does not reach",
        "block.wall-of-plate",
        "block",
        _WALLS,
        (("block.toml", 'wall = "38 mm"', 'wall = "37 mm +1.2/0"'),),
    ),
    Plant(
        "the steam of the boiler is throttled below the exhaust",
        "duty.pressures-in-order",
        "block",
        _with_duty(),
        (("duty.toml", 'live_pressure = "10 bar gauge"', 'live_pressure = "0.2 bar gauge"'),),
    ),
    Plant(
        "an older boiler with safety valves above the cylinder's design",
        "duty.pressures-in-order",
        "block",
        _with_duty(),
        (
            (
                "duty.toml",
                'safety_valve_pressure = "16 bar gauge"',
                'safety_valve_pressure = "17.2 bar gauge"',
            ),
        ),
    ),
    Plant(
        "the plan lists all chambers but the chest",
        "access.chambers-of-block",
        "plan",
        REACHED,
        (("plan.toml", '[chambers.chest]\nof = "chest"\n', ""),),
    ),
    Plant(
        "the stuffing box was tested by itself at less",
        "cylinder.tested-together",
        "",
        COVERED,
        (("box.toml", 'bore = "130 mm"', 'bore = "130 mm"\ntest_pressure = "20 bar gauge"'),),
    ),
    Plant(
        "the rod of a smaller class goes through the gland",
        "gland.of-the-rod",
        "gland",
        COVERED,
        (("rod.toml", '"90 mm"', '"85 mm"'),),
    ),
    Plant(
        "both beats are said to sit on the lower seat",
        "valve.of-one-end",
        "valve",
        of_one_end(),
        (("valve.toml", 'seat = "seat"', 'seat = "lower"'),),
    ),
    Plant(
        "the seat is turned at 45° for a flat valve",
        "valve.angle-of-seat",
        "valve",
        seated(),
        (("lower.toml", 'seat_angle = "0 °"', 'seat_angle = "45 °"'),),
    ),
    Plant(
        "the face of a seat runs out over its ring",
        "seat.face-in-ring",
        "lower",
        seated(),
        (("lower.toml", 'seat_diameter = "140 mm"', 'seat_diameter = "196 mm"'),),
    ),
    Plant(
        "a spring of a valve that lifts 16 mm",
        "spring.works-the-lift",
        "spring",
        trained(),
        (("spring.toml", 'open_length = "96 mm"', 'open_length = "100 mm"'),),
    ),
    Plant(
        "the tappet of a longer gear closes at nothing",
        "tappet.lengths-close",
        "tappet",
        {
            **trained(),
            "tappet.toml": trained()["tappet.toml"].replace('clearance_setting = "0 mm"\n', ""),
            "spindle.toml": trained()["spindle.toml"].replace('"400 mm"', '"379.6 mm"'),
        },
        (("box.toml", 'datum_length = "180 mm"', 'datum_length = "179.6 mm"'),),
    ),
    Plant(
        "the cover of a larger cylinder stands out beyond its point",
        "envelope.points-of-parts",
        "envelope",
        ROOM,
        (("cover.toml", '"800 mm"', '"900 mm"'),),
    ),
    Plant(
        "a gland of an old class in a vessel of a new one",
        "release.one-vessel",
        "studs",
        VESSEL,
        (("block.toml", "17 bar gauge", "20 bar gauge"),),
    ),
    Plant(
        "the partition was planned for the wall before it was moved",
        "wall.drawn-once",
        "partition",
        walled(),
        (("weldment.toml", 'plate = "thin"\nshort = "180 mm"', 'plate = "thin"\nshort = "210 mm"'),),
    ),
    Plant(
        "the piston of a neighbouring class, 60 mm shorter",
        "cylinder.stroke-fits",
        "block",
        _CYLINDER,
        (("piston.toml", '"149 mm"', '"89 mm"'),),
    ),
    Plant(
        "the crosshead weighs twice what the drive reckons",
        "drive.mass-adds-up",
        "block",
        _CYLINDER,
        (("crosshead.toml", 'mass = "70 kg"', 'mass = "140 kg"'),),
    ),
    Plant(
        "the chest beyond a live pipe is drawn for exhaust",
        "steamway.same-steam",
        "pipe",
        PIPED,
        (("chest.toml", 'carries = "live steam"', 'carries = "exhaust steam"'),),
    ),
    Plant(
        "the slipper of a longer crosshead runs off the bar",
        "slidebar.takes-the-stroke",
        "",
        {
            **train(),
            "crosshead.toml": train()["crosshead.toml"].replace(
                'slipper_width = "240 mm"', 'slipper_width = "190 mm"'
            ),
        },
        (("crosshead.toml", 'slipper_length = "400 mm"', 'slipper_length = "700 mm"'),),
    ),
    Plant(
        "the weights of a plan were listed before the liner was drawn",
        "lifting.mass-complete",
        "plan",
        {
            **REACHED,
            "plan.toml": 'kind = "lifting-plan"\nid = "plan"\nlifts = "block"\n[weights.block]\nof = "weldment"\n'
            'mass = "1500 kg"\n[weights.liner]\nof = "liner"\nmass = "440 kg"\n',
            "weldment.toml": 'kind = "weldment"\nid = "weldment"\nmakes = "block"\nmass = "1500 kg"\n',
            "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nmaterial = "grey-iron-250"\n'
            'bore = "500 mm"\noutside_diameter = "580 mm"\nlength = "900 mm"\n',
        },
        (("plan.toml", '[weights.liner]\nof = "liner"\nmass = "440 kg"\n', ""),),
    ),
    Plant(
        "one groove is drawn into the next",
        "piston.grooves-fit",
        "piston",
        {
            **train(),
            "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\nlength = "140 mm"\n'
            '[grooves.front]\nat = "20 mm"\nwidth = "16 mm"\nland = "20 mm"\n'
            '[grooves.second]\nat = "60 mm"\nwidth = "16 mm"\nland = "24 mm"\n',
        },
        (("piston.toml", 'at = "60 mm"', 'at = "32 mm"'),),
    ),
    Plant(
        "the gap to the crosshead was measured and has lost its chain",
        "envelope.gap-by-chain",
        "envelope",
        ROOM,
        (("chain.toml", 'size = "322 mm"', 'size = "312 mm"'),),
    ),
)


@pytest.mark.parametrize("plant", PLANTS, ids=lambda one: one.says)
def test_a_bad_part_is_told(workshop: DesignFolder, plant: Plant) -> None:
    workshop.write(plant.files)
    sound = workshop.only(plant.rule, plant.part)
    assert sound.outcome == "conforms", sound.says
    for change in plant.changes:
        workshop.replace(*change)
    assert workshop.only(plant.rule, plant.part).outcome == "finding"
