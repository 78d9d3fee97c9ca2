"""Two states of a design and a draft: which parts are called otherwise, what lapses, what is still to be drawn."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import Any, ClassVar

import pytest

from speclint.checking import Check, changes, renamed_parts, still_to_be_drawn
from speclint.checking.concession_watch import _lapsed_in, dated
from speclint.checking.design_changes import new_and_cleared
from speclint.checking.rolled_parts import is_of_plate
from speclint.checking.unfinished import Unfinished
from speclint.errors import Location, NotKnown, replace
from speclint.families import load_families
from speclint.repository import Concession, Design, Register
from speclint.rules import Grade, PlaceSeen
from speclint.specs import NOT_STATED, Component, Length, SpecTable, Word
from speclint.testing import SETTINGS, DesignFolder, made_family
from tests import tubes
from tests.checking.test_worked_once import cool
from tests.repository.test_register_file import ACCEPTED
from tests.tubes import DUTY, FILES, RACK, TUBE

NUMBER = 'drawing = "T-12"\n'


def design(folder: Path, files: dict[str, str]) -> Design:
    folder.mkdir()
    found = DesignFolder(folder, tubes.tubes()).write(files).assess().design
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("before", "now", "renamed"),
    [
        (FILES, FILES, {}),
        (
            {**FILES, "rack.toml": RACK},
            {"duty.toml": DUTY, "stand.toml": RACK, "tube.toml": TUBE.replace('"rack"', '"stand"')},
            {"rack": "stand"},
        ),
        # both are renamed, and the tube is known as its link follows the rack
        (
            FILES,
            {"duty.toml": DUTY, "stand.toml": RACK, "pipe.toml": TUBE.replace('"rack"', '"stand"')},
            {"rack": "stand", "tube": "pipe"},
        ),
        # its rack is another that is not there before either: so far they are alike
        (
            FILES,
            {
                "duty.toml": DUTY,
                "stand.toml": RACK.replace("106", "107"),
                "pipe.toml": TUBE.replace('"rack"', '"stand"'),
            },
            {"tube": "pipe"},
        ),
        # of two alike none is told
        ({"a.toml": RACK, "b.toml": RACK}, {"c.toml": RACK, "d.toml": RACK}, {}),
        ({"a.toml": RACK, "b.toml": RACK}, {"c.toml": RACK}, {}),
        ({"a.toml": RACK}, {"c.toml": RACK, "d.toml": RACK}, {}),
        # another size, the same drawing
        ({"a.toml": RACK + NUMBER}, {"c.toml": RACK.replace("106", "107") + NUMBER}, {"a": "c"}),
        ({"a.toml": RACK + NUMBER}, {"c.toml": RACK.replace("106", "107")}, {}),
        ({"a.toml": RACK}, {"c.toml": RACK.replace("106", "107")}, {}),
        # a tube is no rack, whatever the number of its drawing
        ({"a.toml": RACK + NUMBER}, {"c.toml": TUBE.replace('duty = "duty"\n', "") + NUMBER}, {}),
        # one that is there under both ids was not renamed
        ({"a.toml": RACK}, {"a.toml": RACK, "c.toml": RACK}, {}),
        # linked to another rack that was there before: another tube
        (
            {**FILES, "other.toml": RACK.replace("106", "107")},
            {
                "duty.toml": DUTY,
                "rack.toml": RACK,
                "other.toml": RACK.replace("106", "107"),
                "pipe.toml": TUBE.replace('"rack"', '"other"'),
            },
            {},
        ),
    ],
)
def test_what_is_called_otherwise(
    tmp_path: Path, before: dict[str, str], now: dict[str, str], renamed: dict[str, str]
) -> None:
    assert renamed_parts(design(tmp_path / "a", before), design(tmp_path / "b", now)) == renamed


@pytest.fixture
def check(tmp_path: Path) -> Check:
    """A tube at 45 bar, of which 1.131 of the limit is used, 4.5 × 100.5/4 of 100 MPa: a hold."""
    folder = tmp_path / "tubes"
    folder.mkdir()
    shop = DesignFolder(folder, tubes.tubes()).write(FILES).replace("tube.toml", "30 bar", "45 bar")
    return shop.only("tube.stress")


@pytest.fixture
def conceded(check: Check) -> Concession:
    return replace(ACCEPTED, fingerprint=check.fingerprint, used="1.131", rests_on=dict(check.rests_on))


def test_a_concession_holds_while_nothing_changes(check: Check, conceded: Concession) -> None:
    assert changes(conceded, check) == []


@pytest.mark.parametrize(
    ("finding", "said"),
    [
        ({"fingerprint": "x", "rests_on": {}}, "tube bore was 100 mm ±0.5, is no longer used"),
        (
            {"fingerprint": "x"},
            "the fingerprint is not that of the finding, though every value reads the same",
        ),
        ({"outcome": "conforms", "grade": None}, "the check was: finding, is: conforms"),
        ({"judgement": None}, "used of the limit was 1.131, is no number"),
    ],
)
def test_what_ends_a_concession(
    check: Check, conceded: Concession, finding: dict[str, Any], said: str
) -> None:
    found = changes(conceded, replace(check, **finding))
    assert said in "; ".join(found)


def test_another_edition_a_graver_finding_and_another_number_end_it_too(
    check: Check, conceded: Concession
) -> None:
    assert changes(replace(conceded, edition=2), check) == ["edition of the rule was 2, is 1"]
    assert changes(replace(conceded, grade="query"), check) == [
        "the finding was of grade query, is of grade hold"
    ]
    assert changes(conceded, replace(check, grade=Grade.QUERY)) == []  # less grave
    assert changes(replace(conceded, used=""), check) == ["used of the limit was no number, is 1.131"]


def test_a_part_alike_has_a_concession_while_it_is_alike(check: Check, conceded: Concession) -> None:
    other = replace(check, component="spare", alike="one", fingerprint="another")
    both = replace(conceded, also_on=("spare",), alike="one")
    assert changes(both, other) == []
    assert changes(replace(both, alike="two"), other) == [
        "spare is no longer alike to tube as it was accepted"
    ]
    assert changes(replace(both, alike="two", used="0.5"), other) == [
        "spare is no longer alike to tube as it was accepted: used of the limit was 0.5, is 1.131"
    ]
    assert changes(replace(both, alike="two", used=""), replace(other, judgement=None)) == [
        "spare is no longer alike to tube as it was accepted"
    ]


@pytest.mark.parametrize(
    ("today", "states"),
    [
        (dt.date(2026, 2, 28), ["not yet in force"]),
        (dt.date(2026, 3, 1), []),
        (dt.date(2026, 3, 2), []),  # it is in force on its last day
        (dt.date(2026, 3, 3), ["expired"]),
    ],
)
def test_a_concession_has_its_days(today: dt.date, states: list[str]) -> None:
    assert [state for state, _ in dated(ACCEPTED, today, 30)] == states


@pytest.mark.parametrize(
    ("until", "years", "longer"),
    [
        (dt.date(2056, 3, 1), 30, False),
        (dt.date(2056, 3, 2), 30, True),
        (dt.date(2056, 2, 28), 30, False),
        (dt.date(2057, 1, 1), 30, True),
        (dt.date(2099, 3, 1), 73, False),
        (dt.date(2099, 12, 31), 30, True),
        (dt.date(2027, 3, 1), 1, False),
        (dt.date(2027, 3, 2), 1, True),
    ],
)
def test_a_concession_runs_for_some_years_at_most(until: dt.date, years: int, longer: bool) -> None:
    """It is dated 2026-03-01; 73 years on is 2099-03-01."""
    one = replace(ACCEPTED, until=until)
    said = f"it runs from 2026-03-01 to {until}, longer than {years} years"
    assert list(dated(one, ACCEPTED.date, years)) == ([("not accepted", said)] if longer else [])


def test_of_several_concessions_of_one_finding_one_in_force_is_enough(
    check: Check, conceded: Concession
) -> None:
    day = dt.date(2026, 3, 1)
    over = replace(conceded, number="C-0", until=dt.date(2026, 2, 1), date=dt.date(2026, 1, 1))
    elsewhere = replace(conceded, number="C-9", component="rack")
    of_asking = replace(conceded, number="C-8", rule="release.asks")

    def lapsed(*some: Concession, found: Check | str = check) -> tuple[tuple[str, str], ...]:
        return _lapsed_in(Register("", some), "tube", "release.asks", lambda *_: found, day, 30)

    assert lapsed(conceded, elsewhere, of_asking) == (("C-1", ""),)
    assert lapsed(over) == (("C-0", "it ended on 2026-02-01"),)
    ((_, why),) = lapsed(replace(conceded, until=dt.date(2099, 12, 31)))
    assert why.endswith("to 2099-12-31, longer than 30 years")
    assert lapsed(over, conceded) == (("C-0", ""), ("C-1", ""))
    assert lapsed(conceded, found="no rule") == ()
    assert lapsed(conceded, found=replace(check, outcome="conforms", grade=None)) == ()
    also = replace(conceded, component="rack", also_on=("tube",), alike=check.alike)
    assert lapsed(also) == (("C-1", ""),)


def test_new_and_cleared_findings_of_a_change(check: Check) -> None:
    holds = replace(check, outcome="conforms", grade=None)
    query = replace(check, grade=Grade.QUERY)
    for before, now, new, cleared in (
        (holds, check, 1, 0),
        (check, holds, 0, 1),
        (check, check, 0, 0),
        (query, check, 1, 0),
        (check, query, 0, 0),
    ):
        come, gone = new_and_cleared([before], [now])
        assert (len(come), len(gone)) == (new, cleared)
    come, gone = new_and_cleared([], [check])
    assert (len(come), len(gone)) == (1, 0)
    come, gone = new_and_cleared([check], [])
    assert (len(come), len(gone)) == (0, 1)


def seen(name: str, filled: bool) -> PlaceSeen:
    return PlaceSeen(name, filled)


def lists(folder: Path, stage: str = "draft", places: tuple[PlaceSeen, ...] = ()) -> tuple[Unfinished, ...]:
    """A tube without a bore and a temperature, of a duty without a pressure; one of its rules looked at places."""
    folder.mkdir()
    tube = TUBE.replace('bore = "100 mm ±0.5"\n', "").replace('temperature = "200..220 °C"\n', "")
    duty = DUTY.replace('[cases.running]\nlive_pressure = "10 bar gauge"', "[cases.running]")
    shop = DesignFolder(folder, tubes.tubes()).write(
        {**FILES, "tube.toml": tube, "duty.toml": duty}, settings=SETTINGS.replace("draft", stage)
    )
    found = shop.assess()
    checks = tuple(
        replace(one, places=places) if one.rule.name == "tube.hoops" else one for one in found.checks
    )
    return still_to_be_drawn(replace(found, checks=checks))


def test_values_that_are_wanted_are_listed_by_the_part_and_the_duty_that_are_to_state_them(
    tmp_path: Path,
) -> None:
    by_name = {one.under: one for one in lists(tmp_path / "a")}
    assert set(by_name) <= {"tube", "duty"}
    assert by_name["tube"].to_state == (("tube", ("bore", "temperature")),)
    assert (by_name["tube"].places, by_name["tube"].to_draw, by_name["tube"].values) == (0, (), 2)
    assert by_name["tube"].says == "tube: 2 values to be stated"


def test_a_temperature_that_a_duty_does_not_state_is_wanted_once_for_all_parts_of_a_kind(
    tmp_path: Path,
) -> None:
    """Two tubes see the duty; its own pressure is wanted for both, and the ids of the tubes tell nothing."""
    shop = DesignFolder(tmp_path, tubes.tubes(cool, tubes.case_stress)).write(
        {
            **FILES,
            "second.toml": TUBE,
            "duty.toml": DUTY.replace(
                'live_pressure = "10 bar gauge"\n', 'temperatures = { rack = "90 °C" }\n'
            ),
        }
    )
    found = still_to_be_drawn(shop.assess())
    assert [(one.under, one.places, one.to_draw, one.to_state) for one in found] == [
        ("duty", 0, (), (("duty", ("cases.running.live_pressure", "cases.running.temperatures.tube")),))
    ]
    assert found[0].says == "duty: 2 values to be stated"


def test_what_is_wanted_of_another_part_is_listed_under_that_which_wants_it(tmp_path: Path) -> None:
    """The tube wants the hole of its rack, and its own bore; both stand in the tube's list, in the order of ids."""
    shop = DesignFolder(tmp_path, tubes.tubes(tubes.loose_hot, tubes.stress)).write(
        {
            "rack.toml": RACK.replace('hole = "106 mm +0.1/0"\n', ""),
            "tube.toml": TUBE.replace('bore = "100 mm ±0.5"\n', "").replace('duty = "duty"\n', ""),
        }
    )
    (one,) = still_to_be_drawn(shop.assess())
    assert one.under == "tube"
    assert one.to_state == (("rack", ("hole",)), ("tube", ("bore",)))


