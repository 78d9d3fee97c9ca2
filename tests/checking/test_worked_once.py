"""A check of parts alike is worked once, and comes out as if each had been worked by itself."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Annotated, Any, ClassVar

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.checking import Assessment, Check, case_result, rule_run, worst_corner
from speclint.errors import field_names, replace
from speclint.families import load_families
from speclint.reports.json_report import check_as_data
from speclint.reports.sheet_text import sheet_of
from speclint.specs import NOT_STATED, OWN_PLACE, Component, Length, LinkTo, LoadCase, SpecTable
from speclint.testing import DesignFolder
from tests.tubes import DUTY, RACK, RULES, TUBE, Rack, Tube, entry_point, tubes

Files = dict[str, str]
FAMILY = tubes()
_COMMON: dict[str, Any] = {"cites": [FIRST_PRINCIPLES], "why": "for tests", "leaves_out": "nothing"}


class Bay(SpecTable):
    """Where a rack stands in a wagon."""

    rack: Annotated[LinkTo[Rack], OWN_PLACE] = NOT_STATED
    width: Length = NOT_STATED


class Wagon(Component):
    """A wagon for racks."""

    kind: ClassVar[str] = "wagon"
    called: ClassVar[str] = "wagon"

    bays: dict[str, Bay] = {}


@rule("tube.bay", title="the tube goes into its bay", on=Tube, grade=Grade.QUERY, **_COMMON)
def bay(tube: Tube, sheet: Sheet) -> Judgement:
    """The bay of the tube's rack, one of several in the wagon."""
    rack = sheet.follow(tube.held_in)
    (wagon,) = sheet.belonging_to(rack, Wagon)
    ((_, own),) = sheet.leading_to(rack, Bay, wagon, "bays", by="rack", called="bay")
    return sheet.at_least(sheet.take("w", own.width), sheet.take("D", tube.outside))


@rule("tube.slots", title="the rack has one slot", on=Tube, grade=Grade.QUERY, **_COMMON)
def slots(tube: Tube, sheet: Sheet) -> Judgement:
    """A rule that looks at a table without opening a value of it."""
    return sheet.states(len(sheet.follow(tube.held_in).slots) == 1, "the rack has one slot")


@rule(
    "tube.cool",
    title="the tube is no hotter than it may be",
    on=Tube,
    grade=Grade.QUERY,
    cases=("running",),
    limits=[Limit("most", "300 °C", "temperature", FIRST_PRINCIPLES)],
    **_COMMON,
)
def cool(tube: Tube, case: LoadCase, sheet: Sheet) -> Judgement:
    """What the duty states under the id of the part."""
    return sheet.no_hotter(sheet.take("T", case.temperature_of(tube)), sheet.limit("most"))


@rule(
    "tube.neither",
    title="the bore is small, and it is great",
    on=Tube,
    grade=Grade.QUERY,
    limits=[
        Limit("most", "90 mm", "length", FIRST_PRINCIPLES),
        Limit("least", "110 mm", "length", FIRST_PRINCIPLES),
    ],
    **_COMMON,
)
def neither(tube: Tube, sheet: Sheet) -> Judgement:
    """Two comparisons that fail, the one at the greatest bore and the other at the least."""
    bore = sheet.take("d", tube.bore)
    return sheet.worst(sheet.at_most(bore, sheet.limit("most")), sheet.at_least(bore, sheet.limit("least")))


@rule("rack.tubes", title="every tube goes into the rack", on=Rack, grade=Grade.QUERY, **_COMMON)
def every_tube(rack: Rack, sheet: Sheet) -> Judgement:
    """Whatever tubes belong to the rack."""
    hole = sheet.take("H", rack.hole)
    tubes_in_it = sheet.belonging_to(rack, Tube)
    return sheet.each(tubes_in_it, lambda tube: sheet.at_least(hole, sheet.take("D", tube.outside)))


