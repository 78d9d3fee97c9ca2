"""What a run wrote is found again by its words, its paths, the files that it read and the code; else it is not."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.checking import KeptFolder, KeptRun, RestedOn, code_digest, kept_run
from speclint.repository import DrawingFiles, FileState, InFolder

PACKAGES = ("speclint", "speclint_drawn_here")


class Office:
    """A repository of one spec with a drawing, and the folder in which runs are kept."""

    def __init__(self, folder: Path) -> None:
        self.root, self.folder = folder / "design", KeptFolder(folder / "kept")
        self.write("speclint.toml", "")
        self.write("covers/front.toml", 'kind = "cover"\n')
        self.write("covers/front.pdf", "as drawn")

    def write(self, file: str, text: str) -> None:
        (self.root / file).parent.mkdir(parents=True, exist_ok=True)
        (self.root / file).write_text(text, encoding="utf-8")

    def run(self, *paths: str, word: str = "check") -> KeptRun | None:
        return KeptRun.of(self.folder, [self.root / one for one in paths or (".",)], lambda: [word])

    def keep(
        self,
        text: str = "in order",
        exit_code: int = 0,
        drawings: tuple[str, ...] = (),
        named: tuple[str, ...] = (),
    ) -> None:
        run = self.run()
        assert run is not None
        run.keep(exit_code, text, RestedOn(self.read(drawings), named, PACKAGES))

    def read(self, drawings: tuple[str, ...]) -> dict[str, FileState]:
        files = DrawingFiles(InFolder(self.root))
        return {file: files.state(file) for file in drawings}

    def written(self, *paths: str, word: str = "check") -> tuple[int, str] | None:
        run = self.run(*paths, word=word)
        return run.written() if run is not None else None


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Office:
    monkeypatch.setattr(kept_run, "how_code_stands", lambda packages: (f"as {sorted(packages)}", True))
    return Office(tmp_path)


def test_what_was_kept_is_found_again(office: Office) -> None:
    assert office.written() is None
    office.keep("two\nlines, ≥ 1 \ud800", 1)
    assert office.written() == (1, "two\nlines, ≥ 1 \ud800")
    assert office.written(word="check --full") is None
    assert office.written("covers") is None


def _removed(office: Office) -> None:
    (office.root / "covers" / "front.toml").unlink()


CHANGES: dict[str, Callable[[Office], None]] = {
    "a value": lambda office: office.write("covers/front.toml", 'kind = "gland"\n'),
    "a setting": lambda office: office.write("speclint.toml", "materials = []\n"),
    "another file": lambda office: office.write("covers/back.TOML", 'kind = "cover"\n'),
    "a file less": _removed,
    "a hidden file": lambda office: office.write(".drafts/back.toml", ""),
}


@pytest.mark.parametrize("change", CHANGES)
def test_whatever_toml_changes_counts(change: str, office: Office) -> None:
    office.keep()
    assert office.written() == (0, "in order")
    CHANGES[change](office)
    assert office.written() is None


def test_other_files_count_where_they_were_read(office: Office) -> None:
    office.keep(drawings=("covers/front.pdf", "covers/not there.pdf"))
    office.write("covers/other.pdf", "anything")
    assert office.written() == (0, "in order")
    office.write("covers/not there.pdf", "drawn")
    assert office.written() is None
    (office.root / "covers" / "not there.pdf").unlink()
    office.write("covers/front.pdf", "drawn again")
    assert office.written() is None


def test_a_drawing_counts_as_it_was_when_it_was_read(office: Office) -> None:
    run, read = office.run(), office.read(("covers/front.pdf",))
    assert run is not None
    office.write("covers/front.pdf", "drawn again, while the checks were made")
    run.keep(0, "in order", RestedOn(read, (), PACKAGES))
    assert office.written() is None
    office.write("covers/front.pdf", "as drawn")
    assert office.written() == (0, "in order")


def _back(office: Office) -> None:
    office.write("covers/front.toml", 'kind = "gland"\n')
    office.write("covers/front.toml", 'kind = "cover"\n')


def _there_for_a_moment(office: Office) -> None:
    office.write("covers/back.toml", 'kind = "cover"\n')
    (office.root / "covers" / "back.toml").unlink()


def _gone_for_a_moment(office: Office) -> None:
    file = office.root / "covers" / "front.toml"
    file.rename(office.root / "covers.toml")
    (office.root / "covers.toml").rename(file)


MEANWHILE = {"back": _back, "there": _there_for_a_moment, "gone": _gone_for_a_moment}


@pytest.mark.parametrize("change", MEANWHILE)
def test_a_spec_that_was_another_while_the_checks_were_made(change: str, office: Office) -> None:
    """That it is again as it was does not help: what was read may have been the other."""
    run = office.run()
    assert run is not None
    before = office.root / "covers" / "front.toml"
    stood = before.stat()
    MEANWHILE[change](office)
    os.utime(before, ns=(stood.st_atime_ns, stood.st_mtime_ns))
    run.keep(0, "in order", RestedOn({}, (), PACKAGES))
    assert office.written() is None


def test_a_spec_that_changes_while_the_checks_are_made(office: Office) -> None:
    run = office.run()
    assert run is not None
    office.write("covers/front.toml", 'kind = "gland"\n')
    run.keep(0, "in order", RestedOn({}, (), PACKAGES))
    assert office.written() is None
    office.write("covers/front.toml", 'kind = "cover"\n')
    assert office.written() is None


def test_words_that_are_others_once_the_checks_are_made(office: Office) -> None:
    """Such as the width of a terminal."""
    words = ["check", 100]
    run = KeptRun.of(office.folder, [office.root], lambda: words)
    assert run is not None
    words[1] = 80
    run.keep(0, "in order", RestedOn({}, (), PACKAGES))
    assert not list((office.root.parent / "kept").iterdir())


def test_what_is_installed_when_the_run_begins_counts(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Not what is once it ends: no family of that was loaded."""
    now = [("more-1.0.dist-info", (1,))]
    monkeypatch.setattr(kept_run, "distributions_found", lambda: now)
    run = office.run()
    assert run is not None
    now.append(("other-1.0.dist-info", (2,)))
    run.keep(0, "in order", RestedOn({}, (), PACKAGES))
    assert office.written() is None
    now.pop()
    assert office.written() == (0, "in order")


