"""What a family may bring, and what is wrong with each thing: a family that is not whole is refused when loaded."""

from __future__ import annotations

import re
import sys
from collections.abc import Collection, Iterator, Sequence
from typing import TYPE_CHECKING, Any

from speclint.equations import Source
from speclint.families.rule_declaration import faults_of_declaration
from speclint.rules import Rule, RulesIn
from speclint.specs import HAZARDS, Component, NotStated, Spec, SpecTable, class_of

if TYPE_CHECKING:
    from speclint.specs import ExtraTable

_WORD = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
#: The name of a family that adds tables is a bare key of TOML and no private name.
_TABLE = re.compile(r"[a-z][a-z0-9_-]*")


#: Types that no value of a spec has: each knows where it was written.
_BARE = (int, float, str, bool)


def _documented(docstring: object) -> bool:
    """Whether there is a docstring; taken as there where the interpreter strips them all."""
    return bool(str(docstring or "").strip()) or sys.flags.optimize >= 2


def _no(item: object, wanted: str) -> str:
    named = getattr(item, "__name__", "")
    return f"{named or repr(item)[:60]} is a {type(item).__name__}, not {wanted}"


def faults_of_kind(item: Any) -> Iterator[str]:
    """What is wrong with a kind of component."""
    item = class_of(item)
    if not (isinstance(item, type) and issubclass(item, Spec)) or item in (Spec, Component):
        yield _no(item, "a kind: a subclass of speclint.specs.Component")
        return
    word = vars(item).get("kind", "")
    if not isinstance(word, str) or not _WORD.fullmatch(word):
        yield f'the kind {item.__name__} has no word of its own: kind = "…" in small letters, digits and hyphens'
    if not isinstance(item.called, str) or not item.called.strip():
        yield f'the kind {item.__name__} does not say what a report calls it: called = "…"'
    yield from _unknown_hazards(f"the kind {item.__name__}", getattr(item, "hazards", None) or ())
    yield from _faults_of_fields(item, f"the kind {item.__name__}")


def _unknown_hazards(called: str, hazards: Sequence[Any]) -> Iterator[str]:
    if isinstance(hazards, str):
        yield f'{called} names hazards in one text: write ("{hazards}",)'
    elif unknown := [str(hazard) for hazard in hazards if hazard not in HAZARDS]:
        yield f"{called} names {', '.join(unknown)}, which is no hazard; the hazards are {', '.join(HAZARDS)}"


def _faults_of_fields(table: type[SpecTable], called: str) -> Iterator[str]:
    if not _documented(vars(table).get("__doc__")):
        yield f"{called} has no docstring"
    try:
        if not table.__pydantic_fields_complete__:
            table.model_rebuild()
    except Exception as problem:  # whatever the checker of types of the fields raises
        yield f"{called} has a field whose type cannot be found: {str(problem).splitlines()[0]}"
        return
    for name, field in table.model_fields.items():
        if name == "id":
            continue
        if field.annotation in _BARE:
            bare = getattr(field.annotation, "__name__", "")
            instead = "a quantity, such as Length or Fraction," if bare == "float" else f"Word[{bare}]"
            yield f"{called} has {name} of the type {bare}: write {instead} of speclint.specs"
        elif field.is_required():
            yield f"{called} cannot do without {name}: every key may be left out, so write = NOT_STATED"
        elif not (field.default_factory or isinstance(field.default, NotStated | tuple | dict | SpecTable)):
            yield f"{called} takes {field.default!r} for a {name} that is not stated: write = NOT_STATED"


def faults_of_table(item: Any) -> Iterator[str]:
    """What is wrong with a table that a family adds to a kind."""
    from speclint.specs import ExtraTable

    if not isinstance(item, ExtraTable):
        yield _no(item, "an ExtraTable")
        return
    on: Any = item.on
    holds: Any = class_of(item.holds)
    if not (isinstance(on, type) and issubclass(on, Spec)):
        yield _no(on, "the kind that a table is added to")
    if not (isinstance(holds, type) and issubclass(holds, SpecTable)) or issubclass(holds, Spec):
        yield _no(holds, "a subclass of speclint.specs.SpecTable")
    else:
        yield from _faults_of_fields(holds, f"the table {holds.__name__}")


