"""The drawing of the turning moment: curves, lines and words of two directions, placed by hand.

The field stands at (70, 20), 490 wide and 310 tall: 0 to 360° across, up to 1.12 of the greatest moment, and down to
1.1 of the least where that is below nothing.
"""

from __future__ import annotations

import math
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.handbook.valve_events import TurningMoment
from speclint.reports import Figure, OnSheet, Quantity
from speclint_events.figures import turning_moments as made
from speclint_events.figures.fields import Field
from speclint_events.figures.turning_moments import Turning
from tests.plugins.events.marks import Noted, circles, curves, lines, said
from tests.plugins.events.test_figures import assessed

ANGLES = tuple(math.radians(45 * n) for n in range(8))
#: kN·m at each 45° of the crank.
FORWARD = (50, 40, 60, 20, 70, 55, 65, 45)
BACKWARD = (50, 40, 65, 55, 70, 60, 60, 30)
Pair = tuple[float, float]


def turning(direction: str, notch: str, moments: tuple[float, ...]) -> Turning:
    return Turning(direction, notch, TurningMoment(ANGLES, tuple(1e3 * one for one in moments)))


BOTH = [turning("forward", "65", FORWARD), turning("backward", "b", BACKWARD)]


def figure(mean: float, *turned: Turning) -> Figure:
    """With a mean moment in kN·m, of which a quarter is the least allowed."""
    of = "gear", "events.starts-anywhere"
    return made._figure(
        "gear", list(turned), Quantity(1e3 * mean, OnSheet(*of, "M_m")), Quantity(0.25, OnSheet(*of, "x"))
    )


def place(low: float, high: float, *places: Pair) -> list[Any]:
    return [
        pytest.approx((70 + angle / 360 * 490, 330 - (up - low) / (high - low) * 310), abs=0.06)
        for angle, up in places
    ]


@pytest.fixture
def noted(monkeypatch: pytest.MonkeyPatch) -> Noted:
    found = Noted()
    monkeypatch.setattr(Field, "labels", lambda _: found)
    return found


def test_both_directions_over_a_whole_turn() -> None:
    """Every other of the angles that were worked, and the least: 135° forward, 315° backward."""
    drawn = figure(100.0, *BOTH).drawing
    assert curves(drawn) == [
        ("edge", place(0, 112, (0, 50), (90, 60), (135, 20), (180, 70), (270, 65), (360, 50))),
        ("edge dashed", place(0, 112, (0, 50), (90, 65), (180, 70), (270, 60), (315, 30), (360, 50))),
    ]


def test_a_moment_below_nothing_is_on_the_chart() -> None:
    """To −11 for −10 kN·m, and to 78.4 for 70, which is more than the mean."""
    drawn = figure(50.0, turning("forward", "65", (50, 40, 60, -10, 70, 55, 65, 45))).drawing
    assert curves(drawn)[0][1] == place(
        -11, 78.4, (0, 50), (90, 60), (135, -10), (180, 70), (270, 65), (360, 50)
    )


@pytest.mark.parametrize(("least", "ink"), [(24.9, "point hold"), (25.0, "solid"), (25.1, "solid")])
def test_a_least_moment_below_what_is_allowed_is_marked_as_a_hold(least: float, ink: str) -> None:
    """A quarter of 100 kN·m is 25."""
    drawn = figure(100.0, turning("forward", "65", (50, 40, 60, least, 70, 55, 65, 45))).drawing
    ((found, (x, y, radius)),) = circles(drawn)
    assert (found, radius) == (ink, 4)
    assert (x, y) == place(0, 112, (135, least))[0]


def test_the_mean_and_the_least_allowed_are_named_at_the_right_ends_of_their_lines(noted: Noted) -> None:
    """At 560, 6 beyond and 4 beneath; 100 and 25 kN·m of 112 lie 276.8 and 69.2 above the foot at 330."""
    drawn = figure(100.0, *BOTH).drawing
    assert lines(drawn, "fine") == [(70, 53.2, 560, 53.2), (70, 260.8, 560, 260.8)]
    stand = said(drawn)
    assert stand["mean, 100.0 kN·m"] == (566, 57.2, "start")
    assert stand["least allowed, 25.0 kN·m"] == (566, 264.8, "start")
    assert noted.avoided == [
        place(0, 112, (0, 100), (360, 100)),
        place(0, 112, (0, 25), (360, 25)),
        *(line for _, line in curves(drawn)),
    ]


