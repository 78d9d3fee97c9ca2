"""Bad parts for the rules on what holds an engine together: flanges, pistons, crossheads, covers, cams, valves."""

from __future__ import annotations

from speclint.testing import changed
from tests.plugins.fabrication.test_pipe_loads import LOADS_FILES
from tests.plugins.joints import bench as joints
from tests.plugins.joints.test_flanges import FLANGE, PIPE
from tests.plugins.joints.test_frames import files as framed
from tests.plugins.motion.test_bodies import bolts, crowned, headed, held
from tests.plugins.planted import Files, Plant
from tests.plugins.valves.test_cages import RULE as CAGE, caged
from tests.plugins.valves.test_holding import footed, keyed, nutted


def _flanged() -> Files:
    made = dict(joints.FILES)
    del made["cover.toml"]
    made["studs.toml"] = changed(
        made["studs.toml"], ('holds = "cover"', 'holds = "flange"'), ('"cylinder"', '"live"')
    )
    flange = FLANGE.format(t=72.0, a="12 mm")
    settings = joints.SETTINGS_WITH_METALS.replace("materials", 'leave_out = ["metals.toml"]\nmaterials')
    return {**made, "flange.toml": flange, "pipe.toml": PIPE, "speclint.toml": settings}


def _covered() -> Files:
    settings = joints.SETTINGS_WITH_METALS.replace("materials", 'leave_out = ["metals.toml"]\nmaterials')
    return {**joints.FILES, "speclint.toml": settings}


