"""Where the range of a formula ends: arguments just within it, and just beyond it what the formula says."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import NamedTuple

import pytest

from speclint.errors import OutOfRange


class End(NamedTuple):
    """One end of the range of a formula: arguments within it, those that then take it beyond, and what is said."""

    formula: Callable[..., float]
    within: Mapping[str, float]
    beyond: Mapping[str, float]
    says: str

    def __str__(self) -> str:
        return f"{self.formula.__name__}, {', '.join(self.beyond)}"


def expect_end(end: End) -> None:
    """The formula works out a number within its range, and beyond it refuses with just these words."""
    assert math.isfinite(end.formula(**end.within))
    with pytest.raises(OutOfRange) as refused:
        end.formula(**{**end.within, **end.beyond})
    assert str(refused.value) == end.says
