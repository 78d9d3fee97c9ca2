"""A design that is changed in memory: what a change does, what it leaves as it was, and what is refused in one line."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.errors import DesignError
from speclint.quantities import Measure
from speclint.repository import FILE_NAME, Change, DraftedDesign
from speclint.testing import DesignFolder
from tests import tubes
from tests.repository.test_edited_design import EYE, HOOK, LOADED

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


def test_what_is_not_changed_is_not_made_anew(drafted: DraftedDesign) -> None:
    changed = drafted.changed([Change("tube", "bore", "98 mm")])
    assert changed.design.settings is drafted.design.settings
    assert changed.design.specs["rack"] is drafted.design.specs["rack"]
    assert changed.design.files == drafted.design.files
    assert changed.design.selected == set(drafted.design.files)
    assert changed.design.index.linking_to("rack") == ("tube",)
    staged = drafted.changed([Change(FILE_NAME, "works.stage", "released")])
    assert staged.design.specs is drafted.design.specs
    assert staged.design.settings.stage == "released"
    assert drafted.changed([]) is drafted


def test_several_changes_of_one_spec_and_of_the_settings_are_all_made(drafted: DraftedDesign) -> None:
    changed = drafted.changed(
        [
            Change("tube", "bore", "98 mm"),
            Change(FILE_NAME, "works.stage", "released"),
            Change("tube", "outside", "104 mm"),
            Change(FILE_NAME, "works.name", "Invented"),
        ]
    )
    assert (size(changed, "tube", "bore").nominal, size(changed, "tube", "outside").nominal) == (0.098, 0.104)
    assert changed.settings["works"] == {**drafted.settings["works"], "stage": "released", "name": "Invented"}
    again = changed.changed([Change("tube", "bore", "97 mm")])
    assert (size(again, "tube", "bore").nominal, size(again, "tube", "outside").nominal) == (0.097, 0.104)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("kind = ", "this is not TOML"),
        ('kind = "tub"', "this kind of component is not known"),
        ('kind = "tube"\nlike = "tub"', "no spec has this id"),
        ('kind = "tube"\nheld_in = "rak"', "no spec has this id"),
        ('kind = "tube"\nbore = "5 kg"\noutside = "5 kg"', "; spare.toml:3 outside: "),
    ],
)
def test_a_spec_that_cannot_be_added_is_one_line(drafted: DraftedDesign, text: str, said: str) -> None:
    with pytest.raises(DesignError) as refused:
        drafted.changed([Change("spare", value=text)])
    assert said in str(refused.value)
    assert "\n" not in str(refused.value)


def test_a_spec_that_is_added_may_be_like_another_and_state_several_parts(drafted: DraftedDesign) -> None:
    changed = drafted.changed(
        [
            Change("twin", value='kind = "tube"\nlike = "tube"\nheld_in = "rack"'),
            Change("more", value='kind = "rack"\nid = "rack-{each}"\neach = ["a", "b"]'),
        ]
    )
    assert changed.design.alike == {"twin": "tube"}
    bore = size(changed, "twin", "bore")
    assert (bore.nominal, bore.where.file, bore.where.part) == (0.1, "tube.toml", "twin")
    assert {name: changed.design.files[name] for name in ("twin", "rack-a", "rack-b")} == {
        "twin": "twin.toml",
        "rack-a": "more.toml",
        "rack-b": "more.toml",
    }
    assert changed.design.index.linking_to("rack") == ("tube", "twin")
    gone = changed.changed([Change("twin", absent=True)])
    assert (gone.design.alike, "twin" in gone.design.files) == ({}, False)
    assert gone.design.selected == set(gone.design.files)


def test_what_a_spec_writes_in_a_list_and_below_a_value(tmp_path: Path) -> None:
    """Of an entry that is a table, what it states; of one that is a value, the whole list."""
    listed = '[notes]\nrows = [{ of = "a", n = [1, 2] }, { of = "b" }]\n'
    folder = DesignFolder(tmp_path, tubes.tubes()).write({**tubes.FILES, "rack.toml": tubes.RACK + listed})
    drafted = DraftedDesign.opened(folder.root, folder.loaded.kinds)
    assert drafted.raw_at("rack", "notes.rows[1].of") == ("b", "notes.rows[1].of")
    assert drafted.raw_at("rack", "notes.rows[0].n[1]") == ([1, 2], "notes.rows[0].n")
    for key in ("hole.x", "notes.rows.of", "notes.rows[2].of", "zzz"):
        with pytest.raises(DesignError, match="rack does not state"):
            drafted.raw_at("rack", key)
    with pytest.raises(DesignError, match="no spec is called rak"):
        drafted.raw_at("rak", "hole")


@pytest.fixture
def hung(tmp_path: Path) -> DraftedDesign:
    """An eye, and a hook of 20 mm that hangs on it, for which it has room up to 30 mm."""
    folder = DesignFolder(tmp_path, LOADED).write({**tubes.FILES, "eye.toml": EYE, "hook.toml": HOOK})
    return DraftedDesign.opened(folder.root, LOADED.kinds)


def test_what_does_not_go_with_its_neighbours_is_refused(hung: DraftedDesign) -> None:
    assert size(hung.changed([Change("hook", "size", "30 mm")]), "hook", "size").nominal == 0.03
    with pytest.raises(DesignError, match="size does not go into that of eye"):
        hung.changed([Change("hook", "size", "31 mm")])


def test_a_loop_that_a_change_closes_is_refused(hung: DraftedDesign) -> None:
    with pytest.raises(DesignError, match="links run in a loop: "):
        hung.changed([Change("eye", "hangs_on", "hook")])
    turned = hung.changed([Change("hook", "hangs_on", absent=True), Change("eye", "hangs_on", "hook")])
    assert turned.design.index.linking_to("hook") == ("eye",)
    assert turned.design.cut == frozenset()


def test_the_order_is_that_of_the_files_too_and_other_parts_keep_theirs(hung: DraftedDesign) -> None:
    turned = hung.reordered(lambda some: some[::-1], {"tube", "nobody"})
    assert list(turned.design.files) == list(hung.design.files)[::-1]
    assert list(turned.design.index.entries) == list(hung.design.index.entries)[::-1]
    assert list(turned.draft("rack").table) == list(hung.draft("rack").table)
    assert turned.design.specs["rack"] is hung.design.specs["rack"]
    assert turned.design.specs["tube"] is not hung.design.specs["tube"]
    assert turned.design.index.linking_to("rack") == ("tube",)
