"""The collar of a liner, and the studs of the cover that clamps it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement
from speclint.facts import covers_on_collar, joints_of_cover, left_by_joint
from speclint.specs import CylinderCover, CylinderLiner
from speclint_joints.sources import VDI_PRELOAD


def _clamps(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """The clamping force within what the studs of the cover leave beside the gasket; its ring on the collar."""
    collar = liner.collar
    if sheet.is_stated("diameter of the barrel", liner.outside_diameter):
        yield Pair(collar.clamp_diameter, liner.outside_diameter, "at least", name="barrel")
    if sheet.is_stated("diameter of the collar", collar.diameter):
        yield Pair(collar.clamp_diameter, collar.diameter, "at most", name="collar")
    covers = covers_on_collar(liner, sheet)
    for cover in covers:
        for other in _clamped_alike(cover, liner, sheet):
            if sheet.is_stated(f"ring on {other.id}", other.collar.clamp_diameter):
                theirs = other.collar.clamp_diameter
                yield Pair(collar.clamp_diameter, theirs, name=f"ring on {other.id}", within="ring")
    if not sheet.is_stated("clamping force", collar.clamp_force):
        return
    for cover in covers:
        for joint in joints_of_cover(cover, sheet):
            left = left_by_joint(joint, sheet)
            if left is not None:
                yield Pair(collar.clamp_force, left, "at most", name=joint.id)


def _clamped_alike(cover: CylinderCover, liner: CylinderLiner, sheet: Sheet) -> Iterator[CylinderLiner]:
    """The other liners on whose collars the covers press that are made as this one is."""
    for twin in sheet.parts_alike(cover):
        if isinstance(twin, CylinderCover) and sheet.is_stated(f"block under {twin.id}", twin.closes):
            for other in sheet.belonging_to(sheet.follow(twin.closes), CylinderLiner):
                if other.id != liner.id and twin.id in {one.id for one in covers_on_collar(other, sheet)}:
                    yield other


clamp_of_cover: Rule = agreement(
    "liner.clamp-of-cover",
    title="The force that clamps a liner's collar is no more than the cover's studs give at the least beside the "
    "gasket; it presses outside the barrel, and covers made alike press on one diameter",
    on=CylinderLiner,
    pairs=_clamps,
    within="",
    cites=[VDI_PRELOAD, COMMON_PRACTICE],
    grade=Grade.NONCONFORMITY,
    why="a nip that the studs do not give lets the liner move; a ring pressed inside the barrel clamps nothing",
    edition=3,
    limits=[
        Limit(
            "ring",
            "0.5 mm",
            "length",
            COMMON_PRACTICE,
            "what the ring of two covers made alike may differ by",
            "not negative",
        )
    ],
    leaves_out="studs that are turned by an angle; how collar and gasket share the load of the studs, embedding of the "
    "faces, and heat",
    against=("loosen",),
)

RULES = (clamp_of_cover,)
