"""pairing.iron-on-steel-seat: a matter of record, over the outcomes of the fits' own rules."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable
from tests.plugins.valves import gear

RULE = "pairing.iron-on-steel-seat"


def test_an_iron_seat_whose_fit_was_checked_conforms(workshop: DesignFolder) -> None:
    found = workshop.write(gear.seat_files()).only(RULE, "seat")
    assert found.outcome == "conforms"
    assert "seat.retained-hot" in found.says


@pytest.mark.parametrize("lost", ["pressed_into", "outside_diameter", "bore"])
def test_an_iron_seat_whose_fit_could_not_be_checked_is_a_hold(workshop: DesignFolder, lost: str) -> None:
    """Any value that a rule of the fit needs: without it the rule is not assessed, and this one says which."""
    files = gear.seat_files()
    name = next(name for name, text in files.items() if 'kind = "valve-seat"' in text)
    lines = [line for line in files[name].splitlines() if not line.startswith(f"{lost} =")]
    assert len(lines) < len(files[name].splitlines()), f"the bench states no {lost}"
    found = workshop.write({**files, name: "\n".join(lines)}).only(RULE, "seat")
    assert found.grade is Grade.HOLD
    assert found.outcome == ("not assessed" if lost == "pressed_into" else "finding")


def test_a_seat_that_is_not_iron_in_steel_is_none_of_it(workshop: DesignFolder) -> None:
    files = gear.seat_files()
    for name, old, new in (("seat", "known-iron", "known-steel"), ("block", "known-steel", "known-iron")):
        text = files[f"{name}.toml"].replace(f'\nmaterial = "{old}"', f'\nmaterial = "{new}"', 1)
        check = workshop.write({**files, f"{name}.toml": text}).only(RULE, "seat")
        expect_not_applicable(check, "it is not iron in steel")
