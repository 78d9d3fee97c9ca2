"""What is installed beside speclint and could make a result another: all but what only its extras need."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from hashlib import blake2b

from speclint.checking.kept_folder import KeptFolder

#: From what each distribution needs to what that is installed as: names in the common form of PEP 503.
Needs = Mapping[str, Iterable[str]]

_FOLDERS = (".dist-info", ".egg-info")
#: The folder itself, and its files that say which families it has and what it needs: some tools write over these where
#: they are, which leaves the folder as it was.
_DECLARING = ("", "/METADATA", "/PKG-INFO", "/entry_points.txt", "/requires.txt")


def installed_beside(kept: KeptFolder | None = None) -> list[str]:
    """Every distribution that a check could use, each with its version, as its folder is named.

    What is there for an extra of speclint alone (to test it, to write a pack) is left out: no check uses it, and a
    design need not be checked again once it is installed. Of a distribution that needs what it does not declare nothing
    can be known: all that is installed for another reason counts. With a folder to keep it in, what each needs is read
    again where another is installed.
    """
    found = dict(distributions_found())
    listing = "".join(f"{name}\0{stands}\0" for name, stands in sorted(found.items()))
    key = blake2b(f"installed\0{listing}".encode("utf-8", "backslashreplace"), digest_size=20).hexdigest()
    body = kept.read(key) if kept else None
    if body is None:
        needs, extras = _declared()
        body = "\0".join(sorted(not_for_extras(found, needs, extras))).encode("utf-8", "backslashreplace")
        if kept:
            kept.write(key, body)
    return body.decode("utf-8", "backslashreplace").split("\0")


def not_for_extras(folders: Iterable[str], needs: Needs, extras: Iterable[str]) -> list[str]:
    """The folders of distributions but for those which nothing needs but an extra.

    :param folders: one for each distribution: "pint-0.25.dist-info"
    :param needs: what each distribution needs, without its extras
    :param extras: what the extras need
    """
    from packaging.utils import canonicalize_name

    of_extras = _reached(extras, needs)
    called = {folder: canonicalize_name(folder.partition("-")[0]) for folder in folders}
    wanted = _reached((name for name in called.values() if name not in of_extras), needs)
    return [folder for folder, name in called.items() if name in wanted]


def _reached(names: Iterable[str], needs: Needs) -> set[str]:
    """Some distributions and all that they need, by way of others too."""
    found: set[str] = set()
    ahead = list(names)
    while ahead:
        name = ahead.pop()
        if name not in found:
            found.add(name)
            ahead += needs.get(name, ())
    return found


def _declared() -> tuple[dict[str, list[str]], set[str]]:
    """What every installed distribution needs, and what the extras of speclint add to that."""
    from importlib.metadata import distributions

    from packaging.utils import canonicalize_name

    needs: dict[str, list[str]] = {}
    extras: set[str] = set()
    for one in distributions():
        name = canonicalize_name(one.metadata["Name"] or "")
        needs[name] = list(_needed(one.requires or (), ""))
        if name == "speclint":
            for extra in one.metadata.get_all("Provides-Extra") or ():
                extras.update(_needed(one.requires or (), extra))
    return needs, extras - {"speclint"} - set(needs.get("speclint", ()))


def _needed(requirements: Iterable[str], extra: str) -> Iterator[str]:
    """What is needed with an extra, or with none."""
    from packaging.requirements import InvalidRequirement, Requirement
    from packaging.utils import canonicalize_name

    for text in requirements:
        try:
            read = Requirement(text)
        except InvalidRequirement:  # of an old distribution: by its name alone
            yield canonicalize_name(re.match(r"[\w.-]*", text.strip()).group())  # type: ignore[union-attr]
            continue
        if read.marker is None or read.marker.evaluate({"extra": extra}):
            yield canonicalize_name(read.name)


def distributions_found() -> Iterator[tuple[str, tuple[int, ...]]]:
    """The folder of each distribution that Python could import, and when it and what it declares were changed."""
    for place in sys.path:
        with suppress(OSError), os.scandir(place or ".") as entries:  # one that is not there, or an archive
            for one in entries:
                if one.name.endswith(_FOLDERS):
                    yield one.name, tuple(_changed(f"{one.path}{name}") for name in _DECLARING)


def _changed(file: str) -> int:
    """When a file was changed; 0 where there is none."""
    try:
        return os.stat(file).st_mtime_ns
    except OSError:
        return 0
