"""Allowable tension of pressure parts, worked from the strengths by the rule that a material's data name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Protocol

from msgspec import Struct

from speclint.equations import FIRST_PRINCIPLES, Pascals, Ratio, Source, formula
from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.materials.tables import celsius
from speclint.handbook.tables import Reading

EN_13445_3 = Source("EN 13445-3, Unfired pressure vessels - Design", "2014", memory=True)
ASME_VIII = Source("ASME Boiler and Pressure Vessel Code, Section VIII Division 1", "2013", memory=True)
AD_2000_B0 = Source("AD 2000-Merkblatt B 0, Design of pressure vessels", "2008", memory=True)


def _allowable(place: str) -> Source:
    """A clause on design stress that was seen, not in print but as public programs give it."""
    return EN_13445_3.at(f"{place}, as reproduced in public programs", memory=False)


#: Temperature at which the standards state the tensile strength that a code divides: 20 °C.
ROOM = 293.15


@formula("S = k R", cites=[FIRST_PRINCIPLES])
def share_of_strength(k: Ratio, R: Pascals) -> Pascals:
    """Allowable stress, as a share of a strength.

    S = k R

    Parameters: k the share, whose source stands at the limit that gives it; R the strength, of whatever kind the
    rule names [Pa]. Returns: stress [Pa].

    Hand working, two thirds, rounded, of a proof stress of 300 MPa:

    >>> round(share_of_strength(k=0.67, R=300e6) / 1e6, 6)
    201.0
    """
    return k * R


@formula("S = k f", cites=[EN_13445_3.at("annex C, primary bending 1.5 f, primary and secondary 3 f")])
def multiple_of_allowable(k: Ratio, f: Pascals) -> Pascals:
    """Allowable stress, as a multiple of the nominal design stress.

    S = k f

    Parameters: k the multiple, 1.5 for bending through the wall; f nominal design stress [Pa]. Returns: [Pa].

    >>> multiple_of_allowable(k=1.5, f=158e6)
    237000000.0
    """
    return k * f


@formula("f = min(R_p/1.5, R_m/2.4)", cites=[_allowable("6.2, table 6-1")])
def wrought_steel_allowable(R_p: Pascals, R_m: Pascals) -> Pascals:
    """Nominal design stress of wrought non-austenitic steel.

    f = min(R_p/1.5, R_m/2.4)

    Parameters: R_p least 0.2 % proof stress at the metal temperature [Pa]; R_m least tensile strength at
    20 °C [Pa]. Returns: allowable membrane stress [Pa]. Valid below the temperature at which creep governs.

    Hand working, P265GH over 16 up to 40 mm at 300 °C: R_p = 166 MPa, R_m = 410 MPa; 166/1.5 = 110.67 MPa,
    410/2.4 = 170.8 MPa; the proof stress governs.

    >>> round(wrought_steel_allowable(166e6, 410e6) / 1e6, 2)
    110.67

    References: EN 13445-3:2014, 6.2, table 6-1 (as reproduced in public programs).
    """
    return min(R_p / 1.5, R_m / 2.4)


@formula("f = min(R_p/1.9, R_m/3)", cites=[_allowable("6.5, table 6-1, steel castings")])
def cast_steel_allowable(R_p: Pascals, R_m: Pascals) -> Pascals:
    """Nominal design stress of cast steel.

    f = min(R_p/1.9, R_m/3)

    Parameters: R_p least 0.2 % proof stress at the metal temperature [Pa]; R_m least tensile strength at
    20 °C [Pa]. Returns: allowable membrane stress [Pa]. Valid below the temperature at which creep governs.

    Hand working, GP240GH at 300 °C: 145/1.9 = 76.32 MPa, 420/3 = 140 MPa.

    >>> round(cast_steel_allowable(145e6, 420e6) / 1e6, 2)
    76.32

    References: EN 13445-3:2014, 6.5, table 6-1 (as reproduced in public programs).
    """
    return min(R_p / 1.9, R_m / 3.0)


@formula("f = R_p1/1.5", cites=[_allowable("6.4, table 6-1, austenitic steel, A ≥ 30 %")])
def austenitic_steel_allowable(R_p1: Pascals) -> Pascals:
    """Nominal design stress of austenitic steel whose elongation is 30 % or more.

    f = R_p1/1.5

    Parameters: R_p1 least 1 % proof stress at the metal temperature [Pa]. Returns: allowable membrane
    stress [Pa]. Valid below the temperature at which creep governs.

    >>> round(austenitic_steel_allowable(150e6) / 1e6, 1)
    100.0

    References: EN 13445-3:2014, 6.4, table 6-1 (as reproduced in public programs).
    """
    return R_p1 / 1.5


@formula("f = min(R_p/3, R_m/4)", cites=[_allowable("11.4.3, bolting of non-austenitic steel")])
def bolting_steel_allowable(R_p: Pascals, R_m: Pascals) -> Pascals:
    """Nominal design stress of bolts and studs in the calculation of a flange.

    f = min(R_p/3, R_m/4)

    Parameters: R_p least 0.2 % proof stress at the metal temperature [Pa]; R_m least tensile strength at
    20 °C [Pa]. Returns: allowable mean stress [Pa] on the root area; tightening may stress a stud higher.

    Hand working, 25CrMo4 at 300 °C: 363/3 = 121 MPa, 600/4 = 150 MPa.

    >>> round(bolting_steel_allowable(363e6, 600e6) / 1e6, 1)
    121.0

    References: EN 13445-3:2014, 11.4.3 (as reproduced in public programs).
    """
    return min(R_p / 3.0, R_m / 4.0)


@formula("f = R_m/10", cites=[ASME_VIII.at("UCI-23")])
def grey_iron_allowable(R_m: Pascals) -> Pascals:
    """Allowable tension of grey iron in a pressure part: a tenth of its strength.

    f = R_m/10

    Parameters: R_m tensile strength expected at the wall thickness [Pa]. Returns: allowable tension [Pa].

    >>> round(grey_iron_allowable(195e6) / 1e6, 1)
    19.5

    References: ASME BPVC Section VIII Division 1:2013, UCI-23 (from memory).
    """
    return R_m / 10.0


@formula("f = R_m/5", cites=[ASME_VIII.at("UCD-23")])
def ductile_iron_allowable(R_m: Pascals) -> Pascals:
    """Allowable tension of ductile iron in a pressure part: a fifth of its strength.

    f = R_m/5

    Parameters: R_m least tensile strength [Pa]. Returns: allowable tension [Pa], before any casting factor.

    >>> round(ductile_iron_allowable(400e6) / 1e6, 1)
    80.0

    References: ASME BPVC Section VIII Division 1:2013, UCD-23 (from memory).
    """
    return R_m / 5.0


@formula("f = R_m/4", cites=[AD_2000_B0.at("table 3, copper alloys, rolled and cast bronze")])
def copper_alloy_allowable(R_m: Pascals) -> Pascals:
    """Allowable tension of bronze and gunmetal in a pressure part: a quarter of the hot strength.

    f = R_m/4

    The table asks 3.5 of seamless and welded parts and 4 of soldered ones; the greater is taken for castings.

    Parameters: R_m least tensile strength at the metal temperature [Pa]. Returns: allowable tension [Pa].

    >>> round(copper_alloy_allowable(200e6) / 1e6, 1)
    50.0

    References: AD 2000-Merkblatt B 0:2008, table 3 (from memory).
    """
    return R_m / 4.0


class Allowable(Struct, frozen=True):
    """A rule for the allowable tension: in words, its source, and the work from strengths at one corner."""

    words: str
    source: Source
    proof: str
    tensile_at_room: bool
    work: Callable[[float, float], float]


#: The rules by the name that a data file uses.
ALLOWABLES: Mapping[str, Allowable] = {
    "wrought-steel": Allowable(
        "least of Rp0.2(T)/1.5 and Rm/2.4",
        _allowable("6.2, table 6-1"),
        "proof-stress",
        True,
        wrought_steel_allowable,
    ),
    "cast-steel": Allowable(
        "least of Rp0.2(T)/1.9 and Rm/3",
        _allowable("6.5, table 6-1"),
        "proof-stress",
        True,
        cast_steel_allowable,
    ),
    "austenitic-steel": Allowable(
        "Rp1.0(T)/1.5",
        EN_13445_3.at("6.4, table 6-1"),
        "proof-stress-1-percent",
        True,
        lambda proof, _: austenitic_steel_allowable(proof),
    ),
    "bolting-steel": Allowable(
        "least of Rp0.2(T)/3 and Rm/4", _allowable("11.4.3"), "proof-stress", True, bolting_steel_allowable
    ),
    "grey-iron": Allowable(
        "Rm/10 at the wall thickness",
        ASME_VIII.at("UCI-23"),
        "",
        False,
        lambda _, tensile: grey_iron_allowable(tensile),
    ),
    "ductile-iron": Allowable(
        "Rm/5", ASME_VIII.at("UCD-23"), "", False, lambda _, tensile: ductile_iron_allowable(tensile)
    ),
    "copper-alloy": Allowable(
        "Rm(T)/4", AD_2000_B0.at("table 3"), "", False, lambda _, tensile: copper_alloy_allowable(tensile)
    ),
}


class Strengths(Protocol):
    """What an allowable tension is worked from: the strengths of a material, and the rule that its data name."""

    @property
    def name(self) -> str:
        """What the material is called."""

    @property
    def allowable(self) -> str:
        """The rule that its data name; "" where they name none."""

    def holds(self, key: str) -> bool:
        """Whether its data hold a property."""

    def proof_stress(self, at: float, thickness: float | None = None) -> Reading:
        """Yield or 0.2 % proof stress."""

    def one_percent_proof_stress(self, at: float, thickness: float | None = None) -> Reading:
        """1 % proof stress."""

    def tensile_strength(self, at: float, thickness: float | None = None) -> Reading:
        """Tensile strength."""

    def time_dependent_from(self) -> Reading:
        """Temperature from which creep governs."""


def allowable_tension(material: Strengths, at: float, wall: float | None = None) -> Reading:
    """Work the allowable tension of a material at a metal temperature (K) and a wall (m).

    Raises:
        NotKnown: no rule of allowables is named for the material, or a strength it needs is not held.
        OutOfRange: outside the range of a strength, or where creep governs.
    """
    if not material.allowable:
        raise NotKnown(f"allowable tension of {material.name}: its data name no rule for pressure parts")
    rule = ALLOWABLES[material.allowable]
    _refuse_creep(material, at)
    proof = _proof(material, rule, at, wall)
    tensile = material.tensile_strength(ROOM if rule.tensile_at_room else at, wall)
    nominal = rule.work(proof.nominal, tensile.nominal)
    low = rule.work(proof.low, tensile.low)
    what = f"allowable tension {rule.words} of {material.name} at {celsius(at)}"
    return Reading(what, nominal, low, nominal, tensile.unit, rule.source)


def _proof(material: Strengths, rule: Allowable, at: float, wall: float | None) -> Reading:
    if rule.proof == "proof-stress-1-percent":
        return material.one_percent_proof_stress(at, wall)
    return material.proof_stress(at, wall) if rule.proof else material.tensile_strength(at, wall)


def _refuse_creep(material: Strengths, at: float) -> None:
    if not material.holds("time-dependent-from"):
        return
    limit = material.time_dependent_from().nominal
    if at > limit:
        raise OutOfRange(
            f"allowable tension of {material.name} at {celsius(at)}: creep governs above {celsius(limit)}, "
            "and no creep strength is held"
        )
