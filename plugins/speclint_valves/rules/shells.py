"""The shell that joins the beats of a valve."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import beats_of, block_under
from speclint.handbook.cylinders import BORESI, bore_hoop_stress_between_pressures
from speclint.handbook.fits import size_of_stress
from speclint.handbook.materials import share_of_strength
from speclint.handbook.steam import share_of_pressure
from speclint.specs import LoadCase, PoppetValve
from speclint_valves.formulae.shells import collapsing_pressure
from speclint_valves.inputs.cylinder import greatest_in_cylinder
from speclint_valves.inputs.shutting import supply_at_most
from speclint_valves.sources import ELASTIC_STABILITY


@rule(
    "valve.shell",
    edition=2,
    title="The shell between two beats bears the greatest pressure of boiler or cylinder from outside, with nothing "
    "inside, at half its proof stress and with a factor of 3 against collapse",
    on=PoppetValve,
    cases=("starting", "running", "water"),
    grade=Grade.NONCONFORMITY,
    cites=[BORESI, ELASTIC_STABILITY, COMMON_PRACTICE],
    why="a shell that gives lets one beat off its seat, and a piece of it falls into the cylinder",
    leaves_out="the load of springs and steam along the shell, landing, windows cut in it, and its ribs and hub, which "
    "stiffen it",
    against=("break under load",),
    limits=[
        Limit(
            "share", "0.5", "ratio", COMMON_PRACTICE, "share of proof stress, load that comes at every stroke"
        ),
        Limit("factor", "3", "ratio", COMMON_PRACTICE, "least collapsing pressure over the greatest outside"),
    ],
)
def shell(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """A tube as wide outside as the wider beat: hoop stress at its bore, and the pressure at which a long one flattens.

    Steam may be on either side; from outside it does most.
    """
    beats = beats_of(valve, sheet)
    if len(beats) == 1:
        raise sheet.not_applicable("a valve of one beat has no shell between beats")
    p = max(supply_at_most(case, sheet), greatest_in_cylinder(case, block_under(valve, sheet), valve, sheet))
    D = max(sheet.take(f"d_{index}", beat.seat_diameter) for index, beat in beats)
    t, T = sheet.take("t", valve.wall), sheet.take("T", case.temperature_of(valve))
    metal = sheet.material_of(valve)
    hoop = sheet.work("σ_θ", bore_hoop_stress_between_pressures, p_i=0.0, p_o=p, d=D - 2 * t, D=D)
    proof = sheet.look_up("R_p", metal.proof_stress, of=valve, at=T)
    allowed = sheet.work("σ_n", share_of_strength, k=sheet.limit("share", "k"), R=proof)
    E, nu = sheet.look_up("E", metal.modulus, of=valve, at=T), sheet.look_up("ν", metal.poisson, of=valve)
    collapses = sheet.work("p_k", collapsing_pressure, E=E, nu=nu, t=t, D=D - t)
    wanted = sheet.work("p_n", share_of_pressure, x=sheet.limit("factor", "x"), p=p)
    return sheet.worst(
        sheet.at_most(sheet.work("σ", size_of_stress, sigma=hoop), allowed).else_says(
            "steam stresses the shell to {found}, {limit} allowed"
        ),
        sheet.at_least(collapses, wanted).else_says("shell collapses at {found}, {limit} wanted"),
    )


RULES = (shell,)
