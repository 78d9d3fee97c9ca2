"""Tables that a family adds to kinds: read, typed, found by rules, and one class beside others of the same name."""

from __future__ import annotations

import copy
import pickle
from pathlib import Path
from typing import ClassVar

import jsonschema
import pytest

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.families import Loaded, load_families
from speclint.quantities import Measure
from speclint.specs import (
    NOT_STATED,
    Component,
    ExtraTable,
    Length,
    LinkTo,
    NotStated,
    Shaft,
    Spec,
    SpecTable,
    meanings,
    schema_of,
    summary,
)
from speclint.testing import DesignFolder
from tests.families.test_refusing import gives, point
from tests.tubes import Tube, entry_point


class Welding(SpecTable):
    """Named as a table of every component is.

    Fields:
        throat: of the weld
        on: the part it joins
    """

    throat: Length = NOT_STATED
    on: LinkTo[Shaft] = NOT_STATED


class Bent(Tube):
    """A bent tube."""

    kind: ClassVar[str] = "bent-tube"
    called: ClassVar[str] = "bent tube"


@rule(
    "shop.throat",
    title="the throat is no more than 5 mm",
    on=Component,
    grade=Grade.QUERY,
    cites=[FIRST_PRINCIPLES],
    why="for tests",
    leaves_out="nothing",
    limits=[Limit("most", "5 mm", "length", COMMON_PRACTICE, "greatest throat")],
)
def throat(part: Component, sheet: Sheet) -> Judgement:
    """Takes a value of the table through the sheet."""
    return sheet.at_most(sheet.take("a", part.table_of(Welding).throat), sheet.limit("most"))


@pytest.fixture
def loaded() -> Loaded:
    """Tubes, bent tubes, and a family that adds a table to every tube."""
    shop = point(
        "shop",
        speclint_kinds=gives(Bent),
        speclint_tables=gives(ExtraTable(Tube, Welding)),
        speclint_rules=gives(throat),
    )
    return load_families([entry_point("tubes"), shop])


TEXT = 'kind = "tube"\nbore = "100 mm"\n[shop]\nthroat = "4 mm"\n'


def test_the_kind_remains_the_kind_and_gains_a_table(loaded: Loaded) -> None:
    kind = loaded.kinds["tube"]
    assert issubclass(kind, Tube)
    assert (kind.kind, kind.called, kind.__name__) == ("tube", "tube", "Tube")
    assert kind.words() == ("tube", "component")
    assert summary(kind) == summary(Tube)
    assert meanings(kind)["shop"] == "read by the family shop"
    assert "shop" not in Tube.model_fields
    assert "shop" in loaded.kinds["bent-tube"].model_fields
    assert loaded.kinds["rack"].model_fields.keys() & {"shop"} == set()
    assert loaded.kinds["tube"] is kind


@pytest.mark.parametrize("kind", ["tube", "bent-tube"])
@pytest.mark.parametrize(("size", "outcome"), [("5 mm", "conforms"), ("5.1 mm", "finding")])
def test_a_rule_takes_its_values_through_the_sheet(
    tmp_path: Path, loaded: Loaded, kind: str, size: str, outcome: str
) -> None:
    text = TEXT.replace('"tube"', f'"{kind}"').replace("4 mm", size)
    check = DesignFolder(tmp_path, loaded).write({"part.toml": text}).only("shop.throat")
    assert check.outcome == outcome
    assert (check.where.file, check.where.line, check.where.key) == ("part.toml", 4, "shop.throat")
    assert check.rests_on["part shop.throat"] == size
    assert not check.could_not_run


def test_what_its_table_leaves_out_is_named_with_its_key(tmp_path: Path, loaded: Loaded) -> None:
    check = DesignFolder(tmp_path, loaded).write({"part.toml": 'kind = "tube"\n'}).only("shop.throat")
    assert check.missing == ("shop.throat is not stated in part.toml",)


def test_where_no_family_adds_it_the_rule_could_not_be_run(tmp_path: Path, loaded: Loaded) -> None:
    design = DesignFolder(tmp_path, loaded).write({"rack.toml": 'kind = "rack"\n'})
    check = design.only("shop.throat", runs=False)
    said = "LookupError: no family adds a table Welding to a rack (tests.families.test_tables, line "
    assert check.could_not_run.startswith(said)


def part_of(tmp_path: Path, loaded: Loaded, text: str = TEXT) -> Spec:
    """The one part of a design."""
    design = DesignFolder(tmp_path, loaded).write({"part.toml": text}).assess().design
    assert design is not None
    return design.specs["part"]


def test_its_quantities_and_links_are_those_of_the_spec(tmp_path: Path, loaded: Loaded) -> None:
    part = part_of(tmp_path, loaded, TEXT + 'on = "axle"\n')
    assert [measure.text for measure in part.measures()] == ["100 mm", "4 mm"]
    assert [link.id for link in part.links()] == ["axle"]
    found = part.under("shop.throat")
    assert isinstance(found, Measure)
    assert found.nominal == pytest.approx(0.004)


def test_a_spec_with_an_added_table_travels_between_processes(tmp_path: Path, loaded: Loaded) -> None:
    part = part_of(tmp_path, loaded)
    for other in (pickle.loads(pickle.dumps(part)), copy.copy(part), copy.deepcopy(part)):
        assert type(other) is type(part)
        assert other == part
        assert other.where == part.where
        assert isinstance(other.table_of(Welding).on, NotStated)
        assert other.table_of(Welding).where.line == 3


def test_a_table_of_a_name_that_the_core_uses_has_its_own_place_in_the_schema(loaded: Loaded) -> None:
    schema = schema_of(loaded.kinds["tube"])
    spec = {"kind": "tube", "shop": {"throat": "4 mm"}, "welding": {"welded": True}}
    jsonschema.validate(spec, schema)
    for wrong in ({"shop": {"welded": True}}, {"welding": {"throat": "4 mm"}}):
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate({**spec, **wrong}, schema)
    told = [table["description"] for name, table in schema["$defs"].items() if name.endswith("Welding")]
    assert sorted(told)[0] == "Named as a table of every component is."
