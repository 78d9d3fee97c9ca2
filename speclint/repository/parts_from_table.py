"""Specs from a table, one row a part; a row that cannot be read is told, and nothing is guessed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path

from msgspec import Struct, field

from speclint.errors import Complaint, TableError, read_toml_text, shortened
from speclint.repository.cells import CellError, Head, Schema, key_of, tree_of
from speclint.repository.reading import load_specs, read_drafts, validated
from speclint.repository.shop_tables import RefusedRow, ShopRow, ShopTable
from speclint.repository.table_mappings import PartsMapping
from speclint.repository.toml_writing import toml_text
from speclint.specs import Spec, schema_of

_OF_SEVERAL = ("each", "for", "like", "mirror_of")
#: Names that no file has on Windows, whatever follows a point.
_DEVICES = {
    "CON",
    "PRN",
    "AUX",
    "NUL",
    *(f"{port}{number}" for port in ("COM", "LPT") for number in range(1, 10)),
}
_NO_MAPPING = PartsMapping.unstated()


class NewSpec(Struct, frozen=True):
    """A spec made of a row: its id, its file in the repository, and the text of that."""

    row: int
    id: str
    file: str
    text: str


class PartsOfTable(Struct, frozen=True):
    """What a table gave: specs to be written, those whose files say the same already, and the refused rows."""

    new: tuple[NewSpec, ...]
    same: tuple[NewSpec, ...]
    refused: tuple[RefusedRow, ...]


class Place(Struct, frozen=True):
    """Where the specs of a table go: the folder in a repository, the file of each id that is there, and the kinds.

    ``replace`` is true where a file that is there may be overwritten.
    """

    root: Path
    folder: str
    files: Mapping[str, str]
    kinds: Mapping[str, type[Spec]]
    replace: bool = False


def parts_of_table(
    table: ShopTable, kind: type[Spec], place: Place, mapping: PartsMapping = _NO_MAPPING
) -> PartsOfTable:
    """The specs of a kind that the rows of a table state.

    :raises TableError: where a column is no key of the kind, or none holds the id.
    """
    reader = _Reader(kind, Schema(schema_of(kind)), place, mapping)
    heads = reader.heads(table.columns)
    new: list[NewSpec] = []
    same: list[NewSpec] = []
    refused = []
    for row in table.rows:
        try:
            spec, is_there = reader.read(row, heads)
        except CellError as problem:
            refused.append(RefusedRow(row.number, str(problem)))
        else:
            (same if is_there else new).append(spec)
    return PartsOfTable(tuple(new), tuple(same), tuple(refused))


class _Reader(Struct):
    kind: type[Spec]
    schema: Schema
    place: Place
    mapping: PartsMapping
    _rows: dict[str, int] = field(default_factory=dict)

    def heads(self, columns: Iterable[str]) -> dict[str, Head]:
        """What each column that is read holds."""
        left = [*columns]
        if unknown := [name for name in (*self.mapping.columns, *self.mapping.pass_over) if name not in left]:
            raise TableError(f'the table has no column "{unknown[0]}"; it has {", ".join(left)}')
        every = {self._head(name, name): name for name in self.mapping.every}
        found: dict[str, Head] = {}
        for name in left:
            if name in self.mapping.pass_over:
                continue
            head = self._head(name, self.mapping.columns.get(name, name))
            twice = next((one for one, other in found.items() if other.path == head.path), None)
            if twice is not None or any(one.path == head.path for one in every):
                also = f'the column "{twice}"' if twice is not None else "the mapping, for every part,"
                raise TableError(f'the column "{name}" and {also} both state {key_of(head.path)}')
            found[name] = head
        if not any(head.path == ("id",) for head in found.values()):
            raise TableError(
                f"no column holds the id of the part; name one id, or map one to it ({', '.join(left)})"
            )
        return found

    def _head(self, name: str, text: str) -> Head:
        try:
            head = self.schema.head(text)
        except CellError as problem:
            raise TableError(
                f'the column "{name}": {problem}; or name it under pass_over in a mapping'
            ) from problem
        if head.path[0] in _OF_SEVERAL or head.path == ("kind",):
            raise TableError(f'the column "{name}": a row states one part in full, and no {head.path[0]}')
        return head

    def read(self, row: ShopRow, heads: Mapping[str, Head]) -> tuple[NewSpec, bool]:
        """The spec of a row, and whether its file says the same already.

        :raises CellError: where it cannot be read, or its file is not to be written.
        """
        cells = {heads[name]: cell for name, cell in row.cells.items() if name in heads}
        cells |= {self.schema.head(name): cell for name, cell in self.mapping.every.items()}
        stated = tree_of(cells, self.schema, self.mapping.decimal_mark)
        name = stated.get("id")
        if not isinstance(name, str):
            raise CellError("it has no id")
        if name in self._rows:
            raise CellError(f"row {self._rows[name]} has the id {name} already")
        self._rows[name] = row.number
        file = self._file(name)
        tree = {"kind": self.kind.kind, "id": name, **stated}
        spec = NewSpec(row.number, name, file, toml_text(tree))
        self._refuse_unreadable(spec)
        return spec, self._is_there(spec)

    def _file(self, name: str) -> str:
        file = f"{self.place.folder}/{name}.toml" if self.place.folder else f"{name}.toml"
        plain = not name.startswith(".") and name.isprintable() and not set(name) & set('/\\\\:*?"<>|')
        if not plain or name.partition(".")[0].strip().upper() in _DEVICES:
            raise CellError(
                f"id {shortened(name)}: a file is called by it; write letters, digits and hyphens"
            )
        return file

    def _refuse_unreadable(self, spec: NewSpec) -> None:
        drafts = read_drafts(
            self.place.root / spec.file, spec.file, self.place.kinds, spec.text.encode("utf-8")
        )
        complaints = [one for draft in drafts for one in validated(draft, self.place.kinds).complaints]
        if complaints:
            raise CellError("; ".join(map(_said, complaints)))

    def _is_there(self, spec: NewSpec) -> bool:
        """Whether the file says the same already.

        :raises CellError: where it says something else and is not to be replaced, or the id stands in another file.
        """
        there = self.place.files.get(spec.id, spec.file)
        if there != spec.file:
            raise CellError(f"id {spec.id}: {there} states it already")
        path = self.place.root / spec.file
        if not path.exists():
            return False
        found = load_specs(path, spec.file, self.place.kinds)
        if [one.id for one in found] != [spec.id]:
            raise CellError(f"{spec.file} is there already, with other parts in it")
        if read_toml_text(path.read_text(encoding="utf-8-sig")) == read_toml_text(spec.text):
            return True  # whatever the order of its keys, and with remarks that no table holds
        if not self.place.replace:
            said = "--replace writes over it, its remarks and what the table does not hold included"
            raise CellError(f"{spec.file} is there already and says otherwise; {said}")
        return False


def _said(complaint: Complaint) -> str:
    """A complaint without its place, which is a file that is not there."""
    read = f"; read {complaint.read}" if complaint.read else ""
    write = f"; write {complaint.write}" if complaint.write else ""
    return f"{complaint.where.key}: {complaint.message}{read}{write}"


def written_folder(root: Path, folder: str) -> str:
    """A folder of a repository as its files are named: relative to the root, with forward slashes.

    :raises TableError: for one outside of the repository.
    """
    place = (root / folder).resolve()
    if not place.is_relative_to(root.resolve()):
        raise TableError(f"{folder}: the new specs go into a folder of the repository")
    inside = place.relative_to(root.resolve()).as_posix()
    return "" if inside == "." else inside
