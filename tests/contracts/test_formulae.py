"""Every formula is dimensionally sound: run with pint quantities, its result has the dimension it is annotated with."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from collections.abc import Callable, Iterator
from itertools import product
from typing import Any

import pint
import pytest

import speclint.handbook
from speclint.equations import Described
from speclint.errors import OutOfRange
from speclint.families.loading import installed

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
_TO_PINT = str.maketrans({"²": "^2", "³": "^3", "⁴": "^4", "·": "*", "Δ": None})
#: Values tried for each argument, until a formula finds them within its range.
_MAGNITUDES = (0.37, 1.9, 330.0, 2.1e5, 7e10, 0.011, 0.0013, 0.83, 21_000.0, 0.4)


def modules() -> Iterator[Any]:
    yield from _below(speclint.handbook)
    for point in installed():
        yield from _below(importlib.import_module(point.value))


def _below(package: Any) -> Iterator[Any]:
    yield package
    for info in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
        yield importlib.import_module(info.name)


def formulae() -> list[Described]:
    found = {}
    for module in modules():
        for function in vars(module).values():
            about = getattr(function, "described", None)
            if isinstance(about, Described):
                found[f"{about.function.__module__}.{about.function.__qualname__}"] = about
    return [found[name] for name in sorted(found)]


FORMULAE = formulae()


def quantity(value: float, unit: str) -> Any:
    if unit in ("", "rad"):
        return value
    return REGISTRY.Quantity(value, unit.translate(_TO_PINT))


def test_there_are_formulae() -> None:
    assert len(FORMULAE) > 40


@pytest.mark.parametrize("about", FORMULAE, ids=lambda about: about.function.__qualname__)
def test_a_formula_is_described(about: Described) -> None:
    assert about.cites
    assert "=" in about.equation or "≈" in about.equation
    assert inspect.getdoc(about.function)
    for source in about.cites:
        assert (
            source.common_practice or source.work == "first principles" or source.edition or source.place
        ), str(source)
    for name in inspect.signature(about.function).parameters:
        assert name in about.units or name in about.other_arguments, f"{name} has no unit"


@pytest.mark.parametrize(
    "about", [one for one in FORMULAE if not one.empirical], ids=lambda about: about.function.__qualname__
)
def test_a_formula_is_dimensionally_sound(about: Described) -> None:
    parameters = inspect.signature(about.function).parameters
    if any(parameters[name].default is inspect.Parameter.empty for name in about.other_arguments):
        pytest.skip("takes words or functions besides numbers: proved by its own tests")
    result = _first_in_range(about)
    wanted = quantity(1.0, about.unit)
    if isinstance(wanted, float):
        assert isinstance(result, int | float) or result.dimensionless
    else:
        assert result.dimensionality == wanted.dimensionality


def _first_in_range(about: Described) -> Any:
    function: Callable[..., Any] = about.function
    names = list(about.units)
    tried = product(_MAGNITUDES, repeat=len(names)) if len(names) <= 4 else _some(len(names))
    for values in tried:
        try:
            return function(
                **{
                    name: quantity(value, about.units[name])
                    for name, value in zip(names, values, strict=True)
                }
            )
        except (OutOfRange, ZeroDivisionError, OverflowError):
            continue
    raise AssertionError("no combination of values lies in the formula's range")


def _some(count: int) -> Iterator[tuple[float, ...]]:
    """Many combinations, spread deterministically over the magnitudes."""
    state = 1
    for _ in range(20_000):
        values = []
        for _ in range(count):
            state = (state * 48_271) % 2_147_483_647  # the minimal standard generator (Park and Miller 1988)
            values.append(_MAGNITUDES[state % len(_MAGNITUDES)] * (1 + (state >> 8) % 97 / 97))
        yield tuple(values)