WAGONS = load_families([entry_point("wagons", kinds=(Tube, Rack, Wagon), rules=(*RULES, bay, slots))])
NEITHER = load_families([entry_point("tubes", rules=(neither,))])
COOL = load_families([entry_point("tubes", rules=(cool,))])
BY_RACK = load_families([entry_point("tubes", kinds=(Tube, Rack, Wagon), rules=(every_tube,))])
TWO_RULES = load_families([entry_point("wagons", kinds=(Tube, Rack, Wagon), rules=(bay, slots))])


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Each search for a worst corner, as long as a test runs: the rule and the load case."""
    seen: list[str] = []
    search = worst_corner.find_worst

    def counted(*given: Any) -> Any:
        seen.append("worked")
        return search(*given)

    monkeypatch.setattr(case_result, "find_worst", counted)
    return seen


def said(check: Check) -> dict[str, Any]:
    """All that a check says; of how it is known to be the worst only the manner."""
    whole = {name: getattr(check, name) for name in field_names(type(check))}
    return {**whole, "proofs": {case: proof.method for case, proof in check.proofs.items()}}


def compared(folder: DesignFolder, files: Files, *single: str) -> None:
    """The checks of all together are those of each file by itself."""
    together = folder.write(files).assess()
    assert together.complaints == ()
    alone = [check for file in single for check in folder.assess(file).checks]
    expected = {check.order: said(check) for check in alone}
    found = {check.order: said(check) for check in together.checks if check.order in expected}
    assert len(found) == len(expected) > 0
    for order in expected:
        assert found[order] == expected[order], order


def as_written(run: Assessment, checks: Iterable[Check]) -> dict[tuple[object, ...], str]:
    """Each check as its JSON and its sheet have it."""
    return {
        (one.component, one.rule.name): json.dumps(check_as_data(one)) + repr(sheet_of(run, one))
        for one in checks
    }


def anew(run: Assessment, checks: Iterable[Check]) -> list[Check]:
    """Checks made again, each by itself."""
    assert run.context is not None
    context = replace(run.context, shared=False)
    return [rule_run.check(one.rule, part_of(run, one), context) for one in checks]


def part_of(run: Assessment, check: Check) -> Component:
    """The component of a check."""
    part = run.design.specs[check.component] if run.design else None
    assert isinstance(part, Component)
    return part


LIKE = 'kind = "tube"\nlike = "tube"\nheld_in = "{rack}"\n'
PLAIN = {"duty.toml": DUTY, "rack.toml": RACK, "tube.toml": TUBE}
OTHER = RACK.replace('kind = "rack"', 'kind = "rack"\nid = "other"')


@pytest.mark.parametrize(
    ("second", "searches"),
    [
        (LIKE.format(rack="rack"), 6),
        (LIKE.format(rack="other"), 6),
        (LIKE.format(rack="rack") + 'title = "another"\n', 6),
        (LIKE.format(rack="rack") + "hoops = 5\n", 7),
        (LIKE.format(rack="rack") + 'bore = "99 mm ±0.5"\n', 9),
    ],
)
def test_only_what_asked_for_a_difference_is_worked_again(
    tmp_path: Path, worked: list[str], second: str, searches: int
) -> None:
    """Five rules of which one has two load cases: six searches for the first, and those that took the change."""
    folder = DesignFolder(tmp_path, FAMILY).write({**PLAIN, "other.toml": OTHER, "second.toml": second})
    assert folder.assess().complaints == ()
    assert len(worked) == searches


def test_a_rack_that_differs_in_what_was_asked_is_followed_again(tmp_path: Path) -> None:
    other = OTHER.replace("+0.1/0", "+0.11/0")
    files = {**PLAIN, "other.toml": other, "second.toml": LIKE.format(rack="other")}
    compared(DesignFolder(tmp_path, FAMILY), files, "second.toml")


@pytest.mark.parametrize(
    "second",
    [
        LIKE.format(rack="rack"),
        LIKE.format(rack="other"),
        LIKE.format(rack="other") + 'bore = "100.4 mm ±0.5"\n',
        LIKE.format(rack="other").replace("like", "mirror_of") + 'ends = "closed"\n',
    ],
)
def test_it_comes_out_as_by_itself(tmp_path: Path, second: str) -> None:
    files = {**PLAIN, "other.toml": OTHER, "second.toml": second}
    compared(DesignFolder(tmp_path, FAMILY), files, "second.toml", "tube.toml")


def test_a_temperature_stated_for_one_of_them_is_its_own(tmp_path: Path) -> None:
    """The duty names one of the parts: whatever took it is worked again."""
    duty = DUTY + '[cases.running.temperatures]\nsecond = "300 °C"\n'
    compared(
        DesignFolder(tmp_path, FAMILY),
        {**PLAIN, "duty.toml": duty, "second.toml": LIKE.format(rack="rack")},
        "second.toml",
    )


@pytest.mark.parametrize(
    ("temperatures", "searches"),
    [
        ({"tube": "200 °C", "second": "200 °C"}, 2),
        ({"tube": "200 °C", "second": "200 °C", "third": "90 °C"}, 2),
        ({"tube": "200 °C", "second": "210 °C"}, 3),
        ({"tube": "200..210 °C", "second": "200..210 °C"}, 2),
    ],
)
def test_temperatures_stated_for_each_are_compared_under_their_ids(
    tmp_path: Path, worked: list[str], temperatures: dict[str, str], searches: int
) -> None:
    """The third tube, which is like neither, is worked by itself."""
    stated = "".join(f'{name} = "{text}"\n' for name, text in temperatures.items())
    files = {
        **PLAIN,
        "duty.toml": f"{DUTY}[cases.running.temperatures]\n{stated}",
        "second.toml": LIKE.format(rack="rack"),
        "third.toml": TUBE,
    }
    run = DesignFolder(tmp_path, COOL).write(files).assess()
    assert run.complaints == ()
    assert len(worked) == searches
    assert as_written(run, run.checks) == as_written(run, anew(run, run.checks))


def test_what_fails_at_other_corners_than_govern_is_written_down_at_its_own(
    tmp_path: Path, worked: list[str]
) -> None:
    """100.5 of 90 mm, and 99.5 of 110 mm: 1.117 and 1.106 are used."""
    files = {**PLAIN, "other.toml": OTHER, "second.toml": LIKE.format(rack="other")}
    run = DesignFolder(tmp_path, NEITHER).write(files).assess()
    assert len(worked) == 1
    used = [[one.utilisation for one in check.failing] for check in run.checks]
    assert used == [pytest.approx([100.5 / 90, 110 / 99.5])] * 2
    assert as_written(run, run.checks) == as_written(run, anew(run, run.checks))
    for check in run.checks:
        assert [one.found.value for one in check.failing if one.found] == pytest.approx([0.1005, 0.0995])


SECOND = TUBE.replace('"rack"', '"other"')


@pytest.mark.parametrize(
    ("files", "searches"),
    [
        ({"second.toml": SECOND}, 1),
        ({"second.toml": SECOND.replace("105 mm", "106 mm")}, 2),
        ({"second.toml": SECOND, "third.toml": SECOND}, 2),
        ({"second.toml": SECOND, "third.toml": SECOND, "fourth.toml": TUBE}, 1),
        ({"second.toml": SECOND, "wagon.toml": 'kind = "wagon"\n[bays.a]\nrack = "rack"\n'}, 1),  # no tube
    ],
)
def test_what_belongs_to_each_is_compared_in_its_order(
    tmp_path: Path, worked: list[str], files: Files, searches: int
) -> None:
    other = 'kind = "rack"\nlike = "rack"\n'
    run = DesignFolder(tmp_path, BY_RACK).write({**PLAIN, "other.toml": other, **files}).assess()
    assert run.complaints == ()
    assert len(worked) == searches
    assert as_written(run, run.checks) == as_written(run, anew(run, run.checks))


@settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    bore=st.sampled_from(["", "99 mm ±0.5", "100 mm ±0.6"]),
    pressure=st.sampled_from(["", "31 bar gauge", "45 bar gauge"]),
    hoops=st.sampled_from(["", "3"]),
    rack=st.sampled_from(["rack", "other"]),
    hole=st.sampled_from(["106 mm +0.1/0", "105.6 mm +0.1/0"]),
    stated=st.booleans(),
)
def test_whatever_differs_the_outcome_is_that_of_each_by_itself(
    tmp_path: Path, bore: str, pressure: str, hoops: str, rack: str, hole: str, stated: bool
) -> None:
    """Property: sharing the work changes nothing, whether a value is the same, another, or not stated at all."""
    lines = [f'{key} = "{value}"' for key, value in (("bore", bore), ("pressure", pressure)) if value]
    lines += [f"hoops = {hoops}"] if hoops else []
    lines += ['in_slot = "first"'] if stated else []
    second = LIKE.format(rack=rack) + "\n".join(lines) + "\n"
    other = OTHER.replace("106 mm +0.1/0", hole)
    files = {**PLAIN, "other.toml": other, "second.toml": second}
    compared(DesignFolder(tmp_path, FAMILY), files, "second.toml")


WAGON = """
kind = "wagon"
[bays.a]
rack = "{first}"
width = "110 mm ±1"
[bays.b]
rack = "{second}"
width = "{width}"
"""
SLOT = '[slots.{name}]\nwidth = "10 mm"\n'


@pytest.mark.parametrize(
    ("first", "width", "more", "searches"),
    [
        ("rack", "110 mm ±1", "", 2),
        ("other", "110 mm ±1", "", 2),
        ("rack", "110 mm ±2", "", 3),
        ("rack", "110 mm ±1", SLOT.format(name="one"), 3),
    ],
)
def test_entries_that_lead_elsewhere_and_tables_not_looked_at_are_no_difference(
    tmp_path: Path, worked: list[str], first: str, width: str, more: str, searches: int
) -> None:
    """Two rules: that of the bay sees the width of its own bay alone, that of the slots how many there are."""
    second = "other" if first == "rack" else "rack"
    files = {
        **PLAIN,
        "other.toml": OTHER + more,
        "second.toml": LIKE.format(rack="other"),
        "wagon.toml": WAGON.format(first=first, second=second, width=width),
    }
    run = DesignFolder(tmp_path, TWO_RULES).write(files).assess()
    assert run.complaints == ()
    assert len(worked) == searches
    assert as_written(run, run.checks) == as_written(run, anew(run, run.checks))


RACKS = ("one", "two", "three")


def wagon_of(racks: Sequence[str], widths: Sequence[str]) -> str:
    """A wagon with those racks, in that order."""
    places = zip("abc", racks, widths, strict=True)
    return 'kind = "wagon"\n' + "".join(
        f'[bays.{name}]\nrack = "{rack}"\nwidth = "{width}"\n' for name, rack, width in places
    )


@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    order=st.permutations(RACKS),
    widths=st.lists(st.sampled_from(["110 mm ±1", "105 mm ±1"]), min_size=3, max_size=3),
    holes=st.lists(st.sampled_from(["106 mm +0.1/0", "105.6 mm +0.1/0"]), min_size=3, max_size=3),
    slotted=st.lists(st.booleans(), min_size=3, max_size=3),
    bores=st.lists(st.sampled_from(["", "99 mm ±0.5", "100.4 mm ±0.5"]), min_size=2, max_size=2),
)
def test_a_check_taken_over_is_written_as_one_made_anew(
    tmp_path: Path,
    order: list[str],
    widths: list[str],
    holes: list[str],
    slotted: list[bool],
    bores: list[str],
) -> None:
    """Property: over small designs of three tubes alike, in racks of one wagon that are alike or not."""
    files = {"duty.toml": DUTY, "wagon.toml": wagon_of(order, widths)}
    files["tube.toml"] = TUBE.replace('"rack"', '"one"')
    for rack, hole, slot in zip(RACKS, holes, slotted, strict=True):
        files[f"{rack}.toml"] = f'kind = "rack"\nhole = "{hole}"\n' + SLOT.format(name="x") * slot
    for rack, bore in zip(RACKS[1:], bores, strict=True):
        files[f"tube-{rack}.toml"] = LIKE.format(rack=rack) + (f'bore = "{bore}"\n' if bore else "")
    run = DesignFolder(tmp_path, WAGONS).write(files).assess()
    assert run.complaints == ()
    assert as_written(run, run.checks) == as_written(run, anew(run, run.checks))
