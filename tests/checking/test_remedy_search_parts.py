"""Which values a remedy is sought in, which checks it could spoil, and for which findings alike it is sought once."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Check, remedy_search
from speclint.checking.remedy import Remedy
from speclint.checking.remedy_search import _order, _own_values, solved
from speclint.checking.spoiling import Spoiling
from speclint.checking.time_limit import Overrun
from speclint.errors import FamilyError, Location, replace
from speclint.rules import Context, Judgement, StatedPlace, Step
from speclint.testing import DesignFolder
from tests import tubes
from tests.remedies import remedies
from tests.tubes import FILES


class Found:
    """A tube at 45 bar, which uses 1.131 of the limit, and the other checks of its run."""

    def __init__(self, folder: Path) -> None:
        shop = DesignFolder(folder, tubes.tubes()).write(FILES).replace("tube.toml", "30 bar", "45 bar")
        assessment = shop.assess()
        assert assessment.context is not None
        self.context: Context = assessment.context
        self.checks = assessment.checks
        by_rule = {one.rule.name: one for one in self.checks}
        self.broken, self.loose = by_rule["tube.stress"], by_rule["tube.loose-hot"]


@pytest.fixture
def found(tmp_path: Path) -> Found:
    return Found(tmp_path)


def step(found: Found, key: str) -> Step:
    (one,) = (one for one in found.broken.steps if one.where.key == key)
    return one


def own(found: Found, *steps: Step) -> list[str]:
    some = list(_own_values(replace(found.broken, steps=steps), found.context))
    return [one.where.key for one in some]


def test_a_remedy_is_sought_in_the_sizes_counts_and_threads_of_the_part(found: Found) -> None:
    bore = step(found, "bore")
    at = bore.where
    assert own(found, *found.broken.steps) == ["bore", "outside", "pressure"]
    assert own(found, bore, bore) == ["bore"]
    assert own(found, replace(bore, kind="counted")) == ["bore"]
    assert own(found, replace(bore, kind="read", value="M20")) == ["bore"]
    nothing = {
        "of another part": replace(bore, where=Location("rack.toml", 3, "hole")),
        "of no key": replace(bore, where=replace(at, key="")),
        "a temperature": replace(bore, unit="K"),
        "a difference of temperatures": replace(bore, unit="ΔK"),
        "of nothing": replace(bore, stated=0.0),
        "a word": replace(bore, kind="read", value="open"),
        "a number that was read": replace(bore, kind="read", value=4),
        "a figure of a table": replace(bore, kind="looked up"),
    }
    assert [name for name, one in nothing.items() if own(found, one)] == []


def test_a_mirrored_value_has_its_remedy_at_its_drawing(
    found: Found, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(type(found.context.design), "is_turned", lambda _, where: where.key == "bore")
    assert own(found, *found.broken.steps) == ["outside", "pressure"]


def test_no_remedy_is_sought_of_what_is_no_finding_of_a_number(found: Found) -> None:
    broken = found.broken
    assert broken.judgement is not None
    assert len(remedies(broken, found.checks, found.context)) == 3
    long = tuple(replace(one, long=one.symbol == "d") for one in broken.steps)
    nothing = (
        replace(broken, outcome="not assessed"),
        replace(broken, judgement=None),
        replace(broken, judgement=replace(broken.judgement, utilisation=None)),
        replace(broken, steps=long),
        replace(broken, component="duty"),
        replace(broken, component="nobody"),
    )
    assert [remedies(one, found.checks, found.context) for one in nothing] == [[]] * len(nothing)


def test_a_rule_that_does_not_end_is_told_with_its_family(
    found: Found, monkeypatch: pytest.MonkeyPatch
) -> None:
    def late(_: Any) -> Any:
        raise Overrun("too long")

    monkeypatch.setattr(remedy_search, "_proved", late)
    with pytest.raises(
        FamilyError, match=r"^family tubes: a rule did not end in its time while a remedy of "
    ):
        remedies(found.broken, found.checks, found.context)


def test_what_is_consulted_for_the_remedies_is_told(found: Found) -> None:
    found.context.consulted.specs.clear()
    some, consulted = solved(found.broken, found.checks, found.context)
    assert [one.name for one in some.remedies] == [
        one.name for one in remedies(found.broken, found.checks, found.context)
    ]
    assert "rack" in consulted.specs  # as the gap in its hole could be spoilt


def remedy(change: float, name: str = "bore", *spoils: str) -> Remedy:
    where = Location("tube.toml", 4, "bore")
    return Remedy(where, name, 1.0, 1.0 + change, "m", "mm", None, spoils)


def test_remedies_are_ordered_by_what_they_spoil_then_by_their_change_then_by_name() -> None:
    some = [
        remedy(0.125, "a", "x", "y"),
        remedy(0.25, "a", "x"),
        remedy(0.5, "b"),
        remedy(0.5, "a"),
        remedy(0.25, "z"),
    ]
    assert sorted(some, key=_order) == [some[4], some[3], some[2], some[1], some[0]]


def test_the_checks_that_hold_and_took_the_same_value_could_be_spoilt(found: Found) -> None:
    broken, loose = found.broken, found.loose
    ((one, places),) = Spoiling([broken, loose]).by(broken)
    assert one is loose
    assert places == {("tube.toml", "outside")}
    reviewing = replace(loose, rule=replace(loose.rule, reviews=True))
    for other in (replace(loose, outcome="finding"), reviewing, replace(loose, steps=())):
        assert Spoiling([broken, other]).by(broken) == []
    assert Spoiling([loose]).by(replace(broken, steps=())) == []
    nameless = tuple(replace(one, where=replace(one.where, key="")) for one in loose.steps)
    assert Spoiling([replace(loose, steps=nameless)]).by(replace(broken, steps=nameless)) == []


def test_of_parts_alike_one_stands_for_all_that_rest_on_the_same_values(found: Found) -> None:
    broken, loose = found.broken, found.loose
    alike = replace(loose, component="other", rests_on=dict(loose.rests_on))
    named = {**loose.rests_on, "link": "tube"}
    of_name = replace(loose, rests_on=named)
    other_name = replace(loose, component="other", rests_on={**loose.rests_on, "link": "other"})
    less = replace(loose, component="other", rests_on={**loose.rests_on, "tube outside": "106 mm ±0.5"})
    assert loose.judgement is not None
    more = replace(loose, component="other", judgement=replace(loose.judgement, utilisation=0.9))
    case = replace(loose, component="other", case="running")
    rule = replace(loose, component="other", rule=replace(loose.rule, name="tube.other"))

    def standing(*some: Check) -> int:
        return len(Spoiling([broken, *some]).by(broken))

    assert standing(loose, alike) == 1
    assert standing(of_name, other_name) == 1  # the ids of parts are no values
    assert [standing(loose, one) for one in (less, more, case, rule)] == [2, 2, 2, 2]


def test_findings_alike_share_their_remedies_where_they_took_their_values_from_one_drawing(
    found: Found,
) -> None:
    first = replace(found.broken, alike="one")
    again = replace(first, component="other")
    assert Spoiling.alike(first) == Spoiling.alike(again)
    assert Spoiling.alike(replace(first, alike="")) == first.order  # like no other
    moved = tuple(replace(one, where=replace(one.where, line=one.where.line + 9)) for one in first.steps)
    assert Spoiling.alike(replace(again, steps=moved)) != Spoiling.alike(first)
    assert Spoiling.alike(replace(again, alike="two")) != Spoiling.alike(first)
    places = Judgement(False, "", places=(StatedPlace(Location("tube.toml", 4, "bore"), 0.1),))
    assert Spoiling.alike(replace(again, judgement=places)) == again.order
    assert Spoiling.alike(replace(again, judgement=None)) == Spoiling.alike(first)
