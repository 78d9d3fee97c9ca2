"""Every result of ``example_specs``, kept in ``editions.json``: written anew by ``python -m tests.contracts.editions``.

It refuses where a result moved while what it rests on is the same: raise the edition of the rule first.
"""

from __future__ import annotations

from pathlib import Path

from speclint.testing import write_golden
from tests.example import assessed

FILE = Path(__file__).parent / "editions.json"


if __name__ == "__main__":
    write_golden(assessed(), FILE)
