"""Whether a steel welds without cracking, from its composition; and how near a cast iron is to the eutectic.

Contents are mass fractions: 0.18 % of carbon is 0.0018. Results of the linear forms are mass fractions too.

>>> round(carbon_equivalent(C=0.0025, Mn=0.0128, Cr=0.00088, Mo=0.0, V=0.0, Ni=0.0006, Cu=0.00109), 5)
0.00492
"""

from __future__ import annotations

import math

from speclint.equations import (
    COMMON_PRACTICE,
    CubicMetresPerKilogram,
    JoulesPerMetre,
    Kelvins,
    Metres,
    Ratio,
    Source,
    formula,
    require,
)
from speclint.errors import NotKnown
from speclint.handbook.tables import Reading, Row, rows

EN_1011_2 = Source(
    "EN 1011-2, Welding, Recommendations for arc welding of ferritic steels", "2001", memory=True
)
ITO_BESSYO = Source(
    "Y. Ito and K. Bessyo, Weldability formula of high strength steels, IIW IX-576",
    "1968",
    "cracking parameter P_cm",
    memory=True,
)
FOUNDRY = Source("C. F. Walton, Iron Castings Handbook", "1981", memory=True)
_BANDS = "weldability-bands-common-practice.csv"
_ICE = 273.15
_FRACTIONS = "mass fractions"
_PER_CENT = 0.01
_ML_PER_100_G = 1e-5
_KJ_PER_MM = 1e6
#: Contents for which EN 1011-2 (C.2.1) gives CET, per cent: least, greatest.
_CET_RANGES = {
    "C": (0.05, 0.32),
    "Mn": (0.5, 1.9),
    "Mo": (0, 0.75),
    "Cr": (0, 1.5),
    "Cu": (0, 0.7),
    "Ni": (0, 2.5),
}


@formula(
    "CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15",
    cites=[EN_1011_2.at("C.2.1, method A")],
    empirical=_FRACTIONS,
)
def carbon_equivalent(C: Ratio, Mn: Ratio, Cr: Ratio, Mo: Ratio, V: Ratio, Ni: Ratio, Cu: Ratio) -> Ratio:
    """Carbon equivalent of the International Institute of Welding.

    C, Mn, Cr, Mo, V, Ni, Cu: mass fractions. Returns a mass fraction. For steel: carbon to 2.1 %.
    """
    _check_steel(C, Mn, Cr, Mo, V, Ni, Cu)
    return C + Mn / 6 + (Cr + Mo + V) / 5 + (Ni + Cu) / 15


@formula(
    "CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40",
    cites=[EN_1011_2.at("C.3, method B")],
    empirical=_FRACTIONS,
)
def carbon_equivalent_cet(C: Ratio, Mn: Ratio, Mo: Ratio, Cr: Ratio, Cu: Ratio, Ni: Ratio) -> Ratio:
    """Carbon equivalent CET, on which the preheat temperature of EN 1011-2 rests.

    ``C`` carbon, 0.05 to 0.32 %; ``Mn`` manganese, 0.5 to 1.9 %; ``Mo`` molybdenum, to 0.75 %; ``Cr`` chromium, to 1.5
    %; ``Cu`` copper, to 0.7 %; ``Ni`` nickel, to 2.5 %. Each is a mass fraction. Returns a mass fraction.

    Hand working: 0.18 + 1.45/10 + (0.05 + 0.10)/20 + 0.08/40 = 0.3345 %.

    >>> round(carbon_equivalent_cet(C=0.0018, Mn=0.0145, Mo=0.0, Cr=0.0005, Cu=0.0010, Ni=0.0008), 6)
    0.003345
    """
    for name, content in {"C": C, "Mn": Mn, "Mo": Mo, "Cr": Cr, "Cu": Cu, "Ni": Ni}.items():
        _check_range(f"{name}, % for CET,", content / _PER_CENT, *_CET_RANGES[name])
    return C + (Mn + Mo) / 10 + (Cr + Cu) / 20 + Ni / 40


@formula(
    "P_cm = C + Si/30 + (Mn + Cu + Cr)/20 + Ni/60 + Mo/15 + V/10 + 5 B",
    cites=[ITO_BESSYO],
    empirical=_FRACTIONS,
)
def cracking_parameter(
    C: Ratio, Si: Ratio, Mn: Ratio, Cu: Ratio, Cr: Ratio, Ni: Ratio, Mo: Ratio, V: Ratio, B: Ratio
) -> Ratio:
    """Cracking parameter P_cm, for steels of little carbon (to about 0.18 %).

    C, Si, Mn, Cu, Cr, Ni, Mo, V, B: mass fractions. Returns a mass fraction.

    Hand working: 0.10 + 0.30/30 + (1.40 + 0.20 + 0.10)/20 + 0.30/60 + 0.15/15 + 0.05/10 + 5 × 0.001 = 0.22 %.

    >>> round(cracking_parameter(0.0010, 0.0030, 0.0140, 0.0020, 0.0010, 0.0030, 0.0015, 0.0005, 0.00001), 6)
    0.0022
    """
    _check_steel(C, Si, Mn, Cu, Cr, Ni, Mo, V, B)
    return C + Si / 30 + (Mn + Cu + Cr) / 20 + Ni / 60 + Mo / 15 + V / 10 + 5 * B


