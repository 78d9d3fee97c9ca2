"""The load cases in which a block is hot."""

from __future__ import annotations

from speclint.specs import CaseName

#: Those of work and of standing; water in the cylinder, which comes in a hot one, is named beside them.
HOT: tuple[CaseName, ...] = ("warming", "starting", "running", "drifting", "standing-hot", "cooling")
