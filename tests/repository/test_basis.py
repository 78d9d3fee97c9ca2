"""The design basis of before: its duties in a design, what a change alters in it, and a copy with other texts."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from speclint.errors import OutputError
from speclint.repository import Basis, Design, Settings, changes_of_duties, copy_repository, load_settings
from speclint.repository.basis_changes import FilesInFolder, changes_of_basis, removed_specs, touched_specs
from speclint.specs import Component, Link
from speclint.testing import SETTINGS, DesignFolder
from tests.tubes import DUTY, FILES, RACK, TUBE, tubes

OTHER_DUTY = DUTY.replace('id = "duty"', 'id = "other-duty"').replace("12 bar", "8 bar")
NO_DUTY = TUBE.replace('duty = "duty"\n', "")


def design(folder: Path, files: dict[str, str], settings: str = SETTINGS) -> Design:
    folder.mkdir(exist_ok=True)
    found = DesignFolder(folder, tubes()).write(files, settings=settings).assess().design
    assert found is not None
    return found


def basis_of(before: Design) -> Basis:
    return Basis(before.settings, {}, before)


def duty_of(one: Design, name: str) -> str:
    part = one.specs[name]
    assert isinstance(part, Component)
    return part.duty.id if isinstance(part.duty, Link) else ""


BEFORE = {**FILES, "other-duty.toml": OTHER_DUTY}


@pytest.mark.parametrize(
    ("tube", "other"),
    [
        (TUBE, False),
        (TUBE.replace("100 mm", "99 mm"), False),
        (TUBE.replace('duty = "duty"', 'duty = "other-duty"'), True),
        (NO_DUTY, True),
    ],
)
def test_a_part_has_the_duty_that_it_had(tmp_path: Path, tube: str, other: bool) -> None:
    basis = basis_of(design(tmp_path / "before", BEFORE))
    now = design(tmp_path / "now", {**BEFORE, "tube.toml": tube})
    assert basis.gives_other_duties(now) is other
    applied = basis.applied_to(now)
    assert duty_of(applied, "tube") == "duty"
    assert (applied.specs["tube"] is now.specs["tube"]) is not other
    assert applied.specs["rack"] is now.specs["rack"]


def test_a_part_that_had_no_duty_has_none_and_a_new_one_has_its_own(tmp_path: Path) -> None:
    basis = basis_of(design(tmp_path / "before", {**FILES, "tube.toml": NO_DUTY}))
    now = design(tmp_path / "now", {**FILES, "new.toml": TUBE})
    assert basis.gives_other_duties(now)
    applied = basis.applied_to(now)
    assert (duty_of(applied, "tube"), duty_of(applied, "new")) == ("", "duty")


def test_a_duty_is_as_it_was_also_where_it_is_there_no_longer(tmp_path: Path) -> None:
    before = design(tmp_path / "before", BEFORE)
    changed = {"duty.toml": DUTY.replace("12 bar", "9 bar"), "tube.toml": TUBE, "rack.toml": RACK}
    now = design(tmp_path / "now", changed)
    basis = basis_of(before)
    assert not basis.gives_other_duties(now)
    applied = basis.applied_to(now)
    assert applied.specs["duty"] is before.specs["duty"]
    assert applied.specs["other-duty"] is before.specs["other-duty"]
    assert applied.files == {**now.files, "other-duty": "other-duty.toml"}


def test_duties_are_told_key_by_key(tmp_path: Path) -> None:
    before = design(tmp_path / "before", BEFORE)
    changed = DUTY.replace("12 bar", "13 bar").replace(
        '[cases.running]\nlive_pressure = "10 bar gauge"\n', ""
    )
    now = design(
        tmp_path / "now",
        {**FILES, "duty.toml": changed, "third.toml": OTHER_DUTY.replace("other-", "third-")},
    )
    assert list(changes_of_duties(before, now)) == [
        "duty.toml cases.running.live_pressure was 10 bar gauge, is not stated",
        "duty.toml cases.starting.live_pressure was 12 bar gauge, is 13 bar gauge",
        "other-duty.toml: the duty other-duty is removed",
        "third.toml: the duty third-duty is new",
    ]
    assert list(changes_of_duties(before, before)) == []


def test_a_file_that_is_gone_is_told(tmp_path: Path) -> None:
    before = design(tmp_path / "before", {**BEFORE, "spare.toml": TUBE})
    now = design(tmp_path / "now", {**FILES, "new.toml": TUBE})
    assert list(removed_specs(before, now)) == [
        f"{file} is removed or moved: what it held is no longer checked under that name"
        for file in ("other-duty.toml", "spare.toml")
    ]


def test_what_a_change_touches_and_links_to_and_unlinks(tmp_path: Path) -> None:
    files = {**FILES, "rack-2.toml": RACK, "rack-3.toml": RACK}
    before = design(tmp_path / "before", files)
    moved = design(tmp_path / "a", {**files, "tube.toml": TUBE.replace('"rack"', '"rack-2"')})
    assert touched_specs(before, moved) == {"tube", "rack", "rack-2"}
    resized = design(tmp_path / "b", {**files, "tube.toml": TUBE.replace("100 mm", "99 mm")})
    assert touched_specs(before, resized) == {"tube"}
    (tmp_path / "c").mkdir()
    gone = design(tmp_path / "c", {name: text for name, text in files.items() if name != "tube.toml"})
    assert touched_specs(before, gone) == touched_specs(gone, before) == {"tube", "rack", "duty"}
    (tmp_path / "d").mkdir()
    same = design(tmp_path / "d", files)
    for file in files:
        (same.root / file).write_bytes(files[file].replace("\n", "\r\n").encode())
    assert touched_specs(before, same) == set()


METALS = '[iron]\nnote = "grey"\n'
SETTINGS_NOW = 'materials = ["metals.toml"]\n' + SETTINGS


def basis_lines(before: Path, now: Path) -> list[str]:
    old, _ = load_settings(before)
    new, _ = load_settings(now)
    assert old is not None
    return list(changes_of_basis(now, FilesInFolder(before), before, old, new))


@pytest.fixture
def states(tmp_path: Path) -> tuple[Path, Path]:
    """Two folders with the same basis."""
    for name in ("before", "now"):
        (tmp_path / name).mkdir()
        for file, text in (
            ("speclint.toml", SETTINGS_NOW),
            ("metals.toml", METALS),
            ("allowed_signers", "a b c\n"),
        ):
            (tmp_path / name / file).write_text(text, encoding="utf-8")
    return tmp_path / "before", tmp_path / "now"


def rewritten(place: Path, old: str, new: str) -> None:
    text = place.read_text(encoding="utf-8")
    assert text.count(old) == 1
    place.write_text(text.replace(old, new), encoding="utf-8")


def test_nothing_is_told_of_what_is_as_it_was(states: tuple[Path, Path]) -> None:
    before, now = states
    assert basis_lines(before, now) == []
    (now / "metals.toml").write_bytes(METALS.replace("\n", "\r\n").encode())
    assert basis_lines(before, now) == []


def test_settings_and_materials_are_told_key_by_key_and_other_files_as_a_whole(
    states: tuple[Path, Path],
) -> None:
    before, now = states
    rewritten(now / "speclint.toml", '"draft"', '"released"')
    rewritten(now / "metals.toml", '"grey"', '"white"')
    rewritten(now / "allowed_signers", "a b c", "a b d")
    assert basis_lines(before, now) == [
        "speclint.toml works.stage was draft, is released",
        "allowed_signers is changed",
        "metals.toml iron.note was grey, is white",
    ]


def test_files_that_come_and_go_are_told(states: tuple[Path, Path]) -> None:
    before, now = states
    (now / "allowed_signers").unlink()
    (before / "metals.toml").unlink()
    assert basis_lines(before, now) == ["allowed_signers is removed", "metals.toml is new"]
    assert basis_lines(now, before) == ["allowed_signers is new", "metals.toml is removed"]


@pytest.mark.skipif(sys.platform == "win32", reason="links need a privilege there")
def test_a_link_that_leaves_the_repository_is_no_file_of_it(states: tuple[Path, Path]) -> None:
    before, now = states
    (now / "allowed_signers").unlink()
    (now / "allowed_signers").symlink_to(before / "allowed_signers")
    assert basis_lines(before, now) == ["allowed_signers is removed"]


def test_files_that_either_state_names_are_looked_at(states: tuple[Path, Path]) -> None:
    """One file of materials is another now: the one that was named, and the one that is."""
    before, now = states
    rewritten(now / "speclint.toml", "metals.toml", "others.toml")
    (now / "metals.toml").unlink()
    (now / "others.toml").write_text(METALS, encoding="utf-8")
    assert basis_lines(before, now) == [
        "speclint.toml materials was metals.toml, is others.toml",
        "metals.toml is removed",
        "others.toml is new",
    ]
    (now / "speclint.toml").write_text("[works", encoding="utf-8")
    lines = basis_lines(before, now)
    assert lines[-1] == "metals.toml is removed"
    assert not any("others.toml is" in line for line in lines)


@pytest.mark.parametrize(
    ("was", "is_now", "line"),
    [
        ("a = true\n", "a = false\n", "metals.toml a was true, is false"),
        ("a = []\n", 'a = ["x", true]\n', "metals.toml a was nothing, is x, true"),
        ("a = 1\n", "", "metals.toml a was 1, is not stated"),
        ('"a.b" = 1\n', '"a.b" = 2\n', 'metals.toml "a.b" was 1, is 2'),
        ('"a b".c = 1\n', '"a b".c = 2\n', 'metals.toml "a b".c was 1, is 2'),
    ],
)
def test_a_value_is_told_as_it_is_written(
    states: tuple[Path, Path], was: str, is_now: str, line: str
) -> None:
    before, now = states
    for place, text in ((before, was), (now, is_now)):
        (place / "metals.toml").write_text(text, encoding="utf-8")
    assert basis_lines(before, now) == [line]


def test_a_file_that_is_no_toml_is_told_as_a_whole(states: tuple[Path, Path]) -> None:
    before, now = states
    (now / "metals.toml").write_text("[iron\n", encoding="utf-8")
    lines = basis_lines(before, now)
    assert "metals.toml iron.note was grey, is not stated" in lines
    assert any(line.startswith("metals.toml as a whole was not stated, is metals.toml:1") for line in lines)


def test_what_is_no_regular_file_is_as_one_that_is_not_there(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("one", encoding="utf-8")
    (tmp_path / "folder").mkdir()
    files = FilesInFolder(tmp_path)
    assert (files.read("a.txt"), files.read("folder"), files.read("none")) == (b"one", None, None)


def test_a_copy_has_the_specs_and_what_the_settings_name_and_some_other_texts(tmp_path: Path) -> None:
    more = 'materials = ["metals.toml"]\n[made]\nmappings = ["machine.toml"]\n'
    named = {
        "metals.toml": METALS,
        "machine.toml": "[columns]\n",
        "register.toml": "",
        "allowed_signers": "a b c\n",
    }
    files = {**FILES, "deep/er/new.toml": RACK, **named, "notes.txt": "not named", ".hidden.toml": TUBE}
    shop = DesignFolder(tmp_path / "a", tubes())
    shop.root.mkdir()
    shop.write(files, settings=more + SETTINGS)
    settings, _ = load_settings(shop.root)
    assert settings is not None
    copy_repository(shop.root, settings, tmp_path / "b", {"tube.toml": "Röhre"})
    copied = {
        path.relative_to(tmp_path / "b").as_posix(): path.read_text(encoding="utf-8")
        for path in (tmp_path / "b").rglob("*")
        if path.is_file()
    }
    kept = {name: text for name, text in files.items() if name not in ("notes.txt", ".hidden.toml")}
    assert copied == {**kept, "speclint.toml": more + SETTINGS, "tube.toml": "Röhre"}


def test_a_copy_leaves_out_what_is_named_and_not_there(tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    copy_repository(tmp_path / "a", Settings(), tmp_path / "b", {})
    assert not (tmp_path / "b").exists()


def test_a_folder_without_room_is_one_line(tmp_path: Path) -> None:
    DesignFolder(tmp_path, tubes()).write(FILES)
    (tmp_path / "b").write_text("no folder", encoding="utf-8")
    with pytest.raises(OutputError, match="cannot be copied: "):
        copy_repository(tmp_path, Settings(), tmp_path / "b", {})
