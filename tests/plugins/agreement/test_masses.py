"""Stated masses against those of sizes, and of one mass in two places; each from both sides, by hand.

A bar of 90 mm and 1450 mm of 7850 kg/m³: π/4 × 0.09² × 1.45 × 7850 = 72.41 kg.
"""

from __future__ import annotations

import math

import pytest

from speclint.testing import DesignFolder, expect_not_applicable
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.motion.locomotive import files
from tests.plugins.motion.train import FORGING

MASS, TURNS = "mass.by-sizes", "mass.of-turning-parts"
BAR = math.pi / 4 * 0.09**2 * 1.45 * 7850

ROD = """
kind = "piston-rod"
id = "rod"
material = "known-forging"
diameter = "90 mm"
free_length = "1450 mm"
mass = "{}"
"""
SPRING = """
kind = "compression-spring"
id = "spring"
material = "known-forging"
wire = "8 mm"
mean_diameter = "48 mm"
total_coils = "8"
mass = "{}"
"""
PISTON = """
kind = "piston"
id = "piston"
material = "known-forging"
diameter = "500 mm"
length = "150 mm"
stock_thickness = "40 mm"
mass = "{}"
[grooves.front]
depth = "16 mm"
width = "10 mm"
"""
VALVE = """
kind = "poppet-valve"
id = "valve"
material = "known-forging"
outside_diameter = "160 mm"
height = "80 mm"
beat_distance = "70 mm"
wall = "6 mm"
mass = "{}"
[lower_beat]
seat_diameter = "146 mm"
"""
SPINDLE = """
kind = "valve-spindle"
id = "spindle"
material = "known-forging"
least_diameter = "20 mm"
free_length = "400 mm"
mass = "{}"
"""
CROSSHEAD = """
kind = "crosshead"
id = "crosshead"
material = "known-forging"
boss_diameter = "200 mm"
boss_width = "60 mm"
mass = "{}"
"""
WELDMENT = """
kind = "weldment"
id = "weldment"
mass = "{}"
[plates.side]
material = "known-forging"
thickness = "20 mm"
[walls.one]
plate = "side"
short = "0.5 m"
long = "1 m"
[walls.other]
plate = "side"
short = "0.5 m"
long = "1 m"
"""
#: The same piston with two walls of 30 mm round a hub of 200 mm, in a rim of 420 mm inside: as thin as 15 mm each.
HOLLOW = PISTON + '[crown]\nform = "two walls"\nthickness = "30 mm"\nhub = "200 mm"\nrim = "420 mm"\n'
#: A rim of 500 and 420 mm, 150 mm long, less a groove of 500 and 468 mm, 10 mm wide; solid.
RIM = math.pi / 4 * 7850 * ((0.5**2 - 0.42**2) * 0.15 - (0.5**2 - 0.468**2) * 0.01)
WALLS = math.pi / 4 * (0.42**2 - 0.2**2) * 2 * 0.015 * 7850
SOLID = math.pi / 4 * 0.5**2 * 0.15 * 7850
SHELL = math.pi / 4 * (0.146**2 - 0.134**2) * 0.07 * 7850


def judged(workshop: DesignFolder, text: str, mass: float, rule: str = MASS) -> str:
    part = {"part.toml": text.format(f"{mass:.5f} kg")}
    return (
        workshop.write(part | {"metals.toml": METALS + FORGING, "speclint.toml": WITH_METALS})
        .only(rule)
        .outcome
    )


