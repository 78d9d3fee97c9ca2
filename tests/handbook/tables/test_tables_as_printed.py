"""Figures stand in the tables in the steps in which their sources print them.

The steps, and the figures listed between them, were chosen to fit the tables as they stand. This proves no value:
it shows a digit that slipped, since a slip seldom lands on a step. Values are proved in ``tests/published``. A step
grows with the figure as it does in print: limits of composition go by hundredths up to half a per cent, and by
halves from five.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from speclint.handbook.tables.csv_files import rows
from tests.handbook.raw_materials import FILES, Printed, printed


def by_steps(*steps: tuple[float, float]) -> Callable[[float], float]:
    """The step of a figure: that of the first bound which its magnitude does not reach."""
    return lambda value: next(step for bound, step in steps if abs(value) < bound)


def on_step(value: float, step: float) -> bool:
    return math.isclose(value, round(value / step) * step, abs_tol=1e-9 * max(step, abs(value)))


COMPOSITION = by_steps((0.1, 0.005), (0.5, 0.01), (2.5, 0.05), (5, 0.1), (math.inf, 0.5))
#: Limits that standards set between the steps: carbon of spring and bolting steels, nickel, pure copper.
ODD_COMPOSITIONS = {0.57, 0.62, 0.72, 7.8, 99.9}
CELSIUS = by_steps((100.5, 10), (math.inf, 50))
#: Axes in steps of 20 °C (relaxation), limits of standards, and °F that standards print as °C (250 °F is 121).
ODD_CELSIUS = {-196, 110, 120, 121, 140, 160, 170, 180, 208, 220, 230, 260, 288, 343, 345, 380, 420}
FAHRENHEIT = by_steps((math.inf, 50))
ODD_FAHRENHEIT = {-325, -20, -4, 68, 70, 122}
#: Bounds of thickness and diameter, mm: those of the standards' tables, and 2 1/2, 4 and 7 in.
SIZES = {
    *(0, 0.1, 0.28, 0.5, 0.95, 1.6, 2.5, 3, 5, 6, 7, 10, 11, 16, 20, 30, 39, 40, 50, 60, 63, 75, 80, 100),
    *(150, 160, 200, 250, 63.5, 101.6, 177.8),
}
SHARES = by_steps((1, 0.01), (math.inf, 1))


def is_as_printed(found: Printed) -> bool:
    last = found.field.rpartition(".")[2]
    if last == "over_mm" or (
        last in ("rows", "range_rows") and found.column == 0 and found.of != "wire-strength"
    ):
        return found.value in SIZES
    if last == "degC" or (found.of in ("temperature-limit", "time-dependent-from") and found.unit == "°C"):
        return found.value in ODD_CELSIUS or on_step(found.value, CELSIUS(found.value))
    if last == "degF" or found.unit == "°F":
        return found.value in ODD_FAHRENHEIT or on_step(found.value, FAHRENHEIT(found.value))
    if found.of == "composition":
        return found.value in ODD_COMPOSITIONS or on_step(found.value, COMPOSITION(found.value))
    if last == "tolerance":
        return found.value == 0.17 or on_step(
            found.value, by_steps((0.2, 0.01), (2, 0.1), (math.inf, 5))(found.value)
        )
    if last == "tolerance_percent":
        return on_step(found.value, 1)
    if found.of in ("elongation", "impact-energy"):
        return found.value in (27, 31, 34) or on_step(
            found.value, by_steps((25, 1), (math.inf, 5))(found.value)
        )
    if found.of == "carbon-equivalent":
        return on_step(found.value, 0.01)
    if (
        found.of == "wire-strength" and found.column == 1
    ):  # of a wire, in print by tens, by fives in stainless
        return on_step(found.value, 5)
    if found.of == "relaxation":
        return found.value == 0.3 or on_step(found.value, 0.5)
    if found.of == "hardness":
        return found.owner in FROM_TENSILE | FROM_STANDARD or on_step(
            found.value, by_steps((60, 1), (math.inf, 5))(found.value)
        )
    if found.of == "modulus" and last == "value" and found.unit == "GPa":
        return found.value == 0.2 or on_step(found.value, 0.1 if found.value % 1 else 1)
    if (found.of, last) in SINGLE and not found.unit.endswith("°F"):
        return found.value in ODD_SINGLES or on_step(found.value, SINGLE[found.of, last](found.value))
    if found.unit == "MPa":
        return is_stress_as_printed(found, last)
    return True  # judged by values alone


#: Steps of single figures by property and field, and figures of standards between them.
SINGLE = {
    ("density", "value"): by_steps((8000, 50), (math.inf, 10)),
    ("poisson", "value"): by_steps((math.inf, 0.005)),
    ("allowable-tension", "value"): by_steps((math.inf, 0.1)),
    ("compressive-strength", "value"): by_steps((math.inf, 10)),
    ("conductivity", "value"): by_steps((50, 0.1), (math.inf, 5)),
    ("specific-heat", "value"): by_steps((math.inf, 5)),
    ("expansion", "value"): by_steps((50, 0.1), (math.inf, 5)),
}
ODD_SINGLES = {2080, 7425, 50.7, 53.3, 62, 66, 69, 72, 377, 488, 606, 667, 12.95}
#: Hardness worked from the tensile strength by the table of another standard, which ``tests/published`` follows.
FROM_TENSILE = {
    *("bolting-25CrMo4", "bolting-42CrMo4", "cast-steel-G20Mo5", "cast-steel-GP240GH", "forging-34CrNiMo6"),
    *("forging-42CrMo4", "forging-C45", "forging-C45-normalized", "nitriding-34CrAlNi7", "plate-P235GH"),
    *("plate-P265GH", "plate-P355GH", "plate-P355NH", "spring-bar-51CrV4", "spring-bar-61SiCr7"),
    *("stainless-1.4021", "stainless-1.4028", "stainless-1.4057", "stainless-1.4923", "structural-S235"),
    *("structural-S275", "structural-S355"),
}
#: Hardness that the standard of the bolts prints to the last figure.
FROM_STANDARD = {"bolting-5.6", "bolting-8.8", "bolting-10.9", "bolting-B7"}
#: Hot or thick rows worked from another steel's, and the period's own figures.
WORKED = {
    *("forging-42CrMo4", "forging-34CrNiMo6", "forging-C45", "forging-C45-normalized", "stainless-1.4028"),
    *("structural-S235", "structural-S275", "structural-S355", "bolting-period-carbon"),
}


def is_stress_as_printed(found: Printed, last: str) -> bool:
    """Standards print least strengths by fives at room temperature and ranges by tens; hot figures by ones."""
    if found.owner in WORKED or found.of not in ("proof-stress", "tensile-strength", "proof-load-stress"):
        return (
            found.of in ("wire-strength", "compressive-strength")
            or found.value == 0
            or on_step(found.value, 1)
        )
    if last == "range_rows":
        return on_step(found.value, 10)
    if last == "rows" and found.column == 1:
        return on_step(found.value, 5)
    return on_step(found.value, 1)


@pytest.mark.parametrize("file", FILES)
def test_figures_of_materials_are_as_printed(file: str) -> None:
    numbers = list(printed(file))
    assert len(numbers) > 60
    for found in numbers:
        assert is_as_printed(found), found


def test_a_slip_is_seen() -> None:
    """0.45 % carbon raised by a fiftieth is 0.459 %; 300 °C is 306 °C; 63 mm is 64.26 mm."""
    for of, field, unit, value in (
        ("composition", "C", "%", 0.45),
        ("modulus", "degC", "GPa", 300.0),
        ("proof-stress", "rows", "MPa", 63.0),
        ("temperature-limit", "spring.value", "°C", 250.0),
    ):
        assert is_as_printed(Printed("some steel", of, field, 0, unit, value))
        assert not is_as_printed(Printed("some steel", of, field, 0, unit, value * 1.02))


#: Step by table and column. None of these columns holds a figure worked from others.
STEPS: dict[str, dict[str, Callable[[float], float]]] = {
    "anodic-index-mil-std-1250a-1992.csv": {"index_V": by_steps((math.inf, 0.05))},
    "galvanic-series-sea-water-boatbuilder-100-2006.csv": {
        "noble_V": by_steps((math.inf, 0.01)),
        "base_V": by_steps((math.inf, 0.01)),
    },
    "gaskets-asme-viii-1-2019-table-2-5-1.csv": {
        "m": by_steps((math.inf, 0.25)),
        "y_psi": by_steps((math.inf, 100)),
        "thickness_mm": by_steps((1, 0.1), (math.inf, 0.5)),
        "hottest_C": by_steps((200, 10), (math.inf, 50)),
        "greatest_bar": by_steps((100, 5), (math.inf, 10)),
        "greatest_bar_C": by_steps((10_000, 100), (math.inf, 2000)),
    },
    "spring-relaxation-en-13906-1-2013.csv": {
        "temperature": lambda at: 50 if at in (150, 250) else 20,
        "loss": by_steps((math.inf, 0.001)),  # from figures in per cent at 600 MPa, a third more at 800
    },
    "spring-stroke-strength-en-13906-1-2013.csv": {
        "nominal": by_steps((math.inf, 1)),  # as two programs reproduce the standard, to the megapascal
        "d": by_steps((10, 1), (math.inf, 5)),
    },
    "weldability-bands-common-practice.csv": {
        "from": by_steps((math.inf, 0.05)),
        "below": by_steps((math.inf, 0.05)),
        "preheat_low_C": by_steps((20, 5), (100, 20), (math.inf, 50)),
        "preheat_high_C": by_steps((100, 20), (math.inf, 50)),
    },
    "embedding-vdi-2230-2003.csv": {
        "roughness_from": by_steps((math.inf, 10)),
        "roughness_to": by_steps((math.inf, 10)),
        "thread": by_steps((math.inf, 0.5)),
        "nut or head face": by_steps((math.inf, 0.5)),
        "joint face": by_steps((math.inf, 0.5)),
    },
    "clearance-holes-iso-273-1979.csv": dict.fromkeys(
        ("fine_mm", "medium_mm", "coarse_mm"), by_steps((10, 0.1), (math.inf, 0.5))
    ),
    "asme-b1.1-2019-unified-threads.csv": {"threads per inch": by_steps((math.inf, 0.5))},
    "end-fixity-aisc-360-10-table-c-a-7-1.csv": {
        "theory": by_steps((math.inf, 0.1)),
        "design": by_steps((math.inf, 0.05)),
    },
    "shear-strength-ratios.csv": dict.fromkeys(("low", "nominal", "high"), by_steps((math.inf, 0.01))),
    "spring-ends-en-13906-1-2013.csv": dict.fromkeys(
        ("solid_coils", "dead_coils"), by_steps((math.inf, 0.1))
    ),
    "spring-seating-en-13906-1-2013.csv": {"coefficient": by_steps((math.inf, 0.1))},
    "pipe-factor-y-asme-b31.1-2018.csv": {"y": by_steps((math.inf, 0.1))},
    "rankine-gordon-constants.csv": {
        "crushing_MPa": by_steps((math.inf, 10)),
        "one_over_a": by_steps((math.inf, 100)),
    },
    # many coefficients are so small that 2 % of them is less than their last place
    "stepped-round-bar-peterson-1997.csv": dict.fromkeys(("c0", "c1", "c2"), by_steps((math.inf, 0.001))),
    "thread-notch-factors-shigley-2015-table-8-16.csv": {
        "rolled": by_steps((math.inf, 0.1)),
        "cut": by_steps((math.inf, 0.1)),
        "fillet": by_steps((math.inf, 0.1)),
    },
}


@pytest.mark.parametrize("file", STEPS)
def test_figures_of_tables_are_as_printed(file: str) -> None:
    for row in rows(file):
        for column, step in STEPS[file].items():
            if row[column]:
                value = float(row[column])
                assert on_step(value, step(value)), (row, column)
