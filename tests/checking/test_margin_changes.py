"""One check before and now: what counts as a change, what is new, what is cleared, and what caused it."""

from __future__ import annotations

import math

import pytest

from speclint import Grade
from speclint.checking import CheckSeen, MarginChange, margin_changes
from speclint.errors import replace

HELD = CheckSeen("tube", "tube.stress", 1, "conforms", None, 0.5, "as it should be", "aaaa")


def failing(used: float | None = 1.5, grade: Grade = Grade.HOLD) -> CheckSeen:
    return replace(HELD, outcome="finding", grade=grade, utilisation=used)


def change(was: CheckSeen | None, now: CheckSeen | None) -> MarginChange:
    return MarginChange(was, now, "")


def test_it_is_named_as_the_check_is_now_or_as_it_was_where_there_is_none_now() -> None:
    other = replace(HELD, component="pipe", rule="pipe.stress")
    assert (change(HELD, other).component, change(HELD, other).rule) == ("pipe", "pipe.stress")
    assert (change(HELD, None).component, change(HELD, None).rule) == ("tube", "tube.stress")
    assert change(None, other).component == "pipe"


@pytest.mark.parametrize(
    ("was", "now", "by"),
    [
        (0.5, 0.75, 0.25),
        (0.75, 0.5, -0.25),
        (math.inf, math.inf, 0.0),  # where a difference of the two would be no number
        (0.5, math.inf, math.inf),
        (None, 0.5, None),
        (0.5, None, None),
        (None, None, None),
    ],
)
def test_by_how_much_more_is_used(was: float | None, now: float | None, by: float | None) -> None:
    found = change(replace(HELD, utilisation=was), replace(HELD, utilisation=now))
    assert found.by == by


@pytest.mark.parametrize(("was", "now"), [(None, HELD), (HELD, None)])
def test_nothing_can_be_told_by_how_much_of_a_check_that_is_on_one_side_only(
    was: CheckSeen | None, now: CheckSeen | None
) -> None:
    found = change(was, now)
    assert found.by is None
    assert found.is_change


@pytest.mark.parametrize(
    ("now", "changed"),
    [
        (HELD, False),
        (replace(HELD, says="in other words"), False),
        (replace(HELD, utilisation=0.5 + 0.9e-9), False),  # rounding
        (replace(HELD, utilisation=0.5 - 0.9e-9), False),
        (replace(HELD, utilisation=0.5 + 1.1e-9), True),
        (replace(HELD, utilisation=0.5 - 1.1e-9), True),
        (replace(HELD, utilisation=None), True),
        (replace(HELD, outcome="finding"), True),
        (replace(HELD, grade=Grade.OBSERVATION), True),
    ],
)
def test_what_counts_as_a_change(now: CheckSeen, changed: bool) -> None:
    assert change(HELD, now).is_change is changed
    assert change(now, HELD).is_change is changed


@pytest.mark.parametrize(("used", "changed"), [(math.inf, True), (1.5, False)])
def test_where_no_share_is_left_other_words_are_a_change(used: float, changed: bool) -> None:
    """Its words say by how much it is beyond the limit: a report has no more of it."""
    one = failing(used)
    assert change(one, replace(one, says="clearance -0.2 mm, 0.1 mm wanted")).is_change is changed
    assert not change(one, one).is_change


def test_no_number_on_either_side_is_no_change() -> None:
    none = replace(HELD, utilisation=None)
    assert not change(none, none).is_change


@pytest.mark.parametrize(
    ("was", "now", "new", "cleared"),
    [
        (HELD, HELD, False, False),
        (HELD, failing(), True, False),
        (None, failing(), True, False),
        (failing(), HELD, False, True),
        (failing(), None, False, True),
        (failing(grade=Grade.OBSERVATION), HELD, False, True),  # the least of grades stands in the way too
        (HELD, failing(grade=Grade.OBSERVATION), True, False),
        (failing(), failing(), False, False),
        (failing(grade=Grade.OBSERVATION), failing(grade=Grade.HOLD), True, False),
        (
            failing(grade=Grade.HOLD),
            failing(grade=Grade.OBSERVATION),
            False,
            False,
        ),  # less grave, yet in the way
        (None, HELD, False, False),
    ],
)
def test_what_newly_stands_in_the_way_and_what_no_longer_does(
    was: CheckSeen | None, now: CheckSeen | None, new: bool, cleared: bool
) -> None:
    assert (change(was, now).is_new, change(was, now).is_cleared) == (new, cleared)


def test_what_has_no_number_is_worse_where_it_is_new_and_better_where_it_is_cleared() -> None:
    held, wrong = replace(HELD, utilisation=None), failing(None)
    assert change(held, replace(HELD, utilisation=None)).worse_by == 0.0
    assert 0.0 < change(held, wrong).worse_by < 1e-6
    assert -1e-6 < change(wrong, held).worse_by < 0.0
    assert change(HELD, failing(0.75)).worse_by == 0.25


def test_the_worst_change_comes_first_and_then_by_component_and_rule() -> None:
    """Of the limit 0.2 more, two times 0.1 more, as much, and 0.1 less."""
    by = {"d": 0.7, "c": 0.6, "a": 0.4, "b": 0.5}
    before = [replace(HELD, component=name) for name in ("a", "b", "c", "d")]
    before.append(replace(HELD, component="c", rule="tube.bore"))
    now = [replace(HELD, component=name, utilisation=used) for name, used in by.items()]
    now.append(replace(HELD, component="c", rule="tube.bore", utilisation=0.6))
    assert [(one.component, one.rule) for one in margin_changes(before, now, {})] == [
        ("d", "tube.stress"),
        ("c", "tube.bore"),
        ("c", "tube.stress"),
        ("b", "tube.stress"),
        ("a", "tube.stress"),
    ]


def test_a_component_under_another_id_is_held_against_itself() -> None:
    now = replace(HELD, component="tube-left", utilisation=0.75)
    (found,) = margin_changes([HELD], [now], {"tube": "tube-left"})
    assert (found.was, found.now, found.by) == (HELD, now, 0.25)
    assert len(margin_changes([HELD], [now], {})) == 2


def test_a_check_that_does_not_apply_is_as_one_that_is_not_there() -> None:
    idle = replace(HELD, outcome="not applicable")
    assert margin_changes([idle], [idle], {}) == ()
    (come,) = margin_changes([idle], [HELD], {})
    (gone,) = margin_changes([HELD], [idle], {})
    assert (come.was, come.now) == (None, HELD)
    assert (gone.was, gone.now) == (HELD, None)


OTHER = replace(HELD, edition=2)


@pytest.mark.parametrize(
    ("was", "now", "cause"),
    [
        (HELD, HELD, ""),
        (HELD, replace(HELD, utilisation=0.6), "design"),
        (HELD, OTHER, "edition"),  # the same fingerprint
        (HELD, replace(OTHER, utilisation=0.6), "edition"),
        (HELD, replace(OTHER, fingerprint="bbbb"), "both"),
        (None, HELD, "design"),
        (HELD, None, "design"),
    ],
)
def test_what_caused_it(was: CheckSeen | None, now: CheckSeen | None, cause: str) -> None:
    (found,) = margin_changes([was] if was else [], [now] if now else [], {})
    assert found.cause == cause


def test_of_a_part_under_another_id_nobody_can_tell_whether_the_edition_alone_is_another() -> None:
    (found,) = margin_changes([HELD], [replace(OTHER, component="pipe")], {"tube": "pipe"})
    assert found.cause == "both"
