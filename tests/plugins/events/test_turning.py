"""The engine at standstill: three cylinders at 120°, or two at right angles, with the chest's steam behind the pistons.

The mean turning moment is 0.85 × 15.2 bar × 0.5² × 0.66 m × z/4 = 53.3 kN·m a cylinder.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_assessed,
    found,
    on_sheet,
)
from tests.plugins.events.gear import checked, files
from tests.plugins.events.test_shares import dwell
from tests.plugins.known_metals import WITH_METALS

STARTS, MID = "events.starts-anywhere", "events.mid-gear"
_TWO = [
    ("engine.toml", '[cranks.middle]\nangle = "240 °"\n', ""),
    ("engine.toml", 'angle = "120 °"', 'angle = "90 °"'),
    ("gear.toml", "cylinders = 3", "cylinders = 2"),
]
#: The front's cam of 20 % is at work in mid gear too.
OPENED = (
    "gear.toml",
    'direction = "mid"\n',
    'direction = "mid"\n[notches.mid.inlet_front]\ncam = "cam-inlet-front-20"\nfoot = "-10.5 °"\n',
)


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


def longer(by: float) -> list[tuple[str, str, str]]:
    """The longest notch of both directions lengthened by so many degrees of dwell."""
    return [
        dwell(f"inlet-{side}-{notch}", was, f"{float(was) + by:g}")
        for side, was in (("front", "8.5"), ("back", "18"))
        for notch in ("65", "b")
    ]


def test_three_cylinders_start_anywhere(folder: DesignFolder) -> None:
    check = checked(folder, STARTS)
    expect_conforms(check)
    assert {step.symbol for step in check.steps if step.symbol.startswith("x_")} >= {"x_f", "x_b"}


def test_two_cylinders_at_right_angles_need_a_longer_cut_off(folder: DesignFolder) -> None:
    """At 65 % one inlet shuts at 102.5° while the other piston has just left its dead centre; 15° more let it start.

    Just after it the other end is at 12.5°: 0.19 m² × 0.33 m × (0.216 − 0.037) of 15.2 bar is 0.16 of the mean moment;
    at 27.5° it is 0.19 × 0.33 × (0.462 − 0.071), 0.35.
    """
    expect_finding(checked(folder, STARTS, *_TWO))
    expect_conforms(checked(folder, STARTS, *_TWO, *longer(15)))


@pytest.mark.parametrize(("front", "fails"), [("17.1", False), ("16.8", True)])
def test_the_start_of_two_cylinders_from_both_sides(folder: DesignFolder, front: str, fails: bool) -> None:
    """Cold the front shuts at 93.0455° more than its dwell, the other piston then 90° behind, at 20.1455° or 19.8455°.

    Its back presses with 16.213 bar × 0.18999 m² − 1.363 × 0.19635 + 1.013 × 0.00636 = 281.9 kN, at 330 mm × 0.28815 or
    0.28393 (sin φ (1 − λ cos φ/√(1 − λ² sin² φ))) 26.81 or 26.41 kN·m; the belt on the other's rod adds 0.06. A quarter
    of two means is 26.65.
    """
    longer = [dwell(f"inlet-front-{notch}", "8.5", front) for notch in ("65", "b")]
    check = checked(folder, STARTS, *_TWO, *longer)
    (expect_finding if fails else expect_conforms)(check)
    assert found(check) == pytest.approx((26.47 if fails else 26.87) / 106.59, rel=1e-3)


def test_an_engine_that_runs_one_way_starts_that_way(folder: DesignFolder) -> None:
    """Three cylinders, as above; that it has no notch backward is for events.both-directions."""
    one_way = ("gear.toml", 'direction = "backward"', 'direction = "forward"')
    expect_conforms(checked(folder, STARTS, one_way))


def test_one_cylinder_stands_on_its_dead_centre(folder: DesignFolder) -> None:
    """Before it the inlet is open for its lead, and the steam pushes back: the least moment is below nothing."""
    one = ("engine.toml", '[cranks.right]\nangle = "90 °"\n', "")
    files = [*_TWO, *longer(15), one]
    check = checked(folder, STARTS, *files)
    expect_finding(check)
    assert -0.3 < found(check) < 0


def test_an_engine_that_names_no_block_is_told(folder: DesignFolder) -> None:
    nameless = ("engine.toml", 'block = "block"\nangle', "angle")
    drive = ("block.toml", "[drive]", '[drive]\nstroke = "660 mm"\nconnecting_rod_length = "1900 mm"')
    expect_not_assessed(checked(folder, STARTS, nameless, drive), "no crank of an engine names block")


def test_shut_inlets_hold_the_engine_in_mid_gear(folder: DesignFolder) -> None:
    check = checked(folder, MID)
    expect_conforms(check)
    assert check.says == "notch mid: no cam opens an inlet"


def test_an_inlet_open_in_mid_gear_is_a_hold(folder: DesignFolder) -> None:
    """The cam of 20 % opens the front from −6° to 49.5° or so; there live steam acts on the front and exhaust steam on
    the back: (16.21 × 0.19635 − 1.363 × 0.18999 − 1.013 × 0.00636) bar m² × 0.33 m (sin φ + λ sin φ cos φ)."""
    check = checked(folder, MID, OPENED)
    expect_finding(check)
    force = (16.21325 * 0.1963495 - 1.36325 * 0.1899879 - 1.01325 * 0.0063616) * 1e5
    φ, λ = math.radians(50), 330 / 1900
    arm = 0.33 * (math.sin(φ) + λ * math.sin(φ) * math.cos(φ))
    mean = 0.85 * 15.2e5 * 0.25 * 0.66 * 3 / 4
    assert found(check) == pytest.approx(force * arm / mean, rel=0.03)


@pytest.mark.parametrize(("belt", "fails"), [("14.626", False), ("14.614", True)])
def test_mid_gear_from_both_sides(folder: DesignFolder, belt: str, fails: bool) -> None:
    """Three cylinders with the belt's steam at all ends balance one another; live steam in one front adds to its end.

    That is open to 49.909°: (15.2 bar − p) × 0.19635 m² × 330 mm × 0.85136 is 0.02 × 159.885 kN·m at p = 14.6203 bar,
    of which 0.85 × 15.2 bar × 0.5² × 0.66 m × 3/4 is the mean.
    """
    made = files(OPENED)
    made["duty.toml"] = made["duty.toml"].replace('"0.35 bar gauge"', f'"{belt} bar gauge"')
    check = folder.write(made, settings=WITH_METALS).only(MID)
    (expect_finding if fails else expect_conforms)(check)
    assert on_sheet(check, "M_m") == pytest.approx(159885)


def test_a_gear_without_mid_gear_is_not_assessed(folder: DesignFolder) -> None:
    expect_not_assessed(
        checked(folder, MID, ("gear.toml", '[notches.mid]\ndirection = "mid"\n', "")), "mid gear"
    )


@pytest.mark.parametrize("rule", [STARTS, MID])
def test_it_is_the_same_pressure_that_is_stated_absolute(folder: DesignFolder, rule: str) -> None:
    """15.2 and 0.35 bar above 1.01325 bar of the site."""
    made = files(OPENED)
    by_gauge = found(folder.write(made, settings=WITH_METALS).only(rule))
    for gauge, absolute in (("15.2", "16.21325"), ("0.35", "1.36325")):
        made["duty.toml"] = made["duty.toml"].replace(f"{gauge} bar gauge", f"{absolute} bar absolute")
    assert found(folder.write(made, settings=WITH_METALS).only(rule)) == pytest.approx(by_gauge)
