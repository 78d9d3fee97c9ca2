"""Streams that are closed, full or left, interrupts, and names that are not text: one line, an honest exit code."""

from __future__ import annotations

import errno
import io
import json
import os
import signal
import subprocess
import sys
import time
import unicodedata
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest

from speclint.commands import main, streams
from speclint.commands.command_line import COMMANDS
from speclint.errors import ReaderLeft, StreamError
from speclint.families import loading
from speclint.reports import hooks
from speclint.testing import DesignFolder
from tests import tubes
from tests.benchmarks.specs import make
from tests.reports.hostile import TEXTS, quoted
from tests.tubes import FILES

#: Each command with words that make it say something.
WORDS = {
    "begin": ["begin", "../begun"],
    "check": ["check"],
    "margins": ["margins", "tube"],
    "sheet": ["sheet", "tube"],
    "affects": ["affects", "tube.bore"],
    "compare": ["compare", ".", "."],
    "unseen": ["unseen"],
    "inspect": ["inspect", "tube"],
    "record": ["record", "report.csv", "--part", "tube", "--serial", "7"],
    "import": ["import", "tubes.csv", "--kind", "tube"],
    "export": ["export", "tube"],
    "pair": ["pair", "tube", "tube"],
    "dossier": ["dossier", "--as", "markdown"],
    "review": ["review", "--to", "out"],
    "serve": ["serve", "--ready"],
    "rules": ["rules"],
    "kinds": ["kinds", "--as", "schema"],
    "names": ["names"],
    "families": ["families"],
    "reference": ["reference", "--to", "../pages"],
    "concede": ["concede", "tube", "tube.stress", "--by", "A", "--grounds", "x", "--until", "2030-01-01"],
    "sign": ["sign", "C-001", "--key", "key"],
    "read": ["read", "tube", "--by", "A"],
    "register": ["register", "--as", "json"],
    "gate": ["gate"],
}
#: What says nothing of itself, or needs an extra that may not be installed.
SILENT = {"begin", "concede", "import", "read", "record", "sign", *(() if find_spec("pygls") else ("serve",))}
SAYING = [word for word in WORDS if word not in SILENT]


class Stream(io.TextIOWrapper):
    """A standard output that takes nothing, until it is closed: then what was not taken is thrown away."""

    def __init__(self, number: int) -> None:
        self._closing = closing = [False]

        class Raw(io.RawIOBase):
            def writable(self) -> bool:
                return True

            def write(self, content: object) -> int:
                if closing[0]:
                    return len(memoryview(content))  # type: ignore[arg-type]
                raise OSError(number, os.strerror(number))

        super().__init__(io.BufferedWriter(Raw()), encoding="utf-8")

    def close(self) -> None:
        self._closing[0] = True
        super().close()


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A design in order, in the current folder, and the family of tubes alone."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    return DesignFolder(tmp_path, loading.load_families(built_in=hooks)).write(FILES)


def test_there_are_words_for_every_command() -> None:
    assert WORDS.keys() == COMMANDS.keys()


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    "words", [*(WORDS[word] for word in SAYING), ["--version"], ["--help"], ["check", "--help"]]
)
def test_a_full_output_is_told_and_is_no_success(
    words: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "stdout", Stream(errno.ENOSPC))
    assert main(words) == 2
    assert (
        capsys.readouterr().err
        == f"speclint: standard output cannot be written to: {os.strerror(errno.ENOSPC)}\n"
    )


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize("words", [*(WORDS[word] for word in SAYING), ["--help"]])
def test_a_reader_that_has_left_is_not_written_to_and_not_complained_of(
    words: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "stdout", Stream(errno.EPIPE))
    assert main(words) == 141
    assert capsys.readouterr().err == ""


