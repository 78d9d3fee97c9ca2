"""How each key of a table may be written: examples that lie in their spans and that hold together."""

from __future__ import annotations

import datetime as dt
import math
import re
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from typing import Annotated, Any, Literal, TypeAlias, get_args, get_origin

from pydantic.fields import FieldInfo

from speclint.quantities import Measure, example, read
from speclint.specs.fields import Link, Quantity, Stated
from speclint.specs.geometry import conditions_of
from speclint.specs.listed_in import MATERIALS
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable

#: A value as TOML has it.
Written: TypeAlias = str | int | bool | dt.date

_QUOTED = re.compile(r'"([^"]+)"')
_TRIALS = 20  # rounds in which the examples of a table are moved until they hold together
_SMALLER = 0.8  # an example that must be less than another is this share of what it must be less than

#: Keys that take the id of a spec of the same kind.
_OF_ITS_KIND = ("like", "mirror_of")
_DAY = dt.date(2025, 5, 31)
#: A word that a drawing might have where any text is taken, by key.
_WORDS = {
    "id": "liner-left",
    "title": "Cylinder liner, left hand",
    "drawing": "CN-C-1211",
    "drawing_file": "drawings/CN-C-1211.svg",
    "revision": "A",
    "to": "machine shop",
    "prepared_by": "J. Ostler",
    "checked_by": "M. Coyle",
    "material": "phosphoric-cylinder-iron",
    "thread": "M24",
    "method": "torque wrench",
    "wire_grade": "VDSiCr",
    "opens": "35 ° from upright, outwards",
    "inclined": "35 ° from upright, outwards",
}
#: A metal that a part may well be of, where that of a liner would mislead: by its kind.
_METALS_OF_KINDS = {
    "bolted-joint": "bolting-42CrMo4",
    "cam": "case-hardening-16MnCr5",
    "chamber-cover": "plate-P355GH",
    "compression-spring": "wire-oil-tempered-VDSiCr",
    "crosshead": "cast-steel-GP240GH",
    "cylinder-block": "plate-P355GH",
    "cylinder-cover": "plate-P355GH",
    "frame-fastening": "bolting-42CrMo4",
    "lens-joint": "forging-P250GH",
    "lifting-plan": "structural-S355",
    "locating-face": "structural-S355",
    "pin": "case-hardening-16MnCr5",
    "pipe-flange": "plate-P265GH",
    "piston-rod": "forging-42CrMo4",
    "poppet-valve": "stainless-1.4021",
    "rocker": "forging-42CrMo4",
    "shaft": "forging-42CrMo4",
    "steam-pipe": "tube-16Mo3",
    "valve-spindle": "stainless-1.4057",
}
#: By the table in which the key stands, or one that it is built on.
_METALS_OF_TABLES = {
    "CutOpening": "plate-P355GH",
    "Dowels": "forging-C45",
    "Jib": "structural-S355",
    "Lug": "structural-S355",
    "Nut": "bolting-42CrMo4",
    "Plate": "plate-P355GH",
}
#: By the key itself.
_METALS_OF_KEYS = {
    "bearing_material": "bronze-CC483K",
    "bolt_material": "bolting-42CrMo4",
    "bush_material": "bronze-CC483K",
    "connecting_rod_material": "forging-42CrMo4",
    "cotter_material": "forging-C45",
    "frame_material": "structural-S355",
    "guide_material": "grey-iron-250",
    "pin_material": "case-hardening-16MnCr5",
    "rod_material": "forging-42CrMo4",
    "slipper_material": "bronze-CC483K",
}
#: How many there may well be, by key; of anything else four.
_COUNTS = {"beats": 2, "bends": 2, "bars_sharing": 1, "bridges": 1}


def examples_of(dimension: str) -> list[str]:
    """How quantities of a dimension may be written, without the quotes."""
    return _QUOTED.findall(example(dimension))


def quantity_of(field: FieldInfo) -> tuple[Quantity, Span | None] | None:
    """The quantity that a field takes, alone, in a list or by name, and its own span; None for anything else."""
    marks: Sequence[Any] = field.metadata
    if not any(isinstance(mark, Quantity) for mark in marks):
        members = [getattr(member, "__metadata__", ()) for member in get_args(field.annotation)]
        marks = next((one for one in members if any(isinstance(mark, Quantity) for mark in one)), ())
    quantity = next((mark for mark in marks if isinstance(mark, Quantity)), None)
    spans = [mark for mark in marks if isinstance(mark, Span)]
    own = spans[-1] if len(spans) > 1 else None  # the first is that of the type
    return (quantity, own) if quantity else None


