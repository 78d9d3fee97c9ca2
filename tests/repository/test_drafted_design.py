"""A design that is changed in memory: what a change does, what it leaves as it was, and what is refused in one line."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.errors import DesignError
from speclint.quantities import Measure
from speclint.repository import FILE_NAME, Change, DraftedDesign
from speclint.testing import DesignFolder
from tests import tubes

SLOTS = '[slots.left]\nwidth = "120 mm"\n[slots.right]\nwidth = { value = "90 mm", from = "assumed" }\n'
FILES = {**tubes.FILES, "rack.toml": tubes.RACK + SLOTS}


@pytest.fixture
def drafted(tmp_path: Path) -> DraftedDesign:
    folder = DesignFolder(tmp_path, tubes.tubes()).write(FILES)
    return DraftedDesign.opened(folder.root, folder.loaded.kinds)


def size(drafted: DraftedDesign, spec: str, key: str) -> Measure:
    found = dict(drafted.design.specs[spec].at_keys())[key]
    assert isinstance(found, Measure)
    return found


def test_a_key_is_set_in_a_copy(drafted: DraftedDesign) -> None:
    changed = drafted.changed(
        [Change("tube", "bore", "98 mm"), Change("rack", "slots.right.width.value", "91 mm")]
    )
    assert size(changed, "tube", "bore").nominal == 0.098
    right = size(changed, "rack", "slots.right.width")
    assert (right.nominal, right.provenance) == (0.091, "assumed")
    assert size(drafted, "tube", "bore").nominal == 0.1
    assert size(changed, "tube", "bore").where == size(drafted, "tube", "bore").where


def test_what_a_spec_writes_is_read_back(drafted: DraftedDesign) -> None:
    assert drafted.raw_at("tube", "bore") == ("100 mm ±0.5", "bore")
    assert drafted.raw_at("rack", "slots.right.width")[0] == {"value": "90 mm", "from": "assumed"}
    with pytest.raises(DesignError, match=r"tube does not state wall"):
        drafted.raw_at("tube", "wall")


def test_keys_and_specs_are_left_out_and_added(drafted: DraftedDesign) -> None:
    changed = drafted.changed(
        [
            Change("tube", "ends", absent=True),
            Change("rack", "slots.left", absent=True),
            Change("duty", absent=True),
            Change("spare", value='kind = "rack"\nhole = "200 mm"\n'),
        ]
    )
    assert sorted(changed.design.specs) == ["rack", "spare", "tube"]
    assert [key for key, _ in changed.design.specs["rack"].at_keys() if "slots" in key] == [
        "slots.right.width"
    ]
    assert size(changed, "spare", "hole").nominal == 0.2


def test_a_setting_is_changed(drafted: DraftedDesign) -> None:
    changed = drafted.changed([Change(FILE_NAME, "works.stage", "released")])
    assert (changed.settings["works"]["stage"], drafted.settings["works"]["stage"]) == ("released", "draft")


def test_the_order_of_files_and_keys_is_turned_round(drafted: DraftedDesign) -> None:
    turned = drafted.reordered(lambda some: some[::-1], {"rack"})
    assert list(turned.design.specs) == list(drafted.design.specs)[::-1]
    assert list(turned.draft("rack").table)[::-1] == list(drafted.draft("rack").table)
    slots = [key for key, _ in turned.design.specs["rack"].at_keys() if "slots" in key]
    assert slots == ["slots.right.width", "slots.left.width"]
    assert size(turned, "tube", "bore") == size(drafted, "tube", "bore")


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (Change("tub", "bore", "98 mm"), "no spec is called tub"),
        (Change("tub", absent=True), "no spec is called tub"),
        (Change("tube", "wall", absent=True), "tube does not state wall"),
        (Change("tube", "bore", "98 furlongs"), "bore"),
        (Change("tube", "bore.value", 1), "a table or a list is wanted where a value stands"),
        (Change("tube", "held_in", "rock"), "no spec has this id"),
        (Change(FILE_NAME, "works.stage", "done"), "stage"),
    ],
)
def test_what_cannot_be_read_is_one_line(drafted: DraftedDesign, change: Change, said: str) -> None:
    with pytest.raises(DesignError) as refused:
        drafted.changed([change])
    assert said in str(refused.value)
    assert "\n" not in str(refused.value)
