"""The ring of a gasket on which a joint bears."""

from __future__ import annotations

from msgspec import Struct

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.handbook.bolted_joints import gaskets
from speclint.rules import Sheet
from speclint.specs import BoltedJoint


@formula("G = (D_o + D_i)/2", cites=[FIRST_PRINCIPLES])
def mean_diameter(D_o: Metres, D_i: Metres) -> Metres:
    """Mean diameter of a ring.

    G = (D_o + D_i)/2

    D_o, D_i: outside and inside diameter, m. Returns m.

    >>> round(mean_diameter(D_o=0.56, D_i=0.52), 3)
    0.54
    """
    return (D_o + D_i) / 2


class GasketRing(Struct, frozen=True):
    """The effective ring of a gasket: its reaction diameter G and its effective width b, m."""

    G: float
    b: float


def gasket_ring(joint: BoltedJoint, sheet: Sheet) -> GasketRing:
    """Work the reaction diameter and the effective width of the gasket."""
    outside = sheet.take("D_o", joint.gasket.outside)
    inside = sheet.take("D_i", joint.gasket.inside)
    width = sheet.work("N", gaskets.contact_width, D_o=outside, D_i=inside)
    if sheet.read("form of the gasket", joint.gasket.form) == "flat":
        basic = sheet.work("b_0", gaskets.basic_seating_width, N=width)
        reaction = sheet.work("G", gaskets.gasket_reaction_diameter, D_o=outside, D_i=inside)
    else:
        basic = sheet.work("b_0", gaskets.basic_seating_width_of_ring_joint, w=width)
        reaction = sheet.work("G", mean_diameter, D_o=outside, D_i=inside)
    return GasketRing(reaction, sheet.work("b", gaskets.effective_seating_width, b_0=basic))
