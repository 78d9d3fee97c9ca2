"""The studs of a joint: their number, and the diameters and areas of their thread."""

from __future__ import annotations

from functools import cache

from msgspec import Struct

from speclint import Sheet
from speclint.handbook.members import round_area
from speclint.handbook.tables import Reading
from speclint.handbook.threads import nominal_diameter, root_area, stress_area as area_of_thread, thread
from speclint.specs import BoltedJoint, FrameFastening
from speclint_joints.formulae.loads import least_area


@cache
def pitch(designation: str) -> Reading:
    """Pitch of a thread, m."""
    found = thread(designation)
    return Reading.exact(f"pitch of {found.name}", found.pitch, "m", found.source)


@cache
def pitch_diameter(designation: str) -> Reading:
    """Basic pitch diameter of a thread, m."""
    found = thread(designation)
    return Reading.exact(f"pitch diameter of {found.name}", found.pitch_diameter, "m", found.source)


@cache
def flank_angle(designation: str) -> Reading:
    """Half angle of a thread's flanks, rad."""
    found = thread(designation)
    return Reading.exact(f"flank angle of {found.name}", found.flank_angle, "rad", found.source)


@cache
def core_area(designation: str) -> Reading:
    """Area at the root of a stud's thread, m²."""
    found = thread(designation)
    area = root_area(found.root_diameter)
    return Reading.exact(f"core area of {found.name}", area, "m²", found.source)


@cache
def stress_area(designation: str) -> Reading:
    """Tensile stress area of a thread, m²; cached, because every corner of every case needs it."""
    return area_of_thread(designation)


class Studs(Struct, frozen=True):
    """Number and thread of the studs: n, nominal diameter d in m and stress area A_s in m²."""

    thread: str
    n: int
    d: float
    A_s: float


def studs_of(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> Studs:
    """Take the number of studs, and look up their thread."""
    designation = sheet.read("thread", joint.thread)
    return Studs(
        thread=designation,
        n=sheet.count("n", joint.count),
        d=sheet.look_up("d", nominal_diameter, designation=designation),
        A_s=sheet.look_up("A_s", stress_area, designation=designation),
    )


def least_area_of(joint: BoltedJoint, sheet: Sheet, studs: Studs) -> float:
    """The least area that is pulled and twisted, m²: of the thread, or of a shank reduced below it."""
    if not sheet.is_stated("shank", joint.shank):
        return studs.A_s
    shank = sheet.work("A_d", round_area, d=sheet.take("d_s", joint.shank))
    return sheet.work("A", least_area, A_s=studs.A_s, A_d=shank)
