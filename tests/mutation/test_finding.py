"""What is found to be corrupted: numbers that measure."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.mutation import cells, literals
from tests.mutation.exempt import EXEMPT, Exempt

ROOT = Path(__file__).parents[2]


def test_a_literal_measures_unless_it_counts(little: Path) -> None:
    found = literals.mutants(little, "little.py")
    assert [(mutant.line, mutant.original) for mutant in found] == [
        (6, 0.45),
        (7, 7.0),
        (13, 250.0),
        (13, 50),
        (16, 2),
        (23, 0.3),
        (27, 0.8),
    ]
    assert [mutant.function for mutant in found] == [0, 0, 11, 11, 0, 22, 26]


def test_cells_are_numbers_of_the_table(little: Path) -> None:
    assert [cell.original for cell in cells.mutants(little, "cells.csv")] == [1.5, 8, -20]
    assert [cell.original for cell in cells.mutants(little, "cells.toml")] == [1e3, 40, 50, 60]


def test_one_cell_is_multiplied(little: Path) -> None:
    text, tables = ((little / file).read_text(encoding="utf-8") for file in ("cells.csv", "cells.toml"))
    by_place = [cells.corrupt(cell, text) for cell in cells.mutants(little, "cells.csv")]
    assert by_place[0] == text.replace("1.5", "1.53")
    assert by_place[2] == text.replace("-20", "-20.4")
    assert cells.corrupt(cells.mutants(little, "cells.toml")[2], tables) == tables.replace("50", "51")


@pytest.mark.parametrize("exempt", EXEMPT, ids=lambda exempt: exempt.code)
def test_what_is_exempt_is_still_there(exempt: Exempt) -> None:
    assert any(exempt.covers(mutant) for mutant in literals.mutants(ROOT, exempt.file))
