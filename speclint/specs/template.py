"""A blank spec of a kind: every key with its meaning and an example, ready to be filled in."""

from __future__ import annotations

import datetime as dt
import json
import textwrap
from collections.abc import Iterator
from typing import Any, Literal, get_args, get_origin

from pydantic.fields import FieldInfo

from speclint.specs.by_word import class_of
from speclint.specs.docstrings import meanings, summary
from speclint.specs.examples import example_for, listed_example, quantities_of, quantity_example, quantity_of
from speclint.specs.key_descriptions import inner_table, listed_ids, own_first, said_of
from speclint.specs.old_keys import old_keys_of
from speclint.specs.spec import Spec, SpecTable

_WIDTH = 100
_HEADING = """Fill in what the drawing says: take the mark # from the front of a key and put the drawing's value
in place of the example. A key belongs to the nearest heading in brackets above it: take the mark from the front of that
heading too. What is left out is never guessed: a check that needs it is not assessed. A quantity
may also be written { value = "480 mm", from = "measured", note = "by pin gauge" }; from is drawing, measured,
calculated or assumed."""
_ALIKE = """A part that is like another of its kind states like = "the id of that", and beside it only what differs and
where it sits; one of the other hand states mirror_of instead. With each = ["left", "right"] the file states one part
for each name, which stands wherever it writes {each}, as in the id. Where parts differ by more, [each] holds a list
for each word: of cylinder = ["left", "right"] and end = ["front", "back"] every combination is one part, with
{cylinder} and {end} in its texts. What one of them has otherwise stands in a table such as [for.left] or
[for."left, front"]."""
_TABLES = """Tables follow, each below its heading in brackets: keys of the part itself stand above this line. One that
is written further down, or at the end of the file, belongs to the table above it."""
_FOR_PARTS_ALIKE = ("like", "mirror_of", "each")


def template_of(kind: type[Spec]) -> str:
    """The blank spec as TOML: a line that begins with # and a space is a remark, one with # alone is a key.

    Without the marks # in front of its keys it is a spec that loads, made of examples.
    """
    kind = class_of(kind)
    kind.model_rebuild()  # so that tables named before they are defined are known
    lines = [*_remark(f"{kind.called or kind.kind}: {summary(kind)}"), "#"]
    lines += [*_remark(_HEADING), *_remark(_ALIKE), "", f'kind = "{kind.kind}"', f'id = "{kind.kind}-left"']
    lines += _table(kind, "", skip={"id", *_FOR_PARTS_ALIKE})
    return "\n".join(lines).rstrip() + "\n"


def _table(table: type[SpecTable], path: str, skip: frozenset[str] | set[str] = frozenset()) -> Iterator[str]:
    """The keys of a table without the old ones, and after them the tables within it."""
    known, old = meanings(table), old_keys_of(table)
    later: list[tuple[str, FieldInfo]] = []
    for name, field in own_first(table).items():
        value = _inline(name, field, table)
        if name in skip or name in old:
            continue
        if value is None:
            later.append((name, field))
            continue
        yield ""
        yield from _remark(_said(known.get(name, ""), said_of(field)))
        yield f"#{name} = {value}"
    if later and not path:
        yield ""
        yield from _remark(_TABLES)
    for name, field in later:
        yield ""
        yield from _inner(name, field, path, known.get(name, ""))


def _said(meaning: str, takes: str) -> str:
    return f"{meaning}; {takes}" if meaning else takes


def _inline(name: str, field: FieldInfo, table: type[SpecTable]) -> str | None:
    """The example of a key that is written on one line; None for a table."""
    value = example_for(name, field, table)
    if value is not None:
        return str(value) if isinstance(value, dt.date) else json.dumps(value, ensure_ascii=False)
    if get_origin(field.annotation) is tuple and name in quantities_of(table):
        return json.dumps([quantities_of(table)[name]], ensure_ascii=False)
    if ids := listed_ids(field):
        return json.dumps(ids)
    several = listed_example(name, field, table)
    if several is not None:
        return json.dumps([several], ensure_ascii=False)
    return None


def _inner(name: str, field: FieldInfo, path: str, meaning: str) -> Iterator[str]:
    """A table within a table: one, one of several by name, one of a list, or values by name."""
    inner, several = inner_table(field.annotation)
    key = f"{path}{name}"
    if inner is None:
        yield from _remark(_said(meaning, said_of(field)))
        yield f"#[{key}]"
        yield f"#{_named_value(field)}"
        return
    one = "" if not several else " One such table for each."
    yield from _remark(_said(meaning, summary(inner)) + one)
    if several == "[]":
        yield f"#[[{key}]]"
        yield from _table(inner, f"{key}.")
        return
    if several:
        key = f"{key}.{_name_in(field.annotation)}"
    yield f"#[{key}]"
    yield from _table(inner, f"{key}.")


def _name_in(annotation: Any) -> str:
    """A name for one of several tables: a word that the names are limited to, or any."""
    names = get_args(get_args(annotation)[0]) if get_origin(get_args(annotation)[0]) is Literal else ()
    return str("running" if "running" in names else (names or ("first",))[0])


def _named_value(field: FieldInfo) -> str:
    if not quantity_of(field):
        return 'first = "data of your own"'
    return f'{_name_in(field.annotation)} = "{quantity_example(field)}"'


def _remark(text: str) -> Iterator[str]:
    for line in textwrap.wrap(" ".join(text.split()), _WIDTH - 2, break_long_words=False):
        yield f"# {line}"
