"""Which design repository some paths lie in, and which of its files they choose."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.errors import DesignError
from speclint.repository import find_root
from speclint.repository.folder import chosen


def made(root: Path, *files: str) -> Path:
    for file in files:
        (root / file).parent.mkdir(parents=True, exist_ok=True)
        (root / file).write_text("", encoding="utf-8")
    return root


@pytest.mark.parametrize("path", [".", "sub", "sub/part.toml", "speclint.toml"])
def test_the_nearest_folder_above_that_holds_settings(tmp_path: Path, path: str) -> None:
    root = made(tmp_path, "speclint.toml", "sub/part.toml")
    assert find_root([root / path]) == root
    made(tmp_path, "sub/speclint.toml")
    assert find_root([root / path]) == (root / "sub" if path.startswith("sub") else root)


def test_a_folder_of_that_name_is_no_settings(tmp_path: Path) -> None:
    root = made(tmp_path, "speclint.toml", "sub/speclint.toml/note.txt")
    assert find_root([root / "sub"]) == root


def test_in_git_the_only_repository_below_is_meant(tmp_path: Path) -> None:
    root = made(tmp_path, "a/design/speclint.toml", "b/note.txt")
    with pytest.raises(DesignError, match=r"no speclint\.toml here or in any folder above"):
        find_root([root])
    (root / ".git").mkdir()
    assert find_root([root]) == root / "a" / "design"
    assert find_root([root / "a"]) == root / "a" / "design"
    with pytest.raises(DesignError, match=r"no speclint\.toml here"):
        find_root([root / "b"])


@pytest.mark.parametrize("number", [2, 4, 5])
def test_of_several_below_at_most_four_are_named(tmp_path: Path, number: int) -> None:
    root = made(tmp_path, ".git/x", *(f"d{one}/speclint.toml" for one in range(number)))
    named = ", ".join(str(root / f"d{one}") for one in range(min(number, 4)))
    with pytest.raises(DesignError) as refused:
        find_root([root])
    assert str(refused.value) == f"{root}: several design repositories lie here; say which: {named}"


@pytest.mark.parametrize(("path", "begun"), [("sub", "sub"), ("sub/a.toml", "sub")])
def test_where_there_is_none_a_folder_to_begin_one_in_is_named(tmp_path: Path, path: str, begun: str) -> None:
    root = made(tmp_path, "sub/a.toml")
    with pytest.raises(DesignError) as refused:
        find_root([root / path])
    assert str(refused.value).startswith(f"{root / path}: no speclint.toml here")
    assert str(refused.value).endswith(f"speclint begin {root / begun} writes one")


def test_paths_of_two_repositories_are_told_apart_and_those_of_one_are_not(tmp_path: Path) -> None:
    root = made(tmp_path, "a/speclint.toml", "a/x.toml", "b/speclint.toml", "c/speclint.toml")
    assert find_root([root / "a", root / "a" / "x.toml"]) == root / "a"
    with pytest.raises(DesignError) as refused:
        find_root([root / "a", root / "a" / "x.toml", root / "b", root / "c"])
    assert str(refused.value) == (
        f"{root / 'b'}: lies in the repository {root / 'b'}, not in {root / 'a'}; check one repository at a time"
    )


@pytest.mark.parametrize(
    ("paths", "has"),
    [
        (["."], True),
        (["sub"], True),
        (["sub/a.toml"], True),
        (["other", "sub/../sub"], True),
        (["sub/b.toml"], False),
        (["su"], False),
        ([], False),
    ],
)
def test_a_file_is_chosen_by_its_path_or_a_folder_above_it(
    tmp_path: Path, paths: list[str], has: bool
) -> None:
    root = made(tmp_path, "sub/a.toml")
    assert chosen(root / "sub" / "a.toml", [root / path for path in paths]) is has
