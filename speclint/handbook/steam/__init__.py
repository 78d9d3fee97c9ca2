"""Steam: states, flow, nozzles, pipes, the openings of double-beat valves."""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
