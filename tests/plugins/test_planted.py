"""Bad parts drawn from what rules of several families say of themselves, without their code at hand, which passed once.

Each is a mistake of a drawing office: a line left behind at a revision, another drawing, a key that says the contrary
of its neighbour. The design before it is sound, or not asked; with it the rule tells.
"""

from __future__ import annotations

import pytest

from speclint.testing import SETTINGS, DesignFolder, on_sheet
from tests.made.test_in_steam import sized
from tests.made.test_judging import DRAWN as DRAWN_LINER
from tests.made.test_wear import MADE as MADE_LINER, WORN as WORN_LINER, measured
from tests.plugins.agreement.test_walls import BLOCK as WALLED, WELDMENT as WALLS
from tests.plugins.clearances.test_cranes import BOX, POST, plan
from tests.plugins.clearances.test_withdrawing import ENTRY, drawn, turned
from tests.plugins.fabrication import bench as block
from tests.plugins.fabrication.openings import DRUM, INLET
from tests.plugins.fabrication.test_unlike_plates import OTHER
from tests.plugins.fits.frames import files as framed
from tests.plugins.fits.test_geometry import COVER, DATUM, flat, holes, in_steel, joined, zone
from tests.plugins.joints import brackets
from tests.plugins.joints.brackets import LID, SADDLE
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.liners.bench import bench as liner_bench
from tests.plugins.motion.locomotive import files as engine
from tests.plugins.motion.train import FORGING
from tests.plugins.planted import Files, Plant
from tests.plugins.planted_bodies import PLANTS as OF_BODIES
from tests.plugins.release.made import recorded
from tests.plugins.release.part import settings as release_settings
from tests.plugins.release.test_steamings import BAND
from tests.plugins.steamways.exhaust import files as exhaust
from tests.plugins.steamways.test_dividing_walls import WHOLE
from tests.plugins.steamways.test_water import with_belt as wet_with_belt
from tests.plugins.steamways.wet import files as wet
from tests.plugins.valves.gear import train_files
from tests.plugins.valves.test_cam_shape import on_page as cam_on_page
from tests.plugins.valves.test_rocker_shafts import APART, files as rockers


def _guided() -> Files:
    """The edge load of a guide of 100 mm, which begins 240 mm from the seat, 60 mm before the gear."""
    side = 'side_load = "500 N"\nguide_from_seat = "240 mm"\nguide_length = "100 mm"'
    return train_files(spindle=(('guide_length = "100 mm"', side),))


def _worn(greatest: str, least: str, *before: tuple[str, str, str]) -> Files:
    """A liner worn from 500 mm to two diameters at one place in 1000 days, with a limit of 0.4 mm."""
    days = [("2020-01-01", "500.00", "500.00"), *before, ("2022-09-27", greatest, least)]
    made = MADE_LINER + "".join(measured(*day) for day in days)
    return {**liner_bench(WORN_LINER), "liner-7.toml": made}


def _sized_in_steam(size: str) -> Files:
    """A liner drawn 560.3 mm ±0.02, measured in steam."""
    return {**liner_bench(DRAWN_LINER, BAND), "liner-7.toml": sized(size)}


def _spindle() -> Files:
    """A spindle of 22 mm in 100 mm of guide, both straight to 0.01 mm over it."""
    straight = zone("guide", "straight", "0.01 mm", "guide") + 'over = "100 mm"\n'
    text = 'kind = "valve-spindle"\nid = "spindle"\ndiameter = "22 mm"\nguide_bore = "22.03 mm"\n'
    length = 'guide_length = "100 mm"\n'
    return {"spindle.toml": text + length + straight + zone("own", "straight", "0.01 mm", "diameter")}


def _one_pad() -> Files:
    """A block on one pad, with its weight 50 mm from the middle of it."""
    made = framed(("two locked", "one locked"), ('"lengthwise", "weight"', '"nothing"'))
    made["block.toml"] = made["block.toml"].replace('weight_at = "270 mm"', 'weight_at = "50 mm"')
    return made


def _gripped() -> Files:
    """Two locked pads in cut-outs that spread."""
    made = framed()
    for face in ("face-back.toml", "face-front.toml"):
        made[face] += 'slot_stiffness = "7500000 N/mm"\n'
    return made


def _drum() -> Files:
    return {**block.FILES, "block.toml": block.BLOCK + INLET, "weldment.toml": block.WELDMENT + DRUM}


