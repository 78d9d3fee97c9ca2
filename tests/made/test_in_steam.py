"""A part hotter in steam than its duty assumes: the rules are run again with what was measured.

Block and liner at 200 °C: interference 0.3 mm on 560 mm. Cast iron grows by 11.7e-6/K and steel by 12.7e-6/K, so that
hot the fit loses 560 × 180 × 1e-6 = 0.1 mm. With the liner at 250 °C in a block at 200 °C it gains about
560 × 50 × 11.7e-6 = 0.33 mm instead; with the liner at 150 °C it loses as much, and is loose.
"""

from __future__ import annotations

import pytest

from speclint.made import PartMade, judge
from speclint.testing import DesignFolder, changed
from tests.made.test_judging import DRAWN
from tests.plugins.liners.bench import bench
from tests.plugins.release.test_steamings import BAND, STEAMED


def judged(workshop: DesignFolder, value: str, **files: str) -> PartMade:
    made = changed(STEAMED, ("VALUE", value))
    named = {f"{name}.toml": text for name, text in files.items()}
    drawn = workshop.write({**bench(DRAWN, BAND), "liner-7.toml": made, **named}).assess()
    assert not drawn.complaints
    return next(one for one in judge(drawn).parts if one.made.id == "liner-7")


def test_within_its_duty_nothing_changes(workshop: DesignFolder) -> None:
    part = judged(workshop, "200 °C")
    assert (part.outcome, part.failing, part.outside_duty) == ("as drawn", (), ())
    assert judged(workshop, "209 °C").outcome == "undecided"


def test_a_liner_colder_than_assumed_loses_its_grip_and_that_is_told(workshop: DesignFolder) -> None:
    part = judged(workshop, "150 °C")
    assert part.outcome == "outside its duty"
    assert "liner.fit-hot" in {one.rule.name for one in part.failing}
    assert [(one.value.key, one.verdict) for one in part.in_steam] == [("temperatures.liner", "out")]
    pair = next(one for one in part.pairs if one.made.rule.name == "liner.fit-hot")
    assert pair.made.case == "running"
    assert (pair.made.utilisation or 0) > (pair.drawn.utilisation or 0)

    stretched = part.in_steam[0].value.stretched  # 190..210 °C assumed, 148..152 °C measured
    assert stretched.text == "148..210 °C"
    assert (stretched.low, stretched.high) == pytest.approx((421.15, 483.15))
