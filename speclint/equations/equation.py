"""What makes a function a formula: its dimensions, its equation and its source.

A formula takes and returns floats in SI units. The annotations carry the units, so that a test can run
every formula with pint quantities and prove it dimensionally sound; the sheet uses them to write results.

>>> from speclint.equations import FIRST_PRINCIPLES, Metres, SquareMetres
>>> @formula("A = π d²/4", cites=[FIRST_PRINCIPLES])
... def circle_area(d: Metres) -> SquareMetres:
...     "Area of a circle of diameter d."
...     return math.pi * d**2 / 4
>>> described(circle_area).equation
'A = π d²/4'
>>> described(circle_area).unit
'm²'
"""

from __future__ import annotations

import math  # noqa: F401 - used by the doctest above
from collections.abc import Callable, Sequence
from functools import cached_property
from inspect import signature
from typing import Any, TypeVar, get_args, get_type_hints

from msgspec import Struct, field

from speclint.equations.source import Source
from speclint.errors import OutOfRange

F = TypeVar("F", bound=Callable[..., Any])


class Described(Struct, frozen=True, dict=True):
    """The description of a formula besides its code."""

    function: Callable[..., Any]
    equation: str
    cites: tuple[Source, ...]
    empirical: str = field(default="")

    @cached_property
    def _hints(self) -> dict[str, str]:
        hints = get_type_hints(self.function, include_extras=True)
        return {name: unit for name, hint in hints.items() if (unit := _unit_of(hint)) is not None}

    @property
    def unit(self) -> str:
        """SI unit of the result, as the annotations write it."""
        return self._hints["return"]

    @property
    def units(self) -> dict[str, str]:
        """SI unit of each argument that is a number."""
        return {name: unit for name, unit in self._hints.items() if name != "return"}

    @property
    def other_arguments(self) -> tuple[str, ...]:
        """Arguments that are not numbers, with or without a default."""
        return tuple(name for name in signature(self.function).parameters if name not in self.units)


def formula(equation: str, *, cites: Sequence[Source], empirical: str = "") -> Callable[[F], F]:
    """Mark a pure function of SI floats as a formula.

    ``equation`` is written with the argument names as symbols, ``sigma_a`` as σ_a, and says what the function
    returns, with the units of its constants: ``s = 28.5 mm √(d/mm)``. DEVELOPERS.md has the notation, and
    ``speclint.testing.expect_equation`` holds it against the code. ``empirical`` names the units in which an
    empirical equation is stated ("inches and psi"): the function of such a one takes SI floats alone, and the
    dimension test leaves it to the equation and to its published checks.
    """

    def mark(function: F) -> F:
        vars(function)["described"] = Described(function, equation, tuple(cites), empirical)
        return function

    return mark


def described(function: Callable[..., Any]) -> Described:
    """What ``@formula`` recorded of a function; TypeError when it is not a formula."""
    found = getattr(function, "described", None)
    if not isinstance(found, Described):
        raise TypeError(f"{function!r} is not marked with @formula")
    return found


def _unit_of(hint: Any) -> str | None:
    arguments = get_args(hint)
    return arguments[1] if len(arguments) > 1 and isinstance(arguments[1], str) else None


def require(holds: bool, message: str) -> None:
    """Raise OutOfRange with a message unless the stated range of validity holds."""
    if not holds:
        raise OutOfRange(message)