def _seams() -> Files:
    """A chest whose seam joins its own plate; its edge is a tee on the flange, which names no plates."""
    seam = '[joints.barrel-seam]\nplate = "chest"\n'
    text = block.WELDMENT.replace(seam, seam + 'plates_joined = ["chest", "chest"]\n')
    return {**block.FILES, "weldment.toml": text, "metals.toml": block.FILES["metals.toml"] + OTHER}


def _lid() -> Files:
    return {**brackets.files(*LID), "saddle.toml": SADDLE}


def _jib() -> Files:
    """A post of the page that bears 90 kg, and a box of half of it."""
    made = plan(POST.format(load="90 kg", reach="0.8 m", post="60.3 mm", wall="5 mm", posts="one"))
    return {**made, "box.toml": BOX, "metals.toml": METALS}


def _spindle_weighed() -> Files:
    """A spindle of 22 mm and 330 mm, which is 0.98 kg of bar."""
    text = 'kind = "valve-spindle"\nid = "spindle"\nmaterial = "known-forging"\nmass = "1.4 kg"\n'
    sizes = 'diameter = "22 mm"\nleast_diameter = "17 mm"\nfree_length = "200 mm"\nheated_length = "330 mm"\n'
    return {"spindle.toml": text + sizes, "metals.toml": METALS + FORGING}


def _own_duty() -> Files:
    """An engine at 300 rev/min whose axle has a duty of its own, at 60."""
    made = engine("axle", ('id = "axle"', 'id = "axle"\nduty = "own"'))
    slow = (
        made["duty.toml"].replace('id = "duty"', 'id = "own"').replace('"300', '"60').replace('"240', '"60')
    )
    return {**made, "own.toml": slow}


def _pin_that_turns() -> Files:
    """A crank pin of 40 kg without its seat, which turns as 70 kg."""
    pin = 'kind = "pin"\nid = "pin"\nmaterial = "known-forging"\ndiameter = "180 mm"\nlength = "200 mm"\n'
    made = engine("axle", ("[turning.pin-left]\n", '[turning.pin-left]\nof = "pin"\n'))
    return {**made, "pin.toml": pin, "metals.toml": METALS + FORGING}


def _small_end() -> Files:
    """Piston, rod and crosshead of 180 kg; the rod of the engine adds 30 kg by its centre of gravity."""
    piston = 'kind = "piston"\nid = "piston"\nruns_in = "liner"\nmass = "80 kg"\n'
    liner = 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block-left"\nin_bore = "main"\n'
    rod = 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\nmass = "60 kg"\n'
    head = 'kind = "crosshead"\nid = "crosshead"\non_rod = "rod"\nmass = "40 kg"\n'
    parts = {"piston": piston, "liner": liner, "rod": rod, "crosshead": head}
    return {**engine(), **{f"{name}.toml": text for name, text in parts.items()}}


def _released() -> Files:
    return {**recorded(), "speclint.toml": release_settings("released")}


_FITTED = brackets.files(
    ('shear_taken_by = "friction"', 'shear_taken_by = "fitted bolts"\nfitted_diameter = "26 mm m6"'),
    ('hole = "26 mm"', 'hole = "26 mm H7"'),
)
_NAMED = {
    **brackets.files(bar=False),
    "bracket.toml": brackets.BRACKET + '[carries.gear]\nof = "bar"\nmass = "30 kg"\nforce.y = "5 kN"\n',
    "bar.toml": brackets.BAR.replace('[supports.back]\npart = "bracket"\n', ""),
}
_COLD_ALONE = (
    "tensile-strength = { degC = [20, 420], value = [400, 400]",
    "tensile-strength = { degC = [-20, 50], value = [400, 400]",
)
_GROUND = ('width = "25 mm"', 'width = "25 mm"\nregrind = { depth = "0.02 mm", times = 2 }')
_HOLES = in_steel(holes(), holes(more="projected = true"))
_LUBRICATOR = brackets.files(bar=False)

