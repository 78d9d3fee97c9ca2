"""Code beside the families that they import: modules of the same works that are installed from a folder of their own.

What lies among the installed packages is known by its version. Of what does not, such as a module beside a family that
is being written, nothing else tells that it has changed.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from importlib.util import find_spec
from pathlib import PurePath

#: Where installers put packages.
_INSTALLED = frozenset({"site-packages", "dist-packages"})
_IMPORT = re.compile(
    r"^[ \t]*(?:import[ \t]+(?P<names>[^#\n;]+)|from[ \t]+(?P<of>\w+)[\w.]*[ \t]+import\b)", re.M
)
_NAME = re.compile(r"\w+")

#: Every file of a package, by its place in the package, with its path.
Files = Callable[[str], Iterable[tuple[str, str]]]


def code_beside(packages: Sequence[str], files_of: Files) -> tuple[str, ...]:
    """The modules that some packages import by name, and those import in turn, where they lie among no installed ones.

    :raises LookupError: for a package that lies in no file, or in one that cannot be read.
    """
    found, ahead = set(packages), list(packages)
    while ahead:
        for name in sorted(_imported_by(ahead.pop(), files_of) - found):
            if _lies_beside(name):
                found.add(name)
                ahead.append(name)
    return tuple(sorted(found.difference(packages)))


def _imported_by(package: str, files_of: Files) -> set[str]:
    """The first names of what the modules of a package import, and perhaps of words that read like it."""
    found: set[str] = set()
    for called, path in files_of(package):
        if called.endswith(".py"):
            try:
                with open(path, encoding="utf-8", errors="replace") as opened:
                    text = opened.read()
            except OSError as problem:
                raise LookupError(f"{path}: {problem.strerror or problem}") from problem
            found.update(_names(text))
    return found


def _names(text: str) -> Iterator[str]:
    for one in _IMPORT.finditer(text):
        if one["of"]:
            yield one["of"]
        else:
            firsts = (_NAME.match(name.strip()) for name in one["names"].split(","))
            yield from (first[0] for first in firsts if first)


def _lies_beside(name: str) -> bool:
    """Whether a module lies in a folder that no installer keeps; the standard library is known by its Python."""
    if name in sys.stdlib_module_names or name == "speclint":
        return False
    try:
        spec = find_spec(name)
    except (ImportError, ValueError):  # ValueError: made in memory
        return False
    if spec is None:
        return False
    places = [*(spec.submodule_search_locations or ()), *([spec.origin] if spec.origin else [])]
    return any(_INSTALLED.isdisjoint(PurePath(place).parts) for place in places)
