"""Cams and tappets: the core under a hardened skin."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons
from speclint.facts import CRACKED
from speclint.handbook.members import line_shear_below
from speclint.handbook.tables import JOHNSON_CONTACT
from speclint.specs import Cam, LoadCase
from speclint_valves.formulae.cores import angle_between
from speclint_valves.inputs.cores import Skin, core_under, sheared_most, skins_of
from speclint_valves.inputs.loads import Loaded, loaded, worked_struck_load, worked_tappet_load
from speclint_valves.inputs.touch import Touch
from speclint_valves.inputs.train import train_of


@rule(
    "cam.core-under-its-skin",
    title="Beneath what grinding and wear leave of a hardened skin, cam and tappet are sheared by their contact to at "
    "most half of the proof stress of their core over 1.2",
    on=Cam,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[JOHNSON_CONTACT.at("section 4.2, eq. 4.46"), FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a core that gives way lets its skin bend and crack, and the track comes off in flakes",
    leaves_out="the skin itself (cam.contact-stress); edge loading and friction; stresses that hardening leaves, and "
    "the harder metal between skin and core; wear of tappets; chilled, plated and faced surfaces; a core thicker than "
    "the standard of its metal holds, or hotter than an oiled cam box",
    against=("wear",),
    against_on={"tappet": ("wear",)},
    limits=[
        Limit(
            "core",
            "1.2",
            "ratio",
            COMMON_PRACTICE,
            "least factor of a core against yield in shear; the heat of an oiled cam box is in it",
        ),
        CRACKED,
    ],
)
def core_under_its_skin(cam: Cam, case: LoadCase, sheet: Sheet) -> Judgement:
    """τ where the skin ends, over the whole lift and at the impact that takes up the clearance ≤ R_p/(2 × 1.2).

    The greatest shear so far down goes with the load more than with the pressure, and has angles of its own.
    """
    train = train_of(cam, sheet)
    skins = skins_of(cam, train.tappet, sheet)
    if not skins:
        raise sheet.not_applicable("neither the cam nor its tappet is said to be hardened")
    touch = Touch(cam, train.tappet, sheet)
    lines = list(_lines(touch, loaded(train, case, sheet), cam, case, sheet))
    return sheet.each(
        [(one.part.id, one) for one in skins], lambda item: _borne(item[1], touch, lines, sheet)
    )


class _Line(NamedTuple):
    """A line of contact: when it is, by its mark, the load square to it, and the relative radius there."""

    when: str
    F: Newtons
    R: Metres


def _lines(touch: Touch, load: Loaded, cam: Cam, case: LoadCase, sheet: Sheet) -> Iterator[_Line]:
    """The contact as the clearance is taken up, and where it shears the core most in either part of the lift."""
    most = sheet.aside(f"angles of the greatest shear, {case.where.key}", sheared_most, cam, case)
    struck = worked_struck_load(load, sheet)
    yield _Line("b", *touch.worked_line(load.cam.at(load.taken_up), struck, sheet))
    for phase in load.phases:
        for number, place in enumerate(most[phase.mark]):
            mark = phase.mark + "′" * number
            angle = sheet.work(f"φ_{mark}", angle_between, φ=place, φ_1=phase.start, φ_2=phase.stop)
            F = worked_tappet_load(load, phase, angle, sheet)
            yield _Line(mark, *touch.worked_line(load.cam.at(angle), F, sheet))


def _borne(skin: Skin, touch: Touch, lines: Sequence[_Line], sheet: Sheet) -> Judgement:
    """What each line of contact shears the core of a part by, against what is allowed."""
    core = core_under(skin, sheet)
    contact = {"L": touch.width, "E_star": touch.modulus, "t": core.depth}
    sheared = [
        sheet.work(f"τ_{skin.mark}{one.when}", line_shear_below, F=one.F, R=one.R, **contact) for one in lines
    ]
    return sheet.worst(
        *(
            sheet.at_most(τ, core.allowed).else_says(
                f"core of {skin.part.id} sheared by {{found}} under its skin, {{limit}} allowed"
            )
            for τ in sheared
        )
    )


RULES = (core_under_its_skin,)
