"""What a check wrote, kept whole: it is written again while no file that it read, no word and no code has changed.

A run that finds its output kept imports next to nothing. Of each TOML file of the repository, and of each file of a
drawing that was read, the content counts; of the code, how its files stand; of what is installed, when it was changed.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Iterable, Mapping, Sequence
from hashlib import blake2b
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from speclint.checking.code_digest import how_code_stands
from speclint.checking.installed import distributions_found
from speclint.checking.kept_folder import KeptFolder
from speclint.checking.toml_state import TomlState
from speclint.repository import root_above

if TYPE_CHECKING:
    from speclint.repository import FileState

#: Bytes of output that are kept: a sixty-fourth of what the folder may hold.
_MOST = 4 * 2**20
_BETWEEN, _THEN = "\0", "\0\0"  # no name of a file or of a package holds these
_ANY = "utf-8", "surrogatepass"
#: How an output and what it rests on are laid out: another number for another layout.
_LAYOUT = 2

#: What is asked by words beside the paths: for what it is asked again once the run has ended.
Words = Callable[[], Sequence[object]]


class RestedOn(NamedTuple):
    """What an output rests on beside the TOML files of the repository.

    ``drawings`` are the files of drawings that were read, as they were then; ``named`` the files that the settings
    name as theirs, such as the register; ``packages`` those whose code made the output.
    """

    drawings: Mapping[str, FileState]
    named: Sequence[str]
    packages: Sequence[str]


class KeptRun:
    """The output of a command by its words, the paths that it was given, and all that it read."""

    def __init__(self, folder: KeptFolder, root: Path, paths: Sequence[Path], words: Words) -> None:
        self._folder, self._root, self._paths, self._words = folder, root, paths, words
        self._command, self._files = self._command_now(), TomlState(root)
        self._installed = sorted(distributions_found())  # before any family is loaded

    @classmethod
    def of(cls, folder: KeptFolder, paths: Sequence[Path], words: Words) -> KeptRun | None:
        """The run of some words on some paths; None where these do not lie in one repository, or nothing is kept."""
        if folder.why_not or not all(map(os.path.exists, paths)):
            return None
        try:
            roots = {root_above(path) for path in paths}
            root = roots.pop() if len(roots) == 1 else None
            return cls(folder, root, paths, words) if root is not None else None
        except OSError:  # the current folder was removed, or a path by now
            return None

    def written(self) -> tuple[int, str] | None:
        """The exit code and the output of an earlier run that still hold; None where there are none."""
        rested = self._folder.read(self._command)
        if rested is None:
            return None
        packages, named, drawings = (
            [name for name in names.split(_BETWEEN) if name] for names in rested.decode(*_ANY).split(_THEN)
        )
        if not self._are_seen(named):
            return None
        code = how_code_stands(packages)
        body = self._folder.read(self._name(self._drawings_now(drawings), code[0])) if code else None
        if body is None:
            return None
        exit_code, _, text = body.partition(b"\n")
        return int(exit_code), text.decode(*_ANY)

    def keep(self, exit_code: int, text: str, rested_on: RestedOn) -> None:
        """Keep the output, where the words, the specs and the code stand as they did when the run began."""
        drawings, named, packages = rested_on
        body, code = b"%d\n" % exit_code + text.encode(*_ANY), how_code_stands(packages)
        if len(body) > _MOST or code is None or not code[1] or not self._stands_as_it_did(named):
            return
        rested = _THEN.join(_BETWEEN.join(names) for names in (packages, sorted(named), sorted(drawings)))
        self._folder.write(self._command, rested.encode(*_ANY))
        self._folder.write(self._name(drawings, code[0]), body)
        self._folder.tidy()

    def _stands_as_it_did(self, named: Iterable[str]) -> bool:
        """Whether nothing was written since the run began: not even back to what it was, as it may have been read."""
        try:
            command = self._command_now()
        except OSError:
            return False
        return command == self._command and self._files.still_stand() and self._are_seen(named)

    def _are_seen(self, named: Iterable[str]) -> bool:
        """Whether each of some files is one of those whose content counts, or is not there."""
        return all(file in self._files or not os.path.lexists(f"{self._root}/{file}") for file in named)

    def _name(self, drawings: Mapping[str, FileState], code: str) -> str:
        read = [(file, one.sha256, one.fault) for file, one in sorted(drawings.items())]
        return _digest("run", self._command, self._files.digest, self._installed, read, code)

    def _command_now(self) -> str:
        """What is asked, where and on which day."""
        places = [os.path.realpath(path) for path in self._paths]
        day = time.strftime("%Y-%m-%d")
        return _digest("command", _LAYOUT, os.getcwd(), str(self._root), places, self._words(), day)

    def _drawings_now(self, files: Sequence[str]) -> dict[str, FileState]:
        if not files:
            return {}
        from speclint.repository import DrawingFiles, InFolder  # which takes as long as all the rest

        drawings = DrawingFiles(InFolder(self._root))
        return {file: drawings.state(file) for file in files}


def _digest(*parts: object) -> str:
    return blake2b(repr(parts).encode(), digest_size=20).hexdigest()
