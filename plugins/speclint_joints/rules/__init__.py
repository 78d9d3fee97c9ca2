"""The rules of joints, one module a subject."""

from __future__ import annotations

from speclint_joints.rules import (
    covers,
    engagement,
    fatigue,
    frames,
    gaskets,
    glands,
    holes,
    keeping,
    layout,
    lenses,
    threads,
    tightening,
    tightness,
)

RULES = (
    covers.flange,
    covers.on_test,
    covers.thickness,
    engagement.engagement,
    fatigue.stud_fatigue,
    frames.block_couple,
    frames.block_slip,
    gaskets.gasket_crush,
    gaskets.gasket_rating,
    glands.studs,
    holes.edge,
    holes.hole_depth,
    keeping.locking,
    keeping.underside,
    layout.room,
    layout.stud_count,
    layout.stud_pitch,
    lenses.seat,
    threads.same_thread,
    tightening.bolting_material,
    tightening.preload,
    tightening.service_stress,
    tightness.face_pressure,
    tightness.gasket_load,
    tightness.separation,
    tightness.thermal,
)