@pytest.mark.parametrize(
    ("text", "limit", "inside"),
    [
        (ROD, 0.9 * BAR, 1.01),
        (ROD, 2 * BAR, 0.99),
        (SPRING, 0.9 * 0.4760, 1.01),  # 7850 × π²/4 × 0.008² × 0.048 × 8 = 0.4760 kg
        (SPRING, 1.1 * 0.4760, 0.99),
        (PISTON, 0.9 * RIM, 1.01),
        (PISTON, 1.1 * SOLID, 0.99),
        (HOLLOW, 0.9 * (RIM + WALLS), 1.01),
        (VALVE, 0.9 * SHELL, 1.01),
        (VALVE, 1.1 * math.pi / 4 * 0.16**2 * 0.08 * 7850, 0.99),
        (SPINDLE, 0.9 * math.pi / 4 * 0.02**2 * 0.4 * 7850, 1.01),
        (CROSSHEAD, 0.9 * math.pi / 4 * 0.2**2 * 0.12 * 7850, 1.01),  # two bosses of 60 mm, the pin in them
        (WELDMENT, 0.9 * 7850 * 2 * 0.5 * 1 * 0.02, 1.01),
    ],
)
def test_a_mass_from_both_sides(workshop: DesignFolder, text: str, limit: float, inside: float) -> None:
    """As much on one side of the limit as on the other: it conforms there, and is told here."""
    assert judged(workshop, text, limit * inside) == "conforms"
    assert judged(workshop, text, limit * (2 - inside)) == "finding"


@pytest.mark.parametrize("text", [ROD, SPRING, PISTON, VALVE, SPINDLE, WELDMENT])
def test_ten_times_too_little_is_told(workshop: DesignFolder, text: str) -> None:
    least = {ROD: BAR, SPRING: 0.476, PISTON: RIM, VALVE: SHELL, SPINDLE: 0.98, WELDMENT: 157.0}[text]
    assert judged(workshop, text, least / 10) == "finding"


#: In the guide 22 mm; from the seat to the gear 330 mm, or 200 mm free beside 100 mm of guide.
WHOLE = SPINDLE + 'diameter = "22 mm"\n'
HEATED, GUIDED = WHOLE + 'heated_length = "330 mm"\n', WHOLE + 'guide_length = "100 mm"\n'
BLOCK = (
    'kind = "cylinder-block"\nid = "block"\nentering_width = "1 m"\nentering_height = "0.8 m"\n'
    '[bores.front]\nlength = "500 mm"\n[bores.back]\nlength = "400 mm"\n'
)
MADE_INTO = WELDMENT.replace("[plates.side]", 'makes = "block"\n[plates.side]')


@pytest.mark.parametrize(
    ("text", "most"),
    [
        (HEATED, 3 * math.pi / 4 * 0.022**2 * 0.33 * 7850),
        (GUIDED, 3 * math.pi / 4 * 0.022**2 * 0.5 * 7850),  # 400 mm free, 100 in the guide
        (MADE_INTO, 1.1 * 1 * 0.8 * 0.9 * 7850),  # as wide and high as the block, as long as both bores
    ],
)
def test_the_most_that_spindle_and_weldment_weigh(workshop: DesignFolder, text: str, most: float) -> None:
    (workshop.root / "block.toml").write_text(BLOCK, encoding="utf-8")
    assert judged(workshop, text, 0.99 * most) == "conforms"
    assert judged(workshop, text, 1.01 * most) == "finding"


def test_without_a_metal_nothing_is_compared(workshop: DesignFolder) -> None:
    text = ROD.replace('material = "known-forging"\n', "").format("84 kg")
    expect_not_applicable(workshop.write({"part.toml": text}).only(MASS))


def test_a_piston_without_its_rim_is_at_most_solid(workshop: DesignFolder) -> None:
    text = PISTON.replace('stock_thickness = "40 mm"\n', "")
    assert judged(workshop, text, 10.0) == "conforms"
    assert judged(workshop, text, 1.12 * SOLID) == "finding"


PIN = 'kind = "pin"\nid = "pin"\nmaterial = "known-forging"\ndiameter = "180 mm"\nlength = "200 mm"\n'


