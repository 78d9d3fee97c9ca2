"""A design office for every test of the register."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.testing import DesignFolder
from tests.register.office import FILES, SETTINGS, Office
from tests.tubes import tubes


@pytest.fixture
def office(tmp_path: Path) -> Office:
    """A repository with one hold, and a folder outside of it for keys."""
    root, keys = tmp_path / "design ä", tmp_path / "keys ö"
    root.mkdir()
    keys.mkdir()
    return Office(DesignFolder(root, tubes()).write(FILES, settings=SETTINGS), keys)
