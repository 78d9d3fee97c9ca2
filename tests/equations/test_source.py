from __future__ import annotations

import pytest

from speclint.equations.source import Source

READ = Source("Office, Tables", "1950")
RECALLED = Source("Office, Tables", "1950", memory=True)


@pytest.mark.parametrize("work", [READ, RECALLED])
def test_a_place_in_a_work_is_recalled_as_the_work_is_unless_it_says_otherwise(work: Source) -> None:
    assert work.at("Table 3") == Source("Office, Tables", "1950", "Table 3", work.memory)
    assert work.at("Table 3", memory=True).memory is True
    assert work.at("Table 3", memory=False).memory is False


def test_what_was_recalled_says_so() -> None:
    assert str(READ.at("Table 3")) == "Office, Tables, 1950, Table 3"
    assert str(RECALLED.at("Table 3")) == "Office, Tables, 1950, Table 3 (from memory)"
