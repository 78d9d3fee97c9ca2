"""The value at which a rule just holds: which check answers, how far is looked, and on which side, by hand."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.checking import Solved, question, solved, solving as solving_
from speclint.errors import SettingsError
from speclint.quantities import Measure
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.checking.test_office_steps import folder
from tests.checking.test_worked_once import cool
from tests.tubes import DUTY, FILES, TUBE, Tube

COMMON: dict[str, Any] = {"cites": [FIRST_PRINCIPLES], "why": "w", "leaves_out": "l"}


def within(name: str, taken: Callable[[Tube, Sheet], float], least: str, most: str, dimension: str) -> Rule:
    """A rule that holds a value between two limits."""
    limits = [Limit(of, text, dimension, COMMON_PRACTICE) for of, text in (("least", least), ("most", most))]

    @rule(name, title="t", on=Tube, grade=Grade.QUERY, limits=limits, **COMMON)
    def judged(tube: Tube, sheet: Sheet) -> Judgement:
        return sheet.within(taken(tube, sheet), sheet.limit("least"), sheet.limit("most"))

    return judged


def of_hoops(least: str, most: str) -> Rule:
    return within("tube.some", lambda tube, sheet: sheet.count("n", tube.hoops), least, most, "ratio")


def of_bore(least: str, most: str) -> Rule:
    return within("tube.some", lambda tube, sheet: sheet.take("d", tube.bore), least, most, "length")


def found(
    root: Path,
    value: str,
    name: str,
    *changes: tuple[str, str],
    rules: tuple[Rule, ...] = (),
    settings: str = SETTINGS,
) -> Solved:
    shop = DesignFolder(root, tubes.tubes(*rules)).write(FILES, settings=settings)
    for old, new in changes:
        shop.replace("tube.toml", old, new)
    return solving(shop, f"tube.{value}", name)


def solving(shop: DesignFolder, value: str, name: str) -> Solved:
    before = shop.assess()
    assert before.design is not None
    assert before.complaints == ()
    return solved(before, question(f"{value}=?", before.design), name)


def sides(one: Solved) -> list[tuple[str, str, bool]]:
    return [(bound.written, bound.beyond, bound.higher) for bound in one.bounds]


LEAST_AND_MOST = [("3", "2", False), ("9", "10", True)]


@pytest.mark.parametrize(("hoops", "bounds"), [(4, LEAST_AND_MOST), (8, LEAST_AND_MOST[::-1])])
def test_the_nearer_of_two_sides_comes_first(
    tmp_path: Path, hoops: int, bounds: list[tuple[str, str, bool]]
) -> None:
    """From 3 to 9 hoops hold: of 4 the lower end is one away and the upper five."""
    one = found(
        tmp_path, "hoops", "tube.some", ("hoops = 4", f"hoops = {hoops}"), rules=(of_hoops("3", "9"),)
    )
    assert (one.holds, one.now, one.within) == (True, f"{hoops}", "12 more or fewer")
    assert sides(one) == bounds
    assert one.answer == one.bounds[0]
    assert one.question.name == "tube.hoops"
    assert one.check.rule.name == "tube.some"


@pytest.mark.parametrize(
    ("hoops", "bounds"),
    [
        (15, [("4", "3", False)]),  # the twelfth is too few
        (16, []),  # the twelfth is the last that is looked at
        (4, [("4", "3", False)]),
    ],
)
def test_twelve_pieces_are_looked_at_on_either_side(
    tmp_path: Path, hoops: int, bounds: list[tuple[str, str, bool]]
) -> None:
    one = found(tmp_path, "hoops", "tube.hoops", ("hoops = 4", f"hoops = {hoops}"))
    assert sides(one) == bounds
    assert one.answer == (one.bounds[0] if bounds else None)


def test_one_piece_is_the_least_that_is_looked_at(tmp_path: Path) -> None:
    """At least one is wanted: none is no number of pieces."""
    settings = SETTINGS + '[limits."tube.hoops"]\nleast = "1"\n'
    assert found(tmp_path, "hoops", "tube.hoops", settings=settings).bounds == ()


@pytest.mark.parametrize(
    ("bore", "bounds"),
    [
        # limits 0.2 mm apart have steps of 0.01 mm: 97.6 mm − 0.1 and 104.4 mm + 0.1 are the last that hold
        (
            "100 mm ±0.1",
            [("97.6 mm ±0.1", "97.59 mm ±0.1", False), ("104.4 mm ±0.1", "104.41 mm ±0.1", True)],
        ),
        (
            "104.4 mm ±0.1",
            [("104.4 mm ±0.1", "104.41 mm ±0.1", True), ("97.6 mm ±0.1", "97.59 mm ±0.1", False)],
        ),
        # limits 0.004 mm apart have steps of 0.0001 mm, and none that is finer
        (
            "104.49 mm ±0.002",
            [
                ("104.498 mm ±0.002", "104.4981 mm ±0.002", True),
                ("97.502 mm ±0.002", "97.5019 mm ±0.002", False),
            ],
        ),
    ],
)
def test_a_size_may_go_as_far_as_its_limits_hold(
    tmp_path: Path, bore: str, bounds: list[tuple[str, str, bool]]
) -> None:
    one = found(tmp_path, "bore", "tube.some", ("100 mm ±0.5", bore), rules=(of_bore("97.5 mm", "104.5 mm"),))
    assert one.holds
    assert one.within == "50 % of the value"
    assert sides(one) == bounds
    assert all(bound.used is not None and bound.used <= 1.0 for bound in one.bounds)
    assert all(bound.why and not bound.exact for bound in one.bounds)


def test_what_holds_to_the_end_of_the_reach_has_no_bound(tmp_path: Path) -> None:
    """Half of 100 mm is looked at on either side, with 0.1 mm beside it: 49.9 and 150.1 mm."""
    change = ("100 mm ±0.5", "100 mm ±0.1")
    for number, (least, most, count) in enumerate(
        (("49.9 mm", "150.1 mm", 0), ("50.1 mm", "150.1 mm", 1), ("49.9 mm", "149.9 mm", 1))
    ):
        (tmp_path / f"{number}").mkdir()
        one = found(tmp_path / f"{number}", "bore", "tube.some", change, rules=(of_bore(least, most),))
        assert len(one.bounds) == count, least


@pytest.mark.parametrize(
    ("least", "most", "instead", "higher"),
    [("5", "9", "5", True), ("1", "3", None, False)],
)
def test_pieces_are_added_and_none_is_taken_away(
    tmp_path: Path, least: str, most: str, instead: str | None, higher: bool
) -> None:
    one = found(tmp_path, "hoops", "tube.some", rules=(of_hoops(least, most),))
    assert not one.holds
    assert [(bound.written, bound.higher) for bound in one.bounds] == ([(instead, higher)] if instead else [])


@pytest.mark.parametrize(
    ("name", "plug", "gauge", "value", "instead", "higher"),
    [
        ("thread", 'thread = "M20"', "21 mm", "thread", "M22", True),
        ("small-thread", 'thread = "M20"', "19 mm", "thread", "M18", False),
        ("least", 'outside = "190 mm s6"', "190.166 mm", "outside", "190 mm t6", True),
        ("most", 'outside = "190 mm s6"', "190.105 mm", "outside", "190 mm p6", False),
        ("least", 'outside = "105 mm ±0.5"', "105.02 mm", "outside", "105.6 mm ±0.5", True),
        ("most", 'outside = "105 mm ±0.5"', "105.02 mm", "outside", "104.5 mm ±0.5", False),
        ("most", 'outside = "190 mm +0.150/+0.122"', "190.1394 mm", "outside", "190 mm +0.139/+0.111", False),
    ],
)
def test_the_least_change_says_to_which_side_it_goes(
    tmp_path: Path, name: str, plug: str, gauge: str, value: str, instead: str, higher: bool
) -> None:
    """The same changes as those of the remedies, worked by hand there: of a thread, a class and limits too."""
    one = solving(folder(tmp_path, plug, f'size = "{gauge}"', name), f"plug.{value}", f"plug.{name}")
    assert not one.holds
    (bound,) = one.bounds
    assert (bound.written, bound.higher, bound.exact) == (instead, higher, False)
    assert bound.used is not None
    assert bound.used <= 1.0 + 1e-9


def test_a_window_narrower_than_the_step_is_met_exactly(tmp_path: Path) -> None:
    """No multiple of 0.1 mm lies between 100.12 and 100.18 mm."""
    shop = folder(tmp_path, 'outside = "100 mm"', 'size = "100.12..100.18 mm"', "within")
    (bound,) = solving(shop, "plug.outside", "plug.within").bounds
    assert (bound.written, bound.exact, bound.higher) == ("100.12 mm", True, True)


def test_a_thread_may_go_to_the_last_that_holds(tmp_path: Path) -> None:
    """M20 and M22 are at most 23 mm, M24 is not; a smaller one holds as far as is looked."""
    one = solving(
        folder(tmp_path, 'thread = "M20"', 'size = "23 mm"', "small-thread"),
        "plug.thread",
        "plug.small-thread",
    )
    assert (one.now, one.within) == ("M20", "the next few threads of its series")
    assert sides(one) == [("M22", "M24", True)]


@pytest.mark.parametrize(
    ("value", "name", "told"),
    [
        ("ends", "tube.ends", "--solve tube.ends: tube.ends is no quantity, no count and no thread"),
        (
            "outside",
            "tube.hoops",
            "--solve tube.hoops: no check of it rests on tube.outside; tube.case-stress, tube.loose-hot, "
            "tube.stress do",
        ),
        ("hoops", "tube.ends", "--solve tube.ends: no check of it rests on tube.hoops; tube.hoops does"),
        ("in_slot", "tube.ends", "--solve tube.ends: no check of it rests on tube.in_slot; no check does"),
    ],
)
def test_why_there_is_no_answer(tmp_path: Path, value: str, name: str, told: str) -> None:
    with pytest.raises(SettingsError) as problem:
        found(tmp_path, value, name, ('ends = "open"', 'ends = "open"\nin_slot = "a"'))
    assert str(problem.value) == told


def test_a_check_that_could_not_be_made_says_what_is_missing_or_what_it_says(tmp_path: Path) -> None:
    for number, (change, rules, told) in enumerate(
        (
            (('temperature = "200..220 °C"\n', ""), (), "temperature is not stated in tube.toml"),
            (("hoops = 4", "hoops = 4"), (unable,), "it is not known"),
        )
    ):
        (tmp_path / f"{number}").mkdir()
        name = "tube.unable" if rules else "tube.loose-hot"
        with pytest.raises(SettingsError, match=f"^--solve {name}: not assessed on tube: {told}"):
            found(tmp_path / f"{number}", "outside", name, change, rules=rules)


@rule("tube.unable", title="t", on=Tube, grade=Grade.QUERY, **COMMON)
def unable(tube: Tube, sheet: Sheet) -> Judgement:
    """What is never known."""
    sheet.take("D", tube.outside)
    raise sheet.not_assessed("it is not known")


def test_the_check_of_the_part_that_is_asked_about_answers_before_that_of_another(tmp_path: Path) -> None:
    """The hole of the rack is taken for every tube in it; of two that hold the first by its id."""
    shop = DesignFolder(tmp_path, tubes.tubes()).write({**FILES, "a-tube.toml": TUBE, "z-tube.toml": TUBE})
    assert solving(shop, "rack.hole", "tube.loose-hot").check.component == "a-tube"
    assert solving(shop, "tube.outside", "tube.loose-hot").check.component == "tube"
    shop.replace("z-tube.toml", "105 mm", "108 mm")
    assert solving(shop, "rack.hole", "tube.loose-hot").check.component == "z-tube"
    assert solving(shop, "tube.outside", "tube.loose-hot").check.component == "tube"


def test_a_check_that_was_not_assessed_gives_no_answer_beside_one_that_was(tmp_path: Path) -> None:
    shop = DesignFolder(tmp_path, tubes.tubes()).write(
        {**FILES, "a-tube.toml": TUBE.replace('temperature = "200..220 °C"\n', "")}
    )
    assert solving(shop, "rack.hole", "tube.loose-hot").check.component == "tube"


def test_a_value_that_nobody_could_write_in_steps_has_no_bounds(tmp_path: Path) -> None:
    one = found(tmp_path, "pressure", "tube.stress", ("30 bar", "0 bar"))
    assert (one.holds, one.bounds, one.within) == (True, (), "")


def test_a_temperature_may_go_as_far_as_the_rule_holds(tmp_path: Path) -> None:
    """By hand a tube of 105.2 mm ±0.5 has 106 − 105.7 = 0.3 mm to grow: 0.3/(12.3e-6 × 105.7) = 230.75 K above 20 °C,
    so that 250 °C holds at the upper end and 251 °C does not. A cooler one holds as far as is looked."""
    one = found(tmp_path, "temperature", "tube.loose-hot", ("105 mm", "105.2 mm"))
    assert one.within == "50 % of the value"
    assert sides(one) == [("230..250 °C", "231..251 °C", True)]


def test_a_temperature_that_is_tied_to_another_is_not_tried_at_others(tmp_path: Path) -> None:
    temperatures = '[cases.running.temperatures]\nrack = "200 °C"\ntube = "rack + 20 K"\n'
    shop = DesignFolder(tmp_path, tubes.tubes(cool)).write({**FILES, "duty.toml": DUTY + temperatures})
    one = solving(shop, "duty.cases.running.temperatures.tube", "tube.cool")
    assert (one.holds, one.bounds, one.within) == (True, (), "")
    of_rack = solving(shop, "duty.cases.running.temperatures.rack", "tube.cool")
    assert sides(of_rack) == [("280 °C", "281 °C", True)]


def test_each_value_that_is_tried_stands_in_the_part_that_is_held_against_its_mates(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each is asked whether it goes into its mate, not the value of the drawing again."""
    tried: list[str] = []

    def fits(part: Tube, _: object) -> list[str]:
        assert isinstance(part.pressure, Measure)
        tried.append(part.pressure.text)
        return []

    monkeypatch.setattr(solving_, "misfits_of", fits)
    assert len(found(tmp_path, "pressure", "tube.stress").bounds) == 1
    assert len({*tried} - {"30 bar gauge"}) > 1


@pytest.mark.parametrize("what", ["could_state", "misfits_of"])
def test_a_value_that_the_spec_could_not_state_is_no_bound(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    """None could but the present one, of which alone it is then known that it holds."""
    monkeypatch.setattr(solving_, what, lambda *_: what == "misfits_of" and ["it does not fit"])
    (bound,) = found(tmp_path, "pressure", "tube.stress").bounds
    assert bound.written == "30 bar gauge"
