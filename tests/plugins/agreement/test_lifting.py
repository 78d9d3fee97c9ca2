"""The lifting plan and the parts on the hook: each agreement from both sides, and what the eyes then carry.

A liner of 500 mm bore, 580 mm outside and 900 mm length, of 7200 kg/m³: 7200 × π/4 (0.58² - 0.5²) × 0.9 = 439.7 kg. Its
collar of 640 mm and 25 mm beyond: 7200 × π/4 (0.64² - 0.5²) × 0.025 = 22.6 kg.
"""

from __future__ import annotations

import math

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, on_sheet
from tests.plugins.clearances.test_lifting import PLAN, lifted

HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)
LINER = """
kind = "cylinder-liner"
id = "liner"
material = "known-iron"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
outside_diameter = "580 mm"
length = "900 mm"
[collar]
diameter = "640 mm"
thickness = "25 mm"
"""
WELDMENT = 'kind = "weldment"\nid = "weldment"\nmakes = "block"\nmass = "{mass}"\n'
_LINER = 7200 * math.pi / 4 * ((0.58**2 - 0.5**2) * 0.9 + (0.64**2 - 0.5**2) * 0.025)


def loaded(
    workshop: DesignFolder, *changes: tuple[str, str], liner: str = "462.3 kg", welded: str = "1500 kg"
) -> DesignFolder:
    """The block as welded, of 1500 kg by the plan, and its liner instead of the covers."""
    plan = changed(
        PLAN,
        ("[weights.block]\n", '[weights.block]\nof = "weldment"\n'),
        ('[weights.covers]\nmass = "500 kg"', f'[weights.liner]\nof = "liner"\nmass = "{liner}"'),
        *changes,
    )
    lifted(workshop, text=plan)
    (workshop.root / "liner.toml").write_text(LINER, encoding="utf-8")
    (workshop.root / "weldment.toml").write_text(WELDMENT.format(mass=welded), encoding="utf-8")
    return workshop


def judged(workshop: DesignFolder) -> tuple[str, Grade | None]:
    found = workshop.only("lifting.mass-complete", "plan")
    return found.outcome, found.grade


@pytest.mark.parametrize(
    ("liner", "wanted"), [("417 kg", FINE), ("415 kg", HOLD), ("508 kg", FINE), ("510 kg", HOLD)]
)
def test_a_liner_weighs_what_its_sizes_give(
    workshop: DesignFolder, liner: str, wanted: tuple[str, Grade | None]
) -> None:
    """462.3 kg, less and more a tenth: 416.1 and 508.6 kg."""
    assert pytest.approx(462.3, abs=0.05) == _LINER
    assert judged(loaded(workshop, liner=liner)) == wanted


@pytest.mark.parametrize(
    ("welded", "wanted"), [("1666 kg", FINE), ("1667 kg", HOLD), ("1364 kg", FINE), ("1363 kg", HOLD)]
)
def test_a_block_weighs_what_its_weldment_states(
    workshop: DesignFolder, welded: str, wanted: tuple[str, Grade | None]
) -> None:
    """1500 kg are 0.9 × 1666.7 and 1.1 × 1363.6 kg."""
    assert judged(loaded(workshop, welded=welded)) == wanted


@pytest.mark.parametrize(("welded", "wanted"), [("1649 kg", FINE), ("1650 kg", HOLD)])
def test_all_together_carry_what_no_weight_names(
    workshop: DesignFolder, welded: str, wanted: tuple[str, Grade | None]
) -> None:
    """1500 and 400 kg that name no part, against 0.9 × (1649 or 1650 + 462.3): 1900.2 and 1901.1 kg."""
    loaded(workshop, ('of = "weldment"\n', ""), ('of = "liner"\n', ""), liner="400.5 kg", welded=welded)
    assert judged(workshop) == wanted


def test_a_liner_put_in_afterwards_is_no_load(workshop: DesignFolder) -> None:
    """1500 kg hang at 0.8 m of 2 m, and no more; the plan says so in so many words."""
    loaded(workshop, ('of = "liner"\n', 'of = "liner"\nin_place = false\n'))
    assert judged(workshop) == FINE
    assert on_sheet(workshop.only("lifting.points", "plan"), "m") == 1500.0
    assert judged(loaded(workshop, ('of = "liner"\nmass = "462.3 kg"', 'mass = "10 kg"'))) == HOLD


def pressed(workshop: DesignFolder, steps: str, more: str = "") -> DesignFolder:
    """The liner said to be put in after the lift, and the steps of the block."""
    loaded(workshop, ('of = "liner"\n', 'of = "liner"\nin_place = false\n'))
    for name, text in (("block", f"[making]\nsteps = [{steps}]\n"), ("liner", more)):
        file = workshop.root / f"{name}.toml"
        file.write_text(f"{file.read_text(encoding='utf-8')}\n{text}", encoding="utf-8")
    return workshop


@pytest.mark.parametrize(
    ("steps", "at", "wanted"),
    [
        ('"press liners", "lift in"', "", HOLD),
        ('"press liners", "lift in", "press liners 2"', "", HOLD),
        ('"press liners", "lift in", "press liners 2"', '[making]\nat_step = "press liners 2"\n', FINE),
        ('"press liners", "press liners 2", "lift in"', '[making]\nat_step = "press liners 2"\n', HOLD),
        ('"lift in", "press liners"', "", FINE),
        ('"press liners"', "", FINE),
        ('"lift in"', "", FINE),
    ],
)
def test_a_liner_that_goes_in_before_the_lift_is_load(
    workshop: DesignFolder, steps: str, at: str, wanted: tuple[str, Grade | None]
) -> None:
    """1500 kg on the hook, and 0.9 × (1500 + 462.3) = 1766 kg wanted."""
    assert judged(pressed(workshop, steps, at)) == wanted


@pytest.mark.parametrize(("lifts", "wanted"), [("block", FINE), ("liner", HOLD)])
def test_another_plan_may_lift_the_block_with_its_liner(
    workshop: DesignFolder, lifts: str, wanted: tuple[str, Grade | None]
) -> None:
    """This one lifts the block bare; one that lifts the liner alone is no such plan."""
    plan = f'kind = "lifting-plan"\nid = "other"\nlifts = "{lifts}"\n[weights.liner]\nof = "liner"\n'
    (workshop.root / "other.toml").write_text(plan, encoding="utf-8")
    assert judged(pressed(workshop, '"press liners", "lift in"')) == wanted


@pytest.mark.parametrize("liner", ["462.3 kg", "46.23 kg"])
def test_a_wrong_weight_eases_no_eye(workshop: DesignFolder, liner: str) -> None:
    """The eyes carry 1500 + 462.3 kg whatever the plan says of the liner."""
    found = loaded(workshop, liner=liner).only("lifting.points", "plan")
    assert on_sheet(found, "m") == pytest.approx(1500 + _LINER, abs=0.05)


def test_a_weight_that_states_no_mass_has_that_of_its_part(workshop: DesignFolder) -> None:
    loaded(workshop, ('mass = "462.3 kg"\n', ""))
    assert judged(workshop) == FINE
    found = workshop.only("lifting.points", "plan")
    assert on_sheet(found, "m") == pytest.approx(1500 + _LINER, rel=1e-9)


def test_a_plan_that_overstates_is_lifted_as_stated(workshop: DesignFolder) -> None:
    found = loaded(workshop, liner="500 kg").only("lifting.points", "plan")
    assert on_sheet(found, "m") == 2000.0
