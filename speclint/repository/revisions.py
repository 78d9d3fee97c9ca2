"""A design repository as git has it: a revision, or the index, read without touching the work tree.

Only git's own reading commands are run, with lists of arguments and never through a shell; nothing is
refreshed, checked out or written in the repository. Paths are relative to the root of the design repository,
which may be a folder inside a git work tree.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path, PurePosixPath

from msgspec import Struct

from speclint.errors import OutputError, RevisionError
from speclint.repository.git import git, run, stream
from speclint.repository.regular_files import LARGEST_REGISTER
from speclint.repository.settings import Settings, load_settings
from speclint.repository.toml_files import is_toml

_FILE, _LINK = "100", "120000"  # modes of git: a plain file begins with 100, a symbolic link is 120000
_PLAIN = ("--no-ext-diff", "--no-textconv", "--ignore-submodules=dirty")


class Blob(Struct, frozen=True):
    """One file as git has it: its mode and the name of its content."""

    mode: str
    name: str


class Snapshot(Struct, frozen=True):
    """The files of a design repository in one state that git has; ``called`` names the state in messages."""

    root: Path
    called: str
    blobs: Mapping[str, Blob]

    def read(self, file: str) -> bytes | None:
        """The content of one file; None where the state has no such file."""
        if file not in self.blobs:
            return None
        return next(iter(self._contents([file])))

    def is_link(self, file: str) -> bool:
        """Whether a file is a symbolic link."""
        return self.blobs[file].mode == _LINK

    def blocks_of(self, file: str) -> Iterator[bytes]:
        """The content of one of the files, of any size, block by block.

        :raises RevisionError: for a symbolic link and whatever else is no plain file.
        """
        self._refuse_link(file)
        return stream(self.root, "cat-file", "blob", self.blobs[file].name)

    def write_to(self, folder: Path, wanted: Callable[[str], bool]) -> None:
        """Write the wanted files into a folder outside of the repository.

        :raises RevisionError: for a wanted file that is a symbolic link, or whose name leads out of the folder.
        :raises OutputError: where the folder has no room for them.
        """
        files = [file for file in self.blobs if wanted(file)]
        for file, content in zip(files, self._contents(files), strict=True):
            path = folder / PurePosixPath(file)
            if not path.resolve().is_relative_to(folder.resolve()):
                raise RevisionError(f"{file}: this name leads out of the repository")
            try:
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_bytes(content)
            except OSError as problem:
                raise OutputError(f"{path}: cannot be written: {problem.strerror or problem}") from problem

    def _contents(self, files: Sequence[str]) -> Iterator[bytes]:
        for file in files:
            self._refuse_link(file)
        asked = "".join(f"{self.blobs[file].name}\n" for file in files).encode("ascii")
        self._refuse_large(files, asked)
        answer = git(self.root, "cat-file", "--batch", given=asked) if files else b""
        at = 0
        for file in files:
            end = answer.index(b"\n", at)
            head = answer[at:end].split()
            if len(head) != 3 or head[1] != b"blob":
                raise RevisionError(f"{file}: git does not have its content {self.called}")
            size = int(head[2])
            yield answer[end + 1 : end + 1 + size]
            at = end + 1 + size + 1  # the content is followed by a line end

    def _refuse_link(self, file: str) -> None:
        if not self.blobs[file].mode.startswith(_FILE):
            what = "a symbolic link" if self.blobs[file].mode == _LINK else "no plain file"
            raise RevisionError(f"{file}: {what} {self.called}; put the file itself in its place")

    def _refuse_large(self, files: Sequence[str], asked: bytes) -> None:
        """Refuse before anything is read what would fill the memory; the bound of each file is kept when it is read."""
        heads = git(self.root, "cat-file", "--batch-check", given=asked).splitlines() if files else []
        for file, head in zip(files, heads, strict=True):
            size = head.split()[-1]
            if size.isdigit() and int(size) > LARGEST_REGISTER:
                says = f"it has {int(size)} bytes {self.called}, and at most {LARGEST_REGISTER} are read"
                raise RevisionError(f"{file}: {says}")


def staged(root: Path) -> Snapshot:
    """What is staged: what a commit made now would hold.

    :raises RevisionError: where there is no git repository, or a merge is not finished.
    """
    blobs: dict[str, Blob] = {}
    for line in _lines(git(root, "ls-files", "--stage", "-z")):
        about, file = line.split("\t", 1)
        mode, name, stage = about.split()
        if stage != "0":
            raise RevisionError(f"{file}: a merge of this file is not finished")
        blobs[file] = Blob(mode, name)
    for file in _differing(root, "--ita-visible-in-index") - _differing(root, "--ita-invisible-in-index"):
        blobs.pop(file, None)  # marked to be added later, with nothing of it staged
    return Snapshot(root, "as staged", blobs)


def at_revision(root: Path, revision: str) -> Snapshot:
    """The state of one revision: a branch, a tag, a commit.

    :raises RevisionError: where there is no such revision, or no git repository.
    """
    found = commit_of(root, revision)
    if found is None:
        raise RevisionError(f"{revision}: git has no such revision")
    blobs: dict[str, Blob] = {}
    for line in _lines(git(root, "ls-tree", "-r", "-z", found)):
        about, file = line.split("\t", 1)
        mode, _, name = about.split()
        blobs[file] = Blob(mode, name)
    return Snapshot(root, f"at {revision}", blobs)


def commit_of(root: Path, revision: str) -> str | None:
    """The commit that a revision names; None where there is none, as before the first commit."""
    if revision.startswith("-") or not revision.strip():
        return None
    git(root, "rev-parse", "--git-dir")  # so that a folder without git is not mistaken for a missing revision
    done = run(root, "rev-parse", "--verify", "--quiet", f"{revision}^{{commit}}")
    return done.stdout.decode("ascii").strip() or None if done.returncode == 0 else None


def staged_changes(root: Path) -> tuple[str, ...]:
    """The files of which something is staged: added, changed, or removed. A file moved counts under both names."""
    return tuple(sorted(_differing(root, "--ita-invisible-in-index")))


def ignored_files(root: Path) -> frozenset[str]:
    """The TOML files that git ignores: nobody who takes the design from git gets them."""
    words = ("ls-files", "--others", "--ignored", "--exclude-standard", "-z")
    return frozenset(file for file in _lines(git(root, *words)) if is_toml(file))


def _differing(root: Path, intended: str) -> set[str]:
    """The files in which the index differs from the last commit, with or without those only marked to be added."""
    base = commit_of(root, "HEAD") or _text(git(root, "hash-object", "-t", "tree", "--stdin")).strip()
    words = (
        "diff-index",
        "--cached",
        "--name-only",
        "--no-renames",
        *_PLAIN,
        "--relative",
        intended,
        "-z",
        base,
    )
    return set(_lines(git(root, *words)))


def _lines(answer: bytes) -> Iterator[str]:
    return (_text(line) for line in answer.split(b"\0") if line)


def _text(answer: bytes) -> str:
    return answer.decode("utf-8", "surrogateescape")


def lay_out(snapshot: Snapshot, folder: Path) -> Settings | None:
    """Write the specs of a snapshot, and what its settings name, into a folder; its settings, if they can be read."""
    folder.mkdir(parents=True, exist_ok=True)
    snapshot.write_to(folder, lambda file: is_toml(file) and not (_hidden(file) and snapshot.is_link(file)))
    settings, _ = load_settings(folder)
    if settings is not None:
        named = {*settings.materials, settings.signers_file, settings.register_file}
        snapshot.write_to(folder, lambda file: file in named and not (folder / file).exists())
    return settings


def _hidden(file: str) -> bool:
    return any(part.startswith(".") for part in file.split("/"))
