"""Readers of an assessment: pages for the terminal, JSON, SARIF, Markdown, CSV, the review pack. They decide nothing.

May import ``register`` and what stands below it.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
