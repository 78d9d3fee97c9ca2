"""Every result of ``example_specs``, kept in ``editions.json``: written anew by ``python -m tests.contracts.editions``.

It refuses where a result moved while what it rests on is the same: raise the edition of the rule first.
"""

from __future__ import annotations

from pathlib import Path

from speclint.checking import Assessment, assess
from speclint.testing import installed_families, write_golden

FILE = Path(__file__).parent / "editions.json"


def assessed() -> Assessment:
    """The whole of example_specs by every installed family."""
    return assess([Path(__file__).parents[2] / "example_specs"], installed_families())


if __name__ == "__main__":
    write_golden(assessed(), FILE)
