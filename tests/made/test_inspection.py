"""What is inspected on a part, ranked by what its tolerance carries of a limit: worked by hand.

The rule of the bench holds n = (d + 2 D)/400 mm. With d = 100 mm ±0.5 and D = 105 mm ±0.5 the one moves n by
1/400 = 0.0025 across its tolerance, the other by 2/400 = 0.005.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, formula, rule
from speclint.checking import Assessment
from speclint.equations import Metres
from speclint.errors import DesignError
from speclint.made import InspectionList, checked_for, inspection_list
from speclint.made.inspection_points import inspection_points
from speclint.specs import Component
from speclint.testing import DesignFolder, changed
from tests import tubes


@formula("L = d + 2 D", cites=[FIRST_PRINCIPLES])
def reach(d: Metres, D: Metres) -> Metres:
    """Length of a pile of tubes."""
    return d + 2 * D


@rule(
    "tube.reach",
    title="the pile of tubes fits",
    on=tubes.Tube,
    grade=Grade.NONCONFORMITY,
    limits=[Limit("room", "400 mm", "length", COMMON_PRACTICE, "room for the pile")],
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def pile(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """Once the bore, twice the outside."""
    bore, outside = sheet.take("d", tube.bore), sheet.take("D", tube.outside)
    return sheet.at_most(sheet.work("L", reach, d=bore, D=outside), sheet.limit("room"))


@rule(
    "tube.statistic",
    title="the middle of the bore fits",
    on=tubes.Tube,
    grade=Grade.NONCONFORMITY,
    limits=[Limit("room", "400 mm", "length", COMMON_PRACTICE, "room for the pile")],
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def statistic(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """Both limits at once: the corner knows no side of it."""
    low, high = sheet.take_limits("d", tube.bore)
    return sheet.at_most(sheet.work("L", reach, d=(low + high) / 2, D=(low + high) / 4), sheet.limit("room"))


def listed(
    folder: Path,
    *changes: tuple[str, str],
    part: str = "tube",
    settings: str = "",
    rules: Sequence[Rule] = (pile,),
) -> InspectionList:
    files = {**tubes.FILES, "tube.toml": changed(tubes.TUBE, *changes)}
    drawn = DesignFolder(folder, tubes.tubes(*rules)).write(files, settings=settings).assess()
    assert not drawn.complaints
    return inspection_list(drawn, part)


def test_twice_the_sensitivity_at_one_tolerance_stands_before(tmp_path: Path) -> None:
    found = listed(tmp_path).ranked
    assert [one.at.key for one in found] == ["outside", "bore"]
    assert [one.carried for one in found] == pytest.approx([0.005, 0.0025])


def test_three_times_the_tolerance_stands_before_twice_the_sensitivity(tmp_path: Path) -> None:
    """±1.5 on d moves n by 3/400 = 0.0075."""
    found = listed(tmp_path, ("100 mm ±0.5", "100 mm ±1.5")).ranked
    assert [one.at.key for one in found] == ["bore", "outside"]
    assert [one.carried for one in found] == pytest.approx([0.0075, 0.005])


def test_what_both_limits_are_taken_of_is_restated(tmp_path: Path) -> None:
    """L = d + 2 (d/2) = 2 d: with low = high = 99.5 mm 199 mm, with 100.5 mm 201 mm: 2/400 = 0.005."""
    found = listed(tmp_path, rules=(statistic,)).ranked
    assert [(one.at.key, pytest.approx(one.carried)) for one in found] == [("bore", 0.005)]


def test_a_gauge_has_a_tenth_and_proves_conformity_between(tmp_path: Path) -> None:
    """1 mm between the limits: U = 0.1 mm, and with the whole of it as guard band 99.6 to 100.4 mm."""
    bore = next(one for one in listed(tmp_path).ranked if one.at.key == "bore")
    assert bore.uncertainty == pytest.approx(0.1e-3)
    assert bore.accepted == pytest.approx((99.6e-3, 100.4e-3))
    settings = '[made]\ngauge_share = "20 %"\ndecision = "simple acceptance"\n'
    bore = next(one for one in listed(tmp_path, settings=settings).ranked if one.at.key == "bore")
    assert bore.uncertainty == pytest.approx(0.2e-3)
    assert bore.accepted == pytest.approx((99.5e-3, 100.5e-3))


@pytest.mark.parametrize("share", ["21 %", "0 %", "10 % ±1"])
def test_a_gauge_that_takes_more_than_a_fifth_is_refused(tmp_path: Path, share: str) -> None:
    settings = f'[made]\ngauge_share = "{share}"\n'
    found = DesignFolder(tmp_path, tubes.tubes(pile)).write(tubes.FILES, settings=settings).assess()
    assert [str(one.where) for one in found.complaints] == ["speclint.toml:2 made.gauge_share"]
    assert "up to a fifth" in str(found.complaints[0])


def test_what_no_rule_rests_on_is_listed_apart(tmp_path: Path) -> None:
    found = listed(tmp_path)
    assert [(one.at.key, one.carried) for one in found.no_rule] == [("pressure", 0.0), ("temperature", 0.0)]
    assert (found.share, found.decision) == (0.1, "guard band of U")
    assert {one.at.key for one in found.ranked}.isdisjoint({"pressure", "temperature"})


def test_limits_that_are_not_stated_and_conditions_stand_apart(tmp_path: Path) -> None:
    found = listed(tmp_path, ("100 mm ±0.5", "100 mm"), rules=(pile, *tubes.RULES))
    assert [one.at.key for one in found.ranked] == ["outside"]
    assert [(one.at.key, one.uncertainty) for one in found.without_limits] == [("bore", None)]
    assert {one.at.key for one in found.conditions} == {"pressure", "temperature"}


@rule(
    "tube.square",
    title="the zone of the end leaves room",
    on=tubes.Tube,
    grade=Grade.NONCONFORMITY,
    limits=[Limit("room", "0.4 mm", "length", COMMON_PRACTICE, "room for the end")],
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def square(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """The zone of a geometrical tolerance, which states no limits."""
    return sheet.at_most(sheet.take("t", tube.tolerances["end"].zone), sheet.limit("room"))


def test_a_zone_is_measured_from_nothing_to_its_width(tmp_path: Path) -> None:
    """0.1 mm of 0.4 mm is 0.25 of the limit; U is a tenth, 0.01 mm, and up to 0.09 mm is accepted: none below."""
    zone = '[tolerances.end]\nform = "flat"\nzone = "0.1 mm"\n'
    found = listed(tmp_path, ('held_in = "rack"', f'held_in = "rack"\n{zone}'), rules=(pile, square))
    first = found.ranked[0]
    assert (first.at.key, pytest.approx(first.carried)) == ("tolerances.end.zone", 0.25)
    assert first.uncertainty == pytest.approx(0.01e-3)
    assert first.accepted == pytest.approx((0.0, 0.09e-3))


def test_what_rules_ask_for_and_nobody_stated_is_told(tmp_path: Path) -> None:
    found = listed(tmp_path, ('bore = "100 mm ±0.5"\n', ""))
    assert found.unstated == (("bore", ("tube.reach",)),)
    assert found.ranked == ()


def test_the_greatest_over_the_load_cases_counts(tmp_path: Path) -> None:
    """At 12 bar, D = 104.5 mm, 1.2 × 100.5/4 = 30.15 MPa and 1.2 × 99.5/5 = 23.88 of 100; at 10 bar a sixth less."""
    (case,) = (rule for rule in tubes.RULES if rule.name == "tube.case-stress")
    bore = next(one for one in listed(tmp_path, rules=(case,)).ranked if one.at.key == "bore")
    assert (bore.rests[0].case, pytest.approx(bore.carried)) == ("starting", 0.3015 - 0.2388)


def test_a_mate_whose_check_takes_a_value_ranks_it(tmp_path: Path) -> None:
    """The gap is judged on the tube: the hole of the rack, +0.1/0, carries it all the same."""
    found = listed(tmp_path, part="rack", rules=tubes.RULES)
    assert [one.at.key for one in found.ranked] == ["hole"]
    assert [one.check.order for one in found.ranked[0].rests] == [("tube", "tube.loose-hot")]


def test_the_metal_is_listed_with_what_its_figures_carry(tmp_path: Path) -> None:
    """The growth of the tube: 12.3e-6 − 11.7e-6 per kelvin, 200 K warmer, over the cold gap, all at the worst corner.

    D = 105.5 mm, H = 106 mm: 0.6e-6 × 105.5 × 199.85 K or so over 0.5 mm is 0.025.
    """
    (figure,) = listed(tmp_path, rules=tubes.RULES).figures
    assert figure.figure == "expansion"
    assert figure.check.rule.name == "tube.loose-hot"
    assert figure.carried == pytest.approx(0.6e-6 * 105.5 * 199.85 / 0.5, rel=1e-3)


@pytest.mark.parametrize(("name", "said"), [("tub", '"tube"'), ("duty", "duty is of the kind duty")])
def test_what_is_no_component_is_refused_in_one_line(tmp_path: Path, name: str, said: str) -> None:
    with pytest.raises(DesignError) as problem:
        listed(tmp_path, part=name)
    assert said in str(problem.value)
    assert "\n" not in str(problem.value)


ON_PAPER = (
    'ends = "open"\nsafety_part = true\ntest_pressure = "45 bar gauge"\ninspection_document = "3.1"\n'
    'examination = "dye penetrant"\n'
)


def test_points_and_papers_are_those_of_the_spec(tmp_path: Path) -> None:
    found = listed(tmp_path, ('ends = "open"\n', ON_PAPER))
    assert [(one.what.split(" ")[0], one.stands) for one in found.points] == [
        ("hydraulic", "not stated"),
        ("release", "hold"),
    ]
    assert {(one.stated, one.record) for one in found.asked} == {
        ("45 bar gauge", "hydraulic_tests"),
        ("3.1", "certificate"),
        ("dye penetrant", "examinations"),
    }
    stated = '[inspection_points]\npressure_test = "witness"\n'
    found = listed(
        tmp_path, ('ends = "open"\n', ON_PAPER), ('held_in = "rack"', f'held_in = "rack"\n{stated}')
    )
    assert [one.stands for one in found.points] == ["witness", "hold"]


@pytest.mark.parametrize(
    ("part", "wanted"),
    [
        ('kind = "weldment"\nid = "one"\n', ["welds"]),
        ('kind = "piston"\nid = "one"\n[welding]\nwelded = true\n', ["welds"]),
        ('kind = "piston"\nid = "one"\n[welding]\nwelded = false\n', []),
        ('kind = "piston"\nid = "one"\n', []),
        ('kind = "cylinder-liner"\nid = "one"\n', ["entry"]),
        ('kind = "valve-seat"\nid = "one"\n', ["entry"]),
        ('kind = "piston"\nid = "one"\ntest_pressure = "25 bar gauge"\n', ["hydraulic"]),
        ('kind = "piston"\nid = "one"\nsafety_part = true\n', ["release"]),
        ('kind = "piston"\nid = "one"\nsafety_part = false\n', []),
    ],
)
def test_each_point_belongs_to_its_making(tmp_path: Path, part: str, wanted: list[str]) -> None:
    design = DesignFolder(tmp_path).write({"one.toml": part}).assess().design
    assert design is not None
    one = design.specs["one"]
    assert isinstance(one, Component)
    assert [point.what.replace(",", "").split(" ")[0] for point in inspection_points(one)] == wanted


def test_what_a_spec_asks_for_of_its_welds_names_their_table(tmp_path: Path) -> None:
    text = 'kind = "piston"\nid = "one"\ninspection_document = "3.1"\n[welding]\nheat_treatment = "stress relieved"\n'
    drawn = DesignFolder(tmp_path).write({"one.toml": text}).assess()
    assert not drawn.complaints
    assert [(one.what, one.stated, one.record) for one in inspection_list(drawn, "one").asked] == [
        ("inspection document, EN 10204", "3.1", "certificate"),
        ("heat treatment after welding (welding)", "stress relieved", "heat_treatments"),
    ]


TUBE_MADE = 'kind = "made-part"\nid = "tube-1"\nof = "tube"\nserial = "1"\n'


def of_two_tubes(folder: Path, *rules: Rule, rack: str = tubes.RACK) -> Assessment:
    """Two tubes in one rack, and a part as made."""
    files = {**tubes.FILES, "spare.toml": tubes.TUBE, "tube-1.toml": TUBE_MADE, "rack.toml": rack}
    drawn = DesignFolder(folder, tubes.tubes(*rules)).write(files).assess()
    assert not drawn.complaints
    return drawn


@pytest.mark.parametrize(("part", "wanted"), [("tube", ["tube"]), ("rack", ["spare", "tube"])])
def test_each_component_whose_checks_are_varied_is_told_once(
    tmp_path: Path, part: str, wanted: list[str]
) -> None:
    """Five rules of each tube: the rack is consulted by those of both, a tube by its own alone."""
    told: list[str] = []
    inspection_list(of_two_tubes(tmp_path), part, told.append)
    assert told == wanted


@rule(
    "tube.of-none",
    title="does not apply",
    on=tubes.Tube,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
)
def of_none(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """Not after the bore was taken."""
    sheet.take("d", tube.bore)
    raise sheet.not_applicable("for tests")


@rule(
    "tube.reviewed",
    title="the bore is large enough, as the others found",
    on=tubes.Tube,
    grade=Grade.NONCONFORMITY,
    limits=[Limit("least", "50 mm", "length", COMMON_PRACTICE, "least bore")],
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
    reviews=True,
)
def reviewed(tube: tubes.Tube, sheet: Sheet) -> Judgement:
    """After the others."""
    return sheet.at_least(sheet.take("d", tube.bore), sheet.limit("least"))


def test_rules_that_do_not_apply_or_review_others_ask_for_no_inspection(tmp_path: Path) -> None:
    drawn = of_two_tubes(tmp_path, of_none, reviewed)
    told: list[str] = []
    found = inspection_list(drawn, "tube", told.append)
    assert (told, found.ranked) == ([], ())
    assert {"bore", "outside"} <= {one.at.key for one in found.no_rule}


def test_what_only_a_review_asks_for_is_not_told(tmp_path: Path) -> None:
    assert listed(tmp_path, ('bore = "100 mm ±0.5"\n', ""), rules=(reviewed,)).unstated == ()


def test_only_what_the_part_itself_does_not_state_is_told(tmp_path: Path) -> None:
    """The rack has no hole: that is asked of the rack, by the rule of both tubes, and not of the tube."""
    drawn = of_two_tubes(tmp_path, rack='kind = "rack"\n')
    assert inspection_list(drawn, "tube").unstated == ()
    assert inspection_list(drawn, "rack").unstated == (("hole", ("tube.loose-hot",)),)


def test_a_part_as_made_and_a_design_that_could_not_be_read_are_refused(tmp_path: Path) -> None:
    with pytest.raises(DesignError, match="tube-1 is a part as made; give the component that it was made to"):
        inspection_list(of_two_tubes(tmp_path), "tube-1")
    with pytest.raises(DesignError, match=r"speclint\.toml"):
        inspection_list(DesignFolder(tmp_path, tubes.tubes()).write({}, settings="[works\n").assess(), "tube")


def test_all_that_is_drawn_is_checked_for_a_part_and_no_part_as_made(tmp_path: Path) -> None:
    design = of_two_tubes(tmp_path).design
    assert design is not None
    assert checked_for("tube", design) == {"tube", "spare", "rack"}
    with pytest.raises(DesignError, match="no component is called tub;"):
        checked_for("tub", design)
