"""The cores under the hardened skins of a cam and its tappet, and the angles at which they are sheared most."""

from __future__ import annotations

from typing import NamedTuple

from speclint import Sheet
from speclint.equations import Metres, Pascals, Radians
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import line_shear_below
from speclint.specs import Cam, LoadCase, Tappet
from speclint_valves.formulae.cores import shear_allowed, skin_left
from speclint_valves.formulae.regrinding import ground_off, skin_used
from speclint_valves.inputs.loads import Loaded, Phase, loaded
from speclint_valves.inputs.touch import Touch, is_hardened
from speclint_valves.inputs.train import SCAN, train_of

#: Angles of the greatest shear that lie nearer together are as good as one [rad].
_NEAR: Radians = 1e-3


class Skin(NamedTuple):
    """A part with a hardened skin, and its mark."""

    part: Cam | Tappet
    mark: str


class Core(NamedTuple):
    """What lies under a skin: how deep the skin still is, and the shear allowed beneath it."""

    depth: Metres
    allowed: Pascals


def skins_of(cam: Cam, tappet: Tappet, sheet: Sheet) -> list[Skin]:
    """Those of a cam and its tappet; none of a part that is not said to be hardened."""
    return [Skin(part, mark) for part, mark in ((cam, "c"), (tappet, "t")) if is_hardened(part, sheet)]


def core_under(skin: Skin, sheet: Sheet) -> Core:
    """The core of a part; its proof stress is the least that the standard of the metal holds for any thickness."""
    part, mark = skin
    depth, metal = _left(skin, sheet), sheet.material_of(part)
    R_p = sheet.look_up(f"R_p{mark}", metal.proof_stress, of=part, at=DRAWING_TEMPERATURE)
    return Core(depth, sheet.work(f"τ_a{mark}", shear_allowed, R_p=R_p, x=sheet.limit("core", "x")))


def _left(skin: Skin, sheet: Sheet) -> Metres:
    """How deep a skin is at the least; of a cam what its last regrind, and the wear after it, leave."""
    part, mark = skin
    t = sheet.take(f"t_{mark}", part.hardened_depth)
    if isinstance(part, Tappet):
        return t
    n = sheet.count("n", part.regrind.times)
    t_g = sheet.work("t_g", ground_off, n=float(n), g=sheet.take("g", part.regrind.depth))
    used = sheet.work("u", skin_used, t_g=t_g, t_w=sheet.take("t_w", part.wear.limit))
    return sheet.work(f"t_l{mark}", skin_left, t=t, u=used)


def sheared_most(cam: Cam, case: LoadCase, sheet: Sheet) -> dict[str, tuple[Radians, ...]]:
    """The angles of a cam at which either part of the lift shears a core most, by the mark of that part.

    One for each depth of a skin, or for both where they are alike. They are looked for once, with everything toleranced
    at its low limit, and hold for all tolerances: where the shear is greatest inside, it hardly changes along the lift.
    Where it is greatest at an end of that part, the angle is that of the whole lift, which has the end between.
    """
    train = train_of(cam, sheet)
    skins = skins_of(cam, train.tappet, sheet)
    whole = [one for one in skins if _is_whole(one, sheet)]
    depths = [_left(one, sheet) for one in whole or skins[:1]]
    touch, load = Touch(cam, train.tappet, sheet), loaded(train, case, sheet)
    return {
        phase.mark: _apart([_within(phase, load, touch, t, sheet) for t in depths]) for phase in load.phases
    }


def _apart(angles: list[Radians]) -> tuple[Radians, ...]:
    """The first of some angles, and those that do not lie near it."""
    first, *others = angles
    return (first, *(one for one in others if abs(one - first) > _NEAR))


def _is_whole(skin: Skin, sheet: Sheet) -> bool:
    """Whether all that gives its depth is stated."""
    part = skin.part
    asked = [part.hardened_depth]
    if isinstance(part, Cam):
        asked += [part.regrind.depth, part.wear.limit]
        if not sheet.is_stated(f"regrinds of {part.id}", part.regrind.times):
            return False
    return all(sheet.is_stated(f"{one.where.key} of {part.id}", one) for one in asked)


def _within(phase: Phase, load: Loaded, touch: Touch, t: Metres, sheet: Sheet) -> Radians:
    """The angle at which one part of the lift shears a core most at a depth, or the end of the lift beyond its own."""

    def shear(angle: Radians) -> Pascals:
        F, R = touch.line(load, phase.steam, angle)
        return line_shear_below(F=F, L=touch.width, R=R, E_star=touch.modulus, t=t)

    steps = min(phase.steps, SCAN)
    angle = sheet.scan(
        f"φ_{phase.mark}",
        f"cam angle of the greatest shear {phase.when}",
        shear,
        phase.start,
        phase.stop,
        unit="rad",
        steps=steps,
    )
    near = (phase.stop - phase.start) / steps
    if angle < phase.start + near:
        return 0.0
    return load.cam.duration if angle > phase.stop - near else angle
