"""A material: its data from standards and handbooks, each figure with its range and its source."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from speclint.errors import NotKnown
from speclint.handbook.materials.allowables import allowable_tension
from speclint.handbook.materials.properties import LOADINGS, PROPERTIES, USES
from speclint.handbook.materials.tables import Table, celsius, look_up
from speclint.handbook.tables import Reading

#: The tables of each property, in the order in which they are tried.
Tables = Mapping[str, tuple[Table, ...]]


@dataclass(frozen=True)
class Material:
    """A material and its data.

    Every question gives a Reading in SI units. It raises NotKnown when the data do not hold the property, and
    OutOfRange outside the range of temperature or size that the source covers: nothing is extrapolated.
    Temperatures are in kelvin, sizes in metres.

    A specified strength reads with the specified least value as its nominal and its low; its high is the most
    that the standard allows, where it says so.
    """

    name: str
    title: str
    family: str
    standard: str
    structure: str = ""
    #: Which rule turns strengths into an allowable tension; see allowables.py.
    allowable: str = ""
    tables: Tables = field(default_factory=dict, repr=False, hash=False)

    def holds(self, key: str) -> bool:
        """True when the data hold a property, by the key that the file uses ("proof-stress")."""
        return key in self.tables

    def modulus(self, at: float) -> Reading:
        """Modulus of elasticity (Pa) at a metal temperature (K)."""
        return self._read("modulus", at)

    def shear_modulus(self, at: float) -> Reading:
        """Shear modulus (Pa) at a metal temperature (K).

        Where no source states it, G = E/(2(1 + ν)) of the isotropic metal, with the source of the modulus.
        """
        if self.holds("shear-modulus"):
            return self._read("shear-modulus", at)
        elastic, ratio = self.modulus(at), self.poisson()
        return Reading(
            f"shear modulus E/(2(1 + ν)) of {self.name} at {celsius(at)}",
            elastic.nominal / (2 * (1 + ratio.nominal)),
            elastic.low / (2 * (1 + ratio.high)),
            elastic.high / (2 * (1 + ratio.low)),
            elastic.unit,
            elastic.source,
        )

    def poisson(self) -> Reading:
        """Poisson's ratio."""
        return self._read("poisson")

    def density(self) -> Reading:
        """Density (kg/m³)."""
        return self._read("density")

    def expansion(self, at: float) -> Reading:
        """Mean coefficient of expansion (1/K) from 20 °C to a metal temperature (K), above or below 20 °C."""
        return self._read("expansion", at)

    def conductivity(self, at: float) -> Reading:
        """Thermal conductivity (W/(m·K)) at a metal temperature (K)."""
        return self._read("conductivity", at)

    def specific_heat(self, at: float) -> Reading:
        """Specific heat (J/(kg·K)) at a metal temperature (K)."""
        return self._read("specific-heat", at)

    def proof_stress(self, at: float, thickness: float | None = None) -> Reading:
        """Least yield or 0.2 % proof stress (Pa) at a metal temperature (K), for a thickness (m).

        Without a thickness, the least over all thicknesses of the standard. Grey iron has none: NotKnown.
        """
        return self._read("proof-stress", at, thickness)

    def one_percent_proof_stress(self, at: float, thickness: float | None = None) -> Reading:
        """Least 1 % proof stress (Pa) at a metal temperature (K): by which austenitic steels are judged."""
        return self._read("proof-stress-1-percent", at, thickness)

    def tensile_strength(self, at: float, thickness: float | None = None) -> Reading:
        """Least tensile strength (Pa) at a metal temperature (K), for a thickness (m).

        For cast iron the thickness is that of the wall, and the figure is the strength expected there.
        """
        return self._read("tensile-strength", at, thickness)

    def compressive_strength(self, at: float) -> Reading:
        """Compressive strength (Pa) at a metal temperature (K)."""
        return self._read("compressive-strength", at)

    def allowable_tension(self, at: float, wall: float | None = None) -> Reading:
        """Allowable tension (Pa) of a pressure part at a metal temperature (K), for a wall (m).

        The figure that a code states where the data hold it, else the rule that the data name, worked from
        the strengths. OutOfRange from the temperature at which creep governs.
        """
        if self.holds("allowable-tension"):
            return self._read("allowable-tension", at, wall)
        return allowable_tension(self, at, wall)

    def elongation(self) -> Reading:
        """Least elongation at fracture, as a fraction."""
        return self._read("elongation")

    def impact_energy(self, at: float) -> Reading:
        """Least V-notch impact energy (J) at a metal temperature (K)."""
        return self._read("impact-energy", at)

    def hardness(self) -> Reading:
        """Brinell hardness (HB), the band of the standard or of the trade."""
        return self._read("hardness")

    def composition(self, element: str) -> Reading:
        """Mass fraction of an element by its chemical symbol: 0.003 is 0.3 %."""
        return self._read(f"composition {element}")

    def elements(self) -> tuple[str, ...]:
        """The elements for which the data state a content."""
        return tuple(key.split()[1] for key in self.tables if key.startswith("composition "))

    def wire_strength(self, diameter: float) -> Reading:
        """Tensile strength (Pa) of spring wire at a wire diameter (m), least to most."""
        return self._read("wire-strength", size=diameter)

    def wire_temperature_limit(self) -> Reading:
        """Highest temperature (K) of a spring of this wire."""
        return self.temperature_limit("spring")

    def fatigue_strength(self, loading: str, diameter: float | None = None) -> Reading:
        """Fatigue strength (Pa) of a polished bar under fully reversed load, for a diameter (m).

        ``loading`` is "bending", "axial" or "torsion"; surface and notches are for the rule to add.
        """
        return self._read(_key("fatigue-strength", loading, LOADINGS), size=diameter)

    def temperature_limit(self, use: str) -> Reading:
        """Highest metal temperature (K) for a use: "pressure-part", "running-part", "bolting" or "spring"."""
        return self._read(_key("temperature-limit", use, USES))

    def carbon_equivalent(self, thickness: float | None = None) -> Reading:
        """Greatest carbon equivalent (IIW, mass fraction) that the standard allows, for a thickness (m)."""
        return self._read("carbon-equivalent", size=thickness)

    def proof_load_stress(self, diameter: float | None = None) -> Reading:
        """Stress under proof load (Pa) of a fastener, for a nominal diameter (m)."""
        return self._read("proof-load-stress", size=diameter)

    def time_dependent_from(self) -> Reading:
        """Temperature (K) from which creep strength, not proof stress, governs."""
        return self._read("time-dependent-from")

    def _read(self, key: str, at: float | None = None, size: float | None = None) -> Reading:
        head, _, part = key.partition(" ")
        kind = PROPERTIES[head]
        words = f"{kind.words}{f' ({part})' if part else ''} of {self.name}"
        if key not in self.tables:
            raise NotKnown(f"{words} is not in its data: state it, with a source, among your own materials")
        return look_up(self.tables[key], words, at=at, size=size, size_is=kind.size)


def _key(head: str, part: str, known: tuple[str, ...]) -> str:
    if part not in known:
        raise ValueError(f"{part!r} is not one of {known}")
    return f"{head} {part}"
