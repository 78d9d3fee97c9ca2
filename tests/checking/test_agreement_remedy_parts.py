"""Which change of one place is offered where two do not agree: another design is none, nor what cannot be worked."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.checking import agreement_remedy
from speclint.checking.agreement_remedy import (
    _apart,
    _name,
    _remedy,
    _restated,
    _same_pair,
    _sensible,
    _solved,
    _spoilt,
    _stated,
)
from speclint.errors import Location, replace
from speclint.rules import Judgement, StatedPlace, Step
from speclint.rules.judgement import Amount
from tests.rules.test_placing import ALL, Bench
from tests.tubes import DUTY

BORE = Location("tube.toml", 4, "bore")
STEP = Step("taken", "d", "bore", 0.0201, "m", where=BORE, stated=0.020)


@pytest.mark.parametrize(
    ("aim", "sensible"),
    [
        (0.0379, True),
        (0.0381, False),  # 90 % more is another design
        (0.0021, True),
        (0.0019, False),
        (0.0, False),
        (-0.020, False),
        ("open", True),
        (True, True),
        (None, True),
    ],
)
def test_a_value_keeps_its_sign_and_about_its_size(aim: Any, sensible: bool) -> None:
    assert _sensible(StatedPlace(BORE, aim), STEP) is sensible


def test_a_word_may_become_another_whatever_it_aims_at() -> None:
    assert _sensible(StatedPlace(BORE, 5.0), replace(STEP, kind="read", value="open"))
    below = replace(STEP, stated=-0.020)
    assert _sensible(StatedPlace(BORE, -0.0379), below)
    assert not _sensible(StatedPlace(BORE, -0.0381), below)


def test_what_a_step_states_is_its_nominal_or_what_was_read() -> None:
    assert _stated(STEP) == 0.020
    assert _stated(replace(STEP, kind="counted", stated=4.0)) == 4.0
    assert _stated(replace(STEP, kind="read", value=3)) == 3.0


FOUND = Judgement(False, "", None, Amount(0.025, "m"), Amount(0.020, "m"), "=")


def test_how_far_two_places_are_apart() -> None:
    assert _apart(FOUND) == pytest.approx(0.005)
    assert _apart(replace(FOUND, found=None, limit=None)) is None


def test_the_same_places_are_found_among_all_that_were_compared() -> None:
    here, there = StatedPlace(BORE), StatedPlace(Location("rack.toml", 3, "hole"))
    one, other = replace(FOUND, places=(here,)), replace(FOUND, places=(there, here), says="both")
    check: Any = type("Made", (), {"judgement": replace(FOUND, parts=(one, other)), "failing": ()})
    assert _same_pair(check, replace(FOUND, places=(here, there))) is other
    assert _same_pair(check, replace(FOUND, places=(there,))) is None
    check.failing = (replace(other, says="failing"),)
    found = _same_pair(check, replace(FOUND, places=(here, there)))
    assert found is not None
    assert found.says == "failing"
    check.judgement = None
    assert _same_pair(check, other) is None


class Moved:
    """What a rule finds with a value moved: the first places state twice as much more as the value."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, slope: float = 2.0) -> None:
        self.slope, self.shift = slope, 0.0
        monkeypatch.setattr(agreement_remedy, "check", self._check)

    def _check(self, _rule: Any, _component: Any, context: Any) -> Any:
        (self.shift,) = context.moved.values()
        assert FOUND.found is not None
        found = replace(FOUND.found, value=0.025 + self.slope * self.shift)
        return type("Made", (), {"judgement": replace(FOUND, found=found, places=PLACES), "failing": ()})


PLACES = (StatedPlace(BORE), StatedPlace(Location("rack.toml", 3, "hole")))
JUDGED = replace(FOUND, places=PLACES)


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    return Bench(tmp_path, {**ALL, "more.toml": DUTY.replace('id = "duty"', 'id = "more"')})


def solved(bench: Bench, judged: Judgement = JUDGED, step: Step = STEP) -> StatedPlace | None:
    found: Any = type("Found", (), {"rule": None})
    return _solved(found, judged, bench.part("tube"), step, bench.context)


