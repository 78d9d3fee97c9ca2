"""From a TOML file to a typed spec, or to every complaint about it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError

from speclint.errors import (
    Complaint,
    Location,
    Path as KeyPath,
    TomlError,
    locate,
    nearest,
    one_of,
    read_toml_text,
    shortened,
)
from speclint.repository.regular_files import LARGEST, not_regular, read_regular
from speclint.specs import LONGEST_ID, Array, Catalogue, Leaf, Spec, SpecTable, Table

_NO_TEXT = "the name of this file is not UTF-8 text, so that nothing can refer to it"


@dataclass(frozen=True, slots=True)
class Loaded:
    """The result of reading one file: a spec, or complaints. ``id`` is that of the spec even where it is unreadable."""

    file: str
    id: str
    spec: Spec | None
    complaints: tuple[Complaint, ...]


def load_spec(path: Path, file: str, kinds: Mapping[str, type[Spec]]) -> Loaded:
    """Read one spec; ``file`` is its name in reports. Never raises for what the file contains."""
    if any("\ud800" <= letter <= "\udfff" for letter in file):  # how Python has the bytes of such a name
        instead = "a name in letters and digits"
        return Loaded(file, path.stem, None, (Complaint(Location(file), _NO_TEXT, write=instead),))
    table = read_toml(path, file)
    if isinstance(table, Complaint):
        return Loaded(file, path.stem, None, (table,))
    kind = _kind_of(table, file, kinds)
    if isinstance(kind, Complaint):
        return Loaded(file, path.stem, None, (kind,))
    return _validated(kind, table, file, path.stem, kinds)


def read_named(root: Path, file: str, largest: int = LARGEST) -> Table | Complaint:
    """Read a TOML file of a repository whose name is fixed or is in the settings: only a regular one inside of it."""
    if what := not_regular(root, file):
        return Complaint(
            Location(file), f"this is {what}, which is not read", write="the file itself in its place"
        )
    return read_toml(root / file, file, largest)


def read_toml(path: Path, file: str, largest: int = LARGEST) -> Table | Complaint:
    """Read a TOML file into a table in which every value has its place in the file."""
    try:
        text = read_regular(path, largest).decode("utf-8")
        tree = read_toml_text(text)
    except TomlError as problem:
        where = Location(file, problem.line, shortened(dotted(problem.path)))
        return Complaint(where, str(problem), shortened(_line(text, problem.line)), problem.write)
    except UnicodeDecodeError as problem:
        line = problem.object.count(b"\n", 0, problem.start) + 1
        return Complaint(Location(file, line), "the file is not UTF-8 text", write="the file saved as UTF-8")
    except OSError as problem:
        return Complaint(Location(file), f"the file cannot be read: {problem.strerror or problem}")
    lines = locate(text.replace("\r\n", "\n"))
    return _with_places(tree, (), file, lines, 1)


def _line(text: str, number: int) -> str:
    lines = text.splitlines()
    return lines[number - 1].strip() if 0 < number <= len(lines) else ""


def _with_places(
    tree: Mapping[str, Any], path: KeyPath, file: str, lines: Mapping[KeyPath, int], line: int
) -> Table:
    here = Location(file, lines.get(path, line), dotted(path))
    inside = {name: _placed(value, (*path, name), file, lines, here.line) for name, value in tree.items()}
    return Table(inside, here)


def _placed(value: Any, path: KeyPath, file: str, lines: Mapping[KeyPath, int], line: int) -> Any:
    if isinstance(value, dict):
        return _with_places(value, path, file, lines, line)
    line = lines.get(path, line)
    if isinstance(value, list):
        items = [_placed(item, (*path, index), file, lines, line) for index, item in enumerate(value)]
        return Array(items, Location(file, line, dotted(path)))
    return Leaf(value, Location(file, line, dotted(path)))


def dotted(path: KeyPath) -> str:
    """A path of keys as a spec would write it: ``bores.main.diameter``, ``pads[2].width``."""
    text = ""
    for step in path:
        if isinstance(step, int):
            text += f"[{step}]"
        else:
            text += f".{step}" if text else step
    return text


def _kind_of(table: Table, file: str, kinds: Mapping[str, type[Spec]]) -> type[Spec] | Complaint:
    leaf = table.get("kind")
    word = leaf.raw if isinstance(leaf, Leaf) else None
    where = leaf.where if isinstance(leaf, Leaf) else Location(file, 1, "kind")
    if word is None:
        return Complaint(
            where, "the spec does not say what kind of component it is", "", f"kind = {one_of('', kinds)}"
        )
    if not isinstance(word, str) or word not in kinds:
        said = f"this kind of component is not known{_with_left_out(kinds)}"
        return Complaint(where, said, _quoted(word), f"kind = {one_of(str(word), kinds)}")
    return kinds[word]


def _with_left_out(kinds: Mapping[str, type[Spec]]) -> str:
    left_out = kinds.left_out if isinstance(kinds, Catalogue) else ()
    return f" while speclint.toml leaves out the family {' and '.join(left_out)}" if left_out else ""


def _validated(
    kind: type[Spec], table: Table, file: str, stem: str, kinds: Mapping[str, type[Spec]]
) -> Loaded:
    leaf = table.get("id", Leaf(stem, Location(file, 1, "id")))
    if not isinstance(leaf, Leaf) or not isinstance(leaf.raw, str) or not leaf.raw.strip():
        where = leaf.where if isinstance(leaf, Leaf | Table) else Location(file, 1, "id")
        return Loaded(
            file, stem, None, (Complaint(where, "an id is a word in quotes", "", f'id = "{stem}"'),)
        )
    if len(leaf.raw) > LONGEST_ID:
        said = f"an id has at most {LONGEST_ID} characters; this has {len(leaf.raw)}"
        return Loaded(file, stem, None, (Complaint(leaf.where, said, "", f'id = "{shortened(stem)}"'),))
    content = Table({**table, "id": leaf.raw}, Location(file, leaf.where.line, ""))
    del content["kind"]
    try:
        return Loaded(file, leaf.raw, kind.model_validate(content), ())
    except ValidationError as problem:
        errors = problem.errors(include_url=False)
        complaints = [
            _of_no_family(error, kind, content, file, kinds) or complaint_of(error, kind, content, file)
            for error in errors
        ]
        return Loaded(file, leaf.raw, None, tuple(sorted(complaints, key=lambda complaint: complaint.order)))


def _of_no_family(
    error: Any, kind: type[Spec], content: Table, file: str, kinds: Mapping[str, type[Spec]]
) -> Complaint | None:
    """What is said of a table that is named as a family would name it: which family reads it, or that none does."""
    name = str(error["loc"][0])
    unread = error["type"] == "extra_forbidden" and len(error["loc"]) == 1
    if not unread or not isinstance(error["input"], Mapping) or not isinstance(kinds, Catalogue):
        return None
    where, read = _place_of(content, (name,), file), _quoted(error["input"])
    if name in kinds.left_out:
        says = f"[{name}] is read by the family {name}, which speclint.toml leaves out"
        instead = f'the table under [notes], or speclint.toml without "{name}" in leave_out'
        return Complaint(where, says, read, instead)
    if reads := [table.on.kind for table in kinds.tables_of(name)]:
        says = f"the family {name} reads a table [{name}] of a {' or a '.join(reads)}, not of a {kind.kind}"
        return Complaint(where, says, read, "the table where it belongs, or under [notes]")
    if nearest(name, _fields_at(kind, ())):
        return None
    says = f"[{name}] is no table of a {kind.kind}, and no family that is loaded reads it"
    return Complaint(where, says, read, "the family installed that reads it, or the table under [notes]")


def complaint_of(error: Any, kind: type[SpecTable], content: Table, file: str) -> Complaint:
    """One error of a model as a complaint; ``content`` is the table that was read."""
    path = tuple(step for step in error["loc"] if step != "[key]") + error.get("ctx", {}).get("within", ())
    where = _place_of(content, path, file)
    if error["type"] == "refused":
        return Complaint(where, error["ctx"]["said"], _quoted(_under(error)), error["ctx"]["instead"])
    if error["type"] == "extra_forbidden":
        return _unknown_key(where, path, kind, error["input"])
    if error["type"] == "literal_error":
        choices = [choice.strip(" '") for choice in error["ctx"]["expected"].replace(" or ", ",").split(",")]
        return Complaint(where, f'"{path[-1]}" is not a name used here', "", one_of(str(path[-1]), choices))
    if error["type"] in ("model_type", "dict_type", "model_attributes_type"):
        return Complaint(
            where, "a table is expected here", _quoted(error["input"]), f"[{dotted(path)}] and its keys"
        )
    if error["type"] in ("tuple_type", "list_type"):
        return Complaint(where, "an array is expected here", _quoted(error["input"]), f"{path[-1]} = [ … ]")
    return Complaint(where, str(error["msg"]), _quoted(error["input"]))


def _under(error: Any) -> object:
    """What was read where an error is: the input, or what stands within it at the place that the error names."""
    value: Any = error["input"]
    for step in error["ctx"].get("within", ()):
        value = value[step]
    return value


def _unknown_key(where: Location, path: KeyPath, kind: type[SpecTable], value: object) -> Complaint:
    known = _fields_at(kind, path[:-1])
    near = nearest(str(path[-1]), known)
    if near:
        return Complaint(
            where, f'"{path[-1]}" is no key of {_described(kind, path)}', _quoted(value), f'"{near}"'
        )
    instead = "one of " + ", ".join(sorted(known)) + "; data of your own goes under [notes]"
    return Complaint(where, f'"{path[-1]}" is no key of {_described(kind, path)}', _quoted(value), instead)


def _described(kind: type[SpecTable], path: KeyPath) -> str:
    return f"[{dotted(path[:-1])}]" if len(path) > 1 else f"a {kind.kind}"


def _fields_at(model: type[BaseModel], path: KeyPath) -> list[str]:
    for step in path:
        inner = _model_of(model.model_fields[step].annotation) if step in model.model_fields else model
        model = inner or model
    return [name for name in model.model_fields if name != "id"] + ["id", "kind"] * issubclass(model, Spec)


def _model_of(annotation: Any) -> type[BaseModel] | None:
    from typing import get_args

    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    found = (_model_of(argument) for argument in get_args(annotation))
    return next((model for model in found if model), None)


def _place_of(content: Table, path: KeyPath, file: str) -> Location:
    value: Any = content
    where = content.where
    for step in path:
        try:
            value = value[step]
        except (KeyError, IndexError, TypeError):
            break
        where = getattr(value, "where", where)
    return Location(file, where.line, dotted(path))


def _quoted(value: object) -> str:
    if isinstance(value, Leaf):
        value = value.raw
    if isinstance(value, str):
        return f'"{shortened(value)}"'
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Mapping):
        return "a table"
    return "an array" if isinstance(value, list) else str(value)
