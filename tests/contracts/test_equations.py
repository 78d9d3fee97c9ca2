"""The printed equation of every formula is its code: in the handbook, in our families and in any other installed."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from itertools import pairwise
from types import FunctionType

import pytest
from iapws import IAPWS97
from scipy.special import kv

from speclint.equations import (
    JoulesPerKilogram,
    Kelvins,
    KilogramsPerCubicMetre,
    Pascals,
    Radians,
    Ratio,
    SquareMetresPerSecond,
    WattsPerMetreKelvin,
    described,
)
from speclint.errors import replace
from speclint.handbook import tables
from speclint.quantities import amount_in
from speclint.testing import expect_equation, formulae_in, installed_families
from tests.contracts import steam_by_iapws as steam
from tests.each import each

#: Formulae whose equation cannot be worked out, each with the reason. The list may only shrink.
NOT_WORKED_OUT = {
    "steam_critical_pressure_ratio": "the place of a maximum; tests/handbook/steam/test_nozzles.py proves it",
}

#: Below the region of IAPWS-IF97 in which libraries solve for the density, each to a closeness of its own.
_PRESSURES = {"p": (1e3, 16.5e6), "p_2": (1e3, 16.5e6)}

#: Where few of the values tried would lie in a formula's range, or not where it can be compared; by name or module.
RANGES: Mapping[str, Mapping[str, tuple[float, float]]] = {
    "dittus_boelter_nusselt_number": {"Re": (1e4, 1e6), "Pr": (0.6, 160.0), "n": (0.4, 0.4)},
    "carbon_equivalent_cet": {
        "C": (0.0005, 0.004),
        "Mn": (0.004, 0.018),
        "Mo": (0.0, 0.008),
        "Cr": (0.0, 0.016),
        "Cu": (0.0, 0.008),
        "Ni": (0.0, 0.026),
    },
    "carbon_equivalent_of_iron": {"C": (0.02, 0.045), "Si": (0.0, 0.05), "P": (0.0, 0.02)},
    "saturation_of_iron": {"C": (0.02, 0.045), "Si": (0.0, 0.05), "P": (0.0, 0.02)},
    "preheat_temperature": {
        "CET": (0.002, 0.005),
        "d": (0.01, 0.09),
        "HD": (1e-5, 2e-4),
        "Q": (5e5, 4e6),
    },
    "dry_steam": _PRESSURES,
    "states": _PRESSURES,
    "steam_nozzles": _PRESSURES,
    "water": _PRESSURES,
    "jets": {
        "m": (0.5, 2.0),
        "C": (0.5, 1.0),
        "A": (0.02, 0.05),
        "h": (2.7e6, 3.2e6),
        "p_2": (0.8e5, 1.5e5),
    },
}


def straight(points: list[tuple[float, float]], at: float) -> float:
    """A straight-line reading between the points of a table."""
    for (x_1, y_1), (x_2, y_2) in pairwise(points):
        if x_1 <= at <= x_2:
            return y_1 + (y_2 - y_1) * (at - x_1) / (x_2 - x_1)
    raise ValueError(f"{at} is outside the table")


def crane(group: str, at: float) -> float:
    rows = tables.rows("loss-coefficients-crane-tp-410m-2009.csv")
    points = [(float(row["argument"]), float(row["value"])) for row in rows if row["group"] == group]
    return straight(points, at)


def bend_multiple(r_d: Ratio) -> Ratio:
    return crane("bend", r_d)


def entrance_loss(r_d: Ratio) -> Ratio:
    return crane("entrance", r_d)


def mitre_multiple(θ: Radians) -> Ratio:
    return crane("mitre", math.degrees(θ))


def air(column: int, T: float) -> float:
    rows = [
        [float(text) for text in row.values()]
        for row in tables.rows("air-incropera-6th-ed-2007-table-a4.csv")
    ]
    return straight([(row[0], row[column]) for row in rows], T)


def air_viscosity(T: Kelvins) -> SquareMetresPerSecond:
    return air(1, T)


def air_conductivity(T: Kelvins) -> WattsPerMetreKelvin:
    return air(2, T)


def air_prandtl(T: Kelvins) -> Ratio:
    return air(3, T)


def shoulder(load: str, term: int) -> Callable[..., float]:
    """One of the four coefficients of a shoulder: c_0 + c_1 √k + c_2 k, with k the height over the fillet."""

    def coefficient(k: Ratio) -> Ratio:
        for row in tables.rows("stepped-round-bar-peterson-1997.csv"):
            in_range = float(row["from"]) <= k <= float(row["to"])
            if row["load"] == load and int(row["term"]) == term and in_range:
                c_0, c_1, c_2 = (float(row[name]) for name in ("c0", "c1", "c2"))
                root: float = k**0.5
                return c_0 + c_1 * root + c_2 * k
        raise ValueError(f"{k} is outside the chart")

    return coefficient


def k_0(x: Ratio) -> Ratio:
    """Modified Bessel function of the second kind, of scipy."""
    return float(kv(0, x))


def k_1(x: Ratio) -> Ratio:
    return float(kv(1, x))


def boiled(x: int, wanted: str) -> Callable[..., float]:
    """A property on the line of saturation by iapws: of steam (x = 1) or of water (0)."""

    def density(p: Pascals) -> KilogramsPerCubicMetre:
        return float(IAPWS97(P=p / 1e6, x=x).rho)

    def enthalpy(p: Pascals) -> JoulesPerKilogram:
        return float(IAPWS97(P=p / 1e6, x=x).h) * 1e3

    return density if wanted == "rho" else enthalpy


AIR = {"ν_air": air_viscosity, "λ_air": air_conductivity, "Pr_air": air_prandtl}
CRANE = {"k_bend": bend_multiple, "k_entrance": entrance_loss, "k_mitre": mitre_multiple}
#: What equations name besides formulae: tables read here, standards worked by another library; by module.
ALSO: Mapping[str, Mapping[str, Callable[..., float]]] = {
    "gaps": AIR,
    "lagging": AIR,
    "fittings": CRANE,
    "dry_steam": steam.AT_TEMPERATURE,
    "steam_nozzles": steam.OF_EXPANSION,
    "plate_fins": {"K_0": k_0, "K_1": k_1},
    "water": {"h_g": boiled(1, "h"), "h_f": boiled(0, "h"), "ρ_f": boiled(0, "rho")},
    **{
        f"shoulder_in_{load}": {f"C_{term}": shoulder(load, term) for term in (1, 2, 3, 4)}
        for load in ("tension", "bending", "torsion")
    },
}


def ranges(function: Callable[..., float]) -> Mapping[str, tuple[float, float]]:
    module, name = function.__module__.rpartition(".")[2], function.__name__
    found = RANGES.get(name) or RANGES.get(module, {})
    return {argument: ends for argument, ends in found.items() if argument in described(function).units}


def also(function: Callable[..., float]) -> Mapping[str, Callable[..., float]]:
    module, name = function.__module__.rpartition(".")[2], function.__name__
    if module == "states":
        if name == "wet_steam_enthalpy":
            return steam.AT_DRYNESS
        return steam.AT_ENTHALPY if name.endswith("_at_enthalpy") else steam.AT_ENTROPY
    return ALSO.get(name) or ALSO.get(module, {})


FORMULAE = formulae_in(
    "speclint.facts", "speclint.handbook", *(family.module for family in installed_families().families)
)
WORKED_OUT = [one for one in FORMULAE if one.__name__ not in NOT_WORKED_OUT]


def test_there_are_formulae() -> None:
    assert len(FORMULAE) > 600


@each(WORKED_OUT, lambda one: f"{one.__module__}.{one.__name__}")
def test_the_printed_equation_is_the_code(function: Callable[..., float]) -> None:
    expect_equation(function, ranges=ranges(function), also=also(function))


@pytest.mark.long
@each(WORKED_OUT, lambda one: f"{one.__module__}.{one.__name__}")
def test_so_is_what_a_sheet_prints_in_inches_and_pounds(function: Callable[..., float]) -> None:
    expect_equation(
        function,
        ranges=ranges(function),
        also=also(function),
        write=partial(amount_in, "imperial"),
    )


#: Corruptions that change nothing: no value lies between 2000 and 4000, a share of a reboring is rounded down, and the
#: bending of threads is capped at 1 on both sides of its least ratio.
UNNOTICED = {"Re ≤ 2020.0", "0.0505", "0), 0.606"}
_CORRUPTIBLE = re.compile(r" [+−] |/|(?<![\w.])\d+(?:\.\d+)?(?![\w.])|[²³⁴]")


def corrupted(equation: str) -> Iterator[tuple[str, str]]:
    """The equation with one sign, number or power changed, and what was put in."""
    start = min(at for at in (equation.find(" = "), equation.find(" from ")) if at >= 0)
    for found in _CORRUPTIBLE.finditer(equation, start + 3):
        old = found[0]
        other = {" + ": " − ", " − ": " + ", "/": " · ", "²": "³", "³": "²", "⁴": "³"}.get(old)
        new = other or repr(float(old) * 1.01)
        if other or float(old):
            near = equation[max(start + 3, found.start() - 5) : found.start()] + new
            yield f"{equation[: found.start()]}{new}{equation[found.end() :]}", near


def printing(function: Callable[..., float], equation: str) -> Callable[..., float]:
    """The same formula with another equation."""
    copy = FunctionType(function.__code__, function.__globals__, function.__name__, function.__defaults__)
    copy.__annotations__, copy.__module__ = function.__annotations__, function.__module__
    vars(copy)["described"] = replace(described(function), function=copy, equation=equation)
    return copy


def test_an_equation_corrupted_anywhere_is_noticed() -> None:
    """One sign, number or power at a time, in every equation."""
    tried, unnoticed = 0, set()
    for function in WORKED_OUT:
        for equation, near in corrupted(described(function).equation):
            tried += 1
            try:
                expect_equation(printing(function, equation), ranges=ranges(function), also=also(function))
            except AssertionError:
                continue
            if not any(near.endswith(known) for known in UNNOTICED):
                unnoticed.add(f"{function.__name__}: {equation}")
    assert tried > 2000
    assert unnoticed == set()


@pytest.mark.parametrize("name", NOT_WORKED_OUT)
def test_no_exception_stays_longer_than_it_is_needed(name: str) -> None:
    [function] = [one for one in FORMULAE if one.__name__ == name]
    with pytest.raises(AssertionError):
        expect_equation(function, ranges=ranges(function), also=also(function))


@pytest.mark.parametrize("name", RANGES)
def test_no_range_is_narrowed_for_nothing(name: str) -> None:
    needing = 0
    for function in WORKED_OUT:
        if name in (function.__name__, function.__module__.rpartition(".")[2]):
            try:
                expect_equation(function, also=also(function))
            except AssertionError:
                needing += 1
    assert needing
