"""What a pipe may bring on a branch in a round shell: the least that the charts of the code allow."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, NewtonMetres, Newtons, Pascals, Ratio
from speclint_fabrication.sources import LOCAL_LOADS


@formula("F_a = 1.81 f e²", cites=[LOCAL_LOADS])
def force_on_branch(f: Pascals, e: Metres) -> Newtons:
    """Force along a branch that its round shell bears, whatever the sizes of both: the foot of the code's chart.

    F_a = 1.81 f e²

    ``f`` allowable tension [Pa]; ``e`` net thickness of the shell [m]. Returns [N].

    Hand working: 1.81 × 150 MPa × 8² mm² = 17.376 kN.

    >>> round(force_on_branch(f=150e6, e=0.008))
    17376
    """
    return 1.81 * f * e**2


@formula("M_a = 4.90 f e² d/4", cites=[LOCAL_LOADS])
def moment_on_branch(f: Pascals, e: Metres, d: Metres) -> NewtonMetres:
    """Moment on a branch, either way, that its round shell bears: the foot of both charts of the code.

    M_a = 4.90 f e² d/4

    ``f`` allowable tension [Pa]; ``e`` net thickness of the shell, ``d`` opening [m]. Returns [N·m].

    Hand working: 4.90 × 150 MPa × 8² mm² × 300/4 mm = 3.528 kN·m.

    >>> round(moment_on_branch(f=150e6, e=0.008, d=0.300))
    3528
    """
    return 4.90 * f * e**2 * d / 4


@formula("u = F/F_a + M/M_a", cites=[LOCAL_LOADS, FIRST_PRINCIPLES])
def share_of_pipe_load(F: Newtons, M: NewtonMetres, F_a: Newtons, M_a: NewtonMetres) -> Ratio:
    """Share of what a shell bears that the force and the moment of a pipe take together.

    u = F/F_a + M/M_a

    ``F`` force of the pipe [N]; ``M`` moment of the pipe [N·m]; ``F_a`` force that the shell bears without a moment
    [N]; ``M_a`` moment that it bears without a force [N·m]. Returns a ratio. Raises OutOfRange unless F_a and M_a are
    above 0.

    >>> round(share_of_pipe_load(F=1000.0, M=50.0, F_a=20000.0, M_a=2000.0), 6)
    0.075
    """
    require(F_a > 0 and M_a > 0, "the shell has no thickness left to bear a load")
    return F / F_a + M / M_a
