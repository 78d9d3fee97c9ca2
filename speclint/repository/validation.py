"""What is wrong with the content of a file: each error of a model as a complaint with its place and a way out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pydantic import BaseModel

from speclint.errors import Complaint, Location, Path as KeyPath, nearest, one_of, shortened
from speclint.repository.toml_tables import dotted
from speclint.specs import Catalogue, Leaf, Spec, SpecTable, Table


def of_no_family(
    error: Any, kind: type[Spec], content: Table, file: str, kinds: Mapping[str, type[Spec]]
) -> Complaint | None:
    """What is said of a table that is named as a family would name it: which family reads it, or that none does."""
    name = str(error["loc"][0])
    unread = error["type"] == "extra_forbidden" and len(error["loc"]) == 1
    if not unread or not isinstance(error["input"], Mapping) or not isinstance(kinds, Catalogue):
        return None
    where, read = _place_of(content, (name,), file), quoted(error["input"])
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
        return Complaint(where, error["ctx"]["said"], quoted(_under(error)), error["ctx"]["instead"])
    if error["type"] == "extra_forbidden":
        return _unknown_key(where, path, kind, error["input"])
    if error["type"] == "literal_error":
        choices = [choice.strip(" '") for choice in error["ctx"]["expected"].replace(" or ", ",").split(",")]
        return Complaint(where, f'"{path[-1]}" is not a name used here', "", one_of(str(path[-1]), choices))
    if error["type"] in ("model_type", "dict_type", "model_attributes_type"):
        return Complaint(
            where, "a table is expected here", quoted(error["input"]), f"[{dotted(path)}] and its keys"
        )
    if error["type"] in ("tuple_type", "list_type"):
        return Complaint(where, "an array is expected here", quoted(error["input"]), f"{path[-1]} = [ … ]")
    return Complaint(where, str(error["msg"]), quoted(error["input"]))


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
            where, f'"{path[-1]}" is no key of {_described(kind, path)}', quoted(value), f'"{near}"'
        )
    instead = "one of " + ", ".join(sorted(known)) + "; data of your own goes under [notes]"
    return Complaint(where, f'"{path[-1]}" is no key of {_described(kind, path)}', quoted(value), instead)


def _described(kind: type[SpecTable], path: KeyPath) -> str:
    if len(path) > 1:
        return f"[{dotted(path[:-1])}]"
    return f"{'the' if kind.kind.endswith('settings') else 'a'} {kind.kind}"


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
    return Location(where.file or file, where.line, dotted(path))


def quoted(value: object) -> str:
    if isinstance(value, Leaf):
        value = value.raw
    if isinstance(value, str):
        return f'"{shortened(value)}"'
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Mapping):
        return "a table"
    return "an array" if isinstance(value, list) else str(value)
