"""How the cams of a shaft bend it and load its bearings, by their places along it and what turns it.

A load may act across the shaft in any direction: what each does at a section is added up without its sign, which is
exact for tappets side by side between two bearings, and never too little for any others.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from speclint.equations import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Metres,
    NewtonMetres,
    Newtons,
    Ratio,
    formula,
    require,
)
from speclint.facts.cam_thrusts import Pressing, angle_of_load, loads_in_turn, pressing, together
from speclint.facts.cam_torques import cams_on, torque_of_shaft, working_cases
from speclint.facts.cams_on_shafts import placed_in_notches
from speclint.handbook.members import (
    moment_for_load,
    moment_with_load,
    reaction_with_load,
    share_of_bearing,
)
from speclint.handbook.tables import Reading
from speclint.rules import Sheet, Worked, worked
from speclint.specs import Cam, Shaft

if TYPE_CHECKING:
    from speclint.specs import LoadCase, ShaftDrive

#: Cams that turn together, so that their loads are taken at one angle.
Group = tuple[Pressing, ...]

_SHARES_OF_DRIVE = {"cranks and rods": 2**0.5, "gear wheel": 1.25, "chain": 1.0}


@formula("F = k T/r", cites=[FIRST_PRINCIPLES, COMMON_PRACTICE])
def force_of_drive(k: Ratio, T: NewtonMetres, r: Metres) -> Newtons:
    """Load across a shaft of what turns it.

    F = k T/r

    ``k`` load over that of the torque alone; ``T`` torque [N·m]; ``r`` radius at which the shaft is turned [m]. Returns
    [N]. Raises OutOfRange unless r > 0.

    >>> force_of_drive(k=1.25, T=600.0, r=0.1)
    7500.0
    """
    require(r > 0, "the radius of the drive must be above 0")
    return k * T / r


def share_of_drive(by: str) -> Reading:
    """Load across a shaft over torque by radius: two cranks at a right angle, a gear wheel, a chain.

    Two rods of which each takes the whole torque at the dead centre of the other push with √2 of it; what the teeth of
    a wheel push apart and strike makes a quarter, as for the overhung loads of gear boxes (from memory).

    >>> share_of_drive("gear wheel").nominal
    1.25
    """
    return Reading.exact(f"load of {by}, of torque by radius", _SHARES_OF_DRIVE[by], "", COMMON_PRACTICE)


@dataclass(frozen=True, slots=True)
class Bearers:
    """The bearings of a shaft in their order along it, and the load of its drive with its place."""

    names: tuple[str, ...]
    places: tuple[Metres, ...]
    drive: tuple[Newtons, Metres] | None

    def shares(self, cams: Group, x: Metres) -> tuple[Metres, ...]:
        """Moment at a section for a load of 1 N at each cam, without its sign."""
        return tuple(abs(moment_for_load(self.places, one.a, x).nominal) for one in cams)

    def moment(self, groups: Sequence[Group], x: Metres) -> NewtonMetres:
        """The greatest moment at a section."""
        F, a = self.drive or (0.0, 0.0)
        by_drive = F * abs(moment_for_load(self.places, a, x).nominal)
        return by_drive + sum(_greatest(cams, self.shares(cams, x)) for cams in groups)

    def most(self, groups: Sequence[Group]) -> tuple[NewtonMetres, Metres]:
        """The greatest moment, and the section of it: it has its corners where loads and bearings are."""
        sections = {*self.places, *(one.a for cams in groups for one in cams)}
        if self.drive is not None:
            sections.add(self.drive[1])
        return max((self.moment(groups, x), x) for x in sections)

    def reaction(self, groups: Sequence[Group], number: int) -> Newtons:
        """The greatest load of a bearing."""
        F, a = self.drive or (0.0, 0.0)
        by_drive = F * abs(share_of_bearing(self.places, a, number).nominal)
        return by_drive + sum(_greatest(cams, self.taken(cams, number)) for cams in groups)

    def taken(self, cams: Group, number: int) -> tuple[Ratio, ...]:
        """Share of the load of each cam that a bearing takes, without its sign."""
        return tuple(abs(share_of_bearing(self.places, one.a, number).nominal) for one in cams)


def _greatest(cams: Group, shares: tuple[float, ...]) -> float:
    return max(together(loads, shares) for _, loads in loads_in_turn(cams))


def section_of_moment(bearers: Bearers, groups: tuple[Group, ...]) -> Reading:
    """The place along a shaft of its greatest moment: under a cam, over a bearing or at its drive [m]."""
    _, x = bearers.most(groups)
    return Reading.exact("place of the greatest moment along the shaft", x, "m", FIRST_PRINCIPLES)


def bearers_of(shaft: Shaft, sheet: Sheet) -> Bearers:
    """Where a shaft is carried and turned: every bearing must say where it stands, and there must be two."""
    if len(shaft.bearings) < 2:
        raise sheet.not_assessed(
            f"{shaft.id} states {len(shaft.bearings)} of the two or more bearings that carry it: write each, as in "
            f'[bearings] front.at = "50 mm"',
            shaft.where,
        )
    at = {name: sheet.take_nominal(f"x_{name}", one.at) for name, one in shaft.bearings.items()}
    if len(set(at.values())) < len(at):
        raise sheet.not_covered(f"two bearings of {shaft.id} stand at one place")
    names = sorted(at, key=lambda name: at[name])
    return Bearers(tuple(names), tuple(at[name] for name in names), _drive(shaft, sheet))


def _drive(shaft: Shaft, sheet: Sheet) -> tuple[Newtons, Metres] | None:
    """The load of the drive, by the greater of the torque stated and that of its cams, and its place on the shaft."""
    drive: ShaftDrive = shaft.drive
    by = sheet.read("turned by", drive.by)
    if by == "coupling":
        return None
    F = sheet.work(
        "F_d",
        force_of_drive,
        k=sheet.look_up("k_d", share_of_drive, by=by),
        T=torque_of_shaft(shaft, sheet, sheet.take_nominal),
        r=sheet.take_nominal("r_d", drive.radius),
    )
    return F, sheet.take_nominal("a_d", drive.at)


def _in_work(
    shaft: Shaft, case: LoadCase, sheet: Sheet
) -> Iterator[tuple[str, tuple[Group, ...], Sequence[Cam]]]:
    """The cams of a shaft that work together, by notch, as for its torque, as they press and as they are drawn.

    In each notch of the gear that names them; or, without a gear, all by their angles on the shaft, or each by itself
    where one does not state it: then each presses hardest at once.
    """
    cams = cams_on(shaft, sheet)
    notches = placed_in_notches(cams, sheet)
    for notch, placed in notches.items():
        group = tuple(pressing(one.cam, case, one.place, sheet, backward=one.backward) for one in placed)
        yield notch, (group,), [one.cam for one in placed]
    if notches:
        return
    stated = all(sheet.is_stated(f"place of {cam.id}", cam.phase) for cam in cams)
    phases = [sheet.take_nominal(f"φ of {cam.id}", cam.phase) if stated else 0.0 for cam in cams]
    pressed = tuple(pressing(cam, case, φ, sheet) for cam, φ in zip(cams, phases, strict=True))
    groups = (pressed,) if stated else tuple((one,) for one in pressed)
    yield "", groups, cams


def moments_needed(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Iterator[tuple[str, Worked]]:
    """The greatest bending moment, N·m, by which the cams of a shaft and its drive bend it, with the notch."""
    bearers = bearers_of(shaft, sheet)
    for notch, groups, cams in _in_work(shaft, case, sheet):
        borne = shaft.drive.at, *(one.at for one in shaft.bearings.values())
        yield notch, worked(_moment(bearers, groups, sheet), *borne, *(cam.at for cam in cams))


def _moment(bearers: Bearers, groups: tuple[Group, ...], sheet: Sheet) -> NewtonMetres:
    """That moment written on the sheet: of the drive, then with each cam more, at the angle of the greatest."""
    x, M = sheet.look_up("x", section_of_moment, bearers=bearers, groups=groups), 0.0
    along = bearers.places
    if bearers.drive is not None:
        F, a = bearers.drive
        m = sheet.look_up("m_d", moment_for_load, supports=along, a=a, x=x)
        M = sheet.work("M", moment_with_load, M_0=M, F=F, m=m)
    for cams in groups:
        θ = sheet.look_up("θ", angle_of_load, cams=cams, shares=bearers.shares(cams, x))
        for one in cams:
            m = sheet.look_up(f"m of {one.turning.name}", moment_for_load, supports=along, a=one.a, x=x)
            M = sheet.work("M", moment_with_load, M_0=M, F=one.worked(θ, sheet), m=m)
    return M


def moment_of_shaft(shaft: Shaft, sheet: Sheet) -> NewtonMetres:
    """The bending moment of a shaft, N·m: as stated, and no less than its cams bend it in starting and running.

    A shaft on which no cam says that it turns, or that sees no duty, has the stated one.
    """
    cases = working_cases(shaft, sheet)
    if not cases:
        return sheet.take("M", shaft.bending_moment)
    bearers, groups = sheet.aside(f"loads on {shaft.id} by its cams", _bending_most, shaft)
    needed = _moment(bearers, groups, sheet)
    if not sheet.is_stated("bending moment", shaft.bending_moment):
        return needed
    return max(sheet.take("M", shaft.bending_moment), needed)


def _bending_most(shaft: Shaft, sheet: Sheet) -> tuple[Bearers, tuple[Group, ...]]:
    """The bearings of a shaft, and the loads of the notch and the load case that bend it most."""
    bearers = bearers_of(shaft, sheet)
    in_work = [
        groups for case in working_cases(shaft, sheet) for _, groups, _ in _in_work(shaft, case, sheet)
    ]
    return bearers, max(in_work, key=lambda groups: bearers.most(groups)[0])


def loads_of_bearings(shaft: Shaft, case: LoadCase, sheet: Sheet) -> Iterator[tuple[str, Newtons]]:
    """The greatest load, N, of each bearing of a shaft by its cams and its drive, in the notch in which it is most."""
    bearers = bearers_of(shaft, sheet)
    in_work = [groups for _, groups, _ in _in_work(shaft, case, sheet)]
    for number, name in enumerate(bearers.names):
        worst = max(in_work, key=lambda groups: bearers.reaction(groups, number))
        yield name, _reaction(bearers, worst, number, sheet)


def _reaction(bearers: Bearers, groups: tuple[Group, ...], number: int, sheet: Sheet) -> Newtons:
    R, name, along = 0.0, bearers.names[number], bearers.places
    if bearers.drive is not None:
        F, a = bearers.drive
        r = sheet.look_up(f"r_d {name}", share_of_bearing, supports=along, a=a, number=number)
        R = sheet.work(f"R {name}", reaction_with_load, R_0=R, F=F, r=r)
    for cams in groups:
        θ = sheet.look_up("θ", angle_of_load, cams=cams, shares=bearers.taken(cams, number))
        for one in cams:
            r = sheet.look_up(
                f"r {one.turning.name}", share_of_bearing, supports=along, a=one.a, number=number
            )
            R = sheet.work(f"R {name}", reaction_with_load, R_0=R, F=one.worked(θ, sheet), r=r)
    return R
