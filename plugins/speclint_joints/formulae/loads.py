"""Loads shared by studs, areas, and pressure on faces."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Newtons, Pascals, Ratio, SquareMetres


@formula("P = F/n", cites=[FIRST_PRINCIPLES])
def load_per_stud(F: Newtons, n: Ratio) -> Newtons:
    """Working load per stud, shared equally.

    P = F/n

    F: load on the joint, N. n: number of studs, at least 1. Returns N.

    Hand working: 520 kN on 26 studs.

    >>> load_per_stud(F=520e3, n=26)
    20000.0
    """
    require(n >= 1, f"{n:g} studs are fewer than 1")
    return F / n


@formula("A = min(A_s, A_d)", cites=[FIRST_PRINCIPLES])
def least_area(A_s: SquareMetres, A_d: SquareMetres) -> SquareMetres:
    """Least area of a stud: of its thread, or of a shank reduced below it.

    A = min(A_s, A_d)

    A_s: stress area, m². A_d: area of the shank, m². Returns m².

    >>> least_area(A_s=353e-6, A_d=314e-6)
    0.000314
    """
    return min(A_s, A_d)


@formula("A_b = n A", cites=[FIRST_PRINCIPLES])
def area_of_all(A: SquareMetres, n: Ratio) -> SquareMetres:
    """Core area of all studs together.

    A_b = n A

    A: core area of one, m². n: number of studs. Returns m².

    >>> round(area_of_all(A=324e-6, n=20), 5)
    0.00648
    """
    return n * A


@formula("q = n F/A", cites=[FIRST_PRINCIPLES])
def pressure_on_face(F: Newtons, n: Ratio, A: SquareMetres) -> Pascals:
    """Mean pressure on a ground face or a gasket.

    q = n F/A

    F: load on it for each stud, N. n: number of studs. A: area in contact, m². Returns Pa, below zero
    where the faces have separated.

    >>> round(pressure_on_face(F=50e3, n=20, A=0.02) / 1e6)
    50
    """
    return n * F / A


@formula("q = k p", cites=[FIRST_PRINCIPLES])
def times(k: Ratio, p: Pascals) -> Pascals:
    """Multiple of the steam's pressure.

    q = k p

    k: multiple. p: gauge pressure, Pa. Returns Pa.

    >>> times(k=3.0, p=1.6e6)
    4800000.0
    """
    return k * p
