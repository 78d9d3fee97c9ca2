"""One stated value tried at others: how a window is found, how many pieces are added, in which way metal comes off."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.checking import Remedy, Sought, remedy_trial, reworks
from speclint.checking.remedy_search import _proved, search_of
from speclint.checking.remedy_trial import Trial
from speclint.checking.rule_run import check
from speclint.checking.severity import Severity
from speclint.checking.spoiling import of_part_alike
from speclint.checking.stated_value import StatedValue
from speclint.checking.window import closing_in, halved, valley
from speclint.errors import Location, replace
from speclint.specs import Component
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.tubes import FILES, Tube

COMMON: dict[str, Any] = {"cites": [FIRST_PRINCIPLES], "why": "w", "leaves_out": "l"}


@pytest.mark.parametrize(("fails", "works", "edge"), [(0.0, 10.0, 3.2), (0.0, -10.0, -3.2)])
def test_a_change_that_holds_and_one_that_does_not_close_in(fails: float, works: float, edge: float) -> None:
    asked = []

    def holds(by: float) -> bool:
        asked.append(by)
        return abs(by) >= abs(edge)

    bad, good = halved(holds, fails, works, 0.5)
    assert abs(good - bad) < 0.5
    assert holds(good)
    assert not holds(bad)
    assert len(asked) == 5 + 2  # 10 halved five times is 0.3
    assert halved(holds, bad, good, 1.0) == (bad, good)


def test_closing_in_ends() -> None:
    asked: list[float] = []

    def holds(by: float) -> bool:
        asked.append(by)
        return by >= 1.0

    halved(holds, 0.0, 3.0, 0.0)
    assert len(asked) == 40


def grave(*used: float) -> Mapping[float, Any]:
    """Shifts 1, 2, 3 … with how grave each is."""
    return {float(place): (4, 1, one, 0.0) for place, one in enumerate(used, 1)}


@pytest.mark.parametrize(
    ("tried", "between"),
    [
        (grave(0.9, 0.5, 0.7), (3.0, 1.0)),
        (grave(0.9, 0.8, 0.5, 0.7, 0.8), (4.0, 2.0)),
        (grave(0.9, 0.5, 0.7, 0.4, 0.8), (3.0, 1.0)),  # the first
        (grave(0.9, 0.7, 0.5), None),
        (grave(0.5, 0.7, 0.9), None),
        (grave(0.9, 0.5, 0.5), None),
        (grave(0.5, 0.5, 0.9), None),
        (grave(0.9, 0.5), None),
        ({}, None),
    ],
)
def test_the_shifts_on_both_sides_of_one_that_is_less_grave(
    tried: Mapping[float, Any], between: tuple[float, float] | None
) -> None:
    assert valley(tried) == between


def made(name: str, function: Any, *limits: Limit) -> Rule:
    """A rule on tubes."""
    return rule(name, title="t", on=Tube, grade=Grade.QUERY, limits=limits, **COMMON)(function)


def searched(
    folder: Path, name: str, *changes: tuple[str, str], rules: tuple[Rule, ...] = (), settings: str = SETTINGS
) -> Sought:
    shop = DesignFolder(folder, tubes.tubes(*rules)).write(FILES, settings=settings)
    for old, new in changes:
        shop.replace("tube.toml", old, new)
    assessment = shop.assess()
    assert assessment.context is not None
    check = next(one for one in assessment.checks if one.rule.name == name)
    return search_of(check, assessment.checks, assessment.context)


def found(
    folder: Path, name: str, *changes: tuple[str, str], rules: tuple[Rule, ...] = (), settings: str = SETTINGS
) -> list[Remedy]:
    return list(searched(folder, name, *changes, rules=rules, settings=settings).remedies)


@pytest.mark.parametrize(("least", "then"), [(16, 16.0), (17, None)])
def test_no_more_than_twelve_pieces_are_added(tmp_path: Path, least: int, then: float | None) -> None:
    settings = SETTINGS + f'[limits."tube.hoops"]\nleast = "{least}"\n'
    some = found(tmp_path, "tube.hoops", settings=settings)
    assert [one.then for one in some] == ([] if then is None else [then])


def test_values_of_which_no_change_within_reach_clears_a_finding_are_told(tmp_path: Path) -> None:
    """Of 4 hoops 17 would be 13 more."""
    settings = SETTINGS + '[limits."tube.hoops"]\nleast = "17"\n'
    sought = searched(tmp_path, "tube.hoops", settings=settings)
    assert sought == Sought((), ("hoops",), ())


def even(tube: Tube, sheet: Sheet) -> Judgement:
    """An even number of hoops."""
    return sheet.states(sheet.count("n", tube.hoops) % 2 == 0, "the number of hoops is even")


def few(tube: Tube, sheet: Sheet) -> Judgement:
    """Less than five hoops."""
    return sheet.states(sheet.count("n", tube.hoops) < 5, "there are few hoops")


def test_pieces_are_added_until_nothing_else_is_spoilt_or_the_fewest_that_help(tmp_path: Path) -> None:
    settings = SETTINGS + '[limits."tube.hoops"]\nleast = "5"\n'
    for name, function, then, spoils in (("a", even, 6.0, ()), ("b", few, 5.0, ("tube.other",))):
        (tmp_path / name).mkdir()
        rules = (tubes.hoops, made("tube.other", function))
        (one,) = found(tmp_path / name, "tube.hoops", rules=rules, settings=settings)
        assert (one.then, one.spoils) == (then, spoils)


def in_a_window(tube: Tube, sheet: Sheet) -> Judgement:
    """A bore within two limits."""
    return sheet.within(sheet.take("d", tube.bore), sheet.limit("least"), sheet.limit("most"))


def window(least: str, most: str) -> Rule:
    return made(
        "tube.window",
        in_a_window,
        Limit("least", least, "length", COMMON_PRACTICE),
        Limit("most", most, "length", COMMON_PRACTICE),
    )


@pytest.mark.parametrize(
    ("least", "most", "instead"),
    [
        ("93 mm", "94 mm", "93.9 mm ±0.1"),  # between the shares of the reach that are looked at
        ("85 mm", "86 mm", "85.9 mm ±0.1"),
        ("106 mm", "107 mm", "106.1 mm ±0.1"),
        ("99.85 mm", "100.05 mm", "99.95 mm ±0.1"),  # as wide as its limits are apart
        ("99.86 mm", "100.05 mm", None),  # narrower
        ("20 mm", "40 mm", None),  # beyond half of the bore
        ("101 mm", "140 mm", "101.1 mm ±0.1"),
    ],
)
def test_a_window_is_found_wherever_it_lies_within_reach(
    tmp_path: Path, least: str, most: str, instead: str | None
) -> None:
    """A bore of 100 mm ±0.1 must lie between two limits: with 0.1 mm beside each, the nearest that does."""
    some = found(tmp_path, "tube.window", ("100 mm ±0.5", "100 mm ±0.1"), rules=(window(least, most),))
    whole = [one.instead for one in some if one.written.startswith("100 mm")]
    if instead is None:
        assert all(one.by for one in some)  # of a size that stays, limits alone may move
    else:
        assert whole == [instead]
        assert all(one.utilisation is not None and one.utilisation <= 1.0 + 1e-9 for one in some)


def of_made(
    folder: Path,
    name: str,
    part: str,
    ways: Mapping[str, int],
    *changes: tuple[str, str],
    spoiling: bool = False,
) -> list[str]:
    """The reworks of a part, as sizes."""
    shop = DesignFolder(folder, tubes.tubes()).write(FILES)
    for old, new in changes:
        shop.replace("tube.toml", old, new)
    assessment = shop.assess()
    assert assessment.context is not None
    assert assessment.design is not None
    check = next(one for one in assessment.checks if one.rule.name == name)
    of = assessment.design.specs[part]
    assert isinstance(of, Component)
    some = reworks(check, of, ways, assessment.checks, assessment.context, spoiling=spoiling)
    return [one.instead for one in some]


@pytest.mark.parametrize(
    ("part", "ways", "spoiling", "instead"),
    [
        ("tube", {"bore": -1}, False, ["99.5 mm ±0.5"]),
        ("tube", {"pressure": -1}, False, ["39.8 bar gauge"]),
        ("tube", {"pressure": 1}, False, []),
        ("tube", {"outside": 1}, False, []),  # it would spoil the gap
        ("tube", {"outside": 1}, True, ["105.6 mm ±0.5"]),
        ("tube", {"hoops": 1}, False, []),  # which the rule does not take
        ("tube", {}, False, []),
        ("rack", {"hole": 1, "bore": -1}, False, []),  # the bore is not the rack's
    ],
)
def test_metal_comes_off_in_the_way_that_is_given(
    tmp_path: Path, part: str, ways: dict[str, int], spoiling: bool, instead: list[str]
) -> None:
    """At 45 bar the bore would be 99.5 mm or less, or the outside 105.5225 mm or more, as by hand in the remedies."""
    assert of_made(tmp_path, "tube.stress", part, ways, ("30 bar", "45 bar"), spoiling=spoiling) == instead


def test_a_mate_is_reworked_for_the_finding_of_another_part(tmp_path: Path) -> None:
    """The outside of 107 mm closes 12.3e-6 × 200 × 107.5 = 0.2645 mm: the hole wants 107.5 + 0.2645 mm at the least."""
    change = ("105 mm ±0.5", "107 mm ±0.5")
    (hole,) = of_made(tmp_path, "tube.loose-hot", "rack", {"hole": 1}, change)
    low = float(hole.split()[0])
    assert low - 107.7645 < 0.1
    assert low >= 107.7645


def test_what_is_no_finding_of_a_number_is_not_reworked(tmp_path: Path) -> None:
    assert of_made(tmp_path, "tube.stress", "tube", {"bore": -1}) == []
    (tmp_path / "b").mkdir()
    assert of_made(tmp_path / "b", "tube.ends", "tube", {"bore": -1}, ('"open"', '"closed"')) == []


class Hoped:
    """A trial that hopes for some remedies, one after another, and proves what it hopes where it can."""

    def __init__(self, *changes: float, proves: bool = True) -> None:
        self.left, self.proves = list(changes), proves
        self.asked: list[float] = []

    def hoped(self) -> Remedy | None:
        change = self.left.pop(0) if self.left else None
        if change is None:
            return None
        return Remedy(Location("tube.toml", 4, f"{change}"), "bore", 1.0, 1.0 + change, "m", "mm", None)

    def proved(self, remedy: Remedy) -> Remedy | None:
        self.asked.append(round(remedy.change, 3))
        return remedy if self.proves else None


def test_three_remedies_are_enough_and_the_smallest_are_proved_first() -> None:
    some = [Hoped(0.5), Hoped(0.1), Hoped(0.3), Hoped(0.2), Hoped()]
    found = _proved(some)  # type: ignore[arg-type]
    assert [round(one.change, 3) for one in found] == [0.1, 0.2, 0.3]
    assert some[0].asked == []


def test_what_is_not_proved_is_sought_again_in_its_place() -> None:
    stubborn = Hoped(0.1, 0.4, 0.8, proves=False)
    some = [Hoped(0.5), stubborn]
    assert [round(one.change, 3) for one in _proved(some)] == [0.5]  # type: ignore[arg-type]
    assert stubborn.asked == [0.1, 0.4, 0.8]


def test_a_remedy_of_a_part_alike_is_that_of_its_own_place() -> None:
    check: Any = type("Found", (), {"component": "second"})()
    for part, wanted in (("tube", "second"), ("", "")):
        where = Location("tube.toml", 4, "bore", part)
        sought = Sought((Remedy(where, "bore", 0.1, 0.09, "m", "mm", None),), ("wall",), ("lift",))
        own = of_part_alike(sought, check)
        assert (own.in_vain, own.not_tried) == (("wall",), ("lift",))
        (one,) = own.remedies
        assert one.where == Location("tube.toml", 4, "bore", wanted)


class Tried:
    """A trial of the bore of a tube at 45 bar, whose checks are those of a run."""

    def __init__(self, folder: Path) -> None:
        shop = DesignFolder(folder, tubes.tubes()).write(FILES).replace("tube.toml", "30 bar", "45 bar")
        assessment = shop.assess()
        assert assessment.context is not None
        (check,) = (one for one in assessment.checks if one.rule.name == "tube.stress")
        part = assessment.context.design.specs["tube"]
        assert isinstance(part, Tube)
        (step,) = (one for one in check.steps if one.where.key == "bore")
        self.trial = Trial(StatedValue(step, check, part, assessment.checks, assessment.context))


def test_a_trial_hopes_and_proves_and_says_to_which_side_it_went(tmp_path: Path) -> None:
    one = Tried(tmp_path).trial
    assert not one.rises  # nothing was hoped for so far
    hoped = one.hoped()
    assert hoped is not None
    assert (hoped.written, hoped.instead, hoped.now, hoped.then) == (
        "100 mm ±0.5",
        "99.5 mm ±0.5",
        0.1,
        pytest.approx(0.0995),
    )
    assert (hoped.utilisation, hoped.by, hoped.written_in) == (None, 0.0, "mm")
    assert not one.rises
    proved = one.proved(hoped)
    assert proved is not None
    assert proved.utilisation == pytest.approx(1.0)
    assert proved.spoils == ()


def test_six_proofs_are_tried_and_each_corner_that_fails_is_looked_at_from_then_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    one = Tried(tmp_path).trial
    corners = len(one._corners)
    monkeypatch.setattr(remedy_trial, "where_it_fails", lambda *_: ("", {"x": True}))
    proofs = 0
    while (hoped := one.hoped()) is not None:
        assert one.proved(hoped) is None
        proofs += 1
        assert proofs < 20
    assert proofs == 6
    assert [corner[1:] for corner in one._corners[corners:]] == [("", {"x": True})] * 6


def test_a_proof_that_does_not_conform_is_none(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    one = Tried(tmp_path).trial
    hoped = one.hoped()
    assert hoped is not None

    def otherwise(*given: Any) -> Any:
        return replace(check(*given), outcome="finding", case="running")

    monkeypatch.setattr(remedy_trial, "check", otherwise)
    assert one.proved(hoped) is None
    assert one._corners[-1][1] == "running"


@pytest.mark.parametrize(("most", "found_one"), [("49.95 mm", False), ("50.15 mm", True)])
def test_a_window_at_half_of_the_value_is_the_last_that_is_looked_at(
    tmp_path: Path, most: str, found_one: bool
) -> None:
    """A bore of 100 mm ±0.1 may become 50 mm, which reaches to 50.1 mm, and no less."""
    some = found(tmp_path, "tube.window", ("100 mm ±0.5", "100 mm ±0.1"), rules=(window("30 mm", most),))
    assert bool([one for one in some if not one.by]) is found_one


@pytest.mark.parametrize(
    ("least", "shifts"),
    [
        (
            1.0,
            [0.381966, 0.618034, 0.763932, 0.854102, 0.909830],
        ),  # up to the end, by 0.618034 of what is left
        (0.0, [0.381966, 0.618034, 0.236068, 0.145898, 0.090170]),
    ],
)
def test_a_window_is_closed_in_on_by_golden_section(least: float, shifts: list[float]) -> None:
    """Each shift is as grave as it is far from one end; from the fifth on it holds, or from the thirteenth never."""
    for holding in (5, 99):
        tried: list[float] = []

        def how_grave(by: float, tried: list[float] = tried, holding: int = holding) -> Severity | None:
            tried.append(by)
            return None if len(tried) == holding else (4, 1, abs(by - least), 0.0)

        found = closing_in(how_grave, 0.0, 1.0)
        assert tried[:5] == pytest.approx(shifts, abs=1e-6)
        assert (found, len(tried)) == ((tried[4], 5) if holding == 5 else (None, 13))


@pytest.mark.parametrize("what", ["could_state", "misfits_of"])
def test_a_value_that_the_spec_could_not_state_is_not_hoped_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    monkeypatch.setattr(remedy_trial, what, lambda *_: what == "misfits_of" and ["it does not fit"])
    assert Tried(tmp_path).trial.hoped() is None
