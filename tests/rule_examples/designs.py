"""The bench on which examples of rules are made: every installed family, and the design of ``example_specs``."""

from __future__ import annotations

from speclint.families import Loaded
from speclint.testing import TrialBench
from tests.example import EXAMPLE


class Bench(TrialBench):
    """Every installed family, the example read once, and checks of changed designs."""

    def __init__(self, loaded: Loaded | None = None) -> None:
        super().__init__(loaded, EXAMPLE)
