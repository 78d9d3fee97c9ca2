"""The flange of a piston rod that bolts hold in its crosshead."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Ratio
from speclint.handbook.threads import nominal_diameter
from speclint.specs import Crosshead, PistonRod, RodSection
from speclint_motion.formulae.diameters import times_diameter
from speclint_motion.formulae.rod_flanges import arc_of_each_bolt, ring_beside_fillet
from speclint_motion.inputs.rod_ends import at_crosshead


@rule(
    "crosshead.flange-takes-its-bolts",
    title="Between fillet and rim, the flange of a rod is at least as wide as the nuts of its bolts, 1.5 of their "
    "diameter, and round it each bolt has at least 2 diameters",
    on=Crosshead,
    grade=Grade.NONCONFORMITY,
    edition=2,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="where bolts find no room, their nuts bear on the fillet, or thinner ones are put in when the rod is fitted",
    leaves_out="nuts of other widths, holes and the metal outside of them, a flange that stands apart from the "
    "shoulder of the rod, and room for the spanner",
    against=(),
    limits=[
        Limit(
            "nut",
            "1.5",
            "ratio",
            COMMON_PRACTICE,
            "width of a nut across its flats over its thread's diameter",
        ),
        Limit("pitch", "2", "ratio", COMMON_PRACTICE, "least pitch of bolts over their diameter"),
    ],
)
def flange_takes_its_bolts(crosshead: Crosshead, sheet: Sheet) -> Judgement:
    """(D − d)/2 − r against 1.5 d_b, and π (D − 1.5 d_b)/n against 2 d_b, of the widest shoulder at that end."""
    held = crosshead.rod_held
    if sheet.read("rod held by", held.by) != "flange bolts":
        raise sheet.not_applicable("the rod is not held by bolts through a flange")
    rod = sheet.follow(crosshead.on_rod)
    shoulders = list(_shoulders(rod, sheet))
    if not shoulders:
        raise sheet.not_assessed(f"no shoulder of {rod.id} at the crosshead's end is stated", rod.where)
    d_b = sheet.look_up("d_b", nominal_diameter, designation=sheet.read("thread", held.thread))
    n = float(sheet.count("n", held.bolts))
    D, flange = max(shoulders, key=lambda one: one[0])
    return sheet.worst(*_judged(D, flange, d_b, n, sheet))


def _shoulders(rod: PistonRod, sheet: Sheet) -> Iterator[tuple[Metres, RodSection]]:
    """The shoulders at the crosshead's end, each with its larger diameter: a step beside the flange is one, too."""
    for name, section in at_crosshead(rod, "shoulder", sheet):
        yield sheet.take(f"D of {name}", section.larger_diameter), section


def _judged(D: Metres, flange: RodSection, d_b: Metres, n: Ratio, sheet: Sheet) -> Iterator[Judgement]:
    """The ring on which the nuts bear, and what each bolt has of its circle."""
    d, r = sheet.take("d", flange.diameter), sheet.take("r", flange.fillet)
    b = sheet.work("b", ring_beside_fillet, D=D, d=d, r=r)
    s = sheet.work("s", times_diameter, k=sheet.limit("nut", "k_s"), d=d_b)
    yield sheet.at_least(b, s).else_says("flange of the rod {found} wide beside its fillet, {limit} wanted")
    pitch = sheet.work("a", arc_of_each_bolt, D=D, s=s, n=n)
    wanted = sheet.work("a_n", times_diameter, k=sheet.limit("pitch", "k_a"), d=d_b)
    yield sheet.at_least(pitch, wanted).else_says("bolts of the rod {found} apart, {limit} wanted")


RULES = (flange_takes_its_bolts,)
