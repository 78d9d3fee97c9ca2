"""What one run of the tests makes of the example serves the next, and the commands that tests run."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.checking import KeptFolder
from tests import example


@pytest.mark.parametrize("stays", [True, False])
def test_results_of_the_example_stay_where_they_are_told_to(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, stays: bool
) -> None:
    """What the user keeps is found, what is made is kept for the next run, and commands find both."""
    own, lent, stay, shared = (tmp_path / name for name in ("own", "lent", "stay", "shared"))
    shared.mkdir()
    lent.mkdir(mode=0o700)
    KeptFolder(lent).write("of-the-user", b"one")
    monkeypatch.setattr(example, "usual_folder", lambda: own)
    monkeypatch.setenv(example.SHARED, str(shared))
    monkeypatch.setenv(example.LENT, str(lent))
    monkeypatch.setenv(example.STAY, str(stay) if stays else "")

    def assessed(kept: KeptFolder, _: Any) -> bytes | None:
        kept.write("made", b"two")
        return kept.read("of-the-user")

    monkeypatch.setattr(example, "_by_kept", assessed)
    assert example._assessed() == b"one"
    assert KeptFolder(own).read("made") == b"two"
    assert KeptFolder(own).read("of-the-user") == b"one"
    assert KeptFolder(stay).read("made") == (b"two" if stays else None)
    assert KeptFolder(lent).read("made") is None
