"""What must hold of every rule, tried on tubes: sound rules keep it, and a fault that is planted in one is named."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.checking import Check
from speclint.errors import DesignError
from speclint.repository import Change, DraftedDesign
from speclint.testing import (
    Declared,
    DesignFolder,
    Trial,
    changed_files,
    expect_never_better_with,
    expect_order_changes_nothing,
    expect_power_of_size,
    expect_properties,
    expect_same_in_other_units,
    expect_stating_hides_nothing,
    expect_tighter_is_no_worse,
    trial_of,
)
from speclint.testing.other_units import in_other_units
from speclint.testing.outcomes_compared import culprit, shown
from tests import tubes
from tests.own_limits import own_limit
from tests.tubes import Tube

_COMMON: dict[str, Any] = {
    "on": Tube,
    "cites": [FIRST_PRINCIPLES],
    "why": "for tests",
    "leaves_out": "nothing",
}
_GRADE = Grade.NONCONFORMITY
_LIMIT = Limit("allowable", "100000000", "ratio", COMMON_PRACTICE, "greatest safety")


@rule(
    "tube.backwards",
    title="a tube under more pressure is stressed less",
    grade=_GRADE,
    limits=[_LIMIT],
    **_COMMON,
)
def backwards(tube: Tube, sheet: Sheet) -> Judgement:
    """The pressure on the wrong side of the line."""
    pressure, allowed = sheet.take("p", tube.pressure), sheet.limit("allowable")
    return sheet.at_most(sheet.work("s", tubes.safety, σ=pressure, σ_all=1e13), allowed)


@rule("tube.first-slot", title="the first slot of the rack is wide enough", grade=_GRADE, **_COMMON)
def first_slot(tube: Tube, sheet: Sheet) -> Judgement:
    """Of several slots the one that stands first."""
    rack = sheet.follow(tube.held_in)
    first = next(iter(rack.slots.values()))
    return sheet.at_least(sheet.take("w", first.width), sheet.take("D", tube.outside))


@rule(
    "tube.asks-once",
    title="a tube of which the ends are not stated goes into its rack",
    grade=_GRADE,
    **_COMMON,
)
def asks_once(tube: Tube, sheet: Sheet) -> Judgement:
    """Whoever states the ends is asked nothing more."""
    if sheet.is_stated("ends", tube.ends):
        raise sheet.not_applicable("the ends are stated")
    return sheet.at_most(sheet.take("D", tube.outside), sheet.take("H", sheet.follow(tube.held_in).hole))


@rule("tube.of-millimetres", title="the bore is written in millimetres", grade=_GRADE, **_COMMON)
def of_millimetres(tube: Tube, sheet: Sheet) -> Judgement:
    """A rule that looks past the sheet at the unit."""
    bore = sheet.take("d", tube.bore)
    allowed = 0.2 if getattr(tube.bore, "unit", "") == "mm" else 0.05
    return sheet.at_most(
        sheet.work("g", tubes.gap, H=bore, D=0.0), sheet.work("g_1", tubes.gap, H=allowed, D=0.0)
    )


@rule("tube.wants-room", title="the tube has tolerance enough", grade=_GRADE, **_COMMON)
def wants_room(tube: Tube, sheet: Sheet) -> Judgement:
    """The tolerance itself is judged: 0.8 mm at the least."""
    low, high = sheet.take_limits("d", tube.bore)
    width = sheet.work("g", tubes.gap, H=high, D=low)
    return sheet.at_least(width, sheet.work("g_1", tubes.gap, H=0.0008, D=0.0))


@rule("tube.gives-up", title="a tube under much pressure is not looked at", grade=_GRADE, **_COMMON)
def gives_up(tube: Tube, sheet: Sheet) -> Judgement:
    """A finding below 47 bar, and nothing above."""
    sheet.take("p", tube.pressure)
    if getattr(tube.pressure, "nominal", 0.0) > 4.7e6:
        raise sheet.not_applicable("the pressure is too high to be looked at")
    return sheet.at_most(sheet.take("D", tube.outside), sheet.take("d", tube.bore))


@rule("tube.wants-width", title="a tube with a wide tolerance is stiff", grade=_GRADE, **_COMMON)
def wants_width(tube: Tube, sheet: Sheet) -> Judgement:
    """A tolerance of less than 0.8 mm is not looked at."""
    low, high = sheet.take_limits("d", tube.bore)
    if high - low < 0.0008:
        raise sheet.not_applicable("the tolerance is narrow")
    return sheet.at_most(sheet.take("d", tube.bore), sheet.take("D", tube.outside))


PLANTED = (backwards, first_slot, asks_once, of_millimetres, wants_room, gives_up, wants_width)
SLOTS = '[slots.left]\nwidth = "120 mm"\n[slots.right]\nwidth = "90 mm"\n'
FILES = {**tubes.FILES, "rack.toml": tubes.RACK + SLOTS}


@pytest.fixture
def try_on(tmp_path: Path) -> Callable[..., Trial]:
    """Makes the trial of a rule on the tube, with some passages of the files changed."""

    def made(of: Rule, *changes: tuple[str, str, str]) -> Trial:
        folder = DesignFolder(tmp_path, tubes.tubes(*tubes.RULES, *PLANTED))
        return trial_of(folder.write(changed_files(FILES, *changes)), of.name)

    return made


TryOn = Callable[..., Trial]


@pytest.mark.parametrize("of", tubes.RULES, ids=lambda one: one.name)
def test_sound_rules_keep_every_property(try_on: TryOn, of: Rule) -> None:
    """As they hold, and of a rack whose hole is too small, of open ends that are closed, of too few hoops."""
    broken = [
        ("rack.toml", "106 mm", "104 mm"),
        ("tube.toml", '"open"', '"closed"'),
        ("tube.toml", "= 4", "= 2"),
    ]
    holds = try_on(of)
    expect_properties(holds, try_on(of, *broken, ("tube.toml", "30 bar", "90 bar")))


def test_what_a_strength_rule_may_declare(try_on: TryOn) -> None:
    """σ = p d/(D − d): with the pressure it rises, and a tube of twice the size under it is stressed as much."""
    declared = Declared(never_better_with=("pressure",), power=0)
    expect_properties(try_on(tubes.stress), try_on(tubes.case_stress), declared=declared)


def test_a_pressure_on_the_wrong_side_is_found(try_on: TryOn) -> None:
    trial = try_on(backwards)
    with pytest.raises(AssertionError, match="with more pressure it is better"):
        expect_never_better_with(trial, "pressure")
    with pytest.raises(AssertionError, match=r"tube\.backwards on tube.*with more pressure it is better"):
        expect_properties(trial, declared=Declared(never_better_with=("pressure",)))


def test_a_declaration_that_nothing_shows_is_found(try_on: TryOn) -> None:
    """A count knows no pressure, and has no numbers of a size."""
    assert not expect_never_better_with(try_on(tubes.hoops), "pressure")
    with pytest.raises(AssertionError, match=r"declares never_better_with\.pressure, and nothing shows it"):
        expect_properties(try_on(tubes.hoops), declared=Declared(never_better_with=("pressure",)))


def test_a_temperature_makes_a_loose_tube_tighter(try_on: TryOn) -> None:
    assert expect_never_better_with(try_on(tubes.loose_hot), "temperature")


def test_a_power_of_the_size_that_is_wrong_is_found(try_on: TryOn) -> None:
    assert expect_power_of_size(try_on(tubes.stress), 0)
    with pytest.raises(AssertionError, match=r"at twice the size .* not 2\^1 times"):
        expect_power_of_size(try_on(tubes.stress), 1)


def test_a_rule_that_takes_the_first_of_several_is_found(try_on: TryOn) -> None:
    """120 mm is wide enough for 105.5 mm, 90 mm is not: which stands first must not decide."""
    with pytest.raises(AssertionError, match="with files and keys the other way round, finding"):
        expect_order_changes_nothing(try_on(first_slot))


def test_a_design_that_cannot_be_read_in_another_order_is_told_for_each(
    try_on: TryOn, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> DraftedDesign:
        raise DesignError("the slots go from left to right")

    trial = try_on(tubes.stress)
    monkeypatch.setattr(DraftedDesign, "reordered", refuse)
    with pytest.raises(AssertionError) as found:
        expect_order_changes_nothing(trial)
    first, second = str(found.value).splitlines()
    said = "it cannot be read: the slots go from left to right"
    assert first.endswith(f"with files and keys the other way round, {said}")
    assert re.search(rf"with files and keys shuffled by the seed \d+, {said}$", second)


def test_a_rule_that_hides_behind_a_stated_value_is_found(try_on: TryOn) -> None:
    trial = try_on(asks_once, ("tube.toml", 'ends = "open"\n', ""), ("rack.toml", "106 mm", "104 mm"))
    assert trial.done.outcome == "finding"
    with pytest.raises(
        AssertionError, match=r"with tube\.ends = 'open' it is not applicable: the ends are stated"
    ):
        expect_stating_hides_nothing(trial)


def test_a_rule_that_looks_at_the_unit_is_found(try_on: TryOn) -> None:
    with pytest.raises(AssertionError, match=r"in other units, tube\.bore = '500/127 in ±"):
        expect_same_in_other_units(try_on(of_millimetres))


def test_a_rule_that_wants_its_tolerance_is_found_or_exempt(try_on: TryOn) -> None:
    """±0.5 mm is 1 mm of tolerance; half of it is less than the 0.8 mm that are wanted."""
    trial = try_on(wants_room)
    with pytest.raises(
        AssertionError, match=r"with a tighter tolerance, tube\.bore = '100 mm ±0\.25', finding"
    ):
        expect_tighter_is_no_worse(trial)
    expect_properties(trial, declared=Declared(exempt={"tightening": "the tolerance itself is judged"}))
    with pytest.raises(AssertionError, match=r"tube\.stress is exempt of tightening, and keeps it"):
        expect_properties(try_on(tubes.stress), declared=Declared(exempt={"tightening": "it is not needed"}))


def test_a_quantity_that_has_no_other_unit_stays_as_it_is(try_on: TryOn) -> None:
    """A tolerance that is a share of the size has no unit to be written in; the outside has."""
    trial = try_on(tubes.stress, ("tube.toml", "100 mm ±0.5", "100 mm ±0.5 %"))
    changed = {f"{one.component}.{one.key}" for one in in_other_units(trial)}
    assert "tube.outside" in changed
    assert "tube.bore" not in changed


def test_a_check_is_shown_with_its_grade_only_where_it_is_a_finding(try_on: TryOn) -> None:
    """By hand: 0.75375 of the limit at 30 bar, 1.130625 at 45 bar."""
    holds = try_on(tubes.stress).done
    assert shown(holds) == f"conforms, 0.75375 of the limit used: {holds.says}"
    fails = try_on(tubes.stress, ("tube.toml", "30 bar", "45 bar")).done
    assert shown(fails) == f"finding (hold), 1.13063 of the limit used: {fails.says}"
    missing = try_on(tubes.loose_hot, ("tube.toml", 'temperature = "200..220 °C"\n', "")).done
    assert shown(missing).startswith("not assessed: ")


def test_the_first_change_that_alone_makes_a_fault_is_named(try_on: TryOn) -> None:
    """At 100 MPa the tube carries 39.8 bar: 35 bar is no fault, 45 bar is one, and 20 hoops change nothing of it."""
    trial = try_on(tubes.stress)
    innocent, guilty = Change("tube", "pressure", "35 bar gauge"), Change("tube", "pressure", "45 bar gauge")

    def fails(done: Check) -> bool:
        return done.outcome == "finding"

    assert culprit(trial, [innocent, guilty], fails) == "tube.pressure = '45 bar gauge'"
    assert culprit(trial, [innocent, Change("tube", "hoops", 20)], fails) == "2 changes together"


def test_a_trial_of_nothing_says_so(try_on: TryOn) -> None:
    bench = try_on(tubes.stress).bench
    for rule_name, component, why in (
        ("tube.nothing", "tube", "no rule is called tube.nothing"),
        ("tube.stress", "tub", "no component is called tub"),
        ("tube.stress", "duty", "no component is called duty"),
    ):
        with pytest.raises(DesignError, match=why):
            bench.trial(rule_name, component)


def test_a_finding_that_goes_where_something_rises_is_found(try_on: TryOn) -> None:
    """A tenth more than 45 bar is 49.5 bar; of 30 bar it is 33 bar, at which the finding is the same."""
    with pytest.raises(AssertionError, match="with more pressure it is better: not applicable"):
        expect_never_better_with(try_on(gives_up, ("tube.toml", "30 bar", "45 bar")), "pressure")
    assert not expect_never_better_with(try_on(gives_up), "pressure")


def test_a_check_that_conforms_may_cease_to_apply(try_on: TryOn) -> None:
    sound = (
        ("tube.toml", "105 mm", "99 mm"),
        ("tube.toml", "100 mm", "104 mm"),
        ("tube.toml", "30 bar", "45 bar"),
    )
    trial = try_on(gives_up, *sound)
    assert trial.done.outcome == "conforms"
    assert not expect_never_better_with(trial, "pressure")


def test_of_a_declaration_that_is_wrong_no_more_is_said(try_on: TryOn) -> None:
    declared = Declared(never_better_with=("pressure",))
    with pytest.raises(AssertionError) as refused:
        expect_properties(try_on(backwards), declared=declared)
    assert "nothing shows it" not in str(refused.value)
    expect_properties(try_on(tubes.stress), try_on(tubes.hoops), declared=declared)
    expect_properties(try_on(tubes.hoops), try_on(tubes.stress), declared=declared)


def test_a_check_that_a_tighter_tolerance_loses_is_found(try_on: TryOn) -> None:
    with pytest.raises(
        AssertionError, match=r"with a tighter tolerance, tube\.bore = '100 mm ±0\.25', not applicable"
    ):
        expect_tighter_is_no_worse(try_on(wants_width))
    narrow = ("tube.toml", "100 mm ±0.5", "100 mm ±0.3")
    expect_tighter_is_no_worse(try_on(wants_width, narrow))  # of which nothing was judged before


def test_what_is_stated_beside_a_check_that_conforms_may_end_it(try_on: TryOn) -> None:
    trial = try_on(asks_once, ("tube.toml", 'ends = "open"\n', ""))
    assert trial.done.outcome == "conforms"
    expect_stating_hides_nothing(trial)


@pytest.mark.parametrize(
    "change",
    [
        ("tube.toml", "100 mm ±0.5", "100 mm ±0.5 %"),  # of which no other size is written
        ("tube.toml", "30 bar gauge", "0 bar gauge"),  # which uses nothing of the limit
        ("tube.toml", 'pressure = "30 bar gauge"\n', ""),
    ],
)
def test_where_there_are_no_numbers_of_a_size_none_are_compared(
    try_on: TryOn, change: tuple[str, str, str]
) -> None:
    assert not expect_power_of_size(try_on(tubes.stress, change), 0)


def test_a_trial_of_a_design_with_limits_of_its_own_goes_on_with_them(tmp_path: Path) -> None:
    """70 MPa in the place of 100: 75.375/70 = 1.07679 of it is used, and at 45 bar 113.0625/70 = 1.61518."""
    settings = own_limit("tube.stress", "tubes", allowable="70 MPa")
    folder = DesignFolder(tmp_path, tubes.tubes()).write(FILES, settings=settings)
    trial = trial_of(folder, "tube.stress")
    assert trial.done.utilisation == pytest.approx(1.07679, rel=1e-5)
    after = trial.with_changes([Change("tube", "pressure", "45 bar gauge")])
    assert after is not None
    assert after.utilisation == pytest.approx(1.61518, rel=1e-5)
    lower = trial.with_changes([Change("speclint.toml", 'limits/"tube.stress"/allowable/value', "80 MPa")])
    assert lower is not None
    assert lower.utilisation == pytest.approx(75.375 / 80, rel=1e-5)
    assert (
        trial.with_changes([Change("speclint.toml", 'limits/"tube.stress"/allowable/value', "80 mm")]) is None
    )
    assert trial.with_changes([Change("tube", "pressure", "45 mm")]) is None
    assert trial.with_changes([Change("tube", absent=True)]) is None
