"""Everything that the core and the loaded families provide, by name; what is not whole is refused when it is needed."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from importlib.metadata import Distribution
from typing import TYPE_CHECKING, Any, Protocol

from msgspec import Struct

from speclint.errors import FamilyError, replace
from speclint.families.brought import Brought
from speclint.families.guard import FamilyFailed, call
from speclint.families.hooks import GROUP as OWN
from speclint.families.soundness import faults_of_group
from speclint.rules import Rule, RulesIn
from speclint.specs import Catalogue

if TYPE_CHECKING:
    from speclint.families.figure_maker import FigureMaker
    from speclint.families.report_writer import ReportWriter
    from speclint.handbook.materials import Material


class Family(Struct, frozen=True):
    """A loaded family: its name, its module, and the distribution it came in."""

    name: str
    module: str
    distribution: Distribution | None

    @property
    def version(self) -> str:
        """The version of the distribution, read when a report first asks."""
        return self.distribution.version if self.distribution else "unknown"


class Recollection(Protocol):
    """What earlier runs of the same code kept of modules of rules, so that they need not be imported again."""

    def recall(self, family: str, group: RulesIn) -> tuple[Rule, ...] | None:
        """The rules of a module of a family; None where none are kept."""

    def keep(self, family: str, group: RulesIn, rules: tuple[Rule, ...]) -> None:
        """Keep what the rules of a module state."""


@dataclass(frozen=True)
class Loaded:
    """What the core and the families bring, in the order of their names.

    ``refused`` are the faults found while loading, each with the name of its family; they stop whoever uses what is
    loaded, unless that family is left out. ``left_out`` are the families that the settings leave out, ``absent`` those
    of them that are not installed. ``recollection`` is what is kept of modules of rules, if anything is.
    """

    families: tuple[Family, ...] = ()
    brought: tuple[Brought, ...] = ()
    refused: tuple[tuple[str, str], ...] = ()
    left_out: tuple[str, ...] = ()
    absent: tuple[str, ...] = ()
    recollection: Recollection | None = field(default=None, repr=False, compare=False)
    _read: dict[tuple[str, RulesIn], tuple[Rule, ...]] = field(
        default_factory=dict, repr=False, compare=False
    )

    def without(self, names: Collection[str]) -> Loaded:
        """What is loaded but for some families, of which nothing remains but the name."""
        if not set(names) - set(self.left_out):
            return self
        there = {one.name for one in self.families} | {name for name, _ in self.refused}
        there |= {*self.left_out} - {*self.absent}
        return replace(
            self,
            families=tuple(one for one in self.families if one.name not in names),
            brought=tuple(one for one in self.brought if one.family not in names),
            refused=tuple(one for one in self.refused if one[0] not in names),
            left_out=tuple(sorted({*self.left_out, *names})),
            absent=tuple(sorted({*self.absent, *names} - there)),
        )

    def sound(self) -> Loaded:
        """The same, where every family is whole and no two claim one name.

        :raises FamilyError: naming every fault.
        """
        faults = [fault for _, fault in self.refused]
        for kind, name_of in _NAMED.items():
            faults += _taken_twice(self.brought, kind, name_of)
        if faults:
            raise FamilyError("; ".join(dict.fromkeys(faults)))
        return self

    @cached_property
    def kinds(self) -> Catalogue:
        """Every kind by the word a spec writes, with the tables that families add."""
        more = {one.family: one.kinds for one in self.brought}
        tables = {one.family: one.tables for one in self.brought}
        return Catalogue(more, tables, self.left_out)

    @cached_property
    def materials(self) -> Mapping[str, Material]:
        """The materials that families add to the handbook's, by name."""
        return {one.name: one for family in self.brought for one in family.materials}

    @cached_property
    def writers(self) -> Mapping[str, ReportWriter]:
        """The report writers by the word for ``--as``."""
        return {one.name: one for family in self.brought for one in family.reports}

    @property
    def drawings(self) -> Iterator[tuple[str, FigureMaker]]:
        """Each maker of figures with its family, those of speclint itself first."""
        return ((family.family, one) for family in self.brought for one in family.drawings)

    @cached_property
    def rules(self) -> tuple[Rule, ...]:
        """Every rule of every family, in the order of their names.

        :raises FamilyError: when a family is not whole, a module of rules cannot be imported, or a rule is not whole
            or has a name that is taken.
        """
        return self._ordered(lambda _: True)

    def rules_for(self, kinds: Collection[str]) -> tuple[Rule, ...]:
        """The rules that may concern components of some kinds, in the order of their names.

        A kind is each of the kinds that it is built on: their rules are among them.

        :raises FamilyError: as for all rules.
        """
        words = set(kinds).union(*(self.kinds[kind].words() for kind in kinds if kind in self.kinds))
        return self._ordered(lambda group: group.concern(words))

    def _ordered(self, wanted: Callable[[RulesIn], bool]) -> tuple[Rule, ...]:
        self.sound()
        faults: list[str] = []
        found: dict[str, Rule] = {}
        for brought in self.brought:
            for rule in self._of(brought, wanted, faults):
                if rule.name in found:
                    faults.append(_taken(brought.family, rule.name, found[rule.name].family))
                found[rule.name] = rule
        if faults:  # a fault that many modules of a family share is told once
            raise FamilyError("; ".join(dict.fromkeys(faults)))
        return tuple(found[name] for name in sorted(found))

    def _of(self, brought: Brought, wanted: Callable[[RulesIn], bool], faults: list[str]) -> Iterator[Rule]:
        for group in brought.rules:
            if isinstance(group, Rule):
                yield group.of_family(brought.family)
            elif (brought.family, group) in self._read:
                yield from self._read[brought.family, group] if wanted(group) else ()
            elif wanted(group):
                yield from self._first(brought.family, group, faults)

    def _first(self, family: str, group: RulesIn, faults: list[str]) -> Iterable[Rule]:
        """The rules of a module as they are kept, or of one that is imported now and held to what a rule must have."""
        kept = self.recollection
        if kept is not None and (recalled := kept.recall(family, group)) is not None:
            self._read[family, group] = recalled
            return recalled
        try:
            rules, wrong = call(family, lambda: _read(group))
        except FamilyFailed as problem:  # whatever an import can raise, the rules are not there
            faults.append(f"family {family} cannot be imported: {problem}")
            return ()
        wrong = [f"family {family}: {fault}" for fault in wrong]
        faults += wrong
        if wrong:
            return ()
        own = tuple(rule.of_family(family) for rule in rules)
        self._read[family, group] = own
        if kept is not None:
            kept.keep(family, group, own)
        return own


def _read(group: RulesIn) -> tuple[tuple[Rule, ...], list[str]]:
    rules = group.load()
    return rules, list(faults_of_group(group, rules))


#: What must have a name of its own among all families.
_NAMED: Mapping[str, Callable[[Any], str]] = {
    "kinds": lambda kind: str(kind.kind),
    "materials": lambda material: str(material.name),
    "reports": lambda writer: str(writer.name),
    "drawings": lambda maker: str(maker.name),
}


def _taken(family: str, name: str, owner: str) -> str:
    """That a name which a family brings has an owner already: another family, or another thing of its own."""
    return (
        f"family {family}: the name {name} is taken by {'another of its own' if owner == family else owner}"
    )


def _taken_twice(brought: Iterable[Brought], what: str, name_of: Callable[[Any], str]) -> Iterator[str]:
    owner = dict.fromkeys(Catalogue(), OWN) if what == "kinds" else {}
    for one in brought:
        for item in getattr(one, what):
            name = name_of(item)
            if name in owner:
                yield _taken(one.family, name, owner[name])
            owner.setdefault(name, one.family)