def test_other_code_writes_anew(office: Office, monkeypatch: pytest.MonkeyPatch) -> None:
    office.keep()
    monkeypatch.setattr(kept_run, "how_code_stands", lambda packages: (f"other {sorted(packages)}", True))
    assert office.written() is None
    monkeypatch.setattr(kept_run, "how_code_stands", lambda _: None)
    assert office.written() is None
    monkeypatch.setattr(kept_run, "how_code_stands", lambda packages: (f"as {sorted(packages)}", False))
    assert office.written() == (0, "in order")  # it stands as it did then, however lately it was written


@pytest.mark.parametrize("stands", [None, ("as it is", False)], ids=["in no file", "only just written"])
def test_code_of_which_nothing_can_be_told_keeps_nothing(
    stands: tuple[str, bool] | None, office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(kept_run, "how_code_stands", lambda _: stands)
    office.keep()
    assert not list((office.root.parent / "kept").iterdir())


@pytest.mark.parametrize(("more", "kept"), [(0, True), (1, False)])
def test_a_long_output_is_not_kept(more: int, kept: bool, office: Office) -> None:
    """4 MiB, of which two bytes are the exit code and the end of its line."""
    long = "x" * (4 * 1024 * 1024 - 2 + more)
    office.keep(long)
    assert (office.written() is not None) == kept


def test_paths_in_one_repository_only(office: Office, tmp_path: Path) -> None:
    assert office.run("covers", "covers/front.toml") is not None
    assert office.run("covers", "not there") is None
    assert office.run(str(tmp_path)) is None
    other = tmp_path / "other"
    other.mkdir()
    (other / "speclint.toml").write_text("", encoding="utf-8")
    assert office.run(".", str(other)) is None
    assert office.run("x" * 300) is None


@pytest.mark.skipif(os.name == "nt", reason="a link needs a right of its own there")
def test_paths_that_lead_nowhere_any_longer(office: Office, tmp_path: Path) -> None:
    """An empty folder is no TOML file: that it is gone shows by its path alone."""
    empty, here = office.root / "empty", tmp_path / "here"
    empty.mkdir()
    here.symlink_to(empty)
    assert office.run(str(here)) is not None
    empty.rmdir()
    assert office.run(str(here)) is None
    (office.root / "loop").symlink_to("loop")
    assert office.run("loop") is None


@pytest.mark.skipif(os.name == "nt", reason="the current folder cannot be removed there")
def test_a_current_folder_that_was_removed(
    office: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "gone").mkdir()
    monkeypatch.chdir(tmp_path / "gone")
    run = office.run()
    assert run is not None
    (tmp_path / "gone").rmdir()
    assert office.run() is None
    run.keep(0, "in order", RestedOn({}, (), PACKAGES))
    assert not list((tmp_path / "kept").iterdir())


def test_a_folder_that_is_not_used_keeps_nothing(office: Office) -> None:
    office.folder.why_not = "others may write to this folder"
    assert office.run() is None


def test_each_folder_and_day_by_itself(
    office: Office, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.chdir(tmp_path)
    office.keep()
    monkeypatch.chdir(office.root)
    assert office.written() is None
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("time.strftime", lambda _: "2026-12-24")
    assert office.written() is None


@pytest.mark.skipif(os.name == "nt", reason="a link needs a right of its own there")
def test_links(office: Office, tmp_path: Path) -> None:
    """One within the repository counts by its content, one that leads out of it by that alone."""
    outside = tmp_path / "outside.toml"
    outside.write_text("", encoding="utf-8")
    (office.root / "within.toml").symlink_to(office.root / "covers" / "front.toml")
    (office.root / "out.toml").symlink_to(outside)
    office.keep()
    outside.write_text("whatever it holds is not read", encoding="utf-8")
    assert office.written() == (0, "in order")
    (office.root / "more").symlink_to(tmp_path)
    assert office.written() is None


NAMED = ("own.toml", "lib/own.toml", ".lib/own.toml", "register.txt")


@pytest.mark.parametrize("named", NAMED)
def test_a_file_that_the_settings_name_counts_as_a_toml_file_or_keeps_nothing(
    named: str, office: Office
) -> None:
    office.keep(named=(named,))
    assert office.written() == (0, "in order")
    office.write(named, "")
    office.keep(named=(named,))
    assert office.written() == (None if named == "register.txt" else (0, "in order"))
    office.write(named, "x = 1\n")
    assert office.written() is None


@pytest.mark.skipif(os.name == "nt", reason="a link needs a right of its own there")
@pytest.mark.parametrize("link", ["lib", ".lib"])
def test_a_file_that_the_settings_name_behind_a_link_keeps_nothing(link: str, office: Office) -> None:
    office.write("one/own.toml", "")
    office.keep(named=(f"{link}/own.toml",))
    assert office.written() == (0, "in order")
    (office.root / link).symlink_to("one")
    assert office.written() is None
    office.keep(named=(f"{link}/own.toml",))
    assert office.written() is None


def test_how_code_stands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "speclint_drawn_here"
    package.mkdir()
    file = package / "__init__.py"
    file.write_text("a = 1\n", encoding="utf-8")
    monkeypatch.syspath_prepend(tmp_path)

    def stands() -> tuple[str, bool] | None:
        code_digest._standing.cache_clear()
        return code_digest.how_code_stands(["speclint_drawn_here"])

    hour_ago = file.stat().st_mtime - 3600
    os.utime(file, (hour_ago, hour_ago))
    monkeypatch.setattr(code_digest, "STILL", -60.0)
    first = stands()
    assert first is not None
    assert first[1]
    assert stands() == first
    monkeypatch.setattr(code_digest, "STILL", 3600.0)
    if os.name != "nt":  # there the time of the change itself is that of the making of the file
        assert stands() == (first[0], False)
    file.write_text("a = 2\n", encoding="utf-8")
    second = stands()
    assert second is not None
    assert second[0] != first[0]
    assert code_digest.how_code_stands(["speclint_that_is_nowhere"]) is None
    code_digest._standing.cache_clear()


def test_the_folder_does_not_grow_without_end(office: Office) -> None:
    office.folder = KeptFolder(office.root.parent / "small", most=1000)
    for day in range(10):
        office.keep("x" * 300 + str(day))
        office.write("covers/front.toml", f"day = {day}\n")
    left = sum(one.stat().st_size for one in (office.root.parent / "small").iterdir())
    assert 0 < left <= 1000
