"""What the sheets of a check asked for: kept apart for a calculation within it, forgotten before the next check."""

from __future__ import annotations

from typing import Any

import pytest

from speclint.errors import Location
from speclint.rules import Asked
from speclint.specs import Component, begin_noting

BORE, WALL, LENGTH = (
    Location("tube.toml", line, key, "tube") for line, key in enumerate(("bore", "wall", "l"))
)


def asked() -> Asked:
    """One that asked something of every sort."""
    found = Asked()
    found.clear()
    found.values[id(BORE)] = BORE
    found.followed.add("rack")
    found.queried.add(("rack", Component))
    found.leading.add(("wagon", "bays", "rack", "rack"))
    found.fields |= {(1, "bore"), (1, "wall"), (2, "hole")}
    return found


def test_before_the_next_check_all_is_forgotten() -> None:
    found = asked()
    found.everything = True
    found.clear()
    assert found == Asked()


def test_a_copy_stays_as_it_was() -> None:
    found = asked()
    kept = found.copy()
    assert kept == Asked(
        {id(BORE): BORE},
        {"rack"},
        {("rack", Component)},
        {("wagon", "bays", "rack", "rack")},
        everything=False,
    )
    found.everything = True
    assert found.copy().everything
    found.clear()
    assert kept.values == {id(BORE): BORE}
    assert kept.followed == {"rack"}
    assert kept.queried == {("rack", Component)}
    assert kept.leading == {("wagon", "bays", "rack", "rack")}


def test_what_is_opened_within_is_told_apart_and_was_opened_of_what_began_before() -> None:
    found = asked()
    with found.opening() as within:
        found.values[id(WALL)] = WALL
        assert found.values is within
    assert list(within.values()) == [WALL]
    assert found.opened == {("tube.toml", "tube", "bore"), ("tube.toml", "tube", "wall")}


def test_what_is_opened_before_something_ends_was_opened_too() -> None:
    found = asked()

    def ends() -> None:
        with found.opening():
            found.values[id(LENGTH)] = LENGTH
            raise KeyError

    with pytest.raises(KeyError):
        ends()
    assert found.opened == {("tube.toml", "tube", "bore"), ("tube.toml", "tube", "l")}


def test_fields_are_told_by_their_table() -> None:
    assert asked().by_table() == {1: {"bore", "wall"}, 2: {"hole"}}


def test_all_is_here_where_nothing_more_was_asked_and_no_other_check_began() -> None:
    found = asked()
    found.clear()
    whole: list[Any] = [found.whole]
    found.everything = True
    whole.append(found.whole)
    found.clear()
    whole.append(found.whole)
    begin_noting()  # as another check does
    whole.append(found.whole)
    assert whole == [True, False, True, False]
