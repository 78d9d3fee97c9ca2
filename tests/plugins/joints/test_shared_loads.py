"""A lubricator of 25 kg on two brackets."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed, expect_query, on_sheet
from tests.plugins.joints.brackets import BLOCK, BRACKET, DUTY, LUBRICATOR, settings
from tests.plugins.known_metals import METALS

RULE = "bracket.load-shared"


def _two(folder: DesignFolder, mine: str, theirs: str) -> DesignFolder:
    """Two brackets; what is written of the load of each is put into its table."""
    first = BRACKET + LUBRICATOR + mine
    second = BRACKET.replace('id = "bracket"', 'id = "other"') + LUBRICATOR + theirs
    files = {"metals.toml": METALS, "duty.toml": DUTY, "block.toml": BLOCK}
    return folder.write(files | {"bracket.toml": first, "other.toml": second}, settings=settings())


def _with(other: str, share: str) -> str:
    return f'shared_with = "{other}"\nshare = "{share}"\n'


@pytest.mark.parametrize(
    ("mine", "theirs", "outcome"),
    [("0.6", "0.4", "conforms"), ("0.6", "0.39", "finding"), ("0.55..0.65", "0.4", "finding")],
)
def test_together_they_take_all_of_it(workshop: DesignFolder, mine: str, theirs: str, outcome: str) -> None:
    """0.6 + 0.4 = 1; 0.55 + 0.4 at the least is 0.95."""
    check = _two(workshop, _with("other", mine), f'share = "{theirs}"\n').only(RULE, "bracket")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_each_bears_its_share(workshop: DesignFolder) -> None:
    """25 kg × 9.80665 × (1 + 2) = 735.5 N on one; 0.6 of it, 441.3 N, where another takes the rest."""
    check = _two(workshop, _with("other", "0.6"), 'share = "0.4"\n').only("bracket.welds-hold", "bracket")
    assert on_sheet(check, "W of lubricator") == pytest.approx(441.3, rel=1e-3)


def test_a_share_that_nobody_answers(workshop: DesignFolder) -> None:
    check = _two(workshop, 'share = "0.6"\n', "").only(RULE, "bracket")
    assert check.outcome == "finding"
    assert "no other bracket carries the rest of lubricator" in check.says
    expect_not_assessed(_two(workshop, _with("other", "0.6"), "").only(RULE, "bracket"), "share")
    silent = _two(workshop, 'shared_with = "other"\n', 'share = "0.4"\n').only(RULE, "bracket")
    expect_not_assessed(silent, "share")
    expect_not_applicable(_two(workshop, "", "").only(RULE, "bracket"), "shares no load")


def test_three_brackets_want_an_analysis(workshop: DesignFolder) -> None:
    _two(workshop, 'shared_with = ["other", "third"]\nshare = "0.4"\n', 'share = "0.4"\n')
    third = (BRACKET + LUBRICATOR).replace('id = "bracket"', 'id = "third"')
    (workshop.root / "third.toml").write_text(third, encoding="utf-8")
    expect_query(workshop.only(RULE, "bracket"), "shared by 3 brackets: an analysis by finite elements")


def test_who_is_named_by_another_shares_with_it(workshop: DesignFolder) -> None:
    """The other names this one; a third that has a load of the same name of its own is no partner."""
    _two(workshop, 'share = "0.6"\n', _with("bracket", "0.4"))
    pump = LUBRICATOR.replace("lubricator", "pump") + _with("bracket", "0.5")
    for name, load in (("third", LUBRICATOR + pump), ("fourth", pump)):
        text = BRACKET.replace('id = "bracket"', f'id = "{name}"') + load
        (workshop.root / f"{name}.toml").write_text(text, encoding="utf-8")
    check = workshop.only(RULE, "bracket")
    assert check.outcome == "conforms", check.says
    assert on_sheet(check, "y of lubricator") == pytest.approx(1.0)
