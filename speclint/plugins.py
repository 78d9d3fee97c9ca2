"""Find, load and refuse families: a family that vanishes would read as a pass."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from importlib.metadata import EntryPoint, entry_points
from typing import TYPE_CHECKING, Any, TypeVar

import pluggy

from speclint import hookspecs
from speclint.errors import FamilyError
from speclint.rules import Rule
from speclint.specs import own_kinds
from speclint.specs.component import Spec

if TYPE_CHECKING:
    from speclint.handbook.materials import Material
    from speclint.reports import ReportWriter

T = TypeVar("T")
OWN = "speclint"


@dataclass(frozen=True, slots=True)
class Family:
    """A loaded family: its name, the version of the distribution it came in, and how many rules it brings."""

    name: str
    version: str
    module: str
    rules: int = 0


@dataclass(frozen=True)
class Loaded:
    """Everything that the core and the families provide, by name; rules are in the order of their names."""

    families: tuple[Family, ...]
    kinds: Mapping[str, type[Spec]]
    rules: tuple[Rule, ...]
    materials: Mapping[str, Material] = field(default_factory=dict)
    writers: Mapping[str, ReportWriter] = field(default_factory=dict)


def installed() -> list[EntryPoint]:
    """The entry points under which families are installed, in the order of their names."""
    return sorted(entry_points(group=hookspecs.GROUP), key=lambda point: (point.name, point.value))


def load_families(points: Iterable[EntryPoint] | None = None) -> Loaded:
    """Load every installed family.

    :raises FamilyError: when one cannot be imported, misspells a hook, raises in one, or claims a name
        that is taken. All families are tried first, so that the error names every fault.
    """
    manager = pluggy.PluginManager(hookspecs.GROUP)
    manager.add_hookspecs(hookspecs)
    faults: list[str] = []
    found = [_register(manager, point, faults) for point in (installed() if points is None else points)]
    try:
        manager.check_pending()
    except pluggy.PluginValidationError as problem:
        faults.append(
            f"family {manager.get_name(problem.plugin) or problem.plugin}: {str(problem).splitlines()[-1]}"
        )
    kinds = _collect(manager, "speclint_kinds", lambda kind: kind.kind, faults, own_kinds())
    rules = _collect(manager, "speclint_rules", lambda rule: rule.name, faults, {}, Rule.of_family)
    materials: dict[str, Material] = _collect(
        manager, "speclint_materials", lambda material: material.name, faults, {}
    )
    writers = _collect(manager, "speclint_reports", lambda writer: writer.name, faults, _own_writers())
    if faults:
        raise FamilyError("; ".join(faults))
    ordered = tuple(rules[name] for name in sorted(rules))
    families = tuple(_counted(family, ordered) for family in found if family is not None)
    return Loaded(families, dict(sorted(kinds.items())), ordered, materials, writers)


def require(loaded: Loaded, required: Sequence[str]) -> None:
    """Stop unless every family that the settings require is there.

    :raises FamilyError: naming those that are absent.
    """
    present = {family.name for family in loaded.families}
    absent = [name for name in required if name not in present]
    if absent:
        have = ", ".join(sorted(present)) or "none"
        raise FamilyError(f"speclint.toml requires the family {', '.join(absent)}; installed: {have}")


def _register(manager: pluggy.PluginManager, point: EntryPoint, faults: list[str]) -> Family | None:
    try:
        module = point.load()
    except Exception as problem:  # whatever an import can raise, the family is not there
        faults.append(f"family {point.name} cannot be imported: {type(problem).__name__}: {problem}")
        return None
    if manager.has_plugin(point.name) or point.name == OWN:
        faults.append(f"family {point.name}: a family of that name is already loaded ({point.value})")
        return None
    try:
        manager.register(module, point.name)
    except (pluggy.PluginValidationError, ValueError) as problem:
        faults.append(f"family {point.name} cannot be used: {problem}")
        return None
    return Family(point.name, point.dist.version if point.dist else "unknown", point.value)


def _collect(
    manager: pluggy.PluginManager,
    hook: str,
    name_of: Callable[[T], str],
    faults: list[str],
    own: Mapping[str, T],
    adapt: Callable[[T, str], T] | None = None,
) -> dict[str, T]:
    """Call a hook of every family once, and refuse a name that another already has."""
    found: dict[str, T] = dict(own)
    owner = dict.fromkeys(own, OWN)
    for implementation in sorted(
        getattr(manager.hook, hook).get_hookimpls(), key=lambda one: str(one.plugin_name)
    ):
        family = str(implementation.plugin_name)
        for item in _called(implementation.function, family, hook, faults):
            name = name_of(item)
            if name in found:
                faults.append(f"family {family}: the name {name} is taken by {owner[name]}")
            else:
                found[name], owner[name] = adapt(item, family) if adapt else item, family
    return found


def _called(function: Callable[[], Sequence[Any]], family: str, hook: str, faults: list[str]) -> list[Any]:
    try:
        return list(function())
    except Exception as problem:  # as for an import: the family cannot be trusted to be whole
        faults.append(f"family {family}: {hook} raised {type(problem).__name__}: {problem}")
        return []


def _counted(family: Family, rules: Sequence[Rule]) -> Family:
    return Family(
        family.name, family.version, family.module, sum(rule.family == family.name for rule in rules)
    )


def _own_writers() -> dict[str, ReportWriter]:
    from speclint.reports.writers import own_writers

    return own_writers()
