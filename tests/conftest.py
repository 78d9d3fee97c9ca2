"""What all tests share."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.workshop import Workshop


@pytest.fixture
def workshop(tmp_path: Path) -> Workshop:
    """A design repository of the test's own."""
    return Workshop(tmp_path)
