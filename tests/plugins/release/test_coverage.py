"""release.share-assessed: counted by hand on a part whose checks are few."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.errors import replace
from speclint.families import Brought, Loaded
from speclint.testing import SETTINGS, DesignFolder, installed_families
from tests import tubes
from tests.tubes import FILES

RULE = "release.share-assessed"


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    """Tubes with their own five rules, none of the installed families' but the one on trial."""
    return made(tmp_path, tubes.tubes())


def made(folder: Path, own: Loaded) -> DesignFolder:
    """Tubes with rules of their own and that of the share."""
    trial = next(rule for rule in installed_families().rules if rule.name == RULE)
    loaded = replace(own, brought=(*own.brought, Brought("release", rules=(trial,))))
    return DesignFolder(folder, loaded).write({**FILES, "rack.toml": tubes.RACK})


def test_all_assessed_conforms(shop: DesignFolder) -> None:
    """Five rules on a tube, five assessed: 0.8 of the least share is used, 0.9 of the one that is good practice."""
    found = shop.only(RULE, "tube")
    assert (found.outcome, found.utilisation) == ("conforms", pytest.approx(0.9))


def test_one_of_five_is_an_observation(shop: DesignFolder) -> None:
    """Four of five assessed: 0.8, which is the least share, and less than the 0.9 that is good practice."""
    found = shop.replace("tube.toml", "hoops = 4\n", "").only(RULE, "tube")
    assert (found.outcome, found.grade) == ("finding", Grade.OBSERVATION)
    assert found.utilisation == pytest.approx(0.9 / 0.8)


def test_two_of_five_is_a_query(shop: DesignFolder) -> None:
    """Three of five: 0.6 lies below the least share of 0.8."""
    shop.replace("tube.toml", "hoops = 4\n", "").replace("tube.toml", 'ends = "open"\n', "")
    found = shop.only(RULE, "tube")
    assert (found.outcome, found.grade) == ("finding", Grade.QUERY)
    assert found.utilisation == pytest.approx(0.8 / 0.6)


def test_a_check_that_waits_for_another_file_does_not_count(shop: DesignFolder) -> None:
    """The rack of the tube cannot be read, which is told of the rack: four of the other four are assessed."""
    shop.replace("rack.toml", 'hole = "106 mm', 'hole = "106 mn')
    found = shop.only(RULE, "tube", readable=False)
    assert (found.outcome, found.utilisation) == ("conforms", pytest.approx(0.9))
    one_not = shop.replace("tube.toml", "hoops = 4\n", "").only(RULE, "tube", readable=False)
    assert (one_not.outcome, one_not.utilisation) == ("finding", pytest.approx(0.8 / 0.75))


def test_a_part_of_which_every_check_waits_is_not_assessed(tmp_path: Path) -> None:
    shop = made(tmp_path, tubes.tubes(tubes.loose_hot))
    found = shop.replace("rack.toml", 'hole = "106 mm', 'hole = "106 mn').only(RULE, "tube", readable=False)
    assert (found.outcome, found.says) == (
        "not assessed",
        "all its checks wait for files that could not be read",
    )


@rule(
    "tube.lined",
    title="the lining is whole",
    on=tubes.Tube,
    grade=Grade.QUERY,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def lined(_tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """A rule of tubes with a lining."""
    raise sheet.not_applicable("it has no lining")


def test_a_check_that_does_not_apply_does_not_count(tmp_path: Path) -> None:
    """Of six rules one does not apply and one is not assessed: four of five, 0.8, and not five of six."""
    shop = made(tmp_path, tubes.tubes(*tubes.RULES, lined))
    found = shop.replace("tube.toml", "hoops = 4\n", "").only(RULE, "tube")
    assert found.utilisation == pytest.approx(0.9 / 0.8)


def test_a_part_to_which_no_check_applies_is_said(tmp_path: Path) -> None:
    found = made(tmp_path, tubes.tubes(lined)).only(RULE, "tube")
    assert (found.outcome, found.grade) == ("finding", Grade.OBSERVATION)
    assert "no rule applies to a tube" in found.says


def test_the_least_share_is_the_works_own_to_set(shop: DesignFolder) -> None:
    limits = f'[limits."{RULE}"]\nleast = "0.5"\n'
    shop.write({}, settings=SETTINGS + limits)
    shop.replace("tube.toml", "hoops = 4\n", "").replace("tube.toml", 'ends = "open"\n', "")
    assert shop.only(RULE, "tube").grade is Grade.OBSERVATION


def test_a_kind_that_no_rule_concerns_is_said(shop: DesignFolder) -> None:
    found = shop.only(RULE, "rack")
    assert (found.outcome, found.grade) == ("finding", Grade.OBSERVATION)
    assert "no rule applies to a rack" in found.says
