"""Kinds by their word: of a kind there is one class, whoever asks and however often."""

from __future__ import annotations

import pytest

from speclint.specs import NOT_STATED, Catalogue, ExtraTable, Length, Piston, SpecTable, class_of
from tests.tubes import Tube


class Grip(SpecTable):
    """How a hand holds it.

    Fields:
        width: of the hand
    """

    width: Length = NOT_STATED


def test_a_kind_that_is_asked_for_twice_is_one_class() -> None:
    plain = Catalogue()
    assert plain["piston"] is plain["piston"] is Catalogue()["piston"] is class_of(Piston)


def test_a_kind_with_a_table_is_one_class_in_every_catalogue() -> None:
    """A process that checks in parallel has a catalogue of its own, and sends back specs of these classes."""
    one, other = (Catalogue(tables={"hands": [ExtraTable(Piston, Grip)]}) for _ in range(2))
    assert one["piston"] is one["piston"] is other["piston"]
    assert one["piston"] is not Piston
    assert issubclass(one["piston"], Piston)
    assert "hands" in one["piston"].model_fields
    assert one["piston-rod"] is Catalogue()["piston-rod"]


def test_a_family_that_is_left_out_takes_its_kinds_and_tables_with_it() -> None:
    given = Catalogue({"tubes": [Tube]}, {"hands": [ExtraTable(Piston, Grip)]})
    assert given["tube"] is Tube
    assert len(given) == len(list(given)) == len(Catalogue()) + 1
    left = given.without(["tubes", "hands"])
    assert left["piston"] is class_of(Piston)
    assert "tube" not in left
    assert left.left_out == ("hands", "tubes")
    assert [table.holds for table in given.tables_of("hands")] == [Grip]
    assert left.tables_of("hands") == ()
    assert left.without(["tubes"]) is left


def test_a_word_that_is_no_kind_is_none() -> None:
    with pytest.raises(KeyError):
        Catalogue()["no such kind"]
