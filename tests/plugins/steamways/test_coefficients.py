"""steamway.flows-as-usual: a coefficient of discharge above the usual one says where it comes from."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "steamway.flows-as-usual"
VALVE = 'kind = "poppet-valve"\nid = "part"\n'
NOZZLE = 'kind = "blast-nozzle"\nid = "part"\n'
BREATHER = 'kind = "steam-passage"\nid = "part"\nplace = "breathing way"\n'


@pytest.mark.parametrize(
    ("spec", "value", "passes"),
    [
        (VALVE + "discharge_coefficient", "0.75", True),
        (VALVE + "discharge_coefficient", "0.76", False),
        (VALVE + "discharge_coefficient", "0.7..0.76", False),
        (VALVE + "port_discharge_coefficient", "0.9", True),
        (VALVE + "port_discharge_coefficient", "0.91", False),
        (VALVE + 'discharge_coefficient = "0.7"\nport_discharge_coefficient', "1", False),
        (BREATHER + "discharge_coefficient", "0.74", True),
        (BREATHER + "discharge_coefficient", "0.76", False),
        (NOZZLE + "discharge_coefficient", "0.98", True),
        (NOZZLE + "discharge_coefficient", "0.99", False),
    ],
)
def test_a_coefficient_is_at_most_the_usual_one(
    workshop: DesignFolder, spec: str, value: str, passes: bool
) -> None:
    check = workshop.write({"part.toml": f'{spec} = "{value}"\n'}).only(RULE)
    assert (check.outcome, check.grade) == (("conforms", None) if passes else ("finding", Grade.QUERY))


@pytest.mark.parametrize(("loss", "passes"), [("0.24", True), ("0.23", False), ("0.23..0.3", False)])
def test_a_loss_counts_as_the_coefficient_of_the_port(
    workshop: DesignFolder, loss: str, passes: bool
) -> None:
    """By hand: 1/√1.24 = 0.89803, below 0.90; 1/√1.23 = 0.90167, above it."""
    check = workshop.write({"part.toml": f'{VALVE}loss_coefficient = "{loss}"\n'}).only(RULE)
    assert check.outcome == ("conforms" if passes else "finding")


@pytest.mark.parametrize(
    ("source", "outcome"),
    [("measured", "not applicable"), ("calculated", "not applicable"), ("assumed", "finding")],
)
def test_a_test_or_a_calculation_explains_it(workshop: DesignFolder, source: str, outcome: str) -> None:
    given = f'discharge_coefficient = {{ value = "0.85", from = "{source}", note = "flow bench" }}\n'
    assert workshop.write({"part.toml": VALVE + given}).only(RULE).outcome == outcome
    other = f'{given}port_discharge_coefficient = "0.95"\n'
    assert workshop.write({"part.toml": VALVE + other}).only(RULE).outcome == "finding"


@pytest.mark.parametrize("spec", [VALVE, NOZZLE, BREATHER])
def test_where_none_is_stated_there_is_nothing_to_judge(workshop: DesignFolder, spec: str) -> None:
    assert workshop.write({"part.toml": spec}).only(RULE).outcome == "not applicable"
