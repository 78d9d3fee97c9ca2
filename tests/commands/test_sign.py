"""Signing says what was signed: the entry in full, with the register that it stands in."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.families import loading
from speclint.register import Reader, enter_reading
from speclint.repository import Settings, read_register
from speclint.testing import DesignFolder
from tests import tubes
from tests.register.office import FILES, SETTINGS, Office

NAMED = 'drawing = "T-1"\nrevision = "A"\ndrawing_file = "tube.svg"\n'


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Office:
    """A tube with the file of its drawing, and a command line that knows only the family of tubes."""
    root, keys = tmp_path / "design", tmp_path / "keys"
    root.mkdir()
    keys.mkdir()
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes", rules=(*tubes.RULES,))])
    named = {**FILES, "tube.toml": FILES["tube.toml"] + NAMED, "tube.svg": "<svg/>"}
    return Office(DesignFolder(root, tubes.tubes()).write(named, settings=SETTINGS), keys)


def signed(office: Office, number: str, capsys: pytest.CaptureFixture[str]) -> list[str]:
    """The lines that the command prints."""
    key = office.key_of("m.coyle")
    capsys.readouterr()
    assert main(["sign", number, "--key", str(key), "--in", str(office.shop.root)]) == 0
    return capsys.readouterr().out.splitlines()


def test_a_reading_that_was_signed_is_printed(office: Office, capsys: pytest.CaptureFixture[str]) -> None:
    shop = office.shop
    enter_reading(["tube"], Reader("M. Coyle"), shop.root, shop.loaded, dt.date.today())
    printed = signed(office, "R-001", capsys)
    assert printed[0] == "R-001 signed in register.toml: tube"
    assert any("tube.svg" in line for line in printed)
    (entry,) = read_register(shop.root, Settings()).readings
    assert entry.signature


def test_a_concession_that_was_signed_is_printed(office: Office, capsys: pytest.CaptureFixture[str]) -> None:
    office.concede()
    printed = signed(office, "C-001", capsys)
    assert printed[0].startswith("C-001 signed in register.toml")
    assert any("carried at 113 MPa in service for years" in line for line in printed)


def test_the_register_lists_both_kinds_of_entry(office: Office, capsys: pytest.CaptureFixture[str]) -> None:
    shop = office.shop
    office.concede()
    enter_reading(["tube"], Reader("M. Coyle"), shop.root, shop.loaded, dt.date.today())
    capsys.readouterr()
    assert main(["register", "--in", str(shop.root), "--as", "json"]) in (0, 1)
    text = capsys.readouterr().out
    assert text.startswith("{")
    assert text.index("C-001") < text.index("R-001")
    assert main(["register", "--in", str(shop.root)]) in (0, 1)
    assert not capsys.readouterr().out.startswith("{")
