"""The thrust of the steam in a cylinder bored out to its last: (527/500)² = 1.110916 times that of the new bore."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, expect_not_assessed, on_sheet
from tests.plugins.motion.test_bar_bolts import SUPPORTS
from tests.plugins.motion.test_bodies import bolts, crowned, held
from tests.plugins.motion.test_pin_seats import IN_WHEEL
from tests.plugins.motion.train import DUTY, files

BORED = 1.110916
#: Turned so slowly that every force is the steam's.
SLOW = DUTY.replace("360", "1")
BODY = ("neck_area", "12000 mm²"), ("boss_diameter", "200 mm"), ("boss_width", "60 mm")


def _bored(made: dict[str, str], last: str, duty: str = SLOW) -> dict[str, str]:
    liner = made["liner.toml"]
    assert '"500.0 mm"' in liner
    return {**made, "liner.toml": liner.replace('"500.0 mm"', f'"{last}"'), "duty.toml": duty}


def _crosshead() -> dict[str, str]:
    return files("crosshead", add="".join(f'{key} = "{value}"\n' for key, value in BODY))


@pytest.mark.parametrize(
    ("rule", "component", "symbol", "made"),
    [
        ("rod.tension", "rod", "F_t", files()),
        ("rod.tension", "rod", "F_c", files()),
        ("rod.buckling", "rod", "F_w", files()),
        ("piston.fastening", "piston", "F_t", files()),
        ("crosshead.strength", "crosshead", "F", _crosshead()),
        ("crosshead.holds-its-rod", "crosshead", "F", held(bolts("100..130 kN"), "split pin")),
        ("crosshead.slide-pressure", "crosshead", "N", files()),
        ("slidebar.deflection", "bar", "y", files()),
        ("slidebar.bolted", "bar", "N", files("bar", add=SUPPORTS)),
        ("pin.bearing-pressure", "pin", "F_c", files()),
        ("pin.bending", "crank-pin", "F_c", files()),
        ("pin.held", "crank-pin", "F_c", files("crank-pin", add=IN_WHEEL)),
    ],
)
def test_the_thrust_is_that_of_the_last_bore(
    workshop: DesignFolder, rule: str, component: str, symbol: str, made: dict[str, str]
) -> None:
    new, last = (
        on_sheet(workshop.write(_bored(made, bore)).only(rule, component), symbol)
        for bore in ("500 mm", "527 mm")
    )
    assert last / new == pytest.approx(BORED, rel=1e-5)


@pytest.mark.parametrize(
    "rule", ["rod.tension", "piston.fastening", "crosshead.slide-pressure", "pin.bending"]
)
def test_a_liner_has_to_state_its_last_bore(workshop: DesignFolder, rule: str) -> None:
    made = files()
    made["liner.toml"] = made["liner.toml"].replace('last_bore = "500.0 mm"\n', "")
    component = "crank-pin" if rule == "pin.bending" else ""
    expect_not_assessed(workshop.write(made).only(rule, component), "last_bore")


@pytest.mark.parametrize(("load", "outcome"), [("665.9", "conforms"), ("665.8", "finding")])
def test_the_proof_load_at_the_last_bore(workshop: DesignFolder, load: str, outcome: str) -> None:
    """1.5 · 399.5713 · 1.110916 = 665.835 kN, with water."""
    made = files("piston", ("600 kN", f"{load} kN"))
    assert workshop.write(_bored(made, "527 mm", DUTY)).only("piston.fastening").outcome == outcome


def test_inertia_is_compared_with_the_steam_on_the_new_bore(workshop: DesignFolder) -> None:
    """On the least piston the same masses count the most, whatever the liner is bored to later."""
    new, last = (
        workshop.write(_bored(files(), bore, DUTY)).only("piston.inertia") for bore in ("500 mm", "527 mm")
    )
    assert on_sheet(new, "x") == on_sheet(last, "x")
    assert on_sheet(last, "F_p") == pytest.approx(325_940, rel=1e-5)


@pytest.mark.parametrize("form", ["one wall", "two walls"])
def test_the_wall_of_a_piston_bears_the_steam_on_the_last_bore(workshop: DesignFolder, form: str) -> None:
    made = crowned(40.0, form)
    new, last = (
        on_sheet(workshop.write(_bored(made, bore)).only("piston.crown"), "σ")
        for bore in ("500 mm", "527 mm")
    )
    assert last > 1.05 * new
