"""What a check rests on, exactly and in words: a concession stands and falls with it."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.testing import SETTINGS, DesignFolder
from tests.tubes import DUTY, FILES, RACK, TUBE, tubes


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes()).write(FILES)


def test_what_a_check_rests_on_is_said_as_the_spec_says_it(shop: DesignFolder) -> None:
    assert shop.only("tube.stress").rests_on == {
        "tube bore": "100 mm ±0.5",
        "tube outside": "105 mm ±0.5",
        "tube pressure": "30 bar gauge",
        "limit allowable": "100 MPa",
    }


def test_every_load_case_and_every_linked_spec_is_in_it(shop: DesignFolder) -> None:
    case_stress = shop.only("tube.case-stress")
    assert case_stress.rests_on["duty cases.starting.live_pressure"] == "12 bar gauge"
    assert case_stress.rests_on["duty cases.running.live_pressure"] == "10 bar gauge"
    assert case_stress.consulted.ids == {"tube", "duty"}
    loose = shop.only("tube.loose-hot")
    assert loose.rests_on["tube held_in"] == "rack"
    assert loose.rests_on["expansion α"] == "11.7e-6/K to 12.3e-6/K"
    assert loose.consulted == {"tube", "rack"}


def test_a_tolerance_class_is_said_with_the_limits_its_table_gives(shop: DesignFolder) -> None:
    """ISO 286-1:2010, tables 1 and 2: 100 mm H7 is 100.000 to 100.035 mm."""
    shop.replace("tube.toml", "100 mm ±0.5", "100 mm H7")
    assert shop.only("tube.stress").rests_on["tube bore"] == "100 mm H7 (100 mm to 100.035 mm)"


def test_what_is_not_stated_is_part_of_it(shop: DesignFolder) -> None:
    shop.replace("tube.toml", 'pressure = "30 bar gauge"\n', "")
    assert shop.only("tube.stress").rests_on["tube pressure"] == "not stated"
    shop.write({"duty.toml": DUTY.replace("[cases.running]", "[cases.test]")})
    assert shop.only("tube.case-stress").rests_on["load case running"] == "not stated"


def test_a_spec_may_move_to_another_file(shop: DesignFolder) -> None:
    before = {check.rule.name: check.fingerprint for check in shop.assess().checks}
    (shop.root / "tube.toml").unlink()
    shop.write({"left/other name.toml": TUBE + 'id = "tube"\n'})
    assert {check.rule.name: check.fingerprint for check in shop.assess().checks} == before


def test_gauge_and_absolute_are_not_the_same(shop: DesignFolder) -> None:
    before = shop.only("tube.stress").fingerprint
    shop.replace("tube.toml", "30 bar gauge", "30 bar absolute")
    assert shop.only("tube.stress").fingerprint != before


def test_the_pressure_of_the_site_is_part_of_it_where_it_was_used(shop: DesignFolder) -> None:
    shop.replace("tube.toml", "30 bar gauge", "31 bar absolute")
    before = {check.rule.name: check.fingerprint for check in shop.assess().checks}
    shop.write({}, settings=SETTINGS.replace("1.01325", "0.95"))
    after = {check.rule.name: check.fingerprint for check in shop.assess().checks}
    assert {name for name in before if before[name] != after[name]} == {"tube.stress"}
    assert shop.only("tube.stress").rests_on["setting site pressure"] == "0.095 MPa"


def test_the_rack_of_another_tube_is_not_part_of_it(shop: DesignFolder) -> None:
    before = shop.only("tube.loose-hot").fingerprint
    shop.write({"other.toml": RACK.replace("106", "107")})
    assert shop.only("tube.loose-hot", "tube").fingerprint == before
