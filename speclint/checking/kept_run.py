"""What a check wrote, kept whole: it is written again while no file that it read, no word and no code has changed.

A run that finds its output kept imports next to nothing. Of each TOML file of the repository, and of each file of a
drawing that was read, the content counts; of the code, how its files stand, as for every result that is kept.
"""

from __future__ import annotations

import os
import time
from collections.abc import Iterable, Mapping, Sequence
from hashlib import blake2b
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.checking.code_digest import how_code_stands
from speclint.checking.kept_folder import KeptFolder
from speclint.checking.toml_state import TomlState
from speclint.repository import root_above

if TYPE_CHECKING:
    from speclint.repository import FileState

#: Bytes of output that are kept: a sixty-fourth of what the folder may hold.
_MOST = 4 * 2**20
_BETWEEN, _THEN = "\0", "\0\0"  # no name of a file or of a package holds these


class KeptRun:
    """The output of a command by its words, the paths that it was given, and all that it read."""

    def __init__(self, folder: KeptFolder, root: Path, words: Sequence[object]) -> None:
        self._folder, self._root, self._words = folder, root, words
        self._command, self._specs = self._command_now(), TomlState(root)

    @classmethod
    def of(cls, folder: KeptFolder, paths: Sequence[Path], words: Sequence[object]) -> KeptRun | None:
        """The run of some words on some paths; None where these do not lie in one repository, or nothing is kept."""
        roots = {root_above(path) if os.path.lexists(path) else None for path in paths}
        root = roots.pop() if len(roots) == 1 else None
        if root is None or folder.why_not:
            return None
        return cls(folder, root, (*words, [os.path.realpath(path) for path in paths]))

    def written(self) -> tuple[int, str] | None:
        """The exit code and the output of an earlier run that still hold; None where there are none."""
        rested = self._folder.read(self._command)
        if rested is None:
            return None
        packages, _, drawings = rested.decode(*_ANY).partition(_THEN)
        code = how_code_stands(packages.split(_BETWEEN))
        read = self._drawings_now(drawings.split(_BETWEEN))
        body = self._folder.read(self._name(read, code[0])) if code else None
        if body is None:
            return None
        exit_code, _, text = body.partition(b"\n")
        return int(exit_code), text.decode(*_ANY)

    def keep(
        self, exit_code: int, text: str, drawings: Mapping[str, FileState], packages: Sequence[str]
    ) -> None:
        """Keep the output, where the specs and the code stand as they did when the run began.

        :param drawings: the files of drawings that were read, as they were then
        :param packages: those whose code made the output
        """
        body, code = b"%d\n" % exit_code + text.encode(*_ANY), how_code_stands(packages)
        if len(body) > _MOST or code is None or not code[1]:
            return
        if self._command_now() != self._command or not self._specs.still_holds():
            return
        rested = _THEN.join((_BETWEEN.join(packages), _BETWEEN.join(sorted(drawings))))
        self._folder.write(self._command, rested.encode(*_ANY))
        self._folder.write(self._name(drawings, code[0]), body)
        self._folder.tidy()

    def _name(self, drawings: Mapping[str, FileState], code: str) -> str:
        read = [(file, one.sha256, one.fault) for file, one in sorted(drawings.items())]
        return _digest("run", self._command, self._specs.digest, read, code)

    def _command_now(self) -> str:
        """What is asked, where and on which day."""
        return _digest("command", os.getcwd(), str(self._root), self._words, time.strftime("%Y-%m-%d"))

    def _drawings_now(self, files: Iterable[str]) -> dict[str, FileState]:
        named = [file for file in files if file]
        if not named:
            return {}
        from speclint.repository import DrawingFiles, InFolder  # which takes as long as all the rest

        drawings = DrawingFiles(InFolder(self._root))
        return {file: drawings.state(file) for file in named}


_ANY = "utf-8", "surrogatepass"


def _digest(*parts: object) -> str:
    return blake2b(repr(parts).encode(), digest_size=20).hexdigest()
