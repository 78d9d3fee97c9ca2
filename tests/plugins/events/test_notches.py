"""Clearances on their ramps, and both directions."""

from __future__ import annotations

import math
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.testing import (
    DesignFolder,
    changed,
    expect_conforms,
    expect_finding,
    expect_not_assessed,
    on_sheet,
)
from speclint_events.rules import notches
from tests.plugins.events.gear import checked, files
from tests.plugins.known_metals import WITH_METALS

HOLDS, RAMP, BOTH = "events.clearance-holds", "events.ramp-takes-clearance", "events.both-directions"
_TAPPETS = [f"tappet-{serves}-{side}.toml" for serves in ("inlet", "exhaust") for side in ("front", "back")]


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


def worn(by: str) -> list[tuple[str, str, str]]:
    return [(file, 'seat_wear = "0.05 mm"', f'seat_wear = "{by} mm"') for file in _TAPPETS]


def clearance(of: str, mm: str) -> tuple[str, str, str]:
    return f"tappet-{of}.toml", 'clearance = "0.6 mm"', f'clearance = "{mm} mm"'


def test_shift_of_the_cut_off(folder: DesignFolder) -> None:
    """0.6 mm cold to 0.5 − y worn: (0.1 + y) 10°/1.1; at 112° at the back the piston makes 0.4945/rad, 0.00863 of its
    stroke a degree: 1.5 % are 1.738°, y = 0.0912 mm."""
    expect_conforms(checked(folder, HOLDS, *worn("0.0905")))
    expect_finding(checked(folder, HOLDS, *worn("0.092")))


def test_shift_of_the_lead(folder: DesignFolder) -> None:
    """2° are 0.22 mm, y = 0.12 mm: the sheet shows 1.991° with 0.119 mm."""
    check = checked(folder, HOLDS, *worn("0.119"))
    shifts = [step.value for step in check.steps if step.symbol == "Δφ_f"]
    assert shifts
    assert max(shifts) == pytest.approx(0.219 * 10 / 1.1 * 3.14159265 / 180, rel=1e-3)
    assert on_sheet(check, "φ_o2if") - on_sheet(check, "φ_o1if") == pytest.approx(on_sheet(check, "Δφ_f"))


def test_the_lead_shifts_from_both_sides(folder: DesignFolder) -> None:
    """2° are 0.22 mm: 0.1 + 0.12 worn. On ramps half as long the other inlets shift by 1° alone.

    The front of 20 % shuts from 48.55° to 50.55°, where (1 − cos φ + 0.08684 sin² φ)/2 grows by 1.475 % of the stroke.
    """
    cams = [f"cam-inlet-{side}-{notch}.toml" for side in ("front", "back") for notch in ("65", "35", "b")]
    steep = [(cam, 'ramp_angle = "10 °"', 'ramp_angle = "5 °"') for cam in cams]
    expect_conforms(checked(folder, HOLDS, *steep, *worn("0.119")))
    expect_finding(checked(folder, HOLDS, *steep, *worn("0.121")), says="2.009 °")


@pytest.mark.parametrize(
    ("holds", "fails"),
    [
        ("0.985", "0.995"),  # cold: 0.9 × 1.1 = 0.99 mm
        ("0.261", "0.259"),  # worn: 0.15 mm less, 0.1 × 1.1 = 0.11 mm
    ],
)
def test_a_clearance_lies_on_the_ramp(folder: DesignFolder, holds: str, fails: str) -> None:
    expect_conforms(checked(folder, RAMP, clearance("inlet-front", holds)))
    expect_finding(checked(folder, RAMP, clearance("inlet-front", fails)))


def test_a_doubled_clearance_draws_its_finding(folder: DesignFolder) -> None:
    """1.2 mm are more than the whole ramp."""
    expect_finding(checked(folder, RAMP, clearance("inlet-back", "1.2")), says="1.091")


def test_a_table_of_lifts_has_no_ramp(folder: DesignFolder) -> None:
    by_law = 'law = "3-4-5 polynomial"\nlift = "23.8 mm"\n'
    lifts = ", ".join(f'"{mm} mm"' for mm in (0, 1, 8, 16, 16, 8, 1, 0))
    by_table = f'table_step = "26 °"\ntable = [{lifts}]\n'
    expect_conforms(checked(folder, RAMP, ("cam-exhaust-back.toml", by_law, by_table)))
    expect_conforms(checked(folder, "events.opens", ("cam-exhaust-back.toml", by_law, by_table)))


def test_a_valve_that_never_leaves_its_seat(folder: DesignFolder) -> None:
    """A cam of 2 mm above a ramp of 1.1 mm: 3.1 mm."""
    low = ("cam-inlet-front-20.toml", 'lift = "9.5 mm"', 'lift = "2 mm"')
    expect_conforms(checked(folder, "events.opens", low, clearance("inlet-front", "3.0")))
    expect_finding(checked(folder, "events.opens", low, clearance("inlet-front", "3.2")))


def test_a_notch_for_each_direction(folder: DesignFolder) -> None:
    expect_conforms(checked(folder, BOTH))
    one_way = checked(folder, BOTH, ("gear.toml", 'direction = "backward"', 'direction = "forward"'))
    expect_finding(one_way, says="no notch runs backward")