def test_what_an_item_of_a_finding_lacks_is_told_by_the_finding(tmp_path: Path) -> None:
    found = DesignFolder(tmp_path, tubes.tubes()).write(FILES).assess()
    wanted = (Location("tube.toml", 4, "bore"),)
    for outcome, listed in (("finding", 0), ("not assessed", 1)):
        checks = tuple(replace(one, outcome=outcome, unstated=wanted) for one in found.checks)  # type: ignore[arg-type]
        assert len(still_to_be_drawn(replace(found, checks=checks))) == listed


@pytest.mark.parametrize("stage", ["for-review", "released"])
def test_at_a_later_stage_findings_say_it(tmp_path: Path, stage: str) -> None:
    assert lists(tmp_path / "a", stage) == ()


def test_places_are_counted_and_the_empty_ones_named_in_the_order_of_their_rules(tmp_path: Path) -> None:
    places = (seen("clamp (slot b)", False), seen("tube (slot a)", True), seen("clamp (slot c)", False))
    found = lists(tmp_path / "a", "draft", places)
    (one,) = (one for one in found if one.under == "tube")
    assert (one.places, one.filled) == (3, 1)
    assert one.says == (
        "tube: 3 places, 1 filled, 2 to be drawn: clamp (slot b), clamp (slot c); 2 values to be stated"
    )


