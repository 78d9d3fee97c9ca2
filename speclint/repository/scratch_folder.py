"""A folder for files of one run, outside of the repository, that is gone afterwards."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from speclint.errors import OutputError


@contextmanager
def scratch_folder() -> Iterator[Path]:
    """A temporary folder while a block runs.

    :raises OutputError: where there is no room for one.
    """
    try:
        made = tempfile.TemporaryDirectory(prefix="speclint-", ignore_cleanup_errors=True)
    except OSError as problem:
        raise OutputError(f"no temporary folder can be made: {problem.strerror or problem}") from problem
    with made as folder:
        yield Path(folder)
