"""Opening a repository: what is read, on which basis, and in which order what is wrong with it is told."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from speclint.errors import Complaint
from speclint.repository import Basis, Repository, Settings, open_repository
from speclint.repository.kept_index import Remembered
from speclint.repository.material_files import read_own_materials
from speclint.testing import SETTINGS, DesignFolder
from tests.repository.test_folder import OWN_IRON
from tests.repository.test_index import Shelf
from tests.tubes import DUTY, FILES, tubes

LOADED = tubes()
NAMED = 'materials = ["own.toml"]\n' + SETTINGS
READING = '[[reading]]\nnumber = "R-1"\n'


def written(folder: Path, files: Mapping[str, str], settings: str = SETTINGS) -> Path:
    folder.mkdir(exist_ok=True)
    DesignFolder(folder, LOADED).write(dict(files), settings=settings)
    return folder


def said(complaints: tuple[Complaint, ...] | list[Complaint]) -> list[str]:
    return [str(one.where) for one in complaints]


def test_all_that_is_wrong_is_told_settings_first_then_materials_specs_and_register(tmp_path: Path) -> None:
    settings = NAMED.replace("[works]", "[families]\nseconds_per_rule = 0\n[works]")
    files = {**FILES, "own.toml": "[x\n", "bad.toml": "kind =", "register.toml": READING}
    found = open_repository([written(tmp_path, files, settings)], LOADED.kinds)
    assert found.settings is not None
    assert [line.partition(":")[0] for line in said(found.complaints)] == [
        "speclint.toml",
        "own.toml",
        "bad.toml",
        *["register.toml"] * 5,
    ]


def test_under_settings_that_cannot_be_read_the_specs_are_read_all_the_same(tmp_path: Path) -> None:
    files = {**FILES, "bad.toml": "kind =", "register.toml": READING}
    found = open_repository([written(tmp_path, files, "[works\n")], LOADED.kinds)
    assert (found.settings, found.materials, found.register.file) == (None, {}, "register.toml")
    assert [line.partition(":")[0] for line in said(found.complaints)] == ["speclint.toml", "bad.toml"]
    assert set(found.design.specs) == {"tube", "rack", "duty"}


def of_basis(folder: Path) -> Repository:
    """A repository with a duty of 8 bar, opened by itself."""
    files = {**FILES, "duty.toml": DUTY.replace("12 bar", "8 bar"), "own.toml": OWN_IRON}
    return open_repository([written(folder, files, NAMED)], LOADED.kinds)


def test_on_the_basis_of_before_its_settings_duties_and_materials_hold(tmp_path: Path) -> None:
    old = of_basis(tmp_path / "before")
    assert old.settings is not None
    basis = Basis(old.settings, old.materials, old.design)
    files = {**FILES, "own.toml": "[x\n", "register.toml": READING, "bad.toml": "kind ="}
    now = written(tmp_path / "now", files, "[works\n")
    shelf = Shelf()
    found = open_repository([now], LOADED.kinds, basis, remembered=Remembered(shelf, "code"))
    assert found.settings is old.settings
    assert found.materials == old.materials
    assert found.design.specs["duty"] is old.design.specs["duty"]
    assert found.design.specs["tube"] is not old.design.specs["tube"]
    assert [line.partition(":")[0] for line in said(found.complaints)] == ["bad.toml", *["register.toml"] * 5]
    assert shelf.kept == {}


def test_an_index_is_kept_where_nothing_is_wrong_and_asked_for_again(tmp_path: Path) -> None:
    root, shelf = written(tmp_path, FILES), Shelf()
    for only_indexed in (0, 3):
        found = open_repository([root], LOADED.kinds, remembered=Remembered(shelf, "code"))
        assert found.design.only_indexed == only_indexed
    assert len(shelf.kept) == 1


def test_a_register_is_read_where_there_is_one(tmp_path: Path) -> None:
    files = {**FILES, "kept/r.toml": READING}
    root = written(tmp_path, files, SETTINGS + '[concessions]\nfile = "kept/r.toml"\n')
    found = open_repository([root], LOADED.kinds)
    assert found.register.file == "kept/r.toml"
    assert {one.where.file for one in found.complaints} == {"kept/r.toml"}
    (root / "kept" / "r.toml").unlink()
    empty = open_repository([root], LOADED.kinds)
    assert (empty.complaints, empty.register.file) == ((), "kept/r.toml")


@pytest.mark.parametrize(
    ("name", "of_families", "taken"),
    [
        ("own-iron", (), None),
        ("own-iron", ("Own Iron",), "Own Iron"),
        ("own_iron", ("own-iron",), "own-iron"),
        ("own~iron", ("own-iron",), None),
        ("own.iron", ("own-iron",), None),
    ],
)
def test_an_own_material_bears_no_name_of_a_family(
    tmp_path: Path, name: str, of_families: tuple[str, ...], taken: str | None
) -> None:
    text = OWN_IRON.replace("[own-iron]", f'["{name}"]')
    root = written(tmp_path, {**FILES, "own.toml": text}, NAMED)
    found = open_repository([root], LOADED.kinds, of_families=of_families)
    assert list(found.materials) == ([name] if taken is None else [])
    assert [one.write for one in found.complaints] == (
        [] if taken is None else [f'a name of its own, not "{taken}"']
    )


@pytest.mark.parametrize(("content", "line"), [(b"\n# \xff", 2), (b"\xff", 1), (b"# a\n\n\xff\n", 3)])
def test_materials_that_are_no_text_are_told_with_their_line(
    tmp_path: Path, content: bytes, line: int
) -> None:
    root = written(tmp_path, FILES, NAMED)
    (root / "own.toml").write_bytes(content)
    _, (complaint,) = read_own_materials(root, Settings(materials=("own.toml",)))
    assert str(complaint) == f"own.toml:{line}: the file is not UTF-8 text; write the file saved as UTF-8"


def test_a_file_of_materials_is_told_where_the_settings_name_it_and_those_behind_it_are_read(
    tmp_path: Path,
) -> None:
    """The settings of before may name more files than those that lie in the folder."""
    settings = 'materials = [\n"../out.toml",\n"none.toml",\n"own.toml"]\n' + SETTINGS
    root = written(tmp_path, {**FILES, "own.toml": OWN_IRON}, settings)
    named = ("../out.toml", "none.toml", "own.toml", "fourth.toml")
    found, complaints = read_own_materials(root, Settings(materials=named))
    assert list(found) == ["own-iron"]
    assert said(complaints) == [
        "speclint.toml:2 materials",
        "speclint.toml:3 materials",
        "speclint.toml materials",
    ]
    assert [one.read for one in complaints] == ['"../out.toml"', '"none.toml"', '"fourth.toml"']
    assert [one.write for one in complaints] == [
        "a file in it",
        "a file that is there",
        "a file that is there",
    ]


def test_a_name_that_is_taken_is_told_on_its_line_also_with_line_ends_of_windows(tmp_path: Path) -> None:
    root = written(tmp_path, FILES, NAMED)
    (root / "own.toml").write_bytes(
        OWN_IRON.replace("own-iron]", "grey-iron-250]").replace("\n", "\r\n").encode()
    )
    found, (complaint,) = read_own_materials(root, Settings(materials=("own.toml",)))
    assert found == {}
    assert str(complaint.where) == "own.toml:4 grey-iron-250"
    assert complaint.read == '"grey-iron-250"'
