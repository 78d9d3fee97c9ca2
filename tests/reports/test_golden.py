"""Text outputs word for word: a change of one is seen in a review, and wanted."""

from __future__ import annotations

import pytest

from tests.reports.golden import FOLDER, WRITERS, outputs


@pytest.fixture(scope="module")
def written() -> dict[str, str]:
    return outputs()


@pytest.mark.parametrize("name", WRITERS)
def test_an_output_is_as_it_was_read(written: dict[str, str], name: str) -> None:
    """Written anew by ``python -m tests.reports.golden``; read it before committing it."""
    assert written[name] == (FOLDER / name).read_bytes().decode("utf-8")


def test_no_golden_file_is_left_behind() -> None:
    assert {path.name for path in FOLDER.iterdir()} == set(WRITERS)
