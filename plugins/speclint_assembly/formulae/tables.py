"""What the rules look up."""

from __future__ import annotations

from functools import cache

from speclint.handbook.tables import Reading
from speclint.handbook.threads import thread


@cache
def over_the_thread(designation: str) -> Reading:
    """Nominal diameter of a thread, m, over its crests; NotKnown as ``thread``."""
    found = thread(designation)
    return Reading.exact(f"nominal diameter of {found.name}", found.nominal, "m", found.source)
