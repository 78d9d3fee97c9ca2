"""Families for a test: those installed, one by the name of its package, or one made on the spot."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from functools import cache
from importlib.metadata import EntryPoint
from itertools import count
from types import ModuleType
from typing import TYPE_CHECKING, Any

from speclint.families import Loaded, family, load_families

if TYPE_CHECKING:
    from speclint.rules import Rule, RulesIn
    from speclint.specs import Spec

_GROUP = "speclint"
_NUMBERS = count(1)  # of the modules made, so that each has a name of its own


@cache
def installed_families() -> Loaded:
    """Every installed family, loaded once for all tests of a process.

    :raises FamilyError: when one cannot be used.
    """
    return load_families()


def load_family(module: str, name: str = "") -> Loaded:
    """One family alone, by the name of its package, installed or not; the kinds of speclint are there beside it.

    ``name`` is that of its entry point: by default the package's without ``speclint_``, with hyphens.

    :raises FamilyError: when it cannot be used.
    """
    return load_families(
        [EntryPoint(name or module.removeprefix("speclint_").replace("_", "-"), module, _GROUP)]
    )


def made_family(
    name: str,
    kinds: Sequence[type[Spec]] = (),
    rules: Sequence[Rule | RulesIn] = (),
    **hooks: Callable[..., Any],
) -> EntryPoint:
    """The entry point of a family made on the spot, to be given to ``load_families``.

    ``hooks`` are functions by the name of the hook that each implements; they go before ``kinds`` and ``rules``.
    """
    module = ModuleType(f"family_{name.replace('-', '_')}_{next(_NUMBERS)}", "A family made for a test.")
    if kinds:
        hooks = {"speclint_kinds": lambda: kinds, **hooks}
    if rules:
        hooks = {"speclint_rules": lambda: rules, **hooks}
    vars(module).update({hook: family(function) for hook, function in hooks.items()})
    sys.modules[module.__name__] = module
    return EntryPoint(name, module.__name__, _GROUP)
