"""Why a formula, a table, a search or a value that a case asks to have worked has no result, in words."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from speclint.quantities import as_written
from speclint.rules.judgement import NotAssessed, NotCovered
from speclint.specs import Estimate, FromEvents


def divides_by_zero(name: str, arguments: Mapping[str, Any] = MappingProxyType({})) -> NotCovered:
    """What is named would divide by 0; those of its arguments that are 0 are told."""
    none = [as_written(symbol) for symbol, value in arguments.items() if value == 0]
    told = f": {' and '.join(none)} {'is' if len(none) == 1 else 'are'} 0" if none else ""
    return _not_worked(name, f"it would divide by 0{told}")


def has_no_root(name: str) -> NotCovered:
    """What is named would take a root of a number below 0."""
    return _not_worked(name, "it would take a root of a number below 0")


def unworkable(value: object) -> NotAssessed | None:
    """What is missing where a value that a load case asks to have worked cannot be; None of any other."""
    if isinstance(value, FromEvents | Estimate) and value.why:
        return NotAssessed(f"{value.where.key} cannot be worked: {value.why}", value.where)
    return None


def name_of(called: Callable[..., Any]) -> str:
    """The name of a formula or of a table, which may be an object that is called."""
    name: str = getattr(called, "__name__", "")
    return name or type(called).__name__


def _not_worked(name: str, why: str) -> NotCovered:
    return NotCovered(f"{name.replace('_', ' ')} cannot be worked here: {why}")
