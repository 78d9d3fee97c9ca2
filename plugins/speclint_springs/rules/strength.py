"""Strength under steady load: tensile strength of the wire, stress at full lift and at solid length."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, Source, rule
from speclint.equations import Metres, Pascals
from speclint.handbook.materials import share_of_strength
from speclint.handbook.springs import deflection, en_13906_1_clause, shear_stress, spring_load
from speclint.specs import CompressionSpring
from speclint_springs.formulae.tables import least_wire_strength
from speclint_springs.inputs import greatest_solid_length, mean_diameter, open_load, rate
from speclint_springs.sources import EN_10270

DIN_2089 = Source(
    "DIN 2089-1, Helical compression springs of round wire and bar: calculation", "1984", memory=True
)


@rule(
    "coil-spring.tensile",
    edition=2,
    title="The standard gives the tensile strength of the wire at this diameter, and a certificate, "
    "where stated, reaches it",
    wrong="wire certified at {found}, its standard gives {limit}",
    on=CompressionSpring,
    grade=Grade.QUERY,
    gravest=Grade.NONCONFORMITY,
    cites=EN_10270,
    why="wire is stronger the thinner it is drawn: a stress cannot be judged before the strength at its "
    "size is known",
    leaves_out="surface, depth of decarburisation and torsion tests, which the same standard requires "
    "of the wire",
    against=(),
)
def tensile(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """R_m of the table, and the figure of a certificate, where stated, against it."""
    d = sheet.take("d", spring.wire)
    strength = _wire_strength(spring, sheet, d)
    if not sheet.is_stated("wire tensile strength", spring.wire_tensile_strength):
        return sheet.reported(strength, "least tensile strength of the wire by its standard")
    found = sheet.take("R_m′", spring.wire_tensile_strength)
    return sheet.at_least(found, strength).graded(Grade.NONCONFORMITY)


@rule(
    "coil-spring.stress-static",
    edition=5,
    title="The uncorrected shear stress at full lift is at most 0.5 of the tensile strength of the wire",
    wrong="spring stressed to {found} at full lift, {limit} allowed",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=[DIN_2089.at("permissible shear stress under static load"), COMMON_PRACTICE],
    why="a spring stressed beyond its elastic limit takes a set and no longer shuts the valve",
    leaves_out="the alternating part of the stress (coil-spring.fatigue) and heat (coil-spring.temperature)",
    against=("break under load",),
    limits=[
        Limit(
            "share-of-strength",
            "0.5",
            "ratio",
            DIN_2089.at("permissible shear stress under static load"),
            "share of the tensile strength allowed for uncorrected shear stress at full lift",
        )
    ],
)
def stress_static(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """τ with the valve as far open as it can go, at 20 °C, where the load is greatest, against a share of R_m."""
    d = sheet.take("d", spring.wire)
    D = mean_diameter(spring, sheet, d)
    stress = sheet.work("τ_O", shear_stress, F=open_load(spring, sheet, d, D), D=D, d=d)
    return sheet.at_most(stress, _allowed(spring, sheet, d))


@rule(
    "coil-spring.stress-solid",
    edition=5,
    title="The spring is preset, and the uncorrected shear stress at solid length is at most 0.56 of the tensile "
    "strength of the wire",
    wrong="spring stressed to {found} when solid, {limit} allowed",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=[en_13906_1_clause("10.1.1, permissible stress at solid length, cold coiled")],
    why="a spring is pressed solid when it is made, and again when the valve is let go during "
    "maintenance; overstressed, it takes a set",
    leaves_out="hot coiled springs, whose limit is a diagram of the standard that is not held here",
    against=("break under load",),
    limits=[
        Limit(
            "share-of-strength",
            "0.56",
            "ratio",
            en_13906_1_clause("10.1.1, permissible stress at solid length, cold coiled"),
            "share of the tensile strength allowed for uncorrected shear stress at solid length",
        )
    ],
)
def stress_solid(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """τ at the solid length at 20 °C against 0.56 R_m."""
    if sheet.read("process", spring.process) == "hot":
        raise sheet.not_covered(
            "the standard's limit for hot coiled springs is a diagram that is not held here"
        )
    d = sheet.take("d", spring.wire)
    D = mean_diameter(spring, sheet, d)
    free = sheet.take("L_0", spring.free_length)
    pressed = sheet.work("s_c", deflection, L_0=free, L=greatest_solid_length(spring, sheet, d))
    load = sheet.work("F_c", spring_load, R=rate(spring, sheet, d, D), s=pressed)
    stress = sheet.work("τ_c", shear_stress, F=load, D=D, d=d)
    preset = sheet.read("preset", spring.preset)
    says = "pressed solid when it was made" if preset else "it was not preset: it takes its set in service"
    made = sheet.states(preset, says, where=spring.preset.where).graded(Grade.QUERY)
    return sheet.worst(made, sheet.at_most(stress, _allowed(spring, sheet, d)))


def _allowed(spring: CompressionSpring, sheet: Sheet, d: Metres) -> Pascals:
    """A share of the strength by the standard, or of that of the certificate where it is less."""
    share, strength = sheet.limit("share-of-strength", "x"), _wire_strength(spring, sheet, d)
    if sheet.is_stated("wire tensile strength", spring.wire_tensile_strength):
        strength = min(strength, sheet.take("R_m′", spring.wire_tensile_strength))
    return sheet.work("τ_zul", share_of_strength, k=share, R=strength)


def _wire_strength(spring: CompressionSpring, sheet: Sheet, d: Metres) -> Pascals:
    return sheet.look_up(
        "R_m", least_wire_strength, of=spring, material=sheet.material_of(spring), diameter=d
    )


RULES = (tensile, stress_static, stress_solid)
