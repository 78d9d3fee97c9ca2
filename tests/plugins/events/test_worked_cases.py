"""Values that a load case takes from the events, and temperatures that it leaves to an estimate."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.checking import Check, rule_run
from speclint.checking.worked_case import worked_case
from speclint.quantities import Measure
from speclint.specs import Component, Duty, LoadCase, Tie
from speclint.testing import DesignFolder, expect_not_assessed, installed_families, on_sheet
from tests.plugins.events.worked_engine import AT_20, judged, of_running, worked_engine
from tests.plugins.known_metals import WITH_METALS


def test_a_value_from_the_events_is_the_worked_one_and_says_so(tmp_path: Path) -> None:
    """Exhaust by the worked case 113.7 °C: 13.7 K above 100 °C of a passage."""
    check = judged(tmp_path, "events.area-enough")
    (step,) = (step for step in check.steps if step.symbol == "T_e")
    assert step.value == pytest.approx(273.15 + sum(AT_20["exhaust"]) / 2, abs=3)
    assert step.note == "calculated: gear, notch 20, 180 rev/min, both ends; calculated"


def test_the_band_of_the_corners_that_are_named(tmp_path: Path) -> None:
    """A chest of 15.4 to 17.0 bar takes some 5 % less and more steam; without tolerances there is no band."""
    files = worked_engine()

    def band() -> str:
        check = DesignFolder(tmp_path).write(files, settings=WITH_METALS).only("cycle.steam-rate")
        return next(step.note for step in check.steps if step.symbol == "m_1")

    assert band() == ""
    files["duty.toml"] = files["duty.toml"].replace("16.2 bar absolute", "16.2 bar absolute ±0.8")
    least, greatest = (float(end.split()[0]) / sum(AT_20["steam"]) for end in band().split(" to "))
    assert 0.93 < least < 0.97
    assert 1.03 < greatest < 1.07


def test_a_concession_rests_on_what_goes_in(tmp_path: Path) -> None:
    """Not on the last digits of a long calculation, which another machine may round otherwise."""
    check = judged(tmp_path, "events.area-enough")
    assert check.rests_on["duty cases.running.exhaust_temperature"].startswith("calculated: gear")
    again = judged(tmp_path, "events.area-enough", ("liner.toml", 'bore = "500 mm"', 'bore = "500.001 mm"'))
    assert again.fingerprint != check.fingerprint


def test_without_a_gear_a_value_from_the_events_is_not_assessed(tmp_path: Path) -> None:
    files = worked_engine(of_running('steam_flow = { from = "events" }'))
    del files["gear.toml"]
    valve = files["valve-exhaust-front.toml"]
    files["valve-exhaust-front.toml"] = valve.replace("beats = 2", 'beats = 2\nlift = "20 mm"')
    check = (
        DesignFolder(tmp_path).write(files, settings=WITH_METALS).only("valve.mach", "valve-exhaust-front")
    )
    expect_not_assessed(
        check, "cases.running.exhaust_temperature cannot be worked: no valve gear serves block"
    )


PISTON = 'kind = "piston"\nmaterial = "known-iron"\nruns_in = "liner"\n'


def estimated(folder: Path, lines: str) -> DesignFolder:
    files = worked_engine()
    duty = files["duty.toml"].split("[cases.running.temperatures]")
    files["duty.toml"] = f'{duty[0]}[cases.running.temperatures]\ncam-box = "20 °C"\n{lines}'
    return DesignFolder(folder).write({**files, "piston.toml": PISTON}, settings=WITH_METALS)


def band_of(check: Check, symbol: str) -> tuple[float, float]:
    return on_sheet(check, f"{symbol}_min"), on_sheet(check, f"{symbol}_max")


def test_a_block_is_estimated_from_the_steam_in_its_cylinder(tmp_path: Path) -> None:
    """Mean of the steam by the worked case 199.76 and 199.06 °C, ± 15 K; the valve takes the block's."""
    folder = estimated(
        tmp_path,
        'cylinder-block = "estimate"\npoppet-valve = "cylinder-block"\nvalve-spindle = "cylinder-block"\n',
    )
    check = folder.only("duty.metal-follows-steam", "block")
    low, high = band_of(check, "T")
    assert low == pytest.approx(273.15 + 199.4 - 15, abs=2.0)
    assert high == pytest.approx(273.15 + 199.4 + 15, abs=2.0)
    (step,) = (step for step in check.steps if step.symbol == "T_max")
    assert "an estimate, common practice: mean of the steam in the cylinder ± 15 K" in step.note
    assert [where.key for where in check.assumed] == ["cases.running.temperatures.cylinder-block"]


