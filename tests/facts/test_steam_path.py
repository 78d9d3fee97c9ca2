"""Steam along a path, stage by stage: which section, which enthalpy, whose flow and which step each is worked with.

The formulae of steam and of losses are those of the handbook, which tests them; here each is asked with what a path
must give it.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import OutOfRange
from speclint.facts import steam_along
from speclint.facts.guided_valves import shift_at_seat
from speclint.facts.stages import (
    bore_of_pipe,
    flow_left,
    least_perimeter,
    pressure_after,
    radius_over_bore,
    relative_roughness,
)
from speclint.facts.steam_in_cylinders import error_of_pressures, highest_compression, works_with_steam
from speclint.facts.steam_states import SteamPath
from speclint.handbook.steam import bend_loss, mitre_loss, steam_enthalpy, wet_steam_enthalpy
from tests.facts.bench import Bench, bench

DUTY = """[cases.running]
live_pressure = "15 bar gauge"
live_temperature = "390 °C"
exhaust_pressure = "0.3 bar gauge"
exhaust_temperature = "170 °C"
steam_flow = "1 kg/s"
{}"""
PIPE = """
carries = "{}"
outside_diameter = "168.3 mm"
wall = "5.6 mm"
length = "3 m"
roughness = "0.05 mm"
bends = 2
bend_radius = "300 mm"
cylinders = {}
"""
PASSAGE = """
carries = "{}"
place = "passage"
follows = "{}"
area = "{}"
perimeter = "{}"
length = "0.5 m"
roughness = "0.2 mm"
bends = 0
mitres = {}
loss_coefficient = "0.3"
cylinders = 1
"""


def drawn(folder: Path, duty: str = "", **changed: str) -> Bench:
    files = {
        "duty duty": DUTY.format(duty),
        "steam-pipe pipe": PIPE.format("live steam", 1),
        "steam-passage wide": PASSAGE.format("live steam", "pipe", "40000 mm²", "800 mm", 1),
        "steam-passage narrow": PASSAGE.format("live steam", "wide", "10000 mm²", "100 mm", 0),
    }
    files = {name: changed.get(name.split()[1], text) for name, text in files.items()}
    return bench(folder, files, "pipe")


def along(on: Bench, *stages: str) -> SteamPath:
    return steam_along([on[one] for one in stages], on["duty"].cases["running"], on.sheet)


def worked(on: Bench) -> dict[str, float]:
    """The values on the sheet by their symbols."""
    return {one.symbol: float(one.value) for one in on.sheet.record.steps if one.symbol}


LIVE = ("pipe", "wide", "narrow")


def test_live_steam_starts_at_the_chest_with_its_temperature(tmp_path: Path) -> None:
    """15 bar above the 1.01325 of the site; 2 kg/s where a pipe feeds two cylinders."""
    on = drawn(tmp_path, pipe=PIPE.format("live steam", 2))
    path = along(on, *LIVE)
    assert path.flows[0].p == pytest.approx(16.01325e5)
    assert path.h == pytest.approx(steam_enthalpy(16.01325e5, 663.15))
    assert pytest.approx(663.15, abs=0.01) == path.flows[0].T
    assert [one.m for one in path.flows] == [2.0, 1.0, 1.0]
    assert [one.m_1 for one in path.flows] == [1.0, 1.0, 1.0]
    assert path.m == 1.0


@pytest.mark.parametrize(
    ("dryness", "wet"),
    [("", False), ('exhaust_dryness = "0.95"\n', True), ('exhaust_dryness = "1"\n', False)],
)
def test_exhaust_steam_has_the_enthalpy_of_its_dryness_where_it_is_wet(
    tmp_path: Path, dryness: str, wet: bool
) -> None:
    on = drawn(tmp_path, dryness, pipe=PIPE.format("exhaust steam", 1))
    path = along(on, "pipe")
    assert path.flows[0].p == pytest.approx(1.31325e5)
    expected = wet_steam_enthalpy(1.31325e5, 0.95) if wet else steam_enthalpy(1.31325e5, 443.15)
    assert path.h == pytest.approx(expected)


def test_a_section_is_that_of_its_bore_or_of_area_and_perimeter(tmp_path: Path) -> None:
    """157.1 mm; 40000 mm² in 800 mm: 4 × 0.04/0.8 = 200 mm; 10000 mm² have 354.5 mm at the least: 112.84 mm."""
    on = drawn(tmp_path)
    path = along(on, *LIVE)
    found = worked(on)
    assert (found["d_1"], found["d_2"], found["d_3"]) == pytest.approx((0.1571, 0.2, 0.112838), abs=1e-6)
    assert [one.A for one in path.flows] == pytest.approx([math.pi * 0.1571**2 / 4, 0.04, 0.01])


def test_the_losses_of_a_stage_are_friction_bends_corners_and_the_step_before_it(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    path = along(on, *LIVE)
    found, (first, second, third) = worked(on), path.flows
    assert found["ζ_1"] == pytest.approx(2 * found["ζ_b1"])
    r_d = 0.3 / (0.1683 - 2 * 0.0056)
    assert found["ζ_b1"] == pytest.approx(bend_loss(r_d=r_d, θ=math.pi / 2, f_T=found["f_T1"]))
    assert found["ζ_m2"] == pytest.approx(mitre_loss(θ=math.pi / 2, f_T=found["f_T2"]))
    assert found["r/d_1"] == pytest.approx(300 / 157.1)
    assert found["ζ_2"] == pytest.approx(found["ζ_m2"] + 0.3)
    assert found["ζ_3"] == pytest.approx(0.3)
    assert "f_T3" not in found, "without bends and corners"
    assert "ζ_s1" not in found, "before the first stage there is none"
    # wider: by the speed before it; narrower: by the speed after it
    assert found["Δp_s2"] == pytest.approx(found["ζ_s2"] * first.ρ * first.v**2 / 2)
    assert found["ζ_s2"] == pytest.approx((1 - first.A / 0.04) ** 2)
    assert found["Δp_s3"] == pytest.approx(found["ζ_s3"] * third.ρ * third.v**2 / 2)
    for number, one in enumerate(path.flows, 1):
        lost = found[f"Δp_f{number}"] + found[f"Δp_ζ{number}"] + found.get(f"Δp_s{number}", 0.0)
        assert found[f"Δp_{number}"] == pytest.approx(lost)
        assert found[f"p_{number + 1}"] == pytest.approx(one.p - lost)
    assert path.p == found["p_4"]
    assert second.p == found["p_2"]


def test_with_a_way_to_take_the_pressure_is_the_one_that_is_aimed_at(tmp_path: Path) -> None:
    """15 ± 1 bar gauge: 15 and that of the site."""
    wide = DUTY.replace("15 bar gauge", "15 bar gauge ±1").format("")
    files = {"duty duty": wide, "steam-pipe pipe": PIPE.format("live steam", 1)}
    on = bench(tmp_path, files, "pipe")
    case = on["duty"].cases["running"]
    path = steam_along([on["pipe"]], case, on.sheet, on.sheet.take_nominal)
    assert path.flows[0].p == pytest.approx(16.01325e5)


def test_what_cannot_be_is_refused_in_the_units_of_a_drawing() -> None:
    refusals: tuple[tuple[Callable[[], float], str], ...] = (
        (lambda: shift_at_seat(0.00022, 0.06, -0.0123), "guide of -12.3 mm has no length"),
        (lambda: bore_of_pipe(0.1, 0.05), "two walls of 50 mm leave no bore in a pipe of 100 mm"),
        (lambda: bore_of_pipe(0.1, 0.06), "two walls of 60 mm leave no bore in a pipe of 100 mm"),
        (lambda: least_perimeter(-2e-6), "area -2 mm² of a section is below 0"),
        (lambda: relative_roughness(5e-5, 0.0), "the bore must be above 0"),
        (lambda: radius_over_bore(0.3, 0.0), "the bore must be above 0"),
        (lambda: pressure_after(2e5, 3e5), "the stage would lose 3 bar of 2 bar"),
        (lambda: pressure_after(2e5, 2e5), "the stage would lose 2 bar of 2 bar"),
        (lambda: flow_left(1.0, 1.1), "a share of 1.1 is not between 0 and 1"),
        (lambda: flow_left(1.0, -0.1), "a share of -0.1 is not between 0 and 1"),
    )
    for say, told in refusals:
        with pytest.raises(OutOfRange) as refused:
            say()
        assert told in str(refused.value)
    assert (flow_left(2.0, 0.0), flow_left(2.0, 1.0), least_perimeter(0.0)) == (2.0, 0.0, 0.0)


# The steam in a cylinder


def cycle(greatest: float) -> Any:
    return SimpleNamespace(
        greatest_pressure=(greatest, 0.4),
        running=SimpleNamespace(supply=SimpleNamespace(chest=16e5)),
        compression_peak=9e5,
        end=SimpleNamespace(events=SimpleNamespace(admission=0.1)),
    )


def test_compression_counts_to_admission_or_to_where_it_passes_the_chest() -> None:
    assert highest_compression(cycle(17e5)) == (17e5, 0.4)
    assert highest_compression(cycle(16e5)) == (9e5, 0.1)
    assert highest_compression(cycle(15e5)) == (9e5, 0.1)


@pytest.mark.parametrize(
    ("name", "steam"), [("starting", True), ("running", True), ("drifting", False), ("standing-hot", False)]
)
def test_cylinders_work_with_steam_when_starting_and_running(name: str, steam: bool) -> None:
    assert works_with_steam(SimpleNamespace(name=name)) is steam  # type: ignore[arg-type]  # its name alone is asked


def test_the_pressures_of_a_cycle_may_be_off_by_a_tenth() -> None:
    error = error_of_pressures()
    assert (error.nominal, error.low, error.high) == (1.0, 0.9, 1.1)
