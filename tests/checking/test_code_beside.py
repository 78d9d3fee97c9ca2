"""What families import from folders that no installer keeps is known by its files, as the families are."""

from __future__ import annotations

import sys
from pathlib import Path
from types import ModuleType

import pytest

from speclint.checking.code_beside import code_beside
from speclint.checking.code_digest import _files_of


@pytest.fixture
def works(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a family and two modules beside it, and another with installed packages."""
    files = {
        "speclint_of_works/__init__.py": "",
        "speclint_of_works/rules/walls.py": "import math, works_common.walls as walls\n",
        "works_common/__init__.py": "def more():\n    from works_tables.plates import rolled\n",
        "works_tables.py": "import json\n",
        "works_unused.py": "",
        "site-packages/works_bought.py": "",
    }
    for name, text in files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    monkeypatch.syspath_prepend(tmp_path / "site-packages")
    monkeypatch.syspath_prepend(tmp_path)
    return tmp_path


def beside(works: Path, more: str = "") -> tuple[str, ...]:
    with (works / "speclint_of_works" / "rules" / "walls.py").open("a", encoding="utf-8") as opened:
        opened.write(more)
    return code_beside(("speclint_of_works",), _files_of)


def test_what_a_family_imports_and_what_that_imports_in_turn(works: Path) -> None:
    assert beside(works) == ("works_common", "works_tables")


@pytest.mark.parametrize(
    "more",
    [
        "from works_unused import x\n",
        "  import json, works_unused\n",
        "import works_unused.deeper  # noqa\n",
        "import json; x = 1\nimport works_unused as w\n",
    ],
)
def test_every_form_of_an_import_is_seen(works: Path, more: str) -> None:
    assert beside(works, more) == ("works_common", "works_tables", "works_unused")


@pytest.mark.parametrize(
    "more",
    [
        "import works_bought\n",  # known by its version
        "import pydantic, os, speclint\nfrom speclint_of_works import rules\n",
        "from . import works_unused\nfrom .works_unused import x\n",  # of the family itself
        "# import works_unused\nx = 'import works_unused'\n",
        "import works_nowhere\nfrom the air of the shop import is no import\nimport - of goods, tables\n",
    ],
)
def test_what_is_known_otherwise_or_is_no_import_is_left_out(works: Path, more: str) -> None:
    assert beside(works, more) == ("works_common", "works_tables")


def test_a_file_that_is_no_module_imports_nothing(works: Path) -> None:
    (works / "speclint_of_works" / "notes.txt").write_text("import works_unused\n", encoding="utf-8")
    assert beside(works) == ("works_common", "works_tables")


def test_a_module_made_in_memory_cannot_be_watched(works: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "works_made", ModuleType("works_made"))
    assert beside(works, "import works_made\n") == ("works_common", "works_tables")


def test_of_a_folder_that_is_no_package_nothing_is_kept(works: Path) -> None:
    """It may go on in any folder of the path, here among what is installed too."""
    for place in (works, works / "site-packages"):
        (place / "works_spread").mkdir()
    with pytest.raises(LookupError, match="the code of works_spread lies in no file"):
        beside(works, "import works_spread.part\n")


def test_a_family_in_no_file_is_told() -> None:
    with pytest.raises(LookupError, match="the code of speclint_nowhere lies in no file"):
        code_beside(("speclint_nowhere",), _files_of)


def test_a_file_that_cannot_be_read_is_told(works: Path) -> None:
    gone = works / "gone.py"
    with pytest.raises(LookupError, match="gone"):
        code_beside(("speclint_of_works",), lambda _: [("gone.py", str(gone))])
