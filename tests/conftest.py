"""What all tests share."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import settings

from speclint.testing import DesignFolder

# Times differ between machines, so none is set; CI repeats the same examples, a desk meets new ones each time.
settings.register_profile("desk", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "desk")


@pytest.fixture
def workshop(tmp_path: Path) -> DesignFolder:
    """A design repository of the test's own."""
    return DesignFolder(tmp_path)
