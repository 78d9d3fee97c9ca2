"""Stresses in the throats of the welds at the root of a bracket."""

from __future__ import annotations

from typing import NamedTuple

from speclint import Sheet
from speclint.equations import Metres, Pascals, Ratio, SquareMetres
from speclint.handbook.members import direct_stress
from speclint.specs import BracketWeld
from speclint_joints.formulae.brackets import stress_across_throat, throat_area, throat_modulus
from speclint_joints.formulae.weld_groups import (
    modulus_across,
    second_moment_across,
    shear_across_lines,
    shear_with_twist_of_welds,
    spread_of_lines,
    stress_with_bending_across,
    twist_of_group,
    twist_of_rectangle,
)
from speclint_joints.inputs.carried import Pulls


class Throats(NamedTuple):
    """Length of one weld, stress square to the face of the root, shear in the face across the welds, and all shear."""

    l: Metres  # noqa: E741
    σ: Pascals
    τ_t: Pascals
    τ: Pascals


class _Lines(NamedTuple):
    """Welds side by side: how many, throat, length, and the area of all throats."""

    n: Ratio
    a: Metres
    l: Metres  # noqa: E741
    A: SquareMetres


def stresses_in(name: str, weld: BracketWeld, pulls: Pulls, sheet: Sheet) -> Throats:
    """What the pulls make of welds side by side, at their worst corner.

    :raises NotCovered: of one fillet weld that is bent across its own line, or twisted.
    """
    n, a, l = sheet.count("n_w", weld.count), sheet.take("a_w", weld.throat), sheet.take("l_w", weld.length)  # noqa: E741
    A = sheet.work("A_w", throat_area, n=n, a=a, l=l)
    W = sheet.work("W", throat_modulus, n=n, a=a, l=l)
    σ = sheet.work("σ", stress_across_throat, M=pulls.M_x, W=W, P=pulls.P, A=A)
    τ, τ_T = sheet.work("τ", direct_stress, F=pulls.S, A=A), 0.0
    if pulls.M_y > 0 or pulls.T > 0:
        σ, τ_T = _with_twist(name, weld, _Lines(n, a, l, A), pulls, σ, sheet)
        τ = sheet.work("τ′", shear_with_twist_of_welds, τ_S=τ, τ_T=τ_T)
    τ_t = sheet.work("τ_t", shear_across_lines, S_x=pulls.S_x, A=A, τ_T=τ_T)
    return Throats(l, σ, τ_t, τ)


def _with_twist(
    name: str, weld: BracketWeld, lines: _Lines, pulls: Pulls, σ: Pascals, sheet: Sheet
) -> tuple[Pascals, Pascals]:
    """Stress with bending across the lines, and shear by twist."""
    n, a, l, _ = lines  # noqa: E741
    if n == 1 and sheet.read(f"weld {name}", weld.weld) == "fillet":
        said = f"weld {name} is one fillet, which is not to be bent about its own line or twisted"
        raise sheet.not_covered(f"{said}: {weld.where.file} states forces across it")
    b = sheet.take("b_w", weld.apart) if n > 1 else 0.0
    s = sheet.work("s_w", spread_of_lines, n=n, b=b) if n > 1 else 0.0
    I_y = sheet.work("I_y", second_moment_across, n=n, a=a, l=l, s=s)
    W_y = sheet.work("W_y", modulus_across, I_y=I_y, b=b, a=a)
    both = sheet.work("σ′", stress_with_bending_across, σ_x=σ, M_y=pulls.M_y, W_y=W_y)
    if n > 1:
        return both, sheet.work("τ_T", twist_of_group, T=pulls.T, I_y=I_y, n=n, a=a, l=l, b=b)
    return both, sheet.work("τ_T", twist_of_rectangle, T=pulls.T, L=max(l, a), t=min(l, a))
