"""What a check reads of a spec is noted once, whatever way it is read."""

from __future__ import annotations

import pickle
from pathlib import Path

import pytest

from speclint.specs import EVERY_FIELD, begin_noting, fields_of, noted_in
from tests.repository.test_reading import load
from tests.tubes import Rack, Tube

TUBE = 'kind = "tube"\nid = "tube"\nbore = "100 mm"\nhoops = 3\n'


@pytest.fixture
def tube(tmp_path: Path) -> Tube:
    spec = load(tmp_path, TUBE).spec
    assert isinstance(spec, Tube)
    return spec


def test_a_field_is_noted_by_each_check_that_reads_it(tube: Tube) -> None:
    for _ in range(2):
        into = begin_noting()
        assert into == set()
        assert tube.bore is tube.bore
        assert into == {(id(tube), "bore")}


def test_what_another_check_read_is_not_noted_for_the_one_before(tube: Tube) -> None:
    before = begin_noting()
    assert tube.bore
    after = begin_noting()
    assert tube.bore
    assert tube.hoops
    assert before == {(id(tube), "bore")}
    assert after == {(id(tube), "bore"), (id(tube), "hoops")}
    assert noted_in(after)
    assert not noted_in(before)


def test_what_is_no_field_is_not_noted(tube: Tube) -> None:
    into = begin_noting()
    assert tube.kind == "tube"
    assert tube.where.file == "part.toml"
    assert isinstance(tube, Tube)
    assert fields_of(tube)["id"] == "tube"
    assert into == set()
    with pytest.raises(AttributeError, match="blore"):
        tube.blore  # type: ignore[attr-defined]  # noqa: B018


def test_all_fields_at_once_count_as_every_field(tube: Tube) -> None:
    into = begin_noting()
    assert "bore" in tube.__dict__
    assert into == {(id(tube), EVERY_FIELD)}


def test_the_place_of_a_value_that_is_read_early_is_that_of_the_spec(tmp_path: Path) -> None:
    """A condition on the sizes of a table reads them before the table is given its place."""
    rack = load(tmp_path, 'kind = "rack"\n[slots.left]\n').spec
    assert isinstance(rack, Rack)
    assert rack.slots["left"].width.where.key == "slots.left.width"


def test_a_spec_is_copied_compared_and_passed_to_another_process_whole(tube: Tube) -> None:
    begin_noting()
    assert tube.bore
    other = tube.model_copy(update={"id": "other"})
    assert (tube.id, other.id) == ("tube", "other")
    assert other.bore is tube.bore
    assert other != tube
    again = pickle.loads(pickle.dumps(tube))
    assert again == tube
    assert again.bore == tube.bore


def test_a_class_beside_the_tables_has_no_dictionary_of_its_own() -> None:
    class Beside:
        __slots__ = ()

    class Wrong:
        pass

    class Right(Beside, Tube):
        """A tube.

        Fields: none of its own
        """

    assert Right.kind == Tube.kind
    with pytest.raises(TypeError, match=r"Wrong, on which Other is built, is to state __slots__ = \(\)"):

        class Other(Wrong, Tube):
            """Another."""