@pytest.mark.parametrize(
    ("mass", "outcome"),
    [("36.1 kg", "conforms"), ("35.8 kg", "finding"), ("119.7 kg", "conforms"), ("120 kg", "finding")],
)
def test_a_pin_that_turns(workshop: DesignFolder, mass: str, outcome: str) -> None:
    """π/4 × 0.18² × 0.2 × 7850 = 39.95 kg, × 0.9 = 35.96 kg, × 3 = 119.86 kg with its seat."""
    made = files(
        "axle", ('[turning.pin-left]\nmass = "70 kg"', f'[turning.pin-left]\nof = "pin"\nmass = "{mass}"')
    )
    made |= {"pin.toml": PIN, "metals.toml": METALS + FORGING, "speclint.toml": WITH_METALS}
    assert workshop.write(made).only(TURNS).outcome == outcome


@pytest.mark.parametrize(
    ("mass", "outcome"),
    [("63.5 kg", "conforms"), ("62.5 kg", "finding"), ("76.5 kg", "conforms"), ("77.5 kg", "finding")],
)
def test_what_turns_weighs_what_its_own_spec_states(workshop: DesignFolder, mass: str, outcome: str) -> None:
    """The part states 70 kg: × 0.9 = 63 kg, × 1.1 = 77 kg."""
    made = files(
        "axle", ('[turning.pin-left]\nmass = "70 kg"', f'[turning.pin-left]\nof = "web"\nmass = "{mass}"')
    )
    made["web.toml"] = 'kind = "weldment"\nid = "web"\nmass = "70 kg"\n'
    assert workshop.write(made).only(TURNS).outcome == outcome


@pytest.mark.parametrize(("share", "outcome"), [("0.67", "conforms"), ("0.672", "finding")])
def test_axles_that_state_no_share_may_take_the_rest(
    workshop: DesignFolder, share: str, outcome: str
) -> None:
    made = files()
    made["axle.toml"] = made["axle.toml"].replace('balanced_share = "0.67"', f'balanced_share = "{share}"')
    without = made["axle.toml"].replace(f'balanced_share = "{share}"\n', "")
    made["other.toml"] = without.replace('id = "axle"', 'id = "other"')
    for stated in (share, "0.3"):
        made["axle.toml"] = made["axle.toml"].replace(f'"{share}"', f'"{stated}"')
        found = workshop.write(made).only("engine.shares-add-up", "engine").outcome
        assert found == (outcome if stated == share else "conforms")


@pytest.mark.parametrize(
    ("part", "rule", "old", "new", "outcome"),
    [
        ("engine", "engine.adhesive-weight", '"16 t"\nbal', '"16.49 t"\nbal', "conforms"),
        ("engine", "engine.adhesive-weight", '"16 t"\nbal', '"16.51 t"\nbal', "finding"),
        ("engine", "engine.shares-add-up", '"0.67"', '"0.6705"', "conforms"),
        ("engine", "engine.shares-add-up", '"0.67"', '"0.675"', "finding"),
    ],
)
def test_what_engine_and_axles_state(
    workshop: DesignFolder, part: str, rule: str, old: str, new: str, outcome: str
) -> None:
    assert workshop.write(files(part, (old, new))).only(rule, "engine").outcome == outcome


@pytest.mark.parametrize(("small", "outcome"), [("31.9 kg", "conforms"), ("32.1 kg", "finding")])
def test_the_small_end_is_that_of_the_rod(workshop: DesignFolder, small: str, outcome: str) -> None:
    """90 kg × 600/1800 = 30 kg."""
    made = files()
    made["train.toml"] = 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block-left"\nin_bore = "main"\n'
    made["piston.toml"] = 'kind = "piston"\nid = "piston"\nruns_in = "liner"\n'
    made["rod.toml"] = 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\n'
    made["crosshead.toml"] = (
        f'kind = "crosshead"\nid = "crosshead"\non_rod = "rod"\nsmall_end_mass = "{small}"\n'
    )
    assert workshop.write(made).only("crosshead.small-end-of-rod", "engine").outcome == outcome
