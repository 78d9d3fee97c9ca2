"""The units the trade writes, by dimension, each with its SI value.

The table covers nearly every spec without importing pint. pint is the authority: a test proves each entry against it.
Temperatures are not here: they have an offset and are read in :mod:`speclint.quantities.measure`.
"""

from __future__ import annotations

from msgspec import Struct


class Dimension(Struct, frozen=True):
    """One kind of quantity: its SI unit, what a sheet writes it in, and the units a spec may use.

    ``shown`` is a unit of ``units``. ``pint`` writes the SI unit for pint.
    """

    name: str
    si: str
    shown: str
    pint: str
    units: dict[str, float]


_INCH = 0.0254  # exact: international yard and pound agreement, 1959
_FOOT = 12 * _INCH
_POUND = 0.45359237  # kg, exact: the same agreement
_GRAVITY = 9.80665  # m/s², exact: CGPM 3 (1901)
_LBF = _POUND * _GRAVITY
_TONF = 2240 * _LBF  # the long ton of British practice
_PSI = _LBF / _INCH**2
_HP = 550 * _FOOT * _LBF  # mechanical horsepower
_BTU = 1055.05585262  # J, exact: International Table Btu
_TURN = 6.283185307179586  # rad
_DEGREE = _TURN / 360
_MINUTE = 60.0
_HOUR = 3600.0
_YEAR = 365.25 * 24 * _HOUR  # the Julian year

_PRESSURES = {
    "Pa": 1.0,
    "kPa": 1e3,
    "MPa": 1e6,
    "GPa": 1e9,
    "bar": 1e5,
    "mbar": 1e2,
    "N/mm²": 1e6,
    "kgf/cm²": _GRAVITY / 1e-4,
    "psi": _PSI,
    "ksi": 1e3 * _PSI,
    "lbf/in²": _PSI,
    "tonf/in²": _TONF / _INCH**2,
}