def test_a_value_that_moves_a_fact_is_solved_for(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """By hand: 5 mm too much, of which each millimetre of the value makes two: 20 mm less 2.5 mm."""
    moved = Moved(monkeypatch)
    found = solved(bench)
    assert found is not None
    assert found.where == BORE
    assert found.aim == pytest.approx(0.0175)
    assert moved.shift == pytest.approx(0.020e-3)
    down = Moved(monkeypatch, -0.5)
    found = solved(bench)
    assert found is not None
    assert found.aim == pytest.approx(0.030)
    assert down.shift > 0


def test_what_moves_nothing_or_is_no_number_is_not_solved_for(
    bench: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    Moved(monkeypatch, 0.0)
    assert solved(bench) is None
    Moved(monkeypatch)
    for judged, step in (
        (JUDGED, replace(STEP, kind="read")),
        (JUDGED, replace(STEP, kind="looked up")),
        (JUDGED, replace(STEP, stated=0.0)),
        (replace(JUDGED, compared="≤"), STEP),
        (replace(JUDGED, found=None, limit=None), STEP),
        (replace(JUDGED, places=PLACES[:1]), STEP),  # not compared any more
    ):
        assert solved(bench, judged, step) is None
    assert solved(bench, JUDGED, replace(STEP, kind="counted")) is not None


def test_only_a_quantity_that_is_written_so_is_restated(bench: Bench) -> None:
    tube: Any = bench.part("tube")
    found = _restated(bench.context, StatedPlace(tube.bore.where, 0.099))
    assert found is not None
    assert (found[0], found[1].text) == (tube.bore, "99 mm ±0.5")
    nothing = (
        StatedPlace(tube.bore.where, "open"),
        StatedPlace(tube.bore.where, None),
        StatedPlace(tube.ends.where, 1.0),
        StatedPlace(tube.temperature.where, 500.0),
        StatedPlace(replace(tube.bore.where, key="nothing"), 0.099),
    )
    assert [_restated(bench.context, one) for one in nothing] == [None] * len(nothing)


def test_a_place_is_named_with_its_part_where_that_is_another(bench: Bench) -> None:
    tube, rack = bench.part("tube"), bench.part("rack")
    at: Any = tube
    assert _name(StatedPlace(at.held_in.where), tube, bench.context) == "held in"
    assert _name(StatedPlace(at.held_in.where), rack, bench.context) == "held in of tube"


def test_the_rules_that_took_the_value_and_would_not_hold_with_it_are_told_once(
    bench: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    held: dict[str, bool] = {"a": False, "b": True}
    monkeypatch.setattr(agreement_remedy, "still_conforms", lambda one, *_: held[one.rule.name])

    def check(
        name: str = "a", outcome: str = "conforms", *, reviews: bool = False, at: Location = BORE
    ) -> Any:
        made = type("Rule", (), {"name": name, "reviews": reviews})
        return type(
            "Made",
            (),
            {"rule": made, "outcome": outcome, "component": "tube", "steps": (replace(STEP, where=at),)},
        )

    place = StatedPlace(BORE)
    assert _spoilt(place, [check(), check(), check("b")], bench.context) == ("a",)
    for one in (check(outcome="finding"), check(reviews=True), check(at=replace(BORE, line=5))):
        assert _spoilt(place, [one], bench.context) == ()


def test_a_change_is_written_with_what_the_step_states(bench: Bench) -> None:
    tube: Any = bench.part("tube")
    place = StatedPlace(tube.bore.where, 0.099)
    step = replace(STEP, written_in="mm")
    plain = _remedy(step, place, "bore", ("tube.other",), None)
    assert (plain.where, plain.name, plain.now, plain.then) == (place.where, "bore", 0.020, 0.099)
    assert (plain.unit, plain.written_in, plain.spoils, plain.utilisation) == (
        "m",
        "mm",
        ("tube.other",),
        None,
    )
    assert (plain.written, plain.instead) == ("", "")
    written = _remedy(step, place, "bore", (), _restated(bench.context, place))
    assert (written.written, written.instead) == ("100 mm ±0.5", "99 mm ±0.5")
    word = _remedy(replace(step, kind="read", value="open"), StatedPlace(BORE, "closed"), "ends", (), None)
    assert (word.now, word.then) == ("open", "closed")
