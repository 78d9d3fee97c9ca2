"""DEVELOPERS.md: the code and the tables that it prints, renewed by ``python -m tests.developers``, then read."""

from __future__ import annotations

import importlib
import re
from pathlib import Path

from speclint.commands.new_family import family_files

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "DEVELOPERS.md"
#: The family that the page writes with ``speclint families --new`` and walks through.
NAME = "pipework"
_CODE = re.compile(
    r"(^`(speclint_pipework/[\w/]+\.py)`[^\n]*\n(?:[^\n`]+\n)*\n```python\n)(.*?)(^```)", re.M | re.S
)
_ROW = re.compile(r"^\| `((?!tests|example_specs)(?:handbook\.)?[a-z_]+)/` \| .* \|$", re.MULTILINE)
_NAMES = re.compile(r"^(\| `(speclint|speclint\.testing)` \| )(.*)( \|)$", re.MULTILINE)


def printed_files(page: str) -> dict[str, str]:
    """Each file of the family that the page prints as a whole, by its place."""
    return {place: code for _, place, code, _ in _CODE.findall(page)}


def said_of(package: str) -> str:
    """What lives in a package: the first line of its docstring."""
    return (importlib.import_module(f"speclint.{package}").__doc__ or "").splitlines()[0]


def names_of(package: str) -> str:
    """The public names of a package, for a cell of a table."""
    return ", ".join(
        f"`{name}`"
        for name in sorted(importlib.import_module(package).__all__, key=lambda name: (name.lower(), name))
    )


def renewed(page: str) -> str:
    """The page with the files as the command writes them and the packages as they stand."""
    files = family_files(NAME)
    page = _CODE.sub(lambda found: found[1] + files[found[2]] + found[4], page)
    page = _ROW.sub(lambda found: f"| `{found[1]}/` | {said_of(found[1])} |", page)
    return _NAMES.sub(lambda found: f"{found[1]}{names_of(found[2])}{found[4]}", page)


if __name__ == "__main__":
    PAGE.write_text(renewed(PAGE.read_text(encoding="utf-8")), encoding="utf-8", newline="\n")
