"""specs from a table, one row a part"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.loading import families_for, refuse_unknown_kind
from speclint.commands.new_files import write_in_folder
from speclint.commands.options import FOLDER
from speclint.commands.streams import standard_output
from speclint.errors import SettingsError, TableError

if TYPE_CHECKING:
    from speclint.repository import Design, PartsMapping, PartsOfTable

EXAMPLE = "speclint import pipes.csv --kind steam-pipe --into pipes --in example_specs"
_FEW = 5  # files that are named before the rest is counted


def add_options(parser: argparse.ArgumentParser) -> None:
    """Which table, of which kind, and where the specs go."""
    parser.add_argument(
        "table",
        type=Path,
        metavar="TABLE",
        help=".csv or .xlsx; a column is headed by a key and the unit of its numbers, such as wall (mm)",
    )
    parser.add_argument(
        "--kind", required=True, metavar="KIND", help="the kind of the parts, such as steam-pipe"
    )
    parser.add_argument(
        "--into",
        default="",
        metavar="FOLDER",
        help="the folder of the new files in the repository; else that of the kind",
    )
    parser.add_argument(
        "--by", default="", metavar="FILE", help="a mapping that the settings name under [tables]"
    )
    parser.add_argument(
        "--replace",
        action="store_true",
        help="write over files of the same parts that are there and say otherwise",
    )
    parser.add_argument("--in", **FOLDER)


def run(options: argparse.Namespace) -> int:
    """Read the table, write the specs, and list every row that was refused; returns the exit code."""
    from speclint.repository import (
        Place,
        find_root,
        open_repository,
        parts_of_table,
        read_shop_table,
        written_folder,
    )

    root = find_root([options.folder])
    kinds = families_for([root]).kinds
    refuse_unknown_kind(options.kind, kinds)
    design = open_repository([root], kinds).design
    mapping = _mapping(root, design, options.by)
    folder = written_folder(root, options.into or str(getattr(mapping.into, "value", options.kind)))
    table = read_shop_table(options.table, mapping.layout)
    place = Place(root, folder, design.files, kinds, options.replace)
    try:
        found = parts_of_table(table, kinds[options.kind], place, mapping)
    except TableError as problem:
        raise TableError(f"{options.table}: {problem}") from problem
    for row in found.refused:
        print(f"speclint: {options.table}: {row}", file=sys.stderr)
    for spec in found.new:
        write_in_folder(root / spec.file, spec.text)
    with standard_output() as stream:
        stream.write(_told(found))
    return int(bool(found.refused))


def _mapping(root: Path, design: Design, file: str) -> PartsMapping:
    from speclint.repository import PartsMapping, read_parts_mapping

    if not file:
        return PartsMapping.unstated()
    if file not in design.settings.tables.mappings:
        raise SettingsError(f"{file}: speclint.toml names no such file under mappings in [tables]")
    return read_parts_mapping(root, file)


def _told(found: PartsOfTable) -> str:
    files = [spec.file for spec in found.new]
    more = f", and {len(files) - _FEW} more" if len(files) > _FEW else ""
    written = (
        f"{len(files)} {'spec' if len(files) == 1 else 'specs'} written: {', '.join(files[:_FEW])}{more}"
    )
    said = [written if files else "no spec written"]
    if found.same:
        said.append(f"{len(found.same)} there already, and the same")
    if found.refused:
        said.append(f"{len(found.refused)} {'row' if len(found.refused) == 1 else 'rows'} refused")
    return f"{'; '.join(said)}\n"
