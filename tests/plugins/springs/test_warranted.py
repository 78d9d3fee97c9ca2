"""coil-spring.loss-as-warranted: what a maker warrants, against what the wire does."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.springs.spring import spring

RULE = "coil-spring.loss-as-warranted"
CASES = ("starting", "running", "drifting", "standing-hot")
DUTY = 'kind = "duty"\nid = "duty"\n' + "".join(
    f'[cases.{name}.temperatures]\ncompression-spring = "{{at}}"\n' for name in CASES
)


def stated(workshop: DesignFolder, loss: str, *changes: tuple[str, str], at: str = "160 °C") -> DesignFolder:
    """The spring on a duty of one temperature, with a loss as its maker warrants it."""
    files = spring(*changes, add=f'duty = "duty"\n{loss}')
    return workshop.write({**files, "duty.toml": DUTY.format(at=at)})


@pytest.mark.parametrize(
    ("loss", "conforms"),
    [("5.05 %", True), ("5.03 %", False), ("0 %", False), ("4..6 %", False), ("6 %", True)],
)
def test_a_loss_is_no_less_than_that_of_the_wire(workshop: DesignFolder, loss: str, conforms: bool) -> None:
    """VDSiCr at 160 °C loses 6 % at 800 MPa (from memory): 3.361 % at 448.12 MPa, and 1.5 times that 5.041 %."""
    check = stated(workshop, f'relaxation = "{loss}"\n').only(RULE)
    assert (check.outcome, check.grade) == (("conforms", None) if conforms else ("finding", Grade.QUERY))
    assert conforms or "relaxation of VDSiCr wire at 160 °C" in check.says


def test_the_hottest_case_is_the_worst(workshop: DesignFolder) -> None:
    files = spring(add='duty = "duty"\nrelaxation = "5.03 %"\n')
    duty = DUTY.format(at="160 °C")
    cold = duty.replace('"160 °C"', '"100 °C"', 3)
    for text, outcome in ((duty, "finding"), (cold, "finding"), (DUTY.format(at="100 °C"), "conforms")):
        assert workshop.write({**files, "duty.toml": text}).only(RULE).outcome == outcome


@pytest.mark.parametrize(
    ("loss", "changes", "why"),
    [
        ("", (), "no loss is stated"),
        ('relaxation = "5 %"\n', (('wire_grade = "VDSiCr"\n', ""),), "the grade of its wire is not stated"),
    ],
)
def test_without_a_loss_or_a_grade_there_is_nothing_to_compare(
    workshop: DesignFolder, loss: str, changes: tuple[tuple[str, str], ...], why: str
) -> None:
    check = stated(workshop, loss, *changes).only(RULE)
    assert check.outcome == "not applicable"
    assert why in check.says
