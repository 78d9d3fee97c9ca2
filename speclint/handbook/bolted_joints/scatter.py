"""Scatter of the preload by the method of tightening, and loss of preload by embedding.

>>> method = scatter("torque wrench")
>>> round(method.low, 2), round(method.high, 2)
(0.25, 0.3)
>>> round(preload_low(F=100e3, s=method.high)), round(preload_high(F=100e3, s=method.high))
(70000, 130000)
"""

from __future__ import annotations

from speclint.equations import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Metres,
    Newtons,
    NewtonsPerMetre,
    Ratio,
    Source,
    formula,
    require,
)
from speclint.errors import NotKnown
from speclint.handbook.tables import VDI_2230, Reading, Row, entries, row, rows

_METHODS = "tightening-methods-vdi-2230-2003.csv"
_EMBEDDING = "embedding-vdi-2230-2003.csv"
_MICROMETRE = 1e-6
_METHODS_TABLE = VDI_2230.at("Table A8, as reproduced in public calculations and lecture notes", memory=False)
_TABLE_OF_EMBEDDING = VDI_2230.at(
    "Table 5.4/1, as reproduced in three public calculation sources", memory=False
)


def tightening_methods() -> tuple[str, ...]:
    """Names of the methods of tightening, that with the least scatter first."""
    return entries(_METHODS, "method")


def scatter(method: str) -> Reading:
    """Scatter of preload each side of its mean, as a ratio, for a method of tightening.

    The low is careful work, the high ordinary work; the nominal stands midway. NotKnown for a method
    that is not in the table.
    """
    found = row(_METHODS, "method", method)
    low, high = (scatter_of_factor(float(found[name])) for name in ("factor_low", "factor_high"))
    return Reading(f"scatter of preload, {method}", (low + high) / 2, low, high, "", _source_of(found))


def _source_of(found: Row) -> Source:
    return _METHODS_TABLE if found["source"] == "VDI 2230" else COMMON_PRACTICE


@formula("s = (α_A − 1)/(α_A + 1)", cites=[_METHODS_TABLE])
def scatter_of_factor(alpha_A: Ratio) -> Ratio:
    """Scatter each side of the mean preload that a tightening factor stands for.

    alpha_A: greatest over least preload, at least 1. Returns a ratio from 0 to 1. Raises OutOfRange outside.

    >>> round(scatter_of_factor(alpha_A=1.6), 2)  # VDI 2230, Table A8: ±23 %
    0.23
    """
    require(alpha_A >= 1, f"tightening factor {alpha_A:.3g} is below 1")
    return (alpha_A - 1) / (alpha_A + 1)


@formula("F_low = F (1 − s)", cites=[FIRST_PRINCIPLES])
def preload_low(F: Newtons, s: Ratio) -> Newtons:
    """Least preload that a method of tightening leaves.

    F: mean preload, N. s: scatter, 0 to 1. Returns N.
    """
    _check(s)
    return F * (1 - s)


@formula("F_high = F (1 + s)", cites=[FIRST_PRINCIPLES])
def preload_high(F: Newtons, s: Ratio) -> Newtons:
    """Greatest preload that a method of tightening leaves.

    F: mean preload, N. s: scatter, 0 to 1. Returns N.
    """
    _check(s)
    return F * (1 + s)


def embedding(roughness: float, joint_faces: int, nut_faces: int = 1, *, across: bool = False) -> Reading:
    """Embedding of a tightened joint: its thread, the faces of nut and head and the faces between.

    ``roughness`` is Rz of the coarsest face, m, up to 160 µm; ``joint_faces`` counts faces that touch between nut
    and thread, gaskets apart (a gasket creeps on its own account); ``nut_faces`` is 1 for a stud, 2 for a bolt;
    ``across`` says that the joint carries a load across its bolts. m.
    """
    load = "across" if across else "along"
    for found in rows(_EMBEDDING):
        if found["load"] == load and roughness < float(found["roughness_to"]) * _MICROMETRE:
            under_nuts, between = float(found["nut or head face"]), float(found["joint face"])
            settled = float(found["thread"]) + under_nuts * nut_faces + between * joint_faces
            what = f"embedding, Rz {roughness / _MICROMETRE:.3g} µm, {joint_faces} joint faces, load {load} the bolts"
            return Reading.exact(what, settled * _MICROMETRE, "m", _TABLE_OF_EMBEDDING)
    raise NotKnown(f"embedding is tabulated to Rz 160 µm; {roughness / _MICROMETRE:.3g} µm is rougher")


@formula("F_Z = f_Z/(1/k_b + 1/k_m)", cites=[VDI_2230.at("eq. 135")])
def preload_lost(f_Z: Metres, k_b: NewtonsPerMetre, k_m: NewtonsPerMetre) -> Newtons:
    """Preload lost when a joint settles.

    f_Z: settlement, m. k_b: stiffness of the stud, N/m. k_m: stiffness of the clamped parts, N/m. Returns N.

    Hand working: 10 µm on two springs of 1 MN/mm, 0.5 MN/mm together, lose 5 kN.

    >>> round(preload_lost(f_Z=10e-6, k_b=1e9, k_m=1e9))
    5000
    """
    return f_Z / (1 / k_b + 1 / k_m)


def _check(s: float) -> None:
    require(0 <= s <= 1, f"scatter {s:.3g} is not from 0 to 1")
