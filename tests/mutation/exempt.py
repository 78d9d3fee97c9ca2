"""Literals of which 2 % means nothing and the rule cannot tell: each with the reason."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tests.mutation.mutants import Mutant


@dataclass(frozen=True)
class Exempt:
    """All literals of this value in lines of the file that hold this code."""

    file: str
    code: str
    value: float
    reason: str

    def covers(self, mutant: Mutant) -> bool:
        return (mutant.file, mutant.original) == (self.file, self.value) and self.code in mutant.code


_ROUND_OFF = "an allowance for round-off, right by its order of magnitude alone"
_STEPS = "steps of a numerical method, enough by far: more or fewer leave the answer as it is"
_GRADE = "a grade, which goes by whole steps: no grade lies between this and 2 % more"
_SEARCH = "an end of a search whose answer lies well inside"
_ALIKE = "how alike a name must be to be offered to a reader who mistyped one"
_HANDBOOK = "speclint/handbook/"

EXEMPT: tuple[Exempt, ...] = (
    Exempt(_HANDBOOK + "tables/csv_files.py", "cutoff=0.5", 0.5, _ALIKE),
    Exempt(_HANDBOOK + "materials/library.py", "cutoff=0.6", 0.6, _ALIKE),
    Exempt(_HANDBOOK + "cams/profiles.py", "_SAME_LIFT = ", 1e-9, _ROUND_OFF),
    Exempt(_HANDBOOK + "members/columns.py", "lambda_ <= limit * (1 + 1e-12)", 1e-12, _ROUND_OFF),
    Exempt(_HANDBOOK + "tables/interpolation.py", "_SLACK = ", 1e-9, _ROUND_OFF),
    Exempt(_HANDBOOK + "fits/limits_and_fits.py", "_ROUNDING = ", 1e-12, _ROUND_OFF),
    Exempt(_HANDBOOK + "materials/tables.py", "_SAME_TEMPERATURE = ", 1e-6, _ROUND_OFF),
    Exempt(_HANDBOOK + "materials/tables.py", "_SAME_SIZE = ", 1e-9, _ROUND_OFF),
    Exempt(_HANDBOOK + "steam/pipes.py", "_SLACK = ", 1e-9, _ROUND_OFF),
    Exempt(
        _HANDBOOK + "threads/limits.py",
        "if d <= 0.75",
        0.75,
        "parts the listed sizes 3/4 and 7/8 in: no size lies between this and 2 % more",
    ),
    Exempt("speclint/quantities/tolerance_classes.py", "number > 8", 8, _GRADE),
    Exempt("speclint/quantities/tolerance_classes.py", "coarsest = 8", 8, _GRADE),
    Exempt("speclint/quantities/tolerance_classes.py", "coarsest = 8", 7, _GRADE),
    Exempt(_HANDBOOK + "materials/weldability.py", "slack = ", 1e-9, _ROUND_OFF),
    Exempt(_HANDBOOK + "steam/dry_steam.py", "_AT_SATURATION = ", 1e-6, _ROUND_OFF),
    Exempt(_HANDBOOK + "steam/states.py", "_AT_SATURATION = ", 1e-6, _ROUND_OFF),
    Exempt(_HANDBOOK + "steam/steam_nozzles.py", "_LOWEST_RATIO, _HIGHEST_RATIO = ", 0.4, _SEARCH),
    Exempt(_HANDBOOK + "steam/steam_nozzles.py", "_LOWEST_RATIO, _HIGHEST_RATIO = ", 0.8, _SEARCH),
    Exempt(_HANDBOOK + "heat/lagging.py", "_HALVINGS = ", 50, _STEPS),
    Exempt(_HANDBOOK + "plates/rings.py", "_STEPS = ", 200, _STEPS),
    Exempt(
        _HANDBOOK + "steam/if97.py",
        "_LEAST_ANSWER = ",
        900.0,
        "stands anywhere between the least property and the library's error codes, which start at -1000",
    ),
)


def counted(mutants: Sequence[Mutant]) -> list[Mutant]:
    """Those that are not exempt."""
    return [mutant for mutant in mutants if not any(exempt.covers(mutant) for exempt in EXEMPT)]
