"""A test that replaces a function of a family leaves none of it in the copies that run on enclosures."""

from __future__ import annotations

import pytest

from speclint.rules import twins


@pytest.fixture(autouse=True)
def _copies_of_its_own(request: pytest.FixtureRequest) -> None:
    """Copies that are made while a function is replaced go with it, and none made before stands in for it."""
    if "monkeypatch" in request.fixturenames:
        patch = request.getfixturevalue("monkeypatch")
        for known in ("_twins", "_originals"):
            patch.setattr(twins, known, {})
