"""A rocker whose shaft twists delays the opening of its valve, and lets it shut early: in the events, by hand.

Arms of 60 mm, 200 mm apart, each beside a bearing: the shaft only twists. One of 40 mm has J = π 0.04⁴/32 = 2.51327e-7
m⁴ and G = 200/2.6 = 76.92 GPa: 1 N at the valve costs it 0.06² × 0.2/(76.92e9 × 2.51327e-7) = 3.7242e-8 m of its lift.
The springs press with 1000 N. Steam of 15.2 bar against 0.35 on circles of 153 and 143 mm holds the inlet with 1.485
MPa × π/4 (153² − 143²) = 3452.3 N, less 1.52 × 314.16 = 477.5 N on the end of its spindle: 3974.8 N are 0.14803 mm, the
springs alone 0.03724 mm. On a ramp of 1.1 mm in 10° these are 1.3457° and 0.3386°.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed, expect_conforms, expect_finding, on_sheet
from tests.plugins.events.gear import files, foot
from tests.plugins.known_metals import WITH_METALS

LEAD = "events.lead"
ROCKER = """
kind = "rocker"
id = "rocker"
material = "known-steel"
works = "spindle-{name}"
carried_in = "box"
valve_arm = "60 mm"
tappet_arm = "60 mm"
on_shaft = "rocker-shaft"
arm_at = "0 mm"
arm_distance = "200 mm"
"""
SHAFT = """
kind = "shaft"
id = "rocker-shaft"
material = "known-steel"
diameter = "40 mm"
bearings.near.at = "0 mm"
bearings.far.at = "200 mm"
"""
SPRING = """
kind = "compression-spring"
id = "spring"
closes = "valve-{name}"
shut_load = "1000 N"
rate = "40 N/mm"
"""


def twisted(*changes: tuple[str, str, str], name: str = "inlet-front") -> dict[str, str]:
    """The design with a rocker on a shaft of 40 mm between the tappet and the spindle of one valve."""
    made = files(*changes)
    tappet = f"tappet-{name}.toml"
    made[tappet] = made[tappet].replace(f'works = "spindle-{name}"', 'works = "rocker"')
    made[f"spindle-{name}.toml"] += (
        'friction = "0 N"\nmass = "1 kg"\nseal_diameter = "20 mm"\npushed = "open"\nleaves = "delivery"\n'
    )
    valve = f"valve-{name}.toml"
    made[valve] = made[valve].replace(
        "beats = 2", 'beats = 2\nmass = "4 kg"\nopens = "sideways"\nsupply_acts = "beyond the beats"'
    )
    made |= {"rocker.toml": ROCKER.format(name=name), "rocker-shaft.toml": SHAFT}
    return {**made, "spring.toml": SPRING.format(name=name)}


def checked(folder: DesignFolder, rule: str, made: dict[str, str]) -> Check:
    return folder.write(made, settings=WITH_METALS).only(rule)


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


@pytest.mark.parametrize(
    ("holds", "fails"),
    [
        ("-9.05 °", "-8.95 °"),  # latest: 5.4545 + 1.3457 + 0.2 after the foot; 2° of lead at −9.0003°
        ("-14.3 °", "-14.4 °"),  # earliest: 4.0909 + 0.3386 − 0.1, no steam; 10° at −14.329°
    ],
)
def test_the_lead_with_the_shaft_wound_up(folder: DesignFolder, holds: str, fails: str) -> None:
    """With a stiff train the limits lie at −7.65° and −13.99°."""
    expect_conforms(checked(folder, LEAD, twisted(foot("35", "inlet_front", holds))))
    expect_finding(checked(folder, LEAD, twisted(foot("35", "inlet_front", fails))))


def test_a_thick_shaft_changes_nothing(folder: DesignFolder) -> None:
    """Of 400 mm it gives way a ten thousandth as much: the limit lies at −7.6545° again."""
    for angle, expect in (("-7.7 °", expect_conforms), ("-7.6 °", expect_finding)):
        made = twisted(foot("35", "inlet_front", angle))
        made["rocker-shaft.toml"] = changed(SHAFT, ("40 mm", "400 mm"))
        expect(checked(folder, LEAD, made))


def test_the_inlet_shuts_early_under_its_springs(folder: DesignFolder) -> None:
    """Track b, 116.5° from −9.5°: 0.6 mm cold 5.4545° and the springs 0.3386° before its end, at 101.2069°."""
    check = checked(folder, "events.cut-off-as-asked", twisted())
    assert math.degrees(on_sheet(check, "φ_s0if")) == pytest.approx(101.2069, abs=1e-4)
    assert on_sheet(check, "δ_ss") * 1e3 == pytest.approx(0.037242, rel=1e-4)


@pytest.mark.parametrize(("most", "holds"), [("0.69", True), ("0.67", False)])
def test_the_valve_leaves_its_seat_on_the_ramp(folder: DesignFolder, most: str, holds: bool) -> None:
    """0.6 and 0.14803 of 1.1 mm: 0.680 of the ramp; the clearance alone uses 0.545."""
    settings = WITH_METALS + f'[limits."events.ramp-takes-clearance"]\nmost = "{most}"\n'
    check = folder.write(twisted(), settings=settings).only("events.ramp-takes-clearance")
    (expect_conforms if holds else expect_finding)(check)


def test_the_steam_is_let_in_by_what_is_left_of_the_lift(folder: DesignFolder) -> None:
    """At dead centre the inlet of the last notch is open as much less as the springs wind the shaft up."""
    stiff = on_sheet(checked(folder, LEAD, files()), "h_if")
    wound = on_sheet(checked(folder, LEAD, twisted()), "h_if")
    assert (stiff - wound) * 1e3 == pytest.approx(0.03724, abs=1e-4)


def test_a_shaft_on_three_bearings_is_a_query(folder: DesignFolder) -> None:
    made = twisted()
    made["rocker-shaft.toml"] += 'bearings.middle.at = "100 mm"\n'
    check = checked(folder, LEAD, made)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