PLANTS = (
    Plant(
        "a datum that is the face itself",
        "geometry.whole",
        "cover",
        {
            "cover.toml": COVER
            + DATUM
            + zone("flat", "flat", "0.02 mm")
            + zone("out", "run-out", "0.05 mm", "bore", "A")
        },
        (("cover.toml", 'form = "run-out"\nof = "bore"', 'form = "run-out"\nof = "face"'),),
    ),
    Plant(
        "a face that is flat over a hand's breadth alone",
        "geometry.joint-face-flat",
        "studs",
        joined(
            flat("0.1 mm"),
            flat("0.1 mm") + 'over = "700 mm"\n',
            'seal = "gasket"\n[gasket]\nform = "flat"\noutside = "580 mm"\n',
        ),
        (("block.toml", 'over = "700 mm"', 'over = "100 mm"'),),
        "not assessed",
    ),
    Plant(
        "a guide that is straight over a quarter of its length",
        "geometry.room-for-form",
        "spindle",
        _spindle(),
        (("spindle.toml", 'over = "100 mm"', 'over = "25 mm"'),),
        "not assessed",
    ),
    Plant(
        "both parts drilled to the pattern of a joint with fewer studs",
        "holes.match",
        "studs",
        _HOLES,
        (
            ("cover.toml", 'joint = "studs"', 'joint = "studs"\ncount = 20'),
            ("block.toml", 'joint = "studs"', 'joint = "studs"\ncount = 20'),
        ),
    ),
    Plant(
        "both parts drilled on the circle of another class",
        "holes.match",
        "studs",
        _HOLES,
        (
            ("cover.toml", 'joint = "studs"', 'joint = "studs"\ncircle = "590 mm"'),
            ("block.toml", 'joint = "studs"', 'joint = "studs"\ncircle = "590 mm"'),
        ),
    ),
    Plant(
        "coordinates left beside a zone, and wider than it",
        "holes.match",
        "studs",
        _HOLES,
        (("cover.toml", 'joint = "studs"', 'joint = "studs"\ncoordinates = "0.6 mm"'),),
    ),
    Plant(
        "a hydraulic test of ten minutes, held in minutes as in seconds",
        "made.hydraulic-test",
        "cover-7",
        recorded(),
        (("made.toml", 'held = "1800 s"', 'held = "10 min"'),),
    ),
    Plant(
        "a second hydraulic test, after the repair, that was let down at once",
        "made.hydraulic-test",
        "cover-7",
        recorded(),
        (
            (
                "made.toml",
                "[hydraulic_tests.first]",
                '[hydraulic_tests.second]\npressure = "28 bar gauge"\nheld = "29.9 min"\nresult = "passed"\n'
                "[hydraulic_tests.first]",
            ),
        ),
    ),
    Plant(
        "a hydraulic test at the pressure in absolute",
        "made.hydraulic-test",
        "cover-7",
        recorded(),
        (("made.toml", 'pressure = "28 bar gauge"', 'pressure = "28 bar absolute"'),),
    ),
    Plant(
        "a bore measured in thousandths of an inch past its last size",
        "made.worn",
        "liner-7",
        _worn("500.50", "500.40"),
        (("liner-7.toml", '"500.50 mm"', '"20.05 in"'),),
    ),
    Plant(
        "the day of the later measurement typed as the earlier",
        "made.worn",
        "liner-7",
        _worn("500.50", "500.40", ("2021-01-01", "500.00", "499.50")),
        (("liner-7.toml", 'date = "2022-09-27"', 'date = "2020-06-01"'),),
    ),
    Plant(
        "a limit of wear halved at a revision of the drawing",
        "made.worn",
        "liner-7",
        _worn("500.50", "500.20"),
        (("liner.toml", '[wear]\nlimit = "0.4 mm"', '[wear]\nlimit = "0.2 mm"'),),
    ),
    Plant(
        "a clearance read in steam at half of what is drawn",
        "made.in-steam",
        "liner-7",
        _sized_in_steam("560.310 mm"),
        (("liner-7.toml", 'value = "560.310 mm"', 'value = "560.210 mm"'),),
    ),
    Plant(
        "a size read in steam with a gauge that cannot tell",
        "made.in-steam",
        "liner-7",
        _sized_in_steam("560.310 mm"),
        (
            (
                "liner-7.toml",
                'value = "560.310 mm"\nuncertainty = "4 µm"',
                'value = "560.310 mm"\nuncertainty = "40 µm"',
            ),
        ),
    ),
    Plant(
        "a size read in steam, and the drawing's limits moved from under it",
        "made.in-steam",
        "liner-7",
        _sized_in_steam("560.310 mm"),
        (("liner.toml", '"560.3 mm ±0.02"', '"560.4 mm ±0.02"'),),
    ),
    Plant(
        "a bore that wears five times as fast as the last one did",
        "made.worn-by-next-overhaul",
        "liner-7",
        _worn("500.50", "500.40"),
        (("liner-7.toml", '"500.40 mm"', '"500.13 mm"'),),
    ),
    Plant(
        "the first measurement after the last but one",
        "made.worn-by-next-overhaul",
        "liner-7",
        _worn("500.50", "500.25"),
        (("liner-7.toml", 'date = "2020-01-01"', 'date = "2022-06-27"'),),
    ),
    Plant(
        "a limit of wear just ahead",
        "made.worn-by-next-overhaul",
        "liner-7",
        _worn("500.50", "500.25"),
        (("liner.toml", '[wear]\nlimit = "0.4 mm"', '[wear]\nlimit = "0.33 mm"'),),
    ),
    Plant(
        "a pad that takes nothing and the weight",
        "frame.scheme-of-pads",
        "block",
        framed(),
        (("block.toml", 'takes = ["lengthwise", "weight"]', 'takes = ["lengthwise", "weight", "nothing"]'),),
    ),
    Plant(
        "the only carrying pad stands behind the weight",
        "frame.carrying-pads",
        "block",
        _one_pad(),
        (("block.toml", 'weight_at = "50 mm"', 'weight_at = "270 mm"'),),
    ),
    Plant(
        "a loose pad whose thrust is said to go through friction",
        "frame.grip-kept",
        "block",
        _gripped(),
        (
            ("face-front.toml", 'slot = "220 mm"', 'slot = "220.2 mm"'),
            ("fastening-front.toml", '"lugs"', '"friction"'),
        ),
    ),
    Plant(
        "a seat drawn out with the frames taken away",
        "room.withdrawn-in-frames",
        "plan",
        drawn(ENTRY.format(room="200 mm")),
        (("plan.toml", 'in_place = ["frames"]', 'in_place = ["wheels"]'),),
    ),
    Plant(
        "what stays in place is taken off",
        "room.withdrawn-in-frames",
        "plan",
        drawn(ENTRY.format(room="200 mm")),
        (("plan.toml", 'in_place = ["frames"]', 'in_place = ["frames"]\ncomes_off = ["frames"]'),),
    ),
    Plant(
        "a belt that answers its own face",
        "heat.every-face-counted",
        "belt",
        exhaust(faces=WHOLE),
        (("belt.toml", 'to = "atmosphere"', 'to = "belt"'),),
    ),
    Plant(
        "one cock pipe for both ends, once with a capital",
        "water.drain-stays-open",
        "block",
        wet(),
        (("block.toml", '"cock pipe back"', '"Cock pipe  front"'),),
    ),
    Plant(
        "an opening wider than its shell",
        "opening.metal-replaced",
        "block",
        _drum(),
        (("block.toml", 'diameter = "300 mm"', 'diameter = "510 mm"'),),
    ),
    Plant(
        "the hole of a smaller branch beside its bore",
        "opening.metal-replaced",
        "block",
        _drum(),
        (
            (
                "block.toml",
                'diameter = "300 mm"\nwall = "11 mm"',
                'diameter = "50 mm"\nbore = "300 mm"\nwall = "7.5 mm"',
            ),
            (
                "weldment.toml",
                'thickness = "9 mm"\nrolled_thickness = "9 mm"',
                'thickness = "7.9 mm"\nrolled_thickness = "9 mm"',
            ),
        ),
    ),
    Plant(
        "the flange on the edge of the chest became another steel",
        "weld.two-metals",
        "weldment",
        _seams(),
        (
            (
                "weldment.toml",
                '[plates.flange]\nmaterial = "known-plate"',
                '[plates.flange]\nmaterial = "other-plate"',
            ),
        ),
        "not assessed",
        "not applicable",
    ),
    Plant(
        "the gear pushes the spindle within its guide",
        "gear.guide-edge-load",
        "spindle",
        _guided(),
        (("spindle.toml", 'guide_from_seat = "240 mm"', 'guide_from_seat = "340 mm"'),),
    ),
    Plant(
        "arms apart on a shaft that was forgotten",
        "gear.rocker-twist",
        "rocker",
        rockers("80 mm"),
        (("rocker.toml", APART, 'arm_distance = "250 mm"\n'),),
        "not assessed",
    ),
    Plant(
        "fitted bolts of a smaller class in clearance holes",
        "joint.does-not-slip",
        "joint",
        _FITTED,
        (("joint.toml", '"26 mm m6"', '"20 mm"'),),
    ),
    Plant(
        "fitted bolts that do not enter",
        "joint.does-not-slip",
        "joint",
        _FITTED,
        (("joint.toml", '"26 mm m6"', '"28 mm"'),),
    ),
    Plant(
        "what is carried lost its mass at a revision",
        "joint.does-not-part",
        "joint",
        _NAMED,
        (("bracket.toml", 'mass = "30 kg"\n', ""),),
        "not assessed",
    ),
    Plant(
        "twelve bolts became four, and the pitch stayed",
        "joint.air-tight",
        "joint",
        _lid(),
        (("joint.toml", "count = 12", "count = 4"),),
    ),
    Plant(
        "a fillet weld of the category of a plain butt",
        "bracket.welds-hold",
        "bracket",
        _LUBRICATOR,
        (("bracket.toml", 'weld = "full penetration"', 'weld = "fillet"'),),
    ),
    Plant(
        "a category that no weld has",
        "bracket.welds-hold",
        "bracket",
        _LUBRICATOR,
        (("bracket.toml", '"112 MPa"', '"160 MPa"'),),
    ),
    Plant(
        "a push from the side, seven times as hard",
        "bracket.welds-hold",
        "bracket",
        brackets.pushed("5 kN"),
        (("bracket.toml", '"5 kN"', '"40 kN"'),),
    ),
    Plant(
        "nylon in the nuts of a part that stands at 130 °C",
        "joint.lock-suits",
        "joint",
        brackets.files(
            ('"wedge washers"', '"nylon ring nut"'), ('friction = "0.12"', 'friction = "0.6"'), bar=False
        ),
        (("duty.toml", 'bolted-joint = "60 °C"', 'bolted-joint = "130 °C"'),),
    ),
    Plant(
        "studs whose torque was lost",
        "room.spanner-each-joint",
        "plan",
        turned("580 N·m", '[spanners.studs]\nby = "hand"\nbar = "1.45 m"\n'),
        (("studs.toml", 'torque = "580 N·m"', ""),),
        "not assessed",
    ),
    Plant(
        "an end that drains into the live chest",
        "water.drain-stays-open",
        "block",
        wet(),
        (("block.toml", '"cock pipe front"', '"chest"'),),
    ),
    Plant(
        "all water of the block drained into a chest of half of it",
        "water.drain-passes-it",
        "block",
        wet_with_belt("open air"),
        (("belt.toml", '"open air"', '"chest"'), ("chest.toml", 'bore = "10 mm"', 'bore = "8 mm"')),
    ),
    Plant(
        "an opening in the flat wall of another plate",
        "opening.plate-of-wall",
        "weldment",
        {"block.toml": WALLED, "weldment.toml": WALLS},
        (("block.toml", 'plate = "chest", flat_wall', 'plate = "boss", flat_wall'),),
    ),
    Plant(
        "a box of twice the load of its jib",
        "lifting.jib",
        "plan",
        _jib(),
        (("box.toml", '"45 kg"', '"180 kg"'),),
    ),
    Plant(
        "a cam that is reground nobody knows how often",
        "cam.no-undercut",
        "cam",
        cam_on_page("34.9 mm", 'follower = "flat foot"', _GROUND),
        (("cam.toml", ", times = 2", ""),),
        "not assessed",
    ),
    Plant(
        "a weld three times as long as the root is deep",
        "bracket.welds-hold",
        "bracket",
        _LUBRICATOR,
        (("bracket.toml", 'length = "400 mm"', 'length = "1500 mm"'),),
    ),
    Plant(
        "a spindle of ten times its mass",
        "mass.by-sizes",
        "spindle",
        _spindle_weighed(),
        (("spindle.toml", '"1.4 kg"', '"14 kg"'),),
    ),
    Plant(
        "an engine whose axle has a slower duty of its own",
        "wheel.stays-on-rail",
        "axle",
        _own_duty(),
        (("duty.toml", '"300 rev/min"', '"600 rev/min"'),),
    ),
    Plant(
        "a crank pin that turns with ten times its mass",
        "mass.of-turning-parts",
        "axle",
        _pin_that_turns(),
        (("axle.toml", 'of = "pin"\nmass = "70 kg"', 'of = "pin"\nmass = "400 kg"'),),
    ),
    Plant(
        "a reciprocating mass without the small end, which no crosshead states",
        "drive.mass-adds-up",
        "block-left",
        _small_end(),
        (("block-left.toml", '"210 kg"', '"180 kg"'),),
    ),
    Plant(
        "nuts whose tightening failed",
        "made.tightening",
        "studs-1",
        recorded(),
        (("studs-1.toml", 'preload = "82 kN"', 'preload = "82 kN"\nresult = "failed"'),),
    ),
    Plant(
        "nuts tightened by half as much again",
        "made.tightening",
        "studs-1",
        recorded(),
        (("studs-1.toml", "385..405 N·m", "585..605 N·m"),),
    ),
    Plant(
        "plates that were looked over in place of ultrasound",
        "made.examined",
        "cover-7",
        recorded(),
        (("made.toml", 'method = "ultrasonic"', 'method = "looked over"'),),
    ),
    Plant(
        "a casting that was normalized and not stress relieved",
        "made.examined",
        "casting-1",
        recorded(),
        (("casting-1.toml", 'treatment = "stress relieved"', 'treatment = "normalized"'),),
    ),
    Plant(
        "a document of a heat that does not say of what metal",
        "made.certificate",
        "cover-7",
        recorded(),
        (("made.toml", 'material = "plate-P265GH"\n', ""),),
    ),
    Plant(
        "the only part on record is not fitted",
        "release.made-parts",
        "cover",
        _released(),
        (("made.toml", 'serial = "7"', 'serial = "7"\nfitted = false'),),
    ),
)


