"""What clears a finding, as a search for it finds it."""

from __future__ import annotations

from collections.abc import Sequence

from speclint.checking import Check, Remedy
from speclint.checking.remedy_search import search_of
from speclint.rules import Context


def remedies(found: Check, checks: Sequence[Check], context: Context) -> list[Remedy]:
    """The remedies of a finding, held against other checks."""
    return list(search_of(found, checks, context).remedies)
