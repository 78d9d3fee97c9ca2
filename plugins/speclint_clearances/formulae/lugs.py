"""A lug whose sling does not pull along it: how the pull leans, and the bending of the plate at its weld."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Radians
from speclint_clearances.sources import EN_1993_1_8


@formula("c = |(x_c − x) sin φ − (y_c − y) cos φ|", cites=[FIRST_PRINCIPLES])
def hook_beside_plane(x: Metres, y: Metres, x_c: Metres, y_c: Metres, φ: Radians) -> Metres:
    """Distance of the hook from the upright plane of the lug's plate.

    c = |(x_c − x) sin φ − (y_c − y) cos φ|

    ``x``, ``y`` of the lug, ``x_c``, ``y_c`` of the hook in plan [m]; ``φ`` from the x-axis to the plate, in plan
    [rad]. Returns [m].

    Hand working: the plate along x, the hook 3 m forward and 4 m to the left: 4 m.

    >>> hook_beside_plane(x=1.0, y=0.0, x_c=4.0, y_c=4.0, φ=0.0)
    4.0
    """
    return abs((x_c - x) * math.sin(φ) - (y_c - y) * math.cos(φ))


@formula("a = |(x_c − x) cos φ + (y_c − y) sin φ|", cites=[FIRST_PRINCIPLES])
def hook_along_plane(x: Metres, y: Metres, x_c: Metres, y_c: Metres, φ: Radians) -> Metres:
    """Distance from the lug to the hook in plan, along the lug's plate.

    a = |(x_c − x) cos φ + (y_c − y) sin φ|

    Arguments as ``hook_beside_plane``. Returns [m].

    >>> hook_along_plane(x=1.0, y=0.0, x_c=4.0, y_c=4.0, φ=0.0)
    3.0
    """
    return abs((x_c - x) * math.cos(φ) + (y_c - y) * math.sin(φ))


@formula("V = F sin(min(arcsin(c/√(r² + h²)) + δ, π/2))", cites=[FIRST_PRINCIPLES])
def part_across(F: Newtons, c: Metres, r: Metres, h: Metres, δ: Radians) -> Newtons:
    """Part of a sling's pull at right angles to a plane in which the lug stands, with the sling leaning further.

    V = F sin(min(arcsin(c/√(r² + h²)) + δ, π/2))

    ``F`` pull [N]; ``c`` distance of the hook from that plane, ``r`` from the lug in plan, ``h`` height of the hook
    above the lug [m]; ``δ`` by which the sling may lean further [rad], 0 to π/2. Returns [N].
    Raises OutOfRange unless h > 0, 0 ≤ c ≤ r and δ is in its range.

    Hand working: the hook in the plane, the sling 30° out of it: half of 20 kN.

    >>> round(part_across(F=20e3, c=0.0, r=1.0, h=1.0, δ=math.radians(30.0)), 6)
    10000.0
    """
    require(h > 0 * h, "the hook is not above the points")
    require(
        0 * r <= c <= r * (1 + 1e-9),
        f"{c * 1e3:.4g} mm beside the plane is more than {r * 1e3:.4g} mm from the lug",
    )
    require(0 <= δ <= math.pi / 2, f"a sling that leans by {math.degrees(δ):.4g}° is not between 0 and 90°")
    leans = math.asin(c / (r**2 + h**2) ** 0.5) + δ
    return F * math.sin(min(leans, math.pi / 2))


@formula("σ = F/(b t) + 6 e U/(b² t) + 6 e V/(b t²)", cites=[FIRST_PRINCIPLES])
def root_stress(F: Newtons, U: Newtons, V: Newtons, e: Metres, b: Metres, t: Metres) -> Pascals:
    """Greatest stress of the lug where it is welded on, pulled and bent in both planes.

    σ = F/(b t) + 6 e U/(b² t) + 6 e V/(b t²)

    ``F`` pull, taken along the lug in full; ``U`` its part along the plate and ``V`` across it, both at right angles
    to the lug [N]; ``e`` height of the hole above the weld, ``b`` width at the weld, ``t`` thickness [m]. Returns
    [Pa]. Raises OutOfRange unless b and t are above 0.

    Hand working, 20 kN, 10 kN and 2 kN on 40 mm, 100 × 20 mm: 10 + 12 + 12 = 34 MPa.

    >>> round(root_stress(F=20e3, U=10e3, V=2e3, e=0.040, b=0.100, t=0.020) / 1e6, 6)
    34.0
    """
    require(b > 0 * b and t > 0 * t, "the section of the lug must be above 0")
    return F / (b * t) + 6 * e * U / (b**2 * t) + 6 * e * V / (b * t**2)


@formula("τ = F/(2 a b) + 3 e U/(a b²) + e V/(a b t)", cites=[EN_1993_1_8.at("4.5.3.3"), FIRST_PRINCIPLES])
def fillet_stress(F: Newtons, U: Newtons, V: Newtons, e: Metres, b: Metres, t: Metres, a: Metres) -> Pascals:
    """Stress in the throats of the fillet welds along both sides of a lug, all of it counted as shear.

    τ = F/(2 a b) + 3 e U/(a b²) + e V/(a b t)

    ``F`` pull; ``U`` its part along the plate and ``V`` across it, at right angles to the lug [N]; ``e`` height of the
    hole above the weld, ``b`` length of each weld, ``t`` thickness of the plate, which sets both welds apart, ``a``
    throat [m]. Returns [Pa]. The parts are added as if they all had one direction, which is on the safe side. Raises
    OutOfRange unless b, t and a are above 0.

    Hand working, 20 kN, 10 kN and 2 kN on 40 mm, welds of 100 × 5 mm beside 20 mm: 20 + 24 + 8 = 52 MPa.

    >>> round(fillet_stress(F=20e3, U=10e3, V=2e3, e=0.040, b=0.100, t=0.020, a=0.005) / 1e6, 6)
    52.0
    """
    require(b > 0 * b and t > 0 * t and a > 0 * a, "length, distance and throat of the welds must be above 0")
    return F / (2 * a * b) + 3 * e * U / (a * b**2) + e * V / (a * b * t)
