"""piston.taper from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.motion.train import files

RULE = "piston.taper"
FINE, WRONG = ("conforms", None), ("finding", Grade.NONCONFORMITY)


@pytest.mark.parametrize(
    ("taper", "ends"),
    [
        ("1/25", FINE),
        ("0.0395", WRONG),
        ("1/50", WRONG),
        ("1/16", FINE),
        ("1/6", FINE),
        ("1/3", FINE),
        ("0.345", WRONG),
        ("1/2", WRONG),
    ],
)
def test_the_taper_of_a_piston(workshop: DesignFolder, taper: str, ends: tuple[str, Grade | None]) -> None:
    check = workshop.write(files("piston", ('taper = "1/12"', f'taper = "{taper}"'))).only(RULE)
    assert (check.outcome, check.grade) == ends, check.says


@pytest.mark.parametrize(
    ("change", "taper", "outcome"),
    [
        (('seat = "taper"', 'seat = "collar"'), "", "not applicable"),
        (('seat = "taper"', 'seat = "collar"'), 'taper = "1/12"', "finding"),
        (('by = "nut"', 'by = "forged in one"'), 'taper = "1/50"', "not applicable"),
    ],
    ids=["collar", "collar beside a taper", "forged"],
)
def test_no_taper_holds_a_piston_on_a_collar_or_of_one_piece(
    workshop: DesignFolder, change: tuple[str, str], taper: str, outcome: str
) -> None:
    check = workshop.write(files("piston", change, ('taper = "1/12"', taper))).only(RULE)
    assert check.outcome == outcome
    assert outcome != "finding" or "against a collar alone" in check.says


def test_a_taper_with_a_collar_is_judged(workshop: DesignFolder) -> None:
    made = files(
        "piston", ('seat = "taper"', 'seat = "taper and collar"'), ('taper = "1/12"', 'taper = "1/50"')
    )
    assert workshop.write(made).only(RULE).outcome == "finding"


@pytest.mark.parametrize("line", ['by = "nut"', 'seat = "taper"', 'taper = "1/12"'])
def test_what_is_not_stated_is_asked_for(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(files("piston", (line + "\n", ""))).only(RULE).outcome == "not assessed"
