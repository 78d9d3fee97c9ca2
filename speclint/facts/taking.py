"""How a fact takes a value of a spec: from the sheet of a rule, or as a drawing states it."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeAlias

from speclint.quantities import Measure
from speclint.specs import NotStated

#: From a symbol and what a spec states to its value, in SI units.
Take: TypeAlias = Callable[[str, Measure | NotStated], float]
