"""The loop and the sheet: outcomes, corners, load cases, limits, fingerprints, and a rule that fails."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any, ClassVar

import pytest
from hypothesis import given, settings, strategies as st

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Course, Grade, Judgement, Limit, Sheet, rule
from speclint.checking import Check, assess, check
from speclint.checking.case_result import failing_at
from speclint.checking.where_it_fails import still_conforms
from speclint.checking.worst_corner import Effort
from speclint.equations import Metres, Ratio, formula
from speclint.errors import OutOfRange, replace
from speclint.families import load_families
from speclint.rules import Corner, NotCovered, RuleEnded
from speclint.specs import NOT_STATED, Component, Length
from speclint.testing import DesignFolder, made_family
from tests import tubes
from tests.tubes import FILES, TUBE, Tube


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes.tubes()).write(FILES)


def with_rule(tmp_path: Path, function: Any, **more: Any) -> DesignFolder:
    made = rule(
        "tube.made",
        title="t",
        on=Tube,
        grade=Grade.NONCONFORMITY,
        cites=[FIRST_PRINCIPLES],
        why="w",
        leaves_out="l",
        **more,
    )(function)
    return DesignFolder(tmp_path, tubes.tubes(made)).write(FILES)


def test_the_governing_corner_is_kept_and_named(shop: DesignFolder) -> None:
    """By hand: p d/(D − d) = 3 MPa × 100.5/(104.5 − 100.5) = 75.375 MPa at bore high and outside low."""
    found = shop.only("tube.stress")
    assert found.outcome == "conforms"
    assert found.utilisation == pytest.approx(0.75375)
    assert found.governing == ("bore high", "outside low")
    assert found.case == ""


def test_a_value_at_its_limit_conforms_and_a_hair_beyond_does_not(shop: DesignFolder) -> None:
    """By hand: at the worst corner d = 100.5 and D = 104.5 mm, 100 MPa needs p = 100 × 4/100.5 = 3.98009950 MPa."""
    at, beyond = "39.8009950 bar gauge", "39.8009960 bar gauge"
    assert shop.replace("tube.toml", "30 bar gauge", at).only("tube.stress").outcome == "conforms"
    found = shop.replace("tube.toml", at, beyond).only("tube.stress")
    assert (found.outcome, found.grade) == ("finding", Grade.HOLD)
    assert found.utilisation == pytest.approx(1.0, abs=1e-6)


def test_an_absolute_pressure_is_taken_as_gauge(shop: DesignFolder) -> None:
    """31.01325 bar absolute at a site of 1.01325 bar is 30 bar gauge."""
    shop.replace("tube.toml", "30 bar gauge", "31.01325 bar absolute")
    assert shop.only("tube.stress").utilisation == pytest.approx(0.75375)


def test_the_governing_load_case_is_kept_and_named(shop: DesignFolder) -> None:
    """Starting has 12 bar against 10 bar running: 1.2 MPa × 100.5/4 = 30.15 MPa of 100."""
    found = shop.only("tube.case-stress")
    assert (found.case, found.utilisation) == ("starting", pytest.approx(0.3015))


def test_a_case_that_the_duty_does_not_state_is_not_assessed(shop: DesignFolder) -> None:
    text = 'kind = "duty"\nid = "duty"\n[cases.starting]\nlive_pressure = "12 bar gauge"\n'
    found = shop.write({"duty.toml": text}).only("tube.case-stress")
    assert (found.outcome, found.grade) == ("not assessed", None)
    assert found.missing == ("load case running is not stated in duty.toml",)


def test_a_finding_in_one_case_outweighs_a_missing_one(shop: DesignFolder) -> None:
    text = 'kind = "duty"\nid = "duty"\n[cases.starting]\nlive_pressure = "60 bar gauge"\n'
    found = shop.write({"duty.toml": text}).only("tube.case-stress")
    assert (found.outcome, found.case) == ("finding", "starting")
    assert found.missing == ("load case running is not stated in duty.toml",)


def test_of_two_load_cases_that_fail_the_worse_is_listed(shop: DesignFolder) -> None:
    """Starting at 50 bar: 5 × 100.5/4 = 125.6 MPa; running at 60 bar: 150.75 of 100 MPa. It is one comparison."""
    shop.replace("duty.toml", "12 bar", "50 bar").replace("duty.toml", "10 bar", "60 bar")
    found = shop.only("tube.case-stress")
    assert [one.utilisation for one in found.failing] == [pytest.approx(1.5075)]
    assert found.case == "running"


def test_no_duty_at_all_is_not_assessed(shop: DesignFolder) -> None:
    found = shop.replace("tube.toml", 'duty = "duty"\n', "").only("tube.case-stress")
    assert found.outcome == "not assessed"
    assert "duty is not stated" in found.says


def test_a_duty_that_is_stated_and_not_read_is_not_said_to_be_unstated(shop: DesignFolder) -> None:
    """A file that cannot be read, an id that no spec has, a spec of another kind: each has its own complaint."""
    said = 'tube states the duty "{}", and no duty of that id could be read'
    for told, file, change in (
        ("duty", "duty.toml", ('"12 bar gauge"', '"12 bar"')),
        ("dutty", "tube.toml", ('"duty"', '"dutty"')),
        ("rack", "tube.toml", ('"dutty"', '"rack"')),
    ):
        found = shop.replace(file, *change).only("tube.case-stress", readable=False)
        assert (found.outcome, found.says) == ("not assessed", said.format(told))


def test_a_spec_from_which_a_duty_may_be_inherited_and_that_is_not_read_is_named(shop: DesignFolder) -> None:
    shop.replace("tube.toml", 'duty = "duty"\n', "").replace("rack.toml", "106 mm", "106 kg")
    found = shop.only("tube.case-stress", readable=False)
    said = "duty is not stated, nor inherited from a component it is linked to: rack could not be read"
    assert (found.outcome, found.says) == ("not assessed", said)


def test_a_missing_value_names_its_key_and_file(shop: DesignFolder) -> None:
    found = shop.replace("tube.toml", 'bore = "100 mm ±0.5"\n', "").only("tube.stress")
    assert (found.outcome, found.grade) == ("not assessed", Grade.HOLD)
    assert found.missing == ("bore is not stated in tube.toml",)
    assert found.where.key == "bore"


def test_not_assessed_counts_only_where_the_rule_may_give_a_hold(shop: DesignFolder) -> None:
    shop.replace("tube.toml", "hoops = 4\n", "")
    assert shop.only("tube.hoops").stands_in_the_way is None
    shop.replace("tube.toml", 'temperature = "200..220 °C"\n', "")
    assert shop.only("tube.loose-hot").stands_in_the_way is Grade.HOLD


def test_a_limit_at_zero_reports_what_is_left_and_the_share_used(shop: DesignFolder) -> None:
    """By hand: 106 − 105.5 = 0.5 mm cold; hot less 12.3e-6 × 105.5 × (220 − 20) = 0.25953 mm: 0.24047 left, 51.9 %."""
    found = shop.only("tube.loose-hot")
    assert found.judgement is not None
    assert found.judgement.left is not None
    assert found.judgement.left.value == pytest.approx(0.24047e-3, abs=1e-8)
    assert found.utilisation == pytest.approx(0.51906, abs=1e-5)
    assert found.governing == ("hole of rack low", "outside high", "temperature high", "expansion high")


def test_a_limit_at_zero_from_both_sides(shop: DesignFolder) -> None:
    """Nothing is left when the hole is 105.5 + 0.25953 = 105.75953 mm at its low limit."""
    shop.replace("rack.toml", "106 mm +0.1/0", "105.75954 mm +0.1/0")
    assert shop.only("tube.loose-hot").outcome == "conforms"
    shop.replace("rack.toml", "105.75954", "105.75952")
    assert shop.only("tube.loose-hot").outcome == "finding"


def test_counts_and_words(shop: DesignFolder) -> None:
    assert shop.only("tube.hoops").outcome == "conforms"
    assert shop.replace("tube.toml", "hoops = 4", "hoops = 3").only("tube.hoops").outcome == "finding"
    assert shop.only("tube.ends").outcome == "conforms"
    assert shop.replace("tube.toml", '"open"', '"closed"').only("tube.ends").outcome == "finding"


def test_a_sentence_that_asks_for_what_a_comparison_has_not_is_told_as_a_fault_of_the_rule(
    tmp_path: Path,
) -> None:
    """A tube in order has nothing to say; one that is not would have ended the report."""

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        """Of two values there is nothing that is left."""
        return sheet.at_most(sheet.take("d", tube.bore), sheet.take("D", tube.outside))

    shop = with_rule(tmp_path, function, wrong="{left} is left")
    assert shop.only("tube.made").outcome == "conforms"
    found = shop.replace("tube.toml", "100 mm", "110 mm").only("tube.made", runs=False)
    said = "its sentence on what is wrong asks for what this comparison has not: KeyError: 'left'"
    assert (found.grade, found.could_not_run) == (Grade.HOLD, said)


def test_a_length_is_not_held_against_a_pressure(tmp_path: Path) -> None:
    """In SI numbers 0.1005 is less than 3 000 000: the check would conform, and say nothing."""

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        """Two values of two dimensions."""
        return sheet.at_most(sheet.take("d", tube.bore), sheet.take("p", tube.pressure))

    found = with_rule(tmp_path, function).only("tube.made", runs=False)
    assert found.could_not_run.startswith("TypeError: bore in m is held against pressure in Pa (")


def test_a_rule_that_returns_no_judgement_could_not_be_run(tmp_path: Path) -> None:
    def function(tube: Tube, sheet: Sheet) -> Any:
        """A truth of the program, which says neither what was compared nor where it stands."""
        return sheet.take("d", tube.bore) < 1.0

    found = with_rule(tmp_path, function).only("tube.made", runs=False)
    assert "TypeError: the rule returned bool, not a judgement of its sheet" in found.could_not_run


def test_a_rule_that_raises_is_a_hold_and_the_rest_goes_on(tmp_path: Path) -> None:
    shop = DesignFolder(tmp_path, tubes.tubes(tubes.raises, tubes.stress)).write(FILES)
    assessment = shop.assess()
    found = {check.rule.name: check for check in assessment.checks}
    assert found["tube.raises"].grade is Grade.HOLD
    line = (
        tubes.raises.function.__code__.co_firstlineno + 3
    )  # below its decorator, its first line and its docstring
    assert found["tube.raises"].says == (
        f"could not be run (family tubes): ZeroDivisionError: a fault of the rule (tests.tubes, line {line})"
    )
    assert found["tube.stress"].outcome == "conforms"
    assert assessment.exit_code == 3


@formula("x = d", cites=[FIRST_PRINCIPLES])
def only_small(d: Metres) -> Metres:
    """A length, for bores to 100 mm."""
    if d > 0.1:
        raise OutOfRange(f"bore {d * 1e3:g} mm is beyond 100 mm")
    return d


@formula("x = d/2 + 0 D", cites=[FIRST_PRINCIPLES])
def only_half(d: Metres, D: Metres) -> Metres:
    """Half the bore, whatever the outside."""
    return d / 2 + 0 * D


@formula("x = d/D", cites=[FIRST_PRINCIPLES])
def share(d: Metres, D: Metres) -> Ratio:
    """Bore as a share of the outside."""
    return d / D


def test_a_check_points_at_the_value_that_is_judged(tmp_path: Path) -> None:
    """Of two values taken, at the one held against the limit and not at the first."""

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        sheet.take("D", tube.outside)
        return sheet.at_most(sheet.take("d", tube.bore), sheet.limit("most"))

    limits = [Limit("most", "90 mm", "length", COMMON_PRACTICE, "greatest bore")]
    shop = with_rule(tmp_path, function, limits=limits)
    assert shop.only("tube.made").where.key == "bore"
    exact = shop.replace("tube.toml", "100 mm ±0.5", "100 mm")  # so that no side of it governs
    assert exact.only("tube.made").where.key == "bore"


def test_a_check_points_at_a_value_that_governs(tmp_path: Path) -> None:
    """A worked length that follows the bore and nothing else: the outside, taken first, is not to be looked at."""

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        D = sheet.take("D", tube.outside)
        half = sheet.work("x", only_half, d=sheet.take("d", tube.bore), D=D)
        return sheet.at_most(half, sheet.limit("most"))

    limits = [Limit("most", "90 mm", "length", COMMON_PRACTICE, "greatest length")]
    found = with_rule(tmp_path, function, limits=limits).only("tube.made")
    assert (found.governing, found.where.key) == (("bore high",), "bore")


class Plate(Component):
    """A plate, with sizes whose names are of two words."""

    kind: ClassVar[str] = "plate"
    called: ClassVar[str] = "plate"

    full_length: Length = NOT_STATED
    clear_width: Length = NOT_STATED


def test_a_value_that_governs_is_found_by_its_whole_name(tmp_path: Path) -> None:
    """The clear width governs at its high side: 50.5/2 mm of 25 mm. The full length, taken first, makes nothing."""

    def function(plate: Plate, sheet: Sheet) -> Judgement:
        """Made for one test."""
        D = sheet.take("D", plate.full_length)
        half = sheet.work("x", only_half, d=sheet.take("d", plate.clear_width), D=D)
        return sheet.at_most(half, sheet.limit("most"))

    words: dict[str, Any] = {"cites": [FIRST_PRINCIPLES], "why": "w", "leaves_out": "l"}
    limits = [Limit("most", "25 mm", "length", COMMON_PRACTICE, "greatest length")]
    made = rule("plate.made", title="t", on=Plate, grade=Grade.QUERY, limits=limits, **words)(function)
    loaded = load_families([made_family("plates", [Plate], [made])])
    stated = 'kind = "plate"\nfull_length = "80 mm ±0.5"\nclear_width = "50 mm ±0.5"\n'
    found = DesignFolder(tmp_path, loaded).write({"plate.toml": stated}).only("plate.made")
    assert found.utilisation == pytest.approx(50.5 / 50)
    assert (found.governing, found.where.key) == (("clear width high",), "clear_width")


def test_both_sides_of_a_comparison_are_written_in_one_unit(tmp_path: Path) -> None:
    """A share that no spec states is written in per cent where its limit is: at worst 100.5/104.5 = 96.17 %."""

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        d, D = sheet.take("d", tube.bore), sheet.take("D", tube.outside)
        return sheet.at_most(sheet.work("x", share, d=d, D=D), sheet.limit("most"))

    limits = [Limit("most", "90 %", "ratio", COMMON_PRACTICE, "greatest share")]
    found = with_rule(tmp_path, function, limits=limits).only("tube.made")
    assert found.says == "bore as a share of the outside 96.17 % > 90 % greatest share"


def test_a_value_is_named_by_what_it_is_and_not_by_its_number(tmp_path: Path) -> None:
    """100 mm and 10 % are both 0.1 in SI units, and a bore that reaches its limit is not its own limit."""

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        bore, most = sheet.take_nominal("d", tube.bore), sheet.limit("most")
        sheet.limit("share")
        return sheet.at_most(bore, most)

    limits = [
        Limit("most", "100 mm", "length", COMMON_PRACTICE, "greatest bore"),
        Limit("share", "10 %", "ratio", COMMON_PRACTICE, "a share that is not judged"),
    ]
    found = with_rule(tmp_path, function, limits=limits).only("tube.made")
    assert found.says == "bore, nominal 100 mm ≤ 100 mm greatest bore"


@pytest.mark.parametrize("gravest", [Grade.NONCONFORMITY, Grade.HOLD])
def test_out_of_the_range_of_a_formula_is_a_query_or_a_hold(tmp_path: Path, gravest: Grade) -> None:
    """At bore low the formula serves, at bore high (100.5 mm) it does not: the check is no pass.

    Of a rule that can give a hold nobody has then shown that the part is safe, so that the gate must not open.
    """

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        worked = sheet.work("x", only_small, d=sheet.take("d", tube.bore))
        return sheet.at_most(worked, sheet.limit("most"))

    limits = [Limit("most", "1 m", "length", COMMON_PRACTICE)]
    found = with_rule(tmp_path, function, limits=limits, gravest=gravest).only("tube.made")
    wanted = Grade.HOLD if gravest is Grade.HOLD else Grade.QUERY
    assert (found.outcome, found.grade) == ("finding", wanted)
    assert "beyond 100 mm" in found.says


def test_not_applicable(tmp_path: Path) -> None:
    def function(_tube: Tube, sheet: Sheet) -> Judgement:
        raise sheet.not_applicable("tubes of this sort need none")

    found = with_rule(tmp_path, function).only("tube.made")
    assert (found.outcome, found.grade, found.says) == (
        "not applicable",
        None,
        "tubes of this sort need none",
    )


@pytest.mark.parametrize(
    "function",
    [
        lambda tube, sheet: sheet.at_most(sheet.take("d", tube.bore) * 2, sheet.take("D", tube.outside)),
        lambda _tube, _sheet: None,
        lambda tube, sheet: sheet.at_most(float("nan"), sheet.take("D", tube.outside)),
        lambda _tube, sheet: sheet.limit("undeclared"),
    ],
    ids=[
        "judges what is not on the sheet",
        "returns no judgement",
        "judges no number",
        "asks an undeclared limit",
    ],
)
def test_a_rule_that_breaks_the_rules_of_the_sheet_could_not_be_run(tmp_path: Path, function: Any) -> None:
    assert with_rule(tmp_path, function).only("tube.made", runs=False).could_not_run


@pytest.mark.parametrize(
    ("value", "low", "high", "holds", "used"),
    [
        ("100 mm", "90 mm", "110 mm", True, 100 / 110),
        ("110 mm", "90 mm", "110 mm", True, 1.0),
        ("90 mm", "90 mm", "110 mm", True, 1.0),
        ("89 mm", "90 mm", "110 mm", False, 90 / 89),
        ("111 mm", "90 mm", "110 mm", False, 111 / 110),
        ("60 mm", "0 mm", "100 mm", True, 0.2),
        ("101 mm", "0 mm", "100 mm", False, 1.02),
    ],
)
def test_within(tmp_path: Path, value: str, low: str, high: str, holds: bool, used: float) -> None:
    def function(tube: Tube, sheet: Sheet) -> Judgement:
        return sheet.within(sheet.take("d", tube.bore), sheet.limit("low"), sheet.limit("high"))

    limits = [Limit("low", low, "length", COMMON_PRACTICE), Limit("high", high, "length", COMMON_PRACTICE)]
    shop = with_rule(tmp_path, function, limits=limits).replace("tube.toml", '"100 mm ±0.5"', f'"{value}"')
    found = shop.only("tube.made")
    assert (found.outcome == "conforms") is holds
    assert found.utilisation == pytest.approx(used)


@pytest.mark.parametrize(
    ("limit", "holds", "used"), [("220 °C", True, 1.0), ("219.9 °C", False, 220 / 219.9)]
)
def test_no_hotter_counts_from_zero_celsius(tmp_path: Path, limit: str, holds: bool, used: float) -> None:
    """The tube is at 200 to 220 °C: the hot end against the limit, in degrees Celsius."""

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        return sheet.no_hotter(sheet.take("T", tube.temperature), sheet.limit("hottest"))

    limits = [Limit("hottest", limit, "temperature", COMMON_PRACTICE)]
    found = with_rule(tmp_path, function, limits=limits).only("tube.made")
    assert (found.outcome == "conforms") is holds
    assert found.utilisation == pytest.approx(used)


def test_a_worst_case_that_lies_inside_is_scanned_for(tmp_path: Path) -> None:
    """x (1 − x) is greatest at a half, which no end and no corner shows."""

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        sheet.take("d", tube.bore)
        place = sheet.scan("x", "place of the hump", lambda x: x * (1 - x), 0.0, 0.9, unit="m")
        return sheet.at_least(sheet.work("x", only_small, d=place / 10), sheet.limit("least"))

    limits = [Limit("least", "49.9999 mm", "length", COMMON_PRACTICE)]
    found = with_rule(tmp_path, function, limits=limits).only("tube.made")
    place = next(step.value for step in found.steps if step.kind == "scanned")
    assert place == pytest.approx(0.5, abs=1e-6)
    assert found.outcome == "conforms"


def test_what_runs_beside_a_scan_is_written_down_only_where_the_sheet_is(tmp_path: Path) -> None:
    """x² beside the hump of x (1 − x), at 0, 0.3, 0.6 and 0.9; without meaning at 0; never at a tolerance corner."""
    asked: list[float] = []

    def square(x: float) -> float | None:
        asked.append(x)
        return x**2 if x else None

    def function(tube: Tube, sheet: Sheet) -> Judgement:
        sheet.take("d", tube.bore)
        place = sheet.scan(
            "x",
            "place of the hump",
            lambda x: x * (1 - x),
            0.0,
            0.9,
            unit="m",
            steps=3,
            beside=[Course("y", "its square", "m²", square)],
        )
        return sheet.at_least(sheet.work("x", only_small, d=place / 10), sheet.limit("least"))

    limits = [Limit("least", "49.9999 mm", "length", COMMON_PRACTICE)]
    found = with_rule(tmp_path, function, limits=limits).only("tube.made")
    (scan,) = (step for step in found.steps if step.kind == "scanned")
    assert [(one.symbol, one.name, one.unit) for one in scan.series] == [
        ("x", "place of the hump", "m"),
        ("y", "its square", "m²"),
    ]
    places, squares = (one.values for one in scan.series)
    assert places == pytest.approx((0.0, 0.3, 0.6, 0.9))
    assert squares[0] is None
    assert squares[1:] == pytest.approx((0.09, 0.36, 0.81))
    assert len(asked) == 4


def test_the_worst_of_several_judgements(tmp_path: Path) -> None:
    def function(tube: Tube, sheet: Sheet) -> Judgement:
        bore, outside = sheet.take("d", tube.bore), sheet.take("D", tube.outside)
        mild = sheet.at_most(outside, sheet.limit("small"))
        grave = sheet.at_most(bore, sheet.limit("small")).graded(Grade.HOLD)
        return sheet.worst(mild, grave)

    limits = [Limit("small", "50 mm", "length", COMMON_PRACTICE)]
    found = with_rule(tmp_path, function, limits=limits, gravest=Grade.HOLD).only("tube.made")
    assert (found.grade, found.says.startswith("bore")) == (Grade.HOLD, True)


def test_every_number_on_the_sheet_knows_its_line(shop: DesignFolder) -> None:
    steps = shop.only("tube.loose-hot").steps
    places = [str(step.where) for step in steps if step.kind == "taken"]
    assert places == ["rack.toml:3 hole", "tube.toml:5 outside", "tube.toml:7 temperature"]


def fingerprints(shop: DesignFolder) -> dict[str, str]:
    return {check.rule.name: check.fingerprint for check in shop.assess().checks}


@pytest.mark.parametrize(
    ("old", "new", "changed"),
    [
        ('bore = "100 mm ±0.5"', 'bore = "100.1 mm ±0.5"', {"tube.stress", "tube.case-stress"}),
        ('bore = "100 mm ±0.5"', 'bore = "100 mm ±0.4"', {"tube.stress", "tube.case-stress"}),
        ('bore = "100 mm ±0.5"', 'bore = "10 cm ±0.05"', set()),
        ("hoops = 4", "\n\nhoops = 4", set()),
        ("hoops = 4", "hoops = 5", {"tube.hoops"}),
        ('ends = "open"', 'ends = "closed"', {"tube.ends"}),
        ('kind = "tube"', 'kind = "tube"\ntitle = "a title no rule reads"', set()),
    ],
)
def test_a_fingerprint_rests_on_exactly_what_was_taken(
    shop: DesignFolder, old: str, new: str, changed: set[str]
) -> None:
    before = fingerprints(shop)
    after = fingerprints(shop.replace("tube.toml", old, new))
    assert {name for name in before if before[name] != after[name]} == changed


def test_a_fingerprint_rests_on_linked_specs_and_settings_too(shop: DesignFolder) -> None:
    before = fingerprints(shop)
    after = fingerprints(shop.replace("rack.toml", "106 mm", "106.2 mm"))
    assert {name for name in before if before[name] != after[name]} == {"tube.loose-hot"}
    shop.write({}, settings='[limits."tube.hoops"]\nleast = "3"\n')
    changed = fingerprints(shop)
    assert {name for name in after if after[name] != changed[name]} == {"tube.hoops"}


def test_assumed_dimensions_are_listed(shop: DesignFolder) -> None:
    shop.replace("tube.toml", 'bore = "100 mm ±0.5"', 'bore = { value = "100 mm ±0.5", from = "assumed" }')
    assert [where.key for where in shop.only("tube.stress").assumed] == ["bore"]


def test_a_figure_assumed_in_a_case_that_does_not_govern_is_listed_too(shop: DesignFolder) -> None:
    """Starting governs, at 12 bar; the pressure assumed for running may be the one that is wrong."""
    shop.replace("duty.toml", '"10 bar gauge"', '{ value = "10 bar gauge", from = "assumed" }')
    check = shop.only("tube.case-stress")
    assert check.case == "starting"
    assert [where.key for where in check.assumed] == ["cases.running.live_pressure"]


@settings(max_examples=20, deadline=None)
@given(st.floats(0.0, 3.0), st.floats(0.0, 2.0))
def test_wider_limits_never_make_a_check_easier(more_bore: float, more_outside: float) -> None:
    """Property: utilisation at the governing corner grows with each tolerance."""
    import tempfile

    with tempfile.TemporaryDirectory() as folder:
        shop = DesignFolder(Path(folder), tubes.tubes()).write(FILES)
        before = shop.only("tube.stress").utilisation
        wider = TUBE.replace("100 mm ±0.5", f"100 mm ±{0.5 + more_bore:.3f}")
        wider = wider.replace("105 mm ±0.5", f"105 mm ±{0.5 + more_outside / 2:.3f}")
        after = shop.write({"tube.toml": wider}).only("tube.stress").utilisation
        assert before is not None
        assert after is not None
        assert after >= before - 1e-12


def test_asking_only_whether_a_rule_conforms_agrees_with_the_check(shop: DesignFolder) -> None:
    """A tube that conforms in all but two: too high a pressure for one rule, and no number of hoops for another."""
    shop.replace("tube.toml", "30 bar gauge", "50 bar gauge").replace("tube.toml", "hoops = 4\n", "")
    assessment = shop.assess()
    assert assessment.design is not None
    assert assessment.context is not None
    for found in assessment.checks:
        component = assessment.design.specs[found.component]
        assert isinstance(component, Tube)
        holds = still_conforms(found, component, assessment.context)
        assert holds == (found.outcome == "conforms"), (found.component, found.rule.name)
    assert {found.outcome for found in assessment.checks} >= {"conforms", "finding", "not assessed"}


def test_boxes_enumeration_and_search_agree_on_every_rule(shop: DesignFolder) -> None:
    assessment = shop.assess()
    assert assessment.design is not None
    assert assessment.context is not None
    for found in assessment.checks:
        component = assessment.design.specs[found.component]
        assert isinstance(component, Tube)
        for effort in (Effort(boxes=0), Effort(boxes=0, corners=1)):
            other: Check = check(found.rule, component, assessment.context, effort=effort)
            assert other.utilisation == found.utilisation


def reviewing(**more: Any) -> Any:
    def function(_tube: Tube, sheet: Sheet) -> Judgement:
        outcomes = sheet.outcomes()
        return sheet.states(outcomes.get("tube.stress") == "conforms", "the stress conforms")

    common: dict[str, Any] = {
        "title": "t",
        "on": Tube,
        "grade": Grade.OBSERVATION,
        "cites": [FIRST_PRINCIPLES],
    }
    return rule("tube.a-review", **common, why="w", leaves_out="l", **more)(function)


def test_a_rule_that_reviews_sees_how_the_others_came_out(tmp_path: Path) -> None:
    shop = DesignFolder(tmp_path, tubes.tubes(tubes.stress, reviewing(reviews=True))).write(FILES)
    assert [one.rule.name for one in shop.assess().checks] == ["tube.a-review", "tube.stress"]
    assert shop.only("tube.a-review").outcome == "conforms"
    before = shop.only("tube.a-review").fingerprint
    shop.replace("tube.toml", "30 bar", "45 bar")
    assert shop.only("tube.a-review").outcome == "finding"
    assert shop.only("tube.a-review").fingerprint != before


def test_a_rule_that_reviews_says_nothing_while_only_some_are_run(tmp_path: Path) -> None:
    loaded = tubes.tubes(tubes.stress, reviewing(reviews=True))
    DesignFolder(tmp_path, loaded).write(FILES)
    some = [one for one in loaded.rules if one.reviews]
    assert assess([tmp_path], loaded, some).checks[0].outcome == "not assessed"


def test_a_rule_that_does_not_say_so_cannot_review(tmp_path: Path) -> None:
    shop = DesignFolder(tmp_path, tubes.tubes(reviewing())).write(FILES)
    assert "does not say that it reviews" in shop.only("tube.a-review", runs=False).says


def test_a_rule_ends_early_by_one_of_three_endings() -> None:
    assert {kind.outcome for kind in RuleEnded.__subclasses__()} == {
        "not assessed",
        "not applicable",
        "query",
    }


def test_what_no_corner_changes_is_worked_once_and_written_down(tmp_path: Path) -> None:
    """At every corner the one value; the sheets that are written work it again, so that it stands on them."""
    worked: list[float] = []

    def made(tube: Tube, sheet: Sheet) -> Judgement:
        def nominal() -> float:
            worked.append(sheet.take_nominal("D_n", tube.outside))
            return worked[-1]

        D = sheet.once("outside", nominal)
        return sheet.at_most(sheet.take("d", tube.bore), D)

    found = with_rule(tmp_path, made).only("tube.made")
    assert found.outcome == "conforms"
    assert set(worked) == {0.105}
    assert len(worked) <= 3
    assert [step.value for step in found.steps if step.symbol == "D_n"] == [0.105]


def test_what_fails_at_its_own_corner_is_written_down_unless_it_is_not_made_there() -> None:
    """The second comparison is not made where the first is alone."""
    one, other = Judgement(False, "one"), Judgement(False, "other")
    both = replace(one, parts=(one, other))
    record: Any = SimpleNamespace(record="what it rests on")

    def of(*endings: Any, index: int = 1) -> list[str]:
        left = iter(endings)
        places = [((2, index, "≤"), Corner())] * len(endings)
        parts, also = failing_at(places, lambda _: (next(left), record))
        assert len(also) == (len(parts) if len(parts) > 1 else 0)
        return [part.says for _, part in parts]

    assert of(both) == ["other"]
    assert of(both, both) == ["other", "other"]
    assert of(one) == []
    assert of(one, index=0) == ["one"]
    assert of(NotCovered("it ended"), both) == ["other"]
