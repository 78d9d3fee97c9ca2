"""The public face of a package: the names that its ``__init__.pyi`` lists, each imported when it is first asked for."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import lazy_loader  # type: ignore[import-untyped]

Face = tuple[Callable[[str], Any], Callable[[], list[str]], list[str]]


def face_of(package: str, file: str) -> Face:
    """``__getattr__``, ``__dir__`` and ``__all__`` of a package, from the list beside its file.

    The list is read as it is always written, ``from .module import (name as name, …)``: as Python it would be read
    three times slower, at every start.
    """
    names: dict[str, list[str]] = {}
    with open(f"{file}i", encoding="utf-8") as listed:
        for part in listed.read().split("from .")[1:]:
            module, _, rest = part.partition(" import ")
            names.setdefault(module, []).extend(
                one.partition(" as ")[0].strip(" (\n") for one in rest.split(",") if " as " in one
            )
    face: Face = lazy_loader.attach(package, names.pop("", []), names)
    return face
