"""Parallel keys against worked examples in print, by the formulae of rules on keys (shaft.drive-key, rocker.arm-keys).

An example gives the allowed stress and prints the length at which the key just bears it; here the length is given, and
the stress must come out. Lengths in print have three or four digits.
seen: read in a companion to the book, not on its page; memory: recalled, not read.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import pytest

from speclint_valves.formulae.holding import pressure_of_key, shear_of_key
from tests.published.proof import proves

MM, MPA = 1e-3, 1e6
INCH, POUND = 0.0254, 4.4482216
KPSI = 1000 * POUND / INCH**2
_FORMULAE = "speclint_valves.formulae.holding"


@dataclass(frozen=True)
class _Key:
    """A key whose least lengths against shear and crushing are in print; all in SI units."""

    T: float
    d: float
    b: float
    h: float
    shear: float
    crushing: float
    long_for_shear: float
    long_for_crushing: float

    def expect_as_printed(self) -> None:
        """At each printed length the key has the stress allowed, half of its height in the hub."""
        sheared = shear_of_key(self.T, self.d, self.b, self.long_for_shear)
        pressed = pressure_of_key(self.T, self.d, self.h / 2, self.long_for_crushing)
        assert sheared == pytest.approx(self.shear, rel=4e-3)
        assert pressed == pytest.approx(self.crushing, rel=4e-3)


def _torque_of_shaft(d: float, shear: float) -> float:
    """Torque at which a round shaft without a keyway has a shear: π d³ τ/16, as the examples have it."""
    return math.pi * d**3 * shear / 16


@proves(_FORMULAE, memory="Budynas and Nisbett, Shigley's Mechanical Engineering Design, Ex. 7-6")
def test_square_key_of_shigley() -> None:
    """A square key of 3/8 in, 65 kpsi, factor 2.80, on 1 7/16 in: 1.16 in and 1.34 in (memory).

    40 hp at 600 rev/min are 4200 lbf in. Shear: 0.577 of 65 kpsi is 37.5 kpsi, over 2.80.
    """
    side = 0.375 * INCH
    allowed = 37.5 * KPSI / 2.80, 65 * KPSI / 2.80
    T = 4200 * POUND * INCH
    _Key(T, 1.4375 * INCH, side, side, *allowed, 1.16 * INCH, 1.34 * INCH).expect_as_printed()


@proves(_FORMULAE, memory="R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design, Ex. 13.1")
def test_rectangular_key_of_khurmi() -> None:
    """A shaft of 50 mm at 42 MPa, a key of 16 by 10 mm, 42 MPa of shear and 70 MPa of crushing (memory).

    T = π 42 × 50³/16 = 1.03 kN m; 61.31 mm against shear, 117.7 mm against crushing.
    """
    T = _torque_of_shaft(50 * MM, 42 * MPA)
    assert pytest.approx(1.03e3, rel=2e-3) == T
    _Key(T, 50 * MM, 16 * MM, 10 * MM, 42 * MPA, 70 * MPA, 61.31 * MM, 117.7 * MM).expect_as_printed()


@proves(_FORMULAE, memory="R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design, Ex. 13.2")
def test_parallel_key_of_khurmi() -> None:
    """A shaft of 45 mm of 400 MPa, a key of 14 by 9 mm of 340 MPa, greatest shear, a factor of 2 (memory).

    Shaft 400/(2 × 2) = 100 MPa, T = 1.8 kN m; key 85 MPa of shear, 67.2 mm, and 170 MPa of crushing, 104.6 mm.
    """
    T = _torque_of_shaft(45 * MM, 100 * MPA)
    assert pytest.approx(1.8e3, rel=7e-3) == T
    _Key(1.8e3, 45 * MM, 14 * MM, 9 * MM, 85 * MPA, 170 * MPA, 67.2 * MM, 104.6 * MM).expect_as_printed()


@proves(_FORMULAE, seen="Sadhu Singh, Machine Design I, example 7.4, p. 204")
def test_key_as_strong_as_its_shaft() -> None:
    """A shaft of 75 mm at 50 MPa, a key 20 mm wide at 50 and 75 MPa: 26.67 mm high, 110.4 mm long (companion seen)."""
    T = _torque_of_shaft(75 * MM, 50 * MPA)
    _Key(T, 75 * MM, 20 * MM, 26.67 * MM, 50 * MPA, 75 * MPA, 110.4 * MM, 110.4 * MM).expect_as_printed()
