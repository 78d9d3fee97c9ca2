"""The invented design repository, assessed once for all tests of one process: a run of it takes many seconds."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from speclint.checking import Assessment, assess
from speclint.testing import installed_families

EXAMPLE = Path(__file__).parents[1] / "example_specs"


@cache
def assessed() -> Assessment:
    """The whole of example_specs by every installed family; not to be changed."""
    return assess([EXAMPLE], installed_families())