FLANGED, HEADED = "pipe-flange.strength", "crosshead.strength"
HELD, CROWN, CAM = "crosshead.holds-its-rod", "piston.crown", "cam.stays-on-its-shaft"
NUT, TAPPET = "valve.stays-on-its-spindle", "tappet.bears-its-load"
PLANTS = (
    Plant(
        "a flange of the next lower class under the same studs",
        FLANGED,
        "flange",
        _flanged(),
        (("flange.toml", "72.000 mm", "60 mm"),),
    ),
    Plant(
        "studs moved out on a flange that was not made thicker",
        FLANGED,
        "flange",
        _flanged(),
        (("studs.toml", 'circle = "700 mm"', 'circle = "720 mm"'),),
    ),
    Plant(
        "the throat of one weld in the place of the legs of two",
        FLANGED,
        "flange",
        _flanged(),
        (("flange.toml", 'weld_throat = "12 mm"', 'weld_throat = "2.5 mm"'),),
    ),
    Plant(
        "a piston of one wall with the thickness of one of two",
        CROWN,
        "piston",
        crowned(30),
        (("piston.toml", 'form = "two walls"', 'form = "one wall"'),),
    ),
    Plant(
        "a hub turned down to that of the lighter piston",
        CROWN,
        "piston",
        crowned(30),
        (("piston.toml", 'hub = "190 mm"', 'hub = "110 mm"'),),
    ),
    Plant(
        "walls that bear the steam on them, and not that on their rim",
        CROWN,
        "piston",
        crowned(33),
        (("piston.toml", "33.000 mm", "28 mm"),),
    ),
    Plant(
        "walls thinned to save mass",
        CROWN,
        "piston",
        crowned(30),
        (("piston.toml", "30.000 mm", "20 mm"),),
    ),
    Plant(
        "a neck given as the section of its core hole left out",
        HEADED,
        "crosshead",
        headed("12000", "210"),
        (("crosshead.toml", '"12000 mm²"', '"6200 mm²"'),),
    ),
    Plant(
        "a neck in square centimetres written as square millimetres the other way",
        HEADED,
        "crosshead",
        headed("12000", "210"),
        (("crosshead.toml", '"12000 mm²"', '"12000 cm²"'),),
    ),
    Plant(
        "bosses that a hole without a pin would leave strong enough",
        HEADED,
        "crosshead",
        headed("12000", "210"),
        (("crosshead.toml", '"210 mm"', '"195 mm"'),),
    ),
    Plant(
        "bosses left as they were round the pin of the larger engine",
        HEADED,
        "crosshead",
        headed("12000", "210"),
        (("pin.toml", 'diameter = "100 mm"', 'diameter = "130 mm"'),),
    ),
    Plant(
        "two bolts of six taken away for the lubricator",
        HELD,
        "crosshead",
        held(bolts("110..130 kN")),
        (("crosshead.toml", "bolts = 6", "bolts = 4"),),
    ),
    Plant(
        "bolts of the next smaller size tightened as those were",
        HELD,
        "crosshead",
        held(bolts("110..130 kN")),
        (("crosshead.toml", "M24", "M20"),),
    ),
    Plant(
        "a cover turned thin at its second refacing",
        "cover.fatigue",
        "cover",
        _covered(),
        (("cover.toml", 'thickness = "60 mm"\nflange', 'thickness = "35 mm"\nflange'),),
    ),
    Plant(
        "a hole for the tail rod cut in a cover without one",
        "cover.fatigue",
        "cover",
        {**_covered(), "cover.toml": joints.COVER.replace('"60 mm"\nflange', '"45 mm"\nflange')},
        (("cover.toml", 'central_hole = "0 mm"', 'central_hole = "150 mm"'),),
    ),
    Plant(
        "a hole for a box so wide that little is left of the plate to press on",
        "cover.fatigue",
        "cover",
        {**_covered(), "cover.toml": joints.COVER.replace('"60 mm"\nflange', '"54 mm"\nflange')},
        (("cover.toml", 'central_hole = "0 mm"', 'central_hole = "450 mm"'),),
    ),
    Plant(
        "two bolts with cut threads for the thirty of a pad",
        "frame.bolt-fatigue",
        "fastening",
        framed(("count = 30", 'thread_made = "cut"\ncount = 30')),
        (("fastening.toml", "count = 30", "count = 2"),),
    ),
    Plant(
        "a key cut short for the set screw of the cam beside it",
        CAM,
        "cam",
        keyed(20, "4 mm"),
        (("cam.toml", '"20.000 mm"', '"3.5 mm"'),),
    ),
    Plant(
        "a cam said to be forged on, and keyed",
        CAM,
        "cam",
        keyed(20, "4 mm"),
        (("cam.toml", '"clamped set"', '"forged on"'),),
    ),
    Plant(
        "a cam whose clamping nut was drawn on the next shaft",
        CAM,
        "cam",
        keyed(20, "4 mm"),
        (("cam.toml", '"clamped set"', '"nothing"'),),
    ),
    Plant(
        "a cam whose keyway is given and its key is not",
        CAM,
        "cam",
        keyed(20, "4 mm"),
        (("cam.toml", 'key_length = "20.000 mm"\n', ""),),
        "not assessed",
    ),
    Plant(
        "a nut of the smaller valve with the preload of the larger",
        NUT,
        "valve",
        nutted("20 kN"),
        (("spindle.toml", "M16", "M12"),),
    ),
    Plant(
        "a thread too thick for the bore of its valve, which bears the more",
        NUT,
        "valve",
        nutted("20 kN"),
        (("spindle.toml", "M16", "M30"),),
    ),
    Plant(
        "a valve said to be of one piece with its spindle, and bored for it",
        NUT,
        "valve",
        nutted("20 kN"),
        (("spindle.toml", 'by = "nut"', 'by = "forged in one"'),),
    ),
    Plant(
        "a nut whose pin was left out",
        NUT,
        "valve",
        nutted("20 kN"),
        (("spindle.toml", '"split pin"', '"nothing"'),),
    ),
    Plant(
        "a nut tightened by hand",
        NUT,
        "valve",
        nutted("20 kN"),
        (("spindle.toml", '"20 kN"', '"8..20 kN"'),),
    ),
    Plant(
        "a tappet that stands out of its guide",
        TAPPET,
        "tappet",
        footed("36 mm", "80 mm"),
        (("tappet.toml", 'guide_length = "80 mm"', 'guide_length = "40 mm"'),),
    ),
    Plant(
        "a stem of the old size in the new gear",
        TAPPET,
        "tappet",
        footed("36 mm", "100 mm"),
        (("tappet.toml", '"36 mm"', '"22 mm"'),),
    ),
    Plant(
        "a screw without its lock nut",
        TAPPET,
        "tappet",
        footed("36 mm", "100 mm"),
        (("tappet.toml", '"lock nut"', '"nothing"'),),
    ),
    Plant(
        "a cage with every second bar left out",
        CAGE,
        "cage",
        caged("40", "600"),
        (("cage.toml", "bars = 8", "bars = 4"),),
    ),
    Plant(
        "bars in square centimetres that do not go round the valve",
        CAGE,
        "cage",
        {
            **caged("40", "600"),
            "cage.toml": caged("40", "600")["cage.toml"] + 'outside_diameter = "220 mm"\n',
        },
        (("cage.toml", '"40 mm²"', '"40 cm²"'),),
    ),
    Plant(
        "a cage whose welds were left to the fitter",
        CAGE,
        "cage",
        caged("40", "600"),
        (("cage.toml", '"welds"', '"nothing"'),),
    ),
    Plant(
        "the cage of the smaller valve under the larger",
        CAGE,
        "cage",
        caged("40", "600"),
        (("valve.toml", '"170 mm"', '"230 mm"'),),
    ),
    Plant(
        "a chest rolled of thinner plate under the same pipe",
        "opening.pipe-load",
        "block",
        LOADS_FILES,
        (
            (
                "weldment.toml",
                '[plates.drum]\nmaterial = "known-plate"\nthickness = "9 mm"',
                '[plates.drum]\nmaterial = "known-plate"\nthickness = "5 mm"',
            ),
        ),
    ),
)
