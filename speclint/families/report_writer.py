"""The shape of a report writer: the word for ``--as``, what it is, and the function that makes the text."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from msgspec import Struct


class ReportWriter(Struct, frozen=True):
    """A way to write an assessment.

    ``write`` takes a :class:`speclint.checking.Assessment` and returns the text; it reads, and decides nothing.
    ``remedies`` says that it shows what would clear a finding, where that was sought: for one spec or one rule, or in
    full.
    """

    name: str
    says: str
    write: Callable[[Any], str]
    remedies: bool = False
