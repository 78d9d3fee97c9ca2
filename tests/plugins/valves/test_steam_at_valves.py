"""Rules of valves take the pressure against which a valve works from the cycle, where its cylinder has a gear."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.testing import DesignFolder, on_sheet
from tests.plugins.events.worked_engine import AT_20, worked_engine
from tests.plugins.known_metals import WITH_METALS

_SPRING = """
kind = "compression-spring"
material = "known-wire"
closes = "valve-{}"
shut_load = "900 N ±0.001"
relaxation = "2 %"
rate = "40 N/mm"
mass = "0.9 kg"
"""


def sprung(folder: Path, name: str, *gone: str, whole: bool = False) -> DesignFolder:
    """The engine of the worked cases with masses, springs and friction of one valve; some files left out."""
    files = {file: text for file, text in worked_engine().items() if file not in gone}
    more = {
        f"valve-{name}.toml": (
            "beats = 2",
            'beats = 2\nlift = "20 mm"\nmass = "4 kg"\nsupply_acts = "beyond the beats"'
            + ('\nopens = "upwards"' if whole else ""),
        ),
        f"spindle-{name}.toml": (
            'heated_length = "400 mm"',
            'heated_length = "400 mm"\nmass = "1.5 kg"\nfriction = "10 N"\ntrain_stiffness = "20 kN/mm"'
            + ('\nseal_diameter = "20 mm"\nleaves = "supply"\npushed = "shut"' if whole else ""),
        ),
        f"tappet-{name}.toml": ('clearance = "0.5 mm"', 'clearance = "0.5 mm"\nmass = "0.8 kg"'),
    }
    for file, (old, new) in more.items():
        files[file] = files[file].replace(old, new)
    files["spring.toml"] = _SPRING.format(name)
    warm = 'cam-box = "20 °C"\ncompression-spring = "60 °C"'
    files["duty.toml"] = files["duty.toml"].replace('cam-box = "20 °C"', warm)
    return DesignFolder(folder).write(files, settings=WITH_METALS)


@pytest.mark.parametrize(("side", "number"), [("front", 0), ("back", 1)])
def test_compression_lifts_a_valve_by_its_own_peak(tmp_path: Path, side: str, number: int) -> None:
    """The peak of the worked case of 20 % at 180 rev/min, where the closed form from the belt finds half of it."""
    check = sprung(tmp_path, f"inlet-{side}").only("valve.compression-lift", f"valve-inlet-{side}")
    assert on_sheet(check, "p") == pytest.approx(AT_20["admission"][number] * 1e3, rel=0.015)


def test_an_exhaust_valve_opens_against_the_pressure_at_release(tmp_path: Path) -> None:
    """At 20 % and 180 rev/min 2.24 bar; at 65 % and 60 rev/min, when the engine starts, 9.54 bar."""
    check = sprung(tmp_path, "exhaust-front", whole=True).only("spindle.stress", "spindle-exhaust-front")
    found = {round(float(step.value) / 1e5, 1) for step in check.steps if step.symbol == "p_r"}
    assert found <= {2.2, 9.5, 9.6}
    assert found


def test_without_a_gear_it_opens_against_the_boiler(tmp_path: Path) -> None:
    check = sprung(tmp_path, "exhaust-front", "gear.toml", whole=True).only(
        "spindle.stress", "spindle-exhaust-front"
    )
    assert not [step for step in check.steps if step.symbol == "p_r"]
