"""An engine at standstill: where its moment jumps, what presses on its pistons, its readings over the clearances."""

from __future__ import annotations

import math
from types import SimpleNamespace
from typing import Any

import pytest

from speclint_events.formulae import turning
from speclint_events.formulae.turning import Standing, greatest_moment, least_moment


def train(first: float, last: float, *, opens: bool = True) -> Any:
    """An inlet that is open between two crank angles of its end."""
    return SimpleNamespace(
        opens=opens, opening=first, closing=last, lift=lambda angle: 0.01 if first < angle < last else 0.0
    )


def test_the_moment_jumps_where_an_inlet_of_any_cylinder_opens_or_shuts(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The second crank leads the first by 2 rad: it acts 2 rad earlier. The back's angles count from its own end."""
    monkeypatch.setattr(turning, "turning_moment", lambda cylinders, jumps: (cylinders, jumps))
    crank: Any = "crank"
    engine = Standing(crank, 0.20, 0.19, (0.0, 2.0), 16e5, 1.4e5, 1e5)
    made: Any = engine.moment(train(-0.1, 0.9), train(-0.2, 1.0))
    cylinders, jumps = made
    wanted = (-0.1, 0.9, math.pi - 0.2, math.pi + 1.0)
    assert jumps == pytest.approx([at - lead for at in wanted for lead in (0.0, 2.0)])
    assert [lead for _, lead in cylinders] == [0.0, 2.0]
    one = cylinders[0][0]
    assert (one.crank, one.front_area, one.back_area, one.air) == ("crank", 0.20, 0.19, 1e5)
    assert [one.front(angle) for angle in (-0.2, 0.5, 0.95)] == [1.4e5, 16e5, 1.4e5]
    assert [one.back(angle) for angle in (-0.25, 0.5, 0.95)] == [1.4e5, 16e5, 16e5]


@pytest.mark.parametrize("inlet", [None, train(0.0, 1.0, opens=False)])
def test_an_inlet_that_never_opens_makes_no_jump(monkeypatch: pytest.MonkeyPatch, inlet: Any) -> None:
    monkeypatch.setattr(turning, "turning_moment", lambda cylinders, jumps: (cylinders, jumps))
    crank: Any = "crank"
    made: Any = Standing(crank, 0.20, 0.19, (0.0,), 16e5, 1.4e5, 1e5).moment(inlet, train(-0.2, 1.0))
    assert made[1] == pytest.approx([math.pi - 0.2, math.pi + 1.0])


def engine(**moments: tuple[float, float]) -> Any:
    """Least and greatest moment by the names of the trains in front and at the back."""

    def moment(front: str, back: str) -> Any:
        least, greatest = moments[front + back]
        return SimpleNamespace(least=(0.5, least), greatest=(1.5, greatest))

    return SimpleNamespace(moment=moment)


FRONTS: Any = ("hot", "least", "most")
BACKS: Any = ("1", "2", "3")


def test_the_least_moment_hot_and_between_all_clearances() -> None:
    found = least_moment(engine(hot1=(5.0, 9.0), least2=(3.0, 9.0), most3=(8.0, 9.0)), FRONTS, BACKS)
    assert (found.nominal, found.low, found.high, found.unit, found.worked) == (5.0, 3.0, 8.0, "N·m", True)


def test_the_greatest_moment_counts_either_way() -> None:
    """9 backwards, 4 and 6 forwards."""
    found = greatest_moment(engine(hot1=(1.0, 6.0), least2=(-9.0, 5.0), most3=(-2.0, 4.0)), FRONTS, BACKS)
    assert (found.nominal, found.low, found.high, found.unit, found.worked) == (6.0, 4.0, 9.0, "N·m", True)
