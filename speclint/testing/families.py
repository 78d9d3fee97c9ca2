"""Families for a test: those installed, one by the name of its package, or one made on the spot."""

from __future__ import annotations

import sys
from collections.abc import Sequence
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
    """Every installed family, and what speclint itself hands over, loaded once for all tests of a process.

    :raises FamilyError: when one cannot be used.
    """
    from speclint.reports import hooks

    return load_families(built_in=hooks)


def load_family(module: str, name: str = "") -> Loaded:
    """One family alone, by the name of its package, installed or not; what speclint itself has is there beside it.

    ``name`` is that of its entry point: by default the package's without ``speclint_``, with hyphens.

    :raises FamilyError: when it cannot be used.
    """
    from speclint.reports import hooks

    called = name or module.removeprefix("speclint_").replace("_", "-")
    return load_families([EntryPoint(called, module, _GROUP)], built_in=hooks)


def made_family(
    name: str,
    kinds: Sequence[type[Spec]] = (),
    rules: Sequence[Rule | RulesIn] = (),
    **others: Any,
) -> EntryPoint:
    """The entry point of a family made on the spot, to be given to ``load_families``.

    ``others`` are what else its module holds by name: functions under the name of the hook that each implements, which
    go before ``kinds`` and ``rules``, and the version of the interface of families, "1" by default.
    """
    module = ModuleType(f"family_{name.replace('-', '_')}_{next(_NUMBERS)}", "A family made for a test.")
    given: dict[str, Any] = {"speclint_api": "1"}
    if kinds:
        given["speclint_kinds"] = lambda: kinds
    if rules:
        given["speclint_rules"] = lambda: rules
    for word, value in (given | others).items():
        vars(module)[word] = family(value) if callable(value) else value
    sys.modules[module.__name__] = module
    return EntryPoint(name, module.__name__, _GROUP)
