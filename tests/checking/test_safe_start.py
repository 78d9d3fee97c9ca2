"""Nothing in a design repository is run, wherever a check is started from and whoever helps with it."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from speclint.checking import Processes, assess
from speclint.checking.helper import folders_of_modules
from speclint.families import load_families
from tests.benchmarks.specs import make

#: Modules that Python, speclint or a family imports, and some that Python looks for by itself.
PLANTED = (
    *("multiprocessing", "pickle", "queue", "threading", "subprocess", "signal", "struct", "json", "decimal"),
    *(
        "pluggy",
        "pydantic",
        "pint",
        "tomli",
        "rich",
        "lazy_loader",
        "packaging",
        "seuif97",
        "speclint_liners",
    ),
    *("sitecustomize", "usercustomize"),
)
ROOT = Path(__file__).parents[2]
LOADED = load_families()


@pytest.fixture
def ran(tmp_path: Path) -> Path:
    """A file that is there once something of the design has been run."""
    return tmp_path / "it ran"


@pytest.fixture
def hostile(tmp_path: Path, ran: Path) -> Path:
    """A design of nine springs, with modules of the names that are imported, and a family in its folder."""
    root = tmp_path / "design"
    make(root, 10)
    does = f"with open({str(ran)!r}, 'a') as file:\n    file.write(__name__ + ' ')\n"
    for name in PLANTED:
        (root / name).mkdir()
        (root / name / "__init__.py").write_text(does, encoding="utf-8")
    (root / "planted.py").write_text(does, encoding="utf-8")
    about = root / "planted-1.0.dist-info"
    about.mkdir()
    (about / "METADATA").write_text("Metadata-Version: 2.1\nName: planted\nVersion: 1.0\n", encoding="utf-8")
    (about / "entry_points.txt").write_text("[speclint]\nplanted = planted\n", encoding="utf-8")
    return root


def told(ran: Path) -> str:
    return ran.read_text(encoding="utf-8") if ran.exists() else ""


def test_a_helper_takes_no_module_from_the_current_folder(
    hostile: Path, ran: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(hostile)
    monkeypatch.setenv("PYTHONPATH", "")  # an empty entry is the current folder
    with Processes(helpers=2, enough=2, start="new") as processes:
        found = assess([hostile], LOADED, processes=processes)
        assert processes.wait_until_ready() == 2
        assert processes.spread(os.path.basename, ["a/b"] * 9) == ["b"] * 9
    assert len(found.checks) > 9
    assert told(ran) == ""


def test_a_place_that_depends_on_the_current_folder_is_not_handed_on(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "path", ["", ".", "plugins", str(ROOT)])
    assert folders_of_modules() == [str(ROOT)]


def test_python_itself_would_take_them(hostile: Path, ran: Path) -> None:
    """What the tests here plant is run by a Python that is started as one usually is."""
    subprocess.run([sys.executable, "-c", "import pluggy, multiprocessing"], cwd=hostile, check=True)
    assert told(ran).split()[-2:] == ["pluggy", "multiprocessing"]


def test_the_module_drops_the_current_folder_before_it_imports_anything(hostile: Path, ran: Path) -> None:
    """``python -m speclint`` in a design; Python itself imports a few modules of its own before, see DEVELOPERS.md."""
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join([str(ROOT), str(ROOT / "plugins")])}
    command = [sys.executable, "-m", "speclint", "families"]
    done = subprocess.run(
        command, cwd=hostile, env=environment, capture_output=True, encoding="utf-8", check=False
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert "liners" in done.stdout
    assert "planted" not in done.stdout
    assert told(ran) == ""
