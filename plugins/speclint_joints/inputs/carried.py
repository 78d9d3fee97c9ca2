"""What pulls at a joint or at the root of a bracket in a load case."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from speclint import COMMON_PRACTICE, Limit, Sheet
from speclint.equations import Kilograms, Metres, NewtonMetres, Newtons, Ratio
from speclint.facts import connecting_rod_of, ends_of, greatest_bore, stroke_of
from speclint.handbook.bolted_joints import pressure_load
from speclint.specs import (
    BoltedJoint,
    Bracket,
    Carried,
    Component,
    CylinderBlock,
    LoadCase,
    Position,
    SignedForce,
    SlideBar,
)
from speclint_joints.formulae.carried import (
    jolted_weight,
    lift_of_mass,
    loads_added,
    moments_added,
    share_at_cut_off,
    share_of_force,
    share_of_mass,
    thrust_at_cut_off,
    thrust_of_bar,
)
from speclint_joints.formulae.frames import shock_load, standard_gravity
from speclint_joints.inputs.pressures import pressure_in_cylinder

#: Of every rule that works what is carried.
JOLTS = Limit("jolts", "2", "ratio", COMMON_PRACTICE, "greatest acceleration by the track, in times gravity")


class Pulls(Struct, frozen=True):
    """Loads on a pattern: shear S, pull P, moments along and across the rows, twist; S_x, the shear across alone.

    ``reverses`` where one of them acts both ways, ``grave`` where somebody is hurt if it lets go.
    """

    S: Newtons
    P: Newtons
    M_x: NewtonMetres
    M_y: NewtonMetres
    T: NewtonMetres
    reverses: bool
    grave: bool
    S_x: Newtons


class _Load(Struct, frozen=True):
    """One load: in the face along x and y, out of it along z, at its place."""

    name: str
    f_x: Newtons
    f_y: Newtons
    f_z: Newtons
    x: Metres
    y: Metres
    z: Metres


def carrier_of(joint: BoltedJoint | Bracket, sheet: Sheet) -> BoltedJoint | Bracket:
    """Where it stands what a joint carries: with the bracket that it holds, else with itself."""
    if isinstance(joint, BoltedJoint):
        held = sheet.follow(joint.holds)
        if isinstance(held, Bracket):
            return held
    return joint


def bars_of(part: BoltedJoint | Bracket, sheet: Sheet) -> list[SlideBar]:
    """The slide bars that a bracket carries: those that name it at one of their ends, and those that it names."""
    if not isinstance(part, Bracket):
        return []
    bars = {
        bar.id: bar
        for bar in sheet.belonging_to(part, SlideBar)
        if any(
            sheet.is_stated("support of a slide bar", one.part) and sheet.follow(one.part) is part
            for one in bar.supports.values()
        )
    }
    named = (_part_of(name, one, sheet) for name, one in part.carries.items())
    return list((bars | {bar.id: bar for bar in named if isinstance(bar, SlideBar)}).values())


def _part_of(name: str, one: Carried, sheet: Sheet) -> Component | None:
    """The part that is carried, where it is named."""
    return sheet.follow(one.of) if sheet.is_stated(f"part {name}", one.of) else None


def carries_something(joint: BoltedJoint | Bracket, sheet: Sheet) -> bool:
    """Whether something is said to pull at a joint or a bracket."""
    part = carrier_of(joint, sheet)
    return bool(part.carries) or bool(bars_of(part, sheet))


def is_grave(joint: BoltedJoint | Bracket, sheet: Sheet) -> bool:
    """Whether somebody is hurt where it lets go: it carries a bar, holds the block, or may hang over the track."""
    part = carrier_of(joint, sheet)
    if bars_of(part, sheet):
        return True
    if isinstance(joint, BoltedJoint) and isinstance(sheet.follow(joint.holds), CylinderBlock | SlideBar):
        return True
    words = [
        sheet.read(f"{one.id} over the track", one.over_track)
        for one in {id(joint): joint, id(part): part}.values()
        if sheet.is_stated(f"{one.id} over the track", one.over_track)
    ]
    return any(words) or not words


def pulls_on(joint: BoltedJoint | Bracket, case: LoadCase, sheet: Sheet) -> Pulls:
    """All that pulls at a joint or at the root of a bracket in a load case, each load with its worse sense."""
    part = carrier_of(joint, sheet)
    upright = sheet.read("stands", part.stands) == "upright"
    loads = [*_thrusts(part, upright, case, sheet), *_carried(part, upright, case, sheet)]
    if not loads:
        raise sheet.not_applicable("nothing is said to pull at it")
    S = S_x = P = M_x = M_y = T = 0.0
    for one in loads:
        S = sheet.work("S", loads_added, s_0=S, F=one.f_x)
        S_x = sheet.work("S_x", loads_added, s_0=S_x, F=one.f_x)
        S = sheet.work("S", loads_added, s_0=S, F=one.f_y)
        P = sheet.work("P", loads_added, s_0=P, F=one.f_z)
        M_x = sheet.work("M_x", moments_added, M_0=M_x, F=one.f_y, a=one.z)
        M_x = sheet.work("M_x", moments_added, M_0=M_x, F=one.f_z, a=one.y)
        M_y = sheet.work("M_y", moments_added, M_0=M_y, F=one.f_x, a=one.z)
        M_y = sheet.work("M_y", moments_added, M_0=M_y, F=one.f_z, a=one.x)
        T = sheet.work("T", moments_added, M_0=T, F=one.f_y, a=one.x)
        T = sheet.work("T", moments_added, M_0=T, F=one.f_x, a=one.y)
    return Pulls(S, P, M_x, M_y, T, _reverses(part, sheet), is_grave(joint, sheet), S_x)


def _reverses(part: BoltedJoint | Bracket, sheet: Sheet) -> bool:
    """Whether a load reverses: the thrust of a slide bar does, others where they say so, or do not say."""
    if bars_of(part, sheet):
        return True
    return any(
        not sheet.is_stated(f"{name} reverses", one.reverses) or sheet.read(f"{name} reverses", one.reverses)
        for name, one in part.carries.items()
        if any(_stated(f"force of {name}", force, sheet) for force in _forces(one))
    )


def _forces(one: Carried) -> tuple[SignedForce, ...]:
    return one.force.x, one.force.y, one.force.z


def _stated(name: str, value: SignedForce | Position, sheet: Sheet) -> bool:
    return sheet.is_stated(name, value)


def _thrusts(part: BoltedJoint | Bracket, upright: bool, case: LoadCase, sheet: Sheet) -> Iterator[_Load]:
    """The side thrust of the crosshead on each bar, the whole of it at one end, or what is stated if that is more."""
    if not isinstance(part, Bracket):
        return
    for bar in bars_of(part, sheet):
        N = thrust_on(bar, case, sheet)
        entries = [(name, one) for name, one in part.carries.items() if _part_of(name, one, sheet) is bar]
        z = max((_distance(*entry, part, sheet) for entry in entries), default=0.0) or sheet.take(
            "a", part.arm
        )
        for name, one in entries:
            force = one.force.y if upright else one.force.z
            if _acts_in(name, one, case, sheet) and _stated(f"force of {name}", force, sheet):
                N = max(N, abs(sheet.take(f"F of {name}", force)))
        yield _Load(bar.id, 0.0, N if upright else 0.0, 0.0 if upright else N, 0.0, 0.0 if upright else z, z)


def thrust_on(bar: SlideBar, case: LoadCase, sheet: Sheet) -> Newtons:
    """Greatest side thrust of a crosshead on a bar; with an early cut-off that at the cut-off."""
    crosshead = sheet.follow(bar.guides)
    liner = sheet.follow(sheet.follow(sheet.follow(crosshead.on_rod).carries).runs_in)
    block, bore = sheet.follow(liner.housed_in), liner.in_bore
    name = sheet.read("bore", bore)
    D = greatest_bore(liner, sheet)
    p = pressure_in_cylinder(case, sheet, ends_of(block, name, sheet).values())
    F = sheet.work("F_p", pressure_load, D=D, p=p)
    r = sheet.take("s", stroke_of(block, sheet, bore)) / 2
    N = sheet.work("N", thrust_of_bar, F=F, r=r, l=sheet.take("l", connecting_rod_of(block, sheet, bore)))
    if case.name == "starting" or not sheet.is_stated("cut-off", case.cut_off):
        return N
    share = sheet.work("k_c", share_at_cut_off, c=sheet.take("c", case.cut_off))
    return sheet.work("N_c", thrust_at_cut_off, k=share, N=N)


def _carried(part: BoltedJoint | Bracket, upright: bool, case: LoadCase, sheet: Sheet) -> Iterator[_Load]:
    for name, one in part.carries.items():
        here, bar = _acts_in(name, one, case, sheet), _part_of(name, one, sheet)
        thrust = ("y" if upright else "z") if isinstance(bar, SlideBar) and isinstance(part, Bracket) else ""
        y_s = share_of(name, one, sheet)
        f_x, f_y, f_z = (
            _shared(f"F_{axis} of {name}", sheet.take(f"F_{axis} of {name}", force), y_s, sheet)
            if here and axis != thrust and _stated(f"force of {name}", force, sheet)
            else 0.0
            for axis, force in zip("xyz", _forces(one), strict=True)
        )
        x, y = (
            sheet.take(f"{axis} of {name}", at) if _stated(f"place of {name}", at, sheet) else 0.0
            for axis, at in (("x", one.at.x), ("y", one.at.y))
        )
        z = _distance(name, one, part, sheet)
        yield _Load(name, f_x, f_y, f_z, x, y, z)
        m = mass_of(name, one, sheet)
        if m is not None:
            m = m if y_s is None else sheet.work(f"m_s of {name}", share_of_mass, y=y_s, m_0=m)
            yield from _weight(name, m, (x, y, z), upright, part, sheet)


def share_of(name: str, one: Carried, sheet: Sheet) -> Ratio | None:
    """The share of a load that a bracket takes beside another; None for the whole (bracket.load-shared judges it)."""
    if not sheet.is_stated(f"share of {name}", one.share):
        return None
    return sheet.take(f"y of {name}", one.share)


def _shared(symbol: str, F: Newtons, y: Ratio | None, sheet: Sheet) -> Newtons:
    return F if y is None else sheet.work(f"{symbol}′", share_of_force, y=y, F_0=F)


def _acts_in(name: str, one: Carried, case: LoadCase, sheet: Sheet) -> bool:
    """Whether a stated force acts in a load case: in that which it names, else in all."""
    if not sheet.is_stated(f"case of {name}", one.case):
        return True
    return case.name == sheet.read(f"case of {name}", one.case)


def _distance(name: str, one: Carried, part: BoltedJoint | Bracket, sheet: Sheet) -> Metres:
    """How far out of the face it acts: as stated, else the arm of the bracket."""
    if isinstance(part, Bracket) and not _stated(f"place of {name}", one.at.z, sheet):
        return sheet.take("a", part.arm)
    return sheet.take(f"z of {name}", one.at.z)


def mass_of(name: str, one: Carried, sheet: Sheet) -> Kilograms | None:
    """The mass of what is carried: the greater of what is stated here and with the part; None without either."""
    found = [sheet.take(f"m of {name}", one.mass)] if sheet.is_stated(f"mass of {name}", one.mass) else []
    part = _part_of(name, one, sheet)
    if part is not None:
        own = getattr(part, "mass", None)
        if own is not None and sheet.is_stated(f"mass of {part.id}", own):
            found.append(sheet.take(f"m of {part.id}", own))
    if not found and part is not None:
        raise sheet.not_assessed(f"the mass of {part.id}, which {name} carries, is not stated", one.where)
    if not found and not any(_stated(f"force of {name}", force, sheet) for force in _forces(one)):
        raise sheet.not_assessed(f"{name} states neither a mass nor a force", one.where)
    return max(found) if found else None


def _weight(
    name: str,
    m: Kilograms,
    at: tuple[Metres, Metres, Metres],
    upright: bool,
    part: BoltedJoint | Bracket,
    sheet: Sheet,
) -> Iterator[_Load]:
    """Weight with jolts: down an upright face; on a level one out of it, and along it as the engine is jolted."""
    n, g = sheet.limit("jolts", "n_j"), sheet.look_up("g", standard_gravity)
    x, y, z = at
    W = sheet.work(f"W of {name}", jolted_weight, m=m, g=g, n=n)
    along = sheet.work(f"J of {name}", shock_load, m=m, k=n, g=g)
    if upright:
        yield _Load(name, along, 0.0, along, x, y, z)
        yield _Load(name, 0.0, W, 0.0, x, y, z)
        return
    below = sheet.read("stands", part.stands) == "below"
    lift = W if below else sheet.work(f"L of {name}", lift_of_mass, m=m, g=g, n=n)
    yield _Load(name, 0.0, along, lift, x, y, z)
