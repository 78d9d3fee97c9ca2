"""What one family brings: each of its hooks called once, and what they return held to its type."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING, Any

import pluggy
from msgspec import Struct

from speclint.errors import FamilyError, one_of, replace
from speclint.families import hooks, soundness
from speclint.families.guard import FamilyFailed, call
from speclint.rules import Rule, RulesIn
from speclint.specs import Spec

if TYPE_CHECKING:
    from speclint.families.figure_maker import FigureMaker
    from speclint.families.report_writer import ReportWriter
    from speclint.handbook.materials import Material
    from speclint.specs import ExtraTable

#: Each hook, and what is wrong with one of the things that it returned.
_ITEMS: Mapping[str, Callable[[Any], Iterator[str]]] = {
    "speclint_kinds": soundness.faults_of_kind,
    "speclint_tables": soundness.faults_of_table,
    "speclint_rules": soundness.faults_of_rules,
    "speclint_materials": soundness.faults_of_material,
    "speclint_reports": soundness.faults_of_writer,
    "speclint_drawings": soundness.faults_of_maker,
}


class Brought(Struct, frozen=True):
    """What one family brings, in the order in which its hooks gave it."""

    family: str
    kinds: tuple[type[Spec], ...] = ()
    tables: tuple[ExtraTable, ...] = ()
    rules: tuple[Rule | RulesIn, ...] = ()
    materials: tuple[Material, ...] = ()
    reports: tuple[ReportWriter, ...] = ()
    drawings: tuple[FigureMaker, ...] = ()


def brought_by(manager: pluggy.PluginManager, module: object, family: str) -> tuple[Brought, tuple[str, ...]]:
    """What a registered family brings, and each fault of it."""
    faults = list(_misnamed(manager, module, family))
    found: dict[str, Any] = {}
    for hook, faults_of in _ITEMS.items():
        items, wrong = _returned(manager, module, family, hook, faults_of)
        found[hook.removeprefix(hooks.PREFIX)] = items
        faults += wrong
    faults += (f"family {family}: {one}" for one in soundness.faults_of_tables(family, found["tables"]))
    found["reports"] = tuple(guarded(family, writer) for writer in found["reports"])
    return Brought(family, **found), tuple(faults)


def _misnamed(manager: pluggy.PluginManager, module: object, family: str) -> Iterator[str]:
    """Hooks that the core does not have, and functions named as a hook that are not marked as one."""
    for name in dir(module):
        if not inspect.isroutine(getattr(module, name, None)):
            continue
        options = manager.parse_hookimpl_opts(module, name)
        if options is None and name in _ITEMS:
            yield f"family {family}: {name} is not marked with @speclint.family, so it would never be called"
        elif options is None and name.startswith(hooks.PREFIX):
            yield f"family {family}: {name} is no hook; write {one_of(name, _ITEMS)}, marked with @speclint.family"
        elif options is not None and not options.get("optionalhook"):
            hook = options.get("specname") or name
            if hook not in _ITEMS:
                yield f"family {family}: {hook} is no hook; write {one_of(hook, _ITEMS)}"


def _returned(
    manager: pluggy.PluginManager,
    module: object,
    family: str,
    hook: str,
    faults_of: Callable[[Any], Iterator[str]],
) -> tuple[tuple[Any, ...], list[str]]:
    for implementation in getattr(manager.hook, hook).get_hookimpls():
        if implementation.plugin is module:
            try:
                found, faults = call(family, partial(_looked_at, implementation.function, faults_of))
            except FamilyFailed as problem:  # as for an import: the family cannot be trusted to be whole
                return (), [f"family {family}: {hook} raised {problem}"]
            if found is None:
                return (), [f"family {family}: {hook} returned {faults[0]}, not a list or a tuple"]
            faults = [f"family {family}: {hook}: {fault}" for fault in faults]
            return (() if faults else found), faults
    return (), []


def _looked_at(
    hook: Callable[[], Any], faults_of: Callable[[Any], Iterator[str]]
) -> tuple[tuple[Any, ...] | None, list[str]]:
    """What a hook returns, with its faults; None with what it is, where it is no list or tuple."""
    found = hook()
    if not isinstance(found, Sequence) or isinstance(found, str | bytes):
        return None, [_called(found)]
    items = tuple(found)
    return items, [fault for item in items for fault in faults_of(item)]


def _called(value: object) -> str:
    return "nothing" if value is None else f"a {type(value).__name__}"


def guarded(family: str, writer: ReportWriter) -> ReportWriter:
    """A report writer whose failing is told in one line, as that of a hook is."""
    if family == hooks.GROUP:
        return writer

    def write(assessment: Any) -> str:
        try:
            text = call(family, lambda: writer.write(assessment))
        except FamilyFailed as problem:
            raise FamilyError(f"family {family}: the report {writer.name} raised {problem}") from problem
        if not isinstance(text, str):
            raise FamilyError(f"family {family}: the report {writer.name} returned {_called(text)}, not text")
        return text

    return replace(writer, write=write)