def quantity_example(field: FieldInfo) -> str:
    """How the quantity of a field may be written: the usual example of its dimension, where that lies in its span."""
    found = quantity_of(field)
    if found is None:
        return ""
    quantity, span = found
    usual = examples_of(quantity.dimension)[0]
    if span is None or span.holds(read(usual, quantity.dimension, "any")):
        return usual
    least, greatest = span.ends(quantity.dimension)
    return _written(math.sqrt(least * greatest), span.least, quantity.dimension)


def example_for(name: str, field: FieldInfo, table: type[SpecTable]) -> Written | None:
    """A value that the key takes, as TOML has it; None where it takes a table or a list."""
    if any(isinstance(mark, Quantity) for mark in field.metadata):
        return quantities_of(table)[name]
    if MATERIALS in field.metadata:
        return _metal_of(name, table)
    return _example_of(name, field.annotation, table)


def _metal_of(name: str, table: type[SpecTable]) -> str:
    """A metal for a key of a table: that of the key, of the kind, or of what the table is."""
    of_kind = _METALS_OF_KINDS.get(table.__dict__.get("kind", ""))
    classes = (one.__name__ for one in table.__mro__)
    of_tables = (_METALS_OF_TABLES[one] for one in classes if one in _METALS_OF_TABLES)
    return _METALS_OF_KEYS.get(name) or of_kind or next(of_tables, _WORDS["material"])


def usual_at(spec: SpecTable, key: str) -> Written | None:
    """What a dotted key of a spec may be written as; None where it takes a table or a list, or is none."""
    table: object = spec
    *above, name = key.split(".")
    for part in above:
        table = table.get(part) if isinstance(table, Mapping) else getattr(table, part, None)
    if not isinstance(table, SpecTable) or name not in type(table).model_fields:
        return None
    return example_for(name, type(table).model_fields[name], type(table))


def listed_example(name: str, field: FieldInfo, table: type[SpecTable]) -> Written | None:
    """A word or a link that a key takes several of in a list; None where it takes no such list."""
    if get_origin(field.annotation) is not tuple:
        return None
    member = get_args(field.annotation)[0]
    return _example_of(name, get_args(member)[0] if get_origin(member) is Annotated else member, table)


def _example_of(name: str, annotation: Any, table: type[SpecTable]) -> Written | None:
    for member in get_args(annotation):
        if get_origin(member) is Stated:
            return f"{table.kind}-left" if name in _OF_ITS_KIND else _example_word(name, get_args(member)[0])
        if get_origin(member) is Link:
            target = get_args(member)[0]
            return f"{(get_args(target) or (target,))[0].kind}-left"
    return _WORDS.get(name, "text") if annotation is str else None


def _example_word(name: str, wanted: Any) -> Written:
    if get_origin(wanted) is Literal:
        choice: Written = get_args(wanted)[0]
        return choice
    if wanted is str:
        return _WORDS.get(name, name.replace("_", " "))
    if wanted is dt.date:
        return _DAY
    return True if wanted is bool else _COUNTS.get(name, 4)


@cache
def quantities_of(table: type[SpecTable]) -> Mapping[str, str]:
    """An example for each quantity of a table, such that its geometry holds."""
    found = {
        name: quantity_example(field) for name, field in table.model_fields.items() if quantity_of(field)
    }
    within = {name: {"one": _sizes(one, quantities_of(one))} for name, one in _tables_of(table)}
    conditions = [one for one in conditions_of(table) if one.key in found]  # others move the tables within
    for _ in range(_TRIALS):
        sizes = {**within, **_sizes(table, found)}
        broken = [(one, pair) for one in conditions for pair in one.faults(sizes)]
        if not broken:
            break
        for condition, (_, great) in broken:
            measure = great.measure
            value = measure.nominal * condition.times * _SMALLER
            found[condition.key] = _written(value, found[condition.key], measure.dimension)
    return found


def _tables_of(table: type[SpecTable]) -> Iterator[tuple[str, type[SpecTable]]]:
    """The tables that stand in a table by name, with their keys."""
    for name, field in table.model_fields.items():
        _, *named = get_args(field.annotation) if get_origin(field.annotation) is dict else (None,)
        if named and isinstance(named[0], type) and issubclass(named[0], SpecTable):
            yield name, named[0]


def _sizes(table: type[SpecTable], written: Mapping[str, str]) -> Mapping[str, Measure]:
    return {name: _read(table, name, text) for name, text in written.items()}


def _read(table: type[SpecTable], name: str, text: str) -> Measure:
    found = quantity_of(table.model_fields[name])
    assert found is not None  # as only quantities are asked for
    return read(text, found[0].dimension, "any")


def _written(value: float, like: str, dimension: str) -> str:
    """A value, two figures of it, in the unit in which another of its dimension is written."""
    _, _, unit = like.partition(" ")
    one = read(f"1 {unit}".rstrip(), dimension, "any").nominal
    return f"{float(f'{value / one:.2g}'):g} {unit}".rstrip()
