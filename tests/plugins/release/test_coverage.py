"""release.share-assessed: counted by hand on a part whose checks are few."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from speclint import Grade
from speclint.families import Brought
from speclint.testing import SETTINGS, DesignFolder, installed_families
from tests import tubes
from tests.tubes import FILES

RULE = "release.share-assessed"


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    """Tubes with their own five rules, none of the installed families' but the one on trial."""
    own = tubes.tubes()
    trial = next(rule for rule in installed_families().rules if rule.name == RULE)
    loaded = replace(own, brought=(*own.brought, Brought("release", rules=(trial,))))
    return DesignFolder(tmp_path, loaded).write({**FILES, "rack.toml": tubes.RACK})


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


def test_the_least_share_is_the_works_own_to_set(shop: DesignFolder) -> None:
    limits = f'[limits."{RULE}"]\nleast = "0.5"\n'
    shop.write({}, settings=SETTINGS + limits)
    shop.replace("tube.toml", "hoops = 4\n", "").replace("tube.toml", 'ends = "open"\n', "")
    assert shop.only(RULE, "tube").grade is Grade.OBSERVATION


def test_a_kind_that_no_rule_concerns_is_said(shop: DesignFolder) -> None:
    found = shop.only(RULE, "rack")
    assert (found.outcome, found.grade) == ("finding", Grade.OBSERVATION)
    assert "no rule applies to a rack" in found.says