def faults_of_tables(family: str, tables: Sequence[ExtraTable]) -> Iterator[str]:
    """What is wrong with the tables of one family together: its name must do for them, and a spec holds one."""
    if tables and not _TABLE.fullmatch(family):
        yield f'a table cannot be named "{family}": name the family in small letters, digits, _ and -'
    for number, one in enumerate(tables):
        if hasattr(one.on, family) or family in one.on.model_fields:
            yield f'a {one.on.kind} has "{family}" already, so no table of that name can be added'
        for other in tables[:number]:
            if issubclass(one.on, other.on) or issubclass(other.on, one.on):
                yield f"it adds two tables to a {one.on.kind}: a spec has one table [{family}]"


def faults_of_rules(item: Any) -> Iterator[str]:
    """What is wrong with a rule, or with the promise of rules in a module."""
    if isinstance(item, RulesIn):
        return
    yield from faults_of_rule(item)


def faults_of_rule(item: Any) -> Iterator[str]:
    """What is wrong with a rule."""
    if not isinstance(item, Rule):
        yield _no(item, "a rule: mark the function with @speclint.rule")
        return
    wanting = {
        "no statement (title)": item.title,
        "no reason (why)": item.why,
        "no scope: nothing is said of what it does not cover (leaves_out)": item.leaves_out,
    }
    for what, text in wanting.items():
        if not isinstance(text, str) or not text.strip():
            yield f"the rule {item.name} has {what}"
    if not item.cites or not all(isinstance(source, Source) for source in item.cites):
        yield f"the rule {item.name} has no source (cites); where none is published, COMMON_PRACTICE"
    if not item.on or not all(map(_is_of_parts, item.on)):
        yield f"the rule {item.name} is on no kind of component (on)"
    if not _documented(item.function.__doc__):
        yield f"the rule {item.name} has no docstring: its function says how it is worked"
    for fault in faults_of_declaration(item):
        yield f"the rule {item.name} {fault}"
    for hazards in (item.against or (), *item.against_on.values()):
        yield from _unknown_hazards(f"the rule {item.name}", hazards)


def _is_of_parts(kind: Any) -> bool:
    """Whether something is a kind of component, or stands for one by its word."""
    is_one_of = getattr(kind, "is_one_of", None)
    return isinstance(kind, type) and is_one_of is not None and is_one_of((Component.kind,))


def faults_of_group(group: RulesIn, rules: Sequence[Any]) -> Iterator[str]:
    """What is wrong with the rules of a module, and where they disagree with the kinds declared for them."""
    faults = [fault for rule in rules for fault in faults_of_rule(rule)]
    yield from faults
    if faults or not group.kinds:
        return
    for rule in rules:
        for kind in rule.on:
            if not kind.is_one_of(group.kinds):
                yield (
                    f'the rule {rule.name} is on {_named(kind)}, but rules_in("{group.module}", …) does not name it: '
                    "the rule would never be applied"
                )
    yield from _unmet(group, {word for rule in rules for kind in rule.on for word in kind.words()})


def _named(kind: type[Spec]) -> str:
    return "every component" if kind is Component else f"a {kind.kind}"


def _unmet(group: RulesIn, words: Collection[str]) -> Iterator[str]:
    for word in group.kinds:
        if word not in words:
            yield f'rules_in("{group.module}", …) names "{word}", but no rule in it is on that kind'


def faults_of_material(item: Any) -> Iterator[str]:
    """What is wrong with a material."""
    from speclint.handbook.materials import Material

    if not isinstance(item, Material):
        yield _no(item, "a Material: read_materials of speclint.handbook.materials makes them")


def faults_of_writer(item: Any) -> Iterator[str]:
    """What is wrong with a report writer."""
    from speclint.families.report_writer import ReportWriter

    if not isinstance(item, ReportWriter):
        yield _no(item, "a ReportWriter")


def faults_of_maker(item: Any) -> Iterator[str]:
    """What is wrong with a maker of figures."""
    from speclint.families.figure_maker import FigureMaker

    if not isinstance(item, FigureMaker):
        yield _no(item, "a FigureMaker")