@pytest.mark.parametrize("plant", [*PLANTS, *OF_BODIES], ids=lambda one: one.says)
def test_a_bad_part_is_told(workshop: DesignFolder, plant: Plant) -> None:
    known = "metals.toml" in plant.files and "speclint.toml" not in plant.files
    workshop.write(plant.files, settings=WITH_METALS if known else SETTINGS)
    sound = workshop.only(plant.rule, plant.part)
    assert sound.outcome == plant.before, sound.says
    for change in plant.changes:
        workshop.replace(*change)
    assert workshop.only(plant.rule, plant.part).outcome == plant.after


def test_a_bracket_that_nothing_holds_is_not_assessed(workshop: DesignFolder) -> None:
    """It is bolted where a joint holds it; without welds and joint nobody said how it is held."""
    root = brackets.BRACKET[: brackets.BRACKET.index("[welds.root]")]
    made = brackets.files(bar=False, bracket=root)
    workshop.write(made, settings=WITH_METALS)
    assert workshop.only("bracket.welds-hold").outcome == "not applicable"
    (workshop.root / "joint.toml").unlink()
    assert workshop.only("bracket.welds-hold").outcome == "not assessed"


@pytest.mark.parametrize(
    ("angle", "outcome"),
    [("15 °", "conforms"), ("360 °", "conforms"), ("14.5 °", "finding"), ("7.5 °", "finding")],
)
def test_a_pattern_is_turned_by_whole_holes(workshop: DesignFolder, angle: str, outcome: str) -> None:
    """24 holes stand 15° apart: from 15° they are those from 0°; 0.5° at 300 mm takes 5.2 of the 2.0 mm there are."""
    made = in_steel(holes(angle=angle), holes(more="projected = true"))
    assert workshop.write(made, settings=WITH_METALS).only("holes.match").outcome == outcome