def test_parts_beside_are_estimated_from_one_another(tmp_path: Path) -> None:
    """Inlet valve 340 to 370 °C of 390; its spindle 60 to 100 K below; exhaust valve 10 to 40 K above 113.7 °C."""
    folder = estimated(
        tmp_path, 'cylinder-block = "200 °C"\npoppet-valve = "estimate"\nvalve-spindle = "estimate"\n'
    )
    check = folder.only("tappet.clearance-hot", "tappet-inlet-front")
    valve, spindle = on_sheet(check, "T_v"), on_sheet(check, "T_s")
    assert 340.0 - 1e-6 <= valve - 273.15 <= 370.0 + 1e-6
    assert 60.0 - 1e-6 <= valve - spindle <= 100.0 + 1e-6
    assert any("cases.running.temperatures" in where.key for where in check.assumed)
    ramps = folder.only("events.ramp-takes-clearance")
    assert on_sheet(ramps, "T_vef") - 273.15 == pytest.approx(113.7 + 25, abs=2.0)


@pytest.mark.parametrize(
    ("part", "kind", "low", "high"),
    [
        ("liner", "cylinder-liner", 200.0, 220.0),
        ("cover", "cylinder-cover", 170.0, 190.0),
        ("valve-inlet-front", "poppet-valve", 340.0, 370.0),
        ("seat-exhaust-front-upper", "valve-seat", 200.0, 220.0),
    ],
)
def test_the_band_of_what_is_estimated_from_the_block_and_the_steam(
    tmp_path: Path, part: str, kind: str, low: float, high: float
) -> None:
    """The block at 200 °C: its liner and the seats of exhaust valves 0 to 20 K hotter, its cover 10 to 30 K cooler;
    inlet valves of steam of 390 °C 20 to 50 K below.
    """
    others = "".join(f'{name} = "200 °C"\n' for name in ("poppet-valve", "valve-spindle") if name != kind)
    folder = estimated(tmp_path, f'cylinder-block = "200 °C"\n{others}{kind} = "estimate"\n')
    cover = 'kind = "cylinder-cover"\nid = "cover"\ncloses = "block"\nend = "front"\n'
    (tmp_path / "cover.toml").write_text(cover, encoding="utf-8")
    context = folder.assess("duty.toml").context
    assert context is not None
    spec, duty = context.design.specs[part], context.design.specs["duty"]
    assert isinstance(spec, Component)
    assert isinstance(duty, Duty)
    (rule,) = (rule for rule in installed_families().rules if rule.name == "valve.mach")
    case = worked_case(duty.cases["running"], rule, spec, context)
    assert isinstance(case, LoadCase)
    found = case.temperature_of(spec)
    assert isinstance(found, Tie)
    base, by = found.base, found.difference
    assert isinstance(base, Measure)
    assert (base.nominal + by.low - 273.15, base.nominal + by.high - 273.15) == pytest.approx((low, high))


def test_a_part_of_which_no_estimate_is_known_is_told(tmp_path: Path) -> None:
    lines = 'cylinder-block = "200 °C"\npoppet-valve = "200 °C"\nvalve-spindle = "200 °C"\n'
    folder = estimated(tmp_path, lines)
    folder.replace(
        "duty.toml",
        'cam-box = "20 °C"\ncylinder-block = "200 °C"',
        'cam-box = "estimate"\ncylinder-block = "200 °C"',
    )
    check = folder.only("events.lead")
    expect_not_assessed(check, "cannot be worked: no estimate is known for cam-box")


def test_a_concession_does_not_hang_on_which_part_asked_first(tmp_path: Path) -> None:
    """The valve of the front takes the value that was worked for that of the back, and rests on the same."""
    folder = DesignFolder(tmp_path).write(
        worked_engine(of_running('steam_flow = { from = "events" }')), settings=WITH_METALS
    )
    alone, after = folder.assess("duty.toml").context, folder.assess("duty.toml").context
    assert alone is not None
    assert after is not None
    (mach,) = (rule for rule in installed_families().rules if rule.name == "valve.mach")
    first, second = (after.design.specs[f"valve-exhaust-{end}"] for end in ("back", "front"))
    assert isinstance(first, Component)
    assert isinstance(second, Component)
    rule_run.check(mach, first, after)
    assert after.worked, "nothing was worked that the second could take over"
    assert rule_run.check(mach, second, after).fingerprint == rule_run.check(mach, second, alone).fingerprint


def taken(folder: Path, key: str, *changes: tuple[str, str, str]) -> Measure:
    """What the running case has of a key that it takes from the events, as a rule on the block is handed it."""
    asked = f'{key} = {{ from = "events" }}'
    files = worked_engine(*(() if key == "exhaust_temperature" else (of_running(asked),)), *changes)
    context = DesignFolder(folder).write(files, settings=WITH_METALS).assess("duty.toml").context
    assert context is not None
    block, duty = context.design.specs["block"], context.design.specs["duty"]
    assert isinstance(block, Component)
    assert isinstance(duty, Duty)
    (rule,) = (rule for rule in installed_families().rules if rule.name == "valve.mach")
    found: Measure = getattr(worked_case(duty.cases["running"], rule, block, context), key)
    assert isinstance(found, Measure)
    return found