@pytest.mark.parametrize("word", WORDS)
def test_nothing_is_done_where_there_is_no_output(
    word: str, shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.replace("tube.toml", "30 bar", "45 bar")
    before = sorted(path.name for path in shop.root.iterdir())
    monkeypatch.setattr(sys, "stdout", None)
    assert main(WORDS[word]) == 2
    assert capsys.readouterr().err.startswith("speclint: standard output is closed: ")
    assert sorted(path.name for path in shop.root.iterdir()) == before


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize("word", WORDS)
def test_an_interrupt_is_one_line_and_130(
    word: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupted(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("speclint.families.loading.entry_points", interrupted)
    monkeypatch.setattr(loading, "installed", interrupted)
    assert main(WORDS[word]) == 130
    told = capsys.readouterr()
    assert (told.out, told.err) == ("", "speclint: interrupted\n")


def test_an_error_stream_that_takes_nothing_leaves_the_exit_code(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stderr", Stream(errno.ENOSPC))
    assert main(["check", "nowhere"]) == 2


def test_a_released_design_whose_verdict_cannot_be_written_is_not_released(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["gate", str(shop.root)]) == 0
    assert "RELEASED as far as these rules go" in capsys.readouterr().out
    for number in (errno.ENOSPC, errno.EPIPE, errno.EIO):
        monkeypatch.setattr(sys, "stdout", Stream(number))
        assert main(["gate", str(shop.root)]) != 0


def test_what_is_closed_of_the_first_three_files_is_occupied(monkeypatch: pytest.MonkeyPatch) -> None:
    """The system gives the least number that is free: 1 and 2 here; the first beyond them is given back."""
    free = [1, 2, 5]
    closed: list[int] = []
    with monkeypatch.context() as patch:
        patch.setattr(os, "open", lambda *_: free.pop(0))
        patch.setattr(os, "close", closed.append)
        streams.occupy()
    assert (free, closed) == ([], [5])


def test_an_error_stream_that_was_closed_takes_what_it_is_given_and_drops_it(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    kept = sys.stderr
    monkeypatch.setattr(sys, "stderr", None)
    streams.occupy()
    with sys.stderr as given:
        assert given is not kept
        print("σ, and no more", file=given)
    assert capfd.readouterr() == ("", "")


@pytest.mark.parametrize("number", [errno.EPIPE, errno.ENOSPC])
def test_what_is_left_of_an_output_that_failed_goes_nowhere(
    number: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As the interpreter would write it when it ends: the other end of the pipe meets the end, and no file is left."""
    there, here = os.pipe()
    opened: list[int] = []
    before = os.open

    class Failing(io.StringIO):
        def fileno(self) -> int:
            return here

        def flush(self) -> None:
            raise OSError(number, os.strerror(number))

    def watched(*given: Any) -> int:
        opened.append(before(*given))
        return opened[-1]

    with monkeypatch.context() as patch:
        patch.setattr(sys, "stdout", Failing())
        patch.setattr(os, "open", watched)
        with pytest.raises((ReaderLeft, StreamError)), streams.standard_output():
            pass
    os.write(here, b"left")
    assert os.read(there, 9) == b""
    (nowhere,) = opened
    with pytest.raises(OSError, match="descriptor"):
        os.fstat(nowhere)
    os.close(here)
    os.close(there)


def test_a_complaint_is_seen_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    screen = io.BytesIO()
    with io.TextIOWrapper(screen, encoding="utf-8", write_through=False) as stream:
        monkeypatch.setattr(sys, "stderr", stream)
        streams.complain("one line")
        monkeypatch.undo()
        assert screen.getvalue().split() == [b"speclint:", b"one", b"line"]


def test_an_error_stream_that_is_open_is_left_as_it_is() -> None:
    kept = sys.stderr
    streams.occupy()
    assert sys.stderr is kept


# As a process


def environment() -> dict[str, str]:
    top = Path(__file__).parents[2]
    return {**os.environ, "PYTHONPATH": os.pathsep.join([str(top), str(top / "plugins")])}


@pytest.mark.skipif(sys.platform == "win32", reason="no process of Windows can be sent an interrupt alone")
def test_an_interrupt_while_helpers_work_is_told_once(tmp_path: Path) -> None:
    make(tmp_path, 400)
    command = [sys.executable, "-m", "speclint", "check", str(tmp_path), "--afresh"]
    pipe = subprocess.PIPE
    before = signal.signal(signal.SIGINT, signal.default_int_handler)  # a shell's background job ignores it
    try:
        running = subprocess.Popen(
            command, stdout=pipe, stderr=pipe, env=environment(), start_new_session=True
        )
    finally:
        signal.signal(signal.SIGINT, before)
    with running:
        time.sleep(1.5)
        os.killpg(running.pid, signal.SIGINT)  # as a terminal sends it, to the helpers too
        out, err = running.communicate(timeout=30)
    assert (running.returncode, out, err.decode()) == (130, b"", "speclint: interrupted\n")


@pytest.mark.skipif(sys.platform != "linux", reason="there is no device that is always full")
def test_a_full_device_is_told_by_the_whole_process() -> None:
    command = [sys.executable, "-m", "speclint", "kinds"]
    with open("/dev/full", "wb") as full:
        done = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, env=environment(), check=False)
    assert done.returncode == 2
    assert done.stderr.decode() == "speclint: standard output cannot be written to: No space left on device\n"


@pytest.mark.skipif(sys.platform == "win32", reason="a shell of Windows closes no stream")
@pytest.mark.usefixtures("shop")
def test_what_is_told_to_an_error_stream_that_is_closed_never_spoils_the_output() -> None:
    """The folder of results cannot be made, which is told; the data must be whole all the same."""
    command = [sys.executable, "-m", "speclint", "check", "--as", "json"]
    closed = ["sh", "-c", 'exec "$@" 2>&-', "sh", *command]
    nowhere = {**environment(), "XDG_CACHE_HOME": os.devnull, "LOCALAPPDATA": os.devnull, "HOME": os.devnull}
    told = subprocess.run(command, capture_output=True, env=nowhere, check=False)
    assert "no results of earlier runs are used" in told.stderr.decode()
    done = subprocess.run(closed, stdout=subprocess.PIPE, env=nowhere, check=False)
    assert done.returncode == told.returncode
    assert json.loads(done.stdout)["schema"] == json.loads(told.stdout)["schema"]


# Names and text


def written_by_all(shop: DesignFolder, capfd: pytest.CaptureFixture[str]) -> dict[str, str]:
    """What each report and command writes of a design."""
    words = {form: ["check", "--as", form] for form in ("json", "sarif", "csv", "markdown")}
    words |= {
        "terminal": ["check"],
        "gate": ["gate"],
        "gate as data": ["gate", "--as", "json"],
        "register": ["register", "--as", "json"],
        "affects": ["affects", "tube"],
        "affects as data": ["affects", "tube", "--as", "json"],
        "unseen": ["unseen"],
        "unseen as data": ["unseen", "--as", "json"],
        "margins": ["margins", "tube"],
        "sheet": ["sheet", "tube"],
        "sheet in Markdown": ["sheet", "tube", "--as", "markdown"],
        "sheet in HTML": ["sheet", "tube", "--as", "html"],
    }
    found = {}
    for name, one in words.items():
        assert main(one) in (0, 1, 2), name
        told = capfd.readouterr()
        assert told.err == "", name
        found[name] = told.out.replace("\r\n", "\n")
    assert (shop.root / "speclint.toml").exists()
    return found


@pytest.mark.parametrize("name", TEXTS)
def test_nothing_that_is_written_steers_anything(
    name: str, shop: DesignFolder, capfd: pytest.CaptureFixture[str]
) -> None:
    text = quoted(TEXTS[name])
    shop.replace("tube.toml", "30 bar", "45 bar").replace(
        "tube.toml", "hoops = 4", f"title = {text}\ndrawing = {text}"
    )
    shop.write({"bad.toml": f'kind = "tube"\nends = {text}\n'})
    shop.write({"odd.toml": tubes.TUBE.replace('kind = "tube"', f'kind = "tube"\nid = {text}')})
    entry = {"number": "C-001", "component": "tube", "rule": "tube.stress", "grounds": TEXTS[name]}
    lines = "".join(f"{key} = {quoted(value)}\n" for key, value in entry.items())
    shop.write({"register.toml": f"[[concession]]\n{lines}"})
    for form, said in written_by_all(shop, capfd).items():
        hidden = {
            letter for letter in said if unicodedata.category(letter) in ("Cc", "Cf", "Cs", "Co", "Zl", "Zp")
        }
        assert hidden <= {"\n"}, form


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere every name of a file is text")
def test_a_name_that_is_not_utf_8_is_told_and_shown_everywhere(
    shop: DesignFolder, capfd: pytest.CaptureFixture[str]
) -> None:
    name = b"tube-\xff.toml"
    (shop.root / os.fsdecode(name)).write_text(tubes.TUBE, encoding="utf-8")
    written = written_by_all(shop, capfd)
    for form in ("json", "csv", "terminal", "gate", "gate as data", "markdown"):
        if form != "csv":  # which has rows for checks only
            assert "tube-⟨U+DCFF⟩.toml" in written[form].replace("&#46;", "."), form
    assert "tube-%FF.toml" in written["sarif"]
    (complaint,) = json.loads(written["json"])["complaints"]
    assert complaint["message"] == "the name of this file is not UTF-8 text, so that nothing can refer to it"
    assert main(["check", "--staged"]) == 2


@pytest.mark.usefixtures("shop")
def test_words_on_the_command_line_that_are_not_text_are_refused(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["concede", "tube", "tube.stress", "--by", "A\udcff", "--grounds", "x", "--until", "2030-01-01"]
    assert main(words) == 2
    assert capsys.readouterr().err == "speclint: by: 'A\\udcff' is not UTF-8 text\n"
    assert main(["check", "--rule", "tube.stress", "--rule", "tube\udcff"]) == 2
    assert capsys.readouterr().err == "speclint: rule: 'tube\\udcff' is not UTF-8 text\n"
    assert main(["sheet", "tube\udcff"]) == 2


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("point", "is_text"), [(0xD7FF, True), (0xD800, False), (0xDFFF, False), (0xE000, True)]
)
def test_halves_of_pairs_of_utf_16_are_no_text(
    point: int, is_text: bool, capsys: pytest.CaptureFixture[str]
) -> None:
    """They are U+D800 to U+DFFF; a letter beside them is one of a name that no component has."""
    assert main(["sheet", f"tube{chr(point)}"]) == 2
    assert ("is not UTF-8 text" in capsys.readouterr().err) is not is_text