def test_a_cam_read_backwards_that_is_not_made_for_it(folder: DesignFolder) -> None:
    """Of the worked cases: on the cams of 35 % an engine run backwards takes its steam from −72° to 6°."""
    text = ('[notches.b.inlet_front]\ncam = "cam-inlet-front-b"\nfoot = "-9.5 °"',)
    fixed = '[notches.b.inlet_front]\ncam = "cam-inlet-front-65"\nfoot = "-107 °"'
    expect_finding(checked(folder, BOTH, ("gear.toml", *text, fixed)), says="not in an order")


@pytest.mark.parametrize(
    ("turned", "fails"), [("", True), ("cams_turn = true\n", False), ("cams_turn = false\n", True)]
)
def test_one_cam_in_both_directions_has_one_setting(folder: DesignFolder, turned: str, fails: bool) -> None:
    """Forwards the foot stands at −9.5°, backwards that would be at −107°, not −9.5°: 97.5° apart."""
    old = '[notches.b.inlet_front]\ncam = "cam-inlet-front-b"'
    shared = "gear.toml", old, '[notches.b.inlet_front]\ncam = "cam-inlet-front-65"'
    check = checked(
        folder, BOTH, shared, ("gear.toml", 'drive_play = "0.1 °"\n', f'drive_play = "0.1 °"\n{turned}')
    )
    if fails:
        expect_finding(check, says="97.5 °")
    else:
        expect_conforms(check)


@pytest.mark.parametrize(("foot", "fails"), [("104.97", False), ("105.03", True)])
def test_two_settings_of_one_cam_from_both_sides(folder: DesignFolder, foot: str, fails: bool) -> None:
    """An exhaust cam of 10 + 56 + 20 + 56 + 10 = 152°, read backwards, has its foot at 360 − 104 − 152 = 104°."""
    gear = files()["gear.toml"].replace(
        'cam = "cam-exhaust-front"\nfoot = "140 °"', 'cam = "cam-exhaust-front"\nfoot = "104 °"'
    )
    gear = changed(
        gear, ('cam = "cam-exhaust-front-b"\nfoot = "140 °"', f'cam = "cam-exhaust-front"\nfoot = "{foot} °"')
    )
    made = files(("cam-exhaust-front.toml", 'dwell_angle = "50 °"', 'dwell_angle = "20 °"'))
    check = folder.write({**made, "gear.toml": gear}, settings=WITH_METALS).only(BOTH)
    (expect_finding if fails else expect_conforms)(check)


@pytest.mark.parametrize(
    ("foot", "turned", "fails"),
    [
        ("140.98", "", False),
        ("139.02", "", False),
        ("-219.02", "", False),  # a turn back
        ("141.02", "", True),
        ("141.02", "cams_turn = true\n", False),
    ],
)
def test_a_fixed_cam_has_one_setting_in_the_notches_of_one_direction(
    folder: DesignFolder, foot: str, turned: str, fails: bool
) -> None:
    """The cam of the front exhaust works at 140° in the notches 65 and 20, and here otherwise in 35."""
    of_35 = f'[notches.35.exhaust_front]\ncam = "cam-exhaust-front"\nfoot = "{foot} °"'
    gear = changed(
        files()["gear.toml"],
        ('[notches.35.exhaust_front]\ncam = "cam-exhaust-front"\nfoot = "140 °"', of_35),
        ('drive_play = "0.1 °"\n', f'drive_play = "0.1 °"\n{turned}'),
    )
    check = folder.write({**files(), "gear.toml": gear}, settings=WITH_METALS).only(BOTH)
    (expect_finding if fails else expect_conforms)(check)


def test_each_cam_is_compared_with_its_first_notch_alone(folder: DesignFolder) -> None:
    """The exhaust cams work in the notches 65, 35 and 20, each other cam in one: two comparisons at either end."""
    check = checked(folder, BOTH)
    assert sorted(step.symbol for step in check.steps if step.symbol.startswith("Δφ")) == [
        "Δφ_eb",
        "Δφ_eb",
        "Δφ_ef",
        "Δφ_ef",
    ]


def test_a_gear_without_any_cam_is_not_assessed(folder: DesignFolder) -> None:
    gear = files()["gear.toml"]
    bare = gear[: gear.index("[notches.65]")]
    check = folder.write({**files(), "gear.toml": bare}, settings=WITH_METALS).only(RAMP)
    expect_not_assessed(check, "no notch of gear names a cam")


def test_a_train_that_does_not_give_way_is_judged_by_its_clearance_alone(folder: DesignFolder) -> None:
    check = checked(folder, RAMP)
    assert {step.symbol for step in check.steps if step.symbol.startswith("y")} == {
        "y_if",
        "y_ef",
        "y_ib",
        "y_eb",
    }


@pytest.mark.parametrize(
    ("in_order", "how"), [(True, "in their order"), (False, "not in an order in which the engine runs")]
)
def test_the_order_of_the_valves_is_told_with_their_angles(
    monkeypatch: pytest.MonkeyPatch, in_order: bool, how: str
) -> None:
    angles = {"admission": -6.0, "cut_off": 53.0, "release": 144.5, "compression": 317.5}
    radians = {event: math.radians(angle) for event, angle in angles.items()}
    monkeypatch.setattr(
        notches, "hot_events", lambda _end, _sheet: SimpleNamespace(**radians, in_order=in_order)
    )
    end: Any = SimpleNamespace(id="notch 20, front")
    sheet: Any = SimpleNamespace(states=lambda holds, says: (holds, says))
    assert notches._in_order(end, sheet) == (
        in_order,
        f"notch 20, front: the valves act {how}: admission -6.0°, cut-off 53.0°, release 144.5°, compression 317.5°",
    )