def test_steam_has_the_band_of_the_corners_alone(tmp_path: Path) -> None:
    """Every corner of that engine is as drawn: what both ends of the worked case take, and no band."""
    found = taken(tmp_path, "steam_flow")
    assert found.nominal == pytest.approx(sum(AT_20["steam"]), rel=0.015)
    assert found.low == pytest.approx(found.high, rel=1e-9)


def test_steam_has_the_band_of_its_chest(tmp_path: Path) -> None:
    """15.4 to 17.0 bar for 16.2, by which steam goes: some 5 % less and more."""
    case = (
        'live_pressure = "15.2 bar gauge"\nexhaust_pressure = "0.35 bar gauge"\nlive_temperature = "390 °C"\n'
        'exhaust_temperature = { from = "events" }\nrotational_speed = "180 rev/min"'
    )
    banded = case.replace("15.2 bar gauge", "15.2 bar gauge ±0.8")
    found = taken(tmp_path, "steam_flow", ("duty.toml", case, banded))
    drawn = sum(AT_20["steam"])
    assert found.low / drawn == pytest.approx(0.95, abs=0.02)
    assert found.high / drawn == pytest.approx(1.05, abs=0.02)


def test_pressures_count_the_safety_valves_and_never_more_than_the_chest_gives(tmp_path: Path) -> None:
    """16.14 bar by the worked case; with the safety valves at 17.6 some 8.6 % more, and compression stays below."""
    usual = taken(tmp_path / "usual", "cylinder_pressure")
    most = max(AT_20["greatest"]) * 1e3
    assert (usual.low, usual.high) == (pytest.approx(most, rel=0.01), pytest.approx(most, rel=0.01))
    safety = ("duty.toml", 'notch = "20"', 'notch = "20"\nsafety_valve_pressure = "17.6 bar absolute"')
    lifting = taken(tmp_path / "lifting", "cylinder_pressure", safety)
    assert lifting.nominal == usual.nominal
    assert lifting.high == pytest.approx(most * 17.6 / 16.2, rel=0.01)


def test_compression_above_the_chest_counts_a_tenth_more(tmp_path: Path) -> None:
    tight = (
        "block.toml",
        'side = "front"\nclearance = "8 mm"\npassage_volume = "9500 cm³"',
        'side = "front"\nclearance = "3 mm"\npassage_volume = "3000 cm³"',
    )
    found = taken(tmp_path, "cylinder_pressure", tight)
    assert found.nominal > 16.2e5
    assert found.high == pytest.approx(1.35e5 + 1.1 * (found.nominal - 1.35e5), rel=1e-3)


@pytest.mark.parametrize(
    ("key", "celsius", "within"),
    [("cylinder_temperature", 199.4, 4.0), ("exhaust_temperature", 113.7, 4.0)],
)
def test_temperatures_of_the_steam(tmp_path: Path, key: str, celsius: float, within: float) -> None:
    """Means of the worked case, within its own tolerance of 4 K."""
    assert taken(tmp_path, key).nominal - 273.15 == pytest.approx(celsius, abs=within)


def test_steam_expands_and_is_compressed_between_its_temperatures(tmp_path: Path) -> None:
    """At release hotter than the exhaust of 113.7 °C, which it becomes, and below the mean of 199 °C."""
    release = taken(tmp_path / "release", "release_temperature")
    assert 113.7 < release.low - 273.15 < release.high - 273.15 < 199.0
    admission = taken(tmp_path / "admission", "admission_temperature")
    assert release.high < admission.low < admission.high < 390.0 + 273.15


def test_the_exhaust_is_as_dry_as_its_enthalpy_says(tmp_path: Path) -> None:
    """2700.03 kJ/kg at 1.35 bar, where dry steam has 2688.4 by IAPWS-IF97: dry. With steam of 250 °C it is wet."""
    assert taken(tmp_path / "dry", "exhaust_dryness").nominal == 1.0
    cool = [
        (
            "duty.toml",
            'live_temperature = "390 °C"\nexhaust_temperature = { from = "events" }\nrotational_speed = "180 rev/min"',
            'live_temperature = "250 °C"\nexhaust_temperature = { from = "events" }\nrotational_speed = "180 rev/min"',
        )
    ]
    wet = taken(tmp_path / "wet", "exhaust_dryness", *cool)
    assert 0.85 < wet.low <= wet.high < 0.97


def test_a_part_is_tied_to_the_steam_in_its_cylinder(tmp_path: Path) -> None:
    """A block 10 to 20 K above the mean of the steam, 199.4 °C."""
    folder = estimated(
        tmp_path,
        'cylinder-block = "cylinder_temperature + 10..20 K"\npoppet-valve = "150 °C"\nvalve-spindle = "150 °C"\n',
    )
    folder.replace("duty.toml", 'notch = "20"', 'notch = "20"\ncylinder_temperature = { from = "events" }')
    check = folder.only("duty.metal-follows-steam", "block")
    low, high = band_of(check, "T")
    assert low == pytest.approx(273.15 + 209.4, abs=4.0)
    assert high == pytest.approx(273.15 + 219.4, abs=4.0)
