"""Figures of a metal as its list has them, without the band that they lie in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import Kelvins
from speclint.handbook.tables import Reading

if TYPE_CHECKING:
    from speclint.handbook.materials import Material


def modulus_as_listed(metal: Material, at: Kelvins) -> Reading:
    """The modulus of elasticity of a metal, the middle of its band [Pa]."""
    return _middle(metal.modulus(at))


def poisson_as_listed(metal: Material) -> Reading:
    """Poisson's ratio of a metal, the middle of its band."""
    return _middle(metal.poisson())


def _middle(found: Reading) -> Reading:
    return Reading.exact(found.what, found.nominal, found.unit, found.source)
