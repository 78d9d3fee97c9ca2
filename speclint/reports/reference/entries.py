"""What the search of the reference finds: one entry for each thing that has a place."""

from __future__ import annotations

import json
from collections.abc import Iterable

from msgspec import Struct

#: Words of an entry that the search shows beneath its name; it looks through all of them.
_SHOWN = 240


class Entry(Struct, frozen=True):
    """Something with a place: its name, what sort of thing it is, where it stands, and what is said of it."""

    name: str
    sort: str
    place: str
    says: str = ""


def index_script(entries: Iterable[Entry], mark: str) -> str:
    """The entries as a script that hands them to the pages: so they can be read from a file without a server."""
    files: dict[str, int] = {}
    sorts: dict[str, int] = {}
    rows = []
    for one in entries:
        file, _, anchor = one.place.partition("#")
        rows.append(
            [
                one.name,
                sorts.setdefault(one.sort, len(sorts)),
                files.setdefault(file, len(files)),
                0 if not anchor else "" if anchor == one.name else anchor,
                one.says[:_SHOWN],
            ]
        )
    data = {"sorts": list(sorts), "files": list(files), "entries": rows}
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return f"/* {mark} */\nglobalThis.referenceIndex = {text};\n"
