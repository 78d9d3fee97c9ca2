"""What a check wrote is written again while nothing that it rests on has changed, and made anew where anything has."""

from __future__ import annotations

import argparse
import io
import os
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Assessment, KeptFolder, kept_run, loop
from speclint.commands import check, main
from speclint.families import loading
from speclint.reports import Page
from speclint.testing import SETTINGS
from tests import tubes
from tests.tubes import FILES, TUBE

DRAWN = {**FILES, "tube.toml": TUBE + 'drawing = "T-12"\ndrawing_file = "tube.pdf"\n'}


class Desk:
    """A design of one tube in the current folder, and how often it was checked."""

    def __init__(self, root: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.root, self.checked, self.code, self._capsys = root, 0, "one", capsys

    def write(self, files: dict[str, str]) -> None:
        for name, text in files.items():
            (self.root / name).parent.mkdir(parents=True, exist_ok=True)
            (self.root / name).write_text(text, encoding="utf-8")

    def run(self, *words: str) -> tuple[int, str]:
        code = main(["check", *words])
        out, err = self._capsys.readouterr()
        assert not err
        return code, out

    def again(self, *words: str) -> bool:
        """Whether a check is written again as it was; the same as one made afresh in any case."""
        before = self.checked
        found = self.run(*words)
        anew = self.checked > before
        assert found == self.run(*words, "--afresh")
        return not anew


@pytest.fixture
def desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Desk:
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.setattr("speclint.checking.usual_folder", lambda: tmp_path / "kept")
    made = Desk(tmp_path / "design", capsys)
    made.write({"speclint.toml": SETTINGS, **DRAWN, "tube.pdf": "as drawn\n"})
    monkeypatch.chdir(made.root)
    # The family of tubes is made in memory: a word stands for its code.
    tubes.code_known(monkeypatch, lambda name: f"{name} {made.code}")
    monkeypatch.setattr(kept_run, "how_code_stands", lambda _: (made.code, True))
    assess = loop.assess

    def counted(*given: object, **more: object) -> object:
        made.checked += 1
        return assess(*given, **more)  # type: ignore[arg-type]

    monkeypatch.setattr("speclint.checking.assess", counted)
    return made


@pytest.mark.parametrize("words", [(), ("--full",), ("--as", "json"), ("tube.toml",)], ids=" ".join)
def test_what_still_holds_is_written_again(words: tuple[str, ...], desk: Desk) -> None:
    first = desk.run(*words)
    assert desk.checked == 1
    assert desk.run(*words) == first
    assert desk.checked == 1
    assert desk.again(*words)


def _edit(file: str, old: str, new: str) -> Callable[[Desk], None]:
    def edit(desk: Desk) -> None:
        text = (desk.root / file).read_text(encoding="utf-8")
        assert old in text
        desk.write({file: text.replace(old, new)})

    return edit


def _another_folder(desk: Desk) -> None:
    desk.write({"stores/more.toml": 'kind = "rack"\nid = "more"\ntitle = "Rack"\nhole = "120 mm"\n'})


def _own_root(desk: Desk) -> None:
    (desk.root / "racks").mkdir()
    (desk.root / "rack.toml").rename(desk.root / "racks" / "rack.toml")
    desk.write({"racks/speclint.toml": SETTINGS})


def _other_code(desk: Desk) -> None:
    desk.code = "two"


CHANGES = {
    "a value": _edit("tube.toml", "30 bar", "45 bar"),
    "a remark": _edit("tube.toml", 'kind = "tube"', '# looked at again\nkind = "tube"'),
    "a setting": _edit("speclint.toml", SETTINGS, SETTINGS + 'exit_at = "hold"\n'),
    "another spec": _another_folder,
    "a repository within": _own_root,
    "other code": _other_code,
}


@pytest.mark.parametrize("change", CHANGES)
def test_whatever_has_changed_is_checked_anew(change: str, desk: Desk) -> None:
    desk.run()
    assert desk.again()
    CHANGES[change](desk)
    assert not desk.again()
    assert desk.again() == (desk.run()[0] < 2)  # what cannot be read is told anew each time


def test_what_is_as_it_once_was_is_written_as_it_was(desk: Desk) -> None:
    first = desk.run()
    CHANGES["a value"](desk)
    assert desk.run() != first
    _edit("tube.toml", "45 bar", "30 bar")(desk)
    assert desk.again()
    assert desk.run() == first


def test_each_day_is_checked_anew(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    desk.run()
    today = time.strftime
    monkeypatch.setattr(time, "strftime", lambda form: f"{today(form)} and a day")
    assert not desk.again()


def test_each_width_is_written_anew(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    desk.run()
    monkeypatch.setenv("COLUMNS", "60")
    assert not desk.again()
    assert max(map(len, desk.run()[1].splitlines())) <= 60


@pytest.mark.parametrize(
    "words", [("--rule", "tube.stress"), ("--family", "tubes"), ("--afresh",)], ids=" ".join
)
def test_other_runs_are_not_kept_whole(words: tuple[str, ...], desk: Desk) -> None:
    desk.run(*words)
    before = desk.checked
    desk.run(*words)
    assert desk.checked > before


def test_what_could_not_be_read_is_not_kept(desk: Desk) -> None:
    desk.write({"bad.toml": 'kind = "tube"\nbore = "5,5 mm"\n'})
    assert desk.run()[0] == 2
    assert not desk.again()


def test_a_design_that_changed_while_it_was_checked_is_not_kept(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    write = check._written

    def changing(*given: object, **more: object) -> str | Page:
        CHANGES["a remark"](desk)
        return write(*given, **more)  # type: ignore[arg-type]

    monkeypatch.setattr(check, "_written", changing)
    desk.run()
    _edit("tube.toml", "# looked at again\n", "")(desk)
    monkeypatch.setattr(check, "_written", write)
    assert not desk.again()


def test_code_that_changed_a_moment_ago_is_not_trusted(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(kept_run, "how_code_stands", lambda _: (desk.code, False))
    desk.run()
    assert not desk.again()


@pytest.mark.parametrize("gone", [False, True], ids=["changed", "gone"])
def test_the_file_of_a_drawing_counts_where_it_was_read(
    gone: bool, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No rule of the tubes asks for it: here the report does."""
    write = check._written

    def reading(options: Any, assessment: Assessment, *given: Any, **more: Any) -> str | Page:
        assert assessment.design is not None
        assessment.design.drawing_files.state("tube.pdf")
        return write(options, assessment, *given, **more)

    desk.run()
    desk.write({"tube.pdf": "as drawn by another\n"})
    assert desk.again()  # nothing read it
    monkeypatch.setattr(check, "_written", reading)
    _edit("tube.toml", 'kind = "tube"', '# read\nkind = "tube"')(desk)
    desk.run()
    assert desk.again()
    if gone:
        (desk.root / "tube.pdf").unlink()
    else:
        desk.write({"tube.pdf": "as drawn at last\n"})
    assert not desk.again()


def _options(**others: object) -> argparse.Namespace:
    parser = argparse.ArgumentParser()
    check.add_options(parser)
    return argparse.Namespace(**{**vars(parser.parse_args([])), **others})


@pytest.mark.parametrize("option", sorted(set(vars(_options())) - {"paths"}))
def test_every_option_counts(option: str, desk: Desk) -> None:
    """As one of the words by which a run is found again; else the run is not kept whole."""
    other = _options(**{option: ["other"]})
    if check._kept_whole(other, KeptFolder(desk.root.parent / "kept")) is None:
        assert option in ("to", "family", "rule", "staged", "against", "on")
    else:
        assert check._words(other) != check._words(_options())


CONCESSION = """[[concession]]
number = "C-001"
component = "tube"
rule = "tube.stress"
edition = 1
outcome = "finding"
grade = "hold"
found = "it bursts"
used = "1.147"
fingerprint = "0123456789abcdef01234567"
accepted_by = "M. Coyle"
role = "chief draughtsman"
date = 2025-03-03
until = 2039-12-31
grounds = "As tested."
rests_on = { "tube bore" = "100 mm" }
"""
READING = """[[reading]]
number = "R-001"
component = "tube"
file = "tube.pdf"
sha256 = "0000000000000000000000000000000000000000000000000000000000000000"
read_by = "M. Coyle"
date = 2025-03-03
"""


@pytest.mark.parametrize("entry", [CONCESSION, READING], ids=["concession", "reading"])
def test_what_is_signed_is_checked_anew(entry: str, desk: Desk) -> None:
    """Whether a signature counts rests on the file of signers, on the hour and on the ssh-keygen that is found."""
    desk.write({"register.toml": entry})
    assert desk.run()[0] < 2
    assert desk.again()
    signed = 'signature = "-----BEGIN SSH SIGNATURE-----"\n'
    desk.write({"register.toml": entry + signed})
    assert desk.run()[0] < 2
    assert not desk.again()


@pytest.mark.parametrize(
    "words",
    ['materials = ["own.txt"]\n', '[concessions]\nfile = "register.txt"\n'],
    ids=["materials", "register"],
)
def test_what_the_settings_name_counts_by_any_name(words: str, desk: Desk) -> None:
    file = "own.txt" if "own" in words else "register.txt"
    desk.write({file: "", "speclint.toml": words + SETTINGS if "own" in words else SETTINGS + words})
    assert desk.run()[0] < 2
    assert not desk.again()
    desk.write({file: "x = 1\n"})
    assert desk.run()[0] == 2


def test_the_report_of_a_family_is_not_kept_whole() -> None:
    class Written:
        def write(self, _: object) -> str:
            raise NotImplementedError

    assert not check._is_own(Written())  # type: ignore[arg-type]


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    def isatty(self) -> bool:
        return True


def test_a_page_with_styles_is_written_again_with_them(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("NO_COLOR", raising=False)
    shown = []
    for _ in range(2):
        stream = Terminal()
        monkeypatch.setattr(sys, "stdout", stream)
        main(["check"])
        shown.append(stream.getvalue())
    assert shown[0] == shown[1]
    assert "\x1b[" in shown[0]
    assert desk.checked == 1


@pytest.mark.skipif(os.name == "nt", reason="a link needs a right of its own there")
def test_where_a_link_leads_counts(desk: Desk, tmp_path: Path) -> None:
    """The words are the same, and so is the repository: the link leads to another spec of it."""
    link = tmp_path / "here"
    link.symlink_to(desk.root / "tube.toml")
    first = desk.run(str(link))
    link.unlink()
    link.symlink_to(desk.root / "rack.toml")
    assert desk.run(str(link)) != first
