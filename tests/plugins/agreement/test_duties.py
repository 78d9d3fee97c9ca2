"""What a duty states of one moment: pressures in order, one boiler, the speed of the wheel."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

BLOCK = """
kind = "cylinder-block"
id = "block"
duty = "duty"
design_pressure = "17 bar gauge"
[drive]
driving_wheel_diameter = "1750 mm"
least_wheel_diameter = "1675 mm"
"""
DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
live_pressure = "16 bar gauge"
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0.5 bar gauge"
[cases.running]
live_pressure = "15.2 bar gauge ±0.3"
safety_valve_pressure = "16.6 bar gauge"
exhaust_pressure = "0.3 bar gauge"
rotational_speed = "364 rev/min"
track_speed = "120 km/h"
[cases.drifting]
live_pressure = "0 bar gauge"
exhaust_pressure = "0.1 bar gauge"
[cases.test]
live_pressure = "33 bar gauge"
"""


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write({"block.toml": BLOCK, "duty.toml": DUTY})


HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)


def outcome(design: DesignFolder, rule: str) -> tuple[str, Grade | None]:
    found = design.only(rule, "block")
    return found.outcome, found.grade


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("duty.toml", '"15.2 bar gauge ±0.3"', '"16.3 bar gauge ±0.3"', FINE),
        ("duty.toml", '"15.2 bar gauge ±0.3"', '"16.31 bar gauge ±0.3"', HOLD),
        ("block.toml", '"17 bar gauge"', '"16.6 bar gauge"', FINE),
        ("block.toml", '"17 bar gauge"', '"16.5 bar gauge"', HOLD),
        ("duty.toml", '"0.3 bar gauge"', '"14.9 bar gauge"', FINE),
        ("duty.toml", '"0.3 bar gauge"', '"15 bar gauge"', HOLD),
    ],
)
def test_pressures_in_order(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """Drifting may have more behind the piston than before it, and the test any pressure."""
    assert outcome(design.replace(file, old, new), "duty.pressures-in-order") == ends


def drifts_at(design: DesignFolder, live: str) -> DesignFolder:
    return design.replace(
        "duty.toml",
        '[cases.drifting]\nlive_pressure = "0 bar gauge"',
        f'[cases.drifting]\nlive_pressure = "{live}"',
    )


@pytest.mark.parametrize(("live", "ends"), [("16.6 bar gauge", FINE), ("16.7 bar gauge", HOLD)])
def test_a_case_that_names_no_safety_valves_has_those_of_the_others(
    design: DesignFolder, live: str, ends: tuple[str, Grade | None]
) -> None:
    """One boiler has one set: 16.6 bar by starting, whatever the block is designed for."""
    assert outcome(drifts_at(design, live), "duty.pressures-in-order") == ends


@pytest.mark.parametrize(("live", "ends"), [("17 bar gauge", FINE), ("17.1 bar gauge", HOLD)])
def test_where_nothing_names_safety_valves_the_design_pressure_is_the_limit(
    design: DesignFolder, live: str, ends: tuple[str, Grade | None]
) -> None:
    for running in ("16 bar gauge", "15.2 bar gauge ±0.3"):
        stated = f'live_pressure = "{running}"\n'
        design.replace("duty.toml", f'{stated}safety_valve_pressure = "16.6 bar gauge"\n', stated)
    assert outcome(drifts_at(design, live), "duty.pressures-in-order") == ends


@pytest.mark.parametrize(
    ("boiler", "live", "ends"),
    [
        ("16.8 bar gauge", "16.8 bar gauge", FINE),
        ("16.8 bar gauge", "16.9 bar gauge", HOLD),
        ("17 bar gauge", "0 bar gauge", FINE),
        ("17.1 bar gauge", "0 bar gauge", HOLD),
    ],
)
def test_the_safety_valves_of_the_boiler_come_before_those_of_a_case(
    design: DesignFolder, boiler: str, live: str, ends: tuple[str, Grade | None]
) -> None:
    """They limit a case that names none, and are not above the design pressure of 17 bar themselves."""
    engine = f'kind = "engine"\nid = "engine"\ncranks.only.block = "block"\nboiler.safety_valve_pressure = "{boiler}"\n'
    design.write({"engine.toml": engine})
    assert outcome(drifts_at(design, live), "duty.pressures-in-order") == ends


#: Relief valves set to 20 bar and 18.5 ± 0.3, and a duty whose water is at 19 bar.
RELIEVED = {
    "block.toml": BLOCK
    + '[ends.front]\nrelief_set = "20 bar gauge"\n[ends.back]\nrelief_set = "18.5 bar gauge ±0.3"\n',
    "duty.toml": DUTY + '[cases.water]\ncylinder_pressure = "19 bar gauge"\n',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("duty.toml", '"19 bar gauge"', '"18.5 bar gauge"', FINE),
        ("duty.toml", '"19 bar gauge"', '"18.4 bar gauge"', HOLD),
        ("duty.toml", '"19 bar gauge"', '"18.8 bar gauge ±0.3"', FINE),
        ("duty.toml", '"19 bar gauge"', '"18.7 bar gauge ±0.3"', HOLD),
        ("duty.toml", '"19 bar gauge"', '"12 bar gauge"', HOLD),
        ("duty.toml", '"19 bar gauge"', '"22 bar gauge"', FINE),
        ("block.toml", '"18.5 bar gauge ±0.3"', '"19 bar gauge"', FINE),
        ("block.toml", '"18.5 bar gauge ±0.3"', '"19.1 bar gauge"', HOLD),
        ("block.toml", '"20 bar gauge"', '"18 bar gauge"', FINE),
    ],
)
def test_water_is_not_below_the_lowest_relief_valve(
    tmp_path: Path, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """The setting as the drawing aims at it, what the duty says at its least; one end may be set higher."""
    design = DesignFolder(tmp_path).write(RELIEVED)
    assert outcome(design.replace(file, old, new), "duty.pressures-in-order") == ends


def test_what_is_compressed_without_water_may_be_below_the_relief_valves(tmp_path: Path) -> None:
    """Drifting compresses to 2.5 bar, which no relief valve is to let out."""
    design = DesignFolder(tmp_path).write(RELIEVED)
    design.replace("duty.toml", "[cases.drifting]", '[cases.drifting]\ncylinder_pressure = "2.5 bar gauge"')
    assert outcome(design, "duty.pressures-in-order") == FINE


def test_water_names_the_lowest_of_the_relief_valves(tmp_path: Path) -> None:
    design = DesignFolder(tmp_path).write(RELIEVED)
    design.replace("duty.toml", '"19 bar gauge"', '"16 bar gauge"')
    says = design.only("duty.pressures-in-order", "block").says
    assert "16 bar" in says
    assert "18.5 bar" in says


@pytest.mark.parametrize(("valves", "ends"), [("16.6 bar gauge", FINE), ("16.4 bar gauge", HOLD)])
def test_one_boiler(design: DesignFolder, valves: str, ends: tuple[str, Grade | None]) -> None:
    text = DUTY.replace("[cases.drifting]", f'[cases.drifting]\nsafety_valve_pressure = "{valves}"')
    (design.root / "duty.toml").write_text(text, encoding="utf-8")
    assert outcome(design, "duty.one-boiler") == ends


@pytest.mark.parametrize(
    ("speed", "ends"),
    [
        ("356.6 rev/min", FINE),
        ("356.4 rev/min", HOLD),
        ("387.6 rev/min", FINE),
        ("387.8 rev/min", HOLD),
        ("186 rev/min", HOLD),
    ],
)
def test_the_speed_of_the_wheel(design: DesignFolder, speed: str, ends: tuple[str, Grade | None]) -> None:
    """120 km/h is 33.333 m/s: /(π 1.750) × 60 = 363.78, less 2 % 356.51; /(π 1.675) × 60 = 380.07, and 2 % 387.67."""
    assert outcome(design.replace("duty.toml", "364 rev/min", speed), "duty.speed-of-wheel") == ends


@pytest.mark.parametrize(("gear", "ends"), [("2.58", FINE), ("1", HOLD)])
def test_a_geared_engine(design: DesignFolder, gear: str, ends: tuple[str, Grade | None]) -> None:
    """2.58 × 363.78 = 938.6 rev/min."""
    design.replace("block.toml", "[drive]", f'[drive]\ngear_ratio = "{gear}"')
    assert outcome(design.replace("duty.toml", "364 rev/min", "939 rev/min"), "duty.speed-of-wheel") == ends


def test_the_worn_wheel_is_wanted(design: DesignFolder) -> None:
    design.replace("block.toml", 'least_wheel_diameter = "1675 mm"\n', "")
    assert outcome(design, "duty.speed-of-wheel") == ("not assessed", Grade.HOLD)


def test_a_case_that_states_no_speed_has_none_to_compare(design: DesignFolder) -> None:
    design.replace("duty.toml", 'track_speed = "120 km/h"\n', "")
    assert design.only("duty.speed-of-wheel", "block").outcome == "not applicable"


@pytest.mark.parametrize(
    ("key", "value", "ends"),
    [
        ("rotational_speed", "364 rev/min", FINE),
        ("rotational_speed", "365 rev/min", HOLD),
        ("rotational_speed", "360 rev/min ±5", HOLD),
        ("track_speed", "120 km/h", FINE),
        ("track_speed", "121 km/h", HOLD),
    ],
)
def test_no_case_is_faster_than_running(
    design: DesignFolder, key: str, value: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("duty.toml", "[cases.drifting]\n", f'[cases.drifting]\n{key} = "{value}"\n')
    assert outcome(design, "duty.running-is-fastest") == ends


@pytest.mark.parametrize("line", ["[cases.running]", 'rotational_speed = "364 rev/min"\n'])
def test_a_duty_without_the_speed_of_running_has_none_to_compare(design: DesignFolder, line: str) -> None:
    design.replace("duty.toml", "[cases.drifting]\n", '[cases.drifting]\nrotational_speed = "400 rev/min"\n')
    design.replace("duty.toml", line, line.replace("running", "water") if "[" in line else "")
    assert outcome(design, "duty.running-is-fastest") == ("not applicable", None)


@pytest.mark.parametrize(
    ("stated", "ends"),
    [
        ('least_cylinder_pressure = "0.1 bar gauge"', FINE),  # the exhaust of drifting is at 0.1 bar
        ('least_cylinder_pressure = "0.101 bar gauge"', HOLD),
        ('least_cylinder_pressure = "-0.1 bar gauge"', FINE),
        ('cylinder_pressure = "0.1 bar gauge"', FINE),
        ('cylinder_pressure = "0.099 bar gauge"', HOLD),
        ('cylinder_pressure = "2.5 bar gauge"', FINE),
    ],
)
def test_the_cylinder_opens_to_the_exhaust(
    design: DesignFolder, stated: str, ends: tuple[str, Grade | None]
) -> None:
    drifting = '[cases.drifting]\nlive_pressure = "0 bar gauge"\n'
    changed = design.replace("duty.toml", drifting, f"{drifting}{stated}\n")
    assert outcome(changed, "duty.pressures-in-order") == ends


@pytest.mark.parametrize(
    ("case", "exhaust", "ends"),
    [
        ("warming", "3 bar gauge", FINE),  # as much as the live steam
        ("warming", "3.05 bar gauge", HOLD),
        ("starting", "3.05 bar gauge", HOLD),
        ("running", "3.05 bar gauge", HOLD),
        ("standing-hot", "3.05 bar gauge", FINE),  # an air pump may blow into it
    ],
)
def test_what_is_in_the_exhaust_has_come_through_the_cylinder(
    design: DesignFolder, case: str, exhaust: str, ends: tuple[str, Grade | None]
) -> None:
    duty = f'kind = "duty"\nid = "duty"\n[cases.{case}]\nlive_pressure = "3 bar gauge"\n'
    design.write({"block.toml": BLOCK, "duty.toml": f'{duty}exhaust_pressure = "{exhaust}"\n'})
    assert outcome(design, "duty.pressures-in-order") == ends
