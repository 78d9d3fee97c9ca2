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
_NEARNESS = "how near a solution comes, right by its order of magnitude alone"
_FIRST_GUESS = "only a first guess rests on it, or how fast a solution is found: what is found does not"
_ALIKE = "how alike a name must be to be offered to a reader who mistyped one"
_HANDBOOK = "speclint/handbook/"

EXEMPT: tuple[Exempt, ...] = (
    Exempt(_HANDBOOK + "tables/csv_files.py", "cutoff=0.5", 0.5, _ALIKE),
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
    *(
        Exempt(_HANDBOOK + file, code, value, reason)
        for file, code, values, reason in (
            ("valve_events/areas.py", "_PARTS = ", (400,), _STEPS),
            ("valve_events/trains.py", "_NEAR = ", (1e-10,), _NEARNESS),
            ("valve_events/trains.py", "middle, value, at_", (2,), _FIRST_GUESS),
            ("valve_events/trains.py", "return (low + high) / 2", (2,), _FIRST_GUESS),
            ("steam/cylinder_steam.py", "_SURELY_DRY = ", (2.805e6,), "above it only time is saved"),
            ("steam/cylinder_steam.py", "_STIFFEST = ", (2.0,), "stands anywhere between 1.34 and water's"),
            (
                "steam/cylinder_steam.py",
                "1 < exponent < _STIFFEST",
                (1,),
                "stands anywhere below steam's 1.1",
            ),
            ("steam/cylinder_steam.py", "_NEAR, _CALLS = ", (2e-7, 12), _NEARNESS),
            ("steam/cylinder_steam.py", "_SLOPE = ", (0.88,), _FIRST_GUESS),
            ("steam/cylinder_steam.py", "_ABOVE_BOILING = ", (0.05,), _NEARNESS),
            ("steam/cylinder_steam.py", "_STEP = ", (5e3,), _STEPS),
            ("steam/cylinder_steam.py", "before, miss_before = near", (1e-6, 1e-3, 1), _FIRST_GUESS),
            ("steam/cylinder_steam.py", "p = before * (1 + miss_before", (1,), _FIRST_GUESS),
            ("steam/cylinder_steam.py", "if miss <= -1", (1,), _NEARNESS),
            ("steam/cylinder_steam.py", "miss > -1 and abs(miss) <", (1, 1e2), _NEARNESS),
            ("steam_cycle/charges.py", "_NEAR, _FINER, _CLOSE, _TRIES = ", (1e-4, 1e-2, 1e-9, 60), _NEARNESS),
            ("steam_cycle/charges.py", "_SETTLINGS, _MISSED = ", (6, 1e-3), _NEARNESS),
            ("steam_cycle/charges.py", "_DEEP = ", (0.8,), _STEPS),
            ("steam_cycle/charges.py", "_NEAR_ONE = ", (1e-3,), _NEARNESS),
            ("steam_cycle/charges.py", "_LEAST_LEFT, _MOST_FILLED = ", (0.1, 10.0), _FIRST_GUESS),
            ("steam_cycle/charges.py", "gain = ", (1.0,), _FIRST_GUESS),
            ("steam_cycle/charges.py", "self.weight = ", (0.5, 1.0), _STEPS),
            ("steam_cycle/charges.py", "self.weight", (1,), _STEPS),
            ("steam_cycle/charges.py", "passing.weight == 1", (1,), _STEPS),
            ("steam_cycle/charges.py", "emptied = ", (1.01,), _NEARNESS),
            ("steam_cycle/charges.py", "miss_low /= 2", (2,), _FIRST_GUESS),
            ("steam_cycle/charges.py", "missing = charge.m", (1,), _FIRST_GUESS),
            ("steam_cycle/charges.py", "if growth else 1.0", (1.0,), _NEARNESS),
            ("steam_cycle/charges.py", "return came - surplus", (1.0,), _FIRST_GUESS),
            ("steam_cycle/cycles.py", "_AT_EVENT = ", (1e-9,), _ROUND_OFF),
            ("steam_cycle/cycles.py", "lambda _: 1.0", (1.0,), "a weight that is the same at every angle"),
            ("steam_cycle/grids.py", "_DEGREE = ", (180,), _STEPS),
            ("steam_cycle/grids.py", "parts = max(", (1,), _STEPS),
            ("steam_cycle/grids.py", "_STEP, ", (1.5, 4, 3), _STEPS),
            ("steam_cycle/grids.py", "CLOSING_STEP, _LAST = ", (0.3, 3), _STEPS),
            ("steam_cycle/grids.py", "_NEAR_EVENT = ", (40,), _STEPS),
            ("steam_cycle/grids.py", "_SAME = ", (1e-9,), _ROUND_OFF),
            ("steam_cycle/grids.py", "coarseness: float = 1.0", (1.0,), _STEPS),
            ("steam_cycle/grids.py", "near = min(_NEAR_EVENT", (3,), _STEPS),
            ("steam_cycle/grids.py", "min(_LAST, ", (2,), _STEPS),
            ("steam_cycle/grids.py", "_greatest_step(end", (2,), _STEPS),
            ("steam_cycle/solving.py", "PERIODIC = ", (2e-4,), _NEARNESS),
            ("steam_cycle/solving.py", "_ROUNDS = ", (24,), _STEPS),
            ("steam_cycle/solving.py", "_COARSE, _NEAR = ", (2.5, 2e-3), _STEPS),
            ("steam_cycle/solving.py", "_GAS_CONSTANT = ", (461.526,), _STEPS),
            ("steam_cycle/solving.py", "_FOR_AHEAD, _GREATEST_SHARE = ", (3, 0.6), _FIRST_GUESS),
            ("steam_cycle/solving.py", "coarseness: float = 1.0", (1.0,), _STEPS),
            ("steam_cycle/solving.py", "exhaust = (supply.enthalpy", (2,), _FIRST_GUESS),
            ("steam_cycle/solving.py", "held = charge.m * _GAS_CONSTANT", (1,), _STEPS),
            ("steam_cycle/solving.py", "return third + ", (1,), _FIRST_GUESS),
            ("steam_cycle/walls.py", "_NEAR, _RUNS = ", (0.5, 8), _NEARNESS),
            ("steam_cycle/walls.py", "_MIDDLE = ", (2,), _FIRST_GUESS),
        )
        for value in values
    ),
)


def counted(mutants: Sequence[Mutant]) -> list[Mutant]:
    """Those that are not exempt."""
    return [mutant for mutant in mutants if not any(exempt.covers(mutant) for exempt in EXEMPT)]
