"""The kinds of component, a page for each: what it is, every key, what may be written and what it means."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct
from pydantic.fields import FieldInfo

from speclint.families import Loaded
from speclint.quantities import DIMENSIONS, Measure
from speclint.reports.listed_keys import ListedKey, listed_keys
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.places import EVERY_COMPONENT, anchor, file_of, kind_place, list_place
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.sections import KINDS
from speclint.rules import Rule
from speclint.specs import (
    Component,
    NotStated,
    Spec,
    SpecTable,
    Stated,
    linked_kinds,
    looked_up_in,
    prose,
    quantity_of,
    summary,
)


class ShownKey(Struct, frozen=True):
    """A key as its row shows it; ``links`` lead to what may be written there, ``unset`` is what it is when left out."""

    key: ListedKey
    anchor: str
    means: str
    takes: str
    links: tuple[Link, ...]
    unset: str


class KeyGroup(Struct, frozen=True):
    """The keys of one table: the spec itself, what every component has, or a table within."""

    heading: str
    anchor: str
    says: tuple[str, ...]
    keys: tuple[ShownKey, ...]
    conditions: tuple[str, ...]


def kind_pages(loaded: Loaded, rules_on: Mapping[str, tuple[Link, ...]]) -> Iterator[ReferencePage]:
    """A list of all kinds, a page for each, and one for the keys that every component has."""
    kinds = list(loaded.kinds.values())
    words = frozenset(loaded.kinds)
    listed = [(Link(kind.kind, kind_place(kind.kind)), summary(kind)) for kind in kinds]
    every = (Link("every component", EVERY_COMPONENT), "The keys that every component has.")
    says = "Every kind of component that is loaded, with the word that a spec writes for it."
    yield ReferencePage(
        "kinds/index.html", "Kinds", KINDS, "list.html", {"says": says, "groups": [("", [every, *listed])]}
    )
    groups = key_groups(Component, words, "")
    yield ReferencePage(
        EVERY_COMPONENT,
        "Every component",
        KINDS,
        "kind.html",
        {
            "about": prose(Component),
            "hazards": (),
            "word": "",
            "rules": rules_on.get("", ()),
            "groups": groups,
        },
        list(_entries(groups, "every component", EVERY_COMPONENT)),
    )
    for kind in kinds:
        yield _page(kind, words, rules_on)


def _page(kind: type[Spec], words: frozenset[str], rules_on: Mapping[str, tuple[Link, ...]]) -> ReferencePage:
    groups = key_groups(kind, words, "Keys of its own")
    file = file_of("kinds", kind.kind)
    hazards = (kind.hazards or ()) if issubclass(kind, Component) else ()
    content = {
        "about": prose(kind),
        "hazards": hazards,
        "word": kind.kind,
        "rules": rules_on.get(kind.kind, ()),
        "groups": groups,
    }
    own = [Entry(kind.kind, "kind", file, summary(kind))]
    return ReferencePage(
        file, kind.kind, KINDS, "kind.html", content, [*own, *_entries(groups, kind.kind, file)]
    )


def _entries(groups: list[KeyGroup], owner: str, file: str) -> Iterator[Entry]:
    """The keys that the search finds here: those of every component only on the page of their own."""
    for group in groups:
        for shown in group.keys:
            if not shown.key.of_every or file == EVERY_COMPONENT:
                place = f"{file}#{shown.anchor}"
                yield Entry(f"{owner}.{shown.key.written}", "key", place, shown.key.says)


def key_groups(table: type[SpecTable], kinds: frozenset[str], own: str) -> list[KeyGroup]:
    """The keys of a kind by the table in which they stand; ``kinds`` are the words of those that have a page."""
    found: dict[tuple[str, bool], list[ListedKey]] = {}
    within: dict[str, ListedKey] = {}
    for key in listed_keys(table):
        found.setdefault((key.prefix, key.of_every and not key.prefix), []).append(key)
        if key.inner is not None:
            within[f"{key.written}{key.named}."] = key
    return [
        _group(prefix, of_every, keys, within.get(prefix), kinds, own)
        for (prefix, of_every), keys in sorted(found.items(), key=lambda one: (bool(one[0][0]), one[0][1]))
    ]


def _group(
    prefix: str,
    of_every: bool,
    keys: list[ListedKey],
    table: ListedKey | None,
    kinds: frozenset[str],
    own: str,
) -> KeyGroup:
    heading = prefix.removesuffix(".") or ("Keys of every component" if of_every else own)
    said = prose(table.inner) if table and table.inner else ()
    means = (f"{table.means[:1].upper()}{table.means[1:]}.",) if table and table.means else ()
    return KeyGroup(
        heading=heading or "Keys",
        anchor=f"table.{anchor(prefix.removesuffix('.'))}"
        if prefix
        else ("common-keys" if of_every else "own-keys"),
        says=(*means, *said),
        keys=tuple(_shown(one, kinds) for one in keys if one.field is not None),
        conditions=tuple(one.takes for one in keys if one.field is None),
    )


def _shown(key: ListedKey, kinds: frozenset[str]) -> ShownKey:
    assert key.field is not None  # as conditions are told apart before
    links = tuple(_links(key, kinds))
    means, takes = key.means or key.name.replace("_", " "), key.takes
    if key.inner is not None:
        means, takes = key.means or summary(key.inner), "a table"
    return ShownKey(key, anchor(key.written), means, takes, links, _unset(key.name, key.field))


def _links(key: ListedKey, kinds: frozenset[str]) -> Iterator[Link]:
    field = key.field
    if field is None:
        return
    if key.inner is not None:
        yield Link("its keys", f"#table.{anchor(f'{key.written}{key.named}')}")
        return
    if quantity := quantity_of(field):
        dimension = {"fluid pressure": "pressure"}.get(quantity[0].dimension, quantity[0].dimension)
        if dimension in DIMENSIONS:
            yield Link("its units", list_place("units", dimension))
    elif listed := looked_up_in(field):
        yield Link(f"the list of {listed.called}", list_place(listed.called))
    yield from (Link(kind, kind_place(kind)) for kind in linked_kinds(field) if kind in kinds)


def _unset(name: str, field: FieldInfo) -> str:
    """What a key is when it is left out; "" where it is then not stated, or empty."""
    if field.is_required():
        return "the name of the file without .toml" if name == "id" else "it must be stated"
    return _in_words(field.get_default(call_default_factory=False))


def _in_words(value: Any) -> str:
    if value is None or isinstance(value, NotStated | SpecTable) or value in ((), {}):
        return ""
    if isinstance(value, Stated):
        return _in_words(value.value)
    if isinstance(value, bool):
        return "true" if value else "false"
    return value.text if isinstance(value, Measure) else str(value)


def rules_by_kind(
    rules: tuple[Rule, ...], loaded: Loaded, links: Mapping[str, Link]
) -> dict[str, tuple[Link, ...]]:
    """The rules on each kind by its word, those of kinds that it is built on among them; "" for every component."""
    found: dict[str, tuple[Link, ...]] = {
        "": tuple(links[rule.name] for rule in rules if Component in rule.on)
    }
    for word, kind in loaded.kinds.items():
        on = (
            rule
            for rule in rules
            if any(one is not Component and kind.is_one_of((one.kind,)) for one in rule.on)
        )
        found[word] = tuple(links[rule.name] for rule in on)
    return found
