"""Which formulae there are in a package."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Iterator
from types import ModuleType
from typing import Any

from speclint.equations import described


def formulae_in(*packages: str) -> list[Callable[..., Any]]:
    """Every function marked ``@formula`` in some packages and all that lies below them, each once, by its name."""
    formulae: dict[str, Callable[..., Any]] = {}
    for package in packages:
        for module in _below(importlib.import_module(package)):
            for function in vars(module).values():
                if callable(function) and hasattr(function, "described"):
                    plain = described(function).function
                    formulae[f"{plain.__module__}.{plain.__qualname__}"] = plain
    return [formulae[name] for name in sorted(formulae)]


def _below(package: ModuleType) -> Iterator[ModuleType]:
    yield package
    for info in pkgutil.walk_packages(getattr(package, "__path__", ()), f"{package.__name__}."):
        yield importlib.import_module(info.name)
