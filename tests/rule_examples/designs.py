"""The bench on which examples of rules are made: every installed family, and the design of ``example_specs``."""

from __future__ import annotations

import gc
from collections.abc import Mapping
from functools import cache

from speclint.families import Loaded, RuleExample, rule_examples
from speclint.testing import TrialBench
from tests.example import EXAMPLE


class Bench(TrialBench):
    """Every installed family, the example read once, and checks of changed designs."""

    def __init__(self, loaded: Loaded | None = None) -> None:
        super().__init__(loaded, EXAMPLE)


@cache
def bench() -> Bench:
    """The example read once for all tests; it stays to the end, so garbage need not be looked for in it."""
    made = Bench()
    assert made.design.design.specs
    gc.freeze()
    return made


@cache
def examples() -> Mapping[str, RuleExample]:
    """The examples of the rules of every installed family."""
    return rule_examples(bench().loaded.families)
