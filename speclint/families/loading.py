"""Find, load and refuse families: a family that vanishes would read as a pass."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from importlib.metadata import Distribution, EntryPoint, entry_points
from types import ModuleType
from typing import TYPE_CHECKING, Any

import pluggy

from speclint.errors import FamilyError
from speclint.families import hooks
from speclint.rules import Rule, RulesIn
from speclint.specs import Catalogue, Spec

if TYPE_CHECKING:
    from speclint.families.report_writer import ReportWriter
    from speclint.handbook.materials import Material

OWN = "speclint"


@dataclass(frozen=True, slots=True)
class Family:
    """A loaded family: its name, its module, and the distribution it came in."""

    name: str
    module: str
    distribution: Distribution | None

    @property
    def version(self) -> str:
        """The version of the distribution, read when a report first asks."""
        return self.distribution.version if self.distribution else "unknown"


@dataclass(frozen=True)
class Loaded:
    """Everything that the core and the families provide, by name.

    ``declared`` are the rules of each family as its hook gave them: some are imported when they are first needed.
    """

    families: tuple[Family, ...]
    kinds: Mapping[str, type[Spec]]
    declared: Mapping[str, Sequence[Rule | RulesIn]]
    materials: Mapping[str, Material] = field(default_factory=dict)
    writers: Mapping[str, ReportWriter] = field(default_factory=dict)
    _found: dict[RulesIn, tuple[Rule, ...]] = field(default_factory=dict, repr=False)

    @property
    def rules(self) -> tuple[Rule, ...]:
        """Every rule of every family, in the order of their names.

        :raises FamilyError: when a module of rules cannot be imported, or a rule's name is taken.
        """
        return self._ordered(lambda _: True)

    def rules_for(self, kinds: Collection[str]) -> tuple[Rule, ...]:
        """The rules that may concern components of some kinds, in the order of their names.

        A kind is each of the kinds that it is built on: their rules are among them.

        :raises FamilyError: as for all rules.
        """
        words = {
            word for kind in kinds for word in (self.kinds[kind].words() if kind in self.kinds else (kind,))
        }
        return self._ordered(lambda group: group.concern(words))

    def _ordered(self, wanted: Callable[[RulesIn], bool]) -> tuple[Rule, ...]:
        faults: list[str] = []
        found: dict[str, Rule] = {}
        for family, declared in self.declared.items():
            for rule in self._of(family, declared, wanted, faults):
                if rule.name in found:
                    faults.append(
                        f"family {family}: the name {rule.name} is taken by {found[rule.name].family}"
                    )
                found[rule.name] = rule.of_family(family)
        if faults:
            raise FamilyError("; ".join(faults))
        return tuple(found[name] for name in sorted(found))

    def _of(
        self,
        family: str,
        declared: Sequence[Rule | RulesIn],
        wanted: Callable[[RulesIn], bool],
        faults: list[str],
    ) -> Iterator[Rule]:
        for group in declared:
            if isinstance(group, Rule):
                yield group
            elif wanted(group):
                try:
                    yield from group.load()
                except Exception as problem:  # whatever an import can raise, the rules are not there
                    faults.append(f"family {family} cannot be imported: {type(problem).__name__}: {problem}")


def installed() -> list[EntryPoint]:
    """The entry points under which families are installed, in the order of their names."""
    return sorted(entry_points(group=hooks.GROUP), key=lambda point: (point.name, point.value))


def load_families(points: Iterable[EntryPoint] | None = None, built_in: ModuleType | None = None) -> Loaded:
    """Load every installed family, and what a module of speclint itself hands over by the same hooks.

    :raises FamilyError: when one cannot be imported, misspells a hook, raises in one, or claims a name
        that is taken. All families are tried first, so that the error names every fault.
    """
    manager = pluggy.PluginManager(hooks.GROUP)
    manager.add_hookspecs(hooks)
    faults: list[str] = []
    if built_in is not None:
        manager.register(built_in, OWN)
    found = [_register(manager, point, faults) for point in (installed() if points is None else points)]
    try:
        manager.check_pending()
    except pluggy.PluginValidationError as problem:
        faults.append(
            f"family {manager.get_name(problem.plugin) or problem.plugin}: {str(problem).splitlines()[-1]}"
        )
    catalogue = Catalogue()
    kinds: dict[str, type[Spec]] = _collect(
        manager, "speclint_kinds", lambda kind: kind.kind, faults, dict.fromkeys(catalogue)
    )
    materials: dict[str, Material] = _collect(manager, "speclint_materials", lambda one: one.name, faults)
    writers: dict[str, ReportWriter] = _collect(manager, "speclint_reports", lambda one: one.name, faults)
    declared = dict(_hook(manager, "speclint_rules", faults))
    loaded = Loaded(
        tuple(family for family in found if family is not None),
        catalogue.with_more(kinds),
        declared,
        materials,
        writers,
    )
    if faults:
        raise FamilyError("; ".join(faults))
    return loaded


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
    if point.name == OWN or manager.has_plugin(point.name):
        faults.append(f"family {point.name}: a family of that name is already loaded ({point.value})")
        return None
    try:
        manager.register(module, point.name)
    except (pluggy.PluginValidationError, ValueError) as problem:
        faults.append(f"family {point.name} cannot be used: {problem}")
        return None
    return Family(point.name, point.value, point.dist)


def _collect(
    manager: pluggy.PluginManager,
    hook: str,
    name_of: Callable[[Any], str],
    faults: list[str],
    own: Mapping[str, object] | None = None,
) -> dict[str, Any]:
    """What the families give by one hook, by name; a name that another already has is a fault."""
    found: dict[str, Any] = {}
    owner = dict.fromkeys(own or {}, OWN)
    for family, items in _hook(manager, hook, faults):
        for item in items:
            name = name_of(item)
            if name in owner:
                faults.append(f"family {family}: the name {name} is taken by {owner[name]}")
            else:
                found[name], owner[name] = item, family
    return found


def _hook(manager: pluggy.PluginManager, hook: str, faults: list[str]) -> Iterator[tuple[str, list[Any]]]:
    """Call a hook of every family once: of speclint itself first, then in the order of their names."""
    implementations = getattr(manager.hook, hook).get_hookimpls()
    for implementation in sorted(implementations, key=lambda one: (one.plugin_name != OWN, one.plugin_name)):
        family = str(implementation.plugin_name)
        try:
            yield family, list(implementation.function())
        except Exception as problem:  # as for an import: the family cannot be trusted to be whole
            faults.append(f"family {family}: {hook} raised {type(problem).__name__}: {problem}")
