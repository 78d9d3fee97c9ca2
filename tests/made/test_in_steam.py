"""A part hotter in steam than its duty assumes: the rules are run again with what was measured.

Block and liner at 200 °C: interference 0.3 mm on 560 mm. Cast iron grows by 11.7e-6/K and steel by 12.7e-6/K, so that
hot the fit loses 560 × 180 × 1e-6 = 0.1 mm. With the liner at 250 °C in a block at 200 °C it gains about
560 × 50 × 11.7e-6 = 0.33 mm instead; with the liner at 150 °C it loses as much, and is loose.
"""

from __future__ import annotations

import pytest

from speclint.made import Bench, PartMade, judge
from speclint.quantities import Measure
from speclint.specs import Duty
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


@pytest.mark.parametrize(
    ("value", "verdict"),
    [
        ("207.98 °C", "in"),
        ("208.02 °C", "undecided"),
        ("211.98 °C", "undecided"),
        ("212.02 °C", "out"),
    ],
)
def test_a_value_is_judged_with_the_whole_of_its_uncertainty_as_guard_band(
    workshop: DesignFolder, value: str, verdict: str
) -> None:
    """190 to 210 °C assumed, U = 2 K: in up to 208 °C, and out from 212 °C."""
    assert [one.verdict for one in judged(workshop, value).in_steam] == [verdict]


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


#: A size in place of the temperature: the liner, in its block, hot.
SIZED = (
    'case = "running"\nvalue = "VALUE"\nuncertainty = "2 K"',
    'case = "running"\ndimension = "DIMENSION"\n',
)


def sized(size: str, dimension: str = "outside_diameter", more: str = "") -> str:
    text = f'{SIZED[1]}value = "{size}"\nuncertainty = "4 µm"\n{more}'.replace("DIMENSION", dimension)
    return changed(STEAMED, (SIZED[0], text))


def test_a_size_measured_in_steam_outside_its_drawing_runs_the_rules_with_it(workshop: DesignFolder) -> None:
    """Drawn 560.28 to 560.32 mm. 560.31 mm is in; 559.9 mm, 0.38 mm below, stretches the band to 559.896 mm: loose."""
    for size, outcome, fails in (("560.31 mm", "as drawn", False), ("559.9 mm", "outside its duty", True)):
        made = {"liner-7.toml": sized(size)}
        drawn = workshop.write({**bench(DRAWN, BAND), **made}).assess()
        assert not drawn.complaints
        [part] = judge(drawn).parts
        assert part.outcome == outcome
        assert ("liner.fit-hot" in {one.rule.name for one in part.failing}) is fails
        assert [(one.value.key, one.duty) for one in part.in_steam] == [("outside_diameter", "liner")]
        [check] = [one for one in drawn.checks if one.rule.name == "made.in-steam"]
        assert check.outcome == ("finding" if fails else "conforms")


@pytest.mark.parametrize(
    ("dimension", "more", "said"),
    [
        ("outside_diametre", "", 'write "outside_diameter"'),
        ("outside_diameter", 'quantity = "live_temperature"\n', "not both"),
    ],
)
def test_a_size_in_steam_that_is_none_is_refused(
    workshop: DesignFolder, dimension: str, more: str, said: str
) -> None:
    made = {"liner-7.toml": sized("560.31 mm", dimension, more)}
    found = workshop.write({**bench(DRAWN, BAND), **made}).assess()
    assert [said in str(one) for one in found.complaints] == [True]


def of_steam(quantity: str, value: str, uncertainty: str = "") -> str:
    """A value of the steam, or of the engine, in place of the temperature of the liner."""
    known = f'uncertainty = "{uncertainty}"\n' if uncertainty else ""
    return changed(
        STEAMED, (SIZED[0], f'case = "running"\nquantity = "{quantity}"\nvalue = "{value}"\n{known}')
    )


def test_a_pressure_above_that_of_the_duty_stretches_it_for_all_parts(workshop: DesignFolder) -> None:
    """16 bar gauge assumed; 16.9 to 17.1 measured: from then on 16 to 17.1 in that case, and in no other."""
    made = {"liner-7.toml": of_steam("live_pressure", "17 bar gauge", "0.1 bar")}
    drawn = workshop.write({**bench(DRAWN, BAND), **made}).assess()
    assert not drawn.complaints
    duty = Bench.of(drawn).duties()["duty"]
    assert drawn.design is not None
    was = drawn.design.specs["duty"]
    assert isinstance(was, Duty)
    stretched = duty.cases["running"].live_pressure
    assert isinstance(stretched, Measure)
    assert (stretched.low, stretched.high) == pytest.approx((16e5, 17.1e5))
    assert duty.cases["starting"] == was.cases["starting"]
    assert duty.cases["running"].temperatures == was.cases["running"].temperatures
    [part] = judge(drawn).parts
    assert [(one.value.key, one.duty, one.verdict) for one in part.in_steam] == [
        ("live_pressure", "duty", "out")
    ]
    assert Bench.of(drawn).duties(without="liner") == {}


@pytest.mark.parametrize(
    ("made", "why"),
    [
        (of_steam("live_temperature", "350 °C", "2 K"), "the duty does not state it, or has it worked"),
        (of_steam("live_pressure", "17 bar gauge"), "no uncertainty was recorded"),
        (sized("40 µm", "run_out"), "the drawing does not state it"),
    ],
)
def test_what_cannot_be_judged_says_why_and_changes_nothing(
    workshop: DesignFolder, made: str, why: str
) -> None:
    drawn = workshop.write({**bench(DRAWN, BAND), "liner-7.toml": made}).assess()
    [part] = judge(drawn).parts
    assert [(one.verdict, one.why_not) for one in part.in_steam] == [("not judged", why)]
    assert (part.outcome, part.outside_duty) == ("as drawn", ())
    assert Bench.of(drawn).duties() == {}


@pytest.mark.parametrize(
    ("size", "dimension"), [("560.31 mm", "outside_diametre"), ("560.31 bar", "outside_diameter")]
)
def test_of_what_cannot_be_read_the_loader_alone_tells(
    workshop: DesignFolder, size: str, dimension: str
) -> None:
    made = {"liner-7.toml": sized(size, dimension)}
    drawn = workshop.write({**bench(DRAWN, BAND), **made}).assess()
    assert len(drawn.complaints) == 1
    assert [one.in_steam for one in judge(drawn).parts] == [()]
