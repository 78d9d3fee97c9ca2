"""Several people at one register: every entry is kept, no number is given twice, and no lock is left behind."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
import threading
from pathlib import Path

import pytest
from filelock import FileLock

from speclint.errors import DesignError, OutputError, SettingsError
from speclint.register import entering, lock, writing
from speclint.register.lock import locked
from tests.register.office import FILES, Office, days

ROOT = Path(__file__).parents[2]
TUBES = [f"tube-{number}" for number in range(4)]

_ONE_RUN = """
import sys
from pathlib import Path
from speclint.errors import replace
from speclint.register import concede
from tests.register.office import ACCEPTED, TODAY
from tests.tubes import tubes

loaded = tubes()
print("ready", flush=True)
sys.stdin.readline()
for tube in sys.argv[2:]:
    acceptance = replace(ACCEPTED, component=tube)
    print(concede(acceptance, Path(sys.argv[1]), loaded, TODAY)[0].number, flush=True)
"""


@pytest.fixture
def tubes(office: Office) -> Office:
    """An office with the same hold on four tubes."""
    office.shop.write(
        {f"{tube}.toml": FILES["tube.toml"] for tube in TUBES}, settings=office_settings(office)
    )
    return office


def office_settings(office: Office) -> str:
    return (office.shop.root / "speclint.toml").read_text(encoding="utf-8")


def names(office: Office) -> list[str]:
    return sorted(path.name for path in office.shop.root.iterdir() if path.suffix != ".toml")


def test_four_processes_at_once_give_four_numbers(tubes: Office) -> None:
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join([str(ROOT), str(ROOT / "plugins")])}
    runs = [
        subprocess.Popen(
            [sys.executable, "-c", _ONE_RUN, str(tubes.shop.root), tube],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            env=environment,
        )
        for tube in TUBES
    ]
    for run in runs:
        assert run.stdout is not None
        assert run.stdout.readline() == "ready\n"
    for run in runs:
        assert run.stdin is not None
        run.stdin.write("go\n")
        run.stdin.flush()
    given = [run.communicate()[0].strip() for run in runs]
    assert sorted(given) == ["C-001", "C-002", "C-003", "C-004"]
    kept = tubes.register()
    assert kept.complaints == ()
    assert {one.component: one.number for one in kept.concessions} == dict(zip(TUBES, given, strict=True))
    assert names(tubes) == []


def test_what_another_run_entered_meanwhile_is_kept_and_numbered_on(
    tubes: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The other run ends after this one has read the register and before it holds the lock."""
    found = entering._finding

    def after_another(*given: object) -> object:
        monkeypatch.setattr(entering, "_finding", found)
        assert tubes.concede(component="tube-0").number == "C-001"
        return found(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(entering, "_finding", after_another)
    assert tubes.concede(component="tube-1").number == "C-002"
    assert [one.component for one in tubes.register().concessions] == ["tube-0", "tube-1"]


def test_the_same_finding_conceded_meanwhile_is_refused(
    tubes: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    found = entering._finding

    def after_another(*given: object) -> object:
        monkeypatch.setattr(entering, "_finding", found)
        tubes.concede()
        return found(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(entering, "_finding", after_another)
    with pytest.raises(DesignError, match="C-001 already accepts this finding"):
        tubes.concede()
    assert names(tubes) == []


def test_signing_waits_for_an_entry_being_made(tubes: Office) -> None:
    """While the lock is held nothing is written; when it is let go, the signature is added to what is then there."""
    tubes.concede(component="tube-0")
    key = tubes.key_of("m.coyle")
    signing = threading.Thread(target=tubes.sign, args=("C-001", key))
    with locked(tubes.shop.root / "register.toml"):
        signing.start()
        signing.join(0.3)
        assert signing.is_alive()
        assert "SSH SIGNATURE" not in tubes.text()
        entry = tubes.text()[tubes.text().index("[[concession]]") :].replace("C-001", "C-002")
        with (tubes.shop.root / "register.toml").open("a", encoding="utf-8", newline="\n") as file:
            file.write(f"\n{entry.replace('tube-0', 'tube-1')}")
    signing.join(30)
    assert [(one.number, bool(one.signature)) for one in tubes.register().concessions] == [
        ("C-001", True),
        ("C-002", False),
    ]


def test_a_lock_that_is_held_too_long_is_one_clear_line(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(lock, "PATIENCE", 0.2)
    said = r"register\.toml: another run of speclint has kept the register for 0\.2 s; try again when it has ended"
    with FileLock(office.shop.root / ".register.toml.lock"), pytest.raises(OutputError, match=said):
        office.concede()
    assert not (office.shop.root / "register.toml").exists()
    assert office.concede().number == "C-001"


def test_a_lock_left_by_a_run_that_was_killed_holds_nobody_up_and_goes(office: Office) -> None:
    (office.shop.root / ".register.toml.lock").write_bytes(b"")
    assert office.concede().number == "C-001"
    assert names(office) == []


@pytest.mark.skipif(sys.platform == "win32", reason="Windows keeps a file that is open")
def test_the_file_of_the_lock_goes_while_it_is_held_and_the_next_takes_a_new_one(tmp_path: Path) -> None:
    """Two who wait and one who comes later: at no time are two inside."""
    inside: list[int] = []
    most: list[int] = []

    def enter() -> None:
        for _ in range(5):
            with locked(tmp_path / "register.toml"):
                inside.append(1)
                most.append(len(inside))
                threading.Event().wait(0.01)
                inside.pop()

    threads = [threading.Thread(target=enter) for _ in range(3)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(30)
    assert most == [1] * 15
    assert list(tmp_path.iterdir()) == []


def test_where_there_can_be_no_lock_nothing_is_entered(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(*_: object, **__: object) -> None:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr(FileLock, "acquire", refused)
    with pytest.raises(OutputError, match="the register cannot be locked: Permission denied"):
        office.concede()
    assert not (office.shop.root / "register.toml").exists()


@pytest.mark.parametrize("sealed", [False, True])
def test_a_full_disk_leaves_the_register_as_it_was(
    office: Office, monkeypatch: pytest.MonkeyPatch, sealed: bool
) -> None:
    """While an entry is added, and while one is signed."""
    office.concede()
    before, key = office.text(), office.key_of("m.coyle")

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", full)
        with pytest.raises(OutputError, match="No space left on device") as refused:
            office.sign("C-001", key) if sealed else office.concede(until=days(300))
    assert refused.value.exit_code == 2
    assert office.text() == before
    assert names(office) == ["allowed_signers"]


@pytest.mark.skipif(sys.platform == "win32", reason="needs links as files")
@pytest.mark.parametrize("to", ["elsewhere.toml", "/dev/null"])
def test_a_register_that_is_a_link_out_is_neither_read_nor_written(office: Office, to: str) -> None:
    place = office.keys / to
    (office.shop.root / "register.toml").symlink_to(place)
    with pytest.raises(
        SettingsError,
        match=r"^register\.toml: this is a link that leads out of the repository, which is neither read nor written$",
    ):
        office.concede()
    assert (office.shop.root / "register.toml").is_symlink()
    assert not (office.keys / "elsewhere.toml").exists()


def test_an_entry_that_would_make_the_register_unreadable_is_refused(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    office.concede()
    before = office.text()
    with pytest.raises(SettingsError, match="a text has at most 20000 characters; this has 20001; nothing"):
        office.concede(until=days(300), grounds="g" * 20_001)
    monkeypatch.setattr(writing, "LARGEST_REGISTER", len(before) + 500)
    with pytest.raises(
        SettingsError, match=r"with this entry it has \d+ bytes, and at most \d+ are read; nothing"
    ):
        office.concede(until=days(300), grounds="g" * 501)
    assert office.text() == before


def test_a_number_that_is_not_there_is_answered_with_those_not_signed(office: Office) -> None:
    key = office.key_of("m.coyle")
    with pytest.raises(
        DesignError, match="no concession has the number C-009; write nothing: it has no entry"
    ):
        office.sign("C-009", key)
    office.concede(key=key)
    office.concede(until=days(250))
    office.concede(until=days(300))
    with pytest.raises(DesignError, match=r"write one that is not signed yet: C-002, C-003$"):
        office.sign("C-009", key)
    office.sign("C-003", key)
    office.shop.replace("register.toml", "C-002", "C-004")
    with pytest.raises(DesignError, match=r"C-009; write one that is not signed yet: C-004$"):
        office.sign("C-009", key)


def test_where_all_are_signed_it_says_so(office: Office) -> None:
    key = office.key_of("m.coyle")
    office.concede(key=key)
    with pytest.raises(DesignError, match=r"write one that is there, all signed: C-001$"):
        office.sign("C-002", key)


@pytest.mark.skipif(sys.platform == "win32", reason="needs links as files")
def test_a_file_of_signers_that_is_a_link_out_signs_nothing(office: Office) -> None:
    office.concede(key=office.key_of("m.coyle"))
    signers = office.shop.root / "allowed_signers"
    signers.rename(office.keys / "allowed_signers")
    signers.symlink_to(office.keys / "allowed_signers")
    standing = office.only()
    assert standing.state == "not signed"
    assert standing.reasons == (
        "the file of signers, allowed_signers, is a link that leads out of the repository, which is not read",
    )
