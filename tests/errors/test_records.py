"""Classes of data: structs and dataclasses alike."""

from __future__ import annotations

from dataclasses import dataclass, field

import pytest
from msgspec import Struct

from speclint.errors import compared_names, field_names, is_record, made_of_its_fields, replace


class Stud(Struct, frozen=True):
    size: str
    length: float = 90.0


@dataclass(frozen=True)
class Nut:
    size: str
    seen: list[str] = field(default_factory=list, compare=False)
    worked: float = field(default=0.0, init=False)


def test_a_copy_has_the_fields_that_were_changed_and_the_others_as_they_were() -> None:
    assert replace(Stud("M24"), length=110.0) == Stud("M24", 110.0)
    assert replace(Nut("M24", ["a"]), size="M27") == Nut("M27")


@pytest.mark.parametrize("record", [Stud("M24"), Nut("M24")])
def test_what_is_no_field_is_refused(record: Stud | Nut) -> None:
    with pytest.raises(TypeError, match="lenght"):
        replace(record, lenght=1.0)  # type: ignore[call-arg]


def test_what_is_no_data_is_refused() -> None:
    with pytest.raises(TypeError):
        replace("M24", size="M27")  # type: ignore[type-var]


def test_fields_are_named_in_their_order_and_those_not_compared_left_out() -> None:
    assert field_names(Stud) == ("size", "length")
    assert field_names(Nut) == ("size", "seen", "worked")
    assert compared_names(Stud) == ("size", "length")
    assert compared_names(Nut) == ("size", "worked")
    with pytest.raises(TypeError):
        field_names(str)


def test_both_are_data_and_a_word_is_none() -> None:
    assert is_record(Stud)
    assert is_record(Nut)
    assert not is_record(str)


def test_a_field_that_is_not_given_cannot_be_given_again() -> None:
    assert made_of_its_fields(Stud)
    assert not made_of_its_fields(Nut)
    assert not made_of_its_fields(str)
