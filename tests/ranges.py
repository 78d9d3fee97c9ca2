"""A formula at the end of its range of validity: it answers at the end itself and refuses just beyond, and says why."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

import pytest

from speclint import OutOfRange


class End(NamedTuple):
    """One end of a formula's range: the arguments that lie within, and those that go beyond when changed."""

    formula: Callable[..., Any]
    within: Mapping[str, float]
    beyond: Mapping[str, float]
    says: str

    def __str__(self) -> str:
        """The formula and what is changed: the name of the test."""
        return f"{getattr(self.formula, '__name__', self.formula)}-{','.join(self.beyond)}-{self.says[:30]}"


def expect_end(end: End) -> None:
    """Assert that the formula answers within, and refuses beyond with these very words."""
    end.formula(**end.within)
    with pytest.raises(OutOfRange, match=f"^{re.escape(end.says)}$"):
        end.formula(**{**end.within, **end.beyond})
