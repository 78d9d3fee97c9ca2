"""Find, load and refuse families: a family that vanishes would read as a pass."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from importlib.metadata import EntryPoint, entry_points
from inspect import isroutine, signature
from types import ModuleType

import pluggy

from speclint.errors import FamilyError
from speclint.families import hooks
from speclint.families.brought import Brought, brought_by
from speclint.families.guard import FamilyFailed, call
from speclint.families.interface import fault_of_interface
from speclint.families.loaded import Family, Loaded
from speclint.families.requirements import fault_of_requirement

OWN = hooks.GROUP


def installed() -> list[EntryPoint]:
    """The entry points under which families are installed, in the order of their names."""
    return sorted(entry_points(group=hooks.GROUP), key=lambda point: (point.name, point.value))


def load_families(points: Iterable[EntryPoint] | None = None, built_in: ModuleType | None = None) -> Loaded:
    """Load every installed family, and what a module of speclint itself hands over by the same hooks.

    :raises FamilyError: when one cannot be used, or claims a name that is taken. All families are tried first, so
        that the error names every fault.
    """
    return find_families(points, built_in).sound()


def find_families(points: Iterable[EntryPoint] | None = None, built_in: ModuleType | None = None) -> Loaded:
    """The same, where the settings may still leave a family out: faults are kept, and told when it is used."""
    manager = pluggy.PluginManager(hooks.GROUP)
    manager.add_hookspecs(hooks)
    families: list[Family] = []
    brought: list[Brought] = []
    refused: list[tuple[str, str]] = []
    if built_in is not None:
        manager.register(built_in, OWN)
        own, faults = brought_by(manager, built_in, OWN)
        brought.append(own)
        refused += ((OWN, fault) for fault in faults)
    for point in sorted(installed() if points is None else points, key=lambda one: one.name):
        found = _family(manager, point)
        if isinstance(found, str):
            refused.append((point.name, found))
            continue
        items, faults = brought_by(manager, manager.get_plugin(point.name), point.name)
        families.append(found)
        brought.append(items)
        refused += ((point.name, fault) for fault in faults)
    return Loaded(tuple(families), tuple(brought), tuple(refused))


def require(loaded: Loaded, required: Sequence[str]) -> None:
    """Stop unless every family that the settings require is there, and every one that is there is whole.

    :raises FamilyError: naming those that are absent, or what is wrong.
    """
    loaded.sound()
    present = {family.name for family in loaded.families}
    absent = [name for name in required if name not in present]
    if absent:
        have = ", ".join(sorted(present)) or "none"
        raise FamilyError(f"speclint.toml requires the family {', '.join(absent)}; installed: {have}")


def _family(manager: pluggy.PluginManager, point: EntryPoint) -> Family | str:
    """The family at an entry point, registered with the manager; else what is wrong with it."""
    asked = fault_of_requirement(point.name, point.dist)
    if asked:  # its module may well use what this speclint does not have
        return asked
    try:
        module = call(point.name, point.load)
    except FamilyFailed as problem:  # whatever an import can raise, the family is not there
        return f"family {point.name} cannot be imported: {problem}"
    if point.name == OWN or manager.has_plugin(point.name):
        return f"family {point.name}: a family of that name is already loaded ({point.value})"
    wrong = fault_of_interface(point.name, module, point.value)
    if wrong:
        return wrong
    try:
        manager.register(module, point.name)
    except (pluggy.PluginValidationError, ValueError) as problem:
        return f"family {point.name} cannot be used: {_why_unusable(module, problem)}"
    return Family(point.name, point.value, point.dist)


def _why_unusable(module: object, problem: Exception) -> str:
    """That a hook of a module takes arguments; where none does, what the manager of the plugins says."""
    for name in vars(hooks):
        hook = getattr(module, name, None)
        if (
            name.startswith(hooks.PREFIX)
            and isroutine(hook)
            and (taken := ", ".join(signature(hook).parameters))
        ):
            return f"{name} takes {taken}, and a hook is called without arguments"
    return " ".join(str(problem).split())
