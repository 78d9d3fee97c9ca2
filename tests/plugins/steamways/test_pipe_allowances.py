"""pipe.wall-as-delivered and pipe.corrosion-allowance.

168.3 mm bent to 300 mm thins by 168.3/(168.3 + 1200) = 12.29993 % at the least.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, found, limit
from speclint_steamways.formulae.pipes import least_thinning
from tests.plugins.steamways.pipe import files

RULE = "pipe.wall-as-delivered"
FINE, HOLD = ("conforms", None), ("finding", Grade.HOLD)
MILL, BEND = 'mill_tolerance = "12.5 %"', 'bend_thinning = "15 %"'


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ("12.5 %", "7.5 %", FINE),
        ("12.5 %", "7.4 %", HOLD),
        ("12.5 %", "0 %", HOLD),
        ("15 %", "12.3 %", FINE),
        ("15 %", "12.2 %", HOLD),
        ("15 %", "2 %", HOLD),
        ("15 %", "12.3..16 %", FINE),
        ("15 %", "12.2..16 %", HOLD),
        # 168.3/(168.3 + 4 × 237) = 15.08 %, of 239 mm 14.97 %
        ('"300 mm"', '"239 mm"', FINE),
        ('"300 mm"', '"237 mm"', HOLD),
    ],
)
def test_from_both_sides(
    workshop: DesignFolder, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    check = workshop.write(files((old, new))).only(RULE)
    assert (check.outcome, check.grade) == wanted, check.says


def test_the_tolerance_of_the_mill_by_hand(workshop: DesignFolder) -> None:
    check = workshop.write(files(("12.5 %", "0 %"))).only(RULE)
    assert (found(check), limit(check)) == (0, pytest.approx(0.075))


def test_the_thinning_by_hand(workshop: DesignFolder) -> None:
    check = workshop.write(files(("15 %", "2 %"))).only(RULE)
    assert (found(check), limit(check)) == (pytest.approx(0.02), pytest.approx(168.3 / 1368.3))


@pytest.mark.parametrize("more", ["", "\nmill_tolerance = '0 %'"])
def test_a_wall_with_limits_of_its_own_needs_no_tolerance_of_the_mill(
    workshop: DesignFolder, more: str
) -> None:
    limited = (('wall = "5.6 mm"', f'wall = "5.6 mm +0.8/-0.2"{more}'), (MILL + "\n", ""))
    assert workshop.write(files(*limited)).only(RULE).outcome == "conforms"
    assert workshop.write(files(*limited, ("15 %", "2 %"))).only(RULE).outcome == "finding"


def test_elbows_are_formed_to_their_wall(workshop: DesignFolder) -> None:
    elbows = ("bends = 2", 'bends = 2\nbends_are = "formed elbows"')
    assert workshop.write(files(("15 %", "0.5 %"), elbows)).only(RULE).outcome == "conforms"
    bent = ("bends = 2", 'bends = 2\nbends_are = "bent from the pipe"')
    assert workshop.write(files(("15 %", "0.5 %"), bent)).only(RULE).outcome == "finding"
    assert workshop.write(files(("12.5 %", "0 %"), elbows)).only(RULE).outcome == "finding"


def test_a_straight_pipe_thins_nowhere(workshop: DesignFolder) -> None:
    straight = (("bends = 2", "bends = 0"), ("15 %", "0.5 %"))
    assert workshop.write(files(*straight)).only(RULE).outcome == "conforms"
    limited = ('wall = "5.6 mm"', 'wall = "5.6 mm ±0.2"')
    assert workshop.write(files(*straight, limited)).only(RULE).outcome == "not applicable"


@pytest.mark.parametrize("line", [MILL, BEND, 'wall = "5.6 mm"', "bends = 2", 'bend_radius = "300 mm"'])
def test_what_is_not_stated_is_asked_for(workshop: DesignFolder, line: str) -> None:
    check = workshop.write(files((line + "\n", ""))).only(RULE)
    assert check.outcome == "not assessed"


def test_a_bend_of_the_double_radius_thins_by_less_by_tema() -> None:
    """RCB-2.31, from memory: a tube of 19.05 mm bent to 38.1 mm is ordered 1 + 19.05/(4 × 38.1) = 1.125 as thick."""
    assert 1 / (1 - least_thinning(x=1.0, D=19.05e-3, R=38.1e-3)) == pytest.approx(1.125)


CORRODES, ASKED = "pipe.corrosion-allowance", ("finding", Grade.QUERY)
ALLOWED = 'corrosion_allowance = "1 mm"'


@pytest.mark.parametrize(
    ("allowance", "wanted"),
    [
        ("1.5 mm", FINE),
        ("0.76 mm", FINE),
        ("0.74 mm", ASKED),
        ("0.8 mm ±0.1", ASKED),
        ("0.15 mm", ASKED),
        ("0 mm", ASKED),
    ],
)
def test_a_pipe_has_something_to_lose(
    workshop: DesignFolder, allowance: str, wanted: tuple[str, Grade | None]
) -> None:
    """0.75 mm at the least."""
    check = workshop.write(files((ALLOWED, f'corrosion_allowance = "{allowance}"'))).only(CORRODES)
    assert (check.outcome, check.grade) == wanted, check.says


@pytest.mark.parametrize(
    ("metal", "outcome"),
    [
        ("tube-P235GH", "finding"),
        ("cast-steel-GP240GH", "finding"),
        ("stainless-1.4301", "not applicable"),
        ("bronze-CC480K", "not applicable"),
    ],
)
def test_steel_rusts(workshop: DesignFolder, metal: str, outcome: str) -> None:
    changes = (ALLOWED, 'corrosion_allowance = "0.2 mm"'), ("tube-16Mo3", metal)
    assert workshop.write(files(*changes)).only(CORRODES).outcome == outcome


def test_an_allowance_that_is_not_stated_is_asked_for(workshop: DesignFolder) -> None:
    check = workshop.write(files((ALLOWED + "\n", ""))).only(CORRODES)
    assert check.outcome == "not assessed"
    assert "corrosion_allowance" in check.says
