"""The parts of a run of one rule: at one corner, over load cases, where it fails, and how it came out for others."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Rule, Sheet, rule
from speclint.checking import Check, case_result, rule_run
from speclint.checking.conclusion import could_not_run, each_once
from speclint.checking.one_corner import run_once, written_at
from speclint.checking.outcomes import remember
from speclint.checking.rule_run import check, check_component, check_named
from speclint.checking.time_limit import Overrun
from speclint.checking.where_it_fails import where_it_fails
from speclint.checking.worst_corner import Effort, find_worst
from speclint.errors import Location, replace
from speclint.rules import Context, NotAssessed, over_box
from speclint.rules.judgement import Amount
from speclint.specs import Component, LoadCase
from speclint.testing import DesignFolder
from tests import tubes
from tests.checking.test_worked_once import LIKE
from tests.tubes import DUTY, FILES, Tube, case_stress, stress

COMMON: dict[str, Any] = {"cites": [FIRST_PRINCIPLES], "why": "w", "leaves_out": "l"}
BORE, OUTSIDE = ("taken", "tube.toml", "", "bore"), ("taken", "tube.toml", "", "outside")


class Shop:
    """A design of one tube, and what its sheets may consult."""

    def __init__(self, folder: Path, files: dict[str, str] = FILES, *rules: Rule) -> None:
        self.folder = DesignFolder(folder, tubes.tubes(*rules)).write(files)
        context = self.folder.assess().context
        assert context is not None
        self.context: Context = context

    def part(self, name: str = "tube") -> Component:
        found = self.context.design.specs[name]
        assert isinstance(found, Component)
        return found


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop(tmp_path)


@rule("tube.late", title="t", on=Tube, grade=Grade.QUERY, **COMMON)
def late(_tube: Tube, _sheet: Sheet) -> Judgement:
    """A rule that does not end in its time."""
    raise Overrun("it takes too long")


@rule("tube.low-fault", title="t", on=Tube, grade=Grade.QUERY, **COMMON)
def faulty(tube: Tube, sheet: Sheet) -> Judgement:
    """A rule that raises at every corner."""
    sheet.take("d", tube.bore)
    raise KeyError("a fault")


def test_a_rule_at_one_corner_of_one_load_case(shop: Shop) -> None:
    """By hand p d/(D − d) of 100 MPa: 3 × 99.5/5 with both low, 3 × 100.5/4 at the worst; starting 1.2 × 99.5/5."""
    part = shop.part()

    def used(of: Rule, case: str, sides: dict[Any, bool]) -> float | None:
        ending = run_once(of, part, case, sides, shop.context)
        assert isinstance(ending, Judgement)
        return ending.utilisation

    assert used(stress, "", {}) == pytest.approx(0.597)
    assert used(stress, "", {BORE: True}) == pytest.approx(0.75375)
    assert used(case_stress, "starting", {}) == pytest.approx(0.2388)
    assert used(case_stress, "running", {}) == pytest.approx(0.199)


def test_of_a_rule_that_raises_nothing_is_known_at_one_corner(shop: Shop) -> None:
    ending = run_once(faulty, shop.part(), "", {}, shop.context)
    assert isinstance(ending, NotAssessed)
    assert ending.says == "could not be run: KeyError: 'a fault'"
    assert written_at(faulty, shop.part(), "", {}, shop.context) is None
    for run in (run_once, written_at):
        with pytest.raises(Overrun):
            run(late, shop.part(), "", {}, shop.context)
    with pytest.raises(Overrun):
        where_it_fails(late, shop.part(), shop.context, {})


def test_a_rule_is_written_down_at_one_corner(shop: Shop) -> None:
    found = written_at(stress, shop.part(), "", {BORE: True}, shop.context)
    assert found is not None
    assert isinstance(found.ending, Judgement)
    assert found.ending.utilisation == pytest.approx(0.75375)
    assert [step.symbol for step in found.record.steps] == ["d", "D", "p", "σ", "σ_all"]
    assert found.sides == {BORE: True, OUTSIDE: False}
    of_case = written_at(case_stress, shop.part(), "running", {}, shop.context)
    assert of_case is not None
    assert isinstance(of_case.ending, Judgement)
    assert of_case.ending.utilisation == pytest.approx(0.199)


def test_a_load_case_that_is_not_stated_is_not_written_down(tmp_path: Path) -> None:
    duty = DUTY.replace('[cases.running]\nlive_pressure = "10 bar gauge"\n', "")
    shop = Shop(tmp_path, {**FILES, "duty.toml": duty})
    assert written_at(case_stress, shop.part(), "running", {}, shop.context) is None
    assert written_at(case_stress, shop.part(), "starting", {}, shop.context) is not None
    found = where_it_fails(case_stress, shop.part(), shop.context, {})
    assert found == ("running", {BORE: False, OUTSIDE: False})


@pytest.mark.parametrize(
    ("starting", "running", "case"),
    [("12 bar", "10 bar", None), ("60 bar", "10 bar", "starting"), ("12 bar", "60 bar", "running")],
)
def test_where_a_rule_fails_is_told_by_its_load_case_and_corner(
    tmp_path: Path, starting: str, running: str, case: str | None
) -> None:
    """At 60 bar 6 × 100.5/4 = 150.75 of 100 MPa with the bore high and the outside low; 6 × 99.5/5 at the first."""
    duty = DUTY.replace("12 bar", starting).replace("10 bar", running)
    shop = Shop(tmp_path, {**FILES, "duty.toml": duty})
    found = where_it_fails(case_stress, shop.part(), shop.context, {})
    if case is None:
        assert found is None
        return
    assert found is not None
    assert found[0] == case
    high: dict[Any, bool] = {BORE: True, OUTSIDE: False}
    tried = where_it_fails(case_stress, shop.part(), shop.context, {case: high})
    assert tried == (case, high)


def test_of_two_load_cases_that_fail_the_first_is_told(tmp_path: Path) -> None:
    duty = DUTY.replace("12 bar", "60 bar").replace("10 bar", "70 bar")
    shop = Shop(tmp_path, {**FILES, "duty.toml": duty})
    found = where_it_fails(case_stress, shop.part(), shop.context, {})
    assert found is not None
    assert found[0] == "starting"


def test_a_rule_that_raises_conforms_nowhere(shop: Shop) -> None:
    assert where_it_fails(faulty, shop.part(), shop.context, {}) == ("", {})


def test_the_checks_of_a_component_are_those_of_its_kind_in_the_order_of_their_names(shop: Shop) -> None:
    rules = shop.folder.loaded.rules
    found = check_component(shop.part(), rules[::-1], shop.context)
    assert [one.rule.name for one in found] == sorted(one.name for one in rules)
    assert check_component(shop.part("rack"), rules, shop.context) == []
    assert [one.order for one in check_named("tube", rules, shop.context)] == [one.order for one in found]
    with pytest.raises(TypeError, match=r"^duty is no component$"):
        check_named("duty", rules, shop.context)


def test_how_checks_came_out_is_kept_for_the_rules_that_review_them(shop: Shop) -> None:
    held = replace(check(stress, shop.part(), shop.context), assumed=(Location("tube.toml", 4, "bore"),))
    plain = replace(held, rule=replace(stress, name="tube.plain", gravest=Grade.QUERY))
    sure = replace(held, rule=replace(stress, name="tube.sure"), assumed=())
    review = replace(held, rule=replace(stress, name="tube.review", reviews=True))
    some = [held, plain, sure, review]
    shop.context.outcomes, shop.context.assumed_by_holds = {}, {}
    remember("tube", some, shop.context)
    assert shop.context.outcomes == {
        "tube": {"tube.stress": "conforms", "tube.plain": "conforms", "tube.sure": "conforms"}
    }
    assert shop.context.assumed_by_holds == {"tube": ("tube.stress",)}
    shop.context.outcomes, shop.context.assumed_by_holds = None, {}
    remember("tube", some, shop.context)
    assert shop.context.assumed_by_holds == {}


def test_what_could_not_be_run_is_a_hold(shop: Shop) -> None:
    one = could_not_run(replace(stress, family="tubes"), shop.part(), "it broke")
    assert (one.component, one.kind, one.outcome, one.grade) == ("tube", "tube", "finding", Grade.HOLD)
    assert (one.says, one.could_not_run) == ("could not be run (family tubes): it broke", "it broke")
    assert one.where == shop.part().where
    assert one.fingerprint != could_not_run(stress, shop.part(), "it broke otherwise").fingerprint


def test_parts_alike_share_no_check_where_values_are_moved_or_another_effort_is_made(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop = Shop(tmp_path, {**FILES, "second.toml": LIKE.format(rack="rack")})
    searches: list[str] = []

    def counted(*given: Any) -> Any:
        searches.append("one")
        return find_worst(*given)

    monkeypatch.setattr(case_result, "find_worst", counted)

    def both(context: Context, **more: Any) -> int:
        searches.clear()
        found = [check(stress, shop.part(name), context, **more) for name in ("tube", "second")]
        assert found[0].utilisation == found[1].utilisation
        return len(searches)

    where = Location("tube.toml", 5, "outside")
    assert both(replace(shop.context, shared=None)) == 1
    assert both(replace(shop.context, shared=False)) == 2
    assert both(replace(shop.context, shared=None), effort=Effort()) == 2
    assert both(replace(shop.context, shared=None, moved={where: 0.0})) == 2
    assert both(replace(shop.context, shared=None, worded={where: "x"})) == 2


@rule("tube.cases", title="t", on=Tube, grade=Grade.QUERY, cases=("starting", "running"), **COMMON)
def by_case(tube: Tube, case: LoadCase, sheet: Sheet) -> Judgement:
    """A figure of a table, which may differ between load cases, and a size, which may not."""
    sheet.take("p", case.live_pressure)
    sheet.look_up("α", tubes.expansion)
    return sheet.states(sheet.read("ends", tube.ends) == "open", "the ends are open")


def test_what_differs_between_load_cases_is_told_with_its_case(tmp_path: Path) -> None:
    shop = Shop(tmp_path, FILES, by_case)
    found = check(by_case, shop.part(), shop.context)
    assert set(found.rests_on) == {
        "duty cases.starting.live_pressure",
        "duty cases.running.live_pressure",
        "expansion α (starting)",
        "expansion α (running)",
        "tube ends",
    }
    assert set(found.corners) == set(found.proofs) == {"starting", "running"}
    alone = check(stress, shop.part(), shop.context)
    assert not any("(" in name for name in alone.rests_on)


def of_number(says: str, found: str, limit: str) -> Judgement:
    return Judgement(False, says, 1.5, Amount(1.0, "m", found), Amount(2.0, "m", limit) if limit else None)


def test_a_comparison_that_fails_in_two_load_cases_is_told_once() -> None:
    one, again = of_number("a", "load", "most"), of_number("b", "load", "most")
    other, alone = of_number("c", "load", "least"), of_number("d", "load", "")
    words = [Judgement(False, "e"), Judgement(False, "f"), Judgement(False, "e")]
    each = [(1, one), (1, again), (2, again), (1, other), (1, alone), *((1, one) for one in words)]
    assert [part.says for part in each_once(each)] == ["a", "b", "c", "d", "e", "f"]


def test_a_sheet_that_was_cut_short_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shop = Shop(tmp_path, FILES, late)
    found: Check = check(late, shop.part(), shop.context)
    seconds = shop.context.design.settings.seconds_per_rule
    assert found.could_not_run == (
        f"it did not end within {seconds} s of the processor, or {5 * seconds} s by the clock "
        "(seconds_per_rule in speclint.toml)"
    )

    def interrupted(*_: Any) -> Any:
        raise KeyboardInterrupt

    monkeypatch.setattr(rule_run, "results_by_case", interrupted)
    with pytest.raises(KeyboardInterrupt):
        check(stress, shop.part(), shop.context)


def test_a_rule_is_enclosed_on_its_component_and_in_its_load_case(
    shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[tuple[Any, ...]] = []

    def enclosed(*given: Any) -> Any:
        asked.append(given[:4])
        return over_box(*given)

    for module in ("case_result", "where_it_fails"):
        monkeypatch.setattr(f"speclint.checking.{module}.over_box", enclosed)
    part = shop.part()
    for work in (
        lambda: where_it_fails(case_stress, part, shop.context, {}),
        lambda: check(case_stress, part, shop.context),
    ):
        asked.clear()
        work()
        assert {(id(rule), id(component), type(case)) for rule, component, case, _ in asked} == {
            (id(case_stress), id(part), LoadCase)
        }
        assert len({id(case) for _, _, case, _ in asked}) == 2
        assert all(one[3] is shop.context for one in asked)