def test_bolts_and_welds_of_a_running_engine_have_a_strength(workshop: DesignFolder) -> None:
    """Data that hold a tensile strength of 400 MPa to 50 °C alone; at 60 °C it falls as the proof stress does.

    That falls from 240 MPa at 20 °C to 160 at 420 °C: 240 − 80 × 40/400 = 232 MPa; 400 × 232/240 = 386.7 MPa.
    """
    made = brackets.files(bar=False)
    made["duty.toml"] = made["duty.toml"].replace('"20 °C"', '"60 °C"')
    made["metals.toml"] = made["metals.toml"].replace(*_COLD_ALONE)
    workshop.write(made, settings=WITH_METALS)
    check = workshop.only("bracket.welds-hold")
    assert check.outcome == "conforms", check.says
    assert on_sheet(check, "f_u") / 1e6 == pytest.approx(386.7, abs=0.1)
    assert workshop.only("joint.prying").outcome == "conforms"


def test_nothing_wears_by_nothing(workshop: DesignFolder) -> None:
    text = 'kind = "cam"\nid = "cam"\n[wear]\nlimit = "0.1 mm"\nrate = "0 mm"\n'
    (complaint,) = workshop.write({"cam.toml": text}).assess().complaints
    assert "wear.rate" in str(complaint)
