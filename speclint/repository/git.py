"""Git's reading commands, run so that nothing which the repository holds or configures is a program that is run.

A repository brings a configuration, attributes and hooks of its own, and whoever made it may have written anything
there. Only commands that read objects and the index are used, none of which passes content through a filter; what the
configuration could still have them run is overruled on the command line, which stands above every file.
"""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterator, Mapping
from pathlib import Path

from speclint.errors import RevisionError
from speclint.repository.programs import find_program
from speclint.repository.regular_files import BLOCK

#: What a repository could configure to be run or fetched, overruled. After git-config(1).
_OVERRULED: Mapping[str, str] = {
    "core.quotePath": "false",  # names are read between NULs, as they are
    "core.fsmonitor": "",  # a program that is asked which files changed
    "core.hooksPath": os.devnull,
    "core.pager": "cat",
    "core.editor": "false",
    "core.askPass": "",
    "core.sshCommand": "false",
    "core.gitProxy": "",
    "credential.helper": "",
    "diff.external": "",
    "gpg.program": "false",
    "protocol.allow": "never",  # an object that is not there is told, and never fetched by a configured transport
    "safe.bareRepository": "explicit",  # the design may hold folders that look like repositories
    "submodule.recurse": "false",
    "maintenance.auto": "false",
    "gc.auto": "0",
}
#: What is kept of the variables that begin with GIT_: the index of a commit under way, the objects of a push under way,
#: and where the user's own configuration is. The others steer a git command of the user's, or name programs.
_KEPT = (
    "GIT_INDEX_FILE",
    "GIT_OBJECT_DIRECTORY",
    "GIT_ALTERNATE_OBJECT_DIRECTORIES",
    "GIT_QUARANTINE_PATH",
    "GIT_CEILING_DIRECTORIES",
    "GIT_DISCOVERY_ACROSS_FILESYSTEM",
    "GIT_EXEC_PATH",
)
_SET: Mapping[str, str] = {
    "GIT_ALLOW_PROTOCOL": "",
    "GIT_NO_LAZY_FETCH": "1",
    "GIT_NO_REPLACE_OBJECTS": "1",
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
    "LC_ALL": "C",
}


def git(root: Path, *words: str, given: bytes = b"") -> bytes:
    """What a command answers.

    :raises RevisionError: where git is absent, or refuses.
    """
    done = run(root, *words, given=given)
    if done.returncode:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        if said and said[-1].startswith("fatal: not a git repository"):
            raise RevisionError(
                f"{root}: this is not a git repository: it has no revisions, and nothing is staged"
            )
        raise RevisionError(f"{root}: git {words[0]}: {said[-1] if said else 'it gave no reason'}")
    return done.stdout


def run(root: Path, *words: str, given: bytes = b"") -> subprocess.CompletedProcess[bytes]:
    """One command in a folder, whatever it answers.

    :raises RevisionError: where git is absent.
    """
    command = _command(*words)
    try:
        return subprocess.run(
            command, cwd=root, input=given, capture_output=True, env=environment(), check=False
        )
    except OSError as problem:
        raise RevisionError(f"git could not be run: {problem}") from problem


def stream(root: Path, *words: str) -> Iterator[bytes]:
    """What a command answers, block by block, for answers of any size.

    :raises RevisionError: where git is absent, or refuses.
    """
    try:
        running = subprocess.Popen(
            _command(*words), cwd=root, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, env=environment()
        )
    except OSError as problem:
        raise RevisionError(f"git could not be run: {problem}") from problem
    with running:
        assert running.stdout is not None  # as it is piped
        while block := running.stdout.read(BLOCK):
            yield block
    if running.returncode:
        raise RevisionError(f"{root}: git {words[0]}: it could not be read")


def _command(*words: str) -> list[str]:
    program = find_program("git")
    if program is None:
        raise RevisionError("git is not on the path: revisions and what is staged need it")
    overruled = [word for name, value in _OVERRULED.items() for word in ("-c", f"{name}={value}")]
    return [program, "--no-pager", *overruled, *words]


def environment() -> dict[str, str]:
    """The environment in which git finds the repository by itself, asks nothing and fetches nothing."""
    kept = dict(_kept(os.environ))
    if index := kept.get("GIT_INDEX_FILE"):  # a commit of some files only has an index of its own
        kept["GIT_INDEX_FILE"] = os.path.abspath(index)
    return {**kept, **_SET}


def _kept(variables: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    for name, value in variables.items():
        own = not name.startswith("GIT_") or name.startswith("GIT_CONFIG") or name in _KEPT
        if own and name not in ("SSH_ASKPASS", "PAGER"):
            yield name, value
