"""Every kind of spec that the core knows."""

from __future__ import annotations

from speclint.specs.component import Spec
from speclint.specs.duty import Duty

KINDS: tuple[type[Spec], ...] = (Duty,)
