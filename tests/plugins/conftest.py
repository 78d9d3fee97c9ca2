"""A test that replaces a function of a family leaves none of it in the copies that run on enclosures."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from speclint.testing import functions_replaced


@pytest.fixture(autouse=True)
def _copies_of_its_own(request: pytest.FixtureRequest) -> Iterator[None]:
    """Whatever a test replaces by its ``monkeypatch`` counts in that test, and in no other."""
    if "monkeypatch" not in request.fixturenames:
        yield
        return
    with functions_replaced():
        yield
