"""A cam shaft is turned at the arm on which the drive pins of its gear act, and by their rods."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_applicable

RULE = "shaft.driven-as-its-gear"
ROUND = 'kind = "shaft"\ndrive = { by = "cranks and rods", at = "400 mm", radius = "200 mm" }\n'
FILES = {
    "shaft.toml": ROUND,
    "second.toml": ROUND,
    "cam.toml": 'kind = "cam"\nturns_on = "shaft"\n',
    "other.toml": 'kind = "cam"\nturns_on = "second"\n',
    "gear.toml": """kind = "valve-gear"
[drive_pins]
rod = { clearance = "0.15 mm", ratio = "1", arm = "200 mm" }
coupling = { clearance = "0.15 mm", ratio = "1", arm = "150 mm" }
[notches.65]
inlet_front = { cam = "cam" }
exhaust_back = { cam = "other" }
""",
}
COUPLED = ROUND.replace("cranks and rods", "coupling")


def with_drive(workshop: DesignFolder, old: str, new: str, **others: str) -> DesignFolder:
    files = {**FILES, **{f"{name}.toml": text for name, text in others.items()}}
    return workshop.write({**files, "shaft.toml": files["shaft.toml"].replace(old, new)})


@pytest.mark.parametrize(
    ("radius", "holds"),
    [
        ("200 mm", True),
        ("200.09 mm", True),  # 0.1 mm
        ("200.11 mm", False),
        ("199.91 mm", True),
        ("199.89 mm", False),
        ("150 mm", True),  # the arm of the other pin
        ("400 mm", False),
    ],
)
def test_the_radius_is_an_arm_of_the_gear(workshop: DesignFolder, radius: str, holds: bool) -> None:
    check = with_drive(workshop, "200 mm", radius).only(RULE, "shaft")
    if holds:
        expect_conforms(check)
    else:
        expect_finding(check, grade=Grade.NONCONFORMITY, says="radius, drive")
        assert "arm, drive pins rod of gear 200 mm" in check.says


@pytest.mark.parametrize("by", ["coupling", "chain", "gear wheel"])
def test_rods_turn_one_shaft_of_a_gear_with_pins(workshop: DesignFolder, by: str) -> None:
    """One shaft may hand the turn on to the other; where no shaft is turned by rods, nothing takes what they press."""
    one = ROUND.replace("cranks and rods", by)
    expect_conforms(workshop.write(FILES).only(RULE, "second"))
    check = workshop.write({**FILES, "shaft.toml": one, "second.toml": one}).only(RULE, "second")
    expect_finding(
        check, grade=Grade.NONCONFORMITY, says="does not agree with the rods of the drive pins of gear, "
    )
    check = workshop.write({**FILES, "second.toml": one}).only(RULE, "second")
    expect_not_applicable(check)


def test_a_gear_without_pins_asks_nothing_of_its_shaft(workshop: DesignFolder) -> None:
    gear = "\n".join(line for line in FILES["gear.toml"].splitlines() if "clearance" not in line) + "\n"
    files = {**FILES, "gear.toml": gear, "shaft.toml": COUPLED, "second.toml": COUPLED}
    expect_not_applicable(workshop.write(files).only(RULE, "shaft"))


def test_one_pin_is_told_with_its_place(workshop: DesignFolder) -> None:
    gear = FILES["gear.toml"].replace(
        'coupling = { clearance = "0.15 mm", ratio = "1", arm = "150 mm" }\n', ""
    )
    files = {**FILES, "gear.toml": gear, "shaft.toml": COUPLED, "second.toml": COUPLED}
    check = workshop.write(files).only(RULE, "shaft")
    expect_finding(check, grade=Grade.NONCONFORMITY, says="rod, drive pins of gear (gear.toml:3")


def test_a_cam_that_names_no_shaft_hides_nothing(workshop: DesignFolder) -> None:
    gear = FILES["gear.toml"] + 'inlet_back = { cam = "loose" }\n'
    loose = {"gear.toml": gear, "loose.toml": 'kind = "cam"\n'}
    check = workshop.write({**FILES, **loose, "shaft.toml": COUPLED, "second.toml": COUPLED}).only(
        RULE, "shaft"
    )
    expect_finding(check, grade=Grade.NONCONFORMITY, says="the rods of the drive pins of gear")
