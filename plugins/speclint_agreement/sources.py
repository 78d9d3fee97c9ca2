"""The works that the family of agreements cites."""

from __future__ import annotations

from speclint import Source

ISO_128 = Source("ISO 128-3, Technical product documentation: views, sections and cuts", "2022", memory=True)
