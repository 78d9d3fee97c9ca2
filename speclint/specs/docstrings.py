"""What each key of a kind means, read from the class docstring where the kinds write it under ``Fields:``."""

from __future__ import annotations

import inspect
import re

from speclint.specs.old_keys import OLD, old_keys_of
from speclint.specs.spec import SpecTable

_ENTRY = re.compile(r"^\s*(?P<key>[a-z_][a-z0-9_]*): (?P<meaning>.+)$")

#: Keys that every spec or component has.
_COMMON = {
    "id": "the word other specs link to; the file's name without .toml where it is left out",
    "like": "the id of another spec of this kind: what is not stated here is as it is stated there",
    "mirror_of": "the same of a part of the other hand: angles, positions across and hands are mirrored",
    "each": "names for each of which the file states one part: the name stands wherever it writes {each}; or a table "
    "of such lists, each with the word that stands in braces for its names",
    "title": "of the drawing",
    "drawing": "its number",
    "revision": "of the drawing",
    "prepared_by": "who designed it",
    "checked_by": "who checked it; for a safety part another person",
    "notes": "data of your own, which no rule reads",
    "material": "a name of the handbook's materials or of the repository's own",
    "duty": "the load cases it sees; inherited through links where it is left out",
    "hand": "the side of the engine for which it is made, where the other side has another",
    "safety_part": "true where its failure can hurt someone",
    "pressure_part": "true where it holds pressure",
    "design_pressure": "for which it is designed",
    "design_temperature": "for which it is designed",
    "test_pressure": "of the hydraulic test",
    "inspection_document": "type by EN 10204",
    "examination": "non-destructive examination required",
    "competent_body": "the person or body that the local code requires",
    "supplied_as": "made to drawing or bought",
    "inspection_points": "where the inspection plan stops the work or calls the inspector",
    "procedures": "written instructions for first steaming",
    "welding": "whether it is welded, and what keeps the welds from cracking",
    "lubrication": "how its rubbing surface is oiled",
    "surface": "treatment of its rubbing surface; left out where it has none",
    "surroundings": "the medium where it touches its neighbour",
}


def summary(table: type[SpecTable]) -> str:
    """What a table is, in its first paragraph."""
    text = inspect.cleandoc(table.__doc__ or "").split("\n\n")[0]
    return " ".join(text.split("Fields:")[0].replace("``", '"').split())


def prose(table: type[SpecTable]) -> tuple[str, ...]:
    """What is said of a table, paragraph by paragraph, without its keys."""
    text = inspect.cleandoc(table.__doc__ or "").partition("Fields:")[0].replace("``", '"')
    return tuple(" ".join(one.split()) for one in text.split("\n\n") if one.strip())


def meanings(table: type[SpecTable]) -> dict[str, str]:
    """The meaning of each documented key; of an old one with what is written now."""
    found = dict(_COMMON)
    for kind in reversed(table.__mro__):
        if isinstance(kind, type) and issubclass(kind, SpecTable):
            found.update(_documented(inspect.cleandoc(kind.__doc__ or "")))
    old = old_keys_of(table)
    return {
        name: f"{found[name].rstrip('.')}{f' ({OLD}: write {old[name]})' if name in old else ''}"
        for name in table.model_fields
        if name in found
    }


def _documented(text: str) -> dict[str, str]:
    found: dict[str, str] = {}
    key = ""
    for line in text.partition("Fields:")[2].splitlines():
        entry = _ENTRY.match(line)
        if entry:
            key = entry["key"]
            found[key] = entry["meaning"].strip()
        elif key and line.strip():
            found[key] += f" {line.strip()}"
        else:
            key = ""
    return found
