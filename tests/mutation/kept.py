"""What was found before, by digest, in the user's cache folder: only what changed is tried again."""

from __future__ import annotations

import contextlib
import hashlib
import json
import sqlite3
from collections.abc import Iterable
from pathlib import Path
from typing import Any


def usual_folder() -> Path:
    """Where the system wants what a program can make anew."""
    from platformdirs import user_cache_path

    return user_cache_path("speclint", appauthor=False) / "mutation"


def digest(*texts: str) -> str:
    """One name for these texts in this order."""
    made = hashlib.sha256()
    for text in texts:
        made.update(f"{len(text)}:{text}".encode())
    return made.hexdigest()


def digest_of(files: Iterable[Path]) -> str:
    """One name for the text of these files."""
    return digest(*(file.read_text(encoding="utf-8") for file in sorted(files)))


class Kept:
    """A store of values by digest. A file that is damaged is begun anew."""

    def __init__(self, folder: Path) -> None:
        folder.mkdir(parents=True, exist_ok=True)
        self._place = folder / "kept.sqlite"
        try:
            self._open()
        except sqlite3.DatabaseError:
            self._place.unlink()
            self._open()

    def get(self, key: str) -> Any:
        """The value that was put under the key; None where there is none."""
        row = self._store.execute("select value from kept where key = ?", (key,)).fetchone()
        return None if row is None else json.loads(row[0])

    def put(self, key: str, value: Any) -> None:
        """Keep a value that JSON can say."""
        with contextlib.suppress(sqlite3.OperationalError):  # another run writes: it will be found again
            self._store.execute("insert or replace into kept values (?, ?)", (key, json.dumps(value)))
            self._store.commit()

    def _open(self) -> None:
        self._store = sqlite3.connect(self._place, timeout=30)
        self._store.execute("create table if not exists kept (key text primary key, value text)")
        self._store.commit()
