"""How a fact takes a value of a spec: from the sheet of a rule, or as a drawing states it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TypeAlias

from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import NotStated

#: From a symbol and what a spec states to its value, in SI units.
Take: TypeAlias = Callable[[str, Measure | NotStated], float]


def as_stated(sheet: Sheet, name: str, value: Measure | NotStated) -> Iterator[Measure]:
    """A quantity where it is stated, and nothing else."""
    if sheet.is_stated(name, value) and isinstance(value, Measure):
        yield value
