"""A stated value on which a finding rests, and what the values tried in its place are tried on."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from speclint.checking.check_result import Check
from speclint.rules import Context, Step
from speclint.specs import Component


class StatedValue(Struct, frozen=True):
    """One step of a finding that took a value, with the component of the finding and the other checks of its run."""

    step: Step
    found: Check
    component: Component
    checks: Sequence[Check]
    context: Context
