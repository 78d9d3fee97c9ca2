"""A test that replaces a function of the family leaves none of it in the copies that run on enclosures."""

from __future__ import annotations

import pytest

from speclint.rules import twins


@pytest.fixture(autouse=True)
def _copies_of_its_own(request: pytest.FixtureRequest) -> None:
    """Copies made while a function is replaced go with it."""
    if "monkeypatch" in request.fixturenames:
        patch = request.getfixturevalue("monkeypatch")
        patch.setattr(twins, "_twins", {})
        patch.setattr(twins, "_originals", {})