def test_each_least_moment_is_named_where_it_stands(noted: Noted) -> None:
    found = figure(100.0, *BOTH)
    assert [says for _, says in noted.put_at] == ["forward, 20.0 kN·m", "backward, 30.0 kN·m"]
    assert [at for at, _ in noted.put_at] == place(0, 112, (135, 20), (315, 30))
    held = [(one.quantity.value, one.unit, one.at) for one in found.held.placed]
    heights = [y for _, y in (one.expected for one in place(0, 112, (0, 100), (0, 25), (0, 20), (0, 30)))]
    assert held == [
        (moment, "kN·m", pytest.approx(y, abs=0.06))
        for moment, y in zip((100e3, 25e3, 20e3, 30e3), heights, strict=True)
    ]
    assert {"least moment, forward, notch 65", "least moment, backward, notch b"} <= set(found.held.counted)


def test_the_axes_have_their_words_and_every_60_degrees() -> None:
    stand = said(figure(100.0, *BOTH).drawing)
    assert stand["crank angle of the first crank, in the direction of running, °"] == (315, 366, "middle")
    assert stand["turning moment, kN·m"][1] == 175
    assert [stand[f"{60 * n}"][0] for n in range(1, 7)] == pytest.approx(
        [70 + 490 / 6 * n for n in range(1, 7)], abs=0.06
    )


def test_the_table_has_least_and_greatest_of_each_direction() -> None:
    assert [tuple(map(str, row)) for row in figure(100.0, *BOTH).rows] == [
        ("least moment, forward, notch 65", "20.00 kN·m at 135°, 0.200 of the mean"),
        ("greatest moment, forward", "70.00 kN·m at 180°"),
        ("least moment, backward, notch b", "30.00 kN·m at 315°, 0.300 of the mean"),
        ("greatest moment, backward", "70.00 kN·m at 180°"),
        ("mean moment by the trade's formula", "100.00 kN·m"),
        ("least that is allowed", "0.25 of the mean, 25.00 kN·m"),
    ]


@pytest.mark.parametrize(("apart", "alike"), [(0.999, True), (1.0, True), (1.001, False)])
def test_curves_within_a_millionth_are_drawn_once(apart: float, alike: bool) -> None:
    """1 N·m of 1000 kN·m; the other direction reaches a little less."""
    one = turning("forward", "65", (1000.0, 0, 0, 0, 0, 0, 0, 0))
    other = Turning("backward", "b", TurningMoment(ANGLES, (1e6 - apart, 0, 0, 0, 0, 0, 0, 0)))
    separate = [("forward", one), ("backward", other)]
    assert made._told([one, other]) == ([("forward and backward", one)] if alike else separate)
    assert made._told([other]) == [("backward", other)]


# What is drawn


def checked(component: str, used: float | None, *steps: tuple[str, str]) -> Any:
    """A check of starting with steps of a kind and a name, of which the name is a symbol too."""
    return SimpleNamespace(
        component=component,
        rule=SimpleNamespace(name=made._RULE),
        utilisation=used,
        steps=[SimpleNamespace(kind=kind, name=name, symbol=name) for kind, name in steps],
    )


WHOLE = ("worked", "M_m"), ("limit", made._LIMIT)


@pytest.fixture
def stubbed(monkeypatch: pytest.MonkeyPatch) -> None:
    """Figures that only say of which gear they are, from checks that are called by it."""
    monkeypatch.setattr(
        made, "taken_again", lambda _all, check, _take: None if check.component == "bare" else BOTH
    )
    monkeypatch.setattr(
        made,
        "on_sheet",
        lambda check, symbol: next((one for one in check.steps if one.symbol == symbol), None),
    )
    monkeypatch.setattr(made, "of_step", lambda check, at: check.steps[at])
    monkeypatch.setattr(made, "_figure", lambda gear, _turning, mean, share: (gear, mean.name, share.name))


@pytest.mark.usefixtures("stubbed")
def test_the_gear_that_starts_worst_is_drawn() -> None:
    other = SimpleNamespace(component="other", rule=SimpleNamespace(name="another.rule"), utilisation=9.0)
    checks = [
        checked("unsaid", None, *WHOLE),
        checked("easy", 0.5, *WHOLE),
        checked("worst", 0.9, *WHOLE),
        checked("bare", 2.0, *WHOLE),
        checked("without a mean", 2.0, WHOLE[1]),
        checked("without a limit", 2.0, WHOLE[0], ("worked", made._LIMIT), ("limit", "another")),
        other,
    ]
    assessment: Any = SimpleNamespace(checks=checks)
    assert list(made.turning_moments(assessment)) == [("worst", "M_m", made._LIMIT)]
    assessment.checks = checks[3:]
    assert list(made.turning_moments(assessment)) == []


def test_an_engine_that_runs_one_way_is_drawn_that_way() -> None:
    one_way = ("gear.toml", 'direction = "backward"', 'direction = "forward"')
    (found,) = made.turning_moments(assessed(one_way, rules=(made._RULE,)))
    assert [row[0].split(",")[1:2] for row in found.rows[:2]] == [[" forward"], [" forward"]]
    assert len(found.rows) == 4