def test_a_single_place_and_a_single_value_are_in_the_singular() -> None:
    one = Unfinished("block", 1, (seen("liner (bore)", False),), (("rod", ("mass",)),))
    assert one.says == "block: 1 place, 0 filled, 1 to be drawn: liner (bore); 1 value to be stated"
    assert Unfinished("block", 2, (), ()).says == "block: 2 places, 2 filled"


class Wall(SpecTable):
    """A wall of a box."""

    thickness: Length = NOT_STATED
    as_made: Length = NOT_STATED
    depth: Length = NOT_STATED
    material: Word[str] = NOT_STATED


class Box(Component):
    """A box of plates."""

    kind: ClassVar[str] = "box"
    called: ClassVar[str] = "box"

    wall: Length = NOT_STATED
    walls: dict[str, Wall] = {}


BOX = """
kind = "box"
material = "steel-plate"
wall = "10 mm"
[walls.front]
thickness = "10 mm"
depth = "20 mm"
[walls.cast]
thickness = "10 mm"
material = "iron"
[walls.machined]
thickness = "10 mm"
as_made = "12 mm"
[walls.unknown]
thickness = "10 mm"
material = "moon-iron"
[walls.titled]
thickness = "10 mm"
material = "titled"
"""


@pytest.mark.parametrize(
    ("key", "of_plate"),
    [
        ("wall", True),
        ("walls.front.thickness", True),  # the material of the box
        ("walls.front.depth", False),
        ("walls.cast.thickness", False),
        ("walls.machined.thickness", False),  # from a thicker one
        ("walls.machined.as_made", True),
        ("walls.unknown.thickness", False),
        ("walls.titled.thickness", True),
    ],
)
def test_a_thickness_of_plate_as_rolled(tmp_path: Path, key: str, of_plate: bool) -> None:
    loaded = load_families([made_family("boxes", [Box], [])])
    found = DesignFolder(tmp_path, loaded).write({"box.toml": BOX}).assess()
    assert found.design is not None
    assert found.context is not None

    class Metal:
        def __init__(self, name: str, title: str) -> None:
            self.name, self.title = name, title

    known = {
        "steel-plate": Metal("steel-plate", "Steel"),
        "iron": Metal("iron-platelike", "Plated iron"),
        "titled": Metal("s275", "Steel plate to a standard"),
    }

    def material(name: str) -> Any:
        if name not in known:
            raise NotKnown(name)
        return known[name]

    context = replace(found.context, material=material)
    assert is_of_plate(found.design.specs["box"], key, context) is of_plate
