"""Springs in heat: highest temperature of the wire, and load lost by relaxation."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Kelvins, Newtons, Pascals, Ratio, Source, formula, require
from speclint.errors import NotKnown
from speclint.handbook import tables
from speclint.handbook.springs.helical import EN_13906_1
from speclint.handbook.tables import Reading, between

TEMPERATURE = "spring-wire-temperature-smi-1991.csv"
RELAXATION = "spring-relaxation-en-13906-1-2013.csv"
SMI = Source(
    "Spring Manufacturers Institute, Handbook of Spring Design",
    "1991",
    "wire temperatures, as reproduced in a wire maker's table (X-750 from memory)",
)
RELAXATION_DIAGRAMS = EN_13906_1.at("annex A, relaxation diagrams, 48 hours")

#: Stress of the relaxation table, and the highest stress to which it is extended in proportion [Pa].
TABLE_STRESS: Pascals = 800e6
HIGHEST_STRESS: Pascals = 1000e6

_ZERO_CELSIUS = 273.15
_LOW, _HIGH = 0.5, 1.5


def highest_wire_temperature(wire: str) -> Reading:
    """Highest temperature at which a spring wire is commonly used.

    ``wire`` grade ("VDSiCr", "SH", "1.4568"); NotKnown for others. [K].

    >>> round(highest_wire_temperature("VDSiCr").nominal - 273.15)
    246
    """
    found = tables.row(TEMPERATURE, "wire", wire)
    value = float(found["temperature"]) + _ZERO_CELSIUS
    return Reading.exact(f"highest temperature of {wire} wire (as {found['astm']})", value, "K", SMI)


def grade_of_wire(material: str) -> str:
    """The grade of wire that the name of a material ends with or holds, as a drawing writes it; "" where it has none.

    >>> grade_of_wire("wire-oil-tempered-VDSiCr"), grade_of_wire("wire-stainless-1.4310-HS"), grade_of_wire("brass")
    ('VDSiCr', '1.4310', '')
    """
    known = {found["wire"] for found in tables.rows(TEMPERATURE)}
    return next((part for part in material.split("-") if part in known), "")


def relaxation_loss(wire: str, T: Kelvins, tau: Pascals) -> Reading:
    """Share of its load that a preset spring loses in 48 hours held hot at a stress, recalled.

    ``wire`` grade; ``T`` temperature [K]; ``tau`` uncorrected shear stress at the held length [Pa].
    From the table at 800 MPa in proportion to the stress, up to 1000 MPa. Low is half and high one and a
    half times the nominal. Below 20 °C the loss is taken as at 20 °C. NotKnown for a wire not tabulated;
    OutOfRange above its temperatures, or for a stress below 0 or above 1000 MPa. Losses go on slowly after
    48 hours.

    >>> round(relaxation_loss("VDSiCr", T=433.15, tau=400e6).nominal, 4)
    0.03
    """
    require(
        0 <= tau <= HIGHEST_STRESS,
        f"stress {tau / 1e6:.6g} MPa is outside the relaxation table, 0 to 1000 MPa",
    )
    points = [(float(row["temperature"]), float(row["loss"])) for row in _rows(wire)]
    celsius = max(T - _ZERO_CELSIUS, points[0][0])
    loss = between(points, celsius, f"relaxation of {wire} over °C") * tau / TABLE_STRESS
    what = f"relaxation of {wire} wire at {T - _ZERO_CELSIUS:.0f} °C and {tau / 1e6:.0f} MPa"
    return Reading(what, loss, _LOW * loss, _HIGH * loss, "", RELAXATION_DIAGRAMS)


@formula("F_r = F (1 − r)", cites=[FIRST_PRINCIPLES])
def relaxed_load(F: Newtons, r: Ratio) -> Newtons:
    """Load left at the same length after relaxation.

    F_r = F (1 − r)

    ``F`` load when new [N]; ``r`` share lost (``relaxation_loss``). Returns [N].
    Raises OutOfRange unless 0 ≤ r < 1.

    >>> round(relaxed_load(F=1000.0, r=0.06), 6)
    940.0
    """
    require(0 <= r < 1, f"relaxation {r:.6g} is not between 0 and 1")
    return F * (1 - r)


def _rows(wire: str) -> list[tables.Row]:
    rows = [row for row in tables.rows(RELAXATION) if row["wire"] == wire]
    if not rows:
        known = sorted(set(tables.entries(RELAXATION, "wire")))
        raise NotKnown(f"no relaxation figures for wire {wire!r}; known: {', '.join(known)}")
    return rows
