"""Names that a field of a spec accepts, each with the property that matters: of tables, of units, of metals."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from functools import cache
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from speclint.errors import NotKnown, OutOfRange
from speclint.quantities import DIMENSIONS
from speclint.specs import ListedIn

if TYPE_CHECKING:
    from speclint.handbook.materials import Material

#: The units of temperatures, which have a zero of their own: by definition of the degrees Celsius and Fahrenheit.
_OF_TEMPERATURE: Mapping[str, Mapping[str, str]] = {
    "temperature": {"°C": "", "°F": "32 °F is 0 °C, 212 °F is 100 °C", "K": "273.15 K is 0 °C"},
    "temperature difference": {"K": "", "°C difference": "1 K", "°F difference": "5/9 K"},
}
_AT = 293.15  # K: the 20 °C at which standards state strengths


class Name(Struct, frozen=True):
    """A name that may be written, and the property that matters; "" where there is none."""

    name: str
    says: str = ""


class NameList(Struct, frozen=True):
    """Names that may be written in the same places: ``taken_by`` are these, as KIND.KEY; ``about`` what they are."""

    called: str
    about: str
    names: tuple[Name, ...]
    taken_by: tuple[str, ...] = ()

    def holding(self, text: str) -> NameList:
        """The same with only the names in which every word of a text is found, in name or property, in any case."""
        words = text.casefold().split()
        some = tuple(
            one for one in self.names if all(word in f"{one.name} {one.says}".casefold() for word in words)
        )
        return NameList(self.called, self.about, some, self.taken_by)


def rows_of(mark: ListedIn) -> Iterator[tuple[str, str]]:
    """The names in a table, each with what its row shows."""
    from speclint.handbook.tables import rows

    for row in rows(mark.table, mark.package):
        said = [words.format(row[column]) for column, words in mark.shows if row[column]]
        yield row[mark.column], ", ".join(said)


def dimensions() -> Iterator[Name]:
    """What may be measured, each with its units."""
    for dimension in DIMENSIONS.values():
        yield Name(dimension.name, ", ".join(unit for unit in dimension.units if unit) or "a number alone")
        if dimension.name == "pressure":
            yield Name("fluid pressure", "those of a pressure, each with gauge or absolute")
    for name, units in _OF_TEMPERATURE.items():
        yield Name(name, ", ".join(units))


def units_of(dimension: str) -> Iterator[Name]:
    """The units of a dimension, each in the unit in which it is shown; those of temperatures with what they are."""
    yield from (Name(*one) for one in _OF_TEMPERATURE.get(dimension, {}).items())
    plain = {"fluid pressure": "pressure"}.get(dimension, dimension)
    known = DIMENSIONS.get(plain)
    shown = known.units.get(known.shown) if known else None
    for unit, factor in known.units.items() if known else ():
        same = f"{_plain(factor / shown)} {known.shown}" if known and shown and unit != known.shown else ""
        for datum in (" gauge", " absolute") if dimension == "fluid pressure" else ("",):
            yield Name(f"{unit}{datum}" or "a number alone", same)


def _plain(number: float) -> str:
    """A number of seven figures without an exponent.

    >>> _plain(1e6), _plain(1e-5), _plain(25.4)
    ('1000000', '0.00001', '25.4')
    """
    return f"{Decimal(f'{number:.7g}'):f}"


def materials_with(more: Mapping[str, Material]) -> Iterator[Name]:
    """The materials of the handbook and some more, each with what it is and its least strengths cold."""
    from speclint.handbook.materials import material, names

    every = {name: material(name) for name in names()} | dict(more)
    for name in sorted(every):
        yield Name(name, ", ".join(_of_material(every[name])))


def _of_material(metal: Material) -> Iterator[str]:
    """What a material is, by which standard, and its least strengths cold."""
    yield metal.title
    yield metal.standard
    strengths: tuple[tuple[str, Callable[[], Any]], ...] = (
        ("tensile", lambda: metal.tensile_strength(_AT)),
        ("proof", lambda: metal.proof_stress(_AT)),
    )
    for words, reading in strengths:
        try:
            yield f"{words} {reading().low / 1e6:.0f} MPa"
        except (NotKnown, OutOfRange):
            continue


@cache
def threads() -> tuple[Name, ...]:
    """Every thread of the standards, with pitch and major diameter."""
    return tuple(_threads())


def _threads() -> Iterator[Name]:
    from speclint.handbook.threads import designations, nominal_diameter, thread

    for name in designations():
        found = thread(name)
        yield Name(
            name,
            f"pitch {found.pitch * 1e3:.4g} mm, major diameter {nominal_diameter(name).nominal * 1e3:.5g} mm",
        )
