"""The works that the family cites: none is published on what passes through what; geometry and common practice."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Source

#: What a statement of what passes through what rests on.
GEOMETRY: tuple[Source, ...] = (FIRST_PRINCIPLES, COMMON_PRACTICE)