DIMENSIONS: dict[str, Dimension] = {
    dimension.name: dimension
    for dimension in (
        Dimension(
            "length",
            "m",
            "mm",
            "meter",
            {
                "m": 1.0,
                "cm": 1e-2,
                "mm": 1e-3,
                "µm": 1e-6,
                "km": 1e3,
                "in": _INCH,
                "ft": _FOOT,
                "mile": 5280 * _FOOT,
                "thou": 1e-3 * _INCH,
            },
        ),
        Dimension(
            "area",
            "m²",
            "mm²",
            "meter**2",
            {"m²": 1.0, "cm²": 1e-4, "mm²": 1e-6, "in²": _INCH**2, "ft²": _FOOT**2},
        ),
        Dimension(
            "volume",
            "m³",
            "cm³",
            "meter**3",
            {"m³": 1.0, "cm³": 1e-6, "mm³": 1e-9, "l": 1e-3, "in³": _INCH**3, "ft³": _FOOT**3},
        ),
        Dimension("angle", "rad", "°", "radian", {"rad": 1.0, "°": _DEGREE, "deg": _DEGREE}),
        Dimension(
            "mass", "kg", "kg", "kilogram", {"kg": 1.0, "g": 1e-3, "t": 1e3, "lb": _POUND, "oz": _POUND / 16}
        ),
        Dimension(
            "force",
            "N",
            "N",
            "newton",
            {"N": 1.0, "kN": 1e3, "MN": 1e6, "kgf": _GRAVITY, "lbf": _LBF, "tonf": _TONF},
        ),
        Dimension(
            "moment",
            "N·m",
            "N·m",
            "newton*meter",
            {
                "N·m": 1.0,
                "N m": 1.0,
                "kN·m": 1e3,
                "N·mm": 1e-3,
                "lbf·ft": _LBF * _FOOT,
                "lbf ft": _LBF * _FOOT,
                "lbf·in": _LBF * _INCH,
                "lbf in": _LBF * _INCH,
            },
        ),
        Dimension("pressure", "Pa", "bar", "pascal", _PRESSURES),
        Dimension("stress", "Pa", "MPa", "pascal", _PRESSURES),
        Dimension(
            "stiffness",
            "N/m",
            "N/mm",
            "newton/meter",
            {"N/m": 1.0, "N/mm": 1e3, "kN/mm": 1e6, "lbf/in": _LBF / _INCH},
        ),
        Dimension("time", "s", "s", "second", {"s": 1.0, "min": _MINUTE, "h": _HOUR, "year": _YEAR}),
        Dimension(
            "speed",
            "m/s",
            "m/s",
            "meter/second",
            {
                "m/s": 1.0,
                "km/h": 1e3 / _HOUR,
                "mph": 5280 * _FOOT / _HOUR,
                "ft/s": _FOOT,
                "ft/min": _FOOT / _MINUTE,
                "mm/year": 1e-3 / _YEAR,
                "thou/year": 1e-3 * _INCH / _YEAR,
            },
        ),
        Dimension(
            "wasting rate",
            "m/s",
            "mm/year",
            "meter/second",
            {"mm/year": 1e-3 / _YEAR, "thou/year": 1e-3 * _INCH / _YEAR},
        ),
        Dimension("acceleration", "m/s²", "m/s²", "meter/second**2", {"m/s²": 1.0, "ft/s²": _FOOT}),
        Dimension(
            "rotational speed",
            "rad/s",
            "rev/min",
            "radian/second",
            {"rad/s": 1.0, "rev/min": _TURN / _MINUTE, "rev/s": _TURN},
        ),
        Dimension("frequency", "1/s", "Hz", "1/second", {"1/s": 1.0, "Hz": 1.0}),
        Dimension(
            "density",
            "kg/m³",
            "kg/m³",
            "kilogram/meter**3",
            {"kg/m³": 1.0, "g/cm³": 1e3, "lb/in³": _POUND / _INCH**3, "lb/ft³": _POUND / _FOOT**3},
        ),
        Dimension("inertia", "kg·m²", "kg·cm²", "kilogram*meter**2", {"kg·m²": 1.0, "kg·cm²": 1e-4}),
        Dimension(
            "mass flow",
            "kg/s",
            "kg/s",
            "kilogram/second",
            {"kg/s": 1.0, "kg/h": 1 / _HOUR, "t/h": 1e3 / _HOUR, "lb/h": _POUND / _HOUR},
        ),
        Dimension("power", "W", "kW", "watt", {"W": 1.0, "kW": 1e3, "hp": _HP}),
        Dimension("energy", "J", "J", "joule", {"J": 1.0, "kJ": 1e3, "ft·lbf": _FOOT * _LBF}),
        Dimension("viscosity", "Pa·s", "mPa·s", "pascal*second", {"Pa·s": 1.0, "mPa·s": 1e-3}),
        Dimension(
            "kinematic viscosity",
            "m²/s",
            "mm²/s",
            "meter**2/second",
            {"m²/s": 1.0, "mm²/s": 1e-6, "cSt": 1e-6},
        ),
        Dimension(
            "pressure times speed",
            "Pa·m/s",
            "MPa·m/s",
            "pascal*meter/second",
            {"Pa·m/s": 1.0, "MPa·m/s": 1e6, "psi·ft/min": _PSI * _FOOT / _MINUTE},
        ),
        Dimension(
            "thermal conductivity",
            "W/(m·K)",
            "W/(m·K)",
            "watt/(meter*kelvin)",
            {"W/(m·K)": 1.0, "Btu/(h·ft·°F)": _BTU / (_HOUR * _FOOT) * 1.8},
        ),
        Dimension("heat transfer", "W/(m²·K)", "W/(m²·K)", "watt/(meter**2*kelvin)", {"W/(m²·K)": 1.0}),
        Dimension("heat flux", "W/m²", "W/m²", "watt/meter**2", {"W/m²": 1.0, "kW/m²": 1e3}),
        Dimension("expansion", "1/K", "1e-6/K", "1/kelvin", {"1/K": 1.0, "1e-6/K": 1e-6, "1/°F": 1.8}),
        Dimension("voltage", "V", "V", "volt", {"V": 1.0, "mV": 1e-3}),
        Dimension("ratio", "", "", "dimensionless", {"": 1.0, "%": 1e-2}),
        # Hardness scales are not converted into one another: ISO 18265 forbids it without naming the material.
        Dimension("Brinell hardness", "HB", "HB", "", {"HB": 1.0, "HBW": 1.0}),
        Dimension("Rockwell hardness", "HRC", "HRC", "", {"HRC": 1.0}),
        Dimension("Vickers hardness", "HV", "HV", "", {"HV": 1.0}),
    )
}

#: Other spellings of the same units, so that a keyboard without superscripts is enough.
SPELLINGS = {
    "um": "µm",
    "μm": "µm",  # Greek mu for the micro sign
    '"': "in",
    "inch": "in",
    "inches": "in",
    "rpm": "rev/min",
    "1/min": "rev/min",
    "min⁻¹": "rev/min",
    "Nm": "N·m",
    "kNm": "kN·m",
    "Nmm": "N·mm",
    "N*m": "N·m",
    "ft lbf": "lbf·ft",
    "lb/in²": "psi",
    "tsi": "tonf/in²",
    "ton/in²": "tonf/in²",
    "percent": "%",
    "W/mK": "W/(m·K)",
    "W/m²K": "W/(m²·K)",
    "10⁻⁶/K": "1e-6/K",
}
