"""Patterns of bolts: on a circle, or in rows from the edge on which a part would turn."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.equations import Metres, Newtons, SquareMetres
from speclint.specs import BoltedJoint
from speclint_joints.formulae.carried import (
    farthest_in_rows,
    pull_across_rows,
    pull_in_row,
    pull_of_bolt,
    pull_on_circle,
    shear_with_twist,
    squares_added,
)
from speclint_joints.inputs.carried import Pulls
from speclint_joints.inputs.studs import Studs


class Rows(Struct, frozen=True):
    """Rows of bolts: how many in each, distance of each from the edge and the width of a row."""

    k: int
    y: tuple[Metres, ...]
    w: Metres


def pattern_of(joint: BoltedJoint, studs: Studs, sheet: Sheet) -> Rows | None:
    """The rows of a joint; None where its bolts stand on a circle. Not assessed where rows and count differ."""
    if not joint.rows:
        return None
    k = sheet.count("k", joint.per_row)
    if k * len(joint.rows) != studs.n:
        said = f"{len(joint.rows)} rows of {k} bolts are stated, but {studs.n} bolts"
        raise sheet.not_assessed(said, joint.per_row.where)
    y = tuple(sheet.take(f"y_{number}", one) for number, one in enumerate(joint.rows, start=1))
    return Rows(k, y, sheet.take("w", joint.row_width))


def pull_on_worst(joint: BoltedJoint, pulls: Pulls, studs: Studs, sheet: Sheet) -> Newtons:
    """Pull on the worst bolt of a pattern, N."""
    rows = pattern_of(joint, studs, sheet)
    if rows is None:
        D = sheet.take("D_b", joint.circle)
        along = sheet.work("F_x", pull_on_circle, M=pulls.M_x, n=studs.n, D=D)
        across = sheet.work("F_y", pull_on_circle, M=pulls.M_y, n=studs.n, D=D)
        return sheet.work("F_b", pull_of_bolt, F_x=along, F_y=across, P=pulls.P, n=studs.n)
    s: SquareMetres = 0.0
    for y in rows.y:
        s = sheet.work("Σy²", squares_added, s_0=s, k=rows.k, y=y)
    along = sheet.work("F_x", pull_in_row, M=pulls.M_x, y=max(rows.y), s=s)
    across = sheet.work("F_y", pull_across_rows, M=pulls.M_y, w=rows.w, k=len(rows.y))
    return sheet.work("F_b", pull_of_bolt, F_x=along, F_y=across, P=pulls.P, n=studs.n)


def shear_of_pattern(joint: BoltedJoint, pulls: Pulls, studs: Studs, sheet: Sheet) -> Newtons:
    """Shear of a pattern with its twist, N."""
    rows = pattern_of(joint, studs, sheet)
    if rows is None:
        D = sheet.take("D_b", joint.circle)
        r = D / 2
        s = sheet.work("Σr²", squares_added, s_0=0.0, k=studs.n, y=r)
        return sheet.work("V", shear_with_twist, S=pulls.S, n=studs.n, T=pulls.T, r=r, s=s)
    w = rows.w
    middle = sum(rows.y) / len(rows.y)
    s = sheet.work("Σr²", squares_added, s_0=0.0, k=studs.n, y=w / 2 if rows.k == 2 else 0.0)
    for y in rows.y:
        s = sheet.work("Σr²", squares_added, s_0=s, k=rows.k, y=y - middle)
    r = sheet.work("r_b", farthest_in_rows, h=max(rows.y) - min(rows.y), w=w)
    return sheet.work("V", shear_with_twist, S=pulls.S, n=studs.n, T=pulls.T, r=r, s=s)