@formula(
    "T_p = (697 CET/% + 160 tanh(d/(35 mm)) + 62 (100 g HD/cm³)^0.35 + (53 CET/% − 32) Q mm/kJ − 328) °C",
    cites=[EN_1011_2.at("C.3.2, method B")],
    empirical="per cent, millimetres, ml/100 g, kJ/mm and °C",
)
def preheat_temperature(CET: Ratio, d: Metres, HD: CubicMetresPerKilogram, Q: JoulesPerMetre) -> Kelvins:
    """Preheat that keeps a weld from cracking cold; a result below the workshop's temperature means none.

    CET: carbon equivalent, 0.2 to 0.5 %, as a mass fraction. d: plate, 10 to 90 mm, m. HD: diffusible hydrogen,
    1 to 20 ml/100 g (1 ml/100 g is 1e-5 m³/kg). Q: heat input, 0.5 to 4 kJ/mm, J/m. Returns K.

    Hand working: 0.40 %, 35 mm, 5 ml/100 g, 1 kJ/mm: 278.8 + 121.86 + 108.90 - 10.8 - 328 = 170.8 °C.

    >>> round(preheat_temperature(CET=0.0040, d=0.035, HD=5e-5, Q=1e6) - 273.15, 1)
    170.8
    """
    cet, plate, hydrogen, heat = CET / _PER_CENT, d * 1e3, HD / _ML_PER_100_G, Q / _KJ_PER_MM
    _check_preheat(cet, plate, hydrogen, heat)
    by_steel = 697 * cet + 160 * math.tanh(plate / 35)
    celsius: float = by_steel + 62 * hydrogen**0.35 + (53 * cet - 32) * heat - 328
    return celsius + _ICE


def preheat_band(CE: float) -> Reading:
    """Preheat by common practice at a carbon equivalent (IIW, mass fraction): a range, K."""
    found = _band(CE)
    low, high = (float(found[name]) + _ICE for name in ("preheat_low_C", "preheat_high_C"))
    what = f"preheat at carbon equivalent {CE / _PER_CENT:.3g} %"
    return Reading(what, (low + high) / 2, low, high, "K", COMMON_PRACTICE)


def weldability(CE: float) -> str:
    """Weldability by common practice at a carbon equivalent (IIW, mass fraction), in words."""
    return _band(CE)["weldability"]


@formula("CE = C + (Si + P)/3", cites=[FOUNDRY.at("carbon equivalent")], empirical=_FRACTIONS)
def carbon_equivalent_of_iron(C: Ratio, Si: Ratio, P: Ratio) -> Ratio:
    """Carbon equivalent of cast iron; the eutectic is at 4.3 %.

    C, Si, P: mass fractions; C from 2 to 5 %. Returns a mass fraction.

    >>> round(carbon_equivalent_of_iron(C=0.033, Si=0.015, P=0.005), 5)  # hand: 3.3 + 2.0/3
    0.03967
    """
    _check_iron(C, Si, P)
    return C + (Si + P) / 3


@formula(
    "S_c = C/(0.0426 − 0.31 Si − 0.27 P)", cites=[FOUNDRY.at("degree of saturation")], empirical=_FRACTIONS
)
def saturation_of_iron(C: Ratio, Si: Ratio, P: Ratio) -> Ratio:
    """Degree of saturation of cast iron: 1 at the eutectic, below it stronger and harder to cast.

    C, Si, P: mass fractions; C from 2 to 5 %. Returns a ratio.

    Hand working: 3.3/(4.26 - 0.465 - 0.135) = 0.9016.

    >>> round(saturation_of_iron(C=0.033, Si=0.015, P=0.005), 4)
    0.9016
    """
    _check_iron(C, Si, P)
    return C / (0.0426 - 0.31 * Si - 0.27 * P)


def _band(CE: float) -> Row:
    for found in rows(_BANDS):
        if float(found["from"]) <= CE / _PER_CENT < float(found["below"]):
            return found
    raise NotKnown(f"carbon equivalent {CE / _PER_CENT:.3g} % is beyond the bands, 0 to 1.5 %")


def _check_steel(C: float, *others: float) -> None:
    _check_range("carbon of steel, %,", C / _PER_CENT, 0, 2.1)
    for content in others:
        _check_range("a content, %,", content / _PER_CENT, 0, 100)


def _check_iron(C: float, Si: float, P: float) -> None:
    _check_range("carbon of cast iron, %,", C / _PER_CENT, 2, 5)
    _check_range("silicon of cast iron, %,", Si / _PER_CENT, 0, 6)
    _check_range("phosphorus of cast iron, %,", P / _PER_CENT, 0, 2)


def _check_preheat(cet: float, plate: float, hydrogen: float, heat: float) -> None:
    _check_range("CET, %,", cet, 0.2, 0.5)
    _check_range("plate, mm,", plate, 10, 90)
    _check_range("diffusible hydrogen, ml/100 g,", hydrogen, 1, 20)
    _check_range("heat input, kJ/mm,", heat, 0.5, 4)


def _check_range(what: str, value: float, least: float, greatest: float) -> None:
    """Refuse a value outside its range; the round-off of a change of units is let pass."""
    slack = 1e-9 * greatest
    require(
        least - slack <= value <= greatest + slack,
        f"{what} of {value:.4g} is outside {least:g} to {greatest:g}",
    )
