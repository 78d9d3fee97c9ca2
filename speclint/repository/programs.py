"""Programs that speclint runs, git and ssh-keygen: found in the folders of the user's path and nowhere else."""

from __future__ import annotations

import os
from pathlib import Path


def find_program(name: str) -> str | None:
    """The file of a program in the folders of ``PATH``; None where no folder has it.

    A folder that ``PATH`` gives by a relative name, or by none, depends on the current folder, which may be a design
    repository: it is passed over. So is the current folder itself, which some systems search before any other.
    """
    for folder in os.environ.get("PATH", os.defpath).split(os.pathsep):
        if not os.path.isabs(folder):
            continue
        for file in (Path(folder, name), Path(folder, f"{name}.exe")):
            if file.is_file() and os.access(file, os.X_OK):
                return str(file)
    return None
