"""How tables are read: files of the design repository that ``mappings`` names, under [made] for those of a shop.

Under [tables] it names those of tables of parts, from which specs are made.
"""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, ClassVar, Literal, TypeVar

from pydantic import BeforeValidator, ValidationError

from speclint.errors import Complaint, SettingsError
from speclint.repository.shop_tables import Layout
from speclint.repository.toml_tables import read_named
from speclint.repository.validation import complaint_of
from speclint.specs import NOT_STATED, Remark, SpecTable, Stated, Word, bare

M = TypeVar("M", bound=SpecTable)

#: What a column of a shop's table may hold.
Column = Literal[
    "dimension",
    "value",
    "unit",
    "uncertainty",
    "unit_of_uncertainty",
    "along",
    "round",
    "instrument",
    "date",
    "inspector",
    "serial",
]


class _LaidOut(SpecTable):
    """How a table is laid out.

    Fields:
        heading: number of the row that holds the names of the columns; 1 where it is left out
        separator: mark between the cells of a CSV file; a comma where it is left out
        decimal: decimal mark of the numbers in the table; a point where it is left out
        sheet: name of the sheet of a spreadsheet; the first where it is left out
    """

    heading: Word[int] = NOT_STATED
    separator: Word[Literal[",", ";", "\t", "|"]] = NOT_STATED
    decimal: Word[Literal[".", ","]] = NOT_STATED
    sheet: Word[str] = NOT_STATED

    @property
    def layout(self) -> Layout:
        """How the table is laid out."""
        usual = Layout()
        return Layout(
            self.heading.value if isinstance(self.heading, Stated) else usual.heading,
            self.separator.value if isinstance(self.separator, Stated) else usual.separator,
            self.sheet.value if isinstance(self.sheet, Stated) else usual.sheet,
        )

    @property
    def decimal_mark(self) -> str:
        """The decimal mark of numbers."""
        return self.decimal.value if isinstance(self.decimal, Stated) else "."


class PartsMapping(_LaidOut):
    """Which key of a spec each column of a table of parts holds.

    Fields:
        columns: the key, with its unit where the cells state none, such as "wall (mm)", by the name of the column
        pass_over: names of columns that are not read
        every: what every part of the table states, by its key, such as duty = "duty-left"
        into: the folder of the new files, in the repository
    """

    kind: ClassVar[str] = "mapping of a table of parts"

    columns: Annotated[dict[str, str], BeforeValidator(bare)] = {}
    pass_over: Annotated[tuple[str, ...], BeforeValidator(lambda raw: tuple(bare(raw)))] = ()
    every: Annotated[dict[str, str], BeforeValidator(bare)] = {}
    into: Word[str] = NOT_STATED


class TableMapping(_LaidOut):
    """Which column of a shop's table is which, and in which units its bare numbers are.

    Fields:
        date_format: of days written as text, such as "%d.%m.%Y"; 2027-05-31 where it is left out
        columns: the name of each column in the table, by what it holds
        units: of the numbers in a column that stand without a unit, by what the column holds
        dimensions: keys of specs, by what the shop calls each dimension; a key itself needs no entry
    """

    kind: ClassVar[str] = "mapping of a table"

    date_format: Remark = NOT_STATED
    columns: dict[Column, Remark] = {}
    units: dict[Column, Remark] = {}
    dimensions: Annotated[dict[str, str], BeforeValidator(bare)] = {}

    def column(self, what: Column) -> str:
        """The name of the column that holds something; "" where none does."""
        stated = self.columns.get(what)
        return stated.value if isinstance(stated, Stated) else ""

    def unit_of(self, what: Column) -> str:
        """The unit of the bare numbers of a column; "" where none is said."""
        stated = self.units.get(what)
        return stated.value if isinstance(stated, Stated) else ""


def read_parts_mapping(root: Path, file: str) -> PartsMapping:
    """Read a mapping of a table of parts.

    :raises SettingsError: for one that cannot be read, with everything that is wrong with it.
    """
    return _read(root, file, PartsMapping)


def read_mapping(root: Path, file: str) -> TableMapping:
    """Read a mapping of a table of measured sizes.

    :raises SettingsError: for one that cannot be read, with everything that is wrong with it.
    """
    found = _read(root, file, TableMapping)
    for needed in ("dimension", "value"):
        if not found.column(needed):
            raise SettingsError(
                f"{file} columns: no column holds the {needed}; write {needed} = its name in the table"
            )
    return found


def _read(root: Path, file: str, mapping: type[M]) -> M:
    table = read_named(root, file)
    if isinstance(table, Complaint):
        raise SettingsError(str(table))
    try:
        return mapping.model_validate(table)
    except ValidationError as problem:
        errors = problem.errors()
        raise SettingsError(
            "\n".join(str(complaint_of(one, mapping, table, file)) for one in errors)
        ) from problem
