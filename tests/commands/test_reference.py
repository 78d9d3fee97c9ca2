"""The reference is written whole into a folder, over an older one, and touches no other file."""

from __future__ import annotations

import errno
import os
from pathlib import Path
from typing import NoReturn

import pytest

from speclint.commands import main
from speclint.commands.made_files import write_made
from speclint.errors import OutputError, SettingsError
from speclint.reports.reference import REFERENCE_FRONT, REFERENCE_MARK

MARK = "made for a test"
FILES = {"index.html": f"<!-- {MARK} --> front", "rules/one.html": f"<!-- {MARK} --> one"}


@pytest.mark.long
def test_it_is_written_and_written_anew_with_the_same_bytes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["reference", "--to", "pages"]) == 0
    assert capsys.readouterr().out == f"{Path('pages') / REFERENCE_FRONT}\n"
    first = {path: path.read_bytes() for path in Path("pages").rglob("*") if path.is_file()}
    assert len(first) > 150
    assert all(REFERENCE_MARK.encode() in content for content in first.values())
    assert b"\r" not in first[Path("pages") / REFERENCE_FRONT]
    assert main(["reference", "--to", "pages"]) == 0
    assert {path: path.read_bytes() for path in Path("pages").rglob("*") if path.is_file()} == first


def test_it_wants_a_folder(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["reference"])
    assert ended.value.code == 2
    assert "--to" in capsys.readouterr().err


def test_files_of_others_are_left_alone_and_pages_made_no_more_go(tmp_path: Path) -> None:
    write_made(tmp_path, FILES, MARK)
    own = tmp_path / "rules" / "my-notes.html"
    own.write_text("mine", encoding="utf-8")
    write_made(tmp_path, {"index.html": FILES["index.html"]}, MARK)
    assert not (tmp_path / "rules" / "one.html").exists()
    assert own.read_text(encoding="utf-8") == "mine"


def test_a_file_of_another_under_such_a_name_is_refused_and_nothing_is_written(tmp_path: Path) -> None:
    (tmp_path / "rules").mkdir()
    (tmp_path / "rules" / "one.html").write_text("mine", encoding="utf-8")
    with pytest.raises(SettingsError, match=r"one\.html is there already, and is none of an earlier run"):
        write_made(tmp_path, FILES, MARK)
    assert not (tmp_path / "index.html").exists()
    assert (tmp_path / "rules" / "one.html").read_text(encoding="utf-8") == "mine"


def test_a_link_under_such_a_name_is_refused(tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere.html"
    elsewhere.write_text(MARK, encoding="utf-8")
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "index.html").symlink_to(elsewhere)
    with pytest.raises(OutputError, match="is a link"):
        write_made(tmp_path / "pages", FILES, MARK)
    assert elsewhere.read_text(encoding="utf-8") == MARK


def test_a_folder_that_cannot_be_made_is_told_in_one_line(tmp_path: Path) -> None:
    (tmp_path / "pages").write_text("a file", encoding="utf-8")
    with pytest.raises(OutputError, match="pages"):
        write_made(tmp_path / "pages", FILES, MARK)


def test_the_folders_that_lead_to_a_page_are_made_and_it_is_written_as_it_is(tmp_path: Path) -> None:
    pages = tmp_path / "of" / "office"
    for text in (FILES["rules/one.html"], f"<!-- {MARK} --> two, σ"):
        write_made(pages, {**FILES, "rules/one.html": text}, MARK)
        assert (pages / "rules" / "one.html").read_text(encoding="utf-8") == text
    assert (pages / "index.html").read_text(encoding="utf-8") == FILES["index.html"]


def test_what_is_no_page_of_an_earlier_run_is_left_alone_whatever_it_leads_to(tmp_path: Path) -> None:
    """A link to a page, a page behind a link to a folder, and a folder that is called like a page."""
    elsewhere = tmp_path / "elsewhere"
    write_made(elsewhere, FILES, MARK)
    pages = tmp_path / "pages"
    (pages / "old.html").mkdir(parents=True)
    (pages / "link.html").symlink_to(elsewhere / "index.html")
    (pages / "linked").symlink_to(elsewhere, target_is_directory=True)
    write_made(pages, FILES, MARK)
    assert (pages / "old.html").is_dir()
    assert (pages / "link.html").is_symlink()
    assert (elsewhere / "index.html").read_text(encoding="utf-8") == FILES["index.html"]


@pytest.mark.parametrize(("ends_at", "is_own"), [(100_000, True), (100_001, False)])
def test_the_mark_stands_in_the_first_hundred_thousand_bytes(
    tmp_path: Path, ends_at: int, is_own: bool
) -> None:
    page = tmp_path / "old.html"
    page.write_bytes(MARK.encode().rjust(ends_at))
    write_made(tmp_path, FILES, MARK)
    assert page.exists() is not is_own


def test_a_page_that_cannot_be_read_is_told_and_nothing_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It may be of an earlier run or not."""
    page = tmp_path / "old.html"
    page.write_text(MARK, encoding="utf-8")

    def unreadable(*_: object) -> NoReturn:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr(Path, "open", unreadable)
    with pytest.raises(OutputError, match=r"old\.html: cannot be read: Permission denied"):
        write_made(tmp_path, FILES, MARK)
    assert [one.name for one in tmp_path.iterdir()] == ["old.html"]
