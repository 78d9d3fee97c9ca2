"""the record of a part as made, from the table of sizes that a shop sent"""

from __future__ import annotations

import argparse
import re
import sys
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import families_for
from speclint.commands.new_files import write_in_folder
from speclint.commands.streams import standard_output
from speclint.errors import OutputError, SettingsError, TableError

if TYPE_CHECKING:
    from speclint.made import Recorded
    from speclint.repository import Design, TableMapping

EXAMPLE = "speclint record sheet.csv --inspection-sheet --part liner-left --serial L-05 --made-to B --in example_specs"


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which table, of which part, and where the record goes."""
    parser.add_argument("table", type=Path, metavar="TABLE", help="what the shop sent: .csv or .xlsx")
    parser.add_argument("--part", required=True, metavar="SPEC", help="the id of the spec that was made")
    parser.add_argument("--serial", required=True, metavar="NUMBER", help="the serial number of the part")
    parser.add_argument("--made-to", default="", metavar="REVISION", help="the revision that it was made to")
    parser.add_argument(
        "--by", default="", metavar="FILE", help="the mapping of the table, where the settings name several"
    )
    parser.add_argument(
        "--inspection-sheet",
        dest="sheet",
        action="store_true",
        help="the table is a sheet of speclint inspect, filled in: it needs no mapping",
    )
    parser.add_argument(
        "--in", dest="folder", type=Path, default=Path(), metavar="FOLDER", help="the repository"
    )
    parser.add_argument(
        "--as-spec", dest="file", default="", metavar="FILE", help="the new file, in the repository"
    )


def run(options: argparse.Namespace) -> int:
    """Read the table, write the record, and list every row that could not be read; returns the exit code."""
    from speclint.made import as_toml, missing_columns, record
    from speclint.repository import component_called, find_root, open_repository, read_shop_table

    root = find_root([options.folder])
    design = open_repository([root], families_for([root]).kinds).design
    part = component_called(options.part, design)
    mapping = _mapping(root, design, options)
    table = read_shop_table(options.table, mapping.layout)
    if missing := missing_columns(table, mapping):
        raise TableError(
            f"{options.table}: it has no column {', '.join(missing)}; it has {', '.join(table.columns)}"
        )
    recorded = record(table, mapping, part, options.serial, date.today(), may_be_empty=options.sheet)
    name = _id(f"{part.id}-{options.serial}")
    target = _target(root, options.file or f"made/{name}.toml")
    for row in recorded.refused:
        print(f"speclint: {options.table}: {row}", file=sys.stderr)
    if not recorded.values:
        raise TableError(f"{options.table}: no row of serial number {options.serial} could be read")
    write_in_folder(target, as_toml(part, options.serial, options.made_to, recorded, name))
    with standard_output() as stream:
        stream.write(_told(recorded, target.relative_to(root).as_posix()))
    return int(bool(recorded.refused))


def _mapping(root: Path, design: Design, options: argparse.Namespace) -> TableMapping:
    from speclint.made import sheet_mapping
    from speclint.repository import read_mapping

    if not options.sheet:
        return read_mapping(root, _mapping_file(design, options.by))
    if options.by:
        raise SettingsError("an inspection sheet has a mapping of its own: leave out --by")
    return sheet_mapping()


def _mapping_file(design: Design, given: str) -> str:
    """The mapping that is given, or the only one that the settings name."""
    named = design.settings.made.mappings
    if given:
        if given not in named:
            raise SettingsError(f"{given}: speclint.toml names no such file under mappings in [made]")
        return given
    if len(named) != 1:
        write = "name one under [made]" if not named else f"say which with --by: {', '.join(named)}"
        raise SettingsError(f"speclint.toml names {len(named)} mappings of tables; {write}")
    return str(named[0])


def _id(text: str) -> str:
    """An id of letters, digits and hyphens."""
    return re.sub(r"[^A-Za-z0-9]+", "-", text).strip("-").lower()


def _target(root: Path, file: str) -> Path:
    """The place of the new file: in the repository, with nothing there."""
    place = (root / file).resolve()
    if not place.is_relative_to(root.resolve()) or place.suffix != ".toml":
        raise OutputError(f"{file}: a record is a TOML file in the repository")
    if place.exists():
        raise OutputError(
            f"{file}: there is a record already, and none is replaced; give another with --as-spec"
        )
    return root / file


def _told(recorded: Recorded, file: str) -> str:
    from speclint.reports import count

    said = f"{count(recorded.values, 'value')} of {count(len(recorded.measured), 'measurement')}"
    others = f"; {count(recorded.others, 'row')} of other serial numbers" if recorded.others else ""
    lost = len(recorded.refused)
    refused = f"; {count(lost, 'row')} could not be read, and {'is' if lost == 1 else 'are'} not in it"
    left = f"; not measured: {', '.join(recorded.not_measured)}" if recorded.not_measured else ""
    return f"{file}: {said}{others}{refused if lost else ''}{left}\n"
